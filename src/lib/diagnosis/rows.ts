/**
 * Interning: equal rows of small numbers get one number, so that comparing two of them is comparing
 * two integers. Open addressing over typed arrays; the rows stand one after another in `data`. Nothing is
 * taken on trust of a hash: a row that meets its own hash is compared figure by figure.
 */
export interface Figures {
	readonly length: number;
	[index: number]: number;
}
type Store = Uint16Array | Int32Array;

const MIX = 0x9e3779b1;
const mixed = (h: number): number => {
	const x = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
	return x ^ (x >>> 13);
};

/** The typed array with room for `length` figures at least; the same one if it has it already. */
export function grown<T extends Store | Float64Array>(array: T, length: number): T {
	if (array.length >= length) return array;
	const next = new (array.constructor as new (n: number) => T)(Math.max(length, array.length * 2));
	next.set(array as never);
	return next;
}

export class Rows {
	size = 0;
	data: Store;
	private slots = new Int32Array(64).fill(-1);

	/** `long`: figures may be negative or over 65 535. */
	constructor(
		readonly width: number,
		long = false
	) {
		this.data = long ? new Int32Array(16 * width) : new Uint16Array(16 * width);
	}

	private hashOf(row: Figures, from: number): number {
		let h = 0;
		for (let i = 0; i < this.width; i++) h = Math.imul(h ^ row[from + i]!, MIX) ^ (h >>> 15);
		return mixed(h);
	}

	private isAt(id: number, row: Figures): boolean {
		const { data, width } = this;
		for (let i = 0, at = id * width; i < width; i++, at++) if (data[at] !== row[i]) return false;
		return true;
	}

	/** The slot where the row stands, or the free one where it should. */
	private slotOf(row: Figures): number {
		const mask = this.slots.length - 1;
		let slot = this.hashOf(row, 0) & mask;
		for (let id = this.slots[slot]!; id >= 0 && !this.isAt(id, row); id = this.slots[slot]!)
			slot = (slot + 1) & mask;
		return slot;
	}

	private rehash() {
		const slots = new Int32Array(this.slots.length * 2).fill(-1);
		const mask = slots.length - 1;
		for (let id = 0; id < this.size; id++) {
			let slot = this.hashOf(this.data, id * this.width) & mask;
			while (slots[slot]! >= 0) slot = (slot + 1) & mask;
			slots[slot] = id;
		}
		this.slots = slots;
	}

	/** The row's number, −1 if it has none. */
	find(row: Figures): number {
		return this.slots[this.slotOf(row)]!;
	}

	/** The row's number; a new row gets the next one. */
	intern(row: Figures): number {
		const slot = this.slotOf(row);
		const known = this.slots[slot]!;
		if (known >= 0) return known;
		const id = this.size++;
		this.data = grown(this.data, this.size * this.width);
		for (let i = 0, at = id * this.width; i < this.width; i++, at++) this.data[at] = row[i]!;
		this.slots[slot] = id;
		if (this.size * 2 > this.slots.length) this.rehash();
		return id;
	}

	/** Figure `i` of row `id`. */
	at(id: number, i: number): number {
		return this.data[id * this.width + i]!;
	}
}

/** A memo from two whole numbers to one, none of them negative. */
export class PairMemo {
	size = 0;
	private keys = new Int32Array(128).fill(-1);
	private values = new Int32Array(64);

	private slotOf(keys: Int32Array, a: number, b: number): number {
		const mask = keys.length / 2 - 1;
		let slot = mixed(Math.imul(a, MIX) ^ Math.imul(b, 0xc2b2ae35)) & mask;
		while (keys[2 * slot]! >= 0 && (keys[2 * slot] !== a || keys[2 * slot + 1] !== b))
			slot = (slot + 1) & mask;
		return slot;
	}

	/** What was set for the two, −1 if nothing was. */
	get(a: number, b: number): number {
		const slot = this.slotOf(this.keys, a, b);
		return this.keys[2 * slot]! < 0 ? -1 : this.values[slot]!;
	}

	/** Sets it; the two must not have been set before. */
	set(a: number, b: number, value: number) {
		if (++this.size * 2 > this.values.length) this.grow();
		const slot = this.slotOf(this.keys, a, b);
		this.keys[2 * slot] = a;
		this.keys[2 * slot + 1] = b;
		this.values[slot] = value;
	}

	private grow() {
		const keys = new Int32Array(this.keys.length * 2).fill(-1);
		const values = new Int32Array(this.values.length * 2);
		for (let old = 0; old < this.values.length; old++) {
			const a = this.keys[2 * old]!;
			if (a < 0) continue;
			const slot = this.slotOf(keys, a, this.keys[2 * old + 1]!);
			keys[2 * slot] = a;
			keys[2 * slot + 1] = this.keys[2 * old + 1]!;
			values[slot] = this.values[old]!;
		}
		this.keys = keys;
		this.values = values;
	}
}
