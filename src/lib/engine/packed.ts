/**
 * Partitions of at most sixteen contacts in two words: four bits a contact, the number of the lowest
 * contact that it is joined to. Equal partitions are equal words, and a joint renames one number in
 * all places of a word at once, with no loop.
 */
import { WordPairs } from './wordPairs';

/** Contacts that two words can hold. */
export const MOST_CONTACTS = 16;
const EVERY = 0x11111111;
/** The two words in which every contact is by itself. */
export const NONE_JOINED: readonly [number, number] = [0x76543210, 0xfedcba98 | 0];

/** Ones in every four bits of the word that are `label`. */
export function matching(word: number, label: number): number {
	const off = word ^ Math.imul(label, EVERY);
	// The top bit of each four is set exactly where all four are zero.
	const same = ~(((off & 0x77777777) + 0x77777777) | off) & 0x88888888;
	return ((same << 1) - (same >>> 3)) | 0;
}

/** The word with `label` made `to` where there are ones. */
export const relabelled = (word: number, ones: number, label: number, to: number): number =>
	word ^ (ones & Math.imul(label ^ to, EVERY));

/** The label in every four bits. */
export const everywhere = (label: number): number => Math.imul(label, EVERY);

/**
 * The word with every four bits that are one label made another: `label` is the first `everywhere`, and
 * `change` what sets the two apart, everywhere. Both words of a partition are told the same.
 */
export function renamed(word: number, label: number, change: number): number {
	const off = word ^ label;
	const same = ~(((off & 0x77777777) + 0x77777777) | off) & 0x88888888;
	return word ^ (((same << 1) - (same >>> 3)) & change);
}

/** Figure `i` of two words. */
export const figureOf = (low: number, high: number, i: number): number =>
	((i < 8 ? low : high) >>> ((i & 7) << 2)) & 15;

const lowestBit = (word: number): number => 31 - Math.clz32(word & -word);

/** The first place in two words that has ones. There must be one. */
export const firstOf = (low: number, high: number): number =>
	low === 0 ? 8 + (lowestBit(high) >> 2) : lowestBit(low) >> 2;

/** Partitions in numbered places, so that one can be made from another without an object. */
export class Packed {
	readonly low: Int32Array;
	readonly high: Int32Array;

	/** In place 0 every contact is by itself. */
	constructor(places: number) {
		this.low = new Int32Array(places).fill(NONE_JOINED[0]);
		this.high = new Int32Array(places).fill(NONE_JOINED[1]);
	}

	/** The lowest contact that contact `i` is joined to. */
	at(place: number, i: number): number {
		return figureOf(this.low[place]!, this.high[place]!, i);
	}

	/** Writes into place `to` what is in place `from` with these joints, two contacts each. */
	joinAll(from: number, ends: Int32Array, to: number) {
		let low = this.low[from]!;
		let high = this.high[from]!;
		for (let k = 0; k < ends.length; k += 2) {
			const a = ends[k]!;
			const b = ends[k + 1]!;
			const x = figureOf(low, high, a);
			const y = figureOf(low, high, b);
			const label = everywhere(x < y ? y : x);
			const change = everywhere(x ^ y);
			low = renamed(low, label, change);
			high = renamed(high, label, change);
		}
		this.low[to] = low;
		this.high[to] = high;
	}

	/**
	 * One joint after another, each into a place of its own from `to` on. A joint is three figures: the
	 * place that it starts from, less `base`, and two contacts. What starts from the one before it has the
	 * words at hand.
	 */
	joinEach(base: number, steps: Int32Array, to: number) {
		const { low: lows, high: highs } = this;
		let low = 0;
		let high = 0;
		let last = -1;
		for (let k = 0, place = to; k < steps.length; k += 3, place++) {
			const from = base + steps[k]!;
			const a = steps[k + 1]!;
			const b = steps[k + 2]!;
			if (from !== last) {
				low = lows[from]!;
				high = highs[from]!;
			}
			const x = figureOf(low, high, a);
			const y = figureOf(low, high, b);
			const label = everywhere(x < y ? y : x);
			const change = everywhere(x ^ y);
			low = renamed(low, label, change);
			high = renamed(high, label, change);
			lows[place] = low;
			highs[place] = high;
			last = place;
		}
	}
}

/** Continuity matrices, each distinct one kept once: a row of bits for each contact. */
export class Matrices {
	/** Bit b of figure `16 * number + a` is set where contacts a and b are joined. */
	rows = new Uint16Array(MOST_CONTACTS * 64);
	private readonly pairs = new WordPairs();

	/** Distinct matrices. */
	get size(): number {
		return this.pairs.size;
	}

	/** The number of the matrix of the partition in that place. */
	intern(packed: Packed, place: number): number {
		const { pairs } = this;
		const before = pairs.size;
		const id = pairs.intern(packed.low[place]!, packed.high[place]!);
		if (id === before) this.add(packed, place, id);
		return id;
	}

	/** The numbers of those in several places. */
	internEach(packed: Packed, places: Int32Array, into: Int32Array) {
		for (let i = 0; i < places.length; i++) into[i] = this.intern(packed, places[i]!);
	}

	private add(packed: Packed, place: number, id: number) {
		if (MOST_CONTACTS * (id + 1) > this.rows.length) {
			const rows = new Uint16Array(this.rows.length * 2);
			rows.set(this.rows);
			this.rows = rows;
		}
		const sets = new Uint16Array(MOST_CONTACTS);
		for (let i = 0; i < MOST_CONTACTS; i++) sets[packed.at(place, i)]! |= 1 << i;
		for (let i = 0; i < MOST_CONTACTS; i++)
			this.rows[MOST_CONTACTS * id + i] = sets[packed.at(place, i)]!;
	}

	isJoined(id: number, a: number, b: number): boolean {
		return ((this.rows[MOST_CONTACTS * id + a]! >>> b) & 1) === 1;
	}
}
