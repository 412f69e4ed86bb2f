/**
 * Nets of a panel. Numbered: the same joints, numbered beforehand, to Rem's union-find, to disjoint
 * sets of mnemonist and to graphology, each handing out its own kind of list of nets. By name: from the
 * bench to sorted lists of names, as the headless program prints them.
 */
import Graph from 'graphology';
import { connectedComponents } from 'graphology-components';
import { StaticDisjointSet } from 'mnemonist';
import { circuit, labelsOf, netsOf, type Bench } from '../../src/lib/engine';
import { mustAgree, ratioOf, type Row } from './measure';
import { countsOf, panel } from './panels';

function graphOf(nodes: number, ends: Int32Array): Graph {
	const graph = new Graph({ type: 'undirected', multi: true });
	for (let i = 0; i < nodes; i++) graph.addNode(i);
	for (let k = 0; k < ends.length; k += 2) graph.addUndirectedEdge(ends[k], ends[k + 1]);
	return graph;
}

function mappingOf(nodes: number, ends: Int32Array): ArrayLike<number> {
	const nets = new StaticDisjointSet(nodes);
	for (let k = 0; k < ends.length; k += 2) nets.union(ends[k]!, ends[k + 1]!);
	return nets.mapping() as unknown as ArrayLike<number>;
}

/** Numbers of nets as they first appear, from lists of nodes. */
function labelsIn(nodes: number, lists: readonly (readonly number[])[]): number[] {
	const of = new Array<number>(nodes);
	lists.forEach((list, net) => list.forEach((node) => (of[node] = net)));
	const names = new Map<number, number>();
	return of.map((net) => names.get(net) ?? (names.set(net, names.size), names.size - 1));
}

/** A copy that the engine has not met, its circuit made: the engine remembers the answers of a bench. */
const withCircuit = (bench: Bench): Bench => {
	const copy = { ...bench };
	circuit(copy);
	return copy;
};

export function netRows(hybrids: number): Row[] {
	const bench = panel(hybrids);
	const { nodes, conductors } = circuit(bench);
	const n = nodes.length;
	const of = `panel of ${hybrids}`;
	const right = countsOf(hybrids);
	const at = new Map(nodes.map((node, i) => [node, i]));
	const joining = conductors.filter((c) => c.joins);
	const ends = Int32Array.from(joining.flatMap((c) => [at.get(c.a)!, at.get(c.b)!]));
	const known = graphOf(n, ends);
	const labels = labelsOf(n, ends);
	mustAgree(`${of}, mnemonist`, [...labels], Array.from(mappingOf(n, ends)));
	const components = connectedComponents(known).map((list) => list.map(Number));
	mustAgree(`${of}, graphology`, [...labels], labelsIn(n, components));
	const plain = netsOf(bench).list.map((list) => list.map((node) => at.get(node)!));
	mustAgree(`${of}, plain engine`, [...labels], labelsIn(n, plain));
	const ours = { run: () => labelsOf(n, ends) };
	const sets = { run: () => mappingOf(n, ends) };
	const graph = { run: () => connectedComponents(graphOf(n, ends)) };
	const alone = { run: () => connectedComponents(known) };
	const byName = { prepare: () => withCircuit(bench), run: (b: Bench) => netsOf(b) };
	const [rounds, many] = hybrids < 1000 ? [11, true] : [5, false];
	return [
		{ what: `${of}: nodes`, count: n, right: right.nodes },
		{ what: `${of}: conductors`, count: conductors.length, right: right.conductors },
		{ what: `${of}: nets`, count: netsOf(bench).list.length, right: right.nets },
		{
			what: `${of}: graphology, graph and components / ours`,
			ratio: ratioOf(graph, ours, rounds),
			...(!many && { target: 300 })
		},
		{ what: `${of}: graphology, components alone / ours`, ratio: ratioOf(alone, ours, rounds) },
		{
			what: `${of}: mnemonist / ours`,
			ratio: ratioOf(sets, ours, rounds),
			...(!many && { target: 6 })
		},
		{ what: `${of}: graphology / ours by name, sorted`, ratio: ratioOf(graph, byName, rounds) }
	];
}
