/**
 * Test sequencing in general: states of which one is true, each with a weight, and tests that answer
 * one of several outcomes in each state. Find the true state (or the class that no test divides
 * further) at the least expected cost. The statement and the bounds are those of Pattipati and
 * Alexandridis, "Application of heuristic search and information theory to sequential fault
 * diagnosis", IEEE Trans. SMC 20(4), 1990; a bench's classes and probes are one such system (par.ts).
 */
export interface Test {
	/** Outcome in each state: a whole number from 0. */
	readonly outcomes: readonly number[];
	/** What it costs to ask; 1 unless said. */
	readonly cost?: number;
}
export interface System {
	/** Weight of each state; need not sum to 1. */
	readonly weights: readonly number[];
	readonly tests: readonly Test[];
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

/** Entropy of weights, bits. */
export function entropyOf(weights: readonly number[]): number {
	const total = sum(weights);
	return sum(weights.map((w) => (w > 0 ? -(w / total) * Math.log2(w / total) : 0)));
}

export const everyState = ({ weights }: System): number[] => [...weights.keys()];

/** The states by the outcome of a test; outcomes that no state has are left out. */
export function branchesOf(test: Test, states: readonly number[]): Map<number, number[]> {
	const branches = new Map<number, number[]>();
	for (const state of states) {
		const outcome = test.outcomes[state]!;
		const branch = branches.get(outcome);
		if (branch) branch.push(state);
		else branches.set(outcome, [state]);
	}
	return branches;
}

export const weightOfStates = ({ weights }: System, states: readonly number[]): number =>
	sum(states.map((s) => weights[s]!));

/** Expected information of a test, bits. */
export const gainOf = (system: System, states: readonly number[], test: Test): number =>
	entropyOf([...branchesOf(test, states).values()].map((b) => weightOfStates(system, b)));

/** The states by class: those that no test tells apart. */
export function classesOf({ weights, tests }: System): number[][] {
	const classes = new Map<string, number[]>();
	weights.forEach((_, state) => {
		const key = tests.map((t) => t.outcomes[state]).join();
		classes.set(key, [...(classes.get(key) ?? []), state]);
	});
	return [...classes.values()];
}

/**
 * Expected length of a Huffman code of the weights with `letters` letters (Huffman 1952): no
 * sequence of tests with that many outcomes has fewer on average.
 */
export function huffmanOf(weights: readonly number[], letters = 2): number {
	const total = sum(weights);
	const words = weights.map((w) => w / total);
	// Words of no weight fill the first knot, so that every later one is full.
	while (words.length > 1 && (words.length - 1) % (letters - 1) !== 0) words.push(0);
	words.sort((a, b) => a - b);
	// Knots come out in ascending order, so two queues do for a heap (van Leeuwen 1976, from memory).
	const knots: number[] = [];
	let word = 0;
	let knot = 0;
	const lightest = (): number =>
		knot < knots.length && !(words[word]! <= knots[knot]!) ? knots[knot++]! : words[word++]!;
	while (words.length - word + knots.length - knot > 1)
		knots.push(sum(Array.from({ length: letters }, lightest)));
	return sum(knots);
}

export interface Bounds {
	/** Entropy over the most that one test can tell, times the cheapest test. */
	readonly entropy: number;
	/** Huffman's length times the cheapest test; never under the other. */
	readonly huffman: number;
}

/** Lower bounds of the expected cost of finding the class of the true state. */
export function boundsOf(system: System): Bounds {
	const weights = classesOf(system).map((c) => weightOfStates(system, c));
	const letters = Math.max(2, ...system.tests.map((t) => new Set(t.outcomes).size));
	const cheapest = Math.min(Infinity, ...system.tests.map((t) => t.cost ?? 1));
	if (weights.length < 2) return { entropy: 0, huffman: 0 };
	return {
		entropy: (cheapest * entropyOf(weights)) / Math.log2(letters),
		huffman: cheapest * huffmanOf(weights, letters)
	};
}
