/** What inputs hear: levels worked out by hand as voltage dividers, polarity, silence, clashes. */
import { describe, expect, it } from 'vitest';
import type { Bench } from './bench';
import { benchOf } from './bench.fixture';
import { hearing, hears } from './hears';
import { voltage } from './solve';

const dB = (ratio: number) => 20 * Math.log10(ratio);
/** Two devices joined terminal by terminal with wires of next to no length. */
const cabled = (
	from: string,
	to: string,
	pairs: [string, string][],
	more: Record<string, unknown> = {}
): Bench =>
	benchOf({
		devices: [
			{ id: 'OUT', kind: from },
			{ id: 'IN', kind: to }
		],
		wires: pairs.map(([a, b], i) => ({ id: `w${i}`, from: `OUT.${a}`, to: `IN.${b}`, mm: 1e-6 })),
		...more
	});
const balanced: [string, string][] = [
	['hot', 'hot'],
	['cold', 'cold'],
	['shield', 'shield']
];
const parallel = (a: number, b: number) => (a * b) / (a + b);

describe('levels', () => {
	it('a microphone of 200 Ω on an input of 3 kΩ', () => {
		const bench = cabled('mic', 'mic-input', [...balanced.slice(0, 2), ['shell', 'shield']]);
		const heard = hears(bench)['IN']!['OUT']!;
		expect(heard.db).toBeCloseTo(dB(3000 / 3200), 6);
		expect(heard.db).toBeCloseTo(-0.561, 3);
		expect(heard.polarity).toBe('+');
	});
	it('phantom feed loads the microphone with its resistors, and adds no signal', () => {
		const bench = cabled('mic', 'mic-input', balanced.slice(0, 2), {
			devices: [
				{ id: 'OUT', kind: 'mic' },
				{ id: 'IN', kind: 'mic-input', phantom: true }
			]
		});
		const load = parallel(3000, 2 * 6810);
		expect(hearing(bench, 'IN', 'OUT')!.db).toBeCloseTo(dB(load / (load + 200)), 6);
		expect(hears({ ...bench, wires: [] })).toEqual({ IN: {} });
	});
	it('phantom volts on one leg are no signal, for an input that hangs on that leg', () => {
		const bench = cabled('mic-input', 'line-in-unbalanced', balanced.slice(0, 1), {
			devices: [
				{ id: 'OUT', kind: 'mic-input', phantom: true },
				{ id: 'IN', kind: 'line-in-unbalanced' },
				{ id: 'FAR', kind: 'mic' }
			],
			faults: [{ kind: 'bridge', between: ['OUT.shield', 'IN.shield'] }]
		});
		expect(voltage(bench, 'IN.hot', 'IN.shield')).toBeGreaterThan(20);
		expect(hears(bench)).toEqual({ OUT: {}, IN: {} });
	});
	it('a balanced output on a balanced input: half a volt on each leg', () => {
		const bench = cabled('line-out', 'line-in', balanced);
		expect(hearing(bench, 'IN', 'OUT')!.db).toBeCloseTo(dB(10_000 / 10_050), 6);
	});
	it('one leg of a balanced output is 6 dB down', () => {
		const bench = cabled('line-out', 'line-in-unbalanced', [
			['hot', 'hot'],
			['shield', 'shield']
		]);
		expect(hearing(bench, 'IN', 'OUT')!.db).toBeCloseTo(dB((0.5 * 10_000) / 10_050), 6);
		expect(hearing(bench, 'IN', 'OUT')!.polarity).toBe('+');
		const cold = cabled('line-out', 'line-in-unbalanced', [
			['cold', 'hot'],
			['shield', 'shield']
		]);
		expect(hearing(cold, 'IN', 'OUT')).toEqual({
			db: hearing(bench, 'IN', 'OUT')!.db,
			polarity: '-'
		});
	});
	it('an unbalanced output on an unbalanced input', () => {
		const bench = cabled('line-out-unbalanced', 'line-in-unbalanced', [
			['hot', 'hot'],
			['shield', 'shield']
		]);
		expect(hearing(bench, 'IN', 'OUT')!.db).toBeCloseTo(dB(10_000 / 10_100), 6);
	});
	it('needs the way back: hot alone is not heard', () => {
		const bench = cabled('line-out-unbalanced', 'line-in-unbalanced', [['hot', 'hot']]);
		expect(hears(bench)).toEqual({ IN: {} });
	});
	it('legs exchanged turn the polarity over and leave the level', () => {
		const right = hearing(cabled('line-out', 'line-in', balanced), 'IN', 'OUT')!;
		const swapped = cabled('line-out', 'line-in', [
			['hot', 'cold'],
			['cold', 'hot']
		]);
		expect(hearing(swapped, 'IN', 'OUT')!.polarity).toBe('-');
		expect(hearing(swapped, 'IN', 'OUT')!.db).toBeCloseTo(right.db, 6);
	});
	it('both legs on one are silence', () => {
		const bench = cabled('line-out', 'line-in', [
			['hot', 'hot'],
			['hot', 'cold'],
			['shield', 'shield']
		]);
		expect(hearing(bench, 'IN', 'OUT')).toBeNull();
	});
});

describe('silence begins under −80 dB', () => {
	const through = (ohms: number) =>
		cabled(
			'line-out-unbalanced',
			'line-in-unbalanced',
			[
				['hot', 'hot'],
				['shield', 'shield']
			],
			{ faults: [{ kind: 'resistive', wire: 'w0', ohms }] }
		);
	// 10 kΩ under 100 MΩ in all is one ten-thousandth: −80 dB.
	const edge = 1e8 - 10_000 - 100;
	it('and not at it', () => {
		expect(hearing(through(edge * 0.999), 'IN', 'OUT')!.db).toBeCloseTo(-79.991, 3);
		expect(hearing(through(edge), 'IN', 'OUT')!.db).toBeCloseTo(-80, 6);
		expect(hearing(through(edge * 1.001), 'IN', 'OUT')).toBeNull();
	});
});

describe('several sources and inputs', () => {
	const tied = benchOf({
		devices: [
			{ id: 'A', kind: 'line-out' },
			{ id: 'B', kind: 'line-out' },
			{ id: 'IN', kind: 'line-in' },
			{ id: 'FAR', kind: 'line-in' }
		],
		wires: balanced.flatMap(([t]) => [
			{ id: `a-${t}`, from: `A.${t}`, to: `IN.${t}`, mm: 1e-6 },
			{ id: `b-${t}`, from: `B.${t}`, to: `IN.${t}`, mm: 1e-6 }
		])
	});
	it('each is heard against the resistance of the other, at zero volts', () => {
		const load = parallel(50, 10_000);
		const expected = dB(load / (load + 50));
		const heard = hears(tied)['IN']!;
		expect(Object.keys(heard)).toEqual(['A', 'B']);
		expect(heard['A']!.db).toBeCloseTo(expected, 6);
		expect(heard['B']!.db).toBeCloseTo(expected, 6);
	});
	it('every input is listed, the silent ones empty', () => {
		expect(hears(tied)['FAR']).toEqual({});
		expect(hears(benchOf({ devices: [{ id: 'M', kind: 'mic' }] }))).toEqual({});
	});
	it('asking a source to hear, or an input to sound, gets nothing', () => {
		expect(hearing(tied, 'A', 'B')).toBeNull();
		expect(hearing(tied, 'IN', 'FAR')).toBeNull();
		expect(hearing(tied, 'nobody', 'A')).toBeNull();
	});
});
