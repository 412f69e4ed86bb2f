/** The rules of contact: what each part, plug, wire, device and fault adds to the circuit, and why. */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS, type Bench, type PlugKind, type SocketKind } from './bench';
import { benchOf } from './bench.fixture';
import { circuit, nodesOfBench, type Conductor } from './circuit';
import { isJoined } from './nets';
import { SOCKETS, fits, matedPins, ohmsPerMetre, seenBySpring } from './parts';
import { resistance } from './solve';

/** One socket A with one plug p in it at that travel. */
const socketWith = (
	kind: SocketKind,
	plug?: PlugKind,
	travel = 30.5,
	more: Record<string, unknown> = {}
): Bench =>
	benchOf({
		sockets: [{ id: 'A', kind }],
		plugs: plug ? [{ id: 'p', kind: plug, socket: 'A', travel }] : [],
		...more
	});
const text = (c: Pick<Conductor, 'a' | 'b'>) => `${c.a} ${c.b}`;
const conductorsOf = (bench: Bench) => circuit(bench).conductors.map(text);
const find = (bench: Bench, a: string, b: string) =>
	circuit(bench).conductors.find((c) => text(c) === `${a} ${b}` || text(c) === `${b} ${a}`);
const gap = (bench: Bench, a: string, b: string) =>
	circuit(bench).gaps.find((g) => text(g) === `${a} ${b}` || text(g) === `${b} ${a}`);

describe('nodes', () => {
	it('are all contacts, conductors and terminals, and the panel where it is metal', () => {
		const bench = benchOf({
			panel: { metal: true },
			sockets: [{ id: 'A', kind: 'hybrid-5' }],
			plugs: [
				{ id: 'p', kind: 'trs' },
				{ id: 'd', kind: 'dummy' }
			],
			devices: [{ id: 'M', kind: 'mic' }]
		});
		expect(nodesOfBench(bench)).toEqual([
			...['A.1', 'A.2', 'A.3', 'A.T', 'A.S', 'A.G'],
			...['p.tip', 'p.ring', 'p.sleeve', 'M.hot', 'M.cold', 'M.shell', 'panel']
		]);
		expect(nodesOfBench({ ...bench, panel: { metal: false } })).not.toContain('panel');
	});
	it('of a socket are as many as its name says, the chassis lug not counted', () => {
		const counted = (kind: SocketKind) => SOCKETS[kind].contacts.filter((c) => c !== 'G').length;
		expect(SOCKET_KINDS.map(counted)).toEqual([5, 6, 9, 10, 3, 3, 2, 3, 3, 6, 5, 5]);
	});
});

describe('a phone plug against a spring', () => {
	/** Depth of the spring; then travel → what it touches (null: insulator), for each plug. */
	const at = (plug: PlugKind, spring: 'T' | 'R' | 'S') => (travel: number) =>
		seenBySpring(plug, travel, spring);
	it.each([
		['S', 3],
		['R', 18.5],
		['T', 26]
	] as const)('the nose lifts spring %s at %f mm and not before', (spring, depth) => {
		for (const plug of ['ts', 'trs', 'dummy', 'shorting'] as const) {
			expect(at(plug, spring)(depth - 0.001).lifted).toBe(false);
			expect(at(plug, spring)(depth).lifted).toBe(true);
			expect(at(plug, spring)(30.5).lifted).toBe(true);
			expect(at(plug, spring)(depth).touches).toBe(plug === 'dummy' ? null : 'tip');
		}
	});
	it.each([
		['trs', [0, 'tip'], [9, null], [10, 'ring'], [14, null], [15, 'sleeve']],
		['shorting', [0, 'tip'], [9, null], [10, 'ring'], [14, null], [15, 'sleeve']],
		['ts', [0, 'tip'], [9, null], [10.5, 'sleeve']],
		['dummy', [0, null]]
	] as [PlugKind, ...[number, string | null][]][])(
		'the sleeve spring reads the %s plug from nose to shoulder',
		(plug, ...segments) => {
			segments.forEach(([from, conductor], i) => {
				const to = segments[i + 1]?.[0] ?? 27.501;
				for (const s of [from, (from + to) / 2, to - 0.001])
					expect(at(plug, 'S')(3 + s), `${s} mm from the nose`).toEqual({
						lifted: true,
						touches: conductor
					});
			});
		}
	);
	it('a three-pin plug lifts no spring', () => {
		for (const travel of [0, 3, 18.5, 26, 30.5])
			expect(at('three-pin', 'S')(travel)).toEqual({ lifted: false, touches: null });
	});
	it('on the way in the tip rubs the ring spring, and bridges tip and ring springs', () => {
		const at22 = socketWith('jack-trs-break', 'trs', 22);
		expect(conductorsOf(at22).sort()).toEqual(['A.R p.tip', 'A.S p.sleeve', 'A.T A.TN']);
		const at26 = socketWith('jack-trs-break', 'trs', 26.5);
		expect(isJoined(at26, 'A.T', 'A.R')).toBe(true);
		expect(conductorsOf(at26)).not.toContain('A.T A.TN');
	});
});

describe('a three-pin plug', () => {
	it('makes pin 1 and the shell at 8 mm, the rest at 10 mm', () => {
		expect(matedPins(7.999)).toEqual([]);
		expect(matedPins(8)).toEqual(['1', 'shell']);
		expect(matedPins(9.999)).toEqual(['1', 'shell']);
		expect(matedPins(10)).toEqual(['1', '2', '3', 'shell']);
	});
	it('mates 1–1, 2–2, 3–3 and shell–G, in either sex of socket', () => {
		for (const kind of ['three-pin-female', 'three-pin-male', 'hybrid-5'] as const)
			expect(conductorsOf(socketWith(kind, 'three-pin')).sort()).toEqual([
				'A.1 p.1',
				'A.2 p.2',
				'A.3 p.3',
				'A.G p.shell'
			]);
	});
	it('opens 1N together with pin 1, and leaves the jack’s breaks closed', () => {
		expect(find(socketWith('hybrid-10', 'three-pin', 7.999), 'A.1', 'A.1N')).toBeDefined();
		const at8 = socketWith('hybrid-10', 'three-pin', 8);
		expect(find(at8, 'A.1', 'A.1N')).toBeUndefined();
		expect(gap(at8, 'A.1', 'A.1N')!.reason).toEqual({
			kind: 'lifted',
			socket: 'A',
			spring: '1',
			contact: '1N',
			plug: 'p'
		});
		for (const s of ['T', 'R', 'S']) expect(find(at8, `A.${s}`, `A.${s}N`)).toBeDefined();
	});
	it('a phone plug leaves 1N on 1', () => {
		for (const plug of ['ts', 'trs', 'dummy', 'shorting'] as const)
			expect(find(socketWith('hybrid-10', plug), 'A.1', 'A.1N')).toBeDefined();
	});
});

describe('break contacts and the changeover', () => {
	it('rest on their springs, and say so', () => {
		expect(find(socketWith('patch-jack'), 'A.T', 'A.TN')).toEqual({
			a: 'A.T',
			b: 'A.TN',
			ohms: 0.015,
			joins: true,
			reason: { kind: 'rest', socket: 'A', spring: 'T', contact: 'TN', stuck: false }
		});
	});
	it('open one by one as the plug comes to each spring', () => {
		const closed = (travel: number) =>
			['S', 'R', 'T'].filter((s) =>
				find(socketWith('hybrid-9', 'dummy', travel), `A.${s}`, `A.${s}N`)
			);
		expect(closed(2.999)).toEqual(['S', 'R', 'T']);
		expect(closed(3)).toEqual(['R', 'T']);
		expect(closed(18.499)).toEqual(['R', 'T']);
		expect(closed(18.5)).toEqual(['T']);
		expect(closed(26)).toEqual([]);
	});
	it('a changeover leaves NC for NO when the tip spring lifts, at 26 mm', () => {
		const rest = socketWith('jack-ts-changeover', 'ts', 25.999);
		expect(find(rest, 'A.C', 'A.NC')!.ohms).toBe(0.015);
		expect(find(rest, 'A.C', 'A.NO')).toBeUndefined();
		expect(gap(rest, 'A.C', 'A.NO')!.reason).toMatchObject({ kind: 'changeover', plug: null });
		for (const plug of ['ts', 'trs', 'dummy', 'shorting'] as const) {
			const moved = socketWith('jack-ts-changeover', plug, 26);
			expect(find(moved, 'A.C', 'A.NO')!.ohms).toBe(0.015);
			expect(find(moved, 'A.C', 'A.NC')).toBeUndefined();
			expect(gap(moved, 'A.C', 'A.NC')!.reason).toMatchObject({ kind: 'changeover', plug: 'p' });
		}
	});
	it('the changeover touches neither spring nor plug', () => {
		for (const travel of [0, 26, 30.5])
			for (const c of ['C', 'NC', 'NO'])
				for (const other of ['A.T', 'A.S', 'p.tip', 'p.sleeve'])
					expect(isJoined(socketWith('jack-ts-changeover', 'ts', travel), `A.${c}`, other)).toBe(
						false
					);
	});
});

describe('plugs', () => {
	it('a loose plug touches nothing, wherever its travel was', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-trs' }],
			plugs: [{ id: 'p', kind: 'trs', travel: 30.5 }]
		});
		expect(circuit(bench).conductors).toEqual([]);
	});
	it('a loose plug keeps what is wired to it', () => {
		const bench = benchOf({
			plugs: [{ id: 'p', kind: 'ts' }],
			devices: [{ id: 'M', kind: 'mic' }],
			wires: [{ id: 'w', from: 'p.tip', to: 'M.hot' }]
		});
		expect(isJoined(bench, 'p.tip', 'M.hot')).toBe(true);
	});
	it('a spring on a mated plug is 0.010 Ω', () => {
		const touch = find(socketWith('jack-trs', 'ts'), 'A.R', 'p.sleeve')!;
		expect(touch).toMatchObject({
			ohms: 0.01,
			joins: true,
			reason: { kind: 'touch', socket: 'A', spring: 'R', plug: 'p', part: 'sleeve' }
		});
		expect(find(socketWith('three-pin-male', 'three-pin'), 'A.2', 'p.2')!.ohms).toBe(0.01);
	});
	it('the ring of a trs plug in a jack without ring spring touches nothing', () => {
		const bench = socketWith('jack-ts', 'trs');
		expect(conductorsOf(bench).sort()).toEqual(['A.S p.sleeve', 'A.T p.tip']);
	});
	it('a shorting plug joins its three conductors, loose or not', () => {
		for (const bench of [
			benchOf({ plugs: [{ id: 'p', kind: 'shorting' }] }),
			socketWith('jack-trs', 'shorting')
		]) {
			expect(isJoined(bench, 'p.tip', 'p.ring')).toBe(true);
			expect(isJoined(bench, 'p.ring', 'p.sleeve')).toBe(true);
			expect(resistance(bench, 'p.tip', 'p.ring')).toBeCloseTo(0.01, 9);
		}
	});
	it('which fit where: phone plugs into anything with springs, three-pin into anything with pins', () => {
		const holes = (plug: PlugKind) => SOCKET_KINDS.filter((s) => fits(plug, s));
		const hybrids = ['hybrid-5', 'hybrid-6', 'hybrid-9', 'hybrid-10'];
		const jacks = SOCKET_KINDS.filter((k) => /jack/.test(k));
		for (const plug of ['ts', 'trs', 'dummy', 'shorting'] as const)
			expect(holes(plug)).toEqual([...hybrids, ...jacks]);
		expect(holes('three-pin')).toEqual([...hybrids, 'three-pin-female', 'three-pin-male']);
	});
});

describe('wires, cables, panel', () => {
	const two = { sockets: [{ id: 'A', kind: 'hybrid-6' }] };
	it('a wire has the ohms of its gauge and length', () => {
		// IEC 60028 copper (from memory): AWG 26 is 0.1339 Ω/m to four places.
		expect(ohmsPerMetre(26)).toBeCloseTo(0.1339, 4);
		const bench = benchOf({
			...two,
			wires: [{ id: 'w', from: 'A.T', to: 'A.2', awg: 26, mm: 500 }]
		});
		expect(find(bench, 'A.T', 'A.2')!.ohms).toBeCloseTo(0.06695, 4);
	});
	it('each core of a cable is a wire of the whole length', () => {
		const cores = [
			['A.T', 'A.2'],
			['A.R', 'A.3']
		];
		const bench = benchOf({ ...two, cables: [{ id: 'c', m: 12, awg: 24, cores }] });
		expect(circuit(bench).conductors.map((c) => c.reason)).toEqual([
			{ kind: 'core', cable: 'c', core: 0 },
			{ kind: 'core', cable: 'c', core: 1 }
		]);
		for (const c of circuit(bench).conductors) expect(c.ohms).toBeCloseTo(12 * 0.08421, 3);
	});
	it('a metal panel takes every chassis lug and every metal bush', () => {
		const sockets = [
			{ id: 'A', kind: 'hybrid-6' },
			{ id: 'B', kind: 'jack-ts', bush: 'metal' },
			{ id: 'C', kind: 'jack-ts' },
			{ id: 'D', kind: 'three-pin-male' }
		];
		const metal = benchOf({ panel: { metal: true }, sockets });
		expect(circuit(metal).conductors.map((c) => [text(c), c.ohms, c.reason.kind])).toEqual([
			['A.G panel', 0.01, 'chassis'],
			['B.S panel', 0.01, 'bush'],
			['D.G panel', 0.01, 'chassis']
		]);
		expect(circuit(benchOf({ sockets })).conductors).toEqual([]);
	});
});

describe('devices', () => {
	const inside = (kind: string, phantom = false) =>
		circuit(benchOf({ devices: [{ id: 'D', kind, phantom }] })).conductors.map((c) => [
			text(c).replaceAll('D.', ''),
			c.ohms,
			c.joins,
			c.emf?.volts ?? null
		]);
	const bond = ['shield chassis', 0.01, true, null];
	it.each([
		['mic', [['hot cold', 200, false, 1]]],
		['mic-input', [['hot cold', 3000, false, null], bond]],
		['line-out', [['hot shield', 50, false, 0.5], ['cold shield', 50, false, -0.5], bond]],
		['line-out-unbalanced', [['hot shield', 100, false, 1], bond]],
		['line-in', [['hot shield', 10_000, false, null], ['cold shield', 10_000, false, null], bond]],
		['line-in-unbalanced', [['hot shield', 10_000, false, null], bond]]
	])('%s has inside what it should', (kind, expected) => {
		expect(inside(kind)).toEqual(expected);
	});
	it('phantom power is 48 V behind 6810 Ω on each leg', () => {
		expect(inside('mic-input', true).slice(2)).toEqual([
			['hot shield', 6810, false, 48],
			['cold shield', 6810, false, 48]
		]);
	});
});
