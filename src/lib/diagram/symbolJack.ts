/** The jack's part of the symbol: springs, a metal bush, arrowheads, changeover, and what the plug puts under them. */
import { PLUGS, splitNode, type NodeName } from '../engine';
import { isClosed } from './lit';
import { box, closed, disc, straight, type Place } from './sectionPen';
import type { SpringState } from './sectionStates';
import { COLUMN, TERMINAL, drawTerminal, nodeIn, type SymbolDrawing } from './symbolFrame';

/** Where each spring meets the plug, left to right as in the part. */
const MEETS = { S: 42, R: 128, T: 204 } as const;
/** x of the arrowhead under each spring. */
const ARROW = { S: 84, R: 156, T: 229 } as const;
/** x of a metal bush, before all springs. */
const BUSH = 16;
/** How far outside the sleeve's row its lead runs: clear of the spring when that is lifted. */
const BUSH_LEAD = 16;
const HALF_PAD = 10;
/** Radius of the dot of a joint. */
const JOINT = 3.4;
/** How close to the axis a spring comes at rest; on a plug it stands at `HALF_PAD`. */
const REST = 3;
const LIFT = HALF_PAD - REST;
const LEAD = COLUMN.terminal - TERMINAL;
const HEAD = 8;

interface Hinged {
	readonly row: number;
	/** 1 where outwards is up. */
	readonly side: 1 | -1;
	/** x where the line turns towards the plug. */
	readonly end: number;
	/** Movement at the plug, outwards. */
	readonly lift: number;
	readonly meets: number;
}
/** y of the spring's line at x: straight from its hinge. */
const lineAt = ({ row, side, lift, meets }: Hinged, x: number): number =>
	row - side * lift * ((COLUMN.hinge - x) / (COLUMN.hinge - meets));

/** An arrowhead that points along `side`, its tip at that place. */
const arrowhead = (x: number, tip: number, side: 1 | -1): string =>
	closed([
		[x, tip],
		[x - 4.6, tip + side * HEAD],
		[x + 4.6, tip + side * HEAD]
	]);

function hingedOf(drawing: SymbolDrawing, spring: SpringState): Hinged {
	const row = drawing.rows.of[spring.name]!;
	const meets = MEETS[spring.name];
	const lift = spring.lifted ? LIFT : 0;
	return { row, side: spring.name === 'T' ? 1 : -1, end: meets + 13, lift, meets };
}

/** The V of a spring: from the line's end to the plug and up again. */
function drawV(drawing: SymbolDrawing, spring: SpringState, hinged: Hinged): void {
	const { side, meets, end } = hinged;
	const { axis } = drawing.rows;
	const near = spring.bent ? HALF_PAD + 9 : spring.lifted ? HALF_PAD : REST;
	const touch = axis - side * (near + 1.4);
	const shoulder: Place = [end, lineAt(hinged, end)];
	const free: Place = [meets - 10, touch - side * 15];
	const way: Place[] = [
		[LEAD, hinged.row],
		[COLUMN.hinge, hinged.row],
		shoulder,
		[meets, touch],
		free
	];
	drawing.sheet.stroke('spring', straight(...way), nodeIn(drawing, spring.name));
}

/** A metal bush: a bar before the springs, joined to the sleeve's line where that never moves. */
function drawBush(drawing: SymbolDrawing): void {
	const { sheet, rows } = drawing;
	const node = nodeIn(drawing, 'S');
	const row = rows.of['S']!;
	const low = row + BUSH_LEAD;
	const top = rows.axis + HALF_PAD + 6;
	const join = COLUMN.hinge + 3;
	sheet.stroke('metal', box(BUSH - 5, top, 10, row - top - 14, 1), node);
	sheet.stroke('spring', straight([BUSH, row - 14], [BUSH, low], [join, low], [join, row]), node);
	sheet.stroke('seat-closed', disc(join, row, JOINT), node);
}

/** A break contact: a line on the axis' side that ends in an arrowhead on the spring. */
function drawBreak(drawing: SymbolDrawing, spring: SpringState, hinged: Hinged): void {
	const contact = spring.breakContact!;
	const node = nodeIn(drawing, contact);
	const { sheet, rows } = drawing;
	const { side } = hinged;
	const row = rows.of[contact]!;
	const x = ARROW[spring.name];
	const rest = lineAt({ ...hinged, lift: 0 }, x) + side * 1.4;
	const now = spring.closed
		? lineAt(hinged, x) + side * 1.4
		: rest + (spring.stuckOpen ? side * 5 : 0);
	sheet.stroke('blade', straight([LEAD, row], [x, row], [x, now + side * HEAD]), node);
	const isLit = spring.closed && sheet.lit.breaks.has(node);
	sheet.stroke(spring.closed ? 'seat-closed' : 'seat', arrowhead(x, now, side), node, isLit);
	drawTerminal(drawing, contact);
}

/** What lies under one spring: the plug's conductor, insulation, or nothing. */
interface Pad {
	readonly x: number;
	readonly node: NodeName | null;
}

/** Whether two springs side by side stand on one piece: one conductor, or a plug all of insulation. */
function isOnePiece({ state }: SymbolDrawing, a: Pad, b: Pad): boolean {
	if (a.node !== b.node) return false;
	return a.node !== null || PLUGS[state.plug!.kind].conductors.length === 0;
}

/** The plug: a bar under every spring that it lifts; one piece under two springs is one bar. */
function drawPlug(drawing: SymbolDrawing): void {
	const { sheet, state, rows } = drawing;
	const pads = [...state.springs]
		.filter((s) => s.lifted)
		.sort((a, b) => MEETS[a.name] - MEETS[b.name])
		.map((s): Pad => ({ x: MEETS[s.name], node: s.touches }));
	const groups: Pad[][] = [];
	for (const pad of pads) {
		const last = groups.at(-1);
		if (last && isOnePiece(drawing, last[0]!, pad)) last.push(pad);
		else groups.push([pad]);
	}
	const top = rows.axis - HALF_PAD;
	for (const group of groups) {
		const { node } = group[0]!;
		const [from, to] = [group[0]!.x - 30, group.at(-1)!.x + 30];
		const d = box(from, top, to - from, 2 * HALF_PAD, 2);
		sheet.stroke(node ? 'metal' : 'collar', d, node ?? undefined);
		if (!node) continue;
		const middle: Place = [(from + to) / 2, rows.axis + 5.2];
		sheet.word('caption', middle, splitNode(node)[1], 'middle', node);
		sheet.point(node, [(from + to) / 2, rows.axis]);
	}
	drawStrap(drawing, groups);
}

/** How high the strap stands over the bars, and how far from a bar's end it goes down. */
const STRAP = { rise: 8, from: 9 } as const;

/** A plug whose parts are joined inside: a strap from bar to bar, clear of what insulates them outside. */
function drawStrap(
	{ sheet, state, rows }: SymbolDrawing,
	groups: readonly (readonly Pad[])[]
): void {
	if (!state.plug || PLUGS[state.plug.kind].inside.length === 0) return;
	const foot = rows.axis - HALF_PAD;
	const top = foot - STRAP.rise;
	const bars = groups.filter(([pad]) => pad!.node !== null);
	bars.slice(1).forEach((bar, i) => {
		const from = bars[i]!.at(-1)!.x + 30 - STRAP.from;
		const to = bar[0]!.x - 30 + STRAP.from;
		const way = straight([from, foot], [from, top], [to, top], [to, foot]);
		sheet.stroke('blade', way, bar[0]!.node!);
	});
}

/** `C` between `NC` and `NO`, worked by the tip spring: the broken line. */
function drawChangeover(drawing: SymbolDrawing, tip: Hinged): void {
	const { sheet, bench, state, rows } = drawing;
	const id = state.socket.id;
	const row = rows.of['C']!;
	const onNC = isClosed(bench, id, 'NC');
	const x = ARROW.T - 56;
	const move = onNC ? 6 : -6;
	for (const [contact, way] of [
		['NC', -1],
		['NO', 1]
	] as const) {
		const node = nodeIn(drawing, contact);
		const y = rows.of[contact]!;
		const shut = isClosed(bench, id, contact);
		const touch = row - way * 6 - way * 1.4;
		sheet.stroke('blade', straight([LEAD, y], [x, y], [x, touch - way * HEAD]), node);
		const isLit = shut && sheet.lit.breaks.has(node);
		const head = arrowhead(x, touch, way === 1 ? -1 : 1);
		sheet.stroke(shut ? 'seat-closed' : 'seat', head, node, isLit);
		drawTerminal(drawing, contact);
	}
	const slope = move / (COLUMN.hinge - x);
	const yAt = (at: number): number => row + slope * (COLUMN.hinge - at);
	// Within the straight run of T, before its knee.
	const link = (MEETS.T + 13 + COLUMN.hinge) / 2 - 10;
	sheet.stroke('hidden', straight([link, lineAt(tip, link)], [link, yAt(link)]));
	sheet.stroke(
		'spring',
		straight([LEAD, row], [COLUMN.hinge, row], [x - 10, yAt(x - 10)]),
		nodeIn(drawing, 'C')
	);
	drawTerminal(drawing, 'C');
}

/** Draws the jack: plug first, then what stands on it. */
export function drawJackSymbol(drawing: SymbolDrawing): void {
	const { sheet, rows, state } = drawing;
	sheet.stroke('centre', straight([8, rows.axis], [COLUMN.hinge - 10, rows.axis]));
	drawPlug(drawing);
	if (state.socket.bush === 'metal') drawBush(drawing);
	for (const spring of state.springs) {
		const hinged = hingedOf(drawing, spring);
		if (spring.breakContact) drawBreak(drawing, spring, hinged);
		drawV(drawing, spring, hinged);
		drawTerminal(drawing, spring.name);
		if (spring.name === 'T' && state.changeover) drawChangeover(drawing, hinged);
	}
}
