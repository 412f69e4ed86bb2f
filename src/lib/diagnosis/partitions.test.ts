/** Partitions as two words against partitions as rows of labels, and which is taken when. */
import { describe, expect, it } from 'vitest';
import { drawing } from './oracle.fixture';
import { PackedPartitions } from './packedPartitions';
import { partitionsOf } from './partitions';
import { RowPartitions } from './rowPartitions';

/** One partition in both, made by the same steps. */
type Both = readonly [number, number];

function worked(nodes: number, touched: number, seed: number) {
	const below = drawing(seed);
	const ways = [new PackedPartitions(nodes, touched), new RowPartitions(nodes, touched)] as const;
	const both = (step: (way: (typeof ways)[number], i: 0 | 1) => number): Both => [
		step(ways[0], 0),
		step(ways[1], 1)
	];
	const made: Both[] = [both((way) => way.with(-1, new Int32Array(0)))];
	for (let round = 0; round < 60; round++) {
		const from = made[below(made.length)]!;
		const [a, b] = [below(nodes), below(nodes)];
		const ends = Int32Array.from({ length: 2 * below(4) }, () => below(nodes));
		const skip = Uint8Array.from(ends, () => below(2));
		const kind = below(3);
		made.push(
			both((way, i) => {
				if (kind === 0) return way.with(from[i], ends, skip);
				return kind === 1 ? way.joined(from[i], a, b) : way.exchanged(from[i], a, b);
			})
		);
	}
	return { ways, made, below };
}

describe.each([
	[16, 16],
	[16, 9],
	[13, 8],
	[11, 11],
	[7, 5],
	[1, 1],
	[3, 0]
])('%i nodes, of which a probe touches %i', (nodes, touched) => {
	it('are numbered alike, whichever way they are kept', () => {
		for (let seed = 0; seed < 40; seed++) {
			const { ways, made } = worked(nodes, touched, seed);
			for (const [packed, row] of made) expect(packed).toBe(row);
			expect(ways[0].joins).toBe(ways[1].joins);
		}
	});
	it('are seen alike when two are laid together', () => {
		for (let seed = 0; seed < 40; seed++) {
			const { ways, made, below } = worked(nodes, touched, seed);
			for (let round = 0; round < 60; round++) {
				const [x, y] = [made[below(made.length)]!, made[below(made.length)]!];
				const [a, b] = [below(nodes), below(nodes)];
				const seen = ways.map((way, i) => {
					const id = way.seenJoin(x[i]!, y[i]!);
					return [id, way.meets(x[i]!, y[i]!, a, b), ...labels(way, id, touched)];
				});
				expect(seen[0]).toEqual(seen[1]);
			}
			expect(ways[0].seen.size).toBe(ways[1].seen.size);
		}
	});
	it('are joined and exchanged alike one by one and as a list, which may be written over', () => {
		const { ways, made, below } = worked(nodes, touched, 8);
		for (let round = 0; round < 20; round++) {
			const [a, b] = [below(nodes), below(nodes)];
			for (const [i, way] of ways.entries())
				for (const kind of ['joined', 'exchanged'] as const) {
					const list = Int32Array.from(made, (one) => one[i]!);
					const many = list.length - 1;
					const byOne = Array.from(list, (id, k) => (k < many ? way[kind](id, a, b) : id));
					way[`${kind}Each`](list, many, a, b, list);
					expect([...list]).toEqual(byOne);
				}
		}
	});
	it('are seen alike one by one and as a list', () => {
		const { ways, made } = worked(nodes, touched, 7);
		for (const [i, way] of ways.entries()) {
			const list = Int32Array.from(made, (one) => one[i]!);
			const into = new Int32Array(list.length).fill(-1);
			way.seenJoins(list, 2, list.length - 1, list[3]!, into);
			const byOne = Array.from(list, (x, k) =>
				k < 2 || k === list.length - 1 ? -1 : way.seenJoin(x, list[3]!)
			);
			expect([...into]).toEqual(byOne);
		}
	});
});

const labels = ({ seen }: PackedPartitions | RowPartitions, id: number, touched: number) =>
	Array.from({ length: touched }, (_, i) => seen.at(id, i));

it('sixteen nodes fit into two words, and seventeen do not', () => {
	expect(partitionsOf(16, 4)).toBeInstanceOf(PackedPartitions);
	expect(partitionsOf(17, 4)).toBeInstanceOf(RowPartitions);
});
