/** The schedule as data: what it says of every conductor, cup, piece and label. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkBench, netsOf, splitNode, wireNames, type Bench } from '../engine';
import { RUNS, benches } from '../../../tests/outside/benches';
import {
	ALLOWANCE,
	COLOURS,
	FUNCTIONS,
	MOST_IN_CUP,
	STAGES,
	atRest,
	colourOf,
	cutsOf,
	orderOf,
	reachOf,
	runsOf,
	scheduleOf,
	squareMm,
	type Run
} from '.';

function bench(parts: object): Bench {
	const made = checkBench({ format: 'solderside-bench', version: 1, ...parts });
	if (!made.ok) throw new Error(`${made.problem.path}: ${made.problem.message}`);
	return made.value;
}
/** One cable for both halves of a hybrid of nine: jumpers from the jack to the pins, a cable on the pins. */
const PLATE = bench({
	title: 'Plate',
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-9' }],
	wires: [
		{ id: 'w1', from: 'A.TN', to: 'A.2', awg: 26, mm: 40 },
		{ id: 'w2', from: 'A.R', to: 'A.3', awg: 26, mm: 35.5 },
		{ id: 'w3', from: 'A.S', to: 'A.1', awg: 24, mm: 60 }
	],
	devices: [{ id: 'DESK', kind: 'mic-input' }],
	cables: [
		{
			id: 'c1',
			m: 12.3,
			awg: 24,
			cores: [
				['A.1', 'DESK.shield'],
				['A.2', 'DESK.hot'],
				['A.3', 'DESK.cold']
			]
		}
	]
});
const named = (of: Bench, name: string): Run => runsOf(of).find((r) => r.name === name)!;

describe('conductors', () => {
	it('a jumper is listed from lug to lug, with the gauge in both measures', () => {
		expect(named(PLATE, 'w1')).toEqual({
			name: 'w1',
			kind: 'jumper',
			from: 'A.TN',
			to: 'A.2',
			awg: 26,
			mm2: 0.1288,
			mm: 40,
			colour: 'RD',
			function: 'hot',
			net: 'A.2',
			labels: ['w1 A.TN > A.2', 'w1 A.2 > A.TN']
		});
	});
	it('every core of a cable is one, with the length of the cable in millimetres', () => {
		const core = named(PLATE, 'c1:2');
		expect([core.kind, core.from, core.to, core.mm]).toEqual(['core', 'A.3', 'DESK.cold', 12_300]);
		expect(core.labels).toEqual(['c1/3 A.3 > DESK.cold', 'c1/3 DESK.cold > A.3']);
	});
	// Tables of the gauge print 3.31 mm² for 12 (also OpenStax, University Physics 2, ch. 9), 0.823 for
	// 18, 0.326 for 22, 0.205 for 24, 0.129 for 26, 0.0509 for 30 (wire tables, from memory).
	it.each([
		[12, 3.31],
		[18, 0.823],
		[22, 0.326],
		[24, 0.205],
		[26, 0.129],
		[30, 0.0509]
	])('%i AWG has the printed cross-section', (awg, printed) => {
		expect(Number(squareMm(awg).toPrecision(3))).toBe(printed);
	});
	// Pins: AES14, as reported. Jack: tip hot, ring cold, sleeve shield. Mixed ends: by hand.
	it.each([
		['A.2', 'A.T', 'hot'],
		['A.3', 'A.RN', 'cold'],
		['A.S', 'A.1', 'shield'],
		['A.1', 'A.G', 'shield-chassis'],
		['A.G', 'panel', 'chassis'],
		['A.3', 'A.T', 'hot-cold'],
		['A.TN', 'A.S', 'hot-shield'],
		['A.R', 'A.S', 'cold-shield'],
		['A.G', 'A.2', 'hot-chassis'],
		['B.C', 'A.2', 'hot'],
		['B.C', 'B.NO', 'switch'],
		['p.shell', 'A.G', 'chassis'],
		['MIC.shell', 'A.1', 'shield'],
		['p.shell', 'A.1', 'shield-chassis']
	])('from %s to %s it carries %s', (from, to, what) => {
		const one = bench({
			panel: { metal: true },
			sockets: [
				{ id: 'A', kind: 'hybrid-9' },
				{ id: 'B', kind: 'jack-ts-changeover' }
			],
			plugs: [{ id: 'p', kind: 'three-pin' }],
			devices: [{ id: 'MIC', kind: 'mic' }],
			wires: [{ id: 'w', from, to }]
		});
		expect(named(one, 'w').function).toBe(what);
	});
	it('no function has the colours of protective earth or of the mains neutral', () => {
		const given = FUNCTIONS.map(colourOf);
		for (const colour of ['GNYE', 'GN', 'YE', 'BU', 'WH']) expect(given).not.toContain(colour);
		for (const colour of given) expect(COLOURS).toContain(colour);
	});
	it('what a signal carries has a colour of its own: hot, cold, shield, chassis', () => {
		const four = (['hot', 'cold', 'shield', 'chassis'] as const).map(colourOf);
		expect(new Set(four).size).toBe(4);
	});
	it('a plug that is in, and a fault, change nothing of the plan', () => {
		const used = bench({
			sockets: [{ id: 'A', kind: 'hybrid-9' }],
			plugs: [{ id: 'p', kind: 'ts', socket: 'A' }],
			wires: [{ id: 'w1', from: 'A.TN', to: 'A.2' }],
			faults: [{ kind: 'swap', contacts: ['A.2', 'A.3'] }]
		});
		const plan = { ...used, plugs: [], faults: [] };
		expect(runsOf(used)).toEqual(runsOf(plan));
		expect(orderOf(used)).toEqual(orderOf(plan));
	});
});

describe('conductors of any bench', () => {
	it('are its wires and cores, each once, on nets that hold both their ends', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const runs = runsOf(any);
				expect(runs.map((r) => r.name)).toEqual(wireNames(any));
				const { list, indexOf } = netsOf(atRest(any));
				for (const r of runs) {
					expect(list[indexOf.get(r.from)!]).toContain(r.to);
					expect(list[indexOf.get(r.to)!]![0]).toBe(r.net);
				}
			}),
			RUNS
		);
	});
	it('have labels that no other end has', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const labels = runsOf(any).flatMap((r) => r.labels);
				expect(new Set(labels).size).toBe(labels.length);
			}),
			RUNS
		);
	});
	it('keep their colour, function and labels when others are added or taken away', () => {
		fc.assert(
			fc.property(benches(), fc.nat(999), (any, n) => {
				const runs = runsOf(any);
				const fewer = {
					...any,
					wires: any.wires.filter((_, i) => (n >> (i % 10)) & 1),
					cables: n % 2 ? [] : any.cables
				};
				for (const r of runsOf(fewer)) {
					const before = runs.find((x) => x.name === r.name)!;
					expect([r.colour, r.function, r.labels]).toEqual([
						before.colour,
						before.function,
						before.labels
					]);
				}
			}),
			RUNS
		);
	});
});

describe('the order of soldering', () => {
	it('goes from the jumpers to the cable, from the middle outwards, to the far end', () => {
		expect(orderOf(PLATE).map((s) => [s.stage, s.at, s.form])).toEqual([
			['jumpers', 'A.R', 'lug'],
			['jumpers', 'A.S', 'lug'],
			['jumpers', 'A.TN', 'lug'],
			['cables', 'A.3', 'cup'],
			['cables', 'A.1', 'cup'],
			['cables', 'A.2', 'cup'],
			['far-ends', 'DESK.hot', 'terminal'],
			['far-ends', 'DESK.cold', 'terminal'],
			['far-ends', 'DESK.shield', 'terminal']
		]);
	});
	it('a cup takes its jumper first and the core of the cable on top', () => {
		const cup = orderOf(PLATE).find((s) => s.at === 'A.2')!;
		expect(cup.ends).toEqual([
			{ name: 'w1', to: 'A.TN', done: true },
			{ name: 'c1:1', to: 'DESK.hot', done: false }
		]);
	});
	it('a cup with the short cable comes before the cup with the long one', () => {
		const two = bench({
			sockets: [{ id: 'A', kind: 'hybrid-6' }],
			plugs: [
				{ id: 'p', kind: 'ts' },
				{ id: 'q', kind: 'ts' }
			],
			cables: [
				{ id: 'long', m: 20, cores: [['A.3', 'p.tip']] },
				{ id: 'short', m: 2, cores: [['A.2', 'q.tip']] }
			]
		});
		expect(orderOf(two).map((s) => s.at)).toEqual(['A.2', 'A.3', 'p.tip', 'q.tip']);
	});
	it('a wire between two sockets waits until the jumpers of both are done', () => {
		const two = bench({
			sockets: [
				{ id: 'A', kind: 'jack-trs-break' },
				{ id: 'B', kind: 'jack-trs-break' }
			],
			wires: [
				{ id: 'w1', from: 'A.T', to: 'B.TN' },
				{ id: 'w2', from: 'B.S', to: 'B.SN' }
			]
		});
		expect(orderOf(two).map((s) => s.at)).toEqual(['B.S', 'B.SN', 'A.T', 'B.TN']);
	});
	it('each cup is heated once, with all of its conductors in it', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const runs = runsOf(any);
				const steps = orderOf(any);
				const cups = new Set(runs.flatMap((r) => [r.from, r.to]));
				expect(steps.map((s) => s.at).sort()).toEqual([...cups].sort());
				for (const { at, ends } of steps) {
					const lands = runs.filter((r) => r.from === at || r.to === at);
					expect(ends.map((e) => e.name).sort()).toEqual(lands.map((r) => r.name).sort());
				}
			}),
			RUNS
		);
	});
	it('says of each conductor that it is done at its second end and not before', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const ends = orderOf(any).flatMap((s) => s.ends);
				for (const { name } of runsOf(any))
					expect(ends.filter((e) => e.name === name).map((e) => e.done)).toEqual([false, true]);
			}),
			RUNS
		);
	});
	it('no stage begins again, and within a socket’s jumpers it goes outwards', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const steps = orderOf(any);
				const stages = steps.map((s) => STAGES.indexOf(s.stage));
				expect(stages).toEqual([...stages].sort());
				steps.slice(1).forEach((step, i) => {
					const [a, b] = [splitNode(steps[i]!.at), splitNode(step.at)];
					if (steps[i]!.stage !== 'jumpers' || step.stage !== 'jumpers' || a[0] !== b[0]) return;
					expect(reachOf(a[1])).toBeLessThanOrEqual(reachOf(b[1]));
				});
			}),
			RUNS
		);
	});
});

describe('the cut list', () => {
	it('adds what is stripped at both ends, sums by gauge and colour, and puts the margin on top', () => {
		// By hand: 40 + 2 × 5 = 50; 50 + 10 % = 55. 35.5 + 10 = 45.5; × 1.1 = 50.05, so 51.
		expect(cutsOf(PLATE).wires).toEqual([
			{ awg: 24, mm2: 0.2047, colour: 'BK', pieces: [{ name: 'w3', mm: 70 }], mm: 70, buy: 77 },
			{ awg: 26, mm2: 0.1288, colour: 'RD', pieces: [{ name: 'w1', mm: 50 }], mm: 50, buy: 55 },
			{ awg: 26, mm2: 0.1288, colour: 'VT', pieces: [{ name: 'w2', mm: 45.5 }], mm: 45.5, buy: 51 }
		]);
		// 12.3 m + 2 × 30 mm = 12 360 mm; + 10 % = 13 596 mm.
		expect(cutsOf(PLATE).cables).toEqual([
			{
				awg: 24,
				mm2: 0.2047,
				cores: 3,
				pieces: [{ name: 'c1', mm: 12_360 }],
				mm: 12_360,
				buy: 13_596
			}
		]);
	});
	it('with other allowances it gives other lengths, and says which', () => {
		const bare = { strip: 0, jacket: 0, margin: 0 };
		const cuts = cutsOf(PLATE, bare);
		expect(cuts.allowance).toEqual(bare);
		expect(cuts.wires.map((w) => w.buy)).toEqual([60, 40, 36]);
		expect(cuts.cables[0]!.buy).toBe(12_300);
	});
	it('holds every wire and every cable once, the longest piece of a reel first', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const { wires, cables } = cutsOf(any);
				const cut = wires.flatMap((w) => w.pieces);
				expect(cut.map((p) => p.name).sort()).toEqual(any.wires.map((w) => w.id).sort());
				const laid = any.cables.filter((c) => c.cores.length > 0).map((c) => c.id);
				expect(cables.flatMap((c) => c.pieces.map((p) => p.name)).sort()).toEqual(laid.sort());
				for (const { pieces, mm, buy } of [...wires, ...cables]) {
					const lengths = pieces.map((p) => p.mm);
					expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
					expect(mm).toBeCloseTo(
						lengths.reduce((sum, x) => sum + x, 0),
						3
					);
					expect(buy).toBeGreaterThanOrEqual(mm * (1 + ALLOWANCE.margin / 100) - 0.001);
					expect(buy).toBeLessThan(mm * (1 + ALLOWANCE.margin / 100) + 1);
				}
			}),
			RUNS
		);
	});
});

describe('what to look at twice', () => {
	const kinds = (parts: object) => scheduleOf(bench(parts)).warnings.map((w) => w.kind);
	it('a good plate has nothing', () => {
		expect(scheduleOf(PLATE).warnings).toEqual([]);
	});
	it('a cup with three conductors', () => {
		const three = bench({
			sockets: [{ id: 'A', kind: 'hybrid-9' }],
			wires: [
				{ id: 'w1', from: 'A.2', to: 'A.T' },
				{ id: 'w2', from: 'A.2', to: 'A.TN' },
				{ id: 'w3', from: 'A.2', to: 'panel' }
			].map((w) => (w.to === 'panel' ? { ...w, to: 'A.R' } : w))
		});
		expect(scheduleOf(three).warnings[0]).toEqual({
			kind: 'crowded',
			at: 'A.2',
			conductors: ['w1', 'w2', 'w3']
		});
		expect(MOST_IN_CUP).toBe(2);
	});
	it('two conductors between the same two lugs, whichever way they run', () => {
		const wires = [
			{ id: 'w1', from: 'A.2', to: 'A.T' },
			{ id: 'w2', from: 'A.T', to: 'A.2' }
		];
		expect(kinds({ sockets: [{ id: 'A', kind: 'hybrid-6' }], wires })).toEqual(['doubled']);
	});
	it('a conductor from hot to cold, and one from a signal to the chassis; not one from shield to chassis', () => {
		const between = (from: string, to: string) =>
			kinds({ sockets: [{ id: 'A', kind: 'hybrid-6' }], wires: [{ id: 'w1', from, to }] });
		expect(between('A.2', 'A.R')).toEqual(['crossed']);
		expect(between('A.G', 'A.3')).toEqual(['crossed']);
		expect(between('A.G', 'A.1')).toEqual([]);
		expect(between('A.2', 'A.T')).toEqual([]);
	});
	it('faults in the file', () => {
		const faults = [{ kind: 'bridge', between: ['A.2', 'A.3'] }];
		expect(kinds({ sockets: [{ id: 'A', kind: 'hybrid-6' }], faults })).toEqual(['faults']);
	});
	it('the nets of the schedule hold every conductor once', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const { nets, conductors } = scheduleOf(any);
				const listed = nets.flatMap((n) => n.conductors);
				expect([...listed].sort()).toEqual(conductors.map((c) => c.name).sort());
				for (const { name, nodes } of nets) expect(nodes[0]).toBe(name);
			}),
			RUNS
		);
	});
});
