/**
 * Partitions of at most sixteen contacts in two words: four bits a contact, the number of the lowest
 * contact that it is joined to. Equal partitions are equal words, and a joint renames one number in
 * all places of a word at once, with no loop.
 */

/** Contacts that two words can hold. */
export const MOST_CONTACTS = 16;
const EVERY = 0x11111111;

/** The word with every four bits that are `high` made `low`. */
export function renamed(word: number, high: number, low: number): number {
	const off = word ^ Math.imul(high, EVERY);
	// The top bit of each four is set exactly where all four are zero.
	const same = ~(((off & 0x77777777) + 0x77777777) | off) & 0x88888888;
	return word ^ ((same | (same - (same >>> 3))) & Math.imul(high ^ low, EVERY));
}

/** Partitions in numbered places, so that one can be made from another without an object. */
export class Packed {
	readonly low: Int32Array;
	readonly high: Int32Array;

	/** In place 0 every contact is by itself. */
	constructor(places: number) {
		this.low = new Int32Array(places).fill(0x76543210);
		this.high = new Int32Array(places).fill(0xfedcba98);
	}

	/** The lowest contact that contact `i` is joined to. */
	at(place: number, i: number): number {
		return i < 8
			? (this.low[place]! >>> (i << 2)) & 15
			: (this.high[place]! >>> ((i - 8) << 2)) & 15;
	}

	/** Writes into place `to` what is in place `from` with these joints, two contacts each. */
	joinAll(from: number, ends: Int32Array, to: number) {
		let low = this.low[from]!;
		let high = this.high[from]!;
		for (let k = 0; k < ends.length; k += 2) {
			const a = ends[k]!;
			const b = ends[k + 1]!;
			const x = ((a < 8 ? low : high) >>> ((a & 7) << 2)) & 15;
			const y = ((b < 8 ? low : high) >>> ((b & 7) << 2)) & 15;
			const less = x < y ? x : y;
			const more = x < y ? y : x;
			low = renamed(low, more, less);
			high = renamed(high, more, less);
		}
		this.low[to] = low;
		this.high[to] = high;
	}

	/**
	 * One joint after another, each into a place of its own from `to` on. A joint is three figures: the
	 * place that it starts from, less `base`, and two contacts.
	 */
	joinEach(base: number, steps: Int32Array, to: number) {
		const { low: lows, high: highs } = this;
		for (let k = 0, place = to; k < steps.length; k += 3, place++) {
			const from = base + steps[k]!;
			const a = steps[k + 1]!;
			const b = steps[k + 2]!;
			const low = lows[from]!;
			const high = highs[from]!;
			const x = ((a < 8 ? low : high) >>> ((a & 7) << 2)) & 15;
			const y = ((b < 8 ? low : high) >>> ((b & 7) << 2)) & 15;
			const less = x < y ? x : y;
			const more = x < y ? y : x;
			lows[place] = renamed(low, more, less);
			highs[place] = renamed(high, more, less);
		}
	}
}

/** Continuity matrices, each distinct one kept once: a row of bits for each contact. */
export class Matrices {
	size = 0;
	/** Bit b of figure `16 * number + a` is set where contacts a and b are joined. */
	rows = new Uint16Array(MOST_CONTACTS * 64);
	private keys = new Int32Array(2 * 64);
	private slots = new Int32Array(128).fill(-1);

	private slotOf(low: number, high: number): number {
		const { slots, keys } = this;
		const mask = slots.length - 1;
		const mixed = Math.imul(low ^ Math.imul(high, 0x9e3779b1), 0x85ebca6b);
		let slot = (mixed ^ (mixed >>> 15)) & mask;
		for (let id = slots[slot]!; id >= 0; id = slots[slot]!) {
			if (keys[2 * id] === low && keys[2 * id + 1] === high) break;
			slot = (slot + 1) & mask;
		}
		return slot;
	}

	/** The number of the matrix of the partition in that place. */
	intern(packed: Packed, place: number): number {
		const low = packed.low[place]!;
		const high = packed.high[place]!;
		const slot = this.slotOf(low, high);
		const known = this.slots[slot]!;
		return known >= 0 ? known : this.add(packed, place, slot);
	}

	private add(packed: Packed, place: number, slot: number): number {
		const id = this.size++;
		this.makeRoom();
		this.keys[2 * id] = packed.low[place]!;
		this.keys[2 * id + 1] = packed.high[place]!;
		const sets = new Uint16Array(MOST_CONTACTS);
		for (let i = 0; i < MOST_CONTACTS; i++) sets[packed.at(place, i)]! |= 1 << i;
		for (let i = 0; i < MOST_CONTACTS; i++)
			this.rows[MOST_CONTACTS * id + i] = sets[packed.at(place, i)]!;
		this.slots[slot] = id;
		if (this.size * 2 > this.slots.length) this.rehash();
		return id;
	}

	private makeRoom() {
		if (this.size * MOST_CONTACTS <= this.rows.length) return;
		const rows = new Uint16Array(this.rows.length * 2);
		const keys = new Int32Array(this.keys.length * 2);
		rows.set(this.rows);
		keys.set(this.keys);
		this.rows = rows;
		this.keys = keys;
	}

	private rehash() {
		this.slots = new Int32Array(this.slots.length * 2).fill(-1);
		for (let id = 0; id < this.size; id++)
			this.slots[this.slotOf(this.keys[2 * id]!, this.keys[2 * id + 1]!)] = id;
	}

	isJoined(id: number, a: number, b: number): boolean {
		return ((this.rows[MOST_CONTACTS * id + a]! >>> b) & 1) === 1;
	}
}
