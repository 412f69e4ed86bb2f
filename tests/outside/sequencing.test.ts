/**
 * Which test next, and what the best plan costs, against figures from outside: a printed example,
 * sums in closed form, and the twelve coins. Then properties of any system at all: no plan is
 * cheaper than the bounds, and the greedy one is no cheaper than the optimum.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	boundsOf,
	branchesOf,
	classesOf,
	entropyOf,
	everyState,
	gainOf,
	greedyPlan,
	huffmanOf,
	Optimum,
	weightOfStates,
	type System,
	type TestPlan
} from '../../src/lib/diagnosis';
import { RUNS } from './benches';

const optimumOf = (system: System) => new Optimum(system).cost();
const equal = (n: number): number[] => Array.from({ length: n }, () => 1);
const range = (n: number): number[] => [...Array(n).keys()];

/**
 * Pattipati and Alexandridis, "Application of heuristic search and information theory to sequential
 * fault diagnosis", IEEE Transactions on Systems, Man, and Cybernetics 20(4), 1990: the sound system
 * and five faults, five tests; rows are states, columns tests. The paper prints the optimum 2.18.
 */
const PRINTED = ['00000', '01001', '00110', '10011', '11000', '11110'];
const PATTIPATI: System = {
	weights: [0.7, 0.01, 0.02, 0.1, 0.05, 0.12],
	tests: range(5).map((t) => ({ outcomes: PRINTED.map((row) => Number(row[t])) }))
};

describe('the system of six states and five tests of Pattipati and Alexandridis (1990)', () => {
	it('has the optimum 2.18', () => expect(optimumOf(PATTIPATI)).toBeCloseTo(2.18, 10));
	it('has a plan with that cost, every state told apart', () => {
		const plan = new Optimum(PATTIPATI).plan();
		expect(plan.cost).toBeCloseTo(2.18, 10);
		expect(walked(PATTIPATI, plan).cost).toBeCloseTo(2.18, 10);
		expect(leavesOf(plan)).toEqual(range(6).map((s) => [s]));
	});
	it('costs the greedy rule 2.86', () => expect(greedyPlan(PATTIPATI).cost).toBeCloseTo(2.86, 10));
	it('has 1.4549 bit of entropy', () => {
		expect(entropyOf(PATTIPATI.weights)).toBeCloseTo(1.4549, 4);
		expect(boundsOf(PATTIPATI).entropy).toBeCloseTo(1.4549, 4);
	});
	it('has the Huffman bound 1.59', () => expect(boundsOf(PATTIPATI).huffman).toBeCloseTo(1.59, 10));
});

/** The states where a plan ends, in order. */
const leavesOf = (plan: TestPlan): (readonly number[])[] =>
	plan.test === null
		? [plan.states]
		: [...plan.then.values()].flatMap(leavesOf).sort((a, b) => a[0]! - b[0]!);

/** What a plan costs if every state is led through it by its own outcomes. */
function walked(system: System, plan: TestPlan) {
	const total = weightOfStates(system, everyState(system));
	let cost = 0;
	for (const state of everyState(system)) {
		let at = plan;
		while (at.test !== null) {
			const test = system.tests[at.test]!;
			cost += ((test.cost ?? 1) * system.weights[state]!) / total;
			at = at.then.get(test.outcomes[state]!)!;
		}
	}
	return { cost };
}

/**
 * A chain of n stages, one of them dead, all as likely; a test between two stages says on which side.
 * Every way of halving is open, so the optimum is that of a balanced binary tree of n leaves (the
 * least external path length, Knuth, The Art of Computer Programming vol. 3, 5.3.1; from memory):
 * with k = ⌊log2 n⌋ it is k + 2 − 2^(k+1)/n.
 */
const chain = (n: number): System => ({
	weights: equal(n),
	tests: range(n - 1).map((t) => ({ outcomes: range(n).map((s) => (s <= t ? 0 : 1)) }))
});

describe('a chain of stages with one dead among them', () => {
	it.each([
		[4, 2],
		[6, 2.6667],
		[8, 3],
		[10, 3.4],
		[12, 3.6667],
		[16, 4]
	])('of %i needs %f probes on average', (n, probes) => {
		const k = Math.floor(Math.log2(n));
		expect(k + 2 - 2 ** (k + 1) / n).toBeCloseTo(probes, 4);
		expect(optimumOf(chain(n))).toBeCloseTo(k + 2 - 2 ** (k + 1) / n, 10);
	});
	it('is found as fast by the greedy rule, which halves too', () => {
		for (const n of [4, 8, 16]) expect(greedyPlan(chain(n)).cost).toBeCloseTo(Math.log2(n), 10);
	});
});

describe('n suspects, as likely each, that can only be tried one at a time', () => {
	// The k-th try settles it with chance 1/n; the last two need n − 1 tries:
	// (1 + 2 + … + (n − 1) + (n − 1))/n = (n − 1)(n + 2)/2n.
	it.each([2, 3, 4, 5, 8, 12])('%i of them need (n − 1)(n + 2)/2n tries', (n) => {
		const system: System = {
			weights: equal(n),
			tests: range(n).map((t) => ({ outcomes: range(n).map((s) => (s === t ? 1 : 0)) }))
		};
		expect(optimumOf(system)).toBeCloseTo(((n - 1) * (n + 2)) / (2 * n), 10);
		expect(greedyPlan(system).cost).toBeCloseTo(((n - 1) * (n + 2)) / (2 * n), 10);
	});
});

describe('twelve coins, one of them too heavy or too light', () => {
	/** State 2c: coin c is heavy; 2c + 1: it is light. Outcome 0: level, 1: left sinks, 2: right. */
	const weighing = (left: readonly number[], right: readonly number[]) => ({
		outcomes: range(24).map((state) => {
			const coin = state >> 1;
			const light = state % 2 === 1;
			if (left.includes(coin)) return light ? 2 : 1;
			if (right.includes(coin)) return light ? 1 : 2;
			return 0;
		})
	});
	const first = (n: number) =>
		weighing(
			range(n),
			range(n).map((c) => c + n)
		);
	const system: System = { weights: equal(24), tests: range(6).map((n) => first(n + 1)) };
	// Level, left, right have 8 of the 24 states each: log2 3. MacKay, Information Theory, Inference,
	// and Learning Algorithms (2003), ch. 4, weighs the same coins (from memory).
	it('tell 1.5850 bit when four are weighed against four', () => {
		expect(gainOf(system, everyState(system), first(4))).toBeCloseTo(1.585, 4);
		expect(gainOf(system, everyState(system), first(4))).toBeCloseTo(Math.log2(3), 12);
	});
	// n against n: (24 − 4n)/24 level and 2n/24 on either side.
	it.each([1, 2, 3, 4, 5, 6])('tell what the sum of logarithms says for %i against %i', (n) => {
		const parts = [(24 - 4 * n) / 24, n / 12, n / 12].filter((p) => p > 0);
		const bits = parts.reduce((sum, p) => sum - p * Math.log2(p), 0);
		expect(gainOf(system, everyState(system), first(n))).toBeCloseTo(bits, 12);
	});
	it('are best begun with four against four', () => {
		expect(greedyPlan(system).test).toBe(3);
	});
});

describe('Huffman’s code', () => {
	// Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, 16.3 (from memory): frequencies
	// 45 13 12 16 9 5 in thousands take 224 000 bits for 100 000 letters.
	it('takes 2.24 bits a letter for the frequencies 45 13 12 16 9 5', () => {
		expect(huffmanOf([45, 13, 12, 16, 9, 5])).toBeCloseTo(2.24, 12);
	});
	it('with three letters gives nine equal words two letters each, and ten 2.2', () => {
		expect(huffmanOf(equal(9), 3)).toBeCloseTo(2, 12);
		// Eight words of two letters, two of three: (8·2 + 2·3)/10, one place of the tree left empty.
		expect(huffmanOf(equal(10), 3)).toBeCloseTo(2.2, 12);
	});
});

const systems = fc
	.record({
		weights: fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 7 }),
		letters: fc.integer({ min: 2, max: 3 }),
		tests: fc.array(
			fc.record({
				outcomes: fc.array(fc.nat(8), { minLength: 7, maxLength: 7 }),
				cost: fc.integer({ min: 1, max: 4 })
			}),
			{ maxLength: 6 }
		)
	})
	.map(({ weights, letters, tests }): System => ({
		weights,
		tests: tests.map(({ outcomes, cost }) => ({
			outcomes: weights.map((_, s) => outcomes[s]! % letters),
			cost
		}))
	}));

/** The least cost by trying every test first, without any memory. */
function tried({ weights, tests }: System, states: readonly number[]): number {
	const total = states.reduce((sum, s) => sum + weights[s]!, 0);
	const costs = tests.flatMap((test) => {
		const branches = [...branchesOf(test, states).values()];
		if (branches.length < 2) return [];
		return [branches.reduce((sum, b) => sum + tried({ weights, tests }, b), test.cost! * total)];
	});
	return costs.length === 0 ? 0 : Math.min(...costs);
}

describe('of any system', () => {
	it('the optimum is what trying every plan gives', () => {
		fc.assert(
			fc.property(systems, (system) => {
				const states = everyState(system);
				const total = weightOfStates(system, states);
				expect(optimumOf(system)).toBeCloseTo(tried(system, states) / total, 9);
			}),
			RUNS
		);
	});
	it('bound ≤ optimum ≤ greedy, and both plans end in the classes', () => {
		fc.assert(
			fc.property(systems, (system) => {
				const optimum = optimumOf(system);
				const { entropy, huffman } = boundsOf(system);
				const greedy = greedyPlan(system);
				expect(entropy).toBeLessThanOrEqual(huffman + 1e-9);
				expect(huffman).toBeLessThanOrEqual(optimum + 1e-9);
				expect(optimum).toBeLessThanOrEqual(greedy.cost + 1e-9);
				expect(leavesOf(greedy)).toEqual(classesOf(system));
				expect(leavesOf(new Optimum(system).plan())).toEqual(classesOf(system));
			}),
			RUNS
		);
	});
	it('some test first costs no less than the best first', () => {
		fc.assert(
			fc.property(systems, (system) => {
				const optimum = new Optimum(system);
				system.tests.forEach((_, t) =>
					expect(optimum.costAsking(t)).toBeGreaterThanOrEqual(optimum.cost() - 1e-9)
				);
			}),
			RUNS
		);
	});
});
