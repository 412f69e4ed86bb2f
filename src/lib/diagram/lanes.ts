/**
 * Long ways over a panel: a wire to a socket that is no neighbour, or past other sockets to a box,
 * goes as in a tidy loom. It leaves its socket by the gutter beside it, runs in the lane below the
 * row, and comes to the other end by the gutter there. So it crosses no socket that it does not serve.
 */
import type { Curve, End, Obstacle } from './route';
import { routeOf } from './route';
import type { Point } from './socket';

/** Where a socket stands in the grid of the panel. */
export interface Cell extends Point {
	readonly column: number;
	readonly row: number;
}
/** One stretch of a wire, and whether each of its ends turns with the panel. */
export interface Piece {
	readonly curve: Curve;
	readonly turns: readonly [boolean, boolean];
	/** How it lies seen from the front, where that is no mirror image: one end turns, one does not. */
	readonly front?: () => Curve;
}

/** From a cell's middle to the gutter beside it and to the lanes below it, drawing units. */
const GUTTER = 165;
const LANE = 276;
const STEP = 6;
const SLOTS = 5;
const BEND = 12;
/**
 * Where a wire leaves the gutter for its lug: so far above the socket's middle, above a lug in the lower
 * half, or above one that it comes to from below.
 */
const ABOVE = 240;
const OVER_LUG = 104;
const BESIDE = 40;

/** How many wires lie in each lane and gutter already: the next one lies beside them. */
export class Lanes {
	private readonly taken = new Map<string, number>();
	slot(name: string): number {
		const count = this.taken.get(name) ?? 0;
		this.taken.set(name, count + 1);
		return count % SLOTS;
	}
}

/** Whether a direct wire between two cells would cross other sockets, or the names between two rows. */
export const areFar = (a: Cell, b: Cell): boolean =>
	Math.abs(a.column - b.column) > 1 || a.row !== b.row;

const between = (a: Point, b: Point, part: number): Point => ({
	x: a.x + (b.x - a.x) * part,
	y: a.y + (b.y - a.y) * part
});
const line = (a: Point, b: Point): Curve => ({
	a,
	c1: between(a, b, 1 / 3),
	c2: between(a, b, 2 / 3),
	b
});
/** A quarter turn about the corner. */
const bend = (a: Point, corner: Point, b: Point): Curve => ({
	a,
	c1: between(a, corner, 0.55),
	c2: between(b, corner, 0.55),
	b
});
const reversed = ({ a, c1, c2, b }: Curve): Curve => ({ a: b, c1: c2, c2: c1, b: a });
const ON_PANEL = [true, true] as const;

interface Way {
	readonly lanes: Lanes;
	readonly obstaclesOf: (end: End) => readonly Obstacle[];
	readonly lainAt: (end: End) => readonly (readonly Point[])[];
}

const leg = ({ obstaclesOf, lainAt }: Way, end: End, at: Point, way: number): Curve =>
	routeOf(end, { ...at, ways: [way], of: '' }, obstaclesOf(end), lainAt(end));

const gutterName = (cell: Cell, side: 1 | -1): string =>
	`gutter ${cell.column + (side > 0 ? 1 : 0)}`;
/** The gutter on that side of a cell, at the next free place. */
const gutterOf = (lanes: Lanes, cell: Cell, side: 1 | -1): number => {
	return cell.x + side * GUTTER + (lanes.slot(gutterName(cell, side)) - 2) * STEP;
};
const laneOf = (lanes: Lanes, cell: Cell): number =>
	cell.y + LANE + lanes.slot(`lane ${cell.row}`) * STEP;

/** Both gutters of a cell as things to keep clear of: a letter in one would lie on other wires. */
export const guttersOf = ({ x, y }: Cell): Obstacle[] =>
	[-GUTTER, GUTTER].flatMap((off) =>
		Array.from({ length: 24 }, (_, i) => ({ x: x + off, y: y - 240 + 24 * i, r: 16 }))
	);

/** From a lug down its gutter into the lane, heading to `side`. */
function intoLane(way: Way, from: End, cell: Cell, side: 1 | -1, y: number): Curve[] {
	const x = gutterOf(way.lanes, cell, side);
	const top = { x, y: y - BEND };
	return [leg(way, from, top, -Math.PI / 2), bend(top, { x, y }, { x: x + side * BEND, y })];
}

/** How far down its gutter a wire goes. */
function lowOf(cell: Cell, to: End): number {
	if (to.ways.every((way) => Math.sin(way) > 0)) return to.y - BESIDE;
	return to.y > cell.y ? to.y - OVER_LUG : cell.y - ABOVE;
}

/** Between two sockets at the same gutter, `from` some rows above: straight down it. */
function alongGutter(way: Way, from: End, a: Cell, to: End, b: Cell, side: 1 | -1): Curve[] {
	const x = gutterOf(way.lanes, a, side);
	const top = { x, y: a.y + LANE - BEND };
	const low = { x, y: lowOf(b, to) };
	return [
		leg(way, from, top, -Math.PI / 2),
		line(top, low),
		reversed(leg(way, to, low, Math.PI / 2))
	];
}

/** The gutter that is nearer to both ends, of two cells of one column. */
const nearSide = (from: End, a: Cell, to: End, b: Cell): 1 | -1 =>
	from.x - a.x + to.x - b.x < 0 ? -1 : 1;

/** The gutter by which a wire comes to a socket: in a row below the one that is nearer to the lug. */
function backSide(a: Cell, to: End, b: Cell, side: 1 | -1): 1 | -1 {
	if (b.column === a.column) return side;
	if (a.row === b.row || to.x === b.x) return -side as 1 | -1;
	return to.x < b.x ? -1 : 1;
}

/** Between two sockets far apart; `from` stands in the same row or in one above. */
function downwards(way: Way, from: End, a: Cell, to: End, b: Cell): Curve[] {
	const side = b.column === a.column ? nearSide(from, a, to, b) : b.column > a.column ? 1 : -1;
	const back = backSide(a, to, b, side);
	if (gutterName(a, side) === gutterName(b, back)) return alongGutter(way, from, a, to, b, side);
	const y = laneOf(way.lanes, a);
	const start = intoLane(way, from, a, side, y);
	const x = gutterOf(way.lanes, b, back);
	const into = start.at(-1)!.b;
	const same = a.row === b.row;
	const end = { x, y: y + (same ? -BEND : BEND) };
	const heading = x >= into.x ? 1 : -1;
	const arrive = { x: x - heading * BEND, y };
	const through = [...start, line(into, arrive), bend(arrive, { x, y }, end)];
	if (same) return [...through, reversed(leg(way, to, end, -Math.PI / 2))];
	const low = { x, y: Math.max(end.y, lowOf(b, to)) };
	const down = low.y > end.y ? [line(end, low)] : [];
	return [...through, ...down, reversed(leg(way, to, low, Math.PI / 2))];
}

/** Between two sockets that are no neighbours, in the order of the wire. */
export function farPieces(way: Way, from: End, a: Cell, to: End, b: Cell): Piece[] {
	const curves =
		a.row <= b.row
			? downwards(way, from, a, to, b)
			: downwards(way, to, b, from, a).reverse().map(reversed);
	return curves.map((curve) => ({ curve, turns: ON_PANEL }));
}

/** From a socket under its neighbours to a box at the right of the panel, whose edge is at `edge`. */
export function outPieces(way: Way, from: End, cell: Cell, to: End, edge: number): Piece[] {
	const y = laneOf(way.lanes, cell);
	const start = intoLane(way, from, cell, 1, y);
	const out = { x: edge + 14, y };
	const last = routeOf({ ...out, ways: [0], of: '' }, to, []);
	return [
		...start.map((curve) => ({ curve, turns: ON_PANEL })),
		{ curve: line(start.at(-1)!.b, out), turns: [true, false] },
		{ curve: last, turns: [false, false] }
	];
}

/** From a socket to the panel's own stud, at its lower right: by the lane, then down the margin. */
export function studPieces(way: Way, from: End, cell: Cell, stud: End): Piece[] {
	const y = laneOf(way.lanes, cell);
	const start = intoLane(way, from, cell, 1, y);
	const into = start.at(-1)!.b;
	const low = stud.y < y + 60;
	const arrive = { x: stud.x - (low ? 84 : BEND), y };
	const corner = { x: stud.x, y };
	const down = { x: stud.x, y: y + BEND };
	const rest = low
		? [routeOf({ ...arrive, ways: [0], of: '' }, stud, [])]
		: [bend(arrive, corner, down), line(down, stud)];
	return [...start, line(into, arrive), ...rest].map((curve) => ({ curve, turns: ON_PANEL }));
}

/** The pieces of a wire, from its other end. */
export const backwards = (pieces: readonly Piece[]): Piece[] =>
	[...pieces].reverse().map(({ curve, turns: [a, b] }) => ({
		curve: reversed(curve),
		turns: [b, a]
	}));
