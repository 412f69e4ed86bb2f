/**
 * Par: how many probes the best plan needs on average to find the class of the fault. Exact, by
 * dynamic programming, where few classes remain; else what the greedy rule comes to, and the answer
 * says which. Bounds from below hold in either case.
 */
import type { When } from '../engine';
import type { Dictionary } from './dictionary';
import { isJoinedAt, weightIn, type Place } from './evidence';
import { changesFrom, dividing, mostEven, probeOf } from './next';
import { Optimum } from './optimum';
import type { Probe } from './probes';
import { entropyOf, huffmanOf, type Bounds, type System } from './system';

/** With more classes than this the exact optimum is not worked out. */
export const MOST_EXACT = 14;
/** With more classes than this not even the greedy plan is. */
export const MOST_PLANNED = 600;

export interface Par {
	/** Expected probes; null where too many classes remain to plan at all. */
	readonly probes: number | null;
	/** True: no plan has fewer on average. False: the greedy plan's figure. */
	readonly exact: boolean;
	/** No plan has fewer on average than these. */
	readonly bounds: Bounds;
	readonly classes: number;
}

/** The classes as states and every probe that divides them as a test. */
export interface ClassSystem {
	readonly system: System;
	/** The probe behind each test. */
	readonly probes: readonly Probe[];
	/** Class of each state. */
	readonly ids: Int32Array;
}

/** Outcome per class: 1 joined, 0 apart. */
export const outcomesAt = (dictionary: Dictionary, ids: Int32Array, place: Place): number[] =>
	[...ids].map((id) => (isJoinedAt(dictionary, id, place) ? 1 : 0));

/** The same division told the other way round is the same. */
const divisionKey = (outcomes: readonly number[]): string =>
	outcomes.map((o) => o ^ outcomes[0]!).join('');

/**
 * The classes as a system of tests. Of probes that divide them alike only one stays, the one with
 * the fewest plug changes from `from`; those with fewer changes come first.
 */
export function systemIn(dictionary: Dictionary, ids: Int32Array, from: When = {}): ClassSystem {
	const changes = changesFrom(dictionary, from);
	const found = dividing(dictionary, ids);
	found.sort((x, y) => changes[x.column]! - changes[y.column]!);
	const kept = new Map<string, { outcomes: number[]; probe: Probe }>();
	for (const place of found) {
		const outcomes = outcomesAt(dictionary, ids, place);
		const key = divisionKey(outcomes);
		if (!kept.has(key)) kept.set(key, { outcomes, probe: probeOf(dictionary, place) });
	}
	const tests = [...kept.values()];
	const weights = [...ids].map((id) => dictionary.weight[id]!);
	return {
		system: { weights, tests: tests.map(({ outcomes }) => ({ outcomes })) },
		probes: tests.map(({ probe }) => probe),
		ids
	};
}

/** Bounds for yes/no probes: entropy and Huffman's code over the classes. */
export function classBounds({ weight }: Dictionary, ids: Int32Array): Bounds {
	const weights = [...ids].map((id) => weight[id]!);
	return weights.length < 2
		? { entropy: 0, huffman: 0 }
		: { entropy: entropyOf(weights), huffman: huffmanOf(weights) };
}

/** Weighted probes of the greedy plan, resting after each division. */
function* greedyCost(dictionary: Dictionary, ids: Int32Array, from: When): Generator<void, number> {
	if (ids.length < 2) return 0;
	const best = mostEven(dividing(dictionary, ids), changesFrom(dictionary, from));
	if (!best) return 0;
	yield;
	const joined = (id: number) => isJoinedAt(dictionary, id, best);
	const { when } = probeOf(dictionary, best);
	let cost = weightIn(dictionary, ids);
	cost += yield* greedyCost(dictionary, ids.filter(joined), when);
	return (
		cost +
		(yield* greedyCost(
			dictionary,
			ids.filter((id) => !joined(id)),
			when
		))
	);
}

/** Par of the classes that remain, resting between steps. */
export function* makingPar(
	dictionary: Dictionary,
	ids: Int32Array,
	from: When = {}
): Generator<void, Par> {
	const bounds = classBounds(dictionary, ids);
	const known = { bounds, classes: ids.length };
	if (ids.length <= MOST_EXACT) {
		const probes = new Optimum(systemIn(dictionary, ids, from).system).cost();
		return { probes, exact: true, ...known };
	}
	if (ids.length > MOST_PLANNED) return { probes: null, exact: false, ...known };
	const cost = yield* greedyCost(dictionary, ids, from);
	return { probes: cost / weightIn(dictionary, ids), exact: false, ...known };
}

/** Runs a generator through without a rest. */
export function inOneGo<T>(making: Generator<void, T>): T {
	for (;;) {
		const step = making.next();
		if (step.done) return step.value;
	}
}

/** Par of the classes that remain. `from`: the plug state that the bench is in. */
export const parIn = (dictionary: Dictionary, ids: Int32Array, from: When = {}): Par =>
	inOneGo(makingPar(dictionary, ids, from));
