/**
 * The best next probe. Every probe says yes or no and costs the same, so the one that tells most is
 * the one whose weight of "joined" is nearest to one half: no logarithm is needed to choose it, only
 * to say its gain in bits. Weights are first added up by the partitions of each column, which are
 * few, and only then by pairs; whether a probe divides the classes at all is counted, not weighed.
 */
import type { NodeName, When } from '../engine';
import type { Dictionary } from './dictionary';
import { weightIn } from './evidence';
import { netListsOf } from './netLists';
import type { Probe } from './probes';
import type { Labels } from './partitions';
import { plugChanges } from './setting';

export interface Advice extends Probe {
	/** Expected information, bits. */
	readonly gain: number;
}

/** Information of an answer that is "yes" with probability `p`, in bits (Shannon 1948). */
export function bitsOf(p: number): number {
	const term = (x: number) => (x > 0 ? -x * Math.log2(x) : 0);
	return term(p) + term(1 - p);
}

/** Weight and number of the classes that answer "joined", for each pair of nodes of one column. */
export interface Split {
	readonly column: number;
	/** Position `a * nodes + b`, a before b. */
	readonly weight: Float64Array;
	readonly count: Int32Array;
}

/** Adds up one column over the classes. */
export function splitOf(dictionary: Dictionary, ids: Int32Array, column: number): Split {
	const { rows, seen, weight: weights } = dictionary;
	const byPartition = new Float64Array(seen.size);
	const counts = new Int32Array(seen.size);
	const { data, width } = rows;
	for (let k = 0; k < ids.length; k++) {
		const id = ids[k]!;
		const partition = data[id * width + column]!;
		counts[partition]!++;
		byPartition[partition]! += weights[id]!;
	}
	return { column, ...byPairs(seen, byPartition, counts) };
}

/** Weights and counts of partitions shared out to their nets, and from there to the pairs of each. */
function byPairs(seen: Labels, weights: Float64Array, counts: Int32Array) {
	const { size, from, nets, members } = netListsOf(seen);
	const byNet = new Float64Array(members.length);
	const countByNet = new Int32Array(members.length);
	for (let partition = 0; partition < size; partition++) {
		const sets = counts[partition]!;
		if (sets === 0) continue;
		const w = weights[partition]!;
		const end = from[partition + 1]!;
		for (let k = from[partition]!; k < end; k++) {
			const net = nets[k]!;
			byNet[net]! += w;
			countByNet[net]! += sets;
		}
	}
	const n = seen.width;
	const weight = new Float64Array(n * n);
	const count = new Int32Array(n * n);
	for (let net = 0; net < members.length; net++) {
		if (countByNet[net] === 0) continue;
		const nodes = members[net]!;
		for (let j = 1; j < nodes.length; j++)
			for (let i = 0; i < j; i++) {
				const pair = nodes[i]! * n + nodes[j]!;
				weight[pair]! += byNet[net]!;
				count[pair]! += countByNet[net]!;
			}
	}
	return { weight, count };
}

/** A probe that divides the classes, as found. */
export interface Found {
	readonly column: number;
	/** Positions of its nodes, a before b. */
	readonly a: number;
	readonly b: number;
	/** Weight of "joined", as part of the whole. */
	readonly joined: number;
}

/** Weights that differ by less, as parts of the whole, are the same: the rest is rounding. */
export const HAIR = 1e-9;

const offOf = ({ joined }: Found): number => Math.abs(joined - 0.5);

/** Every probe that divides these classes and may be taken, in file order; `within`: only pairs of these nodes. */
export function dividing(
	dictionary: Dictionary,
	ids: Int32Array,
	within?: readonly NodeName[]
): Found[] {
	const { off } = dictionary;
	const n = dictionary.nodes.length;
	const reached = dictionary.nodes.map((node) => !within || within.includes(node));
	const total = weightIn(dictionary, ids);
	const found: Found[] = [];
	for (let column = 0; column < dictionary.columns; column++) {
		const { weight, count } = splitOf(dictionary, ids, column);
		for (let at = 0; at < n * n; at++)
			if (count[at]! > 0 && count[at]! < ids.length && !off?.[at]) {
				const [a, b] = [Math.floor(at / n), at % n];
				if (reached[a] && reached[b])
					found.push({ column, a, b, joined: Math.min(1, weight[at]! / total) });
			}
	}
	return found;
}

/** Plug changes from a state to each column. */
export const changesFrom = ({ bench, columnStates }: Dictionary, from: When): number[] =>
	columnStates.map((when) => plugChanges(bench, from, when));

/** The probe nearest to half; of several the one that needs fewest plug changes, then the first. */
export function mostEven(found: readonly Found[], changes: readonly number[]): Found | null {
	let least = Infinity;
	for (const f of found) least = Math.min(least, offOf(f));
	return found.reduce<Found | null>((best, f) => {
		if (offOf(f) > least + HAIR) return best;
		return best && changes[best.column]! <= changes[f.column]! ? best : f;
	}, null);
}

/** A found probe in the words of the bench. */
export const probeOf = ({ columnStates, nodes }: Dictionary, { column, a, b }: Found): Probe => ({
	when: columnStates[column]!,
	pair: [nodes[a]!, nodes[b]!]
});

/**
 * The probe that tells most among these classes, null if none tells anything. Of several, the one
 * with the fewest plug changes from the state `from`, then the first in file order. `within`: only
 * nodes that a probe can reach; null may then mean that only a probe elsewhere would tell.
 */
export function bestNext(
	dictionary: Dictionary,
	ids: Int32Array,
	from: When = {},
	within?: readonly NodeName[]
): Advice | null {
	const best = mostEven(dividing(dictionary, ids, within), changesFrom(dictionary, from));
	return best && { ...probeOf(dictionary, best), gain: bitsOf(best.joined) };
}
