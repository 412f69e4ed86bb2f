/**
 * The search against the plainest oracle there is: every wiring of the contacts, scored one by one.
 * Sockets of two to five contacts have 2 to 1,024 wirings; requirements are drawn at random, so most
 * ask for something odd and many for something that cannot be.
 */
import { describe, expect, it } from 'vitest';
import {
	contactsOf,
	hearing,
	inState,
	checksOf,
	pairsOf,
	scoreOf,
	statesOf,
	type Bench,
	type Requirement,
	type When,
	type Wire
} from '../../engine';
import { benchOf } from '../../engine/bench.fixture';
import { changesBetween } from '../putRight';
import { FAINT_DB } from './ears';
import { fewestChanges, fewestWires, type Search } from './search';
import type { Task } from './task';

/** A small generator of repeatable numbers (mulberry32, public domain). */
function numbers(seed: number) {
	let a = seed;
	return () => {
		a = (a + 0x6d2b79f5) | 0;
		let t = Math.imul(a ^ (a >>> 15), 1 | a);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}
type Random = ReturnType<typeof numbers>;
const pick = <T>(random: Random, list: readonly T[]): T =>
	list[Math.floor(random() * list.length)]!;

const wire = (id: string, [from, to]: readonly [string, string]): Wire => ({
	id,
	from,
	to,
	awg: 26,
	mm: 40
});
const contactsIn = ({ bench, mayWire }: Task) => mayWire.flatMap((s) => contactsOf(bench, s));

/** Every wiring: each pair of contacts has a wire or not. */
function wirings(task: Task): Wire[][] {
	const pairs = pairsOf(contactsIn(task));
	return Array.from({ length: 2 ** pairs.length }, (_, bits) =>
		pairs.filter((__, i) => bits & (1 << i)).map((pair, i) => wire(`x${i}`, pair))
	);
}

/** Whether the wires meet the requirement, and not by what leaks past a short. */
function meets({ bench, require }: Task, wires: readonly Wire[]): boolean {
	const wired = { ...bench, wires };
	if (scoreOf(wired, require).failed.length > 0) return false;
	return require.every((r) => {
		const there = inState(wired, r.when);
		return checksOf(r)
			.filter((c) => c.wanted === 'hears' || c.wanted.startsWith('polarity'))
			.every((c) => (hearing(there, ...c.pair)?.db ?? -Infinity) >= FAINT_DB);
	});
}

/** The fewest changes to any wiring that meets the requirement; null if none does. */
function bruteForce(task: Task): number | null {
	const counts = wirings(task)
		.filter((wires) => meets(task, wires))
		.map((wires) => changesBetween(task.bench.wires, wires));
	return counts.length > 0 ? Math.min(...counts) : null;
}

const NO: Requirement = {
	when: {},
	joined: [],
	apart: [],
	hears: [],
	deaf: [],
	polarity: [],
	hazard: false,
	why: ''
};
const twoOf = (random: Random, list: readonly string[]): [string, string] => {
	const a = pick(random, list);
	return [
		a,
		pick(
			random,
			list.filter((x) => x !== a)
		)
	];
};

/** A requirement with a few pairs in a few states, and perhaps something to hear. */
function randomRequirement(random: Random, task: Task, ears: boolean): Requirement[] {
	const { bench } = task;
	const nodes = [
		...contactsIn(task),
		...bench.plugs.map((p) => `${p.id}.tip`),
		...(bench.panel.metal ? ['panel'] : [])
	];
	const states: When[] = bench.sockets.flatMap((s) =>
		[...statesOf(bench, s.id), ...bench.plugs.map((p) => p.id)].map((x) => ({ [s.id]: x }))
	);
	return Array.from({ length: 1 + Math.floor(random() * 3) }, (): Requirement => ({
		...NO,
		when: pick(random, states),
		joined: Array.from({ length: Math.floor(random() * 2.2) }, () => twoOf(random, nodes)),
		apart: Array.from({ length: Math.floor(random() * 3) }, () => twoOf(random, nodes)),
		hears: ears && random() < 0.5 ? [['IN', 'OUT']] : [],
		deaf: ears && random() < 0.2 ? [['IN', 'OUT']] : [],
		polarity: ears && random() < 0.2 ? [['IN', 'OUT', pick(random, ['+', '-'] as const)]] : []
	}));
}

const jack = (id: string, kind: string) => ({ id, kind });
const DEVICES = {
	devices: [
		{ id: 'OUT', kind: 'line-out-unbalanced' },
		{ id: 'IN', kind: 'line-in-unbalanced' }
	]
};
const BENCHES: Record<string, { bench: Bench; ears: boolean; cases: number }> = {
	'a three-pin socket on a metal panel': {
		bench: benchOf({ panel: { metal: true }, sockets: [jack('A', 'three-pin-female')] }),
		ears: false,
		cases: 60
	},
	'a jack with a break contact and a plug': {
		bench: benchOf({
			sockets: [jack('A', 'jack-ts-break')],
			plugs: [{ id: 'lead', kind: 'ts' }]
		}),
		ears: false,
		cases: 60
	},
	'two jacks beside each other, one in a metal bush': {
		bench: benchOf({
			panel: { metal: true },
			sockets: [jack('A', 'jack-ts'), { ...jack('B', 'jack-ts'), bush: 'metal' }],
			plugs: [{ id: 'lead', kind: 'ts' }]
		}),
		ears: false,
		cases: 60
	},
	'a jack between an output and an input': {
		bench: benchOf({
			sockets: [jack('A', 'jack-ts-break')],
			...DEVICES,
			cables: [
				{
					id: 'c',
					m: 2,
					cores: [
						['OUT.hot', 'A.TN'],
						['OUT.shield', 'A.S']
					]
				},
				{
					id: 'd',
					m: 2,
					cores: [
						['IN.hot', 'A.T'],
						['IN.shield', 'A.S']
					]
				}
			]
		}),
		ears: true,
		cases: 40
	},
	'two jacks between an output and an input': {
		bench: benchOf({
			sockets: [jack('A', 'jack-ts'), jack('B', 'jack-ts')],
			...DEVICES,
			cables: [
				{
					id: 'c',
					m: 2,
					cores: [
						['OUT.hot', 'A.T'],
						['OUT.shield', 'A.S']
					]
				},
				{
					id: 'd',
					m: 2,
					cores: [
						['IN.hot', 'B.T'],
						['IN.shield', 'B.S']
					]
				}
			]
		}),
		ears: true,
		cases: 25
	},
	'a patch jack, five contacts': {
		bench: benchOf({ sockets: [jack('A', 'patch-jack')] }),
		ears: false,
		cases: 6
	}
};

const changesOf = (found: Search): number | null => (found.kind === 'found' ? found.changes : null);

describe.each(Object.entries(BENCHES))('on %s', (name, { bench, ears, cases }) => {
	const random = numbers(name.length * 7919);
	const tasks = Array.from({ length: cases }, (): Task => {
		const task = { bench, mayWire: bench.sockets.map((s) => s.id), require: [] };
		const all = pairsOf(contactsIn(task));
		const wires = all.filter(() => random() < 0.35).map((pair, i) => wire(`w${i}`, pair));
		const require = randomRequirement(random, task, ears);
		return { ...task, bench: { ...bench, wires }, require };
	});
	const counts = tasks.map(bruteForce);

	it('the search and all wirings one by one agree on the fewest changes', () =>
		expect(tasks.map((task) => changesOf(fewestChanges(task)))).toEqual(counts));
	it('the cases are of every sort: nothing to do, something to do, and nothing that could be done', () => {
		expect(counts).toContain(0);
		expect(counts).toContain(null);
		expect(counts.some((n) => n !== null && n > 0)).toBe(true);
	});
	it('every way handed out meets the requirement with just so many changes', () => {
		for (const task of tasks) {
			const found = fewestChanges(task);
			if (found.kind !== 'found') continue;
			for (const set of found.sets) {
				expect(meets(task, set.wires)).toBe(true);
				expect(changesBetween(task.bench.wires, set.wires)).toBe(found.changes);
				expect(set.out.length + set.in.length).toBe(found.changes);
			}
		}
	});
	it('no way is handed out twice', () => {
		for (const task of tasks) {
			const found = fewestChanges(task);
			if (found.kind !== 'found') continue;
			const ways = found.sets.map((s) => JSON.stringify([s.out, s.in]));
			expect(new Set(ways).size).toBe(ways.length);
		}
	});
	it('what is called impossible is so, and so is its conflict, but no part of it', () => {
		for (const [i, task] of tasks.entries()) {
			const found = fewestChanges(task);
			expect(found.kind === 'impossible').toBe(counts[i] === null);
			if (found.kind !== 'impossible') continue;
			const asked = found.conflict.map((c): Requirement => {
				const [a, b] = c.pair;
				const sign = c.wanted.slice(-1) as '+' | '-';
				if (c.wanted === 'joined' || c.wanted === 'apart')
					return { ...NO, when: c.when, [c.wanted]: [[a, b]] };
				if (c.wanted === 'hears' || c.wanted === 'deaf')
					return { ...NO, when: c.when, [c.wanted]: [[a, b]] };
				return { ...NO, when: c.when, polarity: [[a, b, sign]] };
			});
			expect(bruteForce({ ...task, require: asked })).toBeNull();
			for (const one of asked) {
				const rest = asked.filter((r) => r !== one);
				expect(bruteForce({ ...task, require: rest })).not.toBeNull();
			}
		}
	});
	it('the fewest wires are the fewest changes from none', () => {
		for (const task of tasks.slice(0, 15)) {
			const bare = { ...task, bench: { ...bench, wires: [] } };
			expect(changesOf(fewestWires(task))).toBe(bruteForce(bare));
		}
	});
});

describe('the search', () => {
	const nine = (wires: readonly Wire[] = []): Task => ({
		bench: { ...benchOf({ panel: { metal: true }, sockets: [jack('A', 'hybrid-9')] }), wires },
		mayWire: ['A'],
		require: [
			{
				...NO,
				when: { A: 'none' },
				joined: [
					['A.1', 'A.S'],
					['A.2', 'A.T'],
					['A.3', 'A.R']
				],
				apart: [['A.1', 'A.2', 'A.3', 'A.G']],
				hazard: true
			},
			{
				...NO,
				when: { A: 'trs' },
				apart: [
					['A.2', 'A.T'],
					['A.3', 'A.R'],
					['A.1', 'A.S']
				]
			}
		]
	});
	it('finds that a hybrid of nine wired on its springs has to be moved to its normals', () => {
		const springs = (['A.2 A.T', 'A.3 A.R', 'A.1 A.S'] as const).map((ends, i) =>
			wire(`w${i}`, ends.split(' ') as [string, string])
		);
		const found = fewestChanges(nine(springs));
		expect(found).toMatchObject({ kind: 'found', changes: 6 });
		expect(found.kind === 'found' && found.sets.map((s) => s.in)).toEqual([
			[
				['A.1', 'A.SN'],
				['A.2', 'A.TN'],
				['A.3', 'A.RN']
			]
		]);
	});
	it('counts a wire that leaves the sockets among those that must go', () => {
		const task = nine([wire('w1', ['A.2', 'panel'])]);
		expect(fewestChanges(task)).toMatchObject({ kind: 'found', changes: 4 });
	});
	it('goes by way of a third contact where two may not be wired together', () => {
		const bench = benchOf({ sockets: [jack('A', 'jack-ts-changeover')] });
		const require = [
			{ ...NO, when: { A: 'dummy' }, joined: [['A.T', 'A.S']] },
			{ ...NO, when: { A: 'none' }, apart: [['A.T', 'A.S']] }
		];
		const task = { bench, mayWire: ['A'], require };
		expect(bruteForce(task)).toBe(2);
		const found = fewestChanges(task);
		expect(found).toMatchObject({ kind: 'found', changes: 2 });
		const ways = found.kind === 'found' ? found.sets.map((w) => w.in) : [];
		expect(ways).toContainEqual([
			['A.T', 'A.C'],
			['A.S', 'A.NO']
		]);
	});
	it('calls it impossible to join two things that no wire can reach', () => {
		const bench = benchOf({ sockets: [jack('A', 'jack-ts')], ...DEVICES });
		const require = [{ ...NO, joined: [['OUT.hot', 'IN.hot']] }];
		expect(fewestChanges({ bench, mayWire: ['A'], require })).toMatchObject({
			kind: 'impossible',
			conflict: [{ pair: ['OUT.hot', 'IN.hot'], wanted: 'joined' }]
		});
	});
	it('calls it impossible to hear a source both ways up', () => {
		const { bench } = BENCHES['two jacks between an output and an input']!;
		const require = (['+', '-'] as const).map((sign) => ({
			...NO,
			polarity: [['IN', 'OUT', sign] as const]
		}));
		const found = fewestChanges({ bench, mayWire: ['A', 'B'], require });
		expect(found).toMatchObject({ kind: 'impossible' });
		expect(found.kind === 'impossible' && found.conflict.map((c) => c.wanted)).toEqual([
			'polarity +',
			'polarity -'
		]);
	});
	it('does not hand out a wiring that leaks, though its nets are right: a long thin wire shorts badly', () => {
		const { bench } = BENCHES['a jack between an output and an input']!;
		const thin = { ...wire('w1', ['A.T', 'A.S']), awg: 40, mm: 5000 };
		const require = [{ ...NO, joined: [['A.T', 'A.S']], deaf: [['IN', 'OUT'] as const] }];
		const found = fewestChanges({ bench: { ...bench, wires: [thin] }, mayWire: ['A'], require });
		expect(found).toMatchObject({ kind: 'found', changes: 1 });
		const [set] = found.kind === 'found' ? found.sets : [];
		expect(scoreOf({ ...bench, wires: set!.wires }, require).score).toBe(1);
	});
	it('says how far it is sure when it may look at few nodes only', () => {
		const found = fewestChanges(nine(), { nodes: 5 });
		expect(found).toMatchObject({ kind: 'gave-up', nodes: expect.any(Number) as number });
		expect(found.kind === 'gave-up' && found.atLeast).toBeLessThanOrEqual(3);
	});
	it('proves that fewer changes than a bound do not do', () =>
		expect(fewestChanges(nine(), { changes: 2 })).toMatchObject({ kind: 'gave-up', atLeast: 3 }));
	it('looks at few sets of blocks: the count is a gate, not a clock', () => {
		const found = fewestChanges(nine());
		expect(found).toMatchObject({ kind: 'found', changes: 3 });
		expect(found.nodes).toBeLessThan(100);
	});
	it('wires four sockets of nine with twelve jumpers in few looks', () => {
		const ids = ['A', 'B', 'C', 'D'];
		const bench = benchOf({
			panel: { metal: true },
			sockets: ids.map((id) => jack(id, 'hybrid-9'))
		});
		const require = ids.flatMap((id): Requirement[] => [
			{
				...NO,
				when: { [id]: 'none' },
				joined: ['1 SN', '2 TN', '3 RN', '1 S', '2 T', '3 R'].map((p) =>
					p.split(' ').map((c) => `${id}.${c}`)
				),
				apart: [['1', '2', '3', 'G'].map((c) => `${id}.${c}`)]
			},
			{
				...NO,
				when: { [id]: 'trs' },
				joined: [[`${id}.2`, `${id}.TN`]],
				apart: [[`${id}.2`, `${id}.T`]]
			}
		]);
		const found = fewestChanges({ bench, mayWire: ids, require });
		expect(found).toMatchObject({ kind: 'found', changes: 12 });
		expect(found.nodes).toBeLessThan(500);
	});
});
