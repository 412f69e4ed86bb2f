/**
 * A bench becomes a scene: every socket, device and plug has a place, every node a point, every wire
 * a path. `turn` is 1 for the rear, −1 for the front and anything between while the panel turns
 * about its vertical axis: x is multiplied by it, so the front is the true mirror image of the rear.
 */
import {
	PANEL,
	splitNode,
	type Bench,
	type NodeName,
	type Plug,
	type PlugKind,
	type Socket
} from '../engine';
import {
	Lanes,
	areFar,
	backwards,
	farPieces,
	guttersOf,
	outPieces,
	studPieces,
	type Cell,
	type Piece
} from './lanes';
import { makePlaces, rowsOf, type Places, type Thing } from './places';
import { plugSign, shortTo } from './plugSign';
import {
	bandPath,
	curvesPath,
	letterPlace,
	pointAt,
	pointsAlong,
	routeOf,
	type Curve,
	type End,
	type Obstacle
} from './route';
import {
	FLANGE,
	PITCH,
	socketDrawing,
	type LugPlace,
	type Point,
	type SocketDrawing
} from './socket';

export interface PlacedSocket extends Point {
	readonly socket: Socket;
	readonly drawing: SocketDrawing;
	readonly plug: Plug | null;
}
/** A device or a plug as a box. */
export interface Placed extends Thing, Point {
	readonly w: number;
	readonly h: number;
}
export interface PlacedWire {
	/** A wire's id, or `cable:core`. */
	readonly name: string;
	readonly from: NodeName;
	readonly to: NodeName;
	readonly d: string;
	/** The band about it that is kept clear of what lies below, as a closed path. */
	readonly band: string;
	readonly mark: Point;
	readonly core: boolean;
	readonly ink: Ink;
}
export interface Scene {
	readonly width: number;
	readonly height: number;
	readonly panel: {
		readonly x: number;
		readonly y: number;
		readonly w: number;
		readonly h: number;
	};
	readonly turn: number;
	readonly sockets: readonly PlacedSocket[];
	readonly boxes: readonly Placed[];
	readonly wires: readonly PlacedWire[];
	readonly points: ReadonlyMap<NodeName, Point>;
}

const EDGE = 28;
const BOX = { w: 226, gap: 22, head: 62, step: 34, least: 1.5, apart: 96 } as const;
/** Where a plug's picture stands in its box, from its corner: beside the names of its terminals. */
export const plugPicture = (side: Placed['side']): Point => ({
	x: side === 'left' ? 98 : 13,
	y: 84
});

interface Plan {
	readonly panel: Scene['panel'];
	readonly columns: number;
	readonly rows: number;
	/** From row to row. */
	readonly pitch: number;
}

function planOf(bench: Bench): Plan {
	const count = Math.max(1, bench.sockets.length);
	// Up to four stand in one row; more in two rows, as on a rack strip; beyond 12 a row, in more.
	const columns = count <= 4 ? count : Math.min(12, Math.ceil(count / 2));
	const rows = Math.ceil(count / columns);
	const w = columns * PITCH.x + 36;
	const pitch = count === 1 ? PITCH.single : PITCH.y;
	const h = rows * pitch + 22;
	return { panel: { x: EDGE, y: EDGE, w, h }, columns, rows, pitch };
}

const heightOf = (thing: Thing): number =>
	BOX.head + Math.max(BOX.least, thing.terminals.length) * BOX.step;

/** Boxes stand in one column for so long, in units; a tall panel has room for more beside it. */
const BANK = 1060;

/** A column of rows; where it would grow far beyond the panel, another one stands beside it. */
function placeBoxes(bench: Bench, plan: Plan, places: Places): Placed[] {
	const below = plan.panel.y + Math.max(BANK, plan.panel.h);
	let left = plan.panel.x + plan.panel.w + 84;
	let wide = 0;
	let y = plan.panel.y;
	return rowsOf(bench, places).flatMap((row) => {
		const tall = Math.max(...row.map((thing) => (thing ? heightOf(thing) : 0)));
		if (y + tall > below && y > plan.panel.y) {
			[left, y, wide] = [left + wide * (BOX.w + BOX.apart), plan.panel.y, 0];
		}
		wide = Math.max(wide, row.length);
		const placed = row.flatMap((thing, column): Placed[] => {
			const x = left + column * (BOX.w + BOX.apart);
			return thing ? [{ ...thing, x, y, w: BOX.w, h: heightOf(thing) }] : [];
		});
		y += Math.max(...placed.map((b) => b.h)) + BOX.gap;
		return placed;
	});
}

/** Where the letter of a terminal's net stands, from the terminal: in the box, at the far end of its row. */
export const TERMINAL_LETTER = { left: BOX.w - 16, right: -105 } as const;

/** Where a box's terminal stands: a device's on its left edge, a plug's at its cable end. */
export const terminalPoint = (box: Placed, index: number): Point => ({
	x: box.side === 'left' ? box.x : box.x + box.w,
	y: box.y + BOX.head + (index + 0.4) * BOX.step
});

function pointsOf(
	sockets: readonly PlacedSocket[],
	boxes: readonly Placed[],
	plan: Plan,
	turn: number,
	metal: boolean
) {
	const points = new Map<NodeName, Point>();
	for (const s of sockets)
		for (const lug of s.drawing.lugs)
			points.set(`${s.socket.id}.${lug.contact}`, { x: s.x + turn * lug.x, y: s.y + lug.y });
	for (const b of boxes)
		b.terminals.forEach((t, i) => points.set(`${b.id}.${t}`, terminalPoint(b, i)));
	if (metal) {
		const middle = plan.panel.x + plan.panel.w / 2;
		points.set(PANEL, {
			x: middle + turn * (plan.panel.w / 2 - 16),
			y: plan.panel.y + plan.panel.h - 36
		});
	}
	return points;
}

export const INKS = ['hot', 'cold', 'shield', 'other'] as const;
/** What a wire carries by the contacts it joins: its ink, its line pattern and its letter follow. */
export type Ink = (typeof INKS)[number];
const CARRIES: Readonly<Record<string, Ink>> = {
	...{ '2': 'hot', T: 'hot', TN: 'hot', tip: 'hot', hot: 'hot' },
	...{ '3': 'cold', R: 'cold', RN: 'cold', ring: 'cold', cold: 'cold' },
	...{ '1': 'shield', S: 'shield', SN: 'shield', '1N': 'shield', sleeve: 'shield' },
	...{ shield: 'shield', shell: 'shield', G: 'shield', chassis: 'shield', '': 'shield' }
};

/** The letter of each ink. */
export const WIRE_LETTERS: Readonly<Record<Ink, string>> = {
	hot: 'h',
	cold: 'c',
	shield: 's',
	other: 'x'
};
/** Radius of the ring about a wire's letter, units, and where words are large. */
export const FLAG = { plain: 8.5, large: 12.5 } as const;
/** From the panel's stud down to the letter of its net, units. */
export const STUD_LETTER = 29;

/** The ink of a wire: what both ends carry, or `other` where they differ. */
export function inkOf(from: NodeName, to: NodeName): Ink {
	const [a, b] = [from, to].map((n) => CARRIES[splitNode(n)[1]] ?? 'other');
	return a !== undefined && a === b ? a : 'other';
}

/** What a socket is called on the panel. */
export const nameOfSocket = ({ id, label }: Socket): string => (label ? `${id} · ${label}` : id);
/** So many letters of a label have room beside what stands in the socket. */
const LABEL_BESIDE_PLUG = 10;
/**
 * A socket's name, and after it what stands in it: words fit no opening. A plug of the other half
 * leaves the opening empty, so its travel, mm, stands here too.
 */
export function nameWithPlug(socket: Socket, kind: PlugKind, travel: number): string {
	const name = nameOfSocket({ ...socket, label: shortTo(socket.label, LABEL_BESIDE_PLUG) });
	return [name, kind === 'three-pin' ? `${plugSign(kind)} ${travel.toFixed(1)}` : kind].join(' · ');
}
/** From this many sockets on, names are written so large that they are read from far off. */
const MANY = 5;
/** Half the width and half the height of words at their largest, units: a name, a name read from far. */
const NAMES = {
	// With room for what stands in the socket: ` · trs`, most often.
	near: { letter: 6.8, r: 11, y: 238, more: 4 },
	far: { letter: 12.4, r: 20, y: 246, more: 0 }
} as const;
/** The same of the mark of a lug, and of the letter of its net. */
const WORD = { letter: 6.5, r: 11 } as const;

/** A word about that middle, as round things to keep clear of, side by side. */
function wordObstacles({ x, y }: Point, half: number, r: number): Obstacle[] {
	const reach = Math.max(0, half - r);
	const count = 1 + Math.ceil(reach / r);
	return Array.from({ length: count }, (_, i) => ({
		x: count === 1 ? x : x - reach + (2 * reach * i) / (count - 1),
		y,
		r
	}));
}
function nameObstacles({ x, y, socket }: PlacedSocket, count: number): Obstacle[] {
	const size = count < MANY ? NAMES.near : NAMES.far;
	const half = Math.min(FLANGE.x - 4, size.letter * (nameOfSocket(socket).length + size.more));
	return wordObstacles({ x, y: y + size.y }, half, size.r);
}

function lugObstacles(s: PlacedSocket, lug: LugPlace): Obstacle[] {
	const [x, y] = [s.x + lug.x, s.y + lug.y];
	const mark = { x: x + lug.mark.x, y: y + lug.mark.y + 1 };
	const letter = { x: x + lug.letter.x, y: y + lug.letter.y - 6 };
	return [
		{ x, y, r: 15, of: `${s.socket.id}.${lug.contact}` },
		...wordObstacles(mark, WORD.letter * lug.contact.length, WORD.r),
		...wordObstacles(letter, WORD.letter, WORD.r)
	];
}

function obstaclesOf(s: PlacedSocket, count: number): Obstacle[] {
	return [
		...nameObstacles(s, count),
		{ x: s.x + s.drawing.bore.x, y: s.y + s.drawing.bore.y, r: 20 },
		...s.drawing.lugs.flatMap((lug) => lugObstacles(s, lug)),
		...s.drawing.breaks.flatMap((b): Obstacle[] =>
			[0.35, 0.5, 0.65].map((t) => ({
				x: s.x + b.from.x + (b.to.x - b.from.x) * t,
				y: s.y + b.from.y + (b.to.y - b.from.y) * t,
				r: 7
			}))
		)
	];
}

interface Laid {
	/** The wire from end to end. */
	readonly pieces: readonly Piece[];
	/** Where its letter stands, 0 to 1 along its first piece, from the rear and from the front. */
	readonly letter: number;
	readonly frontLetter: () => number;
}
/** What lies at a socket or box already; from the front, worked out when it is turned. */
interface Lain {
	readonly curves: readonly (readonly Point[])[];
	readonly flags: readonly Obstacle[];
	readonly fronts: readonly (() => readonly Point[])[];
	readonly frontFlags: readonly (() => Obstacle)[];
	/** All that it depends on. */
	readonly text: string;
}
const NOTHING_LAIN: Lain = { curves: [], flags: [], fronts: [], frontFlags: [], text: '' };

type Strand = Omit<PlacedWire, 'd' | 'band' | 'mark'>;

interface Ground {
	readonly sockets: readonly PlacedSocket[];
	readonly boxes: readonly Placed[];
	readonly points: ReadonlyMap<NodeName, Point>;
	readonly plan: Plan;
}

/** What a wire needs to know of what stands on the bench. */
function groundOf({ sockets, boxes, points, plan }: Ground) {
	const socketOf = new Map(sockets.map((s, i) => [s.socket.id, { s, i }]));
	const boxOf = new Map(boxes.map((b) => [b.id, b]));
	const around = new Map<string, Obstacle[]>();
	const obstaclesAt = (id: string): Obstacle[] => {
		const found = socketOf.get(id);
		if (!found) return [];
		if (!around.has(id)) around.set(id, obstaclesOf(found.s, sockets.length));
		return around.get(id)!;
	};
	const end = (node: NodeName): End => {
		const [owner, contact] = splitNode(node);
		const lug = socketOf.get(owner)?.s.drawing.lugs.find((l) => l.contact === contact);
		const side = boxOf.get(owner)?.side;
		const outward = side === 'right' ? [0] : side === 'left' ? [Math.PI] : [-Math.PI / 2];
		return { ...points.get(node)!, ways: lug?.ways ?? outward, of: node };
	};
	const cell = (node: NodeName): Cell | null => {
		const found = socketOf.get(splitNode(node)[0]);
		if (!found) return null;
		const { s, i } = found;
		return { x: s.x, y: s.y, column: i % plan.columns, row: Math.floor(i / plan.columns) };
	};
	const isBox = (node: NodeName): boolean => boxOf.has(splitNode(node)[0]);
	const at = points.get(PANEL);
	const stud: Obstacle[] = at
		? [
				{ ...at, r: 18, of: PANEL },
				...wordObstacles({ x: at.x - 52, y: at.y - 2 }, 37, WORD.r),
				...wordObstacles({ x: at.x, y: at.y + STUD_LETTER - 6 }, WORD.letter, WORD.r)
			]
		: [];
	return {
		stud,
		end,
		cell,
		isBox,
		obstaclesAt,
		kind: (id: string) => socketOf.get(id)?.s.socket.kind
	};
}

/** Whether sockets stand between a cell and the panel's right edge. */
const isInside = (cell: Cell, { columns }: Plan, count: number): boolean =>
	cell.column < Math.min(columns, count - cell.row * columns) - 1;

/** Whether sockets stand between a cell and the panel's stud at its lower right. */
const isAway = (cell: Cell, plan: Plan, count: number): boolean =>
	isInside(cell, plan, count) || cell.row < plan.rows - 1;

/**
 * Half the width over which a jumper of one socket may lie: beside others, and alone, where it and its
 * ring stay within what a phone shows of the socket.
 */
const ROOM = { beside: PITCH.x / 2 - 12, alone: 148 } as const;

const panelMiddle = ({ panel }: Plan): number => panel.x + panel.w / 2;

function layWires(wires: readonly Strand[], ground: Ground): Laid[] {
	const { plan, sockets } = ground;
	const on = groundOf(ground);
	const lanes = new Lanes();
	const edge = plan.panel.x + plan.panel.w;
	const lain = new Map<string, Lain>();
	const lainAt = (id: string): Lain => lain.get(id) ?? NOTHING_LAIN;
	const flip = <T extends Point>(p: T): T => ({ ...p, x: panelMiddle(plan) * 2 - p.x });
	const ownerOf = (e: End): string => splitNode(e.of)[0];
	const way = {
		lanes,
		obstaclesOf: (e: End) => on.obstaclesAt(ownerOf(e)),
		lainAt: (e: End) => lainAt(ownerOf(e)).curves
	};
	function direct(a: End, b: End, owners: readonly string[], text: string): Piece[] {
		const kinds = owners.map((id) => on.kind(id) ?? '').join();
		const before = owners.map((id) => lainAt(id).text).join('|');
		// What joins the two owners lies at both, and counts once.
		const others = [...new Set(owners.flatMap((id) => lainAt(id).curves))];
		const still = [...owners.flatMap(on.obstaclesAt), ...on.stud];
		const flags = new Set(owners.flatMap((id) => lainAt(id).flags));
		const obstacles = [...still, ...flags];
		const own = owners.length === 1 ? on.cell(a.of) : null;
		const half = sockets.length === 1 ? ROOM.alone : ROOM.beside;
		const room = own && { left: own.x - half, right: own.x + half };
		const curve = remembered(`${text} ${kinds} ${before}`, () =>
			routeOf(a, b, obstacles, others, room)
		);
		const turns = [!on.isBox(a.of), !on.isBox(b.of)] as const;
		if (turns[0] === turns[1]) return [{ curve, turns }];
		const lies = owners.map(lainAt);
		const end = (e: End): End =>
			on.isBox(e.of) ? e : { ...flip(e), ways: e.ways.map((way) => Math.PI - way) };
		const front = () =>
			remembered(`front ${text} ${kinds} ${before}`, () =>
				routeOf(
					end(a),
					end(b),
					[...still.map(flip), ...lies.flatMap((l) => l.frontFlags.map((flag) => flag()))],
					lies.flatMap((l) => l.fronts.map((points) => points()))
				)
			);
		return [{ curve, turns, front }];
	}
	function piecesOf(a: End, b: End, owners: readonly string[], text: string): Piece[] {
		const [from, to] = [on.cell(a.of), on.cell(b.of)];
		const count = sockets.length;
		if (from && to && areFar(from, to)) return farPieces(way, a, from, b, to);
		if (from && !to && on.isBox(b.of) && isInside(from, plan, count))
			return outPieces(way, a, from, b, edge);
		if (to && !from && on.isBox(a.of) && isInside(to, plan, count))
			return backwards(outPieces(way, b, to, a, edge));
		if (from && b.of === PANEL && isAway(from, plan, count)) return studPieces(way, a, from, b);
		if (to && a.of === PANEL && isAway(to, plan, count))
			return backwards(studPieces(way, b, to, a));
		return direct(a, b, owners, text);
	}
	return wires.map(({ from, to }) => {
		const owners = [...new Set([splitNode(from)[0], splitNode(to)[0]])];
		const [a, b] = [on.end(from), on.end(to)];
		const placesText = `${from} ${a.x} ${a.y} ${to} ${b.x} ${b.y}`;
		const pieces = piecesOf(a, b, owners, placesText);
		const first = pieces[0]!;
		const cell = pieces.length > 1 ? on.cell(a.of) : null;
		const loom = cell ? guttersOf(cell) : [];
		const things = [...owners.flatMap(on.obstaclesAt), ...on.stud, ...loom];
		const lies = owners.map(lainAt);
		const letter = letterPlace(
			first.curve,
			FLAG.large,
			[...things, ...lies.flatMap((l) => l.flags)],
			lies.flatMap((l) => l.curves)
		);
		const frontCurve = () => first.front!();
		const frontLetter = once(() =>
			first.front
				? letterPlace(
						frontCurve(),
						FLAG.large,
						[...things.map(flip), ...lies.flatMap((l) => l.frontFlags.map((flag) => flag()))],
						lies.flatMap((l) => l.fronts.map((points) => points()))
					)
				: letter
		);
		const flag = { ...pointAt(first.curve, letter), r: FLAG.large };
		const frontFlag = once(() =>
			first.front ? { ...pointAt(frontCurve(), frontLetter()), r: FLAG.large } : flip(flag)
		);
		for (const id of owners) {
			const known = lainAt(id);
			if (known.curves.length >= MOST_MINDED) continue;
			const own = pieces.length === 1 ? first : id === owners[0] ? first : pieces.at(-1)!;
			const points = pointsAlong(own.curve);
			const front = once(() => (own.front ? pointsAlong(own.front()) : points.map(flip)));
			lain.set(id, {
				curves: [...known.curves, points],
				flags: [...known.flags, flag],
				fronts: [...known.fronts, front],
				frontFlags: [...known.frontFlags, frontFlag],
				text: `${known.text};${placesText} ${letter}`
			});
		}
		return { pieces, letter, frontLetter };
	});
}

/** Worked out when it is first asked for, and once. */
function once<T>(make: () => T): () => T {
	let made: { readonly it: T } | null = null;
	return () => (made ??= { it: make() }).it;
}

/**
 * So many wires of a socket or box are minded by those laid later. Where more lie, no curve parts them
 * for the eye, and a file of thousands of wires must not take minutes to draw.
 */
export const MOST_MINDED = 60;

/** Curves by all that they depend on, so that a new wire costs its own route and no other. */
const known = new Map<string, Curve>();
const MOST_KNOWN = 4000;
function remembered(key: string, route: () => Curve): Curve {
	const found = known.get(key);
	if (found) return found;
	if (known.size >= MOST_KNOWN) known.clear();
	const made = route();
	known.set(key, made);
	return made;
}

/** The last layout of wires: a plug that travels leaves every wire where it is. */
let last: { readonly key: readonly unknown[]; readonly laid: readonly Laid[] } | null = null;

function laidWires(
	bench: Bench,
	wires: readonly Strand[],
	plan: Plan,
	boxes: readonly Placed[]
): readonly Laid[] {
	const names = bench.plugs.map((p) => `${p.id} ${p.kind}`).join(' ');
	const stands = boxes.map((b) => `${b.id} ${b.x} ${b.y}`).join(' ');
	const metal = bench.panel.metal;
	const key = [bench.sockets, bench.wires, bench.cables, bench.devices, names, stands, metal];
	if (last && key.every((part, i) => part === last!.key[i])) return last.laid;
	const sockets = placeSockets(bench, plan, 1);
	const points = pointsOf(sockets, boxes, plan, 1, metal);
	const laid = layWires(wires, { sockets, boxes, points, plan });
	last = { key, laid };
	return laid;
}

/** What was drawn of it last: the same wires are the same objects, and nothing of them is drawn anew. */
let drawn: {
	readonly laid: readonly Laid[];
	readonly turn: number;
	readonly wires: readonly PlacedWire[];
} | null = null;

function placeWires(
	bench: Bench,
	plan: Plan,
	boxes: readonly Placed[],
	turn: number
): readonly PlacedWire[] {
	const all = [
		...bench.wires.map((w) => ({ name: w.id, from: w.from, to: w.to, core: false })),
		...bench.cables.flatMap((c) =>
			c.cores.map(([from, to], i) => ({ name: `${c.id}:${i}`, from, to, core: true }))
		)
	].map((w) => ({ ...w, ink: inkOf(w.from, w.to) }));
	const laid = laidWires(bench, all, plan, boxes);
	if (drawn?.laid === laid && drawn.turn === turn) return drawn.wires;
	const middle = panelMiddle(plan);
	const turned = (p: Point, turns: boolean): Point =>
		turns ? { x: middle + turn * (p.x - middle), y: p.y } : p;
	/** On its way from rear to front a wire with one end on the panel goes from one curve to the other. */
	const between = (p: Point, q: Point): Point => {
		const part = (1 - turn) / 2;
		return { x: p.x + part * (q.x - p.x), y: p.y + part * (q.y - p.y) };
	};
	const wires = all.map((wire, i) => {
		const { pieces, letter, frontLetter } = laid[i]!;
		const curves = pieces.map(({ curve: c, turns, front }): Curve => {
			const f = turn < 1 ? front?.() : undefined;
			if (f)
				return {
					a: between(c.a, f.a),
					c1: between(c.c1, f.c1),
					c2: between(c.c2, f.c2),
					b: between(c.b, f.b)
				};
			return {
				a: turned(c.a, turns[0]),
				c1: turned(c.c1, turns[0]),
				c2: turned(c.c2, turns[1]),
				b: turned(c.b, turns[1])
			};
		});
		const along = turn < 1 ? letter + ((1 - turn) / 2) * (frontLetter() - letter) : letter;
		const mark = pointAt(curves[0]!, along);
		return { ...wire, d: curvesPath(curves), band: bandPath(curves), mark };
	});
	drawn = { laid, turn, wires };
	return wires;
}

/** From the top of a cell to the middle of its socket. */
const middleOf = ({ pitch }: Plan): number => (pitch === PITCH.single ? pitch / 2 : PITCH.middle);

function placeSockets(bench: Bench, plan: Plan, turn: number): PlacedSocket[] {
	const middle = plan.panel.x + plan.panel.w / 2;
	return bench.sockets.map((socket, i): PlacedSocket => {
		const column = i % plan.columns;
		const rearX = plan.panel.x + 18 + (column + 0.5) * PITCH.x;
		return {
			socket,
			drawing: socketDrawing(socket.kind),
			plug: bench.plugs.find((p) => p.socket === socket.id) ?? null,
			x: middle + turn * (rearX - middle),
			y: plan.panel.y + 4 + Math.floor(i / plan.columns) * plan.pitch + middleOf(plan)
		};
	});
}

/** A device with its terminals away from the panel: its wires loop out to the right. */
const isTurned = (box: Placed): boolean => box.what === 'device' && box.side === 'right';
/** How far wires reach to the right, units: by the points of their curves, which reach a little farther. */
const rightOf = (wires: readonly PlacedWire[]): number =>
	Math.max(
		...wires.flatMap(({ d }) =>
			d
				.match(/-?[\d.]+/g)!
				.map(Number)
				.filter((_, i) => i % 2 === 0)
		)
	);

/**
 * The scene of a bench. `turn` from 1 (rear) to −1 (front); `places`: where boxes were seen before,
 * so that they stay there.
 */
export function sceneOf(bench: Bench, turn = 1, places: Places = makePlaces()): Scene {
	const plan = planOf(bench);
	const sockets = placeSockets(bench, plan, turn);
	const boxes = placeBoxes(bench, plan, places);
	const points = pointsOf(sockets, boxes, plan, turn, bench.panel.metal);
	const wires = placeWires(bench, plan, boxes, turn);
	const right = Math.max(plan.panel.x + plan.panel.w, ...boxes.map((b) => b.x + b.w));
	const below = Math.max(plan.panel.y + plan.panel.h, ...boxes.map((b) => b.y + b.h));
	return {
		width: Math.max(right, boxes.some(isTurned) ? rightOf(wires) : 0) + EDGE,
		height: below + EDGE,
		panel: plan.panel,
		turn,
		sockets,
		boxes,
		wires,
		points
	};
}

/** A scene without its boxes, and without the wires that lead to them; as high as before. */
export function panelAlone(scene: Scene): Scene {
	const away = new Set(scene.boxes.flatMap((b) => b.terminals.map((t) => `${b.id}.${t}`)));
	return {
		...scene,
		width: scene.panel.w + 2 * scene.panel.x,
		boxes: [],
		wires: scene.wires.filter(({ from, to }) => !away.has(from) && !away.has(to)),
		points: new Map([...scene.points].filter(([node]) => !away.has(node)))
	};
}
