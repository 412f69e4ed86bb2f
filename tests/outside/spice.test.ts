/**
 * Ohms and volts of 200 random benches against ngspice, through the exported netlist.
 *
 * Source: ngspice (Debian), a general-purpose circuit simulator. The netlist hangs every node on the
 * reference through 1e12 Ω, so that a floating part is no singular matrix. Those leaks lie beside every
 * pair, and the tolerance allows for them: each of the bench's nodes may take R/1e12 of the answer.
 * Wires are of an installer's lengths here: beside a wire of some micro-ohms, 1e12 Ω is lost in the
 * rounding of ngspice's matrix, which then is singular after all.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from '../../src/lib/engine/bench';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { circuit } from '../../src/lib/engine/circuit';
import { LEAK, netlistOf } from '../../src/lib/engine/netlist';
import { resistance, voltage } from '../../src/lib/engine/solve';
import { RUNS, benchesWithNodes } from './benches';
import { askSpice, runSpice, type Answered } from './spice';

const BENCHES = 200;
const PAIRS = 8;

/** The bench with no wire shorter than 40 mm or fatter than 20 AWG. */
const installed = (bench: Bench): Bench => ({
	...bench,
	wires: bench.wires.map((w) => ({ ...w, mm: Math.max(w.mm, 40), awg: Math.max(w.awg, 20) })),
	cables: bench.cables.map((c) => ({ ...c, m: Math.max(c.m, 0.5), awg: Math.max(c.awg, 20) }))
});

const drawn = fc
	.sample(benchesWithNodes(4 * PAIRS), { seed: RUNS.seed, numRuns: BENCHES })
	.map(({ bench, at }) => {
		const pairs = at.flatMap((a, i) => {
			const b = at[i + 1];
			return i % 2 === 0 && b !== undefined && a !== b ? [[a, b] as const] : [];
		});
		return { bench: installed(bench), ohms: pairs.slice(0, PAIRS), volts: pairs.slice(PAIRS) };
	});
let answered: Answered[] = [];
beforeAll(() => {
	answered = askSpice(drawn.map((d) => ({ ...d, netlist: netlistOf(d.bench) })));
}, 120_000);

/** What leaks beside a resistance may take away of it, as a fraction. */
const leaked = (bench: Bench, ohms: number): number => (circuit(bench).nodes.length * ohms) / LEAK;
const rows = (what: 'ohms' | 'volts') =>
	drawn.flatMap(({ bench, [what]: pairs }, k) =>
		pairs.map(([a, b], i) => ({ bench, a, b, spice: answered[k]![what][i]! }))
	);

describe(`${BENCHES} random benches against ngspice`, () => {
	it('ask enough for the comparison to mean something', () => {
		const ohmsRows = rows('ohms');
		const finite = ohmsRows.filter((row) => row.spice < 1e9);
		expect(ohmsRows.length).toBeGreaterThan(1000);
		expect(finite.length).toBeGreaterThan(200);
		expect(ohmsRows.length - finite.length).toBeGreaterThan(200);
		expect(rows('volts').filter((row) => Math.abs(row.spice) > 0.05).length).toBeGreaterThan(20);
	});
	it('have the same ohms, and are open where ngspice sees nothing but leaks', () => {
		for (const { bench, a, b, spice } of rows('ohms')) {
			const ohms = resistance(bench, a, b);
			const text = `${a} ${b}: ${ohms} against ${spice}\n${JSON.stringify(bench)}`;
			// Open: the leaks of two parts in series, each at least 1e12 over its number of nodes.
			if (ohms === Infinity) expect(spice > LEAK / 200, text).toBe(true);
			else expect(Math.abs(ohms - spice) <= (1e-6 + leaked(bench, ohms)) * ohms, text).toBe(true);
		}
	});
	it('have the same volts wherever something ties the two', () => {
		for (const { bench, a, b, spice } of rows('volts')) {
			const volts = voltage(bench, a, b);
			if (volts === null) continue;
			const off = 1e-6 + 48 * leaked(bench, resistance(bench, a, b));
			const text = `${a} ${b}: ${volts} against ${spice}\n${JSON.stringify(bench)}`;
			expect(Math.abs(volts - spice) <= off, text).toBe(true);
		}
	});
});

describe('a bench that is known', () => {
	it('a phantom-fed input and a coil have the volts and ohms of the hand sum', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'three-pin-female' }],
			devices: [
				{ id: 'D', kind: 'mic-input', phantom: true },
				{ id: 'M', kind: 'mic' }
			],
			wires: [{ id: 'w', from: 'D.hot', to: 'M.hot' }]
		});
		const [answer] = askSpice([
			{
				netlist: netlistOf(bench),
				ohms: [
					['M.hot', 'M.cold'],
					['D.hot', 'D.cold'],
					['A.1', 'A.2']
				],
				volts: [['M.cold', 'D.chassis']]
			}
		]);
		const { ohms, volts } = answer!;
		expect(ohms[0]).toBeCloseTo(200, 6);
		expect(ohms[1]).toBeCloseTo((3000 * 13620) / 16620, 4);
		expect(ohms[2]).toBeGreaterThan(1e11);
		expect(volts[0]).toBeCloseTo(48, 5);
	});
	it('the netlist runs as it stands', () => {
		for (const { bench } of drawn
			.filter((d) => circuit(d.bench).conductors.length > 0)
			.slice(0, 20))
			expect(runSpice(netlistOf(bench))).toMatch(/Node\s+Voltage/);
	});
});
