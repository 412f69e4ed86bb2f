/**
 * Interning of pairs of 32-bit words: equal pairs get one number. Open addressing over typed arrays;
 * nothing is taken on trust of a hash, both words are compared.
 */

/** How often the room is doubled at once when it is used up. */
const GROWTH = 2;

export class WordPairs {
	size = 0;
	/** The two words of each pair, one after the other, by number. */
	words: Int32Array;
	private slots: Int32Array;
	private shift: number;

	/** `room`: pairs that are expected; it grows by itself. */
	constructor(room = 64) {
		this.words = new Int32Array(2 * room);
		this.slots = new Int32Array(2 ** Math.ceil(Math.log2(2 * room))).fill(-1);
		this.shift = Math.clz32(this.slots.length - 1);
	}

	/** Where the pair is looked for first: the top bits, which both words have a part in. */
	private startOf(low: number, high: number): number {
		return (Math.imul(low, 0x9e3779b1) + Math.imul(high, 0x85ebca6b)) >>> this.shift;
	}

	/** The pair's number; a new pair gets the next one, which is `size` before the call. */
	intern(low: number, high: number): number {
		const { slots, words } = this;
		let slot = this.startOf(low, high);
		for (let id = slots[slot]!; id >= 0; id = slots[slot]!) {
			if (words[2 * id] === low && words[2 * id + 1] === high) return id;
			slot = (slot + 1) & (slots.length - 1);
		}
		return this.add(low, high, slot);
	}

	private add(low: number, high: number, slot: number): number {
		const id = this.size++;
		if (2 * id >= this.words.length) this.makeRoom();
		this.words[2 * id] = low;
		this.words[2 * id + 1] = high;
		this.slots[slot] = id;
		if (this.size * 2 > this.slots.length) this.rehash();
		return id;
	}

	private makeRoom() {
		const words = new Int32Array(this.words.length << GROWTH);
		words.set(this.words);
		this.words = words;
	}

	private rehash() {
		const slots = (this.slots = new Int32Array(this.slots.length << GROWTH).fill(-1));
		this.shift -= GROWTH;
		for (let id = 0; id < this.size; id++) {
			let slot = this.startOf(this.words[2 * id]!, this.words[2 * id + 1]!);
			while (slots[slot]! >= 0) slot = (slot + 1) & (slots.length - 1);
			slots[slot] = id;
		}
	}
}
