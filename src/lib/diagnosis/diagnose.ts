/**
 * From readings to what the bench can be: every set of at most N faults that agrees, the likeliest
 * first, and the best next probe. With single faults every fault is listed by name; with more, one
 * set stands for all those that no probe can tell from it.
 */
import type { Bench, Fault, NodeName, When } from '../engine';
import { conflictIn } from './conflict';
import { dictionaryOf, type Dictionary } from './dictionary';
import { agreeing, extrasOf, weightIn, type Reading } from './evidence';
import { bestNext, type Advice } from './next';
import { weightOfSet } from './weights';

export interface Candidate {
	/** Empty: a sound bench. */
	readonly faults: readonly Fault[];
	/** Part of the weight of all candidates. */
	readonly weight: number;
	/** Sets that this one stands for, itself included; left out where it stands for itself alone. */
	readonly members?: number;
}
export interface Diagnosis {
	/** The likeliest, at most as many as were asked for. */
	readonly candidates: readonly Candidate[];
	/** How many candidates there are in all. */
	readonly total: number;
	/** Null when no probe can tell the rest apart. */
	readonly next: Advice | null;
	/** Only where nothing agrees: a smallest set of readings that no hypothesis satisfies. */
	readonly conflict?: readonly Reading[];
}

/** Candidates listed unless more are asked for. */
export const LISTED = 50;

/** Every single fault by itself, "sound" first where it is a candidate. */
function singles(dictionary: Dictionary, ids: Int32Array, total: number): Candidate[] {
	const { faults, classOfSet, hasSound } = dictionary;
	const left = new Set(ids);
	const sets = [...(hasSound ? [[]] : []), ...faults.map((_, i) => [i])];
	return sets
		.filter((set) => left.has(classOfSet(set)))
		.map((set) => set.map((i) => faults[i]!))
		.map((set) => ({ faults: set, weight: weightOfSet(set) / total }))
		.sort((a, b) => b.weight - a.weight);
}

/** One set for each class. */
function classes(dictionary: Dictionary, ids: Int32Array, total: number): Candidate[] {
	const { faults, weight, count, heaviest } = dictionary;
	const order = [...ids].sort((a, b) => weight[b]! - weight[a]! || a - b);
	return order.map((id) => ({
		faults: heaviest(id).map((i) => faults[i]!),
		weight: weight[id]! / total,
		members: count[id]!
	}));
}

/**
 * What the dictionary says to these readings. `from`: the plug state that the bench is in now;
 * `within`: the nodes that the next probe may touch, all unless said.
 */
export function diagnosisIn(
	dictionary: Dictionary,
	readings: readonly Reading[],
	listed = LISTED,
	from: When = readings.at(-1)?.when ?? {},
	within?: readonly NodeName[]
): Diagnosis {
	const ids = agreeing(dictionary, readings);
	if (ids.length === 0) {
		const conflict = conflictIn(dictionary, readings).map((i) => readings[i]!);
		return { candidates: [], total: 0, next: null, conflict };
	}
	const list = dictionary.most === 1 ? singles : classes;
	const all = list(dictionary, ids, weightIn(dictionary, ids));
	const next = bestNext(dictionary, ids, from, within);
	return { candidates: all.slice(0, listed), total: all.length, next };
}

/** Diagnosis of a bench: sets of at most `most` faults against the readings. */
export const diagnose = (bench: Bench, readings: readonly Reading[], most = 1): Diagnosis =>
	diagnosisIn(dictionaryOf(bench, most, extrasOf(bench, readings)), readings);
