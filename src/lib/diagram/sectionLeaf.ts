/**
 * Leaf springs as beams: clamped at the rear, bent by a load at the nose. A cantilever's deflection
 * is a cubic in its length (textbook mechanics, from memory), so one Bézier curve draws it exactly.
 * At rest the break contact holds the beam up against its preload; a plug lifts it clear.
 */
import type { Path } from 'd3-path';
import {
	BEAD,
	DEPTH,
	HALF_LEAF,
	LEAVES,
	SECTION,
	UNIT,
	WEIGHTS,
	depthX,
	placeAt,
	type LeafPlan
} from './sectionFrame';
import { heldAt } from './sectionPlug';
import { bent, disc, draw, type Place, type Sheet } from './sectionPen';
import type { SocketState, SpringState } from './sectionStates';

/** Height of the beam at its clamp; its free shape would hang lower by more than this preload. */
const CLAMPED = 62;
const PRELOAD = 5;
/** Height of the nose's ink at rest, and of a nose bent clear of every plug. */
const AT_REST = 10.6;
const BENT_CLEAR = 45;
/** Radius of the nose, of its ink's outer edge, units. */
const NOSE = 3;
/** How far a break contact that never closes is bent away from its spring, units. */
const BENT_AWAY = 6;

/** Deflection along a cantilever with its load at the end, 0 at the clamp, 1 at the load. */
const cantilever = (part: number): number => (3 * part ** 2 - part ** 3) / 2;
const slope = (part: number): number => (6 * part - 3 * part ** 2) / 2;

/** A beam as it stands now: heights in units over the axis, on its side. */
export interface Beam {
	readonly plan: LeafPlan;
	/** Deflection at the nose, outwards, units. */
	readonly load: number;
	/** Height of the nose's ink. */
	readonly nose: number;
	readonly isBent: boolean;
}

/** How the spring stands for that plug and travel. */
export function beamOf(state: SpringState, plug: SocketState['plug']): Beam {
	const plan = LEAVES[state.name];
	const held = state.lifted && plug ? heldAt(plug.travel - plan.nose, NOSE) : null;
	const lift = held === null ? 0 : held - AT_REST;
	const nose = state.bent ? BENT_CLEAR : AT_REST + lift;
	return { plan, load: lift - PRELOAD, nose, isBent: state.bent };
}

/** Height of the beam's middle line at that depth, between nose and clamp. */
export function heightAt({ plan, load }: Beam, depth: number): number {
	return CLAMPED + load * cantilever((plan.clamp - depth) / (plan.clamp - plan.nose));
}

/** Where a line from `from` touches the circle, on the side that `turn` names. */
function tangent(from: Place, middle: Place, r: number, turn: 1 | -1): Place {
	const [dx, dy] = [middle[0] - from[0], middle[1] - from[1]];
	const far = Math.hypot(dx, dy);
	const angle = Math.atan2(dy, dx) + turn * Math.asin(r / far);
	const length = Math.sqrt(far * far - r * r);
	return [from[0] + length * Math.cos(angle), from[1] + length * Math.sin(angle)];
}

/** The beam as one cubic from its clamp to the foot of its nose. */
function beamCurve(pen: Path, beam: Beam, foot: number): void {
	const { plan, load } = beam;
	const length = plan.clamp - plan.nose;
	const end = (plan.clamp - foot) / length;
	const [x0, x1] = [depthX(plan.clamp), depthX(foot)];
	const third = (load * slope(end) * end) / 3;
	const y = (height: number): number => SECTION.axis - plan.side * height;
	const h1 = heightAt(beam, foot);
	pen.bezierCurveTo(
		x0 + (x1 - x0) / 3,
		y(CLAMPED),
		x0 + (2 * (x1 - x0)) / 3,
		y(h1 - third),
		x1,
		y(h1)
	);
}

/** The nose: a V with a round point, its free end curled outwards. Continues at the beam's foot. */
function noseCurve(pen: Path, beam: Beam, foot: number): void {
	const { plan, load, nose } = beam;
	const { side } = plan;
	const y = (height: number): number => SECTION.axis - side * height;
	const r = NOSE - HALF_LEAF;
	const middle: Place = [depthX(plan.nose), y(nose + NOSE)];
	const end = (plan.clamp - foot) / (plan.clamp - plan.nose);
	const rise = (load * slope(end)) / ((plan.clamp - plan.nose) * UNIT);
	const knee: Place = [depthX(foot) - 4, y(heightAt(beam, foot) + 4 * rise)];
	const right = tangent(knee, middle, r, side === 1 ? -1 : 1);
	const tip: Place = beam.isBent
		? [middle[0] - 16, y(nose + 17)]
		: [middle[0] - 12 + rise * 6, y(nose + 27)];
	const left = tangent(tip, middle, r, side === 1 ? 1 : -1);
	const along = (a: Place, b: Place, part: number): Place => [
		a[0] + (b[0] - a[0]) * part,
		a[1] + (b[1] - a[1]) * part
	];
	pen.quadraticCurveTo(...knee, ...along(knee, right, 0.16));
	pen.lineTo(...right);
	arc(pen, middle, r, right, left);
	pen.lineTo(...along(left, tip, 0.75));
	pen.quadraticCurveTo(...along(left, tip, 0.95), tip[0] - 3.5, tip[1] - side * 1.5);
}

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

/** The way of a strip from its lug to the clamp of its leaf. */
function stripWay(plan: LeafPlan, which: 'spring' | 'contact', clamped: number): Place[] {
	const lug = which === 'spring' ? plan.lug : plan.breakLug;
	const at = (depth: number, height: number): Place => placeAt(depth, height, plan.side);
	const rear = [at(DEPTH.rear, lug), at(DEPTH.rear - 0.4, lug)];
	if (!plan.turn || !plan.wall)
		return [...rear, at(DEPTH.block + 0.5, clamped), at(plan.clamp, clamped)];
	return [
		...rear,
		at(DEPTH.block + 0.4, plan.wall[which]),
		at(plan.turn[which], plan.wall[which]),
		at(plan.turn[which], clamped),
		at(plan.clamp, clamped)
	];
}

/** Draws the spring from its lug to its free end. */
export function drawSpring(sheet: Sheet, beam: Beam, of: string): void {
	const foot = beam.plan.nose + (beam.isBent ? 2 : 1.75);
	const way = bent(stripWay(beam.plan, 'spring', CLAMPED), 5);
	const leaf = draw((pen) => {
		pen.moveTo(...placeAt(beam.plan.clamp, CLAMPED, beam.plan.side));
		beamCurve(pen, beam, foot);
		noseCurve(pen, beam, foot);
	});
	sheet.stroke('spring', way + leaf.replace(/^M[^CLQ]*/, ''), of);
}

/** Height of the middle of the break contact's bead, and of a good one, units. */
function beadHeights(beam: Beam, state: SpringState): { now: number; good: number } {
	const under = HALF_LEAF + BEAD;
	const good = heightAt({ ...beam, load: -PRELOAD }, beam.plan.bead) - under;
	if (state.closed) return { now: heightAt(beam, beam.plan.bead) - under, good };
	return { now: state.stuckOpen ? good - BENT_AWAY : good, good };
}

/**
 * Draws the break contact: a fixed strip that ends in a bead under the spring. Closed, the bead
 * touches the spring, and follows it if it is stuck to it; open, there is a gap.
 */
export function drawBreak(
	sheet: Sheet,
	beam: Beam,
	state: SpringState,
	of: string,
	isLit: boolean
): void {
	const { plan } = beam;
	const { now, good } = beadHeights(beam, state);
	const under = BEAD + WEIGHTS.line / 2 - 0.8;
	const clamped = good - under;
	const way = bent(stripWay(plan, 'contact', clamped), 5);
	const strip = draw((pen) => {
		const [x0, y0] = placeAt(plan.clamp, clamped, plan.side);
		const [x1, y1] = placeAt(plan.bead, now - under, plan.side);
		pen.moveTo(x0, y0);
		pen.bezierCurveTo((2 * x0 + x1) / 3, y0, x1 + (x0 - x1) / 3, y1, x1, y1);
		pen.lineTo(x1 - 5, y1 + (y1 - y0) * 0.05);
	});
	sheet.stroke('blade', way + strip.replace(/^M[^CLQ]*/, ''), of);
	const [x, y] = placeAt(plan.bead, now, plan.side);
	sheet.stroke(state.closed ? 'seat-closed' : 'seat', disc(x, y, BEAD), of, isLit);
}
