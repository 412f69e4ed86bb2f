/**
 * Bridges at null, a potentiometer, fault location on a loop, meters and their shunts, and wire.
 * Null problems are put to the engine as networks: the unknown is turned until the galvanometer
 * reads zero, and where it stands is compared with the printed answer.
 *
 * Sources (BOOK): K = T. R. Kuphaldt, Lessons in Electric Circuits, vol. I DC, by chapter. UP, CP =
 * OpenStax University Physics vol. 2 and College Physics. Hawkins = Hawkins Electrical Guide vol. 3,
 * 1914 (public domain). Each printed answer was solved again with exact fractions (CALC).
 *
 * Left out: P5 (an aluminium bar) and the 116,035 circular mils of P4, because the engine knows only
 * the wire gauge; the 15.909 Ω of P3 (copper at 35 °C), because the engine's wire is at 20 °C: it is
 * used as a datum. A check of those would test only the arithmetic of the test.
 */
import { describe, it } from 'vitest';
import { ohmsPerMetre } from '../../src/lib/engine/parts';
import { resistanceIn } from '../../src/lib/engine/solve';
import { R, amps, balance, volts, withCurrent } from './networks';
import { exactly, rounds } from './printed';

describe('bridges at null', () => {
	/** Volts across the galvanometer (1 kΩ) of a Wheatstone bridge: R1 over R3, R2 over Rx, on 10 V. */
	const bridge = (r1: number, r2: number, r3: number, rx: number) =>
		volts(
			[
				...[R('g', '0', r1, 10), R('h', '0', r2, 10)],
				...[R('g', '0', r3), R('h', '0', rx), R('g', 'h', 1000)]
			],
			'g',
			'h'
		);
	it('W1 (BOOK: OpenStax College Physics, problem): R3 2500 Ω, R2/R1 0.625', () => {
		const rx = balance(1, 1e6, (x) => bridge(1000, 625, 2500, x));
		rounds('Rx, kΩ', rx / 1e3, '1.56');
		exactly('Rx', rx, 1562.5);
	});
	it.each([
		[10, '5.00'],
		[10_000, '5000']
	])('W2 (BOOK: OpenStax College Physics, problem): R2/R1 2.000, Rx %f Ω', (rx, printed) => {
		rounds(
			'R3',
			balance(0.1, 1e6, (r3) => bridge(500, 1000, r3, rx)),
			printed
		);
	});
	it('M1 (BOOK: Hawkins vol. 3, fig. 597): Murray loop of 54.07 Ω, slide at 332 of 1000', () => {
		// The battery goes from the slider through earth to the fault; the galvanometer joins the
		// loop's two ends. Faulty wire 16.46 Ω a mile.
		const reading = (miles: number) =>
			volts(
				[
					...[R('slider', 'p', 0.332), R('slider', 'q', 0.668), R('p', 'q', 100)],
					...[R('p', 'fault', 16.46 * miles), R('q', 'fault', 54.07 - 16.46 * miles)],
					R('slider', 'fault', 500, 6)
				],
				'p',
				'q'
			);
		const miles = balance(0.01, 3, reading);
		rounds('miles to the fault', miles, '1.09');
		rounds('miles to the fault', miles, '1.0906');
	});
});

describe('a potentiometer at null', () => {
	/** Volts across the galvanometer (100 Ω) in series with a cell, on a tap of the wire. */
	const tap = (driver: number, wire: number, ohms: number, cell: number) =>
		volts(
			[
				R('tap', '0', wire - ohms, driver),
				R('tap', '0', ohms),
				R('tap', 'g', 100),
				R('g', '0', 10, cell)
			],
			'tap',
			'g'
		);
	/** The driving voltage that balances the standard cell, then the cell that balances at `ohms`. */
	const unknown = (standard: number, at: number, ohms: number) => {
		const driver = balance(0.1, 1e4, (v) => tap(v, 20, at, standard));
		return balance(0.01, 1e3, (cell) => tap(driver, 20, ohms, cell));
	};
	it('W3 (BOOK: OpenStax College Physics, problems): 12.0 V at 2.500 Ω, the unknown at 5.000 Ω', () => {
		rounds('V', unknown(12, 2.5, 5), '24.0');
	});
	it('W3 (BOOK: OpenStax College Physics, problems): 3.000 V at 15 Ω, the unknown at 10 Ω', () => {
		rounds('V', unknown(3, 15, 10), '2.00');
	});
	it('W3 (BOOK: OpenStax College Physics, problems): with 3.100 V the 2.00 V cell balances at', () => {
		const driver = balance(0.1, 1e4, (v) => tap(v, 20, 15, 3.1));
		rounds(
			'Ω',
			balance(0.1, 19, (ohms) => tap(driver, 20, ohms, 2)),
			'9.68'
		);
	});
});

describe('meters', () => {
	it('P1 (BOOK: Kuphaldt DC ch. 8): a 10 MΩ meter on the lower of two 250 MΩ on 24 V', () => {
		const [upper, lower, meter] = [R('m', '0', 250e6, 24), R('m', '0', 250e6), R('m', '0', 10e6)];
		rounds('MΩ of meter and resistor', resistanceIn([lower, meter], 'm', '0') / 1e6, '9.615');
		const net = [upper, lower, meter];
		rounds('V on the meter', volts(net, 'm'), '0.8889');
		rounds('V on the upper', 24 - volts(net, 'm'), '23.1111');
		exactly('V on the lower without the meter', volts([upper, lower], 'm'), 12);
	});
	it('P7 (BOOK: OpenStax University Physics): a galvanometer of 25 Ω, 50 µA, for 10 V', () => {
		const [galvanometer, series] = [R('g', '0', 25), R('g', '0', 199.975e3, 10)];
		const net = [series, galvanometer];
		exactly('µA at 10 V', amps(net, galvanometer) * 1e6, 50);
		exactly('V on the series resistor', 10 - volts(net, 'g'), 9.99875);
		const off = (ohms: number) => amps([R('g', '0', ohms, 10), galvanometer], galvanometer) - 50e-6;
		rounds('series kΩ', balance(1e3, 1e6, off) / 1e3, '199.975');
	});
	it('P8 (BOOK: OpenStax University Physics): a galvanometer of 60 Ω, 1 mA, for 25 A', () => {
		const galvanometer = R('g', '0', 60);
		const off = (shunt: number) =>
			amps([withCurrent('g', '0', shunt, 25), galvanometer], galvanometer) - 1e-3;
		rounds('shunt Ω', balance(1e-6, 1, off), '2.40e-3');
	});
});

describe('wire', () => {
	it('P2 (BOOK: Kuphaldt DC ch. 12): 14 V over wires of 15 Ω each to 250 Ω', () => {
		const [out, load, back] = [R('a', '0', 15, 14), R('a', 'b', 250), R('b', '0', 15)];
		const net = [out, load, back];
		exactly('mA', amps(net, load) * 1e3, 50);
		exactly('V on one wire', 14 - volts(net, 'a'), 0.75);
		exactly('V on the other', volts(net, 'b'), 0.75);
		exactly('V on the load', volts(net, 'a', 'b'), 12.5);
	});
	it('P3 (BOOK: Kuphaldt DC ch. 12): the same with wires of 15.909 Ω, at 35 °C', () => {
		const [out, load, back] = [R('a', '0', 15.909, 14), R('a', 'b', 250), R('b', '0', 15.909)];
		const net = [out, load, back];
		rounds('mA', amps(net, load) * 1e3, '49.677');
		rounds('V on one wire', volts(net, 'b'), '0.79');
		rounds('V on the load', volts(net, 'a', 'b'), '12.42');
		const loop = [R('1', 'a', 15.909), load, back];
		rounds('Ω in all', resistanceIn(loop, '1', '0'), '281.82');
	});
	it('P4 (BOOK: Kuphaldt DC ch. 12): 2300 ft of 14 AWG, with the book’s 10.09 Ω·cmil/ft', () => {
		// The engine's area of 14 AWG, the book's resistivity: one circular mil is π/4 · (25.4 µm)².
		const bookRho = (10.09 * (Math.PI / 4) * 25.4e-6 ** 2) / 0.3048;
		const ohms = ohmsPerMetre(14) * (bookRho / 1.7241e-8) * 2300 * 0.3048;
		rounds('Ω', ohms, '5.651');
	});
	it('P6 (BOOK: OpenStax University Physics): 5 m of 12 gauge, with the book’s 1.68e-8 Ω·m', () => {
		rounds('Ω', ohmsPerMetre(12) * (1.68e-8 / 1.7241e-8) * 5, '0.025');
	});
});
