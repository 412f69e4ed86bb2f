/**
 * Sets of faults of one size, by what they come to: how many, what they weigh together, what the
 * heaviest weighs, and which it is. Figures of a cell stand side by side, since they are always wanted
 * together, and each size has cells of its own, since most numbers have sets of one size only.
 */
import { grown } from './rows';

/** How much heavier a set must be to take another's place: less is rounding, and the first stays. */
export const HEAVIER = 1 + 1e-12;
const FIGURES = 3;

export class Cells {
	private figures = new Float64Array(64 * FIGURES);
	/** The heaviest set of each cell: so many numbers of faults as `width`. */
	private sets: Int32Array;

	/** Sets of `size` faults; `width`: one more, for a fault to be lent a place. */
	constructor(
		private readonly size: number,
		private readonly width = size + 1
	) {
		this.sets = new Int32Array(64 * width);
	}

	makeRoom(id: number) {
		this.figures = grown(this.figures, (id + 1) * FIGURES);
		this.sets = grown(this.sets, (id + 1) * this.width);
	}

	/** How many sets come to `id`. It must have room. */
	count(id: number): number {
		return this.figures[id * FIGURES]!;
	}
	weight(id: number): number {
		return this.figures[id * FIGURES + 1]!;
	}
	best(id: number): number {
		return this.figures[id * FIGURES + 2]!;
	}

	/** Adds sets: how many, their weight, that of the heaviest, and it, from `from` on in `set`. */
	add(id: number, count: number, weight: number, best: number, set: Int32Array, from: number) {
		const { figures, sets, size } = this;
		const at = id * FIGURES;
		const isFirst = figures[at] === 0;
		figures[at]! += count;
		figures[at + 1]! += weight;
		if (!isFirst && best <= figures[at + 2]! * HEAVIER) return;
		figures[at + 2] = best;
		const own = id * this.width;
		for (let i = 0; i < size; i++) sets[own + i] = set[from + i]!;
	}

	/** Adds all sets of another one's `id`, as the sets of this one's `to`. */
	pour(from: Cells, id: number, to: number) {
		const { sets, width } = from;
		this.add(to, from.count(id), from.weight(id), from.best(id), sets, id * width);
	}

	/** Adds the sets of one fault fewer of `id`, each with that fault, as the sets of this one's `to`. */
	carry(fewer: Cells, id: number, to: number, fault: number, weight: number) {
		const { sets, size, width } = fewer;
		const own = id * width;
		// The fault is lent the place behind the set, so that no copy has to be made.
		sets[own + size] = fault;
		this.add(to, fewer.count(id), fewer.weight(id) * weight, fewer.best(id) * weight, sets, own);
	}

	/** The heaviest set. */
	setOf(id: number): number[] {
		return Array.from(this.sets.subarray(id * this.width, id * this.width + this.size));
	}
}
