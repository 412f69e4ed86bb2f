/**
 * Sets of faults as paths of a tree, so that equal sets are one number. Faults are told in ascending
 * order; a set that takes one more is a child of what it was. Pairs begin at the root, and a fault moves
 * those whose answer it changes on to children: in the end two pairs stand at one number exactly when
 * the same faults change them. Nothing is hashed but the numbers themselves.
 */
import { grown } from './rows';

export class CatchSets {
	/** Sets so far; 0 is the empty one. */
	size = 1;
	private parent = new Int32Array(256);
	private last = new Int32Array(256);
	private readonly children = new Map<number, number>();

	constructor(private readonly faults: number) {}

	/** The set with one more fault, which is later than all in it. */
	with(set: number, fault: number): number {
		const key = set * this.faults + fault;
		const known = this.children.get(key);
		if (known !== undefined) return known;
		const id = this.size++;
		this.parent = grown(this.parent, this.size);
		this.last = grown(this.last, this.size);
		this.parent[id] = set;
		this.last[id] = fault;
		this.children.set(key, id);
		return id;
	}

	/** The faults of a set, ascending. */
	faultsOf(set: number): number[] {
		const faults: number[] = [];
		for (let at = set; at !== 0; at = this.parent[at]!) faults.push(this.last[at]!);
		return faults.reverse();
	}
}

/** The set of every pair of places, in one plug state. */
export class PairSets {
	/** By `a * places + b`, a under b. */
	readonly of: Int32Array;
	private fault = -1;
	/** Where this fault leads from a set, and the fault for which that was noted, plus 1. */
	private to = new Int32Array(256);
	private noted = new Int32Array(256);

	constructor(
		private readonly places: number,
		private readonly sets: CatchSets
	) {
		this.of = new Int32Array(places * places);
	}

	/** All pairs at the empty set again. */
	begin() {
		this.of.fill(0);
		this.noted.fill(0);
	}

	/** Every pair of one from each cell is caught by this fault. */
	catch(fault: number, cellA: Int32Array, cellB: Int32Array) {
		this.fault = fault;
		for (const a of cellA)
			for (const b of cellB) this.move(a < b ? a * this.places + b : b * this.places + a);
	}

	private move(pair: number) {
		const set = this.of[pair]!;
		if (set >= this.to.length || this.noted[set] !== this.fault + 1) this.note(set);
		this.of[pair] = this.to[set]!;
	}

	private note(set: number) {
		const next = this.sets.with(set, this.fault);
		this.to = grown(this.to, next + 1);
		this.noted = grown(this.noted, next + 1);
		this.to[set] = next;
		this.noted[set] = this.fault + 1;
	}
}
