/** The hand meter: leads, zeroing, beeper, over-range, and the warning on a live circuit. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import { measuredVolts, readMeter, showOhms, showVolts } from './meter';
import { ohmsPerMetre } from './parts';

/** Two contacts and a wire of next to no length between them, with that much resistance added. */
const wired = (ohms: number) =>
	benchOf({
		sockets: [{ id: 'A', kind: 'jack-ts' }],
		wires: [{ id: 'w', from: 'A.T', to: 'A.S', mm: 1e-9 }],
		faults: [{ kind: 'resistive', wire: 'w', ohms }]
	});
const read = (ohms: number, mode: 'continuity' | 'ohms', zeroed = false) =>
	readMeter(wired(ohms), mode, 'A.T', 'A.S', zeroed);

describe('ohms and continuity', () => {
	it('show the resistance plus 0.2 Ω of leads', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-ts-break' }],
			wires: [{ id: 'w', from: 'A.TN', to: 'A.S', awg: 26, mm: 40 }]
		});
		const reading = readMeter(bench, 'continuity', 'A.T', 'A.S');
		expect(reading.ohms).toBeCloseTo(0.2 + 0.015 + 0.04 * ohmsPerMetre(26), 9);
		expect(reading).toMatchObject({ display: '0.2 Ω', beep: true, warning: null });
		expect(readMeter(bench, 'ohms', 'A.S', 'A.T')).toEqual({ ...reading, beep: false });
	});
	it('show the resistance alone once the leads are zeroed', () => {
		expect(read(5, 'ohms').ohms).toBeCloseTo(5.2, 6);
		expect(read(5, 'ohms', true).ohms).toBeCloseTo(5, 6);
		expect(read(5, 'continuity', true).ohms).toBeCloseTo(5, 6);
	});
	it('show the leads with both probes on one contact', () => {
		expect(readMeter(wired(1), 'ohms', 'A.T', 'A.T')).toMatchObject({
			display: '0.2 Ω',
			ohms: 0.2
		});
		expect(readMeter(wired(1), 'continuity', 'A.T', 'A.T', true)).toMatchObject({
			display: '0.0 Ω',
			ohms: 0,
			beep: true
		});
	});
	it('sound under 30 Ω as shown, in continuity only', () => {
		expect(read(29.79, 'continuity').beep).toBe(true);
		expect(read(29.81, 'continuity').beep).toBe(false);
		expect(read(29.99, 'continuity', true).beep).toBe(true);
		expect(read(30, 'continuity', true).beep).toBe(false);
		expect(read(1, 'ohms').beep).toBe(false);
	});
	it('show over-range past 40 MΩ, and where nothing joins the probes', () => {
		expect(read(39_999_999, 'ohms').ohms).toBeCloseTo(39_999_999.2, 3);
		const over = { display: 'over range', ohms: null, beep: false, warning: null };
		expect(read(40_000_001, 'ohms')).toEqual(over);
		expect(read(40_000_000, 'ohms', true).ohms).not.toBeNull();
		const open = benchOf({ sockets: [{ id: 'A', kind: 'jack-ts' }] });
		for (const mode of ['ohms', 'continuity'] as const)
			expect(readMeter(open, mode, 'A.T', 'A.S')).toEqual(over);
	});
	it('see a load inside a device, which no net shows', () => {
		const bench = benchOf({ devices: [{ id: 'D', kind: 'mic' }] });
		expect(readMeter(bench, 'ohms', 'D.hot', 'D.cold')).toMatchObject({ ohms: 200.2 });
		expect(readMeter(bench, 'continuity', 'D.hot', 'D.cold').beep).toBe(false);
	});
});

describe('a live circuit', () => {
	/** A phantom-fed input whose hot leg is tied to its shield through `ohms`. */
	const live = (ohms: number, phantom = true) =>
		benchOf({
			devices: [{ id: 'D', kind: 'mic-input', phantom }],
			wires: [{ id: 'w', from: 'D.hot', to: 'D.shield', mm: 1e-6 }],
			faults: [{ kind: 'resistive', wire: 'w', ohms }]
		});
	// 48 V behind 6810 Ω beside 6810 + 3000 Ω.
	const behind = (6810 * 9810) / (6810 + 9810);
	const load = (ohms: number) => (ohms * 1e7) / (ohms + 1e7);
	const volts = (ohms: number) => (48 * load(ohms)) / (load(ohms) + behind);

	it('shows its volts, the meter’s own 10 MΩ across it', () => {
		const open = benchOf({ devices: [{ id: 'D', kind: 'mic-input', phantom: true }] });
		expect(measuredVolts(open, 'D.hot', 'D.shield')).toBeCloseTo((48 * 1e7) / (1e7 + behind), 6);
		expect(readMeter(open, 'volts', 'D.hot', 'D.shield')).toMatchObject({
			display: '47.98 V',
			ohms: null,
			beep: false,
			warning: null
		});
		expect(measuredVolts(open, 'D.shield', 'D.cold')).toBeCloseTo((-48 * 1e7) / (1e7 + behind), 6);
		expect(measuredVolts(open, 'D.hot', 'D.cold')).toBe(0);
	});
	it('gives no ohms and no continuity over 0.05 V, whichever way the probes stand', () => {
		expect(volts(4.1)).toBeLessThan(0.05);
		expect(volts(4.3)).toBeGreaterThan(0.05);
		for (const mode of ['ohms', 'continuity'] as const) {
			const warned = readMeter(live(4.3), mode, 'D.hot', 'D.shield');
			expect(warned).toMatchObject({ ohms: null, beep: false });
			expect(warned.warning).toMatch(/live/);
			expect(readMeter(live(4.3), mode, 'D.shield', 'D.hot').warning).toMatch(/live/);
			const fine = readMeter(live(4.1), mode, 'D.hot', 'D.shield', true);
			expect(fine).toMatchObject({ warning: null });
			expect(fine.ohms).toBeCloseTo((4.1 * behind) / (4.1 + behind), 6);
		}
		expect(measuredVolts(live(4.3), 'D.hot', 'D.shield')).toBeCloseTo(volts(4.3), 9);
	});
	it('may be measured in ohms between its two legs, which stand at the same potential', () => {
		const open = benchOf({ devices: [{ id: 'D', kind: 'mic-input', phantom: true }] });
		const reading = readMeter(open, 'ohms', 'D.hot', 'D.cold', true);
		expect(reading.ohms).toBeCloseTo((3000 * 13620) / (3000 + 13620), 6);
	});
	it('is dead with phantom off', () => {
		expect(readMeter(live(100, false), 'ohms', 'D.hot', 'D.shield').warning).toBeNull();
	});
	it('is no live circuit for a signal: sources stand at zero', () => {
		const bench = benchOf({ devices: [{ id: 'D', kind: 'line-out' }] });
		expect(readMeter(bench, 'ohms', 'D.hot', 'D.cold')).toMatchObject({ ohms: 100.2 });
		expect(readMeter(bench, 'volts', 'D.hot', 'D.cold')).toMatchObject({ volts: 0 });
	});
	it('reads zero volts between parts that nothing ties together', () => {
		const bench = benchOf({
			devices: [
				{ id: 'D', kind: 'mic-input', phantom: true },
				{ id: 'E', kind: 'mic-input', phantom: true }
			]
		});
		expect(measuredVolts(bench, 'D.hot', 'E.shield')).toBe(0);
		expect(readMeter(bench, 'ohms', 'D.hot', 'E.hot')).toMatchObject({ display: 'over range' });
	});
});

describe('the display', () => {
	it.each([
		[0, '0.0 Ω'],
		[0.2254, '0.2 Ω'],
		[29.97, '30.0 Ω'],
		[999.94, '999.9 Ω'],
		[999.96, '1.000 kΩ'],
		[3000, '3.000 kΩ'],
		[68_100, '68.10 kΩ'],
		[470_000, '470.0 kΩ'],
		[999_960, '1.000 MΩ'],
		[1_250_000, '1.250 MΩ'],
		[39_999_999, '40.00 MΩ']
	])('%f ohms as %s', (ohms, shown) => {
		expect(showOhms(ohms)).toBe(shown);
	});
	it.each([
		[0, '0.0 mV'],
		[0.0513, '51.3 mV'],
		[-0.5, '-500.0 mV'],
		[0.9996, '1.00 V'],
		[-48, '-48.00 V'],
		[47.967, '47.97 V']
	])('%f volts as %s', (volts, shown) => {
		expect(showVolts(volts)).toBe(shown);
	});
});
