/** Nets by union-find against connected components of graphology, on the same conductors. */
import Graph from 'graphology';
import { connectedComponents } from 'graphology-components';
import { circuit, netsOf, type Bench } from '../../src/lib/engine';
import { ratioOf, type Row } from './measure';
import { countsOf, panel } from './panels';

function graphOf(bench: Bench) {
	const { nodes, conductors } = circuit(bench);
	const graph = new Graph({ type: 'undirected', multi: true });
	for (const node of nodes) graph.addNode(node);
	for (const c of conductors) if (c.joins) graph.addEdge(c.a, c.b);
	return graph;
}

/** A copy that the engine has not met: it remembers the answers of a bench. */
const fresh = (bench: Bench): Bench => ({ ...bench });
const withCircuit = (bench: Bench): Bench => {
	const copy = fresh(bench);
	circuit(copy);
	return copy;
};

export function netRows(hybrids: number): Row[] {
	const bench = panel(hybrids);
	const { nodes, conductors } = circuit(bench);
	const of = `panel of ${hybrids}`;
	const right = countsOf(hybrids);
	const nets = { prepare: () => withCircuit(bench), run: (b: Bench) => netsOf(b) };
	const whole = { prepare: () => fresh(bench), run: (b: Bench) => netsOf(b) };
	const graph = { run: () => connectedComponents(graphOf(bench)) };
	const known = graphOf(bench);
	const components = { run: () => connectedComponents(known) };
	return [
		{ what: `${of}: nodes`, count: nodes.length, right: right.nodes },
		{ what: `${of}: conductors`, count: conductors.length, right: right.conductors },
		{ what: `${of}: nets`, count: netsOf(bench).list.length, right: right.nets },
		{
			what: `${of}: components by graphology`,
			count: connectedComponents(known).length,
			right: right.nets
		},
		{ what: `${of}: nets / graph and components`, ratio: ratioOf(nets, graph) },
		{ what: `${of}: nets / components alone`, ratio: ratioOf(nets, components) },
		{ what: `${of}: circuit and nets / graph and components`, ratio: ratioOf(whole, graph) }
	];
}
