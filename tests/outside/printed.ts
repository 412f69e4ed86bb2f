/**
 * Comparing an answer with a printed number: it must lie within half a unit of the last printed
 * place, as a reader of the book would round it. Where the printed number is the whole truth (the
 * sum comes out even), `exactly` asks for it to nine figures.
 */
import { expect } from 'vitest';

/** Half a unit in the last place of a printed number: `0.742` → 0.0005, `2.40e-3` → 0.000005. */
export function halfUnit(printed: string): number {
	const [mantissa, exponent = '0'] = printed.split('e');
	const decimals = mantissa!.split('.')[1]?.length ?? 0;
	return 0.5 * 10 ** (Number(exponent) - decimals);
}

/** The value rounds to the printed number. */
export function rounds(what: string, value: number | null, printed: string) {
	expect(value, what).not.toBeNull();
	const off = Math.abs(value! - Number(printed));
	const close = off <= halfUnit(printed) * (1 + 1e-9);
	expect(close, `${what}: ${value} should round to ${printed}`).toBe(true);
}

/** The value is the printed number, to nine figures. */
export function exactly(what: string, value: number | null, printed: number) {
	expect(value, what).not.toBeNull();
	const off = Math.abs(value! - printed) / Math.max(Math.abs(printed), 1e-9);
	expect(off < 1e-9, `${what}: ${value} should be ${printed}`).toBe(true);
}
