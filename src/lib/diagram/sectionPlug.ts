/**
 * The plug's profile: a blunt nose that widens, a neck that is the groove in which the tip spring
 * comes to rest, then a plain cylinder of 6.35 mm. The stretches are the engine's; the curve between
 * is schematic. The outline and the lift of every spring come from this one function, so a spring
 * rides on what is drawn.
 */
import { PLUGS, SEATED, type Millimetres, type Plug, type Segment } from '../engine';
import { DEPTH, SECTION, UNIT, depthX } from './sectionFrame';
import { closed, disc, straight, type Place, type Sheet } from './sectionPen';

/** Half of 6.35 mm. */
const SHANK: Millimetres = 3.175;
const NOSE = { flat: 0.75, round: 0.2, radius: 1.22, widest: 3.02, at: 2.8 } as const;
/** Middle of the groove: where the tip spring stands when the plug is seated, 30.5 − 26. */
const GROOVE = { middle: 4.5, half: 1.75, radius: 2.15 } as const;

/** The nose's cone, swelling to its widest. */
function cone(s: Millimetres): Millimetres {
	const left = Math.max(0, 1 - s / NOSE.at);
	return NOSE.radius + (NOSE.widest - NOSE.radius) * (1 - left ** 1.8);
}

/** Where lines stand that show a round body from its shaded side, as shares of its radius. */
const ROUNDNESS = [-0.66, -0.84] as const;
const GRIP_LINES = [0.9, 0.78, 0.6, -0.42, -0.6, -0.72, -0.82, -0.9] as const;

/** Radius of a phone plug, mm, at `s` mm behind its nose; null where there is no plug. */
export function plugRadius(s: Millimetres): Millimetres | null {
	if (s < 0) return null;
	if (s >= GROOVE.middle + GROOVE.half) return SHANK;
	if (s < NOSE.round) {
		const left = 1 - s / NOSE.round;
		return NOSE.flat + (cone(NOSE.round) - NOSE.flat) * Math.sqrt(1 - left * left);
	}
	if (s <= GROOVE.middle - GROOVE.half) return cone(s);
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

/** Stops along a stretch, mm behind the nose: close together where the profile bends. */
function stopsOf(from: Millimetres, to: Millimetres): Millimetres[] {
	const curved = GROOVE.middle + GROOVE.half;
	const stops = [from];
	for (let s = from; s < Math.min(to, curved); s += s < NOSE.round ? 0.025 : 0.125)
		if (s > from) stops.push(s);
	if (from < curved && curved < to) stops.push(curved);
	return [...stops, to];
}

/** A line along a stretch at that share of its radius; −1 is its lower edge. */
const along = (from: Millimetres, to: Millimetres, travel: Millimetres, share: number): Place[] =>
	stopsOf(from, to).map((s) => [depthX(travel - s), SECTION.axis - share * plugRadius(s)! * UNIT]);

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
	if (wide > segment.conductor.length * 8.4 + 8)
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
