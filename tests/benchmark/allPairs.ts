/**
 * Resistances between all pairs of nodes, by star-mesh and back, against ml-matrix: the pseudo-inverse
 * of the conductance matrix (the textbook's way) and the inverse with one node as reference (the quick
 * way). Networks are invented: a tree with a fifth as many branches besides, as wiring is, and one
 * where every node is joined to every other. Errors are against exact fractions.
 */
import { Matrix, inverse, pseudoInverse } from 'ml-matrix';
import { allPairsOhms } from '../../src/lib/engine';
import { randomNumbers } from '../../src/lib/engine/random.fixture';
import { errorOf, exactOhms, type Network } from './exact';
import { ratioOf, type Row } from './measure';

function networkOf(
	nodes: number,
	branches: readonly (readonly [number, number, number])[]
): Network {
	return {
		nodes,
		ends: Int32Array.from(branches.flatMap(([a, b]) => [a, b])),
		siemens: Float64Array.from(branches, ([, , siemens]) => siemens)
	};
}

/** Conductances from 1 to `most` siemens. */
function wiring(nodes: number, siemens: (below: (n: number) => number) => number): Network {
	const below = randomNumbers(nodes);
	const tree = Array.from({ length: nodes - 1 }, (_, i) => {
		const to = below(2) ? i - below(Math.min(i + 1, 4)) : below(i + 1);
		return [to, i + 1, siemens(below)] as const;
	});
	const besides = Array.from({ length: Math.ceil(nodes / 5) }, () => {
		const a = below(nodes);
		return [a, (a + 1 + below(nodes - 1)) % nodes, siemens(below)] as const;
	});
	return networkOf(nodes, [...tree, ...besides]);
}

function everyToEvery(nodes: number): Network {
	const below = randomNumbers(nodes);
	const each = Array.from({ length: nodes }, (_, i) => i);
	return networkOf(
		nodes,
		each.flatMap((a) => each.slice(0, a).map((b) => [a, b, 1 + below(100)] as const))
	);
}

function conductances({ nodes, ends, siemens }: Network): Matrix {
	const g = Matrix.zeros(nodes, nodes);
	const add = (i: number, j: number, x: number) => g.set(i, j, g.get(i, j) + x);
	siemens.forEach((x, k) => {
		const [a, b] = [ends[2 * k]!, ends[2 * k + 1]!];
		add(a, a, x);
		add(b, b, x);
		add(a, b, -x);
		add(b, a, -x);
	});
	return g;
}

/** R(a,b) = P(a,a) + P(b,b) − 2 P(a,b); nodes that P has no row for are the reference. */
function byDifferences(nodes: number, p: Matrix): Float64Array {
	const { rows } = p;
	const at = (a: number, b: number) => (a < rows && b < rows ? p.get(a, b) : 0);
	const ohms = new Float64Array(nodes * nodes);
	for (let a = 0; a < nodes; a++)
		for (let b = 0; b < nodes; b++) ohms[a * nodes + b] = at(a, a) + at(b, b) - 2 * at(a, b);
	return ohms;
}

const ours = ({ nodes, ends, siemens }: Network) => allPairsOhms(nodes, ends, siemens);
const pseudo = (network: Network) =>
	byDifferences(network.nodes, pseudoInverse(conductances(network)));
const reduced = (network: Network) => {
	const last = network.nodes - 2;
	return byDifferences(network.nodes, inverse(conductances(network).subMatrix(0, last, 0, last)));
};

/** At most 40 nodes, spread over all. */
const someOf = (nodes: number): number[] => {
	const many = Math.min(nodes, 40);
	return Array.from({ length: many }, (_, i) => Math.floor((i * nodes) / many));
};

function worstError(ohms: Float64Array, network: Network, right: ReturnType<typeof exactOhms>) {
	const some = someOf(network.nodes);
	const errors = some.flatMap((a) =>
		some.filter((b) => b > a).map((b) => errorOf(ohms[a * network.nodes + b]!, right(a, b)))
	);
	return Math.max(...errors);
}

function agree(network: Network) {
	const [a, b, c] = [ours(network), pseudo(network), reduced(network)];
	a.forEach((ohms, i) => {
		for (const other of [b[i]!, c[i]!])
			if (Math.abs(ohms - other) > 1e-9 * Math.max(1, ohms))
				throw new Error(`${network.nodes} nodes: ${ohms} Ω against ${other} Ω`);
	});
}

function ratios(what: string, network: Network, rounds: number, target?: number): Row[] {
	agree(network);
	const way = (solve: (n: Network) => Float64Array) => ({ run: () => solve(network) });
	const slow = network.nodes < 100 ? rounds : 3;
	const wanted = target === undefined ? {} : { target };
	return [
		{
			what: `${what}: pseudo-inverse / ours`,
			ratio: ratioOf(way(pseudo), way(ours), slow, 4),
			...wanted
		},
		{
			what: `${what}: inverse / ours`,
			ratio: ratioOf(way(reduced), way(ours), rounds, 4),
			...wanted
		}
	];
}

function errors(what: string, network: Network, most?: number): Row[] {
	const right = exactOhms(network, someOf(network.nodes));
	const of = (solve: (n: Network) => Float64Array) => worstError(solve(network), network, right);
	return [
		{ what: `${what}: worst relative error, ours`, ratio: of(ours), ...(most && { most }) },
		{ what: `${what}: worst relative error, pseudo-inverse`, ratio: of(pseudo) },
		{ what: `${what}: worst relative error, inverse`, ratio: of(reduced) }
	];
}

export function allPairsRows(): Row[] {
	const alike = (below: (n: number) => number) => 1 + below(100);
	const mixed = (below: (n: number) => number) => [1, 1e4, 1e8][below(3)]! * (1 + below(9));
	const sizes = [11, 19, 50, 100, 200];
	return [
		...sizes.flatMap((n) => {
			const network = wiring(n, alike);
			const what = `${n} nodes, wiring`;
			return [
				...ratios(what, network, 7, n === 200 ? 150 : undefined),
				...errors(what, network, 1e-14)
			];
		}),
		...errors('50 nodes, siemens from 1 to 10⁹', wiring(50, mixed)),
		...errors('50 nodes, all to all', everyToEvery(50), 1e-14),
		...ratios('200 nodes, all to all', everyToEvery(200), 3)
	];
}
