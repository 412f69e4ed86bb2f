import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, SOCKET_KINDS, type Bench } from '../engine';
import { pointsAlong } from './route';
import { MOST_MINDED, sceneOf } from './scene';
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
		for (const w of scene.wires) {
			const n = w.d.match(/-?\d*\.?\d+/g)!.map(Number);
			const at = (i: number) => ({ x: n[i]!, y: n[i + 1]! });
			const along = pointsAlong({ a: at(0), c1: at(2), c2: at(4), b: at(6) }, 80);
			for (const [node, p] of scene.points) {
				if (node === w.from || node === w.to) continue;
				const nearest = Math.min(...along.map((q) => Math.hypot(p.x - q.x, p.y - q.y)));
				expect(nearest, `${w.name} past ${node}`).toBeGreaterThan(13);
			}
		}
	});
});
