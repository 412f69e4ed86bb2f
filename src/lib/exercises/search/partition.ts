/**
 * Sets of contacts that wires make one, as a partition: `at[i]` is the number of the block that
 * contact i is in, blocks numbered as they first appear. Two partitions are equal exactly when their
 * keys are, so a search can intern them and look at each once.
 */
export type Partition = readonly number[];

/** Every contact by itself. */
export const discrete = (n: number): Partition => Array.from({ length: n }, (_, i) => i);

/** Renumbers blocks as they first appear. */
export function canonical(labels: readonly number[]): Partition {
	const numbers = new Map<number, number>();
	return labels.map((label) => {
		const known = numbers.get(label);
		if (known !== undefined) return known;
		numbers.set(label, numbers.size);
		return numbers.size - 1;
	});
}

/** One text per partition. */
export const keyOf = (p: Partition): string => String.fromCharCode(...p.map((block) => block + 48));

export const blocksOf = (p: Partition): number => p.reduce((most, b) => Math.max(most, b + 1), 0);

/** The partition with two of its blocks made one. */
export function merged(p: Partition, x: number, y: number): Partition {
	const [low, high] = x < y ? [x, y] : [y, x];
	return p.map((b) => (b === high ? low : b > high ? b - 1 : b));
}

/** The partition that wires between these contacts make. */
export function joinedBy(n: number, wires: readonly (readonly [number, number])[]): Partition {
	const root = [...discrete(n)];
	const find = (i: number): number => (root[i] === i ? i : (root[i] = find(root[i]!)));
	for (const [x, y] of wires) root[find(x)] = find(y);
	return canonical(root.map((_, i) => find(i)));
}
