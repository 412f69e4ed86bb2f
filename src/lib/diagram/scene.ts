/**
 * A bench becomes a scene: every socket, device and plug has a place, every node a point, every wire
 * a path. `turn` is 1 for the rear, −1 for the front and anything between while the panel turns
 * about its vertical axis: x is multiplied by it, so the front is the true mirror image of the rear.
 */
import { path } from 'd3-path';
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
const BOX = { w: 190, gap: 24, head: 42, step: 34 } as const;
const COLUMNS = 4;

interface Plan {
	readonly panel: Scene['panel'];
	readonly columns: number;
	readonly rows: number;
}

function planOf(bench: Bench): Plan {
	const count = Math.max(1, bench.sockets.length);
	const columns = Math.min(count, COLUMNS);
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
	return [...loose, ...pairs.sort((a, b) => a.length - b.length)];
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

/** A jumper between lugs: an arc with slack, bulging to alternate sides so that wires part. */
function jumperPath(a: Point, b: Point, nth: number): { d: string; mark: Point } {
	const [dx, dy] = [b.x - a.x, b.y - a.y];
	const length = Math.hypot(dx, dy) || 1;
	const side = nth % 2 === 0 ? 1 : -1;
	const bulge = side * (20 + Math.min(54, length * 0.22) + 7 * Math.floor(nth / 2));
	const [nx, ny] = [(-dy / length) * bulge, (dx / length) * bulge];
	const p = path();
	p.moveTo(a.x, a.y);
	p.bezierCurveTo(
		a.x + dx * 0.2 + nx,
		a.y + dy * 0.2 + ny,
		a.x + dx * 0.8 + nx,
		a.y + dy * 0.8 + ny,
		b.x,
		b.y
	);
	return { d: p.toString(), mark: { x: a.x + dx / 2 + nx * 0.75, y: a.y + dy / 2 + ny * 0.75 } };
}

/** A lead that arrives at a box: level at the box, with slack on the way. */
function leadPath(a: Point, b: Point, nth: number): { d: string; mark: Point } {
	const reach = Math.max(60, Math.abs(b.x - a.x) * 0.45);
	const sag = 14 + (nth % 5) * 9;
	const p = path();
	p.moveTo(a.x, a.y);
	p.bezierCurveTo(a.x + reach * 0.5, a.y + sag, b.x - reach, b.y + sag * 0.3, b.x, b.y);
	return { d: p.toString(), mark: { x: b.x - 34, y: b.y - 1 } };
}

/** A lead between a plug's cable end and a device: nearly straight, level at both ends. */
function spanPath(a: Point, b: Point): { d: string; mark: Point } {
	const reach = Math.max(24, Math.abs(b.x - a.x) * 0.5);
	const p = path();
	p.moveTo(a.x, a.y);
	p.bezierCurveTo(a.x + reach, a.y, b.x - reach, b.y, b.x, b.y);
	return { d: p.toString(), mark: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
}

function placeWires(
	bench: Bench,
	points: ReadonlyMap<NodeName, Point>,
	boxIds: ReadonlySet<string>
): PlacedWire[] {
	const all = [
		...bench.wires.map((w) => ({ name: w.id, from: w.from, to: w.to, core: false })),
		...bench.cables.flatMap((c) =>
			c.cores.map(([from, to], i) => ({ name: `${c.id}:${i}`, from, to, core: true }))
		)
	];
	const isBox = (node: NodeName) => boxIds.has(splitNode(node)[0]);
	return all.map((wire, nth) => {
		const a = points.get(wire.from)!;
		const b = points.get(wire.to)!;
		const [left, right] = a.x <= b.x ? [a, b] : [b, a];
		if (isBox(wire.from) && isBox(wire.to)) return { ...wire, ...spanPath(left, right) };
		if (isBox(wire.from) || isBox(wire.to)) {
			const [lug, box] = isBox(wire.from) ? [b, a] : [a, b];
			return { ...wire, ...leadPath(lug, box, nth) };
		}
		return { ...wire, ...jumperPath(a, b, nth) };
	});
}

/** The scene of a bench. `turn` from 1 (rear) to −1 (front). */
export function sceneOf(bench: Bench, turn = 1): Scene {
	const plan = planOf(bench);
	const middle = plan.panel.x + plan.panel.w / 2;
	const sockets = bench.sockets.map((socket, i): PlacedSocket => {
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
	const boxes = placeBoxes(bench, plan);
	const points = pointsOf(sockets, boxes, plan, turn, bench.panel.metal);
	const wires = placeWires(bench, points, new Set(boxes.map((b) => b.id)));
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
