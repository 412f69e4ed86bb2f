/**
 * Interning: equal rows of small numbers get one number, so that comparing two of them is comparing
 * two integers. Open addressing over typed arrays; the rows stand one after another in `data`. Nothing is
 * taken on trust of a hash: a row that meets its own hash is compared figure by figure. Every row is
 * an Int32Array, because code that meets one kind of array only is several times faster.
 */

const MIX = 0x9e3779b1;
const mixed = (h: number): number => {
	const x = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
	return x ^ (x >>> 13);
};

/** The typed array with room for `length` figures at least; the same one if it has it already. */
export function grown<T extends Int32Array | Float64Array>(array: T, length: number): T {
	if (array.length >= length) return array;
	const next = new (array.constructor as new (n: number) => T)(Math.max(length, array.length * 4));
	next.set(array as never);
	return next;
}

export class Rows {
	size = 0;
	data: Int32Array;
	private slots = new Int32Array(1024).fill(-1);

	constructor(readonly width: number) {
		this.data = new Int32Array(256 * width);
	}

	private hashOf(row: Int32Array, from: number): number {
		let h = 0;
		const to = from + this.width;
		for (let i = from; i < to; i++) h = Math.imul(h ^ row[i]!, MIX) ^ (h >>> 15);
		return mixed(h);
	}

	private isAt(id: number, row: Int32Array, from: number): boolean {
		const { data, width } = this;
		const at = id * width;
		for (let i = 0; i < width; i++) if (data[at + i] !== row[from + i]) return false;
		return true;
	}

	/** The slot where the row that begins at `from` stands, or the free one where it should. */
	private slotOf(row: Int32Array, from: number): number {
		const { slots } = this;
		const mask = slots.length - 1;
		let slot = this.hashOf(row, from) & mask;
		for (let id = slots[slot]!; id >= 0 && !this.isAt(id, row, from); id = slots[slot]!)
			slot = (slot + 1) & mask;
		return slot;
	}

	private rehash() {
		const slots = new Int32Array(this.slots.length * 4).fill(-1);
		const mask = slots.length - 1;
		for (let id = 0; id < this.size; id++) {
			let slot = this.hashOf(this.data, id * this.width) & mask;
			while (slots[slot]! >= 0) slot = (slot + 1) & mask;
			slots[slot] = id;
		}
		this.slots = slots;
	}

	/** The row's number, −1 if it has none. */
	find(row: Int32Array): number {
		return this.slots[this.slotOf(row, 0)]!;
	}

	/** The row's number; a new row gets the next one. It begins at `from` in `row`. */
	intern(row: Int32Array, from = 0): number {
		const slot = this.slotOf(row, from);
		const known = this.slots[slot]!;
		if (known >= 0) return known;
		const id = this.size++;
		const { width } = this;
		if (this.size * width > this.data.length) this.data = grown(this.data, this.size * width);
		const { data } = this;
		for (let i = 0, at = id * width; i < width; i++, at++) data[at] = row[from + i]!;
		this.slots[slot] = id;
		if (this.size * 2 > this.slots.length) this.rehash();
		return id;
	}

	/** The numbers of the first `many` rows that stand one after another. */
	internEach(rows: Int32Array, many: number, into: Int32Array) {
		for (let i = 0; i < many; i++) into[i] = this.intern(rows, i * this.width);
	}

	/** Figure `i` of row `id`. */
	at(id: number, i: number): number {
		return this.data[id * this.width + i]!;
	}
}
