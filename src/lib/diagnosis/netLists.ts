/**
 * The nets of two nodes or more that each partition of a table has, each distinct net numbered once.
 * Thousands of partitions have but hundreds of distinct nets between them, so a weight is first added
 * to a partition's few nets, and only then to the pairs of each net.
 */
import type { Labels } from './partitions';

export interface NetLists {
	/** Partitions that were there when the lists were made; later ones are of no class. */
	readonly size: number;
	/** Where each partition's nets begin in `nets`, and at the end where the last ones stop. */
	readonly from: Int32Array;
	readonly nets: Int32Array;
	/** Nodes of each distinct net, ascending. */
	readonly members: readonly (readonly number[])[];
}

const known = new WeakMap<Labels, NetLists>();

/** One key for each set of nodes: bits as far as a number has them, else text. */
function keyOf(members: readonly number[], nodes: number): number | string {
	if (nodes > 31) return members.join();
	let bits = 0;
	for (const node of members) bits |= 1 << node;
	return bits;
}

function made({ data, width: n, size }: Labels): NetLists {
	const numbers = new Map<number | string, number>();
	const members: number[][] = [];
	const from = new Int32Array(size + 1);
	const nets: number[] = [];
	for (let p = 0, at = 0; p < size; p++, at += n) {
		from[p] = nets.length;
		const found: number[][] = [];
		for (let i = 0; i < n; i++) (found[data[at + i]!] ??= []).push(i);
		for (const net of found) {
			if (net.length < 2) continue;
			const key = keyOf(net, n);
			let number = numbers.get(key);
			if (number === undefined) {
				number = members.push(net) - 1;
				numbers.set(key, number);
			}
			nets.push(number);
		}
	}
	from[size] = nets.length;
	return { size, from, nets: Int32Array.from(nets), members };
}

/** The lists of a dictionary's partitions, remembered. Ask only when all of its classes are there. */
export function netListsOf(seen: Labels): NetLists {
	const lists = known.get(seen) ?? made(seen);
	known.set(seen, lists);
	return lists;
}
