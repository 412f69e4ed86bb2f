/**
 * Where things stand on the section's paper. Depth runs to the right in the engine's millimetres;
 * heights are measured from the axis in the same units, `T` above, `R` and `S` below. Everything
 * that is not a depth of `SPRING_DEPTH` or of a plug's profile is generic and schematic.
 */
import { scaleLinear } from 'd3-scale';
import type { Millimetres, SpringName } from '../engine';
import type { Place } from './sectionPen';

/** Units of the figure for one millimetre. */
export const UNIT = 11.5;
export const SECTION = { width: 640, height: 360, axis: 138 } as const;
/** Depth in mm behind the front face → x. */
export const depthX = scaleLinear([-7, 42.5], [8, 8 + 49.5 * UNIT]);

/** The three line weights, in units. */
export const WEIGHTS = { fine: 1, line: 1.6, bold: 2.8 } as const;
/** Half a leaf's thickness: its ink ends here. */
export const HALF_LEAF = WEIGHTS.bold / 2;

/** Depths in mm. */
export const DEPTH = { left: -7, plate: 1.2, block: 38, rear: 40.4, lug: 42.5 } as const;
/** Heights over the axis, in units. */
export const HEIGHT = { bore: 40, ring: 56, outer: 120, plate: 128, floor: 93 } as const;
/** Radius of a contact's bead, in units. */
export const BEAD = 3.6;

/** Above the axis or below it. */
export type Side = 1 | -1;

/** A leaf spring: where it is clamped, and where its strip comes out at the rear. */
export interface LeafPlan {
	readonly side: Side;
	/** Depth of the nose's lowest point, mm. */
	readonly nose: Millimetres;
	/** Depth at which the beam is clamped, mm. */
	readonly clamp: Millimetres;
	/** Depth of the break contact's bead, mm. */
	readonly bead: Millimetres;
	/** Height at which the lug of the spring and of its break contact stands, units. */
	readonly lug: number;
	readonly breakLug: number;
	/** Where strips turn towards the axis on their way from the rear, mm; absent: straight on. */
	readonly turn?: { readonly spring: Millimetres; readonly contact: Millimetres };
	/** Height of both strips in the wall, units, for a leaf that has a turn. */
	readonly wall?: { readonly spring: number; readonly contact: number };
}
export const LEAVES: Readonly<Record<SpringName, LeafPlan>> = {
	T: { side: 1, nose: 26, clamp: 38, bead: 28.6, lug: 68, breakLug: 45 },
	R: { side: -1, nose: 18.5, clamp: 38, bead: 21.1, lug: 68, breakLug: 45 },
	S: {
		side: -1,
		nose: 3,
		clamp: 13.9,
		bead: 5.5,
		lug: 114,
		breakLug: 91,
		turn: { spring: 14.6, contact: 15.5 },
		wall: { spring: 111, contact: 101.5 }
	}
};

/** Place of a depth (mm) and a height (units) on that side of the axis. */
export const placeAt = (depth: Millimetres, height: number, side: Side = 1): Place => [
	depthX(depth),
	SECTION.axis - side * height
];
