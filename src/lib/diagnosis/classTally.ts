/** Classes as they are found: the weight and the count of their sets, and the heaviest set by name. */
import { grown } from './rows';
import type { Tally } from './tally';

export class ClassTally {
	weight = new Float64Array(64);
	count = new Float64Array(64);
	private best = new Float64Array(64);
	private sets = new Int32Array(64);

	constructor(private readonly most: number) {}

	/** Adds the sets of one outcome of wires beside one of contacts, `most` faults in all at most. */
	add(id: number, wires: Tally, wired: number, contacts: Tally, outcome: number) {
		this.weight = grown(this.weight, id + 1);
		this.count = grown(this.count, id + 1);
		this.best = grown(this.best, id + 1);
		for (let i = 0; i <= this.most; i++) {
			const a = wires.cell(wired, i);
			if (wires.count[a] === 0) continue;
			for (let j = 0; i + j <= this.most; j++) {
				const b = contacts.cell(outcome, j);
				if (contacts.count[b] === 0) continue;
				this.weight[id]! += wires.weight[a]! * contacts.weight[b]!;
				this.count[id]! += wires.count[a]! * contacts.count[b]!;
				const best = wires.best[a]! * contacts.best[b]!;
				// A hair's breadth is rounding: the set that was found first stays.
				if (best <= this.best[id]! * (1 + 1e-12)) continue;
				this.best[id] = best;
				this.keep(id, wires.setOf(a, i), contacts.setOf(b, j));
			}
		}
	}

	private keep(id: number, wires: readonly number[], contacts: readonly number[]) {
		const { most } = this;
		this.sets = grown(this.sets, (id + 1) * most);
		const set = [...wires, ...contacts].sort((x, y) => x - y);
		for (let k = 0; k < most; k++) this.sets[id * most + k] = set[k] ?? -1;
	}

	/** The heaviest set of the class. */
	readonly heaviest = (id: number): number[] =>
		Array.from(this.sets.subarray(id * this.most, (id + 1) * this.most)).filter((f) => f >= 0);
}
