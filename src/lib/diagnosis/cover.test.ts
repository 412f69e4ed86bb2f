/** The fewest columns against trying every choice of columns. */
import { describe, expect, it } from 'vitest';
import { fewestColumns } from './cover';
import { drawing } from './oracle.fixture';

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
	it('of nothing are none', () => {
		expect(fewestColumns([])).toEqual({ chosen: [], exact: true });
		expect(fewestColumns([[], []]).chosen).toEqual([]);
	});
});
