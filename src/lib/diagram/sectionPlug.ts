/**
 * The plug's profile: a blunt nose that widens, a neck that is the groove in which the tip spring
 * comes to rest, then a plain cylinder of 6.35 mm. The stretches are the engine's; the curve between
 * is schematic. The outline and the lift of every spring come from this one function, so a spring
 * rides on what is drawn.
 */
import { PLUGS, SEATED, type Millimetres, type Plug, type PlugKind, type Segment } from '../engine';
import { DEPTH, SECTION, UNIT, depthX, type Side } from './sectionFrame';
import { closed, draw, type Place, type Sheet } from './sectionPen';

/** Half of 6.35 mm. */
const SHANK: Millimetres = 3.175;
const NOSE = { radius: 1.12, widest: 3.02, at: 2.8 } as const;
/** Middle of the groove: where the tip spring stands when the plug is seated, 30.5 − 26. */
const GROOVE = { middle: 4.5, half: 1.75, radius: 2.15 } as const;

/** Radius of a phone plug, mm, at `s` mm behind its nose; null where there is no plug. */
export function plugRadius(s: Millimetres): Millimetres | null {
	if (s < 0) return null;
	if (s >= GROOVE.middle + GROOVE.half) return SHANK;
	if (s <= GROOVE.middle - GROOVE.half) {
		const left = Math.max(0, 1 - s / NOSE.at);
		return NOSE.radius + (NOSE.widest - NOSE.radius) * (1 - left ** 1.8);
	}
	const shore = s < GROOVE.middle ? NOSE.widest : SHANK;
	const deep = (1 + Math.cos((Math.PI * (s - GROOVE.middle)) / GROOVE.half)) / 2;
	return shore - (shore - GROOVE.radius) * deep;
}

/**
 * Height in units to which the profile holds up a round nose of that radius (units) whose middle
 * stands over `s` mm: the nose touches the outline and does not enter it. Null before the nose.
 */
export function heldAt(s: Millimetres, nose: number): number | null {
	if (s < 0) return null;
	const steps = 16;
	let height = 0;
	for (let i = -steps; i <= steps; i++) {
		const u = (i / steps) * nose;
		const radius = plugRadius(s + u / UNIT);
		if (radius === null) continue;
		height = Math.max(height, radius * UNIT - (nose - Math.sqrt(nose * nose - u * u)));
	}
	return height;
}

/** One side of a stretch, from its nose end to its far end. */
function edge(from: Millimetres, to: Millimetres, travel: Millimetres, side: Side): Place[] {
	const curved = Math.min(to, GROOVE.middle + GROOVE.half);
	const stops: Millimetres[] = [];
	for (let s = from; s < curved; s += 0.125) stops.push(s);
	if (curved > from) stops.push(curved);
	if (stops.length === 0) stops.push(from);
	if (stops.at(-1) !== to) stops.push(to);
	return stops.map((s) => [depthX(travel - s), SECTION.axis - side * plugRadius(s)! * UNIT]);
}

/** A wavy break at the left edge of the paper, downwards. */
function brokenOff(x: number, top: number, bottom: number): Place[] {
	const steps = 24;
	return Array.from({ length: steps + 1 }, (_, i) => {
		const part = i / steps;
		return [x + 3.2 * Math.sin(part * 2 * Math.PI), top + part * (bottom - top)];
	});
}

/** Outline of a stretch as far as the paper reaches, or null. */
function stretch(segment: Segment, travel: Millimetres): string | null {
	const to = Math.min(segment.to, travel - DEPTH.left);
	if (to <= segment.from) return null;
	const over = edge(segment.from, to, travel, 1);
	const under = edge(segment.from, to, travel, -1).reverse();
	const cut = to < segment.to ? brokenOff(over.at(-1)![0], over.at(-1)![1], under[0]![1]) : [];
	return closed([...over, ...cut, ...under]);
}

/** Shoulder and grip behind the shank, as far as the paper reaches. */
function drawGrip(sheet: Sheet, travel: Millimetres): void {
	const { axis } = SECTION;
	const start = depthX(travel - SEATED);
	const left = depthX(DEPTH.left);
	if (start <= left + 4) return;
	const collar = Math.max(left, start - 1.5 * UNIT);
	const tall = 4.5 * UNIT;
	const wide = 6.2 * UNIT;
	if (collar > left + 4) {
		const cut = brokenOff(left, axis - wide, axis + wide);
		sheet.stroke(
			'body',
			closed([[collar, axis - wide], ...cut, [collar, axis + wide]])
		);
		for (const part of [-0.66, -0.33, 0.33, 0.66])
			sheet.stroke(
				'fine',
				draw((p) => {
					p.moveTo(left + 8, axis + part * wide);
					p.lineTo(collar - 7, axis + part * wide);
				})
			);
	}
	sheet.stroke(
		'metal',
		closed([
			[start, axis - tall],
			[collar, axis - tall],
			[collar, axis + tall],
			[start, axis + tall]
		])
	);
}

/** Middle of the visible part of a conductor, and how wide it is, in units. */
function visible(segment: Segment, travel: Millimetres): { x: number; wide: number } {
	const right = depthX(travel - segment.from);
	const left = Math.max(depthX(travel - segment.to), depthX(DEPTH.left));
	return { x: (left + right) / 2, wide: right - left };
}

function nameStretch(sheet: Sheet, segment: Segment, plug: Plug): void {
	if (!segment.conductor) return;
	const of = `${plug.id}.${segment.conductor}`;
	const { x, wide } = visible(segment, plug.travel);
	if (wide <= 0) return;
	const at: Place = [x + (segment.conductor === 'tip' ? -8 : 0), SECTION.axis + 5];
	sheet.point(of, [x, SECTION.axis]);
	if (wide > segment.conductor.length * 9 + 10)
		sheet.word('caption', at, segment.conductor, 'middle', of);
}

/** The plug at its travel, nose to the right; what reaches beyond the paper is broken off. */
export function drawPlug(sheet: Sheet, plug: Plug): void {
	const { segments } = PLUGS[plug.kind];
	drawGrip(sheet, plug.travel);
	for (const segment of [...segments].reverse()) {
		const d = stretch(segment, plug.travel);
		if (d === null) continue;
		const of = segment.conductor ? `${plug.id}.${segment.conductor}` : undefined;
		sheet.stroke(of ? 'metal' : 'collar', d, of);
	}
	for (const segment of segments) nameStretch(sheet, segment, plug);
}

/** Words of a plug on which nothing can be touched stand on no node. */
export const isInsulating = (kind: PlugKind): boolean => PLUGS[kind].conductors.length === 0;
