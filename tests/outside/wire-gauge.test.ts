/**
 * Copper wire by gauge against the printed table.
 *
 * Sources: annealed copper 0.017241 Ω·mm²/m at 20 °C (MEM: IEC 60028, from memory); gauge diameter
 * 0.127 mm × 92^((36−n)/39), the gauge's definition (BOOK). Ω/1000 ft as printed in Kuphaldt, Lessons
 * in Electric Circuits (BOOK). Ω/km computed from the same (CALC).
 */
import { describe, expect, it } from 'vitest';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { ohmsPerMetre } from '../../src/lib/engine/parts';
import { resistance } from '../../src/lib/engine/solve';
import { rounds } from './printed';

/** AWG, Ω/km (CALC), Ω/1000 ft (BOOK). */
const TABLE = [
	[18, '20.95', '6.385'],
	[20, '33.31', '10.15'],
	[22, '52.96', '16.14'],
	[23, '66.78', '20.36'],
	[24, '84.21', '25.67'],
	[25, '106.2', '32.37'],
	[26, '133.9', '40.81'],
	[27, '168.9', '51.47'],
	[28, '212.9', '64.90'],
	[29, '268.5', '81.83'],
	// Printed 338.6. The formula gives 338.5499, which is 338.5; by way of 338.55 it becomes 338.6.
	[30, '338.55', '103.2']
] as const;
const FOOT = 0.3048;

describe('resistance of copper wire by gauge', () => {
	it.each(TABLE)('AWG %i is %s Ω/km and %s Ω/1000 ft', (awg, perKilometre, perThousandFeet) => {
		rounds('Ω/1000 ft', ohmsPerMetre(awg) * 1000 * FOOT, perThousandFeet);
		rounds('Ω/km', ohmsPerMetre(awg) * 1000, perKilometre);
	});
	it('three gauges double the resistance or nearly, ten multiply it by ten or nearly (PRACTICE)', () => {
		for (const awg of [10, 18, 26, 30]) {
			expect(ohmsPerMetre(awg + 3) / ohmsPerMetre(awg)).toBeCloseTo(2, 1);
			expect(ohmsPerMetre(awg + 10) / ohmsPerMetre(awg) / 10).toBeCloseTo(1, 1);
		}
	});
	it.each(TABLE)('a wire and a core of AWG %i on a bench measure %s Ω/km', (awg, perKilometre) => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-trs' }],
			wires: [{ id: 'w', from: 'A.T', to: 'A.S', awg, mm: 100_000 }],
			cables: [{ id: 'c', m: 1000, awg, cores: [['A.R', 'A.S']] }]
		});
		rounds('100 m of wire', resistance(bench, 'A.T', 'A.S') * 10, perKilometre);
		rounds('1 km of core', resistance(bench, 'A.R', 'A.S'), perKilometre);
	});
});
