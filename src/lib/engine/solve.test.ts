/** The solver at its edges: the very small beside the very large, floating parts, sources. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import { resistance, resistanceIn, voltage, voltageIn, type Branch } from './solve';

const r = (a: string, b: string, ohms: number, volts?: number): Branch => ({
	a,
	b,
	ohms,
	...(volts !== undefined && { volts })
});

describe('resistance', () => {
	it('adds in series and halves in parallel', () => {
		expect(resistanceIn([r('a', 'b', 2), r('b', 'c', 3)], 'a', 'c')).toBe(5);
		expect(resistanceIn([r('a', 'b', 2), r('b', 'a', 2)], 'a', 'b')).toBe(1);
	});
	it('is exact with a milliohm beside a gigaohm', () => {
		const mixed = [r('a', 'b', 1e9), r('a', 'b', 1e-3), r('b', 'c', 1e9), r('c', 'd', 1e-3)];
		expect(resistanceIn(mixed, 'a', 'b')).toBeCloseTo(1e-3, 14);
		expect(resistanceIn(mixed, 'c', 'd')).toBe(1e-3);
		expect(resistanceIn(mixed, 'a', 'd')).toBeCloseTo(1e9 + 2e-3, 2);
	});
	it('of a cube of equal edges, corner to corner, is five sixths of an edge', () => {
		// A classic; the sum is 1/3 + 1/6 + 1/3 by symmetry.
		const corners = [...Array(8).keys()];
		const cube = corners.flatMap((i) =>
			[1, 2, 4].filter((bit) => !(i & bit)).map((bit) => r(`${i}`, `${i | bit}`, 6))
		);
		expect(cube).toHaveLength(12);
		expect(resistanceIn(cube, '0', '7')).toBeCloseTo(5, 10);
	});
	it('is infinite where nothing joins the two, and zero from a node to itself', () => {
		const islands = [r('a', 'b', 1), r('c', 'd', 1)];
		expect(resistanceIn(islands, 'a', 'c')).toBe(Infinity);
		expect(resistanceIn(islands, 'a', 'nowhere')).toBe(Infinity);
		expect(resistanceIn([], 'a', 'b')).toBe(Infinity);
		expect(resistanceIn(islands, 'a', 'a')).toBe(0);
	});
	it('does not see sources, nor a branch from a node to itself', () => {
		expect(resistanceIn([r('a', 'b', 4, 100), r('a', 'a', 1, 5)], 'a', 'b')).toBe(4);
	});
	it.each([1e-300, 1e-320, 5e-324])('stays a number for a wire %d mm long', (mm) => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-trs-break' }],
			wires: [
				{ id: 'w', from: 'A.T', to: 'A.S', mm },
				{ id: 'v', from: 'A.R', to: 'A.S', mm }
			]
		});
		expect(resistance(bench, 'A.T', 'A.R')).toBeLessThan(1e-90);
		expect(resistance(bench, 'A.TN', 'A.RN')).toBeCloseTo(0.03, 9);
	});
	it('counts device insides, which nets leave out', () => {
		const bench = benchOf({ devices: [{ id: 'D', kind: 'line-in' }] });
		expect(resistance(bench, 'D.hot', 'D.cold')).toBe(20_000);
		expect(resistance(bench, 'D.hot', 'D.chassis')).toBe(10_000.01);
	});
});

describe('voltage', () => {
	it('divides, is signed, and is the source’s own where no current flows', () => {
		const divider = [r('a', '0', 3000, 9), r('a', '0', 6000)];
		expect(voltageIn(divider, 'a', '0')).toBeCloseTo(6, 12);
		expect(voltageIn(divider, '0', 'a')).toBeCloseTo(-6, 12);
		expect(voltageIn([r('a', '0', 1e6, 9)], 'a', '0')).toBe(9);
	});
	it('is null where nothing ties the two, zero where something does and no source stands', () => {
		expect(voltageIn([r('a', 'b', 1, 5), r('c', 'd', 1)], 'a', 'c')).toBeNull();
		expect(voltageIn([r('c', 'd', 1)], 'c', 'd')).toBe(0);
		expect(voltageIn([], 'c', 'c')).toBe(0);
	});
	it('of phantom power is 48 between each leg and the shield, 0 between the legs', () => {
		const bench = benchOf({
			devices: [
				{ id: 'D', kind: 'mic-input', phantom: true },
				{ id: 'E', kind: 'line-out' }
			]
		});
		expect(voltage(bench, 'D.hot', 'D.shield')).toBeCloseTo(48, 9);
		expect(voltage(bench, 'D.chassis', 'D.cold')).toBeCloseTo(-48, 9);
		expect(voltage(bench, 'D.hot', 'D.cold')).toBe(0);
		expect(voltage(bench, 'D.hot', 'E.hot')).toBeNull();
		expect(voltage(bench, 'E.hot', 'E.cold')).toBe(0);
	});
	it('of two supplies in one circuit is the sum of what each gives alone', () => {
		const one = [r('a', '0', 100, 10), r('b', '0', 50), r('a', 'b', 20)];
		const other = [r('a', '0', 100), r('b', '0', 50, -3), r('a', 'b', 20)];
		const both = [r('a', '0', 100, 10), r('b', '0', 50, -3), r('a', 'b', 20)];
		const at = (branches: Branch[]) => voltageIn(branches, 'a', 'b')!;
		expect(at(both)).toBeCloseTo(at(one) + at(other), 10);
	});
});
