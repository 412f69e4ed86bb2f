/**
 * The plug's profile: a round nose that widens, a neck that is the groove in which the tip spring
 * comes to rest, then a plain cylinder of 6.35 mm. The stretches are the engine's; the curve between
 * is schematic. The outline and the lift of every spring come from this one function, so a spring
 * rides on what is drawn.
 */
import { PLUGS, SEATED, type Millimetres, type Plug, type Segment } from '../engine';
import { DEPTH, SECTION, UNIT, depthX } from './sectionFrame';
import type { Lettering } from './figure';
import { WORD_SIZES } from './svg';
import { bulletHalf, bulletStops, hangOf, heldBy, type Bullet, type Hang } from './profile';
import { closed, disc, kept, straight, type Place, type Sheet } from './sectionPen';

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

/** Half of the grip's width, units. */
const WIDE = 6.2 * UNIT;
/** The wavy break at the left edge of the paper: x where it stands at that height of the paper. */
const breakAt = (y: number): number =>
	depthX(DEPTH.left) + 3.2 * Math.sin((Math.PI * (y - SECTION.axis)) / (SHANK * UNIT));

/** The wavy break from one height to another, downwards. */
function brokenOff(top: number, bottom: number): Place[] {
	const steps = 24;
	return Array.from({ length: steps + 1 }, (_, i) => {
		const y = top + (i / steps) * (bottom - top);
		return [breakAt(y), y];
	});
}

/** Draws a stretch as far as the paper reaches: metal with two lines for its roundness, or a collar. */
function drawStretch(sheet: Sheet, segment: Segment, { id, travel }: Plug): void {
	const { from, conductor } = segment;
	const paper = travel - DEPTH.left;
	const to = Math.min(segment.to, paper);
	if (to <= from) return;
	// Where the paper ends on the border of two stretches, the plug goes on all the same.
	const isCut = paper <= segment.to;
	const of = conductor ? `${id}.${conductor}` : undefined;
	const over = along(from, to, travel, 1);
	const below = along(from, to, travel, -1).reverse();
	const cut = isCut ? brokenOff(over.at(-1)![1], below[0]![1]) : [];
	sheet.stroke(of ? 'metal' : 'collar', closed([...over, ...cut, ...below]), of);
	if (!of || to - from < 1) return;
	const start = from + (from === 0 ? 0.5 : 0.25);
	for (const share of ROUNDNESS) {
		// Where the paper ends, so does the line.
		const end = isCut ? to : to - 0.25 - (share + 1) * 0.8;
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
	if (collar > left + 4) {
		const cut = brokenOff(axis - WIDE, axis + WIDE);
		sheet.stroke('body', closed([[collar, axis - WIDE], ...cut, [collar, axis + WIDE]]));
		for (const share of GRIP_LINES) {
			const y = axis - share * WIDE;
			if (collar - left > 20) sheet.stroke('fine', straight([breakAt(y), y], [collar - 6, y]));
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

/** Middle of a conductor, wherever the paper ends, in units. */
const middleX = ({ from, to }: Segment, travel: Millimetres): number =>
	depthX(travel - (from + to) / 2);

/** Where each conductor can be pointed at. */
export function pointAtPlug(sheet: Sheet, plug: Plug): void {
	for (const segment of PLUGS[plug.kind].segments) {
		const { x, wide } = visible(segment, plug.travel);
		if (segment.conductor && wide > 0)
			sheet.point(`${plug.id}.${segment.conductor}`, [x, SECTION.axis]);
	}
}

/** How far behind its part's front end the name of a long part stands, units: there it is seen first. */
const NAME_BEHIND = 9;
/** Middle of a part's name while the plug's nose stands at the front face, units. */
function nameX(segment: Segment, wide: number): number {
	if (segment.conductor === 'sleeve') return depthX(-segment.from) - NAME_BEHIND - wide / 2;
	return middleX(segment, 0) + (segment.conductor === 'tip' ? -8 : 0);
}

/** How wide a part's name is, units. */
const nameWide = (name: string, lettering: Lettering): number =>
	name.length * 0.48 * WORD_SIZES[lettering].part;

/** Whether the part's name is whole on the paper, and has room on the part. */
function hasName(segment: Segment, travel: Millimetres, lettering: Lettering): boolean {
	const wide = nameWide(segment.conductor ?? '', lettering);
	const x = nameX(segment, wide) + depthX(travel) - depthX(0);
	const isWhole = x - wide / 2 > depthX(DEPTH.left) + 7;
	return segment.conductor !== null && isWhole && wide + 3 < (segment.to - segment.from) * UNIT;
}

/** The names that are whole on the paper of a plug at its travel, in one text. */
export const namesOnPlug = ({ kind, travel }: Plug, lettering: Lettering): string =>
	PLUGS[kind].segments
		.filter((segment) => hasName(segment, travel, lettering))
		.map(({ conductor }) => conductor)
		.join(' ');

/** A name printed on the metal: it travels with the plug, and is there once it is whole on the paper. */
function nameStretch(sheet: Sheet, segment: Segment, plug: Plug): void {
	if (!segment.conductor || !hasName(segment, plug.travel, sheet.lettering)) return;
	const x = nameX(segment, nameWide(segment.conductor, sheet.lettering));
	const at: Place = [
		x + depthX(plug.travel) - depthX(0),
		SECTION.axis + 0.34 * WORD_SIZES[sheet.lettering].part
	];
	sheet.word('part', at, segment.conductor, 'middle', `${plug.id}.${segment.conductor}`);
}

/** Joints inside the plug, as hidden lines from conductor to conductor. */
function drawInside(sheet: Sheet, { id, kind, travel }: Plug): void {
	const { inside, segments } = PLUGS[kind];
	const y = SECTION.axis - 18;
	const left = depthX(DEPTH.left) + 4;
	for (const pair of inside) {
		const ends = pair.map((name) => segments.find((s) => s.conductor === name)!);
		const xs = ends.map((end) => middleX(end, travel));
		const [from, to] = [Math.max(...xs), Math.max(left, Math.min(...xs))];
		if (from <= to) continue;
		const of = `${id}.${pair[0]}`;
		sheet.stroke('hidden', straight([from, y], [to, y]), of);
		for (const x of xs.filter((x) => x > left)) sheet.stroke('pointer', disc(x, y, 2), of);
	}
}

/** The plug at its travel, nose to the right; what reaches beyond the paper is broken off. */
export function drawPlug(sheet: Sheet, plug: Plug): void {
	const { segments } = PLUGS[plug.kind];
	drawGrip(sheet, plug.travel);
	for (const segment of [...segments].reverse()) drawStretch(sheet, segment, plug);
	drawInside(sheet, plug);
	for (const segment of segments) nameStretch(sheet, segment, plug);
	pointAtPlug(sheet, plug);
}

/** How wide the plug is where the paper ends, units, and whose metal that is; null before it. */
function atPaper({ id, kind, travel }: Plug): { half: number; of?: string } | null {
	const s = travel - DEPTH.left;
	if (s < 0) return null;
	const radius = plugRadius(s);
	if (radius === null || s > SEATED) return { half: s < SEATED + 1.5 ? 4.5 * UNIT : WIDE };
	const here = PLUGS[kind].segments.find((segment) => s < segment.to);
	return { half: radius * UNIT, ...(here?.conductor && { of: `${id}.${here.conductor}` }) };
}

/** The broken edge alone, of a plug that is drawn once and moved under the paper's lid. */
export function drawPaperEdge(sheet: Sheet, plug: Plug): void {
	const cut = atPaper(plug);
	if (!cut) return;
	const { half, of } = cut;
	const { axis } = SECTION;
	const edge = (): string => straight(...brokenOff(axis - half, axis + half));
	sheet.stroke('outline', kept(`edge ${half}`, edge), of);
}

/** Paper from the left up to the wavy break, over all that lies beyond it. */
export function paperLid(): string {
	const [top, bottom] = [SECTION.axis - WIDE - 4, SECTION.axis + WIDE + 4];
	return kept('lid', () => closed([[0, top], ...brokenOff(top, bottom), [0, bottom]]));
}
