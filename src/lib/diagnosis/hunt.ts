/**
 * A hunt judged step by step: what each probe told, what the best one there would have told, and
 * what was given up. A step is held against the best probe in that very situation, so a bad one is
 * counted once and not again in all that follows from it. Where few classes remained the loss is in
 * expected probes, exactly; before that it is in bits.
 */
import type { When } from '../engine';
import type { Dictionary } from './dictionary';
import { agreeing, everyClass, isJoinedAt, placeOf, weightIn, type Reading } from './evidence';
import { bestNext, bitsOf, type Advice } from './next';
import { Optimum } from './optimum';
import { MOST_EXACT, outcomesAt, parIn, systemIn, type Par } from './par';
import type { Probe } from './probes';

export interface Loss {
	/** Expected probes lost (exact), or expected information lost in bits. */
	readonly unit: 'probes' | 'bits';
	/** 0: no probe there is better. */
	readonly lost: number;
}
export interface HuntStep {
	readonly reading: Reading;
	/** Classes before and after the reading. */
	readonly before: number;
	readonly after: number;
	/** Sets of faults in the classes before the reading. */
	readonly sets: number;
	/** Sets of faults that the reading ruled out, and their part of the weight that was left. */
	readonly ruledOut: number;
	readonly ruledOutWeight: number;
	/** What the probe could be expected to tell, bits. */
	readonly gain: number;
	/** The best probe there; null when nothing could tell the rest apart. */
	readonly best: Advice | null;
	/** Whether the probe could tell nothing, whatever the meter said. */
	readonly wasted: boolean;
	readonly regret: Loss;
}
export interface Hunt {
	readonly steps: readonly HuntStep[];
	/** Classes that agree with every reading. */
	readonly left: Int32Array;
	/** Whether one class is left: it is an answer, no probe can divide it. */
	readonly settled: boolean;
	/** Par before the first reading. */
	readonly par: Par;
}

/** How many sets of faults the classes hold. */
export const setsIn = ({ count }: Dictionary, ids: Int32Array): number =>
	ids.reduce((sum, id) => sum + count[id]!, 0);

/** What is lost by asking this probe of these classes first and doing one's best after it. */
function lossOf(dictionary: Dictionary, ids: Int32Array, probe: Probe, gain: number): Loss {
	if (ids.length > MOST_EXACT) {
		const best = bestNext(dictionary, ids)?.gain ?? 0;
		return { unit: 'bits', lost: Math.max(0, best - gain) };
	}
	const { system } = systemIn(dictionary, ids);
	const outcomes = outcomesAt(dictionary, ids, placeOf(dictionary, probe));
	const divides = outcomes.some((o) => o !== outcomes[0]);
	// A probe that divides nothing leaves everything to do, and one probe has been spent.
	if (!divides) return { unit: 'probes', lost: 1 };
	const optimum = new Optimum({ ...system, tests: [...system.tests, { outcomes }] });
	const lost = optimum.costAsking(system.tests.length) - optimum.cost();
	return { unit: 'probes', lost: Math.max(0, lost) };
}

/** Judges one reading. `ids`: the classes before it; `from`: the plug state before it. */
export function huntStep(
	dictionary: Dictionary,
	ids: Int32Array,
	reading: Reading,
	from: When = {}
): { readonly step: HuntStep; readonly left: Int32Array } {
	const place = placeOf(dictionary, reading);
	const joined = ids.filter((id) => isJoinedAt(dictionary, id, place));
	const wasted = joined.length === 0 || joined.length === ids.length;
	const total = weightIn(dictionary, ids);
	const gain = wasted ? 0 : bitsOf(Math.min(1, weightIn(dictionary, joined) / total));
	const left = agreeing(dictionary, [reading], ids);
	const kept = left.length === ids.length ? total : weightIn(dictionary, left);
	const sets = setsIn(dictionary, ids);
	const step: HuntStep = {
		reading,
		before: ids.length,
		after: left.length,
		sets,
		ruledOut: sets - setsIn(dictionary, left),
		ruledOutWeight: total > 0 ? (total - kept) / total : 0,
		gain,
		best: bestNext(dictionary, ids, from),
		wasted,
		regret: lossOf(dictionary, ids, reading, gain)
	};
	return { step, left };
}

/** Judges a whole hunt, reading by reading. */
export function huntOf(
	dictionary: Dictionary,
	readings: readonly Reading[],
	from: When = {}
): Hunt {
	const start = everyClass(dictionary);
	const steps: HuntStep[] = [];
	let left = start;
	let state = from;
	for (const reading of readings) {
		const judged = huntStep(dictionary, left, reading, state);
		steps.push(judged.step);
		left = judged.left;
		state = reading.when;
	}
	return { steps, left, settled: left.length === 1, par: parIn(dictionary, start, from) };
}

/** The best probe to take there: first of a cheapest plan where that is known, else the greedy one. */
export function bestProbe(dictionary: Dictionary, ids: Int32Array, from: When): Probe | null {
	if (ids.length > MOST_EXACT) return bestNext(dictionary, ids, from);
	const { system, probes } = systemIn(dictionary, ids, from);
	const first = ids.length < 2 ? null : new Optimum(system).first();
	return first === null ? null : probes[first]!;
}

/** The best hunt for a hidden class, as readings, until nothing can be divided further. */
export function bestHunt(dictionary: Dictionary, hidden: number, from: When = {}): Reading[] {
	const readings: Reading[] = [];
	let left = everyClass(dictionary);
	let state = from;
	for (;;) {
		const probe = bestProbe(dictionary, left, state);
		if (!probe) return readings;
		const { when, pair } = probe;
		const joined = isJoinedAt(dictionary, hidden, placeOf(dictionary, probe));
		const reading: Reading = { when, pair, answer: joined ? 'joined' : 'apart' };
		readings.push(reading);
		left = agreeing(dictionary, [reading], left);
		state = when;
	}
}
