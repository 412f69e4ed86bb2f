/**
 * How a wire lies: the least-cost curve out of a small family. A curve leaves each end in a
 * direction in which a wire would leave that cup or lug, with more or less slack. It costs its
 * length, and more for coming near a lug, a mark or a break sign it does not belong to, or for
 * running along a wire that was there before. So a wire never moves because another one is added.
 */
import { pathRound } from 'd3-path';
import type { Point } from './socket';

export interface Curve {
	readonly a: Point;
	readonly c1: Point;
	readonly c2: Point;
	readonly b: Point;
}
/** A round thing to keep clear of. */
export interface Obstacle extends Point {
	readonly r: number;
	/** Whose it is: a wire that ends there may touch it. */
	readonly of?: string;
}
export interface End extends Point {
	/** Directions a wire may leave in, radians, 0 to the right, π/2 down. */
	readonly ways: readonly number[];
	readonly of: string;
}

const SAMPLES = 36;
/** How far a curve goes on straight from its two ends, as shares of the way between them. */
const SLACK = [
	[0.3, 0.3],
	[0.55, 0.55],
	[0.9, 0.9],
	[1.3, 1.3],
	[2, 2],
	[0.3, 0.9],
	[0.9, 0.3],
	[1.5, 0.3]
] as const;
/** What it costs to run under a lug where a wire does not land: more than any way round. */
const UNDER_A_LUG = 5000;
/** A wire is bent about no smaller radius, units. */
const TIGHTEST = 16;

const at = ({ a, c1, c2, b }: Curve, t: number): Point => {
	const u = 1 - t;
	const [p, q, r, s] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
	return { x: p * a.x + q * c1.x + r * c2.x + s * b.x, y: p * a.y + q * c1.y + r * c2.y + s * b.y };
};
/** Points along a curve, ends included. */
export const pointsAlong = (curve: Curve, samples = SAMPLES): Point[] =>
	Array.from({ length: samples + 1 }, (_, i) => at(curve, i / samples));

const ahead = (from: Point, way: number, reach: number): Point => ({
	x: from.x + Math.cos(way) * reach,
	y: from.y + Math.sin(way) * reach
});

/** The square of how far apart two points are: a route asks it some ten thousand times. */
function apart(p: Point, q: Point): number {
	const [dx, dy] = [p.x - q.x, p.y - q.y];
	return dx * dx + dy * dy;
}

function lengthOf(points: readonly Point[]): number {
	let sum = 0;
	for (let i = 1; i < points.length; i++) sum += Math.sqrt(apart(points[i]!, points[i - 1]!));
	return sum;
}

/** Nearness to what is in the way, and to wires that were there before; over `limit`, any such number. */
function crowding(
	points: readonly Point[],
	ends: readonly string[],
	obstacles: readonly Obstacle[],
	others: readonly (readonly Point[])[],
	limit: number
): number {
	let cost = 0;
	for (const o of obstacles) {
		if (cost >= limit) return cost;
		if (o.of !== undefined && ends.includes(o.of)) continue;
		let least = Infinity;
		for (const p of points) {
			const d = apart(p, o);
			if (d < least) least = d;
		}
		const nearest = Math.sqrt(least) - o.r;
		if (nearest < 0) cost += (o.of === undefined ? 900 : UNDER_A_LUG) - 20 * nearest;
		else if (nearest < 10) cost += (10 - nearest) * 18;
	}
	for (const other of others) {
		if (cost >= limit) return cost;
		let along = 0;
		for (let i = 3; i < points.length - 3; i++) {
			const p = points[i]!;
			for (const q of other) if (Math.abs(p.x - q.x) < 7 && Math.abs(p.y - q.y) < 7) along += 1;
		}
		// One crossing costs little; lying on top of another wire costs much.
		cost += along * 6 + Math.max(0, along - 3) * 22;
	}
	return cost;
}

/** A turn costs a little, and much where it is tighter than a wire is bent. */
function bending(points: readonly Point[]): number {
	let cost = 0;
	for (let i = 1; i < points.length - 1; i++) {
		const [p, q, r] = [points[i - 1]!, points[i]!, points[i + 1]!];
		const [ax, ay, bx, by] = [q.x - p.x, q.y - p.y, r.x - q.x, r.y - q.y];
		const turn = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
		const reach = Math.sqrt(bx * bx + by * by);
		cost += 10 * turn + 150 * Math.max(0, turn - reach / TIGHTEST);
	}
	return cost;
}

/** From left to right: where a wire should stay. */
export interface Room {
	readonly left: number;
	readonly right: number;
}

/** How far a wire leaves its room. */
const outside = (points: readonly Point[], room: Room | null): number =>
	room === null
		? 0
		: points.reduce((sum, p) => sum + Math.max(0, room.left - p.x, p.x - room.right), 0);

/**
 * The best curve between two ends. `others`: points along wires that were there before; `room`: a
 * jumper stays over its own socket, because over the next one it would be taken for that one's.
 */
export function routeOf(
	from: End,
	to: End,
	obstacles: readonly Obstacle[],
	others: readonly (readonly Point[])[] = [],
	room: Room | null = null
): Curve {
	const span = Math.hypot(to.x - from.x, to.y - from.y);
	let best: Curve | null = null;
	let least = Infinity;
	for (const out of from.ways)
		for (const back of to.ways)
			for (const [first, last] of SLACK) {
				const curve: Curve = {
					a: from,
					c1: ahead(from, out, 26 + span * first * 0.62),
					c2: ahead(to, back, 26 + span * last * 0.62),
					b: to
				};
				const points = pointsAlong(curve);
				const length = 0.6 * lengthOf(points);
				if (length >= least) continue;
				const own = length + 4 * outside(points, room) + bending(points);
				if (own >= least) continue;
				const ends = [from.of, to.of];
				const cost = own + crowding(points, ends, obstacles, others, least - own);
				if (cost < least) [best, least] = [curve, cost];
			}
	return best!;
}

/** Curves that follow each other, as one SVG path. */
export function curvesPath(curves: readonly Curve[]): string {
	const p = pathRound(2);
	curves.forEach(({ a, c1, c2, b }, i) => {
		if (i === 0) p.moveTo(a.x, a.y);
		p.bezierCurveTo(c1.x, c1.y, c2.x, c2.y, b.x, b.y);
	});
	return p.toString();
}

/** Half the width of the band about a wire, units. */
const BAND = 3.6;
/** The band about curves that follow each other, as a closed path with square ends. */
export function bandPath(curves: readonly Curve[]): string {
	const middle = curves.flatMap((curve, i) => pointsAlong(curve, 14).slice(i === 0 ? 0 : 1));
	const edge = (side: 1 | -1): Point[] =>
		middle.map((p, i) => {
			const [before, after] = [middle[Math.max(0, i - 1)]!, middle[i + 1] ?? p];
			const [dx, dy] = [after.x - before.x, after.y - before.y];
			const by = (side * BAND) / (Math.hypot(dx, dy) || 1);
			return { x: p.x - dy * by, y: p.y + dx * by };
		});
	const around = [...edge(1), ...edge(-1).reverse()];
	return `M${around.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
}

/** The point at `t` of the curve, 0 its beginning, 1 its end. */
export const pointAt = at;

const LETTER_PLACES = [
	0.5, 0.46, 0.54, 0.42, 0.58, 0.38, 0.62, 0.34, 0.66, 0.3, 0.7, 0.26, 0.74, 0.22, 0.78, 0.18, 0.82
];
/**
 * A letter stands so clear of the ink of other wires, and of what else is there, units; with `ease`
 * more about it, it is taken for no other wire's.
 */
const CLEAR = { wires: 4, things: 3, ease: 9 } as const;
/**
 * Where on the curve its letter stands clear, with its ring of that radius: the first place with
 * ease, else the roomiest. `others`: points along the wires that were there before.
 */
export function letterPlace(
	curve: Curve,
	ring: number,
	obstacles: readonly Obstacle[],
	others: readonly (readonly Point[])[]
): number {
	const room = (t: number): number => {
		const p = at(curve, t);
		let least = 99;
		for (const o of obstacles)
			least = Math.min(least, Math.hypot(p.x - o.x, p.y - o.y) - o.r - ring - CLEAR.things);
		for (const other of others)
			for (const q of other)
				least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y) - ring - CLEAR.wires);
		return least;
	};
	const rooms = LETTER_PLACES.map(room);
	const easy = rooms.findIndex((r) => r > CLEAR.ease);
	return LETTER_PLACES[easy >= 0 ? easy : rooms.indexOf(Math.max(...rooms))]!;
}
