/** The SPICE text: one resistor a conductor, one source a supply, a comment for every node. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import { circuit } from './circuit';
import { netlistOf } from './netlist';

const bench = benchOf({
	title: 'Stage\n.end box ü',
	panel: { metal: true },
	sockets: [
		{ id: 'a', kind: 'hybrid-9' },
		{ id: 'A', kind: 'jack-ts', bush: 'metal' }
	],
	plugs: [{ id: 'p', kind: 'shorting', socket: 'a' }],
	wires: [{ id: 'w', from: 'A.T', to: 'a.2' }],
	devices: [
		{ id: 'D', kind: 'mic-input', phantom: true },
		{ id: 'E', kind: 'line-out' }
	],
	cables: [{ id: 'c', m: 10, cores: [['E.hot', 'D.hot']] }]
});
const lines = netlistOf(bench).split('\n');
const cards = (letter: string) => lines.filter((l) => l.startsWith(letter));

describe('the netlist of a bench', () => {
	it('has one resistor for each conductor, with its ohms', () => {
		const ohms = cards('R').map((card) => Number(card.split(' ')[3]));
		expect(ohms).toEqual(circuit(bench).conductors.map((c) => c.ohms));
	});
	it('has one source for each supply: 48 V for phantom, 0 V for a signal', () => {
		const volts = cards('V').map((card) => card.split(' ').slice(3).join(' '));
		// A line-out is two half sources about its shield.
		expect(volts.sort()).toEqual(['DC 0', 'DC 0', 'DC 48']);
	});
	it('names every node in a comment, once, by a number above the reference', () => {
		const named = lines.flatMap(
			(l) => /^\* node (\d+) = (\S+\.\S+|panel)$/.exec(l)?.slice(1, 3) ?? []
		);
		const numbers = named.filter((_, i) => i % 2 === 0).map(Number);
		const names = named.filter((_, i) => i % 2 === 1);
		expect(names).toEqual([...circuit(bench).nodes]);
		expect(numbers).toEqual(numbers.map((_, i) => i + 1));
	});
	it('uses no node that it does not name, save the reference', () => {
		const known = new Set(lines.flatMap((l) => /^\* node (\d+) = /.exec(l)?.[1] ?? []));
		for (const card of [...cards('R'), ...cards('V')])
			for (const node of card.split(' ').slice(1, 3)) expect(known).toContain(node);
	});
	it('keeps a title on its one line, in plain characters, and ends in .end', () => {
		expect(lines[0]).toBe('* Solderside bench: Stage?.end box ?');
		expect(lines.filter((l) => l.startsWith('.'))).toEqual([
			'.options rshunt=1e+12',
			'.op',
			'.end'
		]);
		expect(lines.at(-1)).toBe('');
	});
	it('of an empty bench has no cards', () => {
		expect(netlistOf(benchOf({}))).not.toMatch(/^[RV]/m);
	});
});
