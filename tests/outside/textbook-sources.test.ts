/**
 * Bridges, several sources, the network theorems and a ladder, with printed answers.
 *
 * Sources (BOOK: read in an open textbook): K = T. R. Kuphaldt, Lessons in Electric Circuits (DC =
 * vol. I, DIG = vol. IV), by chapter. UP = OpenStax University Physics vol. 2, ch. 9–10. CP = OpenStax
 * College Physics, ch. 20–21. Each printed answer was solved again with exact fractions (CALC). Where
 * a digest of a figure leaves the topology open (O5, O10, O11), it is the only one that gives all the
 * printed currents at once.
 *
 * Left out: the 23.4 W of O6, which is 20 V times the rounded current (exact: 23.33 W).
 */
import { describe, it } from 'vitest';
import { resistanceIn } from '../../src/lib/engine/solve';
import { R, amps, balance, heat, supplied, volts, withCurrent } from './networks';
import { exactly, rounds } from './printed';

describe('bridges', () => {
	const arms = [
		R('1', '2', 150),
		R('1', '3', 50),
		R('2', '3', 100),
		R('2', '0', 300),
		R('3', '0', 250)
	];
	it('K8 (BOOK: Kuphaldt DC ch. 10): an unbalanced bridge on 24 V', () => {
		const [r1, r2] = [R('2', '0', 150, 24), R('3', '0', 50, 24)];
		const net = [r1, r2, ...arms.slice(2)];
		rounds('mA in R1', -amps(net, r1) * 1e3, '42.299');
		rounds('mA in R2', -amps(net, r2) * 1e3, '93.793');
		rounds('mA in R3', -amps(net, net[2]!) * 1e3, '16.552');
		rounds('mA in R4', amps(net, net[3]!) * 1e3, '58.851');
		rounds('mA in R5', amps(net, net[4]!) * 1e3, '77.241');
		rounds('V on R1', 24 - volts(net, '2'), '6.3448');
		rounds('V on R2', 24 - volts(net, '3'), '4.6897');
		rounds('V on R3', volts(net, '3', '2'), '1.6552');
		rounds('V on R4', volts(net, '2'), '17.6552');
		rounds('V on R5', volts(net, '3'), '19.3103');
		rounds('mA from the battery', (24 / resistanceIn(arms, '1', '0')) * 1e3, '136.092');
	});
	it('K11 (BOOK: Kuphaldt DC ch. 10): the same bridge fed by 0.136092 A', () => {
		// The current goes in at 1 and out at 0: in two steps, over R1 and over R4.
		const net = [
			withCurrent('1', '2', 150, 0.136092),
			...arms.slice(1, 3),
			withCurrent('2', '0', 300, 0.136092),
			arms[4]!
		];
		rounds('V at 1', volts(net, '1'), '24.000');
		rounds('V at 2', volts(net, '2'), '17.655');
		rounds('V at 3', volts(net, '3'), '19.310');
		rounds('V at 1 from its resistance', 0.136092 * resistanceIn(arms, '1', '0'), '24.000');
	});
	it('O6 (BOOK: OpenStax University Physics): a bridge on 20 V behind 5 Ω', () => {
		const [source, r1, r2, r5, r3, r4] = [
			...[R('1', '0', 5, 20), R('1', '2', 15), R('1', '3', 10)],
			...[R('2', '3', 5), R('2', '0', 10), R('3', '0', 15)]
		] as const;
		const net = [source!, r1!, r2!, r5!, r3!, r4!];
		rounds('I', -amps(net, source!), '1.17');
		rounds('I1', amps(net, r1!), '0.50');
		rounds('I2', amps(net, r2!), '0.67');
		rounds('I3', amps(net, r3!), '0.67');
		rounds('I4', amps(net, r4!), '0.50');
		rounds('I5, from 3 to 2', -amps(net, r5!), '0.17');
	});
});

describe('several sources', () => {
	it('K6 (BOOK: Kuphaldt DC ch. 10): 28 V behind 4 Ω and 7 V behind 1 Ω on 2 Ω', () => {
		const [b1, r2, b2] = [R('2', '0', 4, 28), R('2', '0', 2), R('2', '0', 1, 7)];
		const net = [b1, r2, b2];
		exactly('A from 28 V', -amps(net, b1), 5);
		exactly('A in R2', amps(net, r2), 4);
		exactly('A from 7 V: it is charged', -amps(net, b2), -1);
		exactly('V on R1', 28 - volts(net, '2'), 20);
		exactly('V on R2', volts(net, '2'), 8);
		exactly('V on R3', volts(net, '2') - 7, 1);
	});
	it('K7 (BOOK: Kuphaldt DC ch. 10): the same by Thevenin, Norton, Millman and greatest power', () => {
		const open = [R('2', '0', 4, 28), R('2', '0', 1, 7)];
		const loaded = (ohms: number) => [...open, R('2', '0', ohms)];
		exactly('Thevenin V', volts(open, '2'), 11.2);
		exactly('Thevenin Ω', resistanceIn(open, '2', '0'), 0.8);
		rounds('Norton A', amps(loaded(1e-9), loaded(1e-9)[2]!), '14.000');
		exactly('V with load', volts(loaded(2), '2'), 8);
		exactly('A with load', amps(loaded(2), loaded(2)[2]!), 4);
		rounds('mΩ all in parallel', resistanceIn(loaded(2), '2', '0') * 1e3, '571.43');
		const power = (ohms: number) => volts(loaded(ohms), '2') ** 2 / ohms;
		exactly('W at 0.8 Ω', power(0.8), 39.2);
		const slope = (ohms: number) => power(ohms * 1.0001) - power(ohms * 0.9999);
		rounds('Ω for the greatest power', balance(0.1, 5, slope), '0.800');
	});
	it('K10 (BOOK: Kuphaldt DC ch. 10): node voltages of two sources and five resistors', () => {
		const net = [
			...[R('1', '0', 2, 10), R('1', '0', 4), R('1', '2', 2.5), R('2', '0', 5)],
			R('2', '0', 1, -4)
		];
		rounds('V1', volts(net, '1'), '3.8095');
		rounds('V2', volts(net, '2'), '-1.5476');
		exactly('V1 as a fraction', volts(net, '1'), 80 / 21);
		exactly('V2 as a fraction', volts(net, '2'), -65 / 42);
	});
	it('O4 (BOOK: OpenStax University Physics): 24 V and 29 V', () => {
		const [v1, r2, r3, v2] = [
			R('b', '0', 3, 24),
			R('b', '0', 3),
			R('b', 'c', 3),
			R('c', '0', 4, 29)
		];
		const net = [v1, r2, r3, v2];
		exactly('I1', -amps(net, v1), 3);
		exactly('I2', amps(net, r2), 5);
		exactly('I3', amps(net, r3), -2);
		exactly('W of heat', heat(net), 130);
		exactly('W supplied', supplied(net), 130);
		exactly('W from V2', -amps(net, v2) * 29, 58);
	});
	it('O5 (BOOK: OpenStax University Physics): three branches with a source in each', () => {
		const one = [R('a', 'm', 1, 0.5), R('m', '0', 2)];
		const two = [R('a', '0', 1, -0.6)];
		const three = [R('a', 'n', 5, 2.3), R('n', 'o', 1), R('o', '0', 2)];
		const net = [...one, ...two, ...three];
		exactly('A by V1', -amps(net, one[0]!), 0.2);
		exactly('A by V3', -amps(net, three[0]!), 0.3);
		exactly('A by V2', amps(net, two[0]!), 0.5);
		exactly('W of heat', heat(net), 1.09);
		exactly('W supplied', supplied(net), 1.09);
	});
	it('O9 (BOOK: OpenStax College Physics): 18 V and 45 V with inner resistance', () => {
		const e1 = [R('a', 'm', 0.5, 18), R('m', '0', 2.5)];
		const e2 = [R('a', 'n', 0.5, 45), R('n', '0', 1.5)];
		const r1 = R('a', '0', 6);
		const net = [...e1, ...e2, r1];
		exactly('I1', amps(net, r1), 4.75);
		exactly('I2', -amps(net, e1[0]!), -3.5);
		exactly('I3', -amps(net, e2[0]!), 8.25);
	});
	it.each([
		[1.4, [0.6, 0.4, 0.2], '0.92'],
		[-1.4, [0.04, 1.52, -1.48], '4.50']
	] as const)('O10 (BOOK: OpenStax University Physics): 1.6 V and %f V on 2 kΩ', (v2, mA, mW) => {
		const [r1, r2, r3] = [R('a', '0', 2e3), R('a', '0', 1e3, 1.6), R('a', '0', 1e3, v2)];
		const net = [r1, r2, r3];
		exactly('I1', amps(net, r1) * 1e3, mA[0]);
		exactly('I2', -amps(net, r2) * 1e3, mA[1]);
		exactly('I3', -amps(net, r3) * 1e3, mA[2]);
		rounds('mW of heat', heat(net) * 1e3, mW);
		rounds('mW supplied', supplied(net) * 1e3, mW);
	});
	it('O11 (BOOK: OpenStax University Physics): 12 V and 5 V, the second straight across R4', () => {
		// V2 has no resistor of its own: its printed 2 A is pushed in across R4, and 5 V must stand there.
		const [v1, r1, r3] = [R('x', '0', 3, 12), R('x', '0', 4), R('x', 'y', 2)];
		const net = [v1, r1, r3, withCurrent('y', '0', 2, 2)];
		exactly('V of V2', volts(net, 'y'), 5);
		exactly('I1', amps(net, r1), 1.5);
		exactly('I2', -amps(net, v1), 2);
		exactly('I3', amps(net, r3), 0.5);
		exactly('I4', volts(net, 'y') / 2, 2.5);
		exactly('W supplied', 12 * -amps(net, v1) + 2 * volts(net, 'y'), 34);
	});
	it('O13 (BOOK: OpenStax University Physics): two by two cells of 1.50 V, 1.00 Ω, on 10 Ω', () => {
		const string = (m: string) => [R(m, '0', 1, 1.5), R('a', m, 1, 1.5)];
		const load = R('a', '0', 10);
		const net = [...string('m'), ...string('n'), load];
		rounds('A in the load', amps(net, load), '0.273');
		rounds('V on a lower cell', volts(net, 'm'), '1.36');
		rounds('V on an upper cell', volts(net, 'a', 'n'), '1.36');
	});
	it('K13 (BOOK: Kuphaldt DC ch. 6): a meter between two dividers with a common bottom', () => {
		// Resistors in proportion to the printed drops: 15 and 20 V of 35 V, 13 and 12 V of 25 V.
		const net = [R('3', '0', 15, 35), R('3', '0', 20), R('4', '0', 13, -25), R('4', '0', 12)];
		exactly('red on 4, black on 3', volts(net, '4', '3'), -32);
		exactly('red on 3, black on 4', volts(net, '3', '4'), 32);
	});
});

describe('a ladder', () => {
	it.each([
		['001', -1.25],
		['010', -2.5],
		['011', -3.75],
		['100', -5],
		['101', -6.25],
		['110', -7.5],
		['111', -8.75]
	])('L2 (BOOK: Kuphaldt DIG ch. 13): R/2R converter, input %s on 5 V logic', (bits, printed) => {
		const [b2, b1, b0] = [...bits].map((bit) => (bit === '1' ? 5 : 0));
		const at = (out: number) =>
			volts(
				[
					...[R('sum', '0', 2, b2), R('sum', 'm', 1), R('m', '0', 2, b1), R('m', 'n', 1)],
					...[R('n', '0', 2, b0), R('n', '0', 2), R('sum', '0', 2, out)]
				],
				'sum'
			);
		// An ideal amplifier drives its output to where the summing node stands at 0 V.
		exactly('V out', balance(-20, 20, at), printed);
	});
});
