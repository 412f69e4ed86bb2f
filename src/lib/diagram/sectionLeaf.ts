/**
 * The jack's springs and break contacts. At rest a break contact's bead holds its spring up against
 * the spring's preload; a plug lifts the spring clear of it. Lift comes from the plug's profile,
 * everything that is open or closed from the engine.
 */
import {
	BEAD,
	DEPTH,
	HALF_LEAF,
	LEAVES,
	SECTION,
	depthX,
	placeAt,
	type LeafPlan
} from './sectionFrame';
import { leafPath, heightAt, stripPath, type Beam, type NoseShape } from './sectionBeam';
import { bent, disc, kept, type Place, type Sheet } from './sectionPen';
import { hangFor, heldAt } from './sectionPlug';
import type { SpringName } from '../engine';
import type { SocketState, SpringState } from './sectionStates';

/** Height of the beam at its clamp; its free shape would hang lower by more than this preload. */
const CLAMPED = 62;
const PRELOAD = 5;
const NOSE: NoseShape = { radius: 3, foot: 20, ahead: 11, rise: 27 };
/**
 * How far a plug lifts a spring in the instant in which it is as deep as the spring, units: the gap at
 * the break contact, which stands still, must be seen from the first.
 */
const FIRST_LIFT = 6.4;
const REST = hangFor(NOSE.radius, FIRST_LIFT);
/** Height of a nose that is bent clear of every plug. */
const BENT_CLEAR = 45;
const BENT_NOSE: NoseShape = { radius: 3, foot: 23, ahead: 16, rise: 17 };
/** How far a break contact that never closes is bent away from its spring, units. */
const BENT_AWAY = 6;
/** From the middle of a bead to the middle line of the strip that carries it. */
const UNDER = BEAD;

/** A jack spring as it stands now. */
export interface Leaf extends Beam {
	readonly plan: LeafPlan;
}

/** How the spring stands for that plug and travel. `lug` is the height of its lug, units. */
export function leafOf(state: SpringState, plug: SocketState['plug'], lug: number): Leaf {
	const { name, lifted, bent } = state;
	const key = `${name} ${lug} ${bent} ${lifted && plug ? plug.travel : 'rests'}`;
	const made = leaves.get(key) ?? makeLeaf(state, plug, lug);
	leaves.set(key, made);
	return made;
}
/** A leaf for every tenth of a millimetre of the travel, at most. */
const leaves = new Map<string, Leaf>();

function makeLeaf(state: SpringState, plug: SocketState['plug'], lug: number): Leaf {
	const plan = { ...LEAVES[state.name], lug };
	const held = state.lifted && plug ? heldAt(plug.travel - plan.nose, NOSE.radius) : null;
	const lift = held === null ? 0 : held - REST.low;
	return {
		plan,
		axis: SECTION.axis,
		side: plan.side,
		clamp: depthX(plan.clamp),
		nose: depthX(plan.nose) + (held === null ? REST.deeper : 0),
		clamped: CLAMPED,
		load: lift - PRELOAD,
		low: state.bent ? BENT_CLEAR : REST.low + lift,
		shape: state.bent ? BENT_NOSE : NOSE
	};
}

/** The same spring with no plug under it. */
export const atRest = (leaf: Leaf): Leaf => ({
	...leaf,
	nose: depthX(leaf.plan.nose) + REST.deeper,
	load: -PRELOAD
});

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
export function drawSpring(sheet: Sheet, leaf: Leaf, of: string): void {
	const { plan } = leaf;
	const key = `way ${plan.nose} ${plan.lug}`;
	const way = kept(key, () => bent(stripWay(plan, 'spring', CLAMPED), 5));
	const d = kept(`leaf ${key} ${leaf.nose} ${leaf.low} ${leaf.load}`, () => leafPath(leaf, way));
	sheet.stroke('spring', d, of);
}

/** Height of the middle of the break contact's bead, and of a good one, units. */
function beadHeights(leaf: Leaf, state: SpringState): { now: number; good: number } {
	const x = depthX(leaf.plan.bead);
	const reach = HALF_LEAF + BEAD;
	const good = heightAt(atRest(leaf), x) - reach;
	if (state.closed) return { now: heightAt(leaf, x) - reach, good };
	return { now: good - (state.stuckOpen ? BENT_AWAY : 0), good };
}

/** Height at which the strip of that spring's break contact is clamped, units. */
export function breakHeight(name: SpringName): number {
	const plan = LEAVES[name];
	const resting = {
		name,
		lifted: false,
		touches: null,
		bent: false,
		closed: true,
		stuckOpen: false
	};
	const leaf = leafOf({ ...resting, breakContact: null }, null, plan.lug);
	return heightAt(leaf, depthX(plan.bead)) - HALF_LEAF - BEAD - UNDER;
}

/**
 * Draws the break contact: a fixed strip that ends in a bead under the spring. It stays where it is
 * and the spring rises from it, unless a fault bends it away or has it stuck to the spring.
 */
export function drawBreak(
	sheet: Sheet,
	leaf: Leaf,
	state: SpringState,
	of: string,
	isLit: boolean
): void {
	const { plan } = leaf;
	const { now, good } = beadHeights(leaf, state);
	const clamped = good - UNDER;
	const key = `break way ${plan.nose} ${plan.breakLug}`;
	const way = kept(key, () => bent(stripWay(plan, 'contact', clamped), 5));
	const from = placeAt(plan.clamp, clamped, plan.side);
	const to = placeAt(plan.bead, now - UNDER, plan.side);
	const strip = kept(`strip ${key} ${now}`, () => stripPath(from, to, way));
	sheet.stroke('blade', strip, of);
	const bead = kept(`bead ${key} ${now}`, () => disc(...placeAt(plan.bead, now, plan.side), BEAD));
	sheet.stroke(state.closed ? 'seat-closed' : 'seat', bead, of, isLit);
}
