/**
 * A bench becomes a scene: every socket, device and plug has a place, every node a point, every wire
 * a path. `turn` is 1 for the rear, −1 for the front and anything between while the panel turns
 * about its vertical axis: x is multiplied by it, so the front is the true mirror image of the rear.
 */
import {
	DEVICES,
	PANEL,
	PLUGS,
	splitNode,
	type Bench,
	type Device,
	type NodeName,
	type Plug,
	type Socket
} from '../engine';
import {
	curvePath,
	letterPlace,
	pointAt,
	pointsAlong,
	routeOf,
	type Curve,
	type End,
	type Obstacle
} from './route';
import { PITCH, socketDrawing, type Point, type SocketDrawing } from './socket';

export interface PlacedSocket extends Point {
	readonly socket: Socket;
	readonly drawing: SocketDrawing;
	readonly plug: Plug | null;
}
/** A device or a plug: a box with terminals along one edge. */
export interface Placed extends Point {
	readonly id: string;
	readonly what: 'device' | 'plug';
	readonly w: number;
	readonly h: number;
	readonly device?: Device;
	readonly plug?: Plug;
	readonly terminals: readonly string[];
	/** The edge its terminals stand on. */
	readonly side: 'left' | 'right';
}
export interface PlacedWire {
	/** A wire's id, or `cable:core`. */
	readonly name: string;
	readonly from: NodeName;
	readonly to: NodeName;
	readonly d: string;
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
const BOX = { w: 190, gap: 22, head: 56, step: 34 } as const;

interface Plan {
	readonly panel: Scene['panel'];
	readonly columns: number;
	readonly rows: number;
}

function planOf(bench: Bench): Plan {
	const count = Math.max(1, bench.sockets.length);
	// Up to four stand in one row; more in two rows, as on a rack strip; beyond 12 a row, in more.
	const columns = count <= 4 ? count : Math.min(12, Math.ceil(count / 2));
	const rows = Math.ceil(count / columns);
	const w = columns * PITCH.x + 36;
	const h = rows * PITCH.y + 8;
	return { panel: { x: EDGE, y: EDGE, w, h }, columns, rows };
}

type Thing = Omit<Placed, 'x' | 'y' | 'w' | 'h'>;

const plugThing = (plug: Plug): Thing => ({
	id: plug.id,
	what: 'plug',
	plug,
	terminals: PLUGS[plug.kind].conductors,
	side: 'right'
});
const deviceThing = (device: Device): Thing => ({
	id: device.id,
	what: 'device',
	device,
	terminals: DEVICES[device.kind].terminals,
	side: 'left'
});

/** The first plug that a core or wire joins to the device, or null. */
function plugOf(bench: Bench, device: Device): Plug | null {
	const ends = [
		...bench.wires.map((w) => [w.from, w.to]),
		...bench.cables.flatMap((c) => c.cores.map(([a, b]) => [a, b]))
	];
	const others = ends
		.map((pair) => pair.map((n) => splitNode(n)[0]))
		.filter((owners) => owners.includes(device.id))
		.flat();
	return bench.plugs.find((p) => others.includes(p.id)) ?? null;
}

/** Rows beside the panel: a plug with the device behind it, or one thing alone. */
function rowsOf(bench: Bench): Thing[][] {
	const taken = new Set<string>();
	const pairs = bench.devices.map((device) => {
		const plug = plugOf(bench, device);
		if (!plug || taken.has(plug.id)) return [deviceThing(device)];
		taken.add(plug.id);
		return [plugThing(plug), deviceThing(device)];
	});
	const loose = bench.plugs.filter((p) => !taken.has(p.id)).map((p) => [plugThing(p)]);
	// What was there first keeps its place: a new plug lies below all that is there.
	return [...pairs.sort((a, b) => a.length - b.length), ...loose];
}

const heightOf = (thing: Thing): number =>
	BOX.head + Math.max(1, thing.terminals.length) * BOX.step;

function placeBoxes(bench: Bench, plan: Plan): Placed[] {
	const left = plan.panel.x + plan.panel.w + 84;
	let y = plan.panel.y;
	return rowsOf(bench).flatMap((row) => {
		const placed = row.map((thing, column): Placed => {
			const x = left + column * (BOX.w + 64);
			return { ...thing, x, y, w: BOX.w, h: heightOf(thing) };
		});
		y += Math.max(...row.map(heightOf)) + BOX.gap;
		return placed;
	});
}

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
			y: plan.panel.y + plan.panel.h - 22
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

/** The ink of a wire: what both ends carry, or `other` where they differ. */
export function inkOf(from: NodeName, to: NodeName): Ink {
	const [a, b] = [from, to].map((n) => CARRIES[splitNode(n)[1]] ?? 'other');
	return a !== undefined && a === b ? a : 'other';
}

function obstaclesOf(sockets: readonly PlacedSocket[]): Obstacle[] {
	return sockets.flatMap((s) => [
		{ x: s.x + s.drawing.bore.x, y: s.y + s.drawing.bore.y, r: 24 },
		...s.drawing.lugs.flatMap((lug): Obstacle[] => {
			const [x, y] = [s.x + lug.x, s.y + lug.y];
			const mark = { x: x + lug.mark.x, y: y + lug.mark.y };
			const of = `${s.socket.id}.${lug.contact}`;
			return [
				{ x, y, r: 15, of },
				{ ...mark, r: 9 + 3 * (lug.contact.length - 1) },
				{ x: x + lug.letter.x, y: y + lug.letter.y - 5, r: 5 }
			];
		}),
		...s.drawing.breaks.flatMap((b): Obstacle[] =>
			[0.35, 0.5, 0.65].map((t) => ({
				x: s.x + b.from.x + (b.to.x - b.from.x) * t,
				y: s.y + b.from.y + (b.to.y - b.from.y) * t,
				r: 7
			}))
		)
	]);
}

interface Laid {
	readonly curve: Curve;
	/** Where its letter stands, 0 to 1 along the curve. */
	readonly letter: number;
	/** Whether each end stands on the panel, and turns with it. */
	readonly turns: readonly [boolean, boolean];
}

function layWires(
	wires: readonly Omit<PlacedWire, 'd' | 'mark'>[],
	sockets: readonly PlacedSocket[],
	boxes: readonly Placed[],
	points: ReadonlyMap<NodeName, Point>
): Laid[] {
	const socketOf = new Map(sockets.map((s) => [s.socket.id, s]));
	const boxOf = new Map(boxes.map((b) => [b.id, b]));
	const end = (node: NodeName): End => {
		const [owner, contact] = splitNode(node);
		const lug = socketOf.get(owner)?.drawing.lugs.find((l) => l.contact === contact);
		const side = boxOf.get(owner)?.side;
		const outward = side === 'right' ? [0] : side === 'left' ? [Math.PI] : [-Math.PI / 2];
		return { ...points.get(node)!, ways: lug?.ways ?? outward, of: node };
	};
	const around = new Map<string, Obstacle[]>();
	const obstaclesAt = (id: string): Obstacle[] => {
		const socket = socketOf.get(id);
		if (!socket) return [];
		if (!around.has(id)) around.set(id, obstaclesOf([socket]));
		return around.get(id)!;
	};
	/** For each socket or box: the wires that lie there already, and what they depend on, as text. */
	const lain = new Map<string, { curves: Point[][]; text: string }>();
	return wires.map(({ from, to }) => {
		const owners = [...new Set([splitNode(from)[0], splitNode(to)[0]])];
		const [a, b] = [end(from), end(to)];
		const placesText = `${from} ${a.x} ${a.y} ${to} ${b.x} ${b.y}`;
		const kinds = owners.map((id) => socketOf.get(id)?.socket.kind ?? '').join();
		const before = owners.map((id) => lain.get(id)?.text ?? '').join('|');
		const curve = remembered(`${placesText} ${kinds} ${before}`, () =>
			routeOf(
				a,
				b,
				owners.flatMap(obstaclesAt),
				owners.flatMap((id) => lain.get(id)?.curves ?? [])
			)
		);
		for (const id of owners) {
			const known = lain.get(id) ?? { curves: [], text: '' };
			if (known.curves.length >= MOST_MINDED) continue;
			const text = `${known.text};${placesText}`;
			lain.set(id, { curves: [...known.curves, pointsAlong(curve)], text });
		}
		const turns = (node: NodeName) => !boxOf.has(splitNode(node)[0]);
		const letter = letterPlace(curve, owners.flatMap(obstaclesAt));
		return { curve, letter, turns: [turns(from), turns(to)] };
	});
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
	wires: readonly Omit<PlacedWire, 'd' | 'mark'>[],
	plan: Plan,
	boxes: readonly Placed[]
): readonly Laid[] {
	const names = bench.plugs.map((p) => `${p.id} ${p.kind}`).join(' ');
	const metal = bench.panel.metal;
	const key = [bench.sockets, bench.wires, bench.cables, bench.devices, names, metal];
	if (last && key.every((part, i) => part === last!.key[i])) return last.laid;
	const sockets = placeSockets(bench, plan, 1);
	const points = pointsOf(sockets, boxes, plan, 1, metal);
	const laid = layWires(wires, sockets, boxes, points);
	last = { key, laid };
	return laid;
}

function placeWires(
	bench: Bench,
	plan: Plan,
	boxes: readonly Placed[],
	turn: number
): PlacedWire[] {
	const all = [
		...bench.wires.map((w) => ({ name: w.id, from: w.from, to: w.to, core: false })),
		...bench.cables.flatMap((c) =>
			c.cores.map(([from, to], i) => ({ name: `${c.id}:${i}`, from, to, core: true }))
		)
	].map((w) => ({ ...w, ink: inkOf(w.from, w.to) }));
	const laid = laidWires(bench, all, plan, boxes);
	const middle = plan.panel.x + plan.panel.w / 2;
	const turned = (p: Point, turns: boolean): Point =>
		turns ? { x: middle + turn * (p.x - middle), y: p.y } : p;
	return all.map((wire, i) => {
		const { curve: c, letter, turns } = laid[i]!;
		const curve: Curve = {
			a: turned(c.a, turns[0]),
			c1: turned(c.c1, turns[0]),
			c2: turned(c.c2, turns[1]),
			b: turned(c.b, turns[1])
		};
		return { ...wire, d: curvePath(curve), mark: pointAt(curve, letter) };
	});
}

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
			y: plan.panel.y + 4 + (Math.floor(i / plan.columns) + 0.5) * PITCH.y
		};
	});
}

/** The scene of a bench. `turn` from 1 (rear) to −1 (front). */
export function sceneOf(bench: Bench, turn = 1): Scene {
	const plan = planOf(bench);
	const sockets = placeSockets(bench, plan, turn);
	const boxes = placeBoxes(bench, plan);
	const points = pointsOf(sockets, boxes, plan, turn, bench.panel.metal);
	const wires = placeWires(bench, plan, boxes, turn);
	const right = Math.max(plan.panel.x + plan.panel.w, ...boxes.map((b) => b.x + b.w));
	const below = Math.max(plan.panel.y + plan.panel.h, ...boxes.map((b) => b.y + b.h));
	return {
		width: right + EDGE,
		height: below + EDGE,
		panel: plan.panel,
		turn,
		sockets,
		boxes,
		wires,
		points
	};
}
