/** Nets that follow plugs, against the plain nets of the whole bench after each move. */
import { describe, expect, it } from 'vitest';
import type { Bench } from './bench';
import { benchOf } from './bench.fixture';
import { LiveNets } from './liveNets';
import { netsOf } from './nets';
import { fits } from './parts';
import { randomBench, randomNumbers } from './random.fixture';

/** The same nodes on one net, and the same number of nets. */
function agree(live: LiveNets, bench: Bench) {
	const { list } = netsOf(bench);
	const numbers = list.map((net) => new Set(net.map((node) => live.netOf(node))));
	for (const [i, found] of numbers.entries()) expect(found.size, list[i]!.join()).toBe(1);
	expect(new Set(numbers.flatMap((found) => [...found])).size).toBe(list.length);
}

describe('nets that follow plugs', () => {
	it('are the plain nets after each of 40 moves on 120 benches drawn from a stated seed', () => {
		const below = randomNumbers(121);
		let moves = 0;
		for (let round = 0; round < 120; round++) {
			let bench = randomBench(below);
			const live = new LiveNets(bench);
			agree(live, bench);
			for (let k = 0; k < 40 && bench.plugs.length > 0; k++) {
				const plug = bench.plugs[below(bench.plugs.length)]!;
				const homes = bench.sockets.filter(
					(s) => fits(plug.kind, s.kind) && !bench.plugs.some((p) => p.socket === s.id)
				);
				const home = below(4) ? (homes[below(homes.length + 1)]?.id ?? null) : plug.socket;
				const travel = below(2) ? 30.5 : below(62) / 2;
				const plugs = bench.plugs.map((p) =>
					p.id === plug.id ? { ...p, socket: home, travel } : p
				);
				bench = { ...bench, plugs };
				live.move(plug.id, home, travel);
				agree(live, bench);
				moves++;
			}
		}
		expect(moves).toBeGreaterThan(2000);
	});
	it('say of a node that is not there that it is joined to nothing, and refuse a plug that is not', () => {
		const live = new LiveNets(benchOf({ sockets: [{ id: 'A', kind: 'jack-ts-break' }] }));
		expect(live.isJoined('A.T', 'A.TN')).toBe(true);
		expect(live.isJoined('A.T', 'A.S')).toBe(false);
		expect(live.isJoined('x', 'x')).toBe(false);
		expect(() => live.move('p', 'A')).toThrow('no plug p');
	});
	it('look at no more conductors on a panel of 300 jacks with one ground than on one of 3', () => {
		const most = (jacks: number) => {
			const live = new LiveNets(
				benchOf({
					panel: { metal: true },
					sockets: Array.from({ length: jacks }, (_, i) => ({
						id: `J${i}`,
						kind: 'jack-trs-break',
						bush: 'metal'
					})),
					plugs: [{ id: 'p', kind: 'trs' }]
				})
			);
			let worst = 0;
			for (let i = 0; i < jacks; i++) {
				const before = live.steps;
				live.move('p', `J${i}`);
				worst = Math.max(worst, live.steps - before);
			}
			return worst;
		};
		expect(most(300)).toBe(most(3));
	});
});
