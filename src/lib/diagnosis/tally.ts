/**
 * Sets of faults counted and weighed by what they come to, apart for each number of faults. What
 * they come to is a number (a partition, a class); of its sets only the heaviest is kept by name.
 */
import { Cells } from './cells';
import { grown } from './rows';

export type Moved = (ids: Int32Array, many: number, into: Int32Array) => void;

export class Tally {
	/** One more than the highest number that anything came to. */
	ids = 0;
	/** The fewest faults that come to each; `most` + 1 if none do. */
	fewest: Int32Array;
	/** Per number of faults; there is room for `ids` in each. */
	readonly cells: readonly Cells[];
	/** What sets of fewer than `most` faults come to: only those can take another. */
	private open = new Int32Array(64);
	private opened = 0;
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
		this.fewest[id] = size;
		if (size >= this.most || fewest < this.most) return;
		this.open = grown(this.open, this.opened + 1);
		this.open[this.opened++] = id;
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
		for (let size = 0; size <= this.most; size++) {
			const cells = this.cells[size]!;
			if (cells.count(id) === 0) continue;
			there.note(to, size);
			there.cells[size]!.pour(cells, id, to);
		}
	}

	/**
	 * Counts one fault in: every set so far that has room for it, with it added. `moved` writes what the
	 * sets of the first `many` of a list of numbers come to then.
	 */
	countIn(fault: number, weight: number, moved: Moved) {
		const { open, opened: many, most } = this;
		this.moves = grown(this.moves, many);
		const { moves } = this;
		moved(open, many, moves);
		let last = -1;
		for (let i = 0; i < many; i++) if (moves[i]! > last) last = moves[i]!;
		if (last >= this.ids) this.makeRoom(last);
		// Larger sets first, so that none that has just taken the fault takes it again.
		for (let size = most - 1; size >= 0; size--) {
			const isNew = (id: number) => this.note(id, size + 1);
			const to = this.cells[size + 1]!;
			to.carry(this.cells[size]!, open, moves, many, fault, weight, isNew);
		}
	}
}
