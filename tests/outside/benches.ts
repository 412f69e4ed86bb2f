/**
 * Random benches for the checks from outside: all kinds of sockets, plugs at any travel, wires
 * between any two nodes, cables, devices and faults, always as a file may have them. A recipe of
 * plain numbers is drawn and read as a bench, so that fast-check can shrink what it finds. Ids that
 * differ in case only are there on purpose.
 */
import fc from 'fast-check';
import {
	DEVICE_KINDS,
	FAULT_KINDS,
	PLUG_KINDS,
	SOCKET_KINDS,
	type Bench,
	type Cable,
	type Device,
	type Fault,
	type Plug,
	type Socket,
	type Wire
} from '../../src/lib/engine/bench';
import { circuit, nodesOfBench } from '../../src/lib/engine/circuit';
import { netsOf } from '../../src/lib/engine/nets';
import { wireNames } from '../../src/lib/engine/parse';
import { DEVICES, SOCKETS, breakContactsOf, fits } from '../../src/lib/engine/parts';
import { resistance } from '../../src/lib/engine/solve';

/** A thousand runs from a stated seed; SEED in the environment draws others. */
export const RUNS = { numRuns: 1000, seed: Number(process.env['SEED'] ?? 20260101) } as const;

const AT_EVENTS = [
	0, 2.5, 3, 8, 9.5, 10, 12, 12.5, 13, 13.5, 17, 18, 18.5, 22, 26, 26.5, 27.5, 28.5, 29
];
const travel = fc.oneof(
	{ weight: 3, arbitrary: fc.constant(30.5) },
	{ weight: 2, arbitrary: fc.constantFrom(...AT_EVENTS) },
	{ weight: 1, arbitrary: fc.integer({ min: 0, max: 3050 }).map((n) => n / 100) }
);
const ohms = fc.oneof(
	fc.constantFrom(0, 1e9),
	fc
		.tuple(fc.integer({ min: -3, max: 8 }), fc.integer({ min: 100, max: 999 }))
		.map(([power, figures]) => (figures / 100) * 10 ** power)
);
const awg = fc.integer({ min: 10, max: 40 });
const mm = fc.oneof(fc.integer({ min: 1, max: 2000 }), fc.constantFrom(0.5, 100_000));
const ends = { from: fc.nat(999), gap: fc.nat(999) };
const text = fc.string({ unit: 'binary', maxLength: 8 });

const recipe = fc.record({
	title: text,
	metal: fc.boolean(),
	sockets: fc.array(
		fc.record({ kind: fc.constantFrom(...SOCKET_KINDS), metal: fc.boolean(), label: text }),
		{ maxLength: 4 }
	),
	plugs: fc.array(fc.record({ kind: fc.constantFrom(...PLUG_KINDS), place: fc.nat(999), travel }), {
		maxLength: 4
	}),
	devices: fc.array(
		fc.record({ kind: fc.constantFrom(...DEVICE_KINDS, 'mic-input'), phantom: fc.boolean() }),
		{
			maxLength: 3
		}
	),
	wires: fc.array(fc.record({ ...ends, awg, mm }), { maxLength: 12 }),
	cables: fc.array(
		fc.record({
			m: fc.oneof(fc.integer({ min: 1, max: 300 }), fc.constantFrom(0.001, 10_000)),
			awg,
			cores: fc.array(fc.record(ends), { maxLength: 4 })
		}),
		{ maxLength: 2 }
	),
	faults: fc.array(
		fc.record({ kind: fc.constantFrom(...FAULT_KINDS), x: fc.nat(999), y: fc.nat(999), ohms }),
		{ maxLength: 4 }
	)
});
type Recipe = typeof recipe extends fc.Arbitrary<infer T> ? T : never;

const pick = <T>(list: readonly T[], n: number): T => list[n % list.length]!;
/** Two different entries of a list of two or more. */
const two = <T>(list: readonly T[], from: number, gap: number): [T, T] => {
	const i = from % list.length;
	return [list[i]!, pick(list, i + 1 + (gap % (list.length - 1)))];
};

function plugsOf(drawn: Recipe['plugs'], sockets: readonly Socket[]): Plug[] {
	const free = new Set(sockets);
	return drawn.map(({ kind, place, travel: x }, i) => {
		const holes = [...free].filter((s) => fits(kind, s.kind));
		// One draw in so many lies loose.
		const hole = holes[place % (holes.length + 1)] ?? null;
		if (hole) free.delete(hole);
		return { id: pick(['p', 'P', 'q', 'Q'], i), kind, socket: hole?.id ?? null, travel: x };
	});
}

function faultOf(drawn: Recipe['faults'][number], bench: Bench): Fault | null {
	const { kind, x, y } = drawn;
	const wires = wireNames(bench);
	const nodes = nodesOfBench(bench);
	const contacts = (of: (s: Socket) => readonly string[]) =>
		bench.sockets.flatMap((s) => of(s).map((c) => `${s.id}.${c}`));
	switch (kind) {
		case 'open':
			return wires.length ? { kind, wire: pick(wires, x) } : null;
		case 'resistive':
			return wires.length ? { kind, wire: pick(wires, x), ohms: drawn.ohms } : null;
		case 'bridge':
			return nodes.length > 1 ? { kind, between: two(nodes, x, y) } : null;
		case 'swap': {
			if (bench.sockets.length === 0) return null;
			const socket = pick(bench.sockets, x);
			const own = SOCKETS[socket.kind].contacts.map((c) => `${socket.id}.${c}`);
			return { kind, contacts: two(own, y, Math.floor(y / own.length)) };
		}
		case 'spring-bent': {
			const springs = contacts((s) => SOCKETS[s.kind].springs);
			return springs.length ? { kind, contact: pick(springs, x) } : null;
		}
		default: {
			const breaks = contacts((s) => breakContactsOf(s.kind));
			if (breaks.length === 0) return null;
			const contact = pick(breaks, x);
			return kind === 'break-dirty' ? { kind, contact, ohms: drawn.ohms } : { kind, contact };
		}
	}
}

function benchFrom(drawn: Recipe): Bench {
	const sockets = drawn.sockets.map(({ kind, metal, label }, i): Socket => {
		const bush = metal && SOCKETS[kind].hasBush ? 'metal' : 'insulated';
		return { id: pick(['A', 'a', 'B', 'b'], i), kind, bush, label };
	});
	const devices = drawn.devices.map(({ kind, phantom }, i): Device => {
		const id = pick(['D', 'd', 'E'], i);
		return { id, kind, phantom: phantom && DEVICES[kind].mayHavePhantom };
	});
	const plugs = plugsOf(drawn.plugs, sockets);
	const bare: Bench = {
		title: drawn.title,
		panel: { metal: drawn.metal },
		...{ sockets, plugs, devices, wires: [], cables: [], faults: [] }
	};
	const nodes = nodesOfBench(bare);
	if (nodes.length < 2) return bare;
	const wires = drawn.wires.map((w, i): Wire => {
		const [from, to] = two(nodes, w.from, w.gap);
		return { id: `w${i}`, from, to, awg: w.awg, mm: w.mm };
	});
	const cables = drawn.cables.map((c, i): Cable => {
		const cores = c.cores.map((core) => two(nodes, core.from, core.gap));
		return { id: pick(['c', 'C'], i), m: c.m, awg: c.awg, cores };
	});
	const wired = { ...bare, wires, cables };
	return { ...wired, faults: drawn.faults.flatMap((f) => faultOf(f, wired) ?? []) };
}

/** Any bench that a file may hold, of modest size. */
export const benches = (): fc.Arbitrary<Bench> => recipe.map(benchFrom);

/** A bench and some of its nodes (repeats may occur); benches without nodes are left out. */
export const benchesWithNodes = (count: number): fc.Arbitrary<{ bench: Bench; at: string[] }> =>
	fc
		.tuple(benches(), fc.array(fc.nat(9999), { minLength: count, maxLength: count }))
		.filter(([bench]) => nodesOfBench(bench).length > 0)
		.map(([bench, picks]) => {
			const nodes = nodesOfBench(bench);
			return { bench, at: picks.map((n) => pick(nodes, n)) };
		});

/** A bench with an open contact or wire, and a node from either side of one of its gaps. */
export const benchesWithGap = (): fc.Arbitrary<{ bench: Bench; at: [string, string] }> =>
	fc
		.tuple(benches(), fc.nat(99), fc.nat(99), fc.nat(99))
		.filter(([bench]) => circuit(bench).gaps.length > 0)
		.map(([bench, g, i, j]) => {
			const gap = pick(circuit(bench).gaps, g);
			const { list, indexOf } = netsOf(bench);
			const side = (node: string, n: number) => pick(list[indexOf.get(node)!]!, n);
			return { bench, at: [side(gap.a, i), side(gap.b, j)] };
		});

/** A bench with phantom power on it, and some nodes that something ties to one live input. */
export const benchesLive = (count: number): fc.Arbitrary<{ bench: Bench; at: string[] }> =>
	fc
		.tuple(benches(), fc.array(fc.nat(9999), { minLength: count, maxLength: count }))
		.filter(([bench]) => bench.devices.some((d) => d.phantom))
		.map(([bench, picks]) => {
			const live = bench.devices.find((d) => d.phantom)!;
			const tied = nodesOfBench(bench).filter(
				(node) => resistance(bench, `${live.id}.hot`, node) < Infinity
			);
			return { bench, at: picks.map((n) => pick(tied, n)) };
		});
