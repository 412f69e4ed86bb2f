import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, SOCKET_KINDS, type Bench } from '../engine';
import { pointsAlong } from './route';
import { makePlaces } from './places';
import { MOST_MINDED, sceneOf, type Scene } from './scene';
import { FLANGE } from './socket';

const wire = (id: string, from: string, to: string) => ({ id, from, to, awg: 26, mm: 40 });
const bench: Bench = {
	...EMPTY_BENCH,
	panel: { metal: true },
	sockets: [
		{ id: 'A', kind: 'hybrid-10', bush: 'insulated', label: '' },
		{ id: 'B', kind: 'patch-jack', bush: 'insulated', label: '' }
	],
	wires: [
		wire('a', 'A.1', 'A.S'),
		wire('b', 'A.2', 'A.T'),
		wire('c', 'A.3', 'A.R'),
		wire('d', 'A.1N', 'A.SN'),
		wire('e', 'A.RN', 'A.3'),
		wire('f', 'A.T', 'A.R'),
		wire('g', 'A.SN', 'A.TN'),
		wire('h', 'A.G', 'panel'),
		wire('i', 'A.G', 'A.1'),
		wire('j', 'A.TN', 'A.2'),
		wire('k', 'A.S', 'B.S'),
		wire('l', 'B.TN', 'A.T')
	]
};

/** Points along a wire of a scene, piece by piece. */
function along({ d }: Scene['wires'][number]) {
	const n = d.match(/-?\d*\.?\d+/g)!.map(Number);
	const at = (i: number) => ({ x: n[i]!, y: n[i + 1]! });
	return Array.from({ length: (n.length - 2) / 6 }, (_, i) =>
		pointsAlong({ a: at(6 * i), c1: at(6 * i + 2), c2: at(6 * i + 4), b: at(6 * i + 6) }, 80)
	).flat();
}

describe('a scene', () => {
	it('mirrors the front about the middle of the panel, contact by contact', () => {
		const [rear, front] = [sceneOf(bench, 1), sceneOf(bench, -1)];
		const middle = rear.panel.x + rear.panel.w / 2;
		for (const [node, p] of rear.points) {
			const q = front.points.get(node)!;
			expect(p.x + q.x, node).toBeCloseTo(2 * middle, 6);
			expect(q.y).toBe(p.y);
		}
	});
	it('leads a cable that is laid later from box to box outside of both, and leaves the boxes where they are', () => {
		const before: Bench = {
			...EMPTY_BENCH,
			sockets: [{ id: 'A', kind: 'hybrid-9', bush: 'insulated', label: '' }],
			plugs: [{ id: 'p', kind: 'trs', socket: 'A', travel: 30.5 }],
			devices: [{ id: 'MIC', kind: 'mic', phantom: false }]
		};
		const places = makePlaces();
		const boxesBefore = sceneOf(before, 1, places).boxes;
		const cores = [
			['p.tip', 'MIC.hot'],
			['p.ring', 'MIC.cold'],
			['p.sleeve', 'MIC.shell']
		] as const;
		const cabled = { ...before, cables: [{ id: 'c', awg: 24, m: 3, cores }] };
		const scene = sceneOf(cabled, 1, places);
		expect(scene.boxes.map(({ x, y }) => [x, y])).toEqual(boxesBefore.map(({ x, y }) => [x, y]));
		const edge = scene.boxes[0]!.x + scene.boxes[0]!.w;
		expect(scene.wires).toHaveLength(3);
		for (const w of scene.wires)
			for (const { x } of along(w)) {
				expect(x, w.name).toBeGreaterThanOrEqual(edge);
				expect(x, w.name).toBeLessThan(scene.width);
			}
	});
	it('turns a plug that only hangs on the panel to the panel, so that no wire runs through its box', () => {
		const scene = sceneOf({
			...EMPTY_BENCH,
			sockets: [{ id: 'A', kind: 'hybrid-9', bush: 'insulated', label: '' }],
			plugs: [{ id: 'p', kind: 'ts', socket: null, travel: 0 }],
			devices: [{ id: 'DESK', kind: 'mic-input', phantom: false }],
			wires: [wire('w', 'A.T', 'p.tip')]
		});
		const left = Math.min(...scene.boxes.map((b) => b.x));
		for (const { x } of along(scene.wires[0]!)) expect(x).toBeLessThanOrEqual(left + 0.01);
	});
	it('leaves a wire where it was when others are added', () => {
		const few = sceneOf({ ...bench, wires: bench.wires.slice(0, 5) });
		const many = sceneOf(bench);
		few.wires.forEach((w, i) => expect(many.wires[i]!.d).toBe(w.d));
	});
	it('lays a wire by the first sixty that were there before, so that thousands cost no more each', () => {
		const wires = Array.from({ length: MOST_MINDED + 40 }, (_, i) => wire(`w${i}`, 'A.2', 'A.TN'));
		const drawn = sceneOf({ ...bench, wires }).wires.map((w) => w.d);
		expect(drawn[1]).not.toBe(drawn[0]);
		expect(new Set(drawn.slice(MOST_MINDED)).size).toBe(1);
	});
	it('leaves every wire where it was while a plug travels', () => {
		const at = (travel: number): Bench => ({
			...bench,
			plugs: [{ id: 'p', kind: 'trs', socket: 'A', travel }]
		});
		expect(sceneOf(at(20)).wires.map((w) => w.d)).toEqual(sceneOf(at(5)).wires.map((w) => w.d));
	});
	it.each(SOCKET_KINDS)('keeps the contacts of a %s on its flange and 40 units apart', (kind) => {
		const one = sceneOf({
			...EMPTY_BENCH,
			sockets: [{ id: 'A', kind, bush: 'insulated', label: '' }]
		});
		const [s] = one.sockets;
		const places = [...one.points.values()];
		places.forEach((p, i) => {
			expect(Math.abs(p.x - s!.x)).toBeLessThan(FLANGE.x);
			expect(Math.abs(p.y - s!.y)).toBeLessThan(FLANGE.y);
			for (const q of places.slice(i + 1))
				expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThan(40);
		});
	});
	it('leads no wire under a lug that it does not land on, at eleven contacts and twelve wires', () => {
		const scene = sceneOf(bench);
		for (const w of scene.wires)
			for (const [node, p] of scene.points) {
				if (node === w.from || node === w.to) continue;
				const nearest = Math.min(...along(w).map((q) => Math.hypot(p.x - q.x, p.y - q.y)));
				expect(nearest, `${w.name} past ${node}`).toBeGreaterThan(13);
			}
	});
	it('leads long wires by the lanes between the rows, and across no socket that they do not serve', () => {
		const ids = Array.from({ length: 26 }, (_, i) => String.fromCharCode(65 + i));
		const panel: Bench = {
			...EMPTY_BENCH,
			panel: { metal: true },
			sockets: ids.map((id) => ({ id, kind: 'hybrid-9', bush: 'insulated', label: '' })),
			devices: [{ id: 'DESK', kind: 'line-in', phantom: false }],
			wires: [
				wire('row', 'A.TN', 'F.2'),
				wire('up', 'Z.T', 'B.1'),
				wire('column', 'A.R', 'Y.S'),
				wire('back', 'L.3', 'C.SN'),
				wire('out', 'B.2', 'DESK.hot'),
				wire('in', 'DESK.cold', 'N.3'),
				wire('bond', 'panel', 'K.G')
			]
		};
		const scene = sceneOf(panel);
		for (const w of scene.wires) {
			const ends = [w.from, w.to].map((node) => node.split('.')[0]);
			const far = along(w);
			for (const s of scene.sockets.filter((one) => !ends.includes(one.socket.id)))
				for (const p of far) {
					const over = Math.abs(p.x - s.x) < FLANGE.x && Math.abs(p.y - s.y) < FLANGE.y;
					expect(over, `${w.name} over ${s.socket.id}`).toBe(false);
				}
			expect(far[0]!.x).toBeCloseTo(scene.points.get(w.from)!.x, 1);
			expect(far.at(-1)!.y).toBeCloseTo(scene.points.get(w.to)!.y, 1);
		}
	});
	it('leaves every box where it was seen first when cables, plugs and devices come', () => {
		const places = makePlaces();
		const first: Bench = {
			...bench,
			devices: [{ id: 'DESK', kind: 'line-in', phantom: false }],
			plugs: [{ id: 'p', kind: 'trs', socket: null, travel: 30.5 }]
		};
		const more: Bench = {
			...first,
			devices: [...first.devices, { id: 'MIC', kind: 'mic', phantom: false }],
			plugs: [...first.plugs, { id: 'q', kind: 'ts', socket: null, travel: 30.5 }],
			cables: [{ id: 'c', m: 5, awg: 24, cores: [['p.tip', 'DESK.hot']] }]
		};
		const before = sceneOf(first, 1, places);
		const after = sceneOf(more, 1, places);
		for (const b of before.boxes)
			expect(after.boxes.find((a) => a.id === b.id)).toMatchObject({ x: b.x, y: b.y });
		before.wires.forEach((w, i) => expect(after.wires[i]!.d).toBe(w.d));
		// Seen for the first time with its cable, the plug stands before the device.
		expect(sceneOf(more).boxes.find((b) => b.id === 'DESK')!.x).toBeGreaterThan(
			before.boxes.find((b) => b.id === 'DESK')!.x
		);
	});
	it('puts no box on another, whatever has gone meanwhile', () => {
		const places = makePlaces();
		const plug = (id: string) => ({ id, kind: 'ts' as const, socket: null, travel: 30.5 });
		const all = ['p', 'q', 'r', 's'].map(plug);
		sceneOf({ ...bench, plugs: all }, 1, places);
		const { boxes } = sceneOf({ ...bench, plugs: [plug('t'), ...all.slice(2)] }, 1, places);
		expect(boxes.map((b) => b.id)).toEqual(['r', 's', 't']);
		boxes.slice(1).forEach((b, i) => expect(b.y).toBeGreaterThan(boxes[i]!.y + boxes[i]!.h));
	});
});
