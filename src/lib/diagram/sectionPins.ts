/**
 * The three-pin half cut along its axis. A female contact is a leaf over a hole, a male one a pin. On
 * the female side, socket or plug, contact 1 stands before the others and so makes first; where there
 * is a `1N` the leaf of pin 1 rests on it. What has mated and whether `1N` is closed is read from the
 * engine.
 */
import { SEATED, SOCKETS, type Bench, type NodeName, type PinName } from '../engine';
import type { Figure } from './figure';
import { NOTHING_LIT, isClosed, netLetters, type Lit } from './lit';
import { heightAt, leafPath, stripPath, type Beam, type NoseShape } from './sectionBeam';
import { HALF_LEAF } from './sectionFrame';
import {
	HOLE_HALF,
	INSERT,
	MAKES,
	PINS,
	PIN_DEPTH,
	PIN_HALF,
	PIN_NAMES,
	PLATE,
	PLUG_SHELL,
	ROW,
	SHELL,
	pinPlace,
	pinX
} from './sectionPinFrame';
import { drawThreePinPlug, hangForPin, heldByPin, heldByShell } from './sectionPinPlug';
import { box, closed, disc, kept, rounded, straight, swung, type Place, Sheet } from './sectionPen';
import { isStuckOpen, sectionEvents, socketState, type SocketState } from './sectionStates';

const NOSE: NoseShape = { radius: 2.6, foot: 11, ahead: 7, rise: 13 };
const CLAMPED = 23.5;
const PRELOAD = 2;
/** A pin lifts its leaf by so much in the instant in which it is as deep, units: `1N` stands still. */
const FIRST_LIFT = 4;
const REST = hangForPin(NOSE.radius, FIRST_LIFT);
const SHELL_NOSE: NoseShape = { radius: 2, foot: 10, ahead: 6, rise: 8 };
const SHELL_AT_REST = heldByShell(0, SHELL_NOSE.radius)!;
const BEAD = 3;
const BEAD_BACK = 2.9;
/** Height of the ceiling over a leaf. */
const CHAMBER = 33;
/** Depth of the base that carries insert, shell and pins, mm. */
const BASE = 31;

interface Drawing {
	readonly sheet: Sheet;
	readonly bench: Bench;
	readonly state: SocketState;
	readonly letters: ReadonlyMap<NodeName, string>;
}

const isFemale = ({ socket }: SocketState): boolean => SOCKETS[socket.kind].threePin === 'female';
const threePinPlug = ({ plug }: SocketState) => (plug?.kind === 'three-pin' ? plug : null);
const nodeOf = ({ socket }: SocketState, contact: string): NodeName => `${socket.id}.${contact}`;

/** Lug with its name and the letter of its net, at the rear. */
function drawLug({ sheet, letters }: Drawing, node: NodeName, y: number): void {
	const [x, end] = [pinX(PIN_DEPTH.rear), pinX(PIN_DEPTH.lug)];
	const tab = kept(`pin lug ${y}`, () => box(x, y - 5.5, end - x, 11, 4));
	sheet.stroke('metal', tab, node);
	const eye = kept(`pin eye ${y}`, () => disc(end - 6, y, 2.2));
	sheet.stroke('hole', eye, node, false);
	sheet.word('mark', [end + 5, y + 5.5], node.slice(node.indexOf('.') + 1), 'start', node);
	const letter = letters.get(node);
	if (letter) sheet.word('letter', [PINS.width - 9, y + 5.5], letter, 'middle', node);
	sheet.point(node, [end - 6, y]);
}

/** Flange and tube of the socket's shell: `G`. */
function drawShell(drawing: Drawing): void {
	const { sheet, state } = drawing;
	const of = nodeOf(state, 'G');
	const { outer, inner } = SHELL;
	for (const [near, far, edge] of [
		[inner[0], outer[0], PLATE[0]],
		[inner[1], outer[1], PLATE[1]]
	] as const) {
		const outline: Place[] = [
			pinPlace(0, near),
			pinPlace(PIN_DEPTH.rear, near),
			pinPlace(PIN_DEPTH.rear, far),
			pinPlace(1.4, far),
			pinPlace(1.4, edge),
			pinPlace(0, edge)
		];
		sheet.stroke(
			'metal',
			kept(`shell ${edge}`, () => rounded(outline, 1.5)),
			of
		);
	}
	drawLug(drawing, of, 31);
}

/** The leaf by which the shell meets the plug's: it stands as deep as pin 1's. */
function drawShellLeaf({ sheet, state }: Drawing): void {
	const plug = threePinPlug(state);
	const axis = (PLUG_SHELL.outer[0] + PLUG_SHELL.inner[0]) / 2;
	const isHeld = plug !== null && state.mated.has('G');
	const depth = MAKES['1'];
	const held = isHeld ? heldByShell(plug.travel - depth, SHELL_NOSE.radius)! : SHELL_AT_REST;
	const beam: Beam = {
		axis,
		side: 1,
		clamp: pinX(22),
		nose: pinX(depth),
		clamped: axis - SHELL.inner[0] - HALF_LEAF,
		load: held - SHELL_AT_REST - 3,
		low: held,
		shape: SHELL_NOSE
	};
	const of = nodeOf(state, 'G');
	const way = straight(
		[pinX(25), SHELL.inner[0] + HALF_LEAF],
		[beam.clamp, SHELL.inner[0] + HALF_LEAF]
	);
	sheet.stroke('spring', leafPath(beam, way), of);
}

/** The insert of a female socket: holes from the front, each with its leaf's chamber. */
function femaleInsert(): Place[][] {
	const [top, bottom] = INSERT;
	const at = pinPlace;
	const outline = [
		at(PIN_DEPTH.insert, top),
		at(BASE, top),
		at(BASE, SHELL.inner[0]),
		at(PIN_DEPTH.rear, SHELL.inner[0]),
		at(PIN_DEPTH.rear, SHELL.inner[1]),
		at(BASE, SHELL.inner[1]),
		at(BASE, bottom),
		at(PIN_DEPTH.insert, bottom)
	];
	const holes = PIN_NAMES.map((name): Place[] => {
		const y = ROW[name];
		const front = MAKES[name] - 2.2;
		return [
			at(PIN_DEPTH.insert, y - HOLE_HALF),
			at(front, y - HOLE_HALF),
			at(front, y - CHAMBER),
			at(PIN_DEPTH.clamp, y - CHAMBER),
			at(PIN_DEPTH.clamp, y + HOLE_HALF),
			at(PIN_DEPTH.insert, y + HOLE_HALF)
		];
	});
	return [outline, ...holes];
}

function leafFor(state: SocketState, name: PinName): Beam {
	const plug = threePinPlug(state);
	const depth = MAKES[name];
	const isHeld = plug !== null && state.mated.has(name);
	const held = isHeld ? heldByPin(plug.travel - depth, NOSE.radius)! : REST.low;
	return {
		axis: ROW[name],
		side: 1,
		clamp: pinX(PIN_DEPTH.clamp),
		nose: pinX(depth) + (isHeld ? 0 : REST.deeper),
		clamped: CLAMPED,
		load: held - REST.low - PRELOAD,
		low: held,
		shape: NOSE
	};
}

/** `1N`: a strip under pin 1's leaf, with its bead. */
function drawPinBreak(drawing: Drawing, beam: Beam): void {
	const { sheet, bench, state } = drawing;
	const of = nodeOf(state, '1N');
	const isShut = isClosed(bench, state.socket.id, '1N');
	const isStuck = isStuckOpen(bench, state.socket.id, '1N');
	const x = pinX(MAKES['1'] + BEAD_BACK);
	const reach = HALF_LEAF + BEAD;
	const rest = { ...beam, nose: pinX(MAKES['1']) + REST.deeper, load: -PRELOAD };
	const good = heightAt(rest, x) - reach;
	const now = isShut ? heightAt(beam, x) - reach : good - (isStuck ? 5 : 0);
	const y = beam.axis - good + BEAD;
	const lug = ROW['1'] - 12;
	const way = swung(pinPlace(PIN_DEPTH.rear, lug), [beam.clamp, y]);
	sheet.stroke('blade', stripPath([beam.clamp, y], [x, beam.axis - now + BEAD], way), of);
	const isLit = isShut && sheet.lit.breaks.has(of);
	sheet.stroke(isShut ? 'seat-closed' : 'seat', disc(x, beam.axis - now, BEAD), of, isLit);
	drawLug(drawing, of, lug);
}

function drawFemale(drawing: Drawing): void {
	const { sheet, state } = drawing;
	const insert = () =>
		femaleInsert()
			.map((places) => rounded(places, 2))
			.join('');
	sheet.stroke('insulator', kept('insert', insert));
	const plug = threePinPlug(state);
	if (plug) drawThreePinPlug(sheet, plug, true);
	for (const name of PIN_NAMES) {
		const beam = leafFor(state, name);
		const hasBreak = name === '1' && '1N' in SOCKETS[state.socket.kind].breaks;
		if (hasBreak) drawPinBreak(drawing, beam);
		const y = ROW[name] - CLAMPED;
		const lug = hasBreak ? ROW[name] - 34 : y;
		const way = swung(pinPlace(PIN_DEPTH.rear, lug), [beam.clamp, y]);
		sheet.stroke('spring', leafPath(beam, way), nodeOf(state, name));
		drawLug(drawing, nodeOf(state, name), lug);
	}
}

function drawMale(drawing: Drawing): void {
	const { sheet, state } = drawing;
	const base = [
		pinPlace(BASE, SHELL.inner[0]),
		pinPlace(PIN_DEPTH.rear, SHELL.inner[0]),
		pinPlace(PIN_DEPTH.rear, SHELL.inner[1]),
		pinPlace(BASE, SHELL.inner[1])
	];
	sheet.stroke('insulator', closed(base));
	const plug = threePinPlug(state);
	if (plug) drawThreePinPlug(sheet, plug, false);
	for (const name of PIN_NAMES) {
		const of = nodeOf(state, name);
		// Pins are equally long (common practice): tube 1 of the plug stands before the others.
		const [tip, y] = [MAKES['1'], ROW[name]];
		// Square at its end: the plug's tube meets the pin where the engine says, not farther in.
		const long = pinX(PIN_DEPTH.rear) - pinX(tip);
		sheet.stroke('metal', box(pinX(tip), y - PIN_HALF, long, 2 * PIN_HALF, 0), of);
		sheet.stroke('fine', straight(pinPlace(tip + 1, y + 4.6), pinPlace(BASE, y + 4.6)), of);
		drawLug(drawing, of, y);
	}
}

const RULER = 286;
/** Radius of an event's sign, units. */
const DOT = 3.2;
const FIVES = [0, 5, 10, 15, 20, 25, 30] as const;

function drawRuler({ sheet, state }: Drawing): void {
	const ticks = () =>
		FIVES.map((mm) => straight([pinX(mm), RULER], [pinX(mm), RULER + 6])).join('') +
		straight([pinX(0), RULER], [pinX(SEATED), RULER]);
	sheet.stroke('dimension', kept('pin ruler', ticks));
	for (const mm of FIVES) sheet.word('dimension', [pinX(mm), RULER + 20], String(mm));
	const plug = threePinPlug(state);
	if (!plug) return;
	const events = sectionEvents('three-pin', state.socket.kind);
	for (const event of events) {
		const d = disc(pinX(event), RULER - 3 - DOT, DOT);
		sheet.stroke(plug.travel >= event ? 'pointer' : 'outline', d);
	}
	const x = pinX(plug.travel);
	sheet.stroke(
		'pointer',
		closed([
			[x, RULER - 11.4],
			[x - 4.5, RULER - 19.4],
			[x + 4.5, RULER - 19.4]
		])
	);
	sheet.word('dimension', [PINS.width - 6, RULER + 20], `${plug.travel.toFixed(1)} mm`, 'end');
	drawSigns(sheet, events.at(-1)! > plug.travel);
}

/** What the signs on the ruler mean: filled is behind the plug's end, open before it, if any is. */
function drawSigns(sheet: Sheet, isAhead: boolean): void {
	const y = RULER + 46;
	sheet.note(disc(10, y - 5.5, DOT));
	sheet.word('caption', [20, y], 'contacts meet', 'start');
	if (!isAhead) return;
	sheet.note(disc(150, y - 5.5, DOT), 'outline');
	sheet.word('caption', [160, y], 'still ahead', 'start');
}

function titleOf(bench: Bench, state: SocketState): string {
	const { socket, mated } = state;
	const plug = threePinPlug(state);
	const what = plug ? `three-pin plug ${plug.travel.toFixed(1)} mm in` : 'no three-pin plug';
	const made = mated.size > 0 ? `${[...mated.keys()].join(', ')} mated` : 'nothing mated';
	const hasBreak = '1N' in SOCKETS[socket.kind].breaks;
	const also = hasBreak ? `; 1N ${isClosed(bench, socket.id, '1N') ? 'closed' : 'open'}` : '';
	const half = `Section of the three-pin half of ${socket.id}, ${socket.kind}`;
	return `${half}, its pins drawn in one row, ${what}: ${made}${also}.`;
}

/**
 * Section of the socket's three-pin half in the bench as it stands. `lit`: what carries the copper
 * accent. Throws if the bench has no such socket or the socket has no three-pin half.
 */
export function pinSectionOf(bench: Bench, socketId: string, lit: Lit = NOTHING_LIT): Figure {
	const state = socketState(bench, socketId);
	if (!SOCKETS[state.socket.kind].threePin)
		throw new Error(`Socket ${socketId} has no three-pin half`);
	const sheet = new Sheet(lit);
	const drawing = { sheet, bench, state, letters: netLetters(bench) };
	drawShell(drawing);
	sheet.word('caption', [6, 13], 'front', 'start');
	sheet.word('caption', [66, 13], 'pins drawn in one row', 'start');
	if (isFemale(state)) drawFemale(drawing);
	else drawMale(drawing);
	drawShellLeaf(drawing);
	drawRuler(drawing);
	const { width, height } = PINS;
	return { width, height, title: titleOf(bench, state), marks: sheet.marks, points: sheet.points };
}
