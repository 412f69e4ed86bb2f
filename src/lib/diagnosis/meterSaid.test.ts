import { describe, expect, it } from 'vitest';
import { BEEPS_UNDER, MOST_OHMS } from '../engine';
import { heardOf, parseOhms } from './meterSaid';

describe('what a real meter said', () => {
	it.each([
		['0.3', 'Ω', 0.3],
		[' 4,7 ', 'kΩ', 4700],
		['.5', 'MΩ', 5e5],
		['1', 'Ω', 1],
		['OL', 'Ω', Infinity],
		['0.L', 'MΩ', Infinity],
		['.OL', 'kΩ', Infinity],
		['4,7k', 'Ω', 4700],
		['12 Ω', 'kΩ', 12],
		['1.2 MΩ', 'Ω', 1.2e6],
		['∞', 'Ω', Infinity]
	] as const)('%s %s is %d ohms', (text, unit, ohms) => {
		expect(parseOhms(text, unit)).toEqual({ ok: true, value: ohms });
	});

	it.each(['', 'beep', '-3', '1e3', '1.2.3', '4k7', '1.000,5', '3 m', '5 V', '.'])(
		'"%s" is no reading',
		(text) => {
			expect(parseOhms(text, 'Ω').ok).toBe(false);
		}
	);

	it('a minus is a warning of its own, since the line may be live', () => {
		const read = parseOhms('−0.4', 'Ω');
		expect(read.ok ? '' : read.problem.message).toMatch(/may not be dead/);
	});

	it.each([
		['-0.2', 'Ω', true],
		['−0.1', 'Ω', true],
		['-3', 'Ω', false],
		['-0.2', 'kΩ', false]
	] as const)('"%s" %s may be a meter that was zeroed on its leads: %s', (text, unit, may) => {
		const read = parseOhms(text, unit);
		const said = read.ok ? '' : read.problem.message;
		expect(said.includes('zeroed')).toBe(may);
		expect(said).toMatch(/may not be dead/);
	});

	it('is joined below the limit of the tone, apart past the range, and neither between', () => {
		expect(heardOf(0)).toBe('joined');
		expect(heardOf(BEEPS_UNDER - 0.1)).toBe('joined');
		expect(heardOf(BEEPS_UNDER)).toBe('between');
		expect(heardOf(MOST_OHMS)).toBe('between');
		expect(heardOf(MOST_OHMS + 1)).toBe('apart');
		expect(heardOf(Infinity)).toBe('apart');
	});
});
