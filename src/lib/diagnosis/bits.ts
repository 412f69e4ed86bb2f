/** A set of small whole numbers as bits, 32 to a word. */
export class Bits {
	size = 0;
	private words: Uint32Array;

	/** Room for the numbers 0 to `most` − 1. */
	constructor(most: number) {
		this.words = new Uint32Array((most + 31) >>> 5);
	}

	static of(numbers: readonly number[], most: number): Bits {
		const bits = new Bits(most);
		for (const n of numbers) bits.add(n);
		return bits;
	}

	copy(): Bits {
		const bits = new Bits(0);
		bits.words = this.words.slice();
		bits.size = this.size;
		return bits;
	}

	has(n: number): boolean {
		return ((this.words[n >>> 5]! >>> (n & 31)) & 1) === 1;
	}

	add(n: number) {
		if (this.has(n)) return;
		this.words[n >>> 5]! |= 1 << (n & 31);
		this.size++;
	}

	delete(n: number) {
		if (!this.has(n)) return;
		this.words[n >>> 5]! &= ~(1 << (n & 31));
		this.size--;
	}

	/** Whether every number of this is in the other, which has room for them. */
	isWithin(other: Bits): boolean {
		if (this.size > other.size) return false;
		for (let i = 0; i < this.words.length; i++)
			if ((this.words[i]! & ~other.words[i]!) !== 0) return false;
		return true;
	}

	/** The numbers, ascending. */
	list(): number[] {
		const found: number[] = [];
		const { words } = this;
		for (let i = 0; i < words.length; i++)
			for (let w = words[i]!; w !== 0; w &= w - 1) found.push(32 * i + 31 - Math.clz32(w & -w));
		return found;
	}
}
