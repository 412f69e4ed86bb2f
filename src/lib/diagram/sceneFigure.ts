/** A scene as a figure: the rear or front view as marks, for still pictures, print and export. */
import {
	PANEL,
	type Bench,
	type DeviceKind,
	type NodeName,
	type Plug,
	type PlugKind
} from '../engine';
import { breakSign } from './breakSign';
import type { Figure, Lettering, Mark, StrokeRole, WordRole } from './figure';
import { NOTHING_LIT, isClosed, netLetters, type Lit } from './lit';
import {
	LUG_SHAPES,
	landingsOf,
	roundPath,
	solderedCount,
	solderedEnds,
	type NodeForm
} from './lugs';
import type { Places } from './places';
import { plugParts } from './plugShape';
import { shortId, shortTo } from './plugSign';
import {
	FLAG,
	STUD_LETTER,
	nameOfSocket,
	nameWithPlug,
	TERMINAL_LETTER,
	panelAlone,
	plugPicture,
	WIRE_LETTERS,
	sceneOf,
	type Placed,
	type PlacedSocket,
	type PlacedWire,
	type Scene
} from './scene';
import { shapesOf, type Point, type Role, type Shape } from './socket';

/** Mirrors and moves a path made of M, L, H, V, A, Q, C and Z with absolute places. */
export function placedPath(d: string, { x, y }: Point, mirror = 1): string {
	const out: string[] = [];
	const round = (n: number) => String(Math.round(n * 100) / 100 + 0);
	for (const [, letter, rest] of d.matchAll(/([MLHVAQCZ])([^MLHVAQCZ]*)/g)) {
		const n = (rest!.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number);
		const px = (v: number) => round(x + mirror * v);
		const py = (v: number) => round(y + v);
		if (letter === 'H') out.push(`H${px(n[0]!)}`);
		else if (letter === 'V') out.push(`V${py(n[0]!)}`);
		else if (letter === 'A') {
			const sweep = mirror < 0 ? 1 - n[4]! : n[4]!;
			out.push(`A${n[0]} ${n[1]} ${n[2]} ${n[3]} ${sweep} ${px(n[5]!)} ${py(n[6]!)}`);
		} else out.push(letter + n.map((v, i) => (i % 2 === 0 ? px(v) : py(v))).join(' '));
	}
	return out.join('');
}

const ROLES: Readonly<Record<Role, StrokeRole>> = {
	body: 'body',
	insulator: 'insulator',
	outline: 'outline',
	fine: 'fine',
	hole: 'hole',
	metal: 'metal',
	hidden: 'hidden'
};

class Pen {
	readonly marks: Mark[] = [];
	constructor(
		readonly lettering: Lettering,
		readonly isFar: boolean
	) {}
	/** A length that is greater under large words. */
	by(plain: number, large: number): number {
		return this.lettering === 'large' ? large : plain;
	}
	stroke(role: StrokeRole, d: string, of?: NodeName, lit = false) {
		this.marks.push({ kind: 'stroke', role, d, ...(of && { of }), ...(lit && { lit }) });
	}
	wire(w: PlacedWire, lit: boolean) {
		const role = w.core ? 'core' : 'wire';
		const { ink, d, name: of } = w;
		this.marks.push({ kind: 'stroke', role, ink, d, of, ...(lit && { lit }) });
	}
	word(
		role: WordRole,
		text: string,
		at: Point,
		anchor: 'start' | 'middle' | 'end' = 'middle',
		of?: NodeName,
		lit = false
	) {
		this.marks.push({
			kind: 'word',
			role,
			text,
			...at,
			anchor,
			...(of && { of }),
			...(lit && { lit })
		});
	}
}

const rectangle = (x: number, y: number, w: number, h: number): string =>
	`M${x} ${y} H${x + w} V${y + h} H${x} Z`;

/** So many letters of a name have room beside the next one, from far. */
const FAR_NAME = 14;
/** Too fine to be drawn from far. */
const FINE: ReadonlySet<Role> = new Set(['fine', 'hidden']);

function drawShape(pen: Pen, s: PlacedSocket, { role, d, contact }: Shape, turn: number, lit: Lit) {
	const of = contact === undefined ? undefined : `${s.socket.id}.${contact}`;
	const on = of !== undefined && lit.nodes.has(of);
	if (pen.isFar && FINE.has(role)) return;
	const path = placedPath(d, s, turn);
	// A plate in copper takes it on its edge: washed over, it would drown what stands on it.
	pen.stroke(ROLES[role], path, of, on && role !== 'body');
	if (on && role === 'body') pen.stroke('outline', path, of, true);
}

/** The leaf is a piece of its spring, the seat of its break contact: each is lit as its own lug. */
function drawBreaks(pen: Pen, s: PlacedSocket, bench: Bench, turn: number, lit: Lit) {
	const { id } = s.socket;
	for (const b of s.drawing.breaks) {
		const closed = isClosed(bench, id, b.contact);
		const { blade, seat } = breakSign(b, closed, turn);
		const [of, spring] = [`${id}.${b.contact}`, `${id}.${b.spring}`];
		if (blade) {
			const d = `M${blade.x1} ${blade.y1} L${blade.x2} ${blade.y2}`;
			pen.stroke('blade', placedPath(d, s), spring, lit.nodes.has(spring));
		}
		const d = `M${seat.map((p) => p.join(' ')).join(' L')} Z`;
		pen.stroke(closed ? 'seat-closed' : 'seat', placedPath(d, s), of, lit.nodes.has(of));
	}
}

/** A jack plug in the opening, or the shell of a three-pin plug round its pins; dashed from behind. */
function drawPlug(pen: Pen, s: PlacedSocket, plug: Plug, turn: number, lit: Lit) {
	const { bore, round } = s.drawing;
	const role = turn >= 0 ? 'hidden' : 'outline';
	const of = `${plug.id}.shell`;
	if (pen.isFar) pen.stroke('seat-closed', placedPath(roundPath(24), at(bore)));
	else if (plug.kind === 'three-pin' && round)
		pen.stroke(role, placedPath(roundPath(round.r), at(round)), of, lit.nodes.has(of));
	else {
		pen.stroke(role, placedPath(roundPath(27), at(bore)));
		const { x, y } = at(bore);
		pen.word('dimension', plug.travel.toFixed(1), { x, y: y + pen.by(5.5, 8) });
	}
	function at(p: Point): Point {
		return { x: s.x + turn * p.x, y: s.y + p.y };
	}
}

function drawSocket(pen: Pen, s: PlacedSocket, bench: Bench, turn: number, lit: Lit) {
	const shapes = shapesOf(turn >= 0 ? s.drawing.rear : s.drawing.front, s.socket.bush);
	const drawAll = (over: boolean) => {
		for (const shape of shapes)
			if (Boolean(shape.over) === over && !shape.face) drawShape(pen, s, shape, turn, lit);
	};
	drawAll(false);
	drawBreaks(pen, s, bench, turn, lit);
	if (s.plug && (turn >= 0 || !isInFace(s, s.plug))) drawPlug(pen, s, s.plug, turn, lit);
	drawAll(true);
	const name = nameOfSocket(s.socket);
	const full = s.plug ? nameWithPlug(s.socket, s.plug.kind, s.plug.travel) : name;
	pen.word('name', pen.isFar ? shortTo(name, FAR_NAME) : full, {
		x: s.x,
		y: s.y + pen.by(241, 244)
	});
}

/** Whether the plug stands in the jack's face. */
const isInFace = ({ drawing }: PlacedSocket, plug: Plug): boolean =>
	plug.kind !== 'three-pin' || !drawing.round;

/** From the front: the face of the jack and what stands in it, over the wires that lie behind. */
function drawFace(pen: Pen, s: PlacedSocket, lit: Lit) {
	for (const shape of shapesOf(s.drawing.front, s.socket.bush))
		if (shape.face) drawShape(pen, s, shape, -1, lit);
	if (s.plug && isInFace(s, s.plug)) drawPlug(pen, s, s.plug, -1, lit);
}

function drawNode(
	pen: Pen,
	node: NodeName,
	form: NodeForm,
	at: Point,
	lit: boolean,
	behind: boolean
) {
	const shape = LUG_SHAPES[form];
	pen.stroke(behind ? 'hidden' : 'metal', placedPath(shape.metal, at), node, lit);
	if (shape.mark && !behind)
		pen.stroke(shape.isHole ? 'hole' : 'fine', placedPath(shape.mark, at), node);
}

/** From the front a wire lies behind: it is drawn lighter and covers nothing. */
function drawWire(pen: Pen, w: PlacedWire, lit: boolean, rear: boolean) {
	if (rear) pen.stroke('halo', w.band, w.name, lit);
	pen.wire(rear ? w : { ...w, core: true }, lit);
}
/** The letter of what a wire carries, in a ring on it: over all wires, so that none runs through it. */
function drawFlag(pen: Pen, w: PlacedWire, lit: boolean) {
	const { x, y } = w.mark;
	pen.stroke('flag', placedPath(roundPath(pen.by(FLAG.plain, FLAG.large)), w.mark), w.name, lit);
	pen.word('wire', WIRE_LETTERS[w.ink], { x, y: y + pen.by(4.4, 7.4) }, 'middle', w.name, lit);
}

function drawLugs(pen: Pen, scene: Scene, lit: Lit, letters: ReadonlyMap<NodeName, string>) {
	const rear = scene.turn >= 0;
	const landings = landingsOf(scene.wires);
	for (const s of scene.sockets)
		for (const lug of s.drawing.lugs) {
			const node = `${s.socket.id}.${lug.contact}`;
			const at = scene.points.get(node)!;
			const on = lit.nodes.has(node);
			drawNode(pen, node, lug.form, at, on, !rear);
			const ends = rear ? solderedEnds(lug.form, landings.get(node) ?? 0) : '';
			if (ends) pen.stroke('seat-closed', placedPath(ends, at), node, on);
			const many = rear ? solderedCount(lug.form, landings.get(node) ?? 0) : '';
			if (many) pen.word('mark', many, { x: at.x, y: at.y + pen.by(6, 8) }, 'middle', node);
			const mark = { x: at.x + scene.turn * lug.mark.x, y: at.y + lug.mark.y + pen.by(6, 8) };
			pen.word('mark', lug.contact, mark, 'middle', node);
			if (letters.has(node))
				pen.word(
					'letter',
					letters.get(node)!,
					{ x: at.x + scene.turn * lug.letter.x, y: at.y + lug.letter.y },
					'middle',
					node,
					on
				);
		}
}

/** What a kind is called in words; a figure without names says none. */
export type NameOf = (kind: DeviceKind | PlugKind) => string;
export interface SceneOptions {
	readonly nameOf?: NameOf;
	/** Where boxes were seen before. */
	readonly places?: Places;
	/** Large where the figure is shown small. */
	readonly lettering?: Lettering;
	/** For a figure that is shown so small that only names are written: nothing fine, and a sign for a plug. */
	readonly far?: boolean;
	/** The panel by itself: no boxes beside it, no wires to them. */
	readonly alone?: boolean;
}

/** The name, the kind and the picture of a device or plug. */
function drawBoxHead(pen: Pen, b: Placed, nameOf: NameOf | undefined) {
	pen.stroke('body', rectangle(b.x, b.y, b.w, b.h));
	pen.word('name', shortId(b.id), { x: b.x + 14, y: b.y + 25 }, 'start');
	const { device, plug } = b;
	const says = device?.phantom
		? '48 V on'
		: plug
			? plug.socket
				? `in ${plug.socket}`
				: 'loose'
			: '';
	if (says) pen.word('caption', says, { x: b.x + b.w - 12, y: b.y + 25 }, 'end');
	const kind = device?.kind ?? plug?.kind;
	if (kind && nameOf) {
		const name = pen.lettering === 'large' ? nameOf(kind).replace(/,.*/, '') : nameOf(kind);
		pen.word('caption', name, { x: b.x + 14, y: b.y + pen.by(46, 51) }, 'start');
	}
	if (!plug) return;
	const picture = plugPicture(b.side);
	const at = { x: b.x + picture.x, y: b.y + picture.y };
	for (const part of plugParts(plug.kind)) pen.stroke(part.role, placedPath(part.d, at));
}

function drawBoxes(
	pen: Pen,
	scene: Scene,
	lit: Lit,
	letters: ReadonlyMap<NodeName, string>,
	nameOf: NameOf | undefined
) {
	for (const b of scene.boxes) {
		drawBoxHead(pen, b, nameOf);
		const left = b.side === 'left';
		const [into, anchor] = left ? [17, 'start' as const] : [-17, 'end' as const];
		for (const t of b.terminals) {
			const node = `${b.id}.${t}`;
			const at = scene.points.get(node)!;
			const on = lit.nodes.has(node);
			drawNode(pen, node, 'terminal', at, on, false);
			pen.word('caption', t, { x: at.x + into, y: at.y + pen.by(5, 8) }, anchor, node);
			const letter = letters.get(node);
			if (!letter) continue;
			const x = at.x + TERMINAL_LETTER[b.side];
			pen.word('letter', letter, { x, y: at.y + pen.by(5, 8) }, 'middle', node, on);
		}
	}
}

/**
 * The bench as one figure: `view` is the rear or the front, the true mirror image of it.
 */
export function sceneFigure(
	bench: Bench,
	view: 'rear' | 'front' = 'rear',
	lit: Lit = NOTHING_LIT,
	{ nameOf, places, lettering = 'plain', far = false, alone = false }: SceneOptions = {}
): Figure {
	const turn = view === 'rear' ? 1 : -1;
	const whole = sceneOf(bench, turn, places);
	const scene = alone ? panelAlone(whole) : whole;
	const letters = netLetters(bench);
	const pen = new Pen(lettering, far);
	const { x, y, w, h } = scene.panel;
	pen.stroke(bench.panel.metal ? 'panel' : 'hole', rectangle(x, y, w, h));
	if (lit.nodes.has(PANEL)) pen.stroke('fine', rectangle(x, y, w, h), PANEL, true);
	const metal = bench.panel.metal ? 'metal panel' : 'insulating panel';
	pen.word('caption', `${metal}, seen from the ${view}`, { x: x + 4, y: y - 9 }, 'start');
	for (const s of scene.sockets) drawSocket(pen, s, bench, turn, lit);
	drawBoxes(pen, scene, lit, letters, nameOf);
	for (const wire of scene.wires) drawWire(pen, wire, lit.wires.has(wire.name), turn > 0);
	if (turn < 0) for (const s of scene.sockets) drawFace(pen, s, lit);
	for (const wire of scene.wires) drawFlag(pen, wire, lit.wires.has(wire.name));
	drawLugs(pen, scene, lit, letters);
	const stud = scene.points.get(PANEL);
	if (stud) {
		drawNode(pen, PANEL, 'stud', stud, lit.nodes.has(PANEL), false);
		pen.word(
			'caption',
			'panel',
			{ x: stud.x - 16 * turn, y: stud.y + pen.by(7, 9) },
			turn > 0 ? 'end' : 'start'
		);
		const letter = letters.get(PANEL);
		if (letter)
			pen.word(
				'letter',
				letter,
				{ x: stud.x, y: stud.y + STUD_LETTER },
				'middle',
				PANEL,
				lit.nodes.has(PANEL)
			);
	}
	return {
		lettering,
		rimmed: true,
		width: scene.width,
		height: scene.height,
		title: `${bench.title || 'Bench'}, seen from the ${view}`,
		marks: pen.marks,
		points: scene.points
	};
}
