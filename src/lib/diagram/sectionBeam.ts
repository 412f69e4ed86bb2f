/**
 * A leaf spring as a beam: clamped at the rear, bent by a load at its nose. A cantilever's deflection
 * is a cubic in its length (textbook mechanics, from memory), so one Bézier curve draws it exactly.
 * All lengths are units of the figure; heights are measured outwards from the plug's axis.
 */
import type { Path } from 'd3-path';
import { draw, type Place } from './sectionPen';
import { HALF_LEAF } from './sectionFrame';

export interface Beam {
	/** y of the plug's axis, and which way is outwards: 1 is up the paper. */
	readonly axis: number;
	readonly side: 1 | -1;
	/** x of the clamp and of the nose's lowest point. */
	readonly clamp: number;
	readonly nose: number;
	/** Height of the beam at its clamp. */
	readonly clamped: number;
	/** Deflection of the beam at the nose, outwards; negative under its own preload. */
	readonly load: number;
	/** Height of the lowest ink of the nose. */
	readonly low: number;
	readonly shape: NoseShape;
}
export interface NoseShape {
	/** Radius of the nose, to the outer edge of its ink. */
	readonly radius: number;
	/** From the nose back to where the beam begins. */
	readonly foot: number;
	/** From the nose to the free end: forwards, and outwards. */
	readonly ahead: number;
	readonly rise: number;
}

const cantilever = (part: number): number => (3 * part ** 2 - part ** 3) / 2;
const slope = (part: number): number => (6 * part - 3 * part ** 2) / 2;

/** Share of the beam's length between the clamp and x. */
const share = (beam: Beam, x: number): number => (beam.clamp - x) / (beam.clamp - beam.nose);

/** Height of the beam's middle line at x, between nose and clamp. */
export const heightAt = (beam: Beam, x: number): number =>
	beam.clamped + beam.load * cantilever(share(beam, x));

/** Where a line from `from` touches the circle, on the side that `turn` names. */
function tangent(from: Place, middle: Place, r: number, turn: 1 | -1): Place {
	const [dx, dy] = [middle[0] - from[0], middle[1] - from[1]];
	const far = Math.hypot(dx, dy);
	const angle = Math.atan2(dy, dx) + turn * Math.asin(Math.min(1, r / far));
	const length = Math.sqrt(Math.max(0, far * far - r * r));
	return [from[0] + length * Math.cos(angle), from[1] + length * Math.sin(angle)];
}

const between = (a: Place, b: Place, part: number): Place => [
	a[0] + (b[0] - a[0]) * part,
	a[1] + (b[1] - a[1]) * part
];

/** A short arc as straight steps, too small to be seen as such. */
function arc(pen: Path, middle: Place, r: number, from: Place, to: Place): void {
	const start = Math.atan2(from[1] - middle[1], from[0] - middle[0]);
	let sweep = Math.atan2(to[1] - middle[1], to[0] - middle[0]) - start;
	if (sweep > Math.PI) sweep -= 2 * Math.PI;
	if (sweep < -Math.PI) sweep += 2 * Math.PI;
	for (let i = 1; i <= 8; i++) {
		const a = start + (sweep * i) / 8;
		pen.lineTo(middle[0] + r * Math.cos(a), middle[1] + r * Math.sin(a));
	}
}

/** From the clamp to the foot of the nose. */
function beamCurve(pen: Path, beam: Beam, foot: number): void {
	const y = (height: number): number => beam.axis - beam.side * height;
	const end = share(beam, foot);
	const run = (foot - beam.clamp) / 3;
	const height = heightAt(beam, foot);
	pen.bezierCurveTo(
		beam.clamp + run,
		y(beam.clamped),
		foot - run,
		y(height - (beam.load * slope(end) * end) / 3),
		foot,
		y(height)
	);
}

/** The nose: a V with a round point, its free end curled outwards. Continues at the foot. */
function noseCurve(pen: Path, beam: Beam, foot: number): void {
	const { side, shape, load, low } = beam;
	const y = (height: number): number => beam.axis - side * height;
	const r = shape.radius - HALF_LEAF;
	const middle: Place = [beam.nose, y(low + shape.radius)];
	const lean = (load * slope(share(beam, foot))) / (beam.clamp - beam.nose);
	const knee: Place = [foot - 4, y(heightAt(beam, foot) + 4 * lean)];
	const tip: Place = [beam.nose - shape.ahead + lean * 6, y(low + shape.rise)];
	const right = tangent(knee, middle, r, side === 1 ? -1 : 1);
	const left = tangent(tip, middle, r, side);
	pen.quadraticCurveTo(...knee, ...between(knee, right, 0.16));
	pen.lineTo(...right);
	arc(pen, middle, r, right, left);
	pen.lineTo(...between(left, tip, 0.75));
	pen.quadraticCurveTo(
		...between(left, tip, 0.95),
		tip[0] - shape.ahead * 0.27,
		tip[1] - side * 1.8
	);
}

/** The leaf from its clamp to its free end; `way` is a path that leads to the clamp. */
export function leafPath(beam: Beam, way: string): string {
	const leaf = draw((pen) => {
		const foot = beam.nose + beam.shape.foot;
		pen.moveTo(beam.clamp, beam.axis - beam.side * beam.clamped);
		beamCurve(pen, beam, foot);
		noseCurve(pen, beam, foot);
	});
	return way + leaf.replace(/^M[^CLQ]*/, '');
}

/** A fixed strip from `from` to the bead it carries at `to`: straight, or bent as far as it must. */
export function stripPath(from: Place, to: Place, way: string): string {
	const [x0, y0] = from;
	const [x1, y1] = to;
	const strip = draw((pen) => {
		pen.moveTo(x0, y0);
		pen.bezierCurveTo((2 * x0 + x1) / 3, y0, (x0 + 2 * x1) / 3, y1, x1, y1);
		pen.lineTo(x1 - 5, y1);
	});
	return way + strip.replace(/^M[^CLQ]*/, '');
}
