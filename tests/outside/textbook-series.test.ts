/**
 * Series, parallel and divider problems with printed answers, through the engine's solver.
 *
 * Sources (BOOK: read in an open textbook): K = T. R. Kuphaldt, Lessons in Electric Circuits, vol. I
 * DC, by chapter. UP = OpenStax University Physics vol. 2, ch. 9–10. CP = OpenStax College Physics,
 * ch. 20–21. Numbers only. Each printed answer was solved again with exact fractions (CALC).
 *
 * Left out, because the sum would be the test's own: powers that are a printed current times a
 * printed voltage (O1 0.9 W, O2 18 W, O15 36 W, O16 100 W).
 */
import { describe, expect, it } from 'vitest';
import { resistanceIn } from '../../src/lib/engine/solve';
import { R, amps, volts, withCurrent } from './networks';
import { exactly, rounds } from './printed';

describe('series and dividers', () => {
	it('K1 (BOOK: Kuphaldt DC ch. 5): 3, 10, 5 kΩ on 9 V', () => {
		const r1 = R('2', '0', 3e3, 9);
		const net = [r1, R('2', '3', 10e3), R('3', '0', 5e3)];
		const loop = [R('1', '2', 3e3), R('2', '3', 10e3), R('3', '0', 5e3)];
		exactly('Ω in all', resistanceIn(loop, '1', '0'), 18e3);
		exactly('µA', -amps(net, r1) * 1e6, 500);
		exactly('V on R1', 9 - volts(net, '2'), 1.5);
		exactly('V on R2', volts(net, '2', '3'), 5);
		exactly('V on R3', volts(net, '3'), 2.5);
	});
	it.each([
		[45, [10, 20, 15]],
		[180, [40, 80, 60]]
	])('K3 (BOOK: Kuphaldt DC ch. 6): divider of 5, 10, 7.5 kΩ on %i V', (supply, drops) => {
		const net = [R('2', '0', 5e3, supply), R('2', '3', 10e3), R('3', '0', 7.5e3)];
		// At 45 V the book prints R1's drop only; the others follow from its ratio (CALC).
		exactly('R1', supply - volts(net, '2'), drops[0]!);
		exactly('R2', volts(net, '2', '3'), drops[1]!);
		exactly('R3', volts(net, '3'), drops[2]!);
		exactly('mA', amps(net, net[1]!) * 1e3, supply === 180 ? 8 : 2);
		const loop = [R('1', '2', 5e3), R('2', '3', 10e3), R('3', '0', 7.5e3)];
		exactly('kΩ', resistanceIn(loop, '1', '0') / 1e3, 22.5);
	});
	it('O1 (BOOK: OpenStax University Physics): four of 20 Ω and one of 10 Ω on 9 V', () => {
		const loop = [20, 20, 20, 20, 10].map((ohms, i) => R(`${i}`, `${i + 1}`, ohms));
		exactly('Ω', resistanceIn(loop, '0', '5'), 90);
		const driven = [R('1', '5', 20, 9), ...loop.slice(1)];
		exactly('A', amps(driven, driven[1]!), 0.1);
		exactly('V on the first', 9 - volts(driven, '1', '5'), 2);
		for (const i of [1, 2, 3]) exactly('V on 20 Ω', volts(driven, `${i}`, `${i + 1}`), 2);
		exactly('V on 10 Ω', volts(driven, '4', '5'), 1);
	});
	it('O3a (BOOK: OpenStax College Physics): 1, 6, 13 Ω in series on 12 V', () => {
		exactly('Ω', resistanceIn([R('a', 'b', 1), R('b', 'c', 6), R('c', '0', 13)], 'a', '0'), 20);
		const net = [R('b', '0', 1, 12), R('b', 'c', 6), R('c', '0', 13)];
		exactly('A', amps(net, net[2]!), 0.6);
	});
	it('O15 (BOOK: OpenStax University Physics, problem): 4, 1, 4 Ω on 18 V', () => {
		exactly('Ω', resistanceIn([R('a', 'b', 4), R('b', 'c', 1), R('c', '0', 4)], 'a', '0'), 9);
		const net = [R('b', '0', 4, 18), R('b', 'c', 1), R('c', '0', 4)];
		exactly('A', amps(net, net[1]!), 2);
		exactly('V', 18 - volts(net, 'b'), 8);
		exactly('V', volts(net, 'b', 'c'), 2);
		exactly('V', volts(net, 'c'), 8);
	});
});

describe('parallel', () => {
	it('K2 (BOOK: Kuphaldt DC ch. 5): 10, 2, 1 kΩ on 9 V', () => {
		const three = [R('1', '0', 10e3), R('1', '0', 2e3), R('1', '0', 1e3)];
		exactly('Ω', resistanceIn(three, '1', '0'), 625);
		// The printed 14.4 mA in all, pushed in, must raise 9 V and share out as printed.
		const fed = [withCurrent('1', '0', 10e3, 14.4e-3), three[1]!, three[2]!];
		exactly('V', volts(fed, '1'), 9);
		exactly('mA in 10 kΩ', (14.4e-3 + amps(fed, fed[0]!)) * 1e3, 0.9);
		exactly('mA in 2 kΩ', amps(fed, fed[1]!) * 1e3, 4.5);
		exactly('mA in 1 kΩ', amps(fed, fed[2]!) * 1e3, 9);
	});
	it('O2 (BOOK: OpenStax University Physics): 1, 2, 2 Ω on 3 V', () => {
		const three = [R('1', '0', 1), R('1', '0', 2), R('1', '0', 2)];
		exactly('Ω', resistanceIn(three, '1', '0'), 0.5);
		const fed = [withCurrent('1', '0', 1, 6), three[1]!, three[2]!];
		exactly('V at 6.00 A', volts(fed, '1'), 3);
		exactly('A in 1 Ω', 6 + amps(fed, fed[0]!), 3);
		exactly('A in 2 Ω', amps(fed, fed[1]!), 1.5);
	});
	it('O3b (BOOK: OpenStax College Physics): 1, 6, 13 Ω in parallel', () => {
		const three = [R('1', '0', 1), R('1', '0', 6), R('1', '0', 13)];
		rounds('Ω', resistanceIn(three, '1', '0'), '0.8041');
		rounds('Ω', resistanceIn(three, '1', '0'), '0.804');
	});
	it('O14 (BOOK: OpenStax University Physics, problem): 36.0, 50.0, 700 Ω', () => {
		const ohms = [36, 50, 700];
		const series = ohms.map((r, i) => R(`${i}`, `${i + 1}`, r));
		exactly('largest', resistanceIn(series, '0', '3'), 786);
		const parallel = ohms.map((r) => R('1', '0', r));
		rounds('smallest', resistanceIn(parallel, '1', '0'), '20.32');
	});
});

describe('series and parallel together', () => {
	it('O3c (BOOK: OpenStax College Physics, University Physics): 1 Ω, then 6 beside 13 Ω, on 12 V', () => {
		const passive = [R('1', '2', 1), R('2', '0', 6), R('2', '0', 13)];
		const ohms = resistanceIn(passive, '1', '0');
		exactly('Ω', ohms, 97 / 19);
		rounds('Ω as College Physics prints it', ohms, '5.11');
		// University Physics prints 5.10, which is 97/19 cut off and not rounded.
		expect(Math.floor(ohms * 100) / 100).toBe(5.1);
		const net = [R('2', '0', 1, 12), passive[1]!, passive[2]!];
		rounds('A in all', -amps(net, net[0]!), '2.35');
		rounds('V1', 12 - volts(net, '2'), '2.35');
		rounds('V2', volts(net, '2'), '9.65');
		rounds('I2', amps(net, net[1]!), '1.61');
		rounds('I3', amps(net, net[2]!), '0.742');
	});
	it('O16 (BOOK: OpenStax University Physics): 10 and 10 Ω and 10 beside 10 Ω', () => {
		const passive = [R('1', '2', 10), R('2', '3', 10), R('3', '0', 10), R('3', '0', 10)];
		exactly('Ω', resistanceIn(passive, '1', '0'), 25);
		const net = [R('2', '0', 10, 50), ...passive.slice(1)];
		exactly('A from the printed 50.00 V', amps(net, net[1]!), 2);
	});
});
