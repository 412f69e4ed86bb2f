/**
 * The plug's profile: a round nose that widens, a neck that is the groove in which the tip spring
 * comes to rest, then a plain cylinder of 6.35 mm. The stretches are the engine's; the curve between
 * is schematic. The outline and the lift of every spring come from this one function, so a spring
 * rides on what is drawn.
 */
import { PLUGS, SEATED, type Millimetres, type Plug, type Segment } from '../engine';
import { DEPTH, SECTION, UNIT, depthX } from './sectionFrame';
import { WORD_SIZES } from './svg';
import { bulletHalf, bulletStops, hangOf, heldBy, type Bullet, type Hang } from './profile';
import { closed, disc, straight, type Place, type Sheet } from './sectionPen';

/** Half of 6.35 mm. */
const SHANK: Millimetres = 3.175;
/** The nose: round at its end, then a flank that swells to the widest place before the groove. */
const NOSE: Bullet = { cap: 1.3, turn: 38, long: 2.75, full: 3.02 };
/** Middle of the groove: where the tip spring stands when the plug is seated, 30.5 − 26. */
const GROOVE = { middle: 4.5, half: 1.75, radius: 2.15 } as const;

/** Where lines stand that show a round body from its shaded side, as shares of its radius. */
const ROUNDNESS = [-0.66, -0.84] as const;
const GRIP_LINES = [0.9, 0.78, 0.6, -0.42, -0.6, -0.72, -0.82, -0.9] as const;

/** Radius of a phone plug, mm, at `s` mm behind its nose; null where there is no plug. */
export function plugRadius(s: Millimetres): Millimetres | null {
	if (s < 0) return null;
	if (s >= GROOVE.middle + GROOVE.half) return SHANK;
	if (s <= NOSE.long) return bulletHalf(NOSE, s);
	const shore = s < GROOVE.middle ? NOSE.full : SHANK;
	const deep = (1 + Math.cos((Math.PI * (s - GROOVE.middle)) / GROOVE.half)) / 2;
	return shore - (shore - GROOVE.radius) * deep;
}

/** Height in units to which the plug holds up a spring's nose of that radius; null before it. */
export const heldAt = (s: Millimetres, nose: number): number | null =>
	heldBy(plugRadius, UNIT, s, nose);
/** How a spring with that nose (units) hangs that a plug lifts by `lift` (units) when it first touches. */
export const hangFor = (nose: number, lift: number): Hang =>
	hangOf(plugRadius, NOSE.cap, UNIT, nose, lift);

/** Places at which the curved part of the profile is drawn, mm behind the nose. */
const CURVED: readonly Millimetres[] = [
	...bulletStops(NOSE),
	...Array.from({ length: 24 }, (_, i) => NOSE.long + ((i + 1) * 2 * GROOVE.half) / 24)
];

/** Stops along a stretch, mm behind the nose: close together where the profile bends. */
export const curvedStops = (from: Millimetres, to: Millimetres): Millimetres[] => [
	from,
	...CURVED.filter((s) => s > from && s < to),
	to
];

/** A line along a stretch at that share of its radius; −1 is its lower edge. */
const along = (from: Millimetres, to: Millimetres, travel: Millimetres, share: number): Place[] =>
	curvedStops(from, to).map((s) => [
		depthX(travel - s),
		SECTION.axis - share * plugRadius(s)! * UNIT
	]);

/** A wavy break at the left edge of the paper, downwards. */
function brokenOff(x: number, top: number, bottom: number): Place[] {
	const steps = 24;
	return Array.from({ length: steps + 1 }, (_, i) => {
		const part = i / steps;
		return [x + 3.2 * Math.sin(part * 2 * Math.PI), top + part * (bottom - top)];
	});
}

/** Draws a stretch as far as the paper reaches: metal with two lines for its roundness, or a collar. */
function drawStretch(sheet: Sheet, segment: Segment, { id, travel }: Plug): void {
	const { from, conductor } = segment;
	const to = Math.min(segment.to, travel - DEPTH.left);
	if (to <= from) return;
	const of = conductor ? `${id}.${conductor}` : undefined;
	const over = along(from, to, travel, 1);
	const below = along(from, to, travel, -1).reverse();
	const cut = to < segment.to ? brokenOff(over.at(-1)![0], over.at(-1)![1], below[0]![1]) : [];
	sheet.stroke(of ? 'metal' : 'collar', closed([...over, ...cut, ...below]), of);
	if (!of || to - from < 1) return;
	const start = from + (from === 0 ? 0.5 : 0.25);
	for (const share of ROUNDNESS) {
		const end = to - 0.25 - (share + 1) * 0.8;
		if (end > start) sheet.stroke('fine', straight(...along(start, end, travel, share)), of);
	}
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
		sheet.stroke('body', closed([[collar, axis - wide], ...cut, [collar, axis + wide]]));
		for (const share of GRIP_LINES) {
			const y = axis - share * wide;
			if (collar - left > 20) sheet.stroke('fine', straight([left + 8, y], [collar - 6, y]));
		}
	}
	sheet.stroke(
		'collar',
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
	const size = WORD_SIZES[sheet.lettering].caption;
	const at: Place = [x + (segment.conductor === 'tip' ? -8 : 0), SECTION.axis + sheet.drop - 0.5];
	sheet.point(of, [x, SECTION.axis]);
	const isCut = plug.travel - segment.to < DEPTH.left;
	if (wide > segment.conductor.length * 0.48 * size + (isCut ? 14 : 3))
		sheet.word('caption', at, segment.conductor, 'middle', of);
}

/** Joints inside the plug, as hidden lines from conductor to conductor. */
function drawInside(sheet: Sheet, { id, kind, travel }: Plug): void {
	const { inside, segments } = PLUGS[kind];
	const y = SECTION.axis - 18;
	for (const pair of inside) {
		const ends = pair.map((name) => segments.find((s) => s.conductor === name)!);
		if (ends.some((end) => visible(end, travel).wide < 12)) continue;
		const xs = ends.map((end) => visible(end, travel).x);
		const [from, to] = [Math.max(...xs), Math.min(...xs)];
		const of = `${id}.${pair[0]}`;
		sheet.stroke('hidden', straight([from, y], [to, y]), of);
		for (const x of xs) sheet.stroke('pointer', disc(x, y, 2), of);
	}
}

/** The plug at its travel, nose to the right; what reaches beyond the paper is broken off. */
export function drawPlug(sheet: Sheet, plug: Plug): void {
	const { segments } = PLUGS[plug.kind];
	drawGrip(sheet, plug.travel);
	for (const segment of [...segments].reverse()) drawStretch(sheet, segment, plug);
	drawInside(sheet, plug);
	for (const segment of segments) nameStretch(sheet, segment, plug);
}
