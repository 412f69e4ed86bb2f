/**
 * Phantom power: the nominal tables as networks of the solver, and the bench's own input, whose feed
 * resistors are 6810 Ω (the preferred value next to the nominal 6.8 kΩ).
 *
 * Sources: supply voltages and feed resistors of P48, P24, P12: IEC 61938 (STD, as reported). The
 * currents and voltages are worked out from them (CALC), the sum beside each row. T-power, 12 V
 * through 180 Ω in each leg: an open textbook (BOOK). Pin 1 as the return: the same (BOOK). Meter
 * of 10 MΩ: Kuphaldt, Lessons in Electric Circuits, DC ch. 8 (BOOK).
 */
import { describe, expect, it } from 'vitest';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { measuredVolts } from '../../src/lib/engine/meter';
import { isJoined } from '../../src/lib/engine/nets';
import { voltage, voltageIn, type Branch } from '../../src/lib/engine/solve';
import { R, amps, volts } from './networks';
import { exactly, rounds } from './printed';

/** Feed of pins 2 and 3 over pin 1. */
const feed = (supply: number, ohms: number): Branch[] => [
	R('2', '1', ohms, supply),
	R('3', '1', ohms, supply)
];
/** A short: so little that no printed place sees it. */
const short = (a: string, b: string) => R(a, b, 1e-6);
const milliamps = (net: Branch[], branch: Branch) => amps([...net, branch], branch) * 1e3;

describe('the nominal tables', () => {
	it.each([
		['P48', 48, 6800, '7.059', '14.118'],
		['P24', 24, 1200, '20.0', '40.0'],
		['P12', 12, 680, '17.65', '35.29']
	])('%s: %f V through %f Ω', (_, supply, ohms, one, both) => {
		// CALC: supply / ohms; twice that with both legs shorted.
		const net = feed(supply, ohms);
		rounds('mA, one leg shorted to 1', milliamps(net, short('2', '1')), one);
		rounds('mA, the other leg', milliamps(net, short('3', '1')), one);
		const shorts = [short('2', '1'), short('3', '1')];
		const sum = shorts.reduce((mA, s) => mA + amps([...net, ...shorts], s) * 1e3, 0);
		rounds('mA, both legs shorted to 1', sum, both);
		exactly('V between 2 and 1, nothing connected', volts(net, '2', '1'), supply);
		exactly('V between 2 and 3', volts(net, '2', '3'), 0);
	});
	it.each([
		[44, '6.471'],
		[52, '7.647']
	])('P48 at its limit of %f V: one leg shorted draws %s mA', (supply, mA) => {
		rounds('mA', milliamps(feed(supply, 6800), short('2', '1')), mA);
	});
	it('a 10 MΩ voltmeter from 2 to 1 reads 47.967 V', () => {
		// CALC: 48 × 10 MΩ / (10 MΩ + 6.8 kΩ).
		rounds('V', volts([...feed(48, 6800), R('2', '1', 10e6)], '2', '1'), '47.967');
		exactly('V from 2 to 3', volts([...feed(48, 6800), R('2', '3', 10e6)], '2', '3'), 0);
	});
	it('a TS plug in a phantom-fed TRS jack, nothing joining tip and ring', () => {
		// The plug's sleeve puts the ring leg (3) on 1; the tip leg (2) carries nothing.
		const net = [...feed(48, 6800), short('3', '1')];
		rounds('mA in the ring leg', amps(net, net[2]!) * 1e3, '7.059');
		rounds('V on the tip', volts(net, '2', '1'), '48.000');
	});
	it.each([
		[150, '1.036', '6.906'],
		[200, '1.371', '6.857'],
		[600, '3.892', '6.486']
	])('the same with a coil of %i Ω from 2 to 3: tip %s V, %s mA in the coil', (coil, tip, mA) => {
		// CALC: 48 V over 6800 Ω and the coil in series.
		const through = R('2', '3', coil);
		const net = [...feed(48, 6800), short('3', '1'), through];
		rounds('V on the tip', volts(net, '2', '1'), tip);
		rounds('mA in the coil', amps(net, through) * 1e3, mA);
	});
	it('T-power: 12 V through 180 Ω in each leg, 2 and 3 shorted, draws 33.3 mA', () => {
		const net = [R('2', 'supply', 180, 12), R('supply', '3', 180)];
		rounds('mA', milliamps(net, short('2', '3')), '33.3');
	});
});

describe('the bench’s input: 48 V, 6810 Ω a leg, 3 kΩ from hot to cold', () => {
	const jack = (more: Record<string, unknown> = {}, phantom = true) =>
		benchOf({
			sockets: [{ id: 'J', kind: 'jack-trs' }],
			devices: [{ id: 'DESK', kind: 'mic-input', phantom }],
			wires: [
				{ id: 'h', from: 'J.T', to: 'DESK.hot' },
				{ id: 'c', from: 'J.R', to: 'DESK.cold' },
				{ id: 's', from: 'J.S', to: 'DESK.shield' }
			],
			...more
		});
	const FEED = 6810;
	const LOAD = 3000;
	it('stands at 48 V on either leg and at 0 V between them', () => {
		exactly('2–1', voltage(jack(), 'J.T', 'J.S'), 48);
		exactly('3–1', voltage(jack(), 'J.R', 'J.S'), 48);
		exactly('2–3', voltage(jack(), 'J.T', 'J.R'), 0);
		expect(voltage(jack({}, false), 'J.T', 'J.S')).toBeNull();
		expect(measuredVolts(jack({}, false), 'J.T', 'J.S')).toBe(0);
	});
	it('reads a little under 48 V on a 10 MΩ meter', () => {
		// CALC: 6810 Ω beside 6810 + 3000 Ω is the source resistance.
		const source = 1 / (1 / FEED + 1 / (FEED + LOAD));
		rounds('V', measuredVolts(jack(), 'J.T', 'J.S'), '47.981');
		const sum = (48 * 10e6) / (10e6 + source);
		expect(measuredVolts(jack(), 'J.T', 'J.S')).toBeCloseTo(sum, 6);
	});
	it('with a TS plug: the ring leg is shorted, and the tip falls through the input’s own 3 kΩ', () => {
		// CALC: 48 × 3000 / (6810 + 3000) = 14.679 V on the tip; the ring leg draws 48 / 6810 = 7.048 mA
		// and the tip leg 48 / 9810 = 4.893 mA more.
		const bench = jack({ plugs: [{ id: 'p', kind: 'ts', socket: 'J' }] });
		rounds('V on the tip', voltage(bench, 'J.T', 'J.S'), '14.68');
		const contact = 0.01;
		const drawn = voltage(bench, 'J.R', 'p.sleeve')! / contact;
		rounds('mA through the ring spring', drawn * 1e3, '11.94');
	});
	it.each([
		[200, '1.29'],
		[600, '3.28']
	])('with a TS plug and a coil of %i Ω between tip and ring: tip %s V', (coil, printed) => {
		// CALC: the coil beside 3 kΩ, under 6810 Ω. 600 Ω is three microphones in series.
		const mics = [...Array(coil / 200).keys()];
		const bench = jack({
			plugs: [{ id: 'p', kind: 'ts', socket: 'J' }],
			devices: [
				{ id: 'DESK', kind: 'mic-input', phantom: true },
				...mics.map((i) => ({ id: `M${i}`, kind: 'mic' }))
			],
			wires: [
				{ id: 'h', from: 'J.T', to: 'DESK.hot', mm: 1e-3 },
				{ id: 'c', from: 'J.R', to: 'DESK.cold', mm: 1e-3 },
				{ id: 's', from: 'J.S', to: 'DESK.shield', mm: 1e-3 },
				{ id: 'm', from: 'J.T', to: 'M0.hot', mm: 1e-3 },
				...mics.slice(1).map((i) => ({ id: `m${i}`, from: `M${i - 1}.cold`, to: `M${i}.hot` })),
				{ id: 'n', from: `M${mics.length - 1}.cold`, to: 'J.R', mm: 1e-3 }
			]
		});
		const both = 1 / (1 / coil + 1 / LOAD);
		expect(voltage(bench, 'J.T', 'J.S')).toBeCloseTo((48 * both) / (FEED + both), 2);
		rounds('V', voltage(bench, 'J.T', 'J.S'), printed);
	});
	it('lifting pin 1 removes it: the shield is the return', () => {
		const cores = [
			['DESK.hot', 'X.2'],
			['DESK.cold', 'X.3'],
			['DESK.shield', 'X.1']
		];
		const line = (faults: unknown[]) =>
			benchOf({
				sockets: [{ id: 'X', kind: 'three-pin-female' }],
				devices: [{ id: 'DESK', kind: 'mic-input', phantom: true }],
				cables: [{ id: 'c', m: 10, cores }],
				faults
			});
		exactly('whole', voltage(line([]), 'X.2', 'X.1'), 48);
		const lifted = line([{ kind: 'open', wire: 'c:2' }]);
		expect(isJoined(lifted, 'X.1', 'DESK.shield')).toBe(false);
		expect(voltage(lifted, 'X.2', 'X.1')).toBeNull();
		expect(measuredVolts(lifted, 'X.2', 'X.1')).toBe(0);
		expect(voltage(lifted, 'X.2', 'X.3')).toBe(0);
	});
	it('is the same circuit as the nominal one but for the value of its parts', () => {
		const nominal = [...feed(48, 6800), R('2', '3', LOAD), R('3', '1', 0.02)];
		const bench = [...feed(48, FEED), R('2', '3', LOAD), R('3', '1', 0.02)];
		rounds('nominal V on 2', voltageIn(nominal, '2', '1'), '14.69');
		rounds('6810 Ω V on 2', voltageIn(bench, '2', '1'), '14.68');
	});
});
