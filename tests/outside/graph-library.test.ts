/**
 * Nets against the connected components of graphology, on 1,000 random benches. The edges given to
 * the library are derived from hand-written tables, not by the engine.
 *
 * Source: graphology and graphology-components, general-purpose graph libraries.
 */
import fc from 'fast-check';
import Graph from 'graphology';
import { connectedComponents } from 'graphology-components';
import { describe, expect, it } from 'vitest';
import { DEVICE_KINDS, FAULT_KINDS, PLUG_KINDS, SOCKET_KINDS } from '../../src/lib/engine/bench';
import { circuit, type Conductor } from '../../src/lib/engine/circuit';
import { netsOf } from '../../src/lib/engine/nets';
import { RUNS, benches } from './benches';
import { jointsByHand, nodesByHand, type Joint } from './by-hand';

const plain = (x: string, y: string) => (x < y ? -1 : x > y ? 1 : 0);

function componentsOf(nodes: readonly string[], joints: readonly Joint[]): string[][] {
	const graph = new Graph({ type: 'undirected', multi: true });
	for (const node of nodes) graph.addNode(node);
	for (const { a, b, joins } of joints) if (joins) graph.addEdge(a, b);
	const sets = connectedComponents(graph).map((set) => [...set].sort(plain));
	return sets.sort((x, y) => plain(x[0]!, y[0]!));
}

describe('1,000 random benches', () => {
	const sample = fc.sample(benches(), RUNS);
	it('have the nets that a graph library finds', () => {
		expect(sample).toHaveLength(1000);
		for (const bench of sample)
			expect(netsOf(bench).list, JSON.stringify(bench)).toEqual(
				componentsOf(nodesByHand(bench), jointsByHand(bench))
			);
	});
	it('have the conductors of the hand-written tables, ohms and all', () => {
		const line = ({ a, b, ohms, joins }: Joint | Conductor) =>
			`${[a, b].sort(plain).join(' ')} ${ohms.toPrecision(10)} ${joins}`;
		for (const bench of sample)
			expect(circuit(bench).conductors.map(line).sort(plain), JSON.stringify(bench)).toEqual(
				jointsByHand(bench).map(line).sort(plain)
			);
	});
	it('are of all kinds, so that the comparison means something', () => {
		const counts = new Map<string, number>();
		const count = (word: string) => counts.set(word, (counts.get(word) ?? 0) + 1);
		for (const bench of sample) {
			for (const s of bench.sockets) count(s.kind);
			for (const p of bench.plugs) count(`${p.kind} ${p.socket === null ? 'loose' : 'in'}`);
			for (const d of bench.devices) count(`${d.kind}${d.phantom ? ' live' : ''}`);
			for (const f of bench.faults) count(f.kind);
			for (const s of bench.sockets) if (s.bush === 'metal' && bench.panel.metal) count('bush');
			if (bench.cables.some((c) => c.cores.length)) count('cable');
		}
		for (const kind of [
			...SOCKET_KINDS,
			...PLUG_KINDS.flatMap((k) => [`${k} in`, `${k} loose`]),
			...[...DEVICE_KINDS, 'mic-input live', ...FAULT_KINDS, 'bush', 'cable']
		])
			expect(counts.get(kind) ?? 0, kind).toBeGreaterThan(30);
		const nets = sample.map((bench) => netsOf(bench).list.length);
		expect(new Set(nets).size).toBeGreaterThan(20);
	});
});
