/** The meter's readings and what inputs hear, in words. */
import { describe, expect, it } from 'vitest';
import { readMeter, type Bench } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { heardWords } from './heard';
import { readingWords } from './reading';

// 6810 Ω beside 3000 + 6810 Ω is 4020 Ω, and 48 V · 10 MΩ / (10 MΩ + 4020 Ω) is 47.98 V.
describe('a reading', () => {
	const bench = benchOf({
		sockets: [{ id: 'A', kind: 'jack-ts-break' }],
		devices: [
			{ id: 'D', kind: 'mic-input' },
			{ id: 'P', kind: 'mic-input', phantom: true }
		]
	});
	it.each([
		['continuity', 'A.T', 'A.TN', 'sounds', 'Sounds: 0.2 Ω between the probes.'],
		[
			'continuity',
			'D.hot',
			'D.cold',
			'silent',
			'Silent: 3.000 kΩ between the probes, and the tone wants less than 30 Ω.'
		],
		[
			'continuity',
			'A.T',
			'A.S',
			'over range',
			'Silent, over range: nothing the meter can find joins the probes.'
		],
		[
			'ohms',
			'A.T',
			'A.S',
			'over range',
			'Over range: nothing the meter can find joins the probes.'
		],
		['ohms', 'D.hot', 'D.cold', 'reads', 'Reads 3.000 kΩ.'],
		['volts', 'P.hot', 'P.shield', 'reads', 'Reads 47.98 V: the red probe is above the black one.'],
		['volts', 'P.shield', 'P.hot', 'reads', 'Reads 47.98 V: the red probe is below the black one.'],
		['volts', 'A.T', 'A.S', 'reads', 'Reads no voltage between the probes.']
	] as const)('in %s from %s to %s has word and sentence', (mode, red, black, word, said) => {
		const words = readingWords(readMeter(bench, mode, red, black), mode);
		expect([words.word, words.sentence]).toEqual([word, said]);
	});
	it('of a live circuit warns', () => {
		const words = readingWords(readMeter(bench, 'ohms', 'P.hot', 'P.shield'), 'ohms');
		expect(words.word).toBe('live circuit');
		expect(words.sentence).toMatch(/^Live circuit: 47\.98 V stands between the probes/);
	});
});

describe('what is heard', () => {
	const bench = (...plugged: string[]): Bench =>
		benchOf({
			devices: [
				{ id: 'IN', kind: 'line-in' },
				{ id: 'X', kind: 'line-out' },
				{ id: 'Y', kind: 'line-out' }
			],
			cables: plugged.map((cores, i) => ({ id: `c${i}`, m: 1, cores: JSON.parse(cores) }))
		});
	const from = (source: string, hot = 'hot', cold = 'cold') =>
		JSON.stringify([
			[`${source}.hot`, `IN.${hot}`],
			[`${source}.cold`, `IN.${cold}`]
		]);
	it('is nothing without a source', () =>
		expect(heardWords(bench())).toEqual([
			{ input: 'IN', lines: [], clash: false, sentence: 'IN hears nothing.' }
		]));
	it('has level and polarity', () => {
		expect(heardWords(bench(from('X')))[0]!.sentence).toBe(
			'IN hears X at 0.0 dB, polarity kept (+).'
		);
		expect(heardWords(bench(from('X', 'cold', 'hot')))[0]!.sentence).toMatch(
			/polarity reversed \(−\)\.$/
		);
	});
	it('is a clash when two sources meet', () => {
		const [heard] = heardWords(bench(from('X'), from('Y')));
		expect(heard!.clash).toBe(true);
		expect(heard!.lines.map((l) => l.source)).toEqual(['X', 'Y']);
		expect(heard!.sentence).toMatch(/^IN hears X at −6\.\d dB.* and Y at .*clash/);
	});
});
