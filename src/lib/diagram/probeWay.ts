/** Which way a probe is held, so that its handle hides no other contact. */
import type { Point } from './socket';

/** From the contact to the middle of the sign at the handle's end, units. */
const PROBE_LONG = 88;
/** Where the barrel begins, and how far a node must stand from it and from the sign, units. */
const BARREL = { from: 38, clear: 20 } as const;
const SIGN_CLEAR = 32;
/** Degrees above the level (positive is down), on the probe's own side: as a hand holds it first. */
const WAYS = [-52, -30, -75, -12, 12, 40] as const;

/** Middle of the sign at the end of a handle that is turned by so many degrees, from the contact. */
export function probeSign(degrees: number, side: 1 | -1): Point {
	const a = (degrees * Math.PI) / 180;
	return { x: side * PROBE_LONG * Math.cos(a), y: PROBE_LONG * Math.sin(a) };
}

/** How deep nodes reach under a probe that is held so, units in all. */
function hidden(degrees: number, side: 1 | -1, around: readonly Point[]): number {
	const sign = probeSign(degrees, side);
	const [ux, uy] = [sign.x / PROBE_LONG, sign.y / PROBE_LONG];
	return around.reduce((sum, { x, y }) => {
		const along = Math.min(PROBE_LONG, Math.max(BARREL.from, x * ux + y * uy));
		const under = BARREL.clear - Math.hypot(x - along * ux, y - along * uy);
		const behind = SIGN_CLEAR - Math.hypot(x - sign.x, y - sign.y);
		return sum + Math.max(0, under) + Math.max(0, behind);
	}, 0);
}

/**
 * Degrees by which the probe at `at` is turned, positive downwards; `side`: 1 to the right, −1 to the
 * left. The first way in which it covers none of `nodes`, or covers least.
 */
export function probeWay(at: Point, side: 1 | -1, nodes: Iterable<Point>): number {
	const around = [...nodes]
		.map(({ x, y }) => ({ x: x - at.x, y: y - at.y }))
		.filter(({ x, y }) => Math.hypot(x, y) < PROBE_LONG + SIGN_CLEAR);
	let [best, least]: [number, number] = [WAYS[0], Infinity];
	for (const way of WAYS) {
		const covered = hidden(way, side, around);
		if (covered < least) [best, least] = [way, covered];
	}
	return best;
}
