/**
 * Sets of faults counted and weighed by what they come to, apart for each number of faults. What
 * they come to is a number (a partition, a class); of its sets only the heaviest is kept by name.
 */
import { grown } from './rows';

export class Tally {
	/** One more than the highest number that anything came to. */
	ids = 0;
	count = new Float64Array(64);
	weight = new Float64Array(64);
	/** Weight of the heaviest set. */
	best = new Float64Array(64);
	/** The heaviest set of each cell: `most` numbers of faults. */
	private sets = new Int32Array(64);
	private readonly sizes: number;
	/** What sets of fewer than `most` faults come to: only those can take another. */
	readonly open: number[] = [];

	constructor(readonly most: number) {
		this.sizes = most + 1;
	}

	private makeRoom(id: number) {
		if (id < this.ids) return;
		this.ids = Math.max(this.ids, id + 1);
		const cells = this.ids * this.sizes;
		this.count = grown(this.count, cells);
		this.weight = grown(this.weight, cells);
		this.best = grown(this.best, cells);
		this.sets = grown(this.sets, cells * this.most + 1);
	}

	/** The cell of sets of `size` faults that come to `id`. */
	cell(id: number, size: number): number {
		return id * this.sizes + size;
	}

	/** The fewest faults that come to it; over `most` if none do. */
	fewest(id: number): number {
		const from = id * this.sizes;
		let size = 0;
		while (size <= this.most && this.count[from + size] === 0) size++;
		return size;
	}

	/** Adds sets of `size` faults: how many, what they weigh together, and the heaviest, from `from` on in `set`. */
	add(
		id: number,
		size: number,
		count: number,
		weight: number,
		best: number,
		set: ArrayLike<number>,
		from: number
	) {
		this.makeRoom(id);
		const cell = this.cell(id, size);
		if (size < this.most && this.fewest(id) >= this.most) this.open.push(id);
		const isFirst = this.count[cell] === 0;
		this.count[cell]! += count;
		this.weight[cell]! += weight;
		if (!isFirst && best <= this.best[cell]! * (1 + 1e-12)) return;
		this.best[cell] = best;
		for (let i = 0; i < size; i++) this.sets[cell * this.most + i] = set[from + i]!;
	}

	/** Adds one fault to the sets of `size` faults that come to `id`; with it they come to `to`. */
	carry(id: number, size: number, to: number, fault: number, weight: number) {
		const cell = this.cell(id, size);
		if (this.count[cell] === 0) return;
		this.makeRoom(to);
		const { count, best } = this;
		const at = cell * this.most;
		const last = this.sets[at + size];
		// The fault is lent a place behind the set, so that no copy has to be made.
		this.sets[at + size] = fault;
		this.add(
			to,
			size + 1,
			count[cell]!,
			this.weight[cell]! * weight,
			best[cell]! * weight,
			this.sets,
			at
		);
		this.sets[at + size] = last!;
	}

	/** Adds all that comes to `id` here to what comes to `to` there. */
	pour(id: number, there: Tally, to: number) {
		for (let size = 0; size <= this.most; size++) {
			const cell = this.cell(id, size);
			const { count, weight, best } = this;
			if (count[cell] === 0) continue;
			const at = cell * this.most;
			there.add(to, size, count[cell]!, weight[cell]!, best[cell]!, this.sets, at);
		}
	}

	/** The heaviest set of a cell. */
	setOf(cell: number, size: number): number[] {
		return Array.from(this.sets.subarray(cell * this.most, cell * this.most + size));
	}
}
