/**
 * The pen of section and symbol: marks and the few shapes they are made of. Paths use M, L, Q, C and
 * Z only, so that a test can flatten them and measure what is really drawn; circles are four curves.
 */
import { pathRound, type Path } from 'd3-path';
import type { NodeName } from '../engine';
import type { Lettering, Mark, Stroke, StrokeRole, Word, WordRole } from './figure';
import type { Lit } from './lit';

export type Place = readonly [x: number, y: number];

/** Handle length that makes four cubic curves a circle. */
const ROUND = 0.5523;

export function draw(make: (pen: Path) => void): string {
	const pen = pathRound(2);
	make(pen);
	return pen.toString();
}

/** A closed circle. */
export const disc = (x: number, y: number, r: number): string =>
	draw((p) => {
		const k = r * ROUND;
		p.moveTo(x + r, y);
		p.bezierCurveTo(x + r, y + k, x + k, y + r, x, y + r);
		p.bezierCurveTo(x - k, y + r, x - r, y + k, x - r, y);
		p.bezierCurveTo(x - r, y - k, x - k, y - r, x, y - r);
		p.bezierCurveTo(x + k, y - r, x + r, y - k, x + r, y);
		p.closePath();
	});

export const straight = (...places: readonly Place[]): string =>
	draw((p) => places.forEach(([x, y], i) => (i === 0 ? p.moveTo(x, y) : p.lineTo(x, y))));

export const closed = (places: readonly Place[]): string => `${straight(...places)}Z`;

/** The point at `distance` from `from` towards `to`, at most half-way. */
function towards(from: Place, to: Place, distance: number): Place {
	const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
	const part = Math.min(distance / length, 0.5);
	return [from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part];
}

/** A run of straight lines with rounded corners. */
export const bent = (places: readonly Place[], radius: number): string =>
	draw((p) => {
		p.moveTo(...places[0]!);
		for (let i = 1; i < places.length - 1; i++) {
			const at = places[i]!;
			p.lineTo(...towards(at, places[i - 1]!, radius));
			p.quadraticCurveTo(...at, ...towards(at, places[i + 1]!, radius));
		}
		p.lineTo(...places.at(-1)!);
	});

/** A line that leaves level and arrives level. */
export const swung = ([x0, y0]: Place, [x1, y1]: Place): string =>
	draw((p) => {
		const half = (x0 + x1) / 2;
		p.moveTo(x0, y0);
		p.bezierCurveTo(half, y0, half, y1, x1, y1);
	});

/** A closed shape with rounded corners. */
export const rounded = (places: readonly Place[], radius: number): string =>
	draw((p) => {
		places.forEach((at, i) => {
			const before = places.at(i - 1)!;
			const after = places[(i + 1) % places.length]!;
			const start = towards(at, before, radius);
			if (i === 0) p.moveTo(...start);
			else p.lineTo(...start);
			p.quadraticCurveTo(...at, ...towards(at, after, radius));
		});
		p.closePath();
	});

/** A rectangle with rounded corners. */
export const box = (x: number, y: number, w: number, h: number, r: number): string =>
	rounded(
		[
			[x, y],
			[x + w, y],
			[x + w, y + h],
			[x, y + h]
		],
		r
	);

/** A path that is the same every time, made once: `key` says all that it depends on. */
export function kept(key: string, make: () => string): string {
	const found = paths.get(key);
	if (found !== undefined) return found;
	const made = make();
	paths.set(key, made);
	return made;
}
const paths = new Map<string, string>();

/** Marks of one figure, as they are put on paper; asks `lit` about every node. */
export class Sheet {
	readonly marks: Mark[] = [];
	readonly points = new Map<NodeName, { x: number; y: number }>();
	constructor(
		readonly lit: Lit,
		readonly lettering: Lettering = 'plain'
	) {}

	/** From the middle of a word's letters down to the line it stands on, units. */
	get drop(): number {
		return this.lettering === 'large' ? 7.8 : 5.5;
	}

	stroke(role: StrokeRole, d: string, of?: NodeName, lit = this.isLit(of)): void {
		const mark: Stroke = { kind: 'stroke', role, d, ...(of && { of }), ...(lit && { lit }) };
		this.marks.push(mark);
	}

	/** A sign that only explains the figure. */
	note(d: string, role: StrokeRole = 'pointer'): void {
		this.marks.push({ kind: 'stroke', role, note: true, d });
	}

	word(
		role: WordRole,
		[x, y]: Place,
		text: string,
		anchor: Word['anchor'] = 'middle',
		of?: NodeName
	): void {
		const lit = this.isLit(of);
		const at = { x: Math.round(x * 100) / 100, y: Math.round(y * 100) / 100 };
		this.marks.push({
			kind: 'word',
			role,
			...at,
			text,
			anchor,
			...(of && { of }),
			...(lit && { lit })
		});
	}

	point(node: NodeName, [x, y]: Place): void {
		this.points.set(node, { x, y });
	}

	isLit(node?: NodeName): boolean {
		return node !== undefined && this.lit.nodes.has(node);
	}
}
