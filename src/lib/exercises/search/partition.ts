/**
 * Sets of contacts that wires make one, as a partition: `at[i]` is the number of the block that
 * contact i is in, blocks numbered as they first appear. Two partitions are equal exactly when their
 * keys are, so a search can intern them and look at each once.
 */
export type Partition = readonly number[];

/** Union-find over the numbers 0 to n − 1. */
export class Joiner {
	readonly #up: number[];

	constructor(n: number) {
		this.#up = Array.from({ length: n }, (_, i) => i);
	}
	#top(start: number): number {
		const up = this.#up;
		let i = start;
		while (up[i] !== i) i = up[i] = up[up[i]!]!;
		return i;
	}
	isJoined = (a: number, b: number): boolean => this.#top(a) === this.#top(b);
	/** True if they were apart. */
	join(a: number, b: number): boolean {
		const [x, y] = [this.#top(a), this.#top(b)];
		this.#up[x] = y;
		return x !== y;
	}
	/** Joins all that bear the same label; there may be fewer labels than numbers. */
	joinLabels(labels: readonly number[]) {
		const first: number[] = [];
		for (let i = 0; i < labels.length; i++) {
			const label = labels[i]!;
			const other = first[label];
			if (other === undefined) first[label] = i;
			else this.join(other, i);
		}
	}
	/** One label per number, equal where joined. */
	labels(): number[] {
		return this.#up.map((_, i) => this.#top(i));
	}
}

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
	const joiner = new Joiner(n);
	for (const [x, y] of wires) joiner.join(x, y);
	return canonical(joiner.labels());
}
