/**
 * How a break contact is signed on the rear view: a blade from its spring, a triangle at the break
 * contact. Closed, the blade ends on the triangle's point; open, it stands off by a visible gap. A
 * leaf between two contacts is drawn once, to the one it stands on; before the other the gap is bare.
 */
import type { BreakPlace } from './socket';

export interface BreakSign {
	/** Null where the leaf stands on the other side. */
	readonly blade: {
		readonly x1: number;
		readonly y1: number;
		readonly x2: number;
		readonly y2: number;
	} | null;
	/** The triangle, its point first. */
	readonly seat: readonly [
		readonly [number, number],
		readonly [number, number],
		readonly [number, number]
	];
}

/** `turn` mirrors x as the panel turns. */
export function breakSign(place: BreakPlace, closed: boolean, turn: number): BreakSign {
	const [x0, x1] = [turn * place.from.x, turn * place.to.x];
	const point = [x1, place.to.y - 25] as const;
	// Open, it swings to the right, but for pin 1: there the letter of its net is in the way.
	const swing = place.spring === '1' ? -15 : 15;
	const end = closed ? point : ([x0 + (x1 - x0) * 0.4 + swing * turn, place.to.y - 33] as const);
	const isDrawn = closed || !place.between;
	return {
		blade: isDrawn ? { x1: x0, y1: place.from.y + 14, x2: end[0], y2: end[1] } : null,
		seat: [point, [x1 + 6, point[1] + 10], [x1 - 6, point[1] + 10]]
	};
}
