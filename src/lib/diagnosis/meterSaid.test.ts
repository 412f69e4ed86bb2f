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
		['∞', 'Ω', Infinity]
	] as const)('%s %s is %d ohms', (text, unit, ohms) => {
		expect(parseOhms(text, unit)).toEqual({ ok: true, value: ohms });
	});

	it.each(['', 'beep', '-3', '1e3', '1.2.3', '4k7'])('"%s" is no reading', (text) => {
		expect(parseOhms(text, 'Ω').ok).toBe(false);
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
