/** Probes against the contacts of every kind: whether a handle hides one, by plain geometry. */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS } from '../engine';
import { PROBE_LONG, probeWay } from './probeWay';
import { socketDrawing } from './socket';

/** Middle of the sign at the handle's end. */
function signAt(at: { x: number; y: number }, side: 1 | -1, degrees: number) {
	const a = (degrees * Math.PI) / 180;
	return { x: at.x + side * PROBE_LONG * Math.cos(a), y: at.y + PROBE_LONG * Math.sin(a) };
}

describe('a probe', () => {
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
				const sign = signAt(at, side, probeWay(at, side, lugs));
				for (const lug of lugs)
					expect(Math.hypot(lug.x - sign.x, lug.y - sign.y), lug.contact).toBeGreaterThan(24);
			}
	});
});
