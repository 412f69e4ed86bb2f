/**
 * Measuring what a figure really shows: paths become straight lines, and distances are taken between
 * them. Nothing here knows how the figure was computed, so a wrong drawing cannot hide behind the
 * code that made it.
 */
import type { Figure, Lettering, Stroke, Word } from '../../src/lib/diagram/figure';
import { WORD_SIZES } from '../../src/lib/diagram/svg';

export type Point = readonly [x: number, y: number];
export type Line = readonly Point[];

const STEPS = 24;

function curve(points: readonly Point[]): Point[] {
	return Array.from({ length: STEPS }, (_, i) => {
		const t = (i + 1) / STEPS;
		let rest = points;
		while (rest.length > 1)
			rest = rest
				.slice(1)
				.map(([x, y], j): Point => [
					rest[j]![0] + (x - rest[j]![0]) * t,
					rest[j]![1] + (y - rest[j]![1]) * t
				]);
		return rest[0]!;
	});
}

/** The same path stands in hundreds of figures of a plug that travels; so many are remembered. */
const MOST_KEPT = 2000;
const kept = new Map<string, readonly Line[]>();

/** The lines of a path of M, L, Q, C and Z; a closed one ends where it began. */
export function linesOf(d: string): readonly Line[] {
	const known = kept.get(d);
	if (known) return known;
	if (kept.size >= MOST_KEPT) kept.clear();
	const lines = readLines(d);
	kept.set(d, lines);
	return lines;
}

function readLines(d: string): Line[] {
	const lines: Point[][] = [];
	for (const [, command, text] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
		const numbers = (text!.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number);
		const places = numbers.flatMap((x, i): Point[] => (i % 2 === 0 ? [[x, numbers[i + 1]!]] : []));
		const line = lines.at(-1);
		if (command === 'M') lines.push([places[0]!]);
		else if (command === 'L') line!.push(places[0]!);
		else if (command === 'Q' || command === 'C') line!.push(...curve([line!.at(-1)!, ...places]));
		else if (command === 'Z') line!.push(line![0]!);
		else throw new Error(`Path command ${command} is not one that figures use`);
	}
	return lines;
}

function toSegment([px, py]: Point, [ax, ay]: Point, [bx, by]: Point): number {
	const [dx, dy] = [bx - ax, by - ay];
	const square = dx * dx + dy * dy;
	const t = square === 0 ? 0 : ((px - ax) * dx + (py - ay) * dy) / square;
	const at = Math.max(0, Math.min(1, t));
	return Math.hypot(px - ax - at * dx, py - ay - at * dy);
}

const turn = (a: Point, b: Point, c: Point): number =>
	(b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
	turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

interface Segment {
	readonly a: Point;
	readonly b: Point;
	readonly middle: Point;
	readonly half: number;
}
const segments = new WeakMap<Line, readonly Segment[]>();
function segmentsOf(line: Line): readonly Segment[] {
	const known = segments.get(line);
	if (known) return known;
	const made = line.slice(1).map((b, i) => {
		const a = line[i]!;
		const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
		return { a, b, middle, half: Math.hypot(b[0] - a[0], b[1] - a[1]) / 2 };
	});
	segments.set(line, made);
	return made;
}

/** Shortest distance between two sets of lines, in units; 0 where they cross. */
export function distance(one: readonly Line[], other: readonly Line[]): number {
	let least = Infinity;
	const others = other.flatMap(segmentsOf);
	for (const p of one.flatMap(segmentsOf))
		for (const q of others) {
			const apart = Math.hypot(p.middle[0] - q.middle[0], p.middle[1] - q.middle[1]);
			if (apart - p.half - q.half >= least) continue;
			if (cross(p.a, p.b, q.a, q.b)) return 0;
			least = Math.min(
				least,
				toSegment(p.a, q.a, q.b),
				toSegment(p.b, q.a, q.b),
				toSegment(q.a, p.a, p.b),
				toSegment(q.b, p.a, p.b)
			);
		}
	return least;
}

/** Whether a point lies in a closed outline: an odd number of its sides lies to the right. */
export function isInside([x, y]: Point, outline: Line): boolean {
	let inside = false;
	for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
		const [[xi, yi], [xj, yj]] = [outline[i]!, outline[j]!];
		if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
	}
	return inside;
}

/** Lines of those strokes of a figure. */
export const strokesOf = (figure: Figure, match: (stroke: Stroke) => boolean): Line[] =>
	figure.marks
		.filter((m) => m.kind === 'stroke' && match(m))
		.flatMap((m) => linesOf((m as Stroke).d));

export interface Box {
	readonly left: number;
	readonly right: number;
	readonly top: number;
	readonly bottom: number;
}

export function boxOfLines(lines: readonly Line[]): Box {
	const xs = lines.flat().map(([x]) => x);
	const ys = lines.flat().map(([, y]) => y);
	return {
		left: Math.min(...xs),
		right: Math.max(...xs),
		top: Math.min(...ys),
		bottom: Math.max(...ys)
	};
}

/** Width of a letter as a share of its size: an estimate on the wide side for the fonts named. */
const LETTER = 0.56;

/** Where a word stands on paper, estimated. */
export function boxOfWord(word: Word, lettering: Lettering = 'plain'): Box {
	const { x, y, text, anchor, role } = word;
	const size = WORD_SIZES[lettering][role];
	const wide = text.length * LETTER * size;
	const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
	return { left, right: left + wide, top: y - 0.74 * size, bottom: y + 0.22 * size };
}

export const overlap = (a: Box, b: Box): boolean =>
	a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const wordsOf = (figure: Figure): Word[] =>
	figure.marks.filter((m): m is Word => m.kind === 'word');
