/**
 * Sets of faults counted and weighed by what they come to, apart for each number of faults. What
 * they come to is a number (a partition, a class); of its sets only the heaviest is kept by name.
 */
import { Cells } from './cells';
import { grown } from './rows';

export class Tally {
	/** One more than the highest number that anything came to. */
	ids = 0;
	/** The fewest faults that come to each; `most` + 1 if none do. */
	fewest: Int32Array;
	/** Per number of faults; there is room for `ids` in each. */
	readonly cells: readonly Cells[];
	/** What sets of fewer than `most` faults come to: only those can take another. */
	private readonly open: number[] = [];
	/** Where each of `open` goes with the fault that is being counted in. */
	private moves = new Int32Array(64);

	constructor(readonly most: number) {
		this.cells = Array.from({ length: most + 1 }, (_, size) => new Cells(size));
		this.fewest = new Int32Array(64).fill(most + 1);
	}

	/** Makes room for `id` and says that sets of `size` faults come to it. */
	private note(id: number, size: number) {
		if (id >= this.ids) this.makeRoom(id);
		const fewest = this.fewest[id]!;
		if (size >= fewest) return;
		if (size < this.most && fewest >= this.most) this.open.push(id);
		this.fewest[id] = size;
	}

	private makeRoom(id: number) {
		this.ids = id + 1;
		const before = this.fewest.length;
		this.fewest = grown(this.fewest, this.ids);
		if (this.fewest.length > before) this.fewest.fill(this.most + 1, before);
		for (const cells of this.cells) cells.makeRoom(id);
	}

	/** Adds a set of faults, given by their numbers. */
	add(id: number, set: readonly number[], weight: number) {
		this.note(id, set.length);
		this.cells[set.length]!.add(id, 1, weight, weight, Int32Array.from(set), 0);
	}

	/** Adds all that comes to `id` here to what comes to `to` there. */
	pour(id: number, there: Tally, to: number) {
		for (const [size, cells] of this.cells.entries()) {
			if (cells.count(id) === 0) continue;
			there.note(to, size);
			there.cells[size]!.pour(cells, id, to);
		}
	}

	/**
	 * Counts one fault in: every set so far that has room for it, with it added. `moved`: what the sets
	 * that come to a number come to then.
	 */
	countIn(fault: number, weight: number, moved: (id: number) => number) {
		const { open, most } = this;
		const many = open.length;
		this.moves = grown(this.moves, many);
		for (let i = 0; i < many; i++) this.moves[i] = moved(open[i]!);
		// Larger sets first, so that none that has just taken the fault takes it again.
		for (let size = most - 1; size >= 0; size--) this.carry(size, many, fault, weight);
	}

	/** Carries the sets of `size` faults of the first `many` that are open to where they go. */
	private carry(size: number, many: number, fault: number, weight: number) {
		const { open, moves } = this;
		const fewer = this.cells[size]!;
		const more = this.cells[size + 1]!;
		for (let i = 0; i < many; i++) {
			const id = open[i]!;
			if (fewer.count(id) === 0) continue;
			const to = moves[i]!;
			if (to >= this.ids || more.count(to) === 0) this.note(to, size + 1);
			more.carry(fewer, id, to, fault, weight);
		}
	}
}
