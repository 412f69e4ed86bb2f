/** The dictionary against its oracle, the plain engine: `withFaults`, `inState`, `netsOf`. */
import { describe, expect, it } from 'vitest';
import { dictionaryOf, type Dictionary } from './dictionary';
import { BENCHES, drawing, plainAnswers } from './oracle.fixture';

/** What the dictionary says that these faults answer: the nets of every state. */
function answersIn(dictionary: Dictionary, set: readonly number[]): number[][] {
	const { columnOf, rows, seen, nodes } = dictionary;
	const id = dictionary.classOfSet(set);
	return columnOf.map((column) => nodes.map((_, i) => seen.at(rows.at(id, column), i)));
}
const binomial = (n: number, k: number): number => (k === 0 ? 1 : (binomial(n - 1, k - 1) * n) / k);

/** Sets of `size` different numbers under `n`, sorted. */
function setsOf(size: number, n: number, howMany: number, seed: number): number[][] {
	const draw = drawing(seed);
	return Array.from({ length: howMany }, () => {
		const set = new Set<number>();
		while (set.size < Math.min(size, n)) set.add(draw(n));
		return [...set].sort((a, b) => a - b);
	});
}

describe.each(Object.entries(BENCHES))('%s', (_, bench) => {
	const three = dictionaryOf(bench, 3);
	const n = three.faults.length;
	const agrees = (set: readonly number[]) => {
		const faults = set.map((i) => three.faults[i]!);
		expect(answersIn(three, set), JSON.stringify(faults)).toEqual(plainAnswers(bench, faults));
	};
	it('answers as the plain engine for the sound bench and every single fault', () => {
		agrees([]);
		three.faults.forEach((_, i) => agrees([i]));
	});
	it('answers as the plain engine for 1500 doubles and 1500 triples drawn from a stated seed', () => {
		if (n < 3) return;
		for (const size of [2, 3]) setsOf(size, n, 1500, 20261125 + size).forEach(agrees);
	});
	it('counts every set once', () => {
		expect(three.work.sets).toBe(1 + n + binomial(n, 2) + binomial(n, 3));
	});
	it('has the classes, counts and weights of a plain count of all sets of up to two', () => {
		const two = dictionaryOf(bench, 2);
		const plain = new Map<string, number>();
		const sets = [[], ...two.faults.map((_, i) => [i])];
		for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) sets.push([i, j]);
		const counts = new Map<number, number>();
		for (const set of n > 80 ? sets.filter((_, i) => i % 7 === 0) : sets) {
			const id = two.classOfSet(set);
			counts.set(id, (counts.get(id) ?? 0) + 1);
			const answers = JSON.stringify(
				plainAnswers(
					bench,
					set.map((i) => two.faults[i]!)
				)
			);
			expect(plain.get(answers) ?? id).toBe(id);
			plain.set(answers, id);
		}
		// Different answers are different classes.
		expect(new Set(plain.values()).size).toBe(plain.size);
		if (n <= 80) {
			expect(two.size).toBe(plain.size);
			for (const [id, count] of counts) expect(two.count[id]).toBe(count);
		}
	});
	it('names as a class’s heaviest a set that is of that class', () => {
		for (let id = 0; id < three.size; id += 97)
			expect(three.classOfSet(three.heaviest(id))).toBe(id);
	});
});
