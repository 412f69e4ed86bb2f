/**
 * The best next probe. Every probe says yes or no and costs the same, so the one that tells most is
 * the one whose weight of "joined" is nearest to one half: no logarithm is needed to choose it, only
 * to say its gain in bits. Weights are first added up by the partitions of each column, which are
 * few, and only then by pairs; whether a probe divides the classes at all is counted, not weighed.
 */
import type { NodeName, Pair, When } from '../engine';
import type { Dictionary } from './dictionary';
import { weightIn } from './evidence';
import type { Probe } from './probes';
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
	const n = dictionary.nodes.length;
	const byPartition = new Float64Array(seen.size);
	const counts = new Int32Array(seen.size);
	const touched: number[] = [];
	for (const id of ids) {
		const partition = rows.at(id, column);
		if (counts[partition]!++ === 0) touched.push(partition);
		byPartition[partition]! += weights[id]!;
	}
	const weight = new Float64Array(n * n);
	const count = new Int32Array(n * n);
	const last = new Int32Array(n);
	const before = new Int32Array(n);
	for (const partition of touched) {
		last.fill(-1);
		for (let b = 0; b < n; b++) {
			const net = seen.at(partition, b);
			before[b] = last[net]!;
			last[net] = b;
			for (let a = before[b]!; a >= 0; a = before[a]!) {
				weight[a * n + b]! += byPartition[partition]!;
				count[a * n + b]! += counts[partition]!;
			}
		}
	}
	return { column, weight, count };
}

/** A probe that divides the classes, as found. */
interface Found {
	readonly column: number;
	readonly a: number;
	readonly b: number;
	/** How far the weight of "joined" is from half. */
	readonly off: number;
	readonly joined: number;
}

/** Weights that differ by less, as parts of the whole, are the same: the rest is rounding. */
export const HAIR = 1e-9;

/** The probes that come nearest to half, all of them, in file order. */
function nearest(dictionary: Dictionary, ids: Int32Array, total: number): Found[] {
	const n = dictionary.nodes.length;
	let found: Found[] = [];
	let least = Infinity;
	for (let column = 0; column < dictionary.columns; column++) {
		const { weight, count } = splitOf(dictionary, ids, column);
		for (let at = 0; at < n * n; at++) {
			const yes = count[at]!;
			if (yes === 0 || yes === ids.length) continue;
			const off = Math.abs(weight[at]! / total - 0.5);
			if (off > least + HAIR) continue;
			if (off < least - HAIR) found = [];
			least = Math.min(least, off);
			found.push({ column, a: Math.floor(at / n), b: at % n, off, joined: weight[at]! / total });
		}
	}
	return found.filter((f) => f.off <= least + HAIR);
}

export const pairAt = (nodes: readonly NodeName[], a: number, b: number): Pair => [
	nodes[a]!,
	nodes[b]!
];

/**
 * The probe that tells most among these classes, null if none tells anything. Of several, the one
 * with the fewest plug changes from the state `from`, then the first in file order.
 */
export function bestNext(dictionary: Dictionary, ids: Int32Array, from: When = {}): Advice | null {
	const { bench, nodes, columnStates } = dictionary;
	const found = nearest(dictionary, ids, weightIn(dictionary, ids));
	if (found.length === 0) return null;
	const changes = columnStates.map((when) => plugChanges(bench, from, when));
	const best = found.reduce((x, y) => (changes[y.column]! < changes[x.column]! ? y : x));
	return {
		when: columnStates[best.column]!,
		pair: pairAt(nodes, best.a, best.b),
		gain: bitsOf(best.joined)
	};
}
