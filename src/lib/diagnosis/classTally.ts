/**
 * Classes as they are found: the weight and the count of their sets, and where their heaviest set
 * stands in the tallies of the two layers. Its name is put together only when it is asked for.
 */
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
		const { wires, contacts, most, best } = this;
		const sizes = most + 1;
		for (let i = 0; i <= most; i++) {
			const a = wired * sizes + i;
			if (wires.count[a] === 0) continue;
			for (let j = 0; i + j <= most; j++) {
				const b = outcome * sizes + j;
				if (contacts.count[b] === 0) continue;
				this.weight[id]! += wires.weight[a]! * contacts.weight[b]!;
				this.count[id]! += wires.count[a]! * contacts.count[b]!;
				const heaviest = wires.best[a]! * contacts.best[b]!;
				// A hair's breadth is rounding: the set that was found first stays.
				if (heaviest <= best[id]! * (1 + 1e-12)) continue;
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
		const wires = this.wires.setOf(this.wires.cell(wired!, i!), i!);
		const contacts = this.contacts.setOf(this.contacts.cell(outcome!, j!), j!);
		return [...wires, ...contacts].sort((x, y) => x - y);
	};
}
