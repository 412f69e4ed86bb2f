/**
 * Test cards from outside: what they promise is asked of the plain engine (each fault put on the
 * bench, each probe read off its nets), and their length is compared with the least that
 * logic-solver, a general-purpose solver of statements, finds among all probes.
 */
import fc from 'fast-check';
import Logic from 'logic-solver';
import { describe, expect, it } from 'vitest';
import {
	PROBES_PER_CHANGE,
	answerTo,
	cardsOf,
	effortOf,
	faultKeyOf,
	faultListOf,
	probeNodes,
	stateKey,
	statesOfBench,
	type Card
} from '../../src/lib/diagnosis';
import { plainAnswers } from '../../src/lib/diagnosis/oracle.fixture';
import { byCodePoint, type Bench } from '../../src/lib/engine';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { randomBench, randomNumbers } from '../../src/lib/engine/random.fixture';
import { RUNS, benches } from './benches';

/** The plain engine's answers: the net of every node in every state, sound and under each fault. */
function asked(bench: Bench) {
	const nodes = [...probeNodes(bench)].sort(byCodePoint);
	const states = statesOfBench(bench).map((when) => JSON.stringify(when));
	const nets = faultListOf(bench).map((fault) => ({
		key: faultKeyOf(fault),
		answers: plainAnswers(bench, [fault])
	}));
	const sound = plainAnswers(bench, []);
	const isJoined = (answers: number[][], state: number, a: number, b: number) =>
		answers[state]![a] === answers[state]![b];
	return { nodes, states, nets, sound, isJoined };
}

/** Keys of the faults that some of the card's probes catch. */
function caughtBy({ nodes, states, nets, isJoined }: ReturnType<typeof asked>, card: Card) {
	const places = card.probes.map(({ when, pair: [a, b], expect: said }) => ({
		at: [states.indexOf(JSON.stringify(when)), nodes.indexOf(a), nodes.indexOf(b)] as const,
		joined: said === 'joined'
	}));
	return nets
		.filter(({ answers }) => places.some(({ at, joined }) => isJoined(answers, ...at) !== joined))
		.map(({ key }) => key);
}

/** Keys of the faults that any probe of the bench catches. */
const loudOn = ({ nets, sound }: ReturnType<typeof asked>): string[] =>
	nets
		.filter(({ answers }) => JSON.stringify(answers) !== JSON.stringify(sound))
		.map(({ key }) => key);

describe('the cards of any bench', () => {
	it('expect what the sound bench answers and catch every fault that a probe can catch', () => {
		let faults = 0;
		fc.assert(
			fc.property(benches(), (bench) => {
				const cards = cardsOf(bench);
				const answers = asked(bench);
				const loud = loudOn(answers);
				faults += loud.length;
				for (const card of Object.values(cards)) {
					for (const probe of card.probes) expect(answerTo(bench, probe)).toBe(probe.expect);
					expect(caughtBy(answers, card)).toEqual(loud);
					const silent = new Set(card.silent.map(faultKeyOf));
					expect(silent.size + loud.length).toBe(faultListOf(bench).length);
					expect(loud.some((key) => silent.has(key))).toBe(false);
				}
				expect(effortOf(cards['least-effort'])).toBeLessThanOrEqual(
					effortOf(cards['fewest-probes'])
				);
				expect(cards['least-effort'].probes.length).toBeGreaterThanOrEqual(
					cards['fewest-probes'].probes.length
				);
			}),
			{ ...RUNS, numRuns: 15 }
		);
		expect(faults).toBeGreaterThan(300);
	});
});

/** One probe for each state and set of faults that it catches, asked of the plain engine. */
function columnsOf(bench: Bench) {
	const { nodes, states, nets, sound, isJoined } = asked(bench);
	const distinct = new Map<string, { state: string; socket: string; faults: string[] }>();
	for (const [s, text] of states.entries()) {
		const when = JSON.parse(text) as Record<string, string>;
		const key = stateKey(bench, when);
		const isOwn = key === stateKey(bench, {});
		const plugs = { state: isOwn ? '' : key, socket: isOwn ? '' : Object.keys(when)[0]! };
		for (let a = 0; a < nodes.length; a++)
			for (let b = a + 1; b < nodes.length; b++) {
				const joined = isJoined(sound, s, a, b);
				const caught = nets.filter(({ answers }) => isJoined(answers, s, a, b) !== joined);
				const column = { ...plugs, faults: caught.map((f) => f.key) };
				if (caught.length > 0) distinct.set(JSON.stringify(column), column);
			}
	}
	return [...distinct.values()];
}

/**
 * The least sum of probes and of so much for each plug change. Changes: one for each plug state that
 * is not the file's own and one for each socket that is left again, which the last one is not.
 */
function leastBySolver(columns: ReturnType<typeof columnsOf>, perChange: number): number {
	const solver = new Logic.Solver();
	const by = new Map<string, string[]>();
	const charges = new Set<string>();
	columns.forEach(({ state, socket, faults }, i) => {
		for (const f of faults) by.set(f, [...(by.get(f) ?? []), `p${i}`]);
		if (state === '') return;
		for (const charge of [`state ${state}`, `socket ${socket}`]) {
			charges.add(charge);
			solver.require(Logic.implies(`p${i}`, charge));
		}
	});
	for (const probes of by.values()) solver.require(Logic.or(probes));
	const names = columns.map((_, i) => `p${i}`);
	const all = [...charges];
	// "none changed" costs one change, and is taken off again: so the last socket is free.
	solver.require(Logic.equiv('none changed', Logic.not(Logic.or(all))));
	const start = solver.solve()!;
	const weights = [...names.map(() => 1), ...all.map(() => perChange), perChange];
	const least = solver.minimizeWeightedSum(start, [...names, ...all, 'none changed'], weights);
	const taken = new Set(least.getTrueVars());
	const probes = names.filter((n) => taken.has(n)).length;
	const changes = all.filter((c) => taken.has(c)).length - (all.some((c) => taken.has(c)) ? 1 : 0);
	return probes + perChange * changes;
}

const jack = (id: string, kind: string) => ({ id, kind });
const SMALL: Readonly<Record<string, Bench>> = {
	'a jack with a break': benchOf({ sockets: [jack('J', 'jack-ts-break')] }),
	'a changeover': benchOf({ sockets: [jack('J', 'jack-ts-changeover')] }),
	'two jacks with their sleeves wired to the panel, both on one probe': benchOf({
		panel: { metal: true },
		sockets: ['A', 'B'].map((id) => jack(id, 'jack-ts')),
		wires: ['A', 'B'].map((id) => ({ id: `w${id}`, from: `${id}.S`, to: 'panel' }))
	}),
	'a jack wired so that a second plug spares probes': benchOf({
		sockets: [jack('A', 'jack-trs-break')],
		wires: [
			{ id: 'w1', from: 'A.T', to: 'A.R' },
			{ id: 'w2', from: 'A.S', to: 'A.TN' }
		]
	}),
	'two jacks, normalled one to the other': benchOf({
		sockets: [jack('A', 'jack-ts-break'), jack('B', 'jack-ts')],
		wires: [{ id: 'w', from: 'A.TN', to: 'B.T' }]
	})
};

describe.each(Object.entries(SMALL))('the cards of %s', (_, bench) => {
	const cards = cardsOf(bench);
	it('are proven', () => {
		expect(Object.values(cards).every((c) => c.exact)).toBe(true);
	});
	it('are as short as logic-solver finds any', () => {
		const columns = columnsOf(bench);
		expect(cards['fewest-probes'].probes).toHaveLength(leastBySolver(columns, 0));
		expect(effortOf(cards['least-effort'])).toBe(leastBySolver(columns, PROBES_PER_CHANGE));
	});
});

it('least effort is another card than fewest probes where a second plug spares probes', () => {
	const cards = cardsOf(SMALL['a jack wired so that a second plug spares probes']!);
	expect([cards['fewest-probes'].probes.length, cards['fewest-probes'].changes]).toEqual([6, 2]);
	expect([cards['least-effort'].probes.length, cards['least-effort'].changes]).toEqual([8, 1]);
});

describe('the cards of drawn benches', () => {
	it('are as short as logic-solver finds any, wherever they are proven and short', () => {
		const below = randomNumbers(31);
		let compared = 0;
		for (let i = 0; i < 400 && compared < 8; i++) {
			const bench = randomBench(below, 1 + below(2));
			const { 'fewest-probes': fewest, 'least-effort': least } = cardsOf(bench);
			if (!fewest.exact || !least.exact || fewest.probes.length > 7) continue;
			const columns = columnsOf(bench);
			expect(fewest.probes).toHaveLength(leastBySolver(columns, 0));
			expect(effortOf(least)).toBe(leastBySolver(columns, PROBES_PER_CHANGE));
			compared++;
		}
		expect(compared).toBe(8);
	});
});
