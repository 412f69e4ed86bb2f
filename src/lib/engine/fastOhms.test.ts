/** All pairs at once against the plain engine, pair by pair. */
import { describe, expect, it } from 'vitest';
import { circuit, type Circuit } from './circuit';
import { allPairsOhms } from './fastOhms';
import { randomBench, randomNumbers } from './random.fixture';
import { resistanceIn } from './solve';

function numbered({ nodes, conductors }: Circuit) {
	const at = new Map(nodes.map((node, i) => [node, i]));
	const ends = Int32Array.from(conductors.flatMap((c) => [at.get(c.a)!, at.get(c.b)!]));
	return { ends, siemens: Float64Array.from(conductors, (c) => 1 / c.ohms) };
}

describe('resistances of all pairs', () => {
	it('are those of the plain engine on 120 benches drawn from a stated seed', () => {
		const below = randomNumbers(7);
		for (let round = 0; round < 120; round++) {
			const made = circuit(randomBench(below));
			const { nodes, conductors } = made;
			const { ends, siemens } = numbered(made);
			const ohms = allPairsOhms(nodes.length, ends, siemens);
			for (let k = 0; k < 40; k++) {
				const [a, b] = [below(nodes.length), below(nodes.length)];
				const plain = resistanceIn(conductors, nodes[a]!, nodes[b]!);
				const fast = ohms[a * nodes.length + b]!;
				if (plain === Infinity || plain === 0) expect(fast).toBe(plain);
				// The plain answer is given to twelve figures; milliohms stand beside kilohms here.
				else expect(Math.abs(fast / plain - 1)).toBeLessThan(1e-8);
			}
		}
	});
	it('of a cube of equal edges are 7/12, 3/4 and 5/6 of an edge', () => {
		const ends = [...Array(8).keys()].flatMap((i) =>
			[1, 2, 4].filter((bit) => !(i & bit)).flatMap((bit) => [i, i | bit])
		);
		const ohms = allPairsOhms(8, Int32Array.from(ends), new Float64Array(12).fill(1));
		expect(ohms[1]).toBeCloseTo(7 / 12, 15);
		expect(ohms[3]).toBeCloseTo(3 / 4, 15);
		expect(ohms[7]).toBeCloseTo(5 / 6, 15);
	});
	it('passes over a branch from a node to itself, and leaves islands apart', () => {
		const ends = Int32Array.from([0, 0, 0, 1, 2, 3]);
		const ohms = allPairsOhms(4, ends, Float64Array.from([5, 2, 4]));
		expect([...ohms]).toEqual([
			...[0, 0.5, Infinity, Infinity],
			...[0.5, 0, Infinity, Infinity],
			...[Infinity, Infinity, 0, 0.25],
			...[Infinity, Infinity, 0.25, 0]
		]);
	});
});
