/**
 * Classes as they are found: the weight and the count of their sets, and where their heaviest set
 * stands in the tallies of the two layers. Its name is put together only when it is asked for.
 */
import { HEAVIER } from './cells';
import { grown } from './rows';
import type { Tally } from './tally';

export class ClassTally {
	weight = new Float64Array(64);
	count = new Float64Array(64);
	private best = new Float64Array(64);
	/** Outcome and number of faults of the heaviest set, of wires and then of contacts: four each. */
	private at = new Int32Array(256);

	constructor(
		private readonly most: number,
		private readonly wires: Tally,
		private readonly contacts: Tally
	) {}

	private makeRoom(id: number) {
		if (id < this.weight.length) return;
		this.weight = grown(this.weight, id + 1);
		this.count = grown(this.count, id + 1);
		this.best = grown(this.best, id + 1);
		this.at = grown(this.at, 4 * (id + 1));
	}

	/** Adds the sets of one outcome of wires beside one of contacts, `most` faults in all at most. */
	add(id: number, wired: number, outcome: number) {
		this.makeRoom(id);
		const { most, best } = this;
		for (let i = 0; i <= most; i++) {
			const wires = this.wires.cells[i]!;
			if (wires.count(wired) === 0) continue;
			for (let j = 0; i + j <= most; j++) {
				const contacts = this.contacts.cells[j]!;
				if (contacts.count(outcome) === 0) continue;
				this.count[id]! += wires.count(wired) * contacts.count(outcome);
				this.weight[id]! += wires.weight(wired) * contacts.weight(outcome);
				const heaviest = wires.best(wired) * contacts.best(outcome);
				if (heaviest <= best[id]! * HEAVIER) continue;
				best[id] = heaviest;
				this.at[4 * id] = wired;
				this.at[4 * id + 1] = i;
				this.at[4 * id + 2] = outcome;
				this.at[4 * id + 3] = j;
			}
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
