/**
 * Profiles of what goes into a socket, and how a spring's round nose rides on them. A profile begins
 * in a point of the axis with a round cap, so that it meets a resting spring in one instant: where a
 * spring hangs when nothing holds it is worked out from the cap, and nothing overlaps before.
 */
import type { Millimetres } from '../engine';

/** Half the thickness, mm, at `s` mm behind the end; null before it. */
export type Profile = (s: Millimetres) => Millimetres | null;

export interface Bullet {
	/** Radius of the round cap, mm. */
	readonly cap: Millimetres;
	/** How far the cap goes, degrees off the axis; there the flank goes on without a kink. */
	readonly turn: number;
	/** Where and how thick it is at its thickest, mm. */
	readonly long: Millimetres;
	readonly full: Millimetres;
}

/** Half the thickness of a bullet, mm, from its end up to `long`, with a flank that swells. */
export function bulletHalf({ cap, turn, long, full }: Bullet, s: Millimetres): Millimetres {
	const angle = (turn * Math.PI) / 180;
	const [at, half] = [cap * (1 - Math.cos(angle)), cap * Math.sin(angle)];
	if (s <= at) return Math.sqrt(Math.max(0, cap * cap - (cap - s) ** 2));
	if (s >= long) return full;
	const t = (s - at) / (long - at);
	const rise = (long - at) / Math.tan(angle);
	return half + rise * t * (1 - t) ** 2 + (full - half) * t * t * (3 - 2 * t);
}

/** Places behind the end at which to draw a bullet, mm: close together where it bends. */
export function bulletStops({ cap, turn, long }: Bullet): Millimetres[] {
	const steps = 7;
	const angles = Array.from({ length: steps + 1 }, (_, i) => (turn * i * Math.PI) / 180 / steps);
	const round = angles.map((a) => cap * (1 - Math.cos(a)));
	const from = round.at(-1)!;
	const flank = Array.from({ length: 12 }, (_, i) => from + ((long - from) * (i + 1)) / 12);
	return [...round, ...flank];
}

/**
 * Height, in units of the figure, to which a profile holds up a round nose of that radius (units)
 * whose middle stands `s` mm behind its end: the nose touches the outline and does not enter it.
 * Null where the profile is not yet under the middle of the nose.
 */
export function heldBy(
	profile: Profile,
	unit: number,
	s: Millimetres,
	nose: number
): number | null {
	if (s < 0) return null;
	const steps = 24;
	let height = 0;
	for (let i = -steps; i <= steps; i++) {
		const u = nose * Math.sin((i / steps) * (Math.PI / 2));
		const half = profile(s + u / unit);
		if (half === null) continue;
		height = Math.max(height, half * unit - (nose - Math.sqrt(nose * nose - u * u)));
	}
	return height;
}

/** How a spring hangs at rest, units: height of the nose's lowest ink, and how much deeper it stands. */
export interface Hang {
	readonly low: number;
	readonly deeper: number;
}
/** Paper that is left between a resting nose and a plug in the last instant before they meet, units. */
const CLEAR = 0.4;

/**
 * Where a round nose of that radius (units) hangs that rises by `lift` (units) in the instant in which
 * a profile with that cap is as deep as the spring. A leaf swings about its clamp and comes forward as
 * it rises, so at rest it hangs deeper: just so much that the plug does not touch it before.
 */
export function hangOf(
	profile: Profile,
	cap: Millimetres,
	unit: number,
	nose: number,
	lift: number
): Hang {
	const low = heldBy(profile, unit, 0, nose)! - lift;
	const apart = cap * unit + nose + CLEAR;
	return { low, deeper: Math.sqrt(apart ** 2 - (low + nose) ** 2) - cap * unit };
}
