/**
 * Classes as they are found: the weight and the count of their sets, and where their heaviest set
 * stands in the tallies of the two layers. Its name is put together only when it is asked for.
 */
import { FIGURES, HEAVIER } from './cells';
import { grown } from './rows';
import type { Tally } from './tally';

export class ClassTally {
	weight: Float64Array;
	count: Float64Array;
	private best: Float64Array;
	/** Outcome and number of faults of the heaviest set, of wires and then of contacts: four each. */
	private at: Int32Array;

	constructor(
		private readonly most: number,
		private readonly wires: Tally,
		private readonly contacts: Tally
	) {
		// There are seldom more classes than this, and memory that is thrown away wakes the collector.
		const room = 64 + 2 * wires.ids;
		this.weight = new Float64Array(room);
		this.count = new Float64Array(room);
		this.best = new Float64Array(room);
		this.at = new Int32Array(4 * room);
	}

	private makeRoom(size: number) {
		this.weight = grown(this.weight, size);
		this.count = grown(this.count, size);
		this.best = grown(this.best, size);
		this.at = grown(this.at, 4 * size);
	}

	/**
	 * Adds the sets of each outcome of wires from place `from` to `to` (not included) of `wired`, beside
	 * one of contacts, `most` faults in all at most, to the classes that `ids` says, all below `size`.
	 */
	addEach(
		ids: Int32Array,
		size: number,
		wired: Int32Array,
		from: number,
		to: number,
		outcome: number
	) {
		this.makeRoom(size);
		for (let i = 0; i <= this.most; i++)
			for (let j = 0; i + j <= this.most; j++)
				if (this.contacts.cells[j]!.count(outcome) > 0)
					this.addSizes(ids, wired, from, to, i, outcome, j);
	}

	/** The same for sets of `i` faults of wires and `j` of contacts. */
	private addSizes(
		ids: Int32Array,
		wired: Int32Array,
		from: number,
		to: number,
		i: number,
		outcome: number,
		j: number
	) {
		const { weight, count, best, at } = this;
		const { figures } = this.wires.cells[i]!;
		const contacts = this.contacts.cells[j]!;
		const many = contacts.count(outcome);
		const heavy = contacts.weight(outcome);
		const heaviest = contacts.best(outcome);
		for (let place = from; place < to; place++) {
			const own = wired[place]! * FIGURES;
			if (figures[own] === 0) continue;
			const id = ids[place - from]!;
			count[id]! += figures[own]! * many;
			weight[id]! += figures[own + 1]! * heavy;
			const one = figures[own + 2]! * heaviest;
			if (one <= best[id]! * HEAVIER) continue;
			best[id] = one;
			at[4 * id] = wired[place]!;
			at[4 * id + 1] = i;
			at[4 * id + 2] = outcome;
			at[4 * id + 3] = j;
		}
	}

	/** The heaviest set of the class, sorted. */
	readonly heaviest = (id: number): number[] => {
		const [wired, i, outcome, j] = this.at.subarray(4 * id, 4 * id + 4) as unknown as number[];
		const wires = this.wires.cells[i!]!.setOf(wired!);
		const contacts = this.contacts.cells[j!]!.setOf(outcome!);
		return [...wires, ...contacts].sort((x, y) => x - y);
	};
}
