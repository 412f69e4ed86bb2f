/** Numbered nets against the plain engine, and against the slowest way there is. */
import { describe, expect, it } from 'vitest';
import { circuit } from './circuit';
import { labelsOf } from './fastNets';
import { netsOf } from './nets';
import { randomBench, randomNumbers } from './random.fixture';

/** Spreads the least number of each net along joints until nothing changes, then renumbers. */
function slowLabels(nodes: number, ends: readonly number[]): number[] {
	const least = Array.from({ length: nodes }, (_, i) => i);
	for (let changed = true; changed;) {
		changed = false;
		for (let k = 0; k < ends.length; k += 2)
			for (const [x, y] of [
				[ends[k]!, ends[k + 1]!],
				[ends[k + 1]!, ends[k]!]
			] as const)
				if (least[y]! < least[x]!) {
					least[x] = least[y]!;
					changed = true;
				}
	}
	const order = [...new Set(least)];
	return least.map((l) => order.indexOf(l));
}

describe('numbered nets', () => {
	it('are as joints spread one by one, on 600 graphs drawn from a stated seed', () => {
		const below = randomNumbers(1976);
		for (let round = 0; round < 600; round++) {
			const nodes = 1 + below(40);
			const ends = Array.from({ length: 2 * below(2 * nodes) }, () => below(nodes));
			expect([...labelsOf(nodes, Int32Array.from(ends))]).toEqual(slowLabels(nodes, ends));
		}
	});
	it('are the plain nets of 300 benches drawn from a stated seed', () => {
		const below = randomNumbers(42);
		for (let round = 0; round < 300; round++) {
			const bench = randomBench(below);
			const { nodes, conductors } = circuit(bench);
			const at = new Map(nodes.map((node, i) => [node, i]));
			const joining = conductors.filter((c) => c.joins);
			const ends = Int32Array.from(joining.flatMap((c) => [at.get(c.a)!, at.get(c.b)!]));
			const labels = labelsOf(nodes.length, ends);
			const { list, indexOf } = netsOf(bench);
			expect(new Set(labels).size).toBe(list.length);
			const plain = new Map<number, number>();
			nodes.forEach((node, i) => {
				const net = indexOf.get(node)!;
				expect(plain.get(labels[i]!) ?? net).toBe(net);
				plain.set(labels[i]!, net);
			});
		}
	});
});
