/**
 * Resistance by star-mesh elimination against a dense LU solve of the same branches (ml-matrix): the
 * conductance matrix with one of the two nodes as reference, one ampere into the other. The LU
 * subtracts, so where milliohms meet gigaohms the difference is the matrix's own loss; the last rows
 * show that against a sum that is exact by hand.
 */
import { LuDecomposition, Matrix } from 'ml-matrix';
import { circuit, netsOf, resistanceIn, type Branch, type NodeName } from '../../src/lib/engine';
import { ratioOf, type Row } from './measure';
import { panel } from './panels';

/** Nodes that hang together with `start`, through any branch. */
function around(branches: readonly Branch[], start: NodeName): NodeName[] {
	const next = new Map<NodeName, NodeName[]>();
	for (const { a, b } of branches)
		for (const [x, y] of [
			[a, b],
			[b, a]
		] as const)
			next.set(x, [...(next.get(x) ?? []), y]);
	const seen = new Set([start]);
	for (const node of seen) for (const to of next.get(node) ?? []) seen.add(to);
	return [...seen];
}

/** Resistance between `a` and `b`, ohms, by LU. They must hang together. */
export function denseResistance(branches: readonly Branch[], a: NodeName, b: NodeName): number {
	const index = new Map(
		around(branches, b)
			.filter((n) => n !== b)
			.map((n, i) => [n, i])
	);
	const g = Matrix.zeros(index.size, index.size);
	const add = (i: number, j: number, siemens: number) => g.set(i, j, g.get(i, j) + siemens);
	for (const branch of branches) {
		const [i, j] = [index.get(branch.a), index.get(branch.b)];
		const siemens = 1 / branch.ohms;
		if (i !== undefined) add(i, i, siemens);
		if (j !== undefined) add(j, j, siemens);
		if (i === undefined || j === undefined) continue;
		add(i, j, -siemens);
		add(j, i, -siemens);
	}
	const ampere = Matrix.zeros(index.size, 1);
	ampere.set(index.get(a)!, 0, 1);
	return new LuDecomposition(g).solve(ampere).get(index.get(a)!, 0);
}

const apart = (x: number, y: number): number => Math.abs(x - y) / Math.abs(y);

/** Every k-th pair of nodes, so that about `most` of them are compared. */
function somePairs(nodes: readonly NodeName[], most: number): [NodeName, NodeName][] {
	const pairs = nodes.flatMap((a, i) =>
		nodes.slice(i + 1).map((b): [NodeName, NodeName] => [a, b])
	);
	const step = Math.max(1, Math.floor(pairs.length / most));
	return pairs.filter((_, i) => i % step === 0);
}

export function resistanceRows(hybrids: number, most: number, rounds: number): Row[] {
	const bench = panel(hybrids);
	const branches: Branch[] = circuit(bench).conductors.map(({ a, b, ohms }) => ({ a, b, ohms }));
	const pairs = somePairs(netsOf(bench).list.flat(), most);
	const worst = Math.max(
		...pairs.map(([a, b]) => apart(resistanceIn(branches, a, b), denseResistance(branches, a, b)))
	);
	const [a, b] = ['H0.TN', `D${hybrids - 1}.cold`];
	const mesh = { run: () => resistanceIn(branches, a, b) };
	const dense = { run: () => denseResistance(branches, a, b) };
	const of = `panel of ${hybrids}`;
	return [
		{ what: `${of}: star-mesh / dense LU`, ratio: ratioOf(mesh, dense, rounds) },
		{ what: `${of}: worst relative difference of ${pairs.length} pairs`, ratio: worst, most: 1e-6 }
	];
}

/** 20 mΩ, then 1 GΩ, in series: the sum is 1 000 000 000.02 Ω. */
export function mixedRows(): Row[] {
	const branches = [
		{ a: 'x', b: 'y', ohms: 0.02 },
		{ a: 'y', b: 'z', ohms: 1e9 }
	];
	const off = (ohms: number) => apart(ohms, 1e9 + 0.02);
	return [
		{
			what: '20 mΩ and 1 GΩ: star-mesh, relative error',
			ratio: off(resistanceIn(branches, 'x', 'z')),
			most: 1e-11
		},
		{
			what: '20 mΩ and 1 GΩ: dense LU, relative error',
			ratio: off(denseResistance(branches, 'x', 'z'))
		}
	];
}
