/**
 * What must be true of every bench, whatever is on it. Each claim is tried on 1,000 random benches.
 *
 * Sources: resistance between two nodes is a metric on the nodes (resistance distance, J. Math. Chem. 12, 1993, from memory);
 * a new conductor never raises a resistance (Rayleigh's monotonicity law, 1899, from memory). The rest
 * follows from what a net, a path and a plug are.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bench, Fault, NodeName, Wire } from '../../src/lib/engine/bench';
import { splitNode } from '../../src/lib/engine/bench';
import { circuit, nodesOfBench, type Conductor, type Gap } from '../../src/lib/engine/circuit';
import {
	idsOf,
	plugIn,
	statesOf,
	withBarePlug,
	withEmpty,
	withPlug
} from '../../src/lib/engine/edit';
import { hears } from '../../src/lib/engine/hears';
import { pairsOf } from '../../src/lib/engine/matrix';
import { measuredVolts } from '../../src/lib/engine/meter';
import { byCodePoint, isJoined, netsOf } from '../../src/lib/engine/nets';
import { makeBench, parseBench } from '../../src/lib/engine/parse';
import { pathBetween } from '../../src/lib/engine/path';
import { resistance, voltage } from '../../src/lib/engine/solve';
import { RUNS, benches, benchesLive, benchesWithGap, benchesWithNodes } from './benches';

/** Rounding of a solve: answers carry twelve figures, sums of a few of them ten. */
const SLACK = 1e-9;
const atMost = (less: number, more: number) =>
	more === Infinity || less <= more * (1 + SLACK) + 1e-12;
const alike = (x: number, y: number) => x === y || (atMost(x, y) && atMost(y, x));

const withWire = (bench: Bench, from: NodeName, to: NodeName, mm = 40): Bench => {
	const wire: Wire = { id: 'new', from, to, awg: 26, mm };
	return { ...bench, wires: [...bench.wires, wire] };
};
/** A wire that really lands where it says, whatever contacts are exchanged. */
const withBridge = (bench: Bench, a: NodeName, b: NodeName): Bench => ({
	...bench,
	faults: [...bench.faults, { kind: 'bridge', between: [a, b] }]
});
const assert = <T>(arbitrary: fc.Arbitrary<T>, claim: (value: T) => void) =>
	fc.assert(
		fc.property(arbitrary, (value) => {
			claim(value);
		}),
		RUNS
	);

describe('files', () => {
	it('parse of make is the identity', () => {
		assert(benches(), (bench) => {
			expect(parseBench(makeBench(bench))).toEqual({ ok: true, value: bench });
		});
	});
	it('make of parse is stable: the same text comes out again', () => {
		assert(benches(), (bench) => {
			const once = parseBench(makeBench(bench));
			if (!once.ok) throw new Error(once.problem.message);
			expect(makeBench(once.value)).toBe(makeBench(bench));
		});
	});
	it('any JSON value at all is answered, never thrown at', () => {
		assert(fc.json(), (text) => {
			expect(parseBench(text).ok).toBe(false);
		});
		assert(fc.string({ unit: 'binary' }), (text) => {
			expect(parseBench(text).ok).toBe(false);
		});
	});
	it('a bench with one value replaced is accepted or refused at a path, never thrown at', () => {
		const any = fc.oneof(fc.jsonValue(), fc.constantFrom(-1, 1e10, '', 'A.T', null, [], {}));
		assert(fc.tuple(benches(), fc.nat(), any), ([bench, n, value]) => {
			const file = JSON.parse(makeBench(bench)) as unknown;
			const places: [Record<string, unknown>, string][] = [];
			const walk = (x: unknown) => {
				if (typeof x !== 'object' || x === null) return;
				for (const key of Object.keys(x)) {
					places.push([x as Record<string, unknown>, key]);
					walk((x as Record<string, unknown>)[key]);
				}
			};
			walk(file);
			const [owner, key] = places[n % places.length]!;
			owner[key] = value;
			const parsed = parseBench(JSON.stringify(file));
			if (parsed.ok) {
				expect(parseBench(makeBench(parsed.value))).toEqual(parsed);
				expect(() => netsOf(parsed.value)).not.toThrow();
			} else {
				expect(parsed.problem.path).toMatch(/^\$(\.\w+|\[\d+\]|\[".*"\])*$/s);
				expect(parsed.problem.message).not.toMatch(/\n|^$/);
			}
		});
	});
});

describe('nets', () => {
	it('hold every node once, in order', () => {
		assert(benches(), (bench) => {
			const { list, indexOf } = netsOf(bench);
			expect(list.flat().sort(byCodePoint)).toEqual([...nodesOfBench(bench)].sort(byCodePoint));
			for (const [i, net] of list.entries()) {
				expect([...net].sort(byCodePoint)).toEqual(net);
				for (const node of net) expect(indexOf.get(node)).toBe(i);
			}
			const firsts = list.map((net) => net[0]!);
			expect([...firsts].sort(byCodePoint)).toEqual(firsts);
		});
	});
	it('a new wire makes one net of two, or changes nothing', () => {
		assert(benchesWithNodes(2), ({ bench, at: [a, b] }) => {
			if (a === b) return;
			const before = netsOf(bench).list.length;
			const fewer = before - netsOf(withWire(bench, a!, b!)).list.length;
			expect([0, 1]).toContain(fewer);
			const bridged = before - netsOf(withBridge(bench, a!, b!)).list.length;
			expect(bridged).toBe(isJoined(bench, a!, b!) ? 0 : 1);
		});
	});
	it('a dirty break and a resistive wire leave them as they are', () => {
		assert(benches(), (bench) => {
			const clean = bench.faults.filter((f) => f.kind !== 'resistive' && f.kind !== 'break-dirty');
			expect(netsOf({ ...bench, faults: clean }).list).toEqual(netsOf(bench).list);
		});
	});
	it('an open wire never joins, and never makes fewer nets', () => {
		assert(benches(), (bench) => {
			if (bench.wires.length === 0) return;
			const cut: Fault = { kind: 'open', wire: bench.wires[0]!.id };
			const broken = netsOf({ ...bench, faults: [...bench.faults, cut] }).list.length;
			expect(broken).toBeGreaterThanOrEqual(netsOf(bench).list.length);
		});
	});
});

describe('names', () => {
	const odd = [
		'__proto__',
		'constructor',
		'prototype',
		'toString',
		'hasOwnProperty',
		'0',
		'1',
		'-'
	];
	const id = fc.oneof(fc.constantFrom(...odd), fc.stringMatching(/^[A-Za-z0-9_-]{1,32}$/));
	const reserved = ['panel', 'none', 'ts', 'trs', 'dummy', 'shorting', 'three-pin'];
	const ids = fc
		.uniqueArray(id, { minLength: 32, maxLength: 32 })
		.filter((list) => !list.some((word) => reserved.includes(word)));

	function renamed(bench: Bench, name: (old: string) => string): Bench {
		const node = (n: NodeName): NodeName => {
			const [owner, contact] = splitNode(n);
			return contact ? `${name(owner)}.${contact}` : n;
		};
		const wire = (w: string) => {
			const [cable, core] = w.split(':');
			return core === undefined ? name(w) : `${name(cable!)}:${core}`;
		};
		const each = <T extends { id: string }>(list: readonly T[]) =>
			list.map((x) => ({ ...x, id: name(x.id) }));
		const fault = (f: Fault): Fault => {
			if ('wire' in f) return { ...f, wire: wire(f.wire) };
			if (f.kind === 'bridge') return { ...f, between: [node(f.between[0]), node(f.between[1])] };
			if (f.kind === 'swap') return { ...f, contacts: [node(f.contacts[0]), node(f.contacts[1])] };
			return { ...f, contact: node(f.contact) };
		};
		return {
			...bench,
			sockets: each(bench.sockets),
			devices: each(bench.devices),
			plugs: each(bench.plugs).map((p) => ({ ...p, socket: p.socket && name(p.socket) })),
			wires: each(bench.wires).map((w) => ({ ...w, from: node(w.from), to: node(w.to) })),
			cables: each(bench.cables).map((c) => ({
				...c,
				cores: c.cores.map(([a, b]) => [node(a), node(b)] as const)
			})),
			faults: bench.faults.map(fault)
		};
	}

	it('renaming ids renames the answer, and changes nothing else', () => {
		assert(fc.tuple(benchesWithNodes(2), ids), ([{ bench, at }, fresh]) => {
			const map = new Map(idsOf(bench).map((old, i) => [old, fresh[i]!]));
			const name = (old: string) => map.get(old) ?? old;
			const node = (n: string) => {
				const [owner, contact] = splitNode(n);
				return contact ? `${name(owner)}.${contact}` : n;
			};
			const other = renamed(bench, name);
			expect(parseBench(makeBench(other))).toEqual({ ok: true, value: other });
			const expected = netsOf(bench).list.map((net) => net.map(node).sort(byCodePoint));
			expected.sort((x, y) => byCodePoint(x[0]!, y[0]!));
			expect(netsOf(other).list).toEqual(expected);
			const [a, b] = at as [string, string];
			expect(alike(resistance(other, node(a), node(b)), resistance(bench, a, b))).toBe(true);
			expect(voltage(other, node(a), node(b))).toBe(voltage(bench, a, b));
			const heard = (x: Bench, as: (id: string) => string) =>
				Object.entries(hears(x)).map(([input, sources]) => [
					as(input),
					Object.entries(sources)
						.map(([source, level]) => [as(source), level] as const)
						.sort((p, q) => byCodePoint(p[0], q[0]))
				]);
			const sorted = (list: unknown[][]) =>
				list.sort((p, q) => byCodePoint(p[0] as string, q[0] as string));
			expect(sorted(heard(other, (x) => x))).toEqual(sorted(heard(bench, name)));
		});
	});
});

describe('resistance', () => {
	it('is a metric: zero to itself only, the same both ways, no detour shorter', () => {
		assert(benchesWithNodes(3), ({ bench, at }) => {
			const [a, b, c] = at as [string, string, string];
			const r = (x: string, y: string) => resistance(bench, x, y);
			expect(r(a, a)).toBe(0);
			if (a !== b) expect(r(a, b)).toBeGreaterThan(0);
			expect(alike(r(a, b), r(b, a))).toBe(true);
			expect(atMost(r(a, c), r(a, b) + r(b, c))).toBe(true);
		});
	});
	it('never rises when a conductor is added, anywhere', () => {
		assert(benchesWithNodes(4), ({ bench, at }) => {
			const [a, b, from, to] = at as [string, string, string, string];
			if (from === to) return;
			expect(atMost(resistance(withWire(bench, from, to), a, b), resistance(bench, a, b))).toBe(
				true
			);
			const bridged = resistance(withBridge(bench, a, b), a, b);
			if (a !== b) expect(atMost(bridged, 0.01)).toBe(true);
		});
	});
	it('never falls when ohms are added to a wire', () => {
		assert(benchesWithNodes(2), ({ bench, at: [a, b] }) => {
			if (bench.wires.length === 0) return;
			const fault: Fault = { kind: 'resistive', wire: bench.wires[0]!.id, ohms: 10 };
			const worse = { ...bench, faults: [...bench.faults, fault] };
			expect(atMost(resistance(bench, a!, b!), resistance(worse, a!, b!))).toBe(true);
		});
	});
	it('is finite on one net, and at most that of the path', () => {
		assert(benchesWithNodes(2), ({ bench, at }) => {
			const [a, b] = at as [string, string];
			const ohms = resistance(bench, a, b);
			if (isJoined(bench, a, b)) expect(ohms).toBeLessThan(Infinity);
			const path = pathBetween(bench, a, b);
			if (path.kind === 'joined') expect(atMost(ohms, path.ohms)).toBe(true);
		});
	});
	it('is infinite exactly where volts are untied', () => {
		assert(benchesWithNodes(2), ({ bench, at: [a, b] }) => {
			const untied = voltage(bench, a!, b!) === null;
			expect(resistance(bench, a!, b!) === Infinity).toBe(untied);
		});
	});
});

describe('voltage', () => {
	it('turns its sign with the probes, and adds up round a triangle', () => {
		assert(benchesLive(3), ({ bench, at }) => {
			const [a, b, c] = at as [string, string, string];
			const ab = voltage(bench, a, b)!;
			expect(voltage(bench, b, a)! + ab).toBeCloseTo(0, 6);
			expect(voltage(bench, a, c)).toBeCloseTo(ab + voltage(bench, b, c)!, 6);
		});
	});
	it('never passes the supplies in series, and is zero with them off', () => {
		assert(benchesLive(2), ({ bench, at: [a, b] }) => {
			const live = bench.devices.filter((d) => d.phantom).length;
			expect(Math.abs(voltage(bench, a!, b!)!)).toBeLessThanOrEqual(48 * live + 1e-6);
			const off = { ...bench, devices: bench.devices.map((d) => ({ ...d, phantom: false })) };
			expect(voltage(off, a!, b!) ?? 0).toBe(0);
		});
	});
	it('on the meter is a little less than without it, and never more', () => {
		assert(benchesLive(2), ({ bench, at: [a, b] }) => {
			const bare = voltage(bench, a!, b!)!;
			const shown = measuredVolts(bench, a!, b!);
			// 10 MΩ across the source resistance of the pair (Thevenin).
			const ohms = resistance(bench, a!, b!);
			expect(shown).toBeCloseTo((bare * 1e7) / (1e7 + ohms), 6);
		});
	});
});

describe('plugs', () => {
	/** Answers of the bench about its own nodes: nets, and some resistances. */
	const answers = (bench: Bench, nodes: readonly string[]) => ({
		joined: pairsOf(nodes).filter(([a, b]) => isJoined(bench, a, b)),
		ohms: nodes.slice(1, 6).map((b) => resistance(bench, nodes[0]!, b).toPrecision(9)),
		hears: hears(bench)
	});
	it('a plug put in and pulled out again leaves every answer as it was', () => {
		assert(fc.tuple(benches(), fc.nat(), fc.nat()), ([bench, i, k]) => {
			if (bench.sockets.length === 0) return;
			const { id } = bench.sockets[i % bench.sockets.length]!;
			const empty = withEmpty(bench, id);
			const kinds = statesOf(bench, id).filter((s) => s !== 'none');
			const inside = withBarePlug(empty, id, kinds[k % kinds.length]!);
			const nodes = nodesOfBench(bench);
			expect(answers(withEmpty(inside, id), nodes)).toEqual(answers(empty, nodes));
		});
	});
	it('a plug of the bench pulled out and put back leaves every answer as it was', () => {
		assert(benches(), (bench) => {
			for (const socket of bench.sockets) {
				const plug = plugIn(bench, socket.id);
				if (!plug) continue;
				const back = withPlug(withEmpty(bench, socket.id), socket.id, plug.id, plug.travel);
				expect(back).toEqual(bench);
				expect(netsOf(back).list).toEqual(netsOf(bench).list);
			}
		});
	});
	it('at travel 0 a plug is as good as out', () => {
		assert(benches(), (bench) => {
			const out = bench.plugs.map((p) => ({ ...p, socket: null }));
			const zero = bench.plugs.map((p) => ({ ...p, travel: 0 }));
			expect(netsOf({ ...bench, plugs: zero }).list).toEqual(netsOf({ ...bench, plugs: out }).list);
		});
	});
});

describe('paths', () => {
	it('say joined exactly where the nets do, and lead from one end to the other', () => {
		assert(benchesWithNodes(2), ({ bench, at }) => {
			const [a, b] = at as [string, string];
			const path = pathBetween(bench, a, b);
			if (a === b) return expect(path).toEqual({ kind: 'same' });
			expect(path.kind === 'joined').toBe(isJoined(bench, a, b));
			if (path.kind !== 'joined' && path.kind !== 'parted') return;
			expect(path.steps[0]!.from).toBe(a);
			expect(path.steps.at(-1)!.to).toBe(b);
			for (const [i, { from, to, through }] of path.steps.entries()) {
				if (i > 0) expect(from).toBe(path.steps[i - 1]!.to);
				expect([from, to].sort()).toEqual([through.a, through.b].sort());
				expect(through.reason.kind).toMatch(/^[a-z-]+$/);
			}
			const visited = [a, ...path.steps.map((s) => s.to)];
			expect(new Set(visited).size).toBe(visited.length);
		});
	});
	/** What a gap or conductor asks of the spring, pin or changeover that it names first. */
	const stays = (c: Conductor) => ['touch', 'mate', 'changeover'].includes(c.reason.kind);
	const moves = (g: Gap) => g.reason.kind !== 'cut';
	/** Whether the two are joined once `closed` gaps are, and what they move is where it was no more. */
	function joinedBy(bench: Bench, closed: readonly Gap[], a: NodeName, b: NodeName): boolean {
		const moved = new Set(closed.filter(moves).map((gap) => gap.a));
		const left = circuit(bench).conductors.filter((c) => c.joins && !(stays(c) && moved.has(c.a)));
		const joints = [...left, ...closed];
		const reached = new Set([a]);
		for (let before = 0; before < reached.size;) {
			before = reached.size;
			for (const { a: x, b: y } of joints)
				if (reached.has(x) || reached.has(y)) reached.add(x).add(y);
		}
		return reached.has(b);
	}
	it('when parted, closing the gaps that are named joins the two, and leaving one open does not', () => {
		assert(benchesWithGap(), ({ bench, at: [a, b] }) => {
			const path = pathBetween(bench, a, b);
			if (isJoined(bench, a, b)) return expect(path.kind).not.toBe('parted');
			if (path.kind !== 'parted') return;
			expect(path.gaps.length).toBeGreaterThan(0);
			expect(joinedBy(bench, path.gaps, a, b)).toBe(true);
			const closed = path.gaps.reduce((x, gap) => withBridge(x, gap.a, gap.b), bench);
			expect(isJoined(closed, a, b)).toBe(true);
			for (const left of path.gaps)
				expect(
					joinedBy(
						bench,
						path.gaps.filter((g) => g !== left),
						a,
						b
					)
				).toBe(false);
		});
	});
	it('when nothing, there is no set of open contacts that could close and join the two', () => {
		assert(fc.oneof(benchesWithGap(), benchesWithNodes(2)), ({ bench, at }) => {
			const [a, b] = at as [string, string];
			if (pathBetween(bench, a, b).kind !== 'nothing') return;
			const { gaps } = circuit(bench);
			if (gaps.length > 8) return;
			for (let set = 0; set < 2 ** gaps.length; set++) {
				const closed = gaps.filter((_, i) => set & (1 << i));
				expect(joinedBy(bench, closed, a, b)).toBe(false);
			}
		});
	});
	it('when parted by a plug that alone opens breaks, pulling it joins the two', () => {
		assert(benchesWithGap(), ({ bench, at: [a, b] }) => {
			const path = pathBetween(bench, a, b);
			if (path.kind !== 'parted') return;
			// Where the rest of the way does not lead through the plug itself.
			const plugs = new Set(
				path.gaps.map((g) => (g.reason.kind === 'lifted' ? g.reason.plug : null))
			);
			if (plugs.has(null)) return;
			const through = path.steps.some((s) => [...plugs].some((p) => s.to.startsWith(`${p}.`)));
			if (through || [...plugs].some((p) => a.startsWith(`${p}.`))) return;
			const pulled = bench.plugs.map((p) => (plugs.has(p.id) ? { ...p, socket: null } : p));
			expect(isJoined({ ...bench, plugs: pulled }, a, b)).toBe(true);
		});
	});
});
