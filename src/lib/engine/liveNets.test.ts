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

/** Jacks wired break to tip in the order of a list; with `isRing` the last to the first. */
function chained(jacks: number, isRing = false, more: object = {}): Bench {
	const wired = (from: number, to: number) => ({
		id: `w${from}`,
		from: `J${from}.TN`,
		to: `J${to}.T`
	});
	const wires = Array.from({ length: jacks - 1 }, (_, i) => wired(i, i + 1));
	return benchOf({
		sockets: Array.from({ length: jacks }, (_, i) => ({ id: `J${i}`, kind: 'jack-ts-break' })),
		wires: isRing ? [...wires, wired(jacks - 1, 0)] : wires,
		plugs: ['ts', 'ts', 'shorting', 'trs', 'dummy'].map((kind, i) => ({ id: `p${i}`, kind })),
		cables: [{ id: 'c', m: 1, cores: [['p0.tip', 'p1.tip']] }],
		...more
	});
}

const benchWires = (wire: object) => [{ awg: 24, mm: 100, ...wire }] as unknown as Bench['wires'];

/** Moves plugs at random and tells the bench and the steps after each. */
function wander(
	start: Bench,
	moves: number,
	seed: number,
	tell: (live: LiveNets, bench: Bench, steps: number) => void
) {
	const below = randomNumbers(seed);
	const live = new LiveNets(start);
	let bench = start;
	for (let k = 0; k < moves; k++) {
		const plug = bench.plugs[below(bench.plugs.length)]!;
		const free = bench.sockets.filter((s) => !bench.plugs.some((p) => p.socket === s.id));
		const socket = below(4) ? (free[below(free.length + 1)]?.id ?? null) : null;
		bench = {
			...bench,
			plugs: bench.plugs.map((p) => (p.id === plug.id ? { ...p, socket, travel: 30.5 } : p))
		};
		const before = live.steps;
		live.move(plug.id, socket);
		tell(live, bench, live.steps - before);
	}
}

describe('nets that follow plugs in chains of break contacts', () => {
	const faults = [
		{ kind: 'break-stuck-closed', contact: 'J1.TN' },
		{ kind: 'break-stuck-open', contact: 'J4.TN' },
		{ kind: 'spring-bent', contact: 'J6.T' }
	];
	const branch = { id: 'x', from: 'J3.T', to: 'J8.T' };
	const short = { id: 'y', from: 'J0.S', to: 'J5.T' };
	it.each([
		['a chain of nine', chained(9)],
		['a chain of nine with faults', chained(9, false, { faults })],
		['a ring of nine', chained(9, true)],
		['a ring of two', chained(2, true)],
		['a ring of nine with faults', chained(9, true, { faults })],
		[
			'a chain with a branch',
			{ ...chained(9), wires: [...chained(9).wires, ...benchWires(branch)] }
		],
		[
			'a ring tied to a sleeve',
			{ ...chained(9, true), wires: [...chained(9, true).wires, ...benchWires(short)] }
		]
	])('they are the plain nets after each of 400 moves in %s', (_, start) => {
		let moves = 0;
		wander(start, 400, start.sockets.length, (live, bench) => {
			agree(live, bench);
			moves++;
		});
		expect(moves).toBe(400);
	});
	it.each([false, true])(
		'a move looks at few things, however long the chain is (a ring: %s)',
		(isRing) => {
			const mostOf = (jacks: number) => {
				let most = 0;
				wander(chained(jacks, isRing), 300, 5, (_, __, steps) => (most = Math.max(most, steps)));
				return most;
			};
			const [short, long] = [mostOf(20), mostOf(400)];
			expect(short).toBeGreaterThan(0);
			expect(long).toBeLessThan(2 * short);
		}
	);
});

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
