/**
 * The continuity matrix of a hybrid of ten in all of its plug states, for 64 wirings of one to six
 * jumpers: packed partitions against disjoint sets of mnemonist and components of graphology. All
 * three are given the same numbered joints and hand out the same rows of bits.
 */
import Graph from 'graphology';
import { connectedComponents } from 'graphology-components';
import { StaticDisjointSet } from 'mnemonist';
import {
	checkBench,
	circuit,
	contactsOf,
	inState,
	Matrices,
	outsideOf,
	plainMatrixOf,
	matrixOf,
	socketStatesOf,
	statesOf,
	type Bench
} from '../../src/lib/engine';
import { randomNumbers } from '../../src/lib/engine/random.fixture';
import { mustAgree, ratioOf, type Row } from './measure';

const WIRINGS = 64;

function benches(): Bench[] {
	const below = randomNumbers(10);
	const names = '1 2 3 T R S TN RN SN 1N G'.split(' ');
	return Array.from({ length: WIRINGS }, () => {
		const wires = Array.from({ length: 1 + below(6) }, (_, i) => {
			const a = below(names.length);
			const b = (a + 1 + below(names.length - 1)) % names.length;
			return { id: `w${i}`, from: `A.${names[a]}`, to: `A.${names[b]}` };
		});
		const file = { format: 'solderside-bench', version: 1, wires };
		const parsed = checkBench({ ...file, sockets: [{ id: 'A', kind: 'hybrid-10' }] });
		if (!parsed.ok) throw new Error(parsed.problem.message);
		return parsed.value;
	});
}

/** One state as libraries for graphs want it: nodes by number, contacts first, and joints. */
interface Joined {
	readonly nodes: number;
	readonly joints: readonly (readonly [number, number])[];
}

function joinedIn(bench: Bench): Joined[] {
	return statesOf(bench, 'A').map((state) => {
		const { nodes, conductors } = circuit(inState(bench, { A: state }));
		const at = new Map(nodes.map((node, i) => [node, i]));
		const joints = conductors
			.filter((c) => c.joins)
			.map((c) => [at.get(c.a)!, at.get(c.b)!] as const);
		return { nodes: nodes.length, joints };
	});
}

/** Rows of bits from the number of each contact's net. */
function rowsOf(nets: ArrayLike<number>, contacts: number): Uint16Array {
	const sets = new Uint16Array(nets.length);
	for (let i = 0; i < contacts; i++) sets[nets[i]!]! |= 1 << i;
	const rows = new Uint16Array(contacts);
	for (let i = 0; i < contacts; i++) rows[i] = sets[nets[i]!]!;
	return rows;
}

function byDisjointSets({ nodes, joints }: Joined, contacts: number): Uint16Array {
	const nets = new StaticDisjointSet(nodes);
	for (const [a, b] of joints) nets.union(a, b);
	return rowsOf(nets.mapping() as unknown as ArrayLike<number>, contacts);
}

function byComponents({ nodes, joints }: Joined, contacts: number): Uint16Array {
	const graph = new Graph({ type: 'undirected', multi: true });
	for (let i = 0; i < nodes; i++) graph.addNode(i);
	for (const [a, b] of joints) graph.addUndirectedEdge(a, b);
	const rows = new Uint16Array(contacts);
	for (const component of connectedComponents(graph)) {
		const members = component.map(Number).filter((i) => i < contacts);
		const row = members.reduce((bits, i) => bits | (1 << i), 0);
		for (const i of members) rows[i] = row;
	}
	return rows;
}

export function continuityRows(): Row[] {
	const all = benches();
	const contacts = contactsOf(all[0]!, 'A').length;
	const states = socketStatesOf(all[0]!, all[0]!.sockets[0]!);
	const outside = all.map((bench) => outsideOf(bench, 'A'));
	const joined = all.map(joinedIn);
	const into = new Int32Array(states.states.length);
	const kept = new Matrices();
	const rowsIn = (matrices: Matrices): number[][] =>
		[...into].map((id) => [...matrices.rows.subarray(16 * id, 16 * id + contacts)]);
	outside.forEach((ends, i) => {
		states.matricesWith(ends, kept, into);
		const rows = rowsIn(kept);
		mustAgree(
			'matrix by mnemonist',
			rows,
			joined[i]!.map((s) => [...byDisjointSets(s, contacts)])
		);
		mustAgree(
			'matrix by graphology',
			rows,
			joined[i]!.map((s) => [...byComponents(s, contacts)])
		);
		mustAgree('matrix by the plain engine', matrixOf(all[i]!, 'A'), plainMatrixOf(all[i]!, 'A'));
	});
	const ours = (matrices: Matrices) => {
		for (const ends of outside) states.matricesWith(ends, matrices, into);
	};
	const warm = { run: () => ours(kept) };
	const cold = { run: () => ours(new Matrices()) };
	const sets = { run: () => joined.map((list) => list.map((s) => byDisjointSets(s, contacts))) };
	const graph = { run: () => joined.map((list) => list.map((s) => byComponents(s, contacts))) };
	const plain = {
		prepare: () => all.slice(0, 8).map((bench) => ({ ...bench })),
		run: (copies: Bench[]) => copies.map((bench) => plainMatrixOf(bench, 'A'))
	};
	const fast = {
		prepare: plain.prepare,
		run: (copies: Bench[]) => copies.map((bench) => matrixOf(bench, 'A'))
	};
	return [
		{ what: 'matrices, six states of 64 wirings', count: 6 * WIRINGS, right: 384 },
		{ what: 'distinct ones among them', count: kept.size },
		{ what: 'graphology / ours', ratio: ratioOf(graph, warm), target: 500 },
		{ what: 'mnemonist / ours', ratio: ratioOf(sets, warm), target: 20 },
		{ what: 'graphology / ours, nothing remembered', ratio: ratioOf(graph, cold) },
		{ what: 'mnemonist / ours, nothing remembered', ratio: ratioOf(sets, cold) },
		{ what: 'plain engine / fast, from bench to pairs', ratio: ratioOf(plain, fast) }
	];
}
