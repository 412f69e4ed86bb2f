/** The fewest columns against trying every choice of columns. */
import { describe, expect, it } from 'vitest';
import { cheapestCover, fewestColumns, usefulColumns } from './cover';
import { drawing } from './oracle.fixture';

/** What a generator ends with. */
function ended<T>(work: Generator<unknown, T>): T {
	for (;;) {
		const step = work.next();
		if (step.done) return step.value;
	}
}
const covered = (columns: readonly (readonly number[])[]) => new Set(columns.flat()).size;

/** The size of the smallest cover, by trying all. */
function tried(columns: readonly (readonly number[])[]): number {
	const all = covered(columns);
	let least = columns.length;
	for (let choice = 0; choice < 1 << columns.length; choice++) {
		const chosen = columns.filter((_, i) => (choice >> i) & 1);
		if (chosen.length < least && covered(chosen) === all) least = chosen.length;
	}
	return least;
}

describe('the fewest columns', () => {
	it('are as few as trying every choice gives, over 300 drawn tables', () => {
		const draw = drawing(5);
		for (let round = 0; round < 300; round++) {
			const width = 1 + draw(10);
			const density = 2 + draw(4);
			const columns = Array.from({ length: width }, () =>
				[...Array(12).keys()].filter(() => draw(density) === 0)
			);
			const { chosen, exact } = fewestColumns(columns);
			expect(exact).toBe(true);
			expect(covered(chosen.map((c) => columns[c]!))).toBe(covered(columns));
			expect(chosen).toHaveLength(tried(columns));
		}
	});
	// Widest first takes {0..3}, then two more; two rows of four cover all eight… of six columns.
	it('are fewer than the widest column each time finds', () => {
		const columns = [
			[0, 1, 2, 3, 4, 5],
			[0, 1, 2, 6, 7],
			[3, 4, 5, 8, 9],
			[6, 8],
			[7, 9]
		];
		expect(fewestColumns(columns).chosen).toEqual([1, 2]);
	});
	it('of a Fano plane’s lines, to meet every line, are a line: three', () => {
		const lines = [
			[0, 1, 2],
			[0, 3, 4],
			[0, 5, 6],
			[1, 3, 5],
			[1, 4, 6],
			[2, 3, 6],
			[2, 4, 5]
		];
		const points = [...Array(7).keys()].map((p) =>
			lines.flatMap((line, i) => (line.includes(p) ? [i] : []))
		);
		expect(fewestColumns(points).chosen).toHaveLength(3);
	});
	it('still cover when the limit cuts the search off, and say that they may not be fewest', () => {
		const draw = drawing(9);
		const columns = Array.from({ length: 60 }, () =>
			[...Array(60).keys()].filter(() => draw(9) === 0)
		);
		const { chosen, exact } = fewestColumns(columns, 3);
		expect(exact).toBe(false);
		expect(covered(chosen.map((c) => columns[c]!))).toBe(covered(columns));
	});
	it('still cover when the rules are cut off, and what they leave covers all', () => {
		const draw = drawing(11);
		const plain = Array.from({ length: 80 }, () => ({
			covers: [...Array(40).keys()].filter(() => draw(7) === 0),
			cost: 1,
			group: -1
		}));
		const lists = plain.map(({ covers }) => covers);
		const opening = { groups: [], ownerOf: [], owners: [] };
		const whole = ended(cheapestCover(plain, opening));
		expect(whole.exact).toBe(true);
		for (const looks of [0, 50, 500]) {
			const cut = ended(cheapestCover(plain, opening, Infinity, looks));
			expect(covered(cut.chosen.map((c) => lists[c]!))).toBe(covered(lists));
			expect(cut.exact).toBe(false);
			expect(cut.chosen.length).toBeGreaterThanOrEqual(whole.chosen.length);
			const { positions, isWhole } = ended(usefulColumns(plain, opening, looks));
			expect(isWhole).toBe(false);
			expect(covered(positions.map((c) => lists[c]!))).toBe(covered(lists));
		}
		expect(ended(usefulColumns(plain, opening)).isWhole).toBe(true);
	});
	it('of nothing are none', () => {
		expect(fewestColumns([])).toEqual({ chosen: [], exact: true });
		expect(fewestColumns([[], []]).chosen).toEqual([]);
	});
});
