/**
 * What a textbook says about points that are electrically common, put to nets, meter and solver.
 *
 * Sources (BOOK): T. R. Kuphaldt, Lessons in Electric Circuits, vol. I DC: ch. 2 for electrically
 * common points (C1, C2), ch. 5 for a parallel circuit (C3), ch. 7 review for re-routed wire (C4).
 * That commonality is an equivalence is mathematics (CALC, C5). C6 (two netlists, the same voltages)
 * stands with the bridges K8 and K11.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../../src/lib/engine/bench';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { circuit } from '../../src/lib/engine/circuit';
import { hears } from '../../src/lib/engine/hears';
import { pairsOf } from '../../src/lib/engine/matrix';
import { measuredVolts } from '../../src/lib/engine/meter';
import { isJoined, netsOf } from '../../src/lib/engine/nets';
import { resistance } from '../../src/lib/engine/solve';
import { benches, RUNS } from './benches';
import { R, volts } from './networks';
import { rounds } from './printed';

/** Points 1–6 as the contacts of two three-pin sockets. */
const POINT = ['A.1', 'A.2', 'A.3', 'B.1', 'B.2', 'B.3'];
const wire = (id: string, from: number, to: number) => ({
	id,
	from: POINT[from - 1],
	to: POINT[to - 1]
});

describe('C1: points 1–2–3 joined by wire, 4–5–6 joined, a battery from 1 to 6, a load from 3 to 4', () => {
	const bench = benchOf({
		sockets: [
			{ id: 'A', kind: 'three-pin-female' },
			{ id: 'B', kind: 'three-pin-male' }
		],
		devices: [
			{ id: 'SOURCE', kind: 'line-out-unbalanced' },
			{ id: 'LOAD', kind: 'line-in-unbalanced' }
		],
		wires: [
			...[wire('a', 1, 2), wire('b', 2, 3), wire('c', 4, 5), wire('d', 5, 6)],
			{ id: 'e', from: 'SOURCE.hot', to: 'A.1' },
			{ id: 'f', from: 'SOURCE.shield', to: 'B.3' },
			{ id: 'g', from: 'LOAD.hot', to: 'A.3' },
			{ id: 'h', from: 'LOAD.shield', to: 'B.1' }
		]
	});
	const common = (i: number, j: number) => i <= 3 === j <= 3;
	const pairs = pairsOf([...'123456']).map(([i, j]) => [Number(i), Number(j)] as const);

	it.each(pairs)('points %i and %i', (i, j) => {
		expect(isJoined(bench, POINT[i - 1]!, POINT[j - 1]!)).toBe(common(i, j));
		// The book's numbers: 10 V, 5 Ω, and wires that drop nothing that is printed.
		const thin = 1e-9;
		const net = [
			...[R('1', '6', thin, 10), R('1', '2', thin), R('2', '3', thin), R('3', '4', 5)],
			...[R('4', '5', thin), R('5', '6', thin)]
		];
		rounds('V', volts(net, String(i), String(j)), common(i, j) ? '0.0000' : '10.0000');
		rounds('A in the load', volts(net, '3', '4') / 5, '2.0000');
	});
	it('makes two sets of points, and fifteen pairs of which six are common', () => {
		expect(pairs).toHaveLength(15);
		expect(pairs.filter(([i, j]) => isJoined(bench, POINT[i - 1]!, POINT[j - 1]!))).toHaveLength(6);
		const sets = netsOf(bench).list.filter((net) => net.some((n) => POINT.includes(n)));
		expect(sets.map((net) => net.filter((n) => POINT.includes(n)))).toEqual([
			POINT.slice(0, 3),
			POINT.slice(3)
		]);
	});
});

describe('C2: volts between points that should be common mean an open between them', () => {
	const cores = [
		['DESK.hot', 'X.2'],
		['DESK.cold', 'X.3'],
		['DESK.shield', 'X.1']
	];
	const line = (faults: unknown[]) =>
		benchOf({
			sockets: [{ id: 'X', kind: 'three-pin-female' }],
			devices: [
				{ id: 'DESK', kind: 'mic-input', phantom: true },
				{ id: 'FAR', kind: 'line-in' }
			],
			cables: [{ id: 'c', m: 10, cores }],
			wires: [
				{ id: 'h', from: 'X.2', to: 'FAR.hot' },
				{ id: 'k', from: 'X.3', to: 'FAR.cold' },
				{ id: 's', from: 'X.1', to: 'FAR.shield' }
			],
			faults
		});
	it.each([0, 1, 2])('core %i', (core) => {
		const [near, far] = cores[core] as [string, string];
		expect(Math.abs(measuredVolts(line([]), near, far))).toBeLessThan(0.05);
		expect(isJoined(line([]), near, far)).toBe(true);
		const cut = line([{ kind: 'open', wire: `c:${core}` }]);
		expect(Math.abs(measuredVolts(cut, near, far))).toBeGreaterThan(1);
		expect(isJoined(cut, near, far)).toBe(false);
	});
});

it('C3: a parallel circuit has exactly two sets: points 1–4 and 5–8', () => {
	const bench = benchOf({
		sockets: ['P', 'Q', 'R', 'S'].map((id) => ({ id, kind: 'jack-ts' })),
		devices: [
			{ id: 'D', kind: 'line-out-unbalanced' },
			...['E', 'F', 'G'].map((id) => ({ id, kind: 'line-in-unbalanced' }))
		],
		wires: [
			...['P', 'Q', 'R'].flatMap((id, i) => [
				{ id: `t${i}`, from: `${id}.T`, to: `${'QRS'[i]}.T` },
				{ id: `s${i}`, from: `${id}.S`, to: `${'QRS'[i]}.S` }
			]),
			...['D', 'E', 'F', 'G'].flatMap((id, i) => [
				{ id: `h${i}`, from: `${id}.hot`, to: `${'PQRS'[i]}.T` },
				{ id: `g${i}`, from: `${id}.shield`, to: `${'PQRS'[i]}.S` }
			])
		]
	});
	expect(netsOf(bench).list).toHaveLength(2);
	const points = netsOf(bench).list.map((net) => net.filter((n) => /^[PQRS]/.test(n)));
	expect(points).toContainEqual(['P.T', 'Q.T', 'R.T', 'S.T']);
	expect(points).toContainEqual(['P.S', 'Q.S', 'R.S', 'S.S']);
});

describe('C4: stretching, moving or re-routing wire does not change the circuit', () => {
	const reversed = (bench: Bench): Bench => ({
		...bench,
		sockets: [...bench.sockets].reverse(),
		wires: [...bench.wires].reverse().map((w) => ({ ...w, from: w.to, to: w.from })),
		plugs: [...bench.plugs].reverse(),
		devices: [...bench.devices].reverse()
	});
	it('the order of the parts and the direction of a wire mean nothing', () => {
		fc.assert(
			fc.property(benches(), fc.nat(), fc.nat(), (bench, i, j) => {
				const other = reversed(bench);
				expect(netsOf(other).list).toEqual(netsOf(bench).list);
				const { nodes } = circuit(bench);
				if (nodes.length === 0) return;
				const [a, b] = [nodes[i % nodes.length]!, nodes[j % nodes.length]!];
				const ohms = resistance(bench, a, b);
				if (ohms === Infinity) expect(resistance(other, a, b)).toBe(Infinity);
				else expect(Math.abs(resistance(other, a, b) - ohms)).toBeLessThanOrEqual(1e-9 * ohms);
			}),
			{ ...RUNS, numRuns: 300 }
		);
	});
	it('a longer wire, or one laid over a spare lug, makes the same nets and is heard the same', () => {
		const cable = (more: object[], mm: number) =>
			benchOf({
				sockets: [{ id: 'A', kind: 'hybrid-6' }],
				devices: [
					{ id: 'OUT', kind: 'line-out' },
					{ id: 'IN', kind: 'line-in' }
				],
				wires: [
					{ id: 'h', from: 'OUT.hot', to: 'IN.hot', mm },
					{ id: 's', from: 'OUT.shield', to: 'IN.shield', mm },
					...more
				]
			});
		const straight = cable([{ id: 'c', from: 'OUT.cold', to: 'IN.cold' }], 40);
		const routed = cable(
			[
				{ id: 'c1', from: 'OUT.cold', to: 'A.3' },
				{ id: 'c2', from: 'A.3', to: 'IN.cold' }
			],
			4000
		);
		const sets = (bench: Bench) =>
			new Set(netsOf(bench).list.map((net) => net.filter((n) => !n.startsWith('A.')).join(' ')));
		expect(sets(routed)).toEqual(sets(straight));
		const heard = (bench: Bench) => hears(bench)['IN']!['OUT']!;
		expect(heard(routed).polarity).toBe(heard(straight).polarity);
		expect(heard(routed).db).toBeCloseTo(heard(straight).db, 3);
	});
});

it('C5: common is an equivalence: the nets are the reflexive, symmetric, transitive closure', () => {
	fc.assert(
		fc.property(benches(), (bench) => {
			const { nodes, conductors } = circuit(bench);
			const at = new Map(nodes.map((n, i) => [n, i]));
			// Warshall, 1962: reach[i] holds what i is joined to, by way of the nodes seen so far.
			const reach = nodes.map((_, i) => new Set([i]));
			for (const c of conductors)
				if (c.joins) {
					reach[at.get(c.a)!]!.add(at.get(c.b)!);
					reach[at.get(c.b)!]!.add(at.get(c.a)!);
				}
			for (const [k, via] of reach.entries())
				for (const from of reach) if (from.has(k)) for (const to of via) from.add(to);
			for (const [i, a] of nodes.entries())
				for (const [j, b] of nodes.entries()) expect(isJoined(bench, a, b)).toBe(reach[i]!.has(j));
		}),
		{ ...RUNS, numRuns: 100 }
	);
});
