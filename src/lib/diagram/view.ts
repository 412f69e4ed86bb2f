/**
 * What part of a drawing is looked at. A view is the middle and the width that is seen, in drawing
 * units; its height follows from the window. Zooming keeps the point under the pointer in place.
 * Meaning follows the scale: far off a label and whether something is plugged, nearer contacts and
 * wires, near everything.
 */
import type { Point } from './socket';

export interface View extends Point {
	/** Width seen, drawing units. */
	readonly w: number;
}
export interface Box extends Point {
	readonly w: number;
	readonly h: number;
}
export interface Size {
	readonly w: number;
	readonly h: number;
}
export const LEVELS = ['far', 'middle', 'near'] as const;
export type Level = (typeof LEVELS)[number];

/** Pixels a drawing unit must have for contacts and wires, and for everything. */
const MIDDLE_FROM = 0.2;
const NEAR_FROM = 0.42;
/** At most this many pixels a drawing unit. */
const CLOSEST = 4;

/** The view that shows the whole box in a window of that size. */
export function fitted(box: Box, window: Size): View {
	const w = Math.max(box.w, (box.h * window.w) / Math.max(1, window.h));
	return { x: box.x + box.w / 2, y: box.y + box.h / 2, w };
}

/** The box of the drawing that a view shows. */
export function seenBox(view: View, window: Size): Box {
	const h = (view.w * window.h) / Math.max(1, window.w);
	return { x: view.x - view.w / 2, y: view.y - h / 2, w: view.w, h };
}

/** Keeps the view on the drawing and within its closest and farthest. */
export function kept(view: View, whole: Box, window: Size): View {
	const farthest = fitted(whole, window).w;
	const w = Math.min(farthest, Math.max(window.w / CLOSEST, view.w));
	const h = (w * window.h) / Math.max(1, window.w);
	const within = (at: number, from: number, size: number, seen: number) =>
		seen >= size
			? from + size / 2
			: Math.min(from + size - seen / 2, Math.max(from + seen / 2, at));
	return { x: within(view.x, whole.x, whole.w, w), y: within(view.y, whole.y, whole.h, h), w };
}

/** Closer by `factor` (over 1) or farther (under 1); `at`, in drawing units, stays in place. */
export const zoomed = (view: View, factor: number, at: Point): View => ({
	x: at.x + (view.x - at.x) / factor,
	y: at.y + (view.y - at.y) / factor,
	w: view.w / factor
});

export const panned = (view: View, dx: number, dy: number): View => ({
	...view,
	x: view.x + dx,
	y: view.y + dy
});

/** How much is drawn at this many pixels a unit. */
export const levelAt = (pixelsPerUnit: number): Level =>
	pixelsPerUnit < MIDDLE_FROM ? 'far' : pixelsPerUnit < NEAR_FROM ? 'middle' : 'near';
