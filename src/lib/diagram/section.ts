/**
 * The jack cut along its axis, to scale along the depth. What touches, what is lifted and what stands
 * open is the engine's (`socketState`); the plug's profile and the beams only draw it. The figure is
 * an illustration of a generic part: depths are the engine's schematic millimetres.
 */
import {
	SEATED,
	type Bench,
	type NodeName,
	type Plug,
	type PlugKind,
	type SocketKind
} from '../engine';
import type { Figure, Lettering, Mark } from './figure';
import { NOTHING_LIT, netLetters, type Lit } from './lit';
import { drawBody, drawEvents, drawLug, drawNose, drawRuler, drawTravel } from './sectionBody';
import { drawChangeover, drawChangeoverLugs } from './sectionChangeover';
import { LEAVES, SECTION, UNIT } from './sectionFrame';
import { drawBreak, drawSpring, leafOf, type Leaf } from './sectionLeaf';
import { Sheet } from './sectionPen';
import { drawPaperEdge, drawPlug, paperLid, pointAtPlug } from './sectionPlug';
import { sectionEvents, socketState, type SocketState, type SpringState } from './sectionStates';

export { namesOnPlug } from './sectionPlug';
export { distinctStates, sectionEvents, withPlugAt, type TravelState } from './sectionStates';

const lugHeight = (state: SpringState, changeover: boolean): number =>
	changeover && state.name === 'T' ? 45 : LEAVES[state.name].lug;

/** What is drawn of springs and break contacts: what bends, the lugs at the rear, or both. */
type SpringParts = 'all' | 'leaves' | 'lugs';

function drawSprings(
	sheet: Sheet,
	bench: Bench,
	state: SocketState,
	letters: ReadonlyMap<NodeName, string>,
	parts: SpringParts = 'all'
): void {
	const id = state.socket.id;
	const leaves = new Map<string, Leaf>();
	for (const spring of state.springs) {
		const leaf = leafOf(spring, state.plug, lugHeight(spring, state.changeover !== null));
		leaves.set(spring.name, leaf);
		const { side, lug, breakLug } = leaf.plan;
		const node = `${id}.${spring.name}`;
		if (spring.breakContact) {
			const contact = `${id}.${spring.breakContact}`;
			const isLit = spring.closed && sheet.lit.breaks.has(contact);
			if (parts !== 'lugs') drawBreak(sheet, leaf, spring, contact, isLit);
			if (parts !== 'leaves') drawLug(sheet, contact, breakLug, side, letters.get(contact));
		}
		if (parts !== 'lugs') drawSpring(sheet, leaf, node);
		if (parts !== 'leaves') drawLug(sheet, node, lug, side, letters.get(node));
	}
	const tip = leaves.get('T');
	if (!state.changeover || !tip) return;
	if (parts !== 'lugs') drawChangeover(sheet, bench, id, tip);
	if (parts !== 'leaves') drawChangeoverLugs(sheet, id, letters);
}

/** One clause for each spring and break contact, as the engine has them. */
function springClause({ name, lifted, touches, breakContact, closed }: SpringState): string {
	const part = touches?.slice(touches.indexOf('.') + 1);
	const stands = part ? `touches the ${part}` : lifted ? 'is lifted and touches nothing' : 'rests';
	return breakContact
		? `${name} ${stands}, ${breakContact} ${closed ? 'closed' : 'open'}`
		: `${name} ${stands}`;
}

function titleOf({ socket, plug, springs, changeover }: SocketState): string {
	const what = plug ? `${plug.kind} plug ${plug.travel.toFixed(1)} mm in` : 'no plug';
	const clauses = springs.map(springClause);
	if (changeover) clauses.push(`C on ${changeover}`);
	return `Section of the jack of ${socket.id}, ${socket.kind}, ${what}: ${clauses.join('; ')}.`;
}

/** The plug that stands in the jack; a three-pin plug in a hybrid lifts no spring and is not drawn. */
const jackPlug = (state: SocketState) =>
	state.plug && state.plug.kind !== 'three-pin' ? state.plug : null;

function jackState(bench: Bench, socketId: string): SocketState {
	const state = socketState(bench, socketId);
	if (state.springs.length === 0) throw new Error(`Socket ${socketId} has no jack`);
	return state;
}
const paperOf = ({ marks, points, lettering }: Sheet) => ({
	width: SECTION.width,
	// Large words stand in three lines below the ruler, which need more room.
	height: SECTION.height + (lettering === 'large' ? 8 : 0),
	lettering,
	marks,
	points
});

/**
 * Section of the socket's jack in the bench as it stands. `lit`: what carries the copper accent;
 * `lettering`: large where the figure is shown small.
 * Throws if the bench has no such socket or the socket has no jack.
 */
export function sectionOf(
	bench: Bench,
	socketId: string,
	lit: Lit = NOTHING_LIT,
	lettering: Lettering = 'plain'
): Figure {
	const state = jackState(bench, socketId);
	const sheet = new Sheet(lit, lettering);
	drawBody(sheet, bench, state.socket);
	const plug = jackPlug(state);
	if (plug) drawPlug(sheet, plug);
	drawSprings(sheet, bench, state, netLetters(bench));
	drawRuler(sheet);
	drawEvents(sheet, state);
	if (plug) {
		drawNose(sheet, plug.travel);
		drawTravel(sheet, plug.travel);
	}
	return { ...paperOf(sheet), title: titleOf(state) };
}

/** What the section shows, in words, as `Figure.title`. */
export const sectionTitle = (bench: Bench, socketId: string): string =>
	titleOf(jackState(bench, socketId));

/** How far a riding plug at that travel is moved, in parts of the figure's width; home it is not. */
export const rideOf = (travel: number): number => ((travel - SEATED) * UNIT) / SECTION.width;

/**
 * The same section in four layers for a plug that is moved by hand, so that a step of the travel
 * draws anew only what bends: what stands still, the plug home (`rideOf` says how far it is from
 * there), what bends, and what points. Together they are what `sectionOf` draws.
 */
export function sectionUnder(
	bench: Bench,
	socketId: string,
	lit: Lit,
	lettering: Lettering
): Figure {
	const state = jackState(bench, socketId);
	const { id, kind, bush } = state.socket;
	const key = `under ${id} ${kind} ${bush} ${bench.panel.metal} ${lettering}`;
	const figure = keptFigure(key, lettering, (sheet) => {
		drawBody(sheet, bench, state.socket);
		drawRuler(sheet);
	});
	return { ...figure, marks: relit(figure.marks, lit), title: titleOf(state) };
}
/**
 * The plug of `sectionUnder`, over it; null for a plug that no jack spring meets. `names`: the names of
 * its parts that are whole where it has come to (`namesOnPlug`).
 */
export function ridingPlug(
	plug: Plug,
	lit: Lit,
	lettering: Lettering,
	names: string
): Figure | null {
	if (plug.kind === 'three-pin') return null;
	const named = names.split(' ');
	const figure = keptFigure(`riding ${plug.id} ${plug.kind} ${lettering}`, lettering, (sheet) => {
		drawPlug(sheet, { ...plug, travel: SEATED });
		drawNose(sheet, SEATED);
	});
	const marks = figure.marks.filter((mark) => mark.kind === 'stroke' || named.includes(mark.text));
	return { ...figure, marks: relit(marks, lit) };
}
/** What stands still is drawn once, unlit: `key` says all that it depends on. */
function keptFigure(key: string, lettering: Lettering, make: (sheet: Sheet) => void): Figure {
	const found = figures.get(key);
	if (found) return found;
	const sheet = new Sheet(NOTHING_LIT, lettering);
	make(sheet);
	const made = { ...paperOf(sheet), title: '' };
	figures.set(key, made);
	return made;
}
const figures = new Map<string, Figure>();
/** Marks that were drawn unlit, with the copper of `lit`. */
const relit = (marks: readonly Mark[], lit: Lit): readonly Mark[] =>
	marks.map((mark) => (mark.of && lit.nodes.has(mark.of) ? { ...mark, lit: true } : mark));

/** What follows every step of the plug: springs, break contacts, and the paper's edge over its end. */
export function sectionBend(
	bench: Bench,
	socketId: string,
	lit: Lit,
	lettering: Lettering
): Figure {
	const state = jackState(bench, socketId);
	const sheet = new Sheet(lit, lettering);
	const plug = jackPlug(state);
	if (plug) {
		sheet.stroke('halo', paperLid());
		drawPaperEdge(sheet, plug);
		pointAtPlug(sheet, plug);
	}
	drawSprings(sheet, bench, state, new Map(), 'leaves');
	return { ...paperOf(sheet), title: '' };
}
/**
 * What points: the lugs, and the ruler's signs. `reached`: the last event passed, mm (`eventReached`);
 * `told`: the travel in words, mm; it and the letters of nets may follow some frames behind.
 */
export function sectionOver(
	bench: Bench,
	socketId: string,
	lit: Lit,
	lettering: Lettering,
	reached: number,
	told: number,
	letters: ReadonlyMap<NodeName, string> = netLetters(bench)
): Figure {
	const state = jackState(bench, socketId);
	const sheet = new Sheet(lit, lettering);
	const plug = jackPlug(state);
	drawSprings(sheet, bench, state, letters, 'lugs');
	if (plug) {
		drawEvents(sheet, { ...state, plug: { ...plug, travel: reached } });
		drawTravel(sheet, told);
	}
	return { ...paperOf(sheet), title: '' };
}
/** The last event that a plug at that travel has passed, mm; nought before the first. */
export const eventReached = (plug: PlugKind, socket: SocketKind, travel: number): number =>
	sectionEvents(plug, socket).findLast((event) => event <= travel) ?? 0;
