/**
 * Sets of faults of one size, by what they come to: how many, what they weigh together, what the
 * heaviest weighs, and which it is. Figures of a cell stand side by side, since they are always wanted
 * together, and each size has cells of its own, since most numbers have sets of one size only.
 */
import { grown } from './rows';

/** How much heavier a set must be to take another's place: less is rounding, and the first stays. */
export const HEAVIER = 1 + 1e-12;
/** Figures of a cell. */
export const FIGURES = 3;

export class Cells {
	/** Per cell: how many sets, their weight together, and that of the heaviest. */
	figures = new Float64Array(64 * FIGURES);
	/** The heaviest set of each cell: so many numbers of faults as `width`. */
	private sets: Int32Array;
	private readonly width: number;

	/** Sets of `size` faults. */
	constructor(private readonly size: number) {
		this.width = Math.max(size, 1);
		this.sets = new Int32Array(64 * this.width);
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

	/**
	 * Adds the sets of one fault fewer of the first `many` of `ids`, each with that fault, as the sets of
	 * `into` in the same place. There must be room. `isNew` is told of each number that had none.
	 */
	carry(
		fewer: Cells,
		ids: Int32Array,
		into: Int32Array,
		many: number,
		fault: number,
		weight: number,
		isNew: (id: number) => void
	) {
		const { figures, sets, width } = this;
		const { figures: from, sets: smaller, size, width: narrow } = fewer;
		for (let i = 0; i < many; i++) {
			const own = ids[i]! * FIGURES;
			const count = from[own]!;
			if (count === 0) continue;
			const to = into[i]!;
			const at = to * FIGURES;
			const isFirst = figures[at] === 0;
			if (isFirst) isNew(to);
			figures[at]! += count;
			figures[at + 1]! += from[own + 1]! * weight;
			const best = from[own + 2]! * weight;
			if (!isFirst && best <= figures[at + 2]! * HEAVIER) continue;
			figures[at + 2] = best;
			const start = to * width;
			const first = ids[i]! * narrow;
			for (let k = 0; k < size; k++) sets[start + k] = smaller[first + k]!;
			sets[start + size] = fault;
		}
	}

	/** The heaviest set. */
	setOf(id: number): number[] {
		return Array.from(this.sets.subarray(id * this.width, id * this.width + this.size));
	}
}
