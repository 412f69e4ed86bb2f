/** Probes against the contacts of every kind: whether a handle hides one, by plain geometry. */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS } from '../engine';
import { probeSign, probeWay } from './probeWay';
import { socketDrawing } from './socket';

describe('a probe', () => {
	it('carries its sign where the handle ends', () => {
		// Half of 88 across, and the height of a triangle with equal sides: 88 × √3 / 2.
		expect(probeSign(-60, 1).x).toBeCloseTo(44, 6);
		expect(probeSign(-60, 1).y).toBeCloseTo(-76.21, 2);
		expect(probeSign(-60, -1).x).toBeCloseTo(-44, 6);
	});
	it('is held up and outwards where nothing is in the way', () => {
		expect(probeWay({ x: 0, y: 0 }, 1, [{ x: 0, y: 0 }])).toBe(-52);
		expect(probeWay({ x: 0, y: 0 }, -1, [{ x: 52, y: -70 }])).toBe(-52);
	});
	it('is turned where a contact lies under its sign or its barrel', () => {
		expect(probeWay({ x: 0, y: 0 }, 1, [{ x: 52, y: -70 }])).not.toBe(-52);
		expect(probeWay({ x: 0, y: 0 }, 1, [{ x: 34, y: -44 }])).not.toBe(-52);
	});
	it.each(SOCKET_KINDS)('hides no contact of %s under its sign', (kind) => {
		const { lugs } = socketDrawing(kind);
		for (const at of lugs)
			for (const side of [1, -1] as const) {
				const sign = probeSign(probeWay(at, side, lugs), side);
				for (const lug of lugs) {
					const apart = Math.hypot(lug.x - at.x - sign.x, lug.y - at.y - sign.y);
					expect(apart, lug.contact).toBeGreaterThan(24);
				}
			}
	});
});
