/**
 * The least expected cost of a system of tests, exactly, by dynamic programming over sets of
 * states; and what the greedy rule, most information for its cost first, comes to. States that no
 * test divides further are an answer.
 */
import { branchesOf, everyState, gainOf, weightOfStates, type System, type Test } from './system';

/** What to ask first, and the plan for each outcome; `test` null: these states are the answer. */
export interface TestPlan {
	readonly states: readonly number[];
	readonly test: number | null;
	readonly then: ReadonlyMap<number, TestPlan>;
	/** Expected cost from here on, the weights of these states shared out to sum to 1. */
	readonly cost: number;
}

/** Costs, in tests, that differ by less are the same: the rest is rounding. */
const HAIR = 1e-12;
/** Sets of states are bits of one number. */
export const MOST_STATES = 30;

const costOf = (test: Test): number => test.cost ?? 1;

const maskOf = (states: readonly number[]): number =>
	states.reduce((mask, s) => mask | (1 << s), 0);

export class Optimum {
	/** Sets of states looked at: the work, exactly. */
	visited = 0;
	/** Weighted cost and first test of each set. */
	private readonly known = new Map<number, { cost: number; test: number }>();
	/** For each test the states of each outcome. */
	private readonly sides: readonly (readonly number[])[];
	private readonly weights = new Map<number, number>();

	/** Throws for more than `MOST_STATES` states. */
	constructor(private readonly system: System) {
		const states = everyState(system);
		if (states.length > MOST_STATES) throw new Error(`more than ${MOST_STATES} states`);
		this.sides = system.tests.map((t) => [...branchesOf(t, states).values()].map(maskOf));
	}

	private weightOf(mask: number): number {
		let weight = this.weights.get(mask);
		if (weight === undefined) {
			weight = 0;
			for (let m = mask; m !== 0; m &= m - 1)
				weight += this.system.weights[31 - Math.clz32(m & -m)]!;
			this.weights.set(mask, weight);
		}
		return weight;
	}

	/** The cost of asking this test first, weighted; Infinity if it divides nothing. */
	private asking(mask: number, test: number, limit: number): number {
		const sides = this.sides[test]!;
		if (sides.some((side) => (side & mask) === mask)) return Infinity;
		let cost = costOf(this.system.tests[test]!) * this.weightOf(mask);
		for (const side of sides) {
			if (cost >= limit) return cost;
			if ((side & mask) !== 0) cost += this.best(side & mask).cost;
		}
		return cost;
	}

	private best(mask: number): { cost: number; test: number } {
		if ((mask & (mask - 1)) === 0) return { cost: 0, test: -1 };
		const known = this.known.get(mask);
		if (known) return known;
		this.visited++;
		const hair = HAIR * this.weightOf(mask);
		let best = { cost: Infinity, test: -1 };
		for (let test = 0; test < this.sides.length; test++) {
			const cost = this.asking(mask, test, best.cost);
			if (cost < best.cost - hair) best = { cost, test };
		}
		if (best.test < 0) best = { cost: 0, test: -1 };
		this.known.set(mask, best);
		return best;
	}

	/** The least expected cost from these states on. */
	cost(states: readonly number[] = everyState(this.system)): number {
		const mask = maskOf(states);
		return states.length < 2 ? 0 : this.best(mask).cost / this.weightOf(mask);
	}

	/** The expected cost from these states on with this test asked first and the best after it. */
	costAsking(test: number, states: readonly number[] = everyState(this.system)): number {
		const mask = maskOf(states);
		return this.asking(mask, test, Infinity) / this.weightOf(mask);
	}

	/** The first test of a cheapest plan; null if no test divides the states. */
	first(states: readonly number[] = everyState(this.system)): number | null {
		const { test } = this.best(maskOf(states));
		return test < 0 ? null : test;
	}

	/** A whole cheapest plan. */
	plan(states: readonly number[] = everyState(this.system)): TestPlan {
		return planOf(this.system, states, (left) => this.first(left));
	}
}

/** The plan that a rule for the next test gives. */
export function planOf(
	system: System,
	states: readonly number[],
	next: (states: readonly number[]) => number | null
): TestPlan {
	const test = states.length < 2 ? null : next(states);
	if (test === null) return { states, test, then: new Map(), cost: 0 };
	const then = new Map(
		[...branchesOf(system.tests[test]!, states)].map(
			([outcome, left]) => [outcome, planOf(system, left, next)] as const
		)
	);
	const total = weightOfStates(system, states);
	const after = [...then.values()].reduce(
		(cost, plan) => cost + plan.cost * weightOfStates(system, plan.states),
		0
	);
	return { states, test, then, cost: costOf(system.tests[test]!) + after / total };
}

/** The test with the most information for its cost, the first of several; null if none divides. */
export function greedyTest(system: System, states: readonly number[]): number | null {
	let best = { rate: 0, test: null as number | null };
	system.tests.forEach((test, i) => {
		if (branchesOf(test, states).size < 2) return;
		const rate = gainOf(system, states, test) / costOf(test);
		if (best.test === null || rate > best.rate + HAIR) best = { rate, test: i };
	});
	return best.test;
}

/** The plan of the greedy rule. */
export const greedyPlan = (system: System, states = everyState(system)): TestPlan =>
	planOf(system, states, (left) => greedyTest(system, left));
