/**
 * Partitions of at most sixteen nodes, two words each (engine/packed.ts): a node's four bits are the
 * number of the lowest node of its net. A joint renames one number in both words, and what a probe
 * cannot touch, which comes last, is masked away.
 */
import {
	NONE_JOINED,
	WordPairs,
	everywhere,
	figureOf,
	firstOf,
	matching,
	relabelled,
	renamed
} from '../engine';
import type { Labels, Partitions } from './partitions';
import { grown } from './rows';

/** Partitions that there is room for at first. */
const ROOM = 4096;

/** Ones in the first `n` figures of each word. */
const maskOf = (n: number): number => (n <= 0 ? 0 : n >= 8 ? -1 : (1 << (4 * n)) - 1);

/** The figure in place `i` of a word that is zero otherwise; zero where the word has no such place. */
const at = (i: number, label: number): number => (i >= 0 && i < 8 ? label << (i << 2) : 0);

/** Joins as probes see them, written out as rows of labels as they come. */
class SeenWords implements Labels {
	data: Int32Array;
	private readonly pairs = new WordPairs(ROOM);
	private readonly lowMask: number;
	private readonly highMask: number;

	constructor(readonly width: number) {
		this.data = new Int32Array(1024 * width);
		this.lowMask = maskOf(width);
		this.highMask = maskOf(width - 8);
	}

	get size(): number {
		return this.pairs.size;
	}

	intern(low: number, high: number): number {
		const { pairs } = this;
		const before = pairs.size;
		const id = pairs.intern(low & this.lowMask, high & this.highMask);
		if (id === before) this.write(id, low, high);
		return id;
	}

	private write(id: number, low: number, high: number) {
		const { width } = this;
		const from = id * width;
		this.data = grown(this.data, from + width);
		const { data } = this;
		let next = 0;
		for (let i = 0; i < width; i++) {
			const first = figureOf(low, high, i);
			data[from + i] = first === i ? next++ : data[from + first]!;
		}
	}

	at(id: number, i: number): number {
		return this.data[id * this.width + i]!;
	}
}

export class PackedPartitions implements Partitions {
	readonly seen: SeenWords;
	joins = 0;
	private readonly pairs = new WordPairs(ROOM);
	private readonly chains: Int32Array[] = [];
	private readonly one = new Int32Array(1);
	/** The words that were made last. */
	private low = 0;
	private high = 0;

	constructor(
		private readonly nodes: number,
		touched: number
	) {
		this.seen = new SeenWords(touched);
	}

	/** Joins the nets of two nodes in the words at hand. */
	private unite(a: number, b: number) {
		const { low, high } = this;
		const x = figureOf(low, high, a);
		const y = figureOf(low, high, b);
		const label = everywhere(x < y ? y : x);
		const change = everywhere(x ^ y);
		this.low = renamed(low, label, change);
		this.high = renamed(high, label, change);
	}

	private take(id: number) {
		this.low = id < 0 ? NONE_JOINED[0] : this.pairs.words[2 * id]!;
		this.high = id < 0 ? NONE_JOINED[1] : this.pairs.words[2 * id + 1]!;
	}

	private kept(): number {
		return this.pairs.intern(this.low, this.high);
	}

	with(start: number, ends: Int32Array, skip?: Uint8Array): number {
		if (start >= 0 && ends.length === 0) return start;
		this.joins++;
		this.take(start);
		for (let k = 0; k < ends.length; k += 2)
			if (!skip || !skip[k >> 1]) this.unite(ends[k]!, ends[k + 1]!);
		return this.kept();
	}

	joined(id: number, a: number, b: number): number {
		this.one[0] = id;
		this.joinedEach(this.one, 1, a, b, this.one);
		return this.one[0]!;
	}

	joinedEach(ids: Int32Array, many: number, a: number, b: number, into: Int32Array) {
		const { pairs } = this;
		let joins = 0;
		for (let i = 0; i < many; i++) {
			const id = ids[i]!;
			const low = pairs.words[2 * id]!;
			const high = pairs.words[2 * id + 1]!;
			const x = figureOf(low, high, a);
			const y = figureOf(low, high, b);
			if (x === y) {
				into[i] = id;
				continue;
			}
			joins++;
			const label = everywhere(x < y ? y : x);
			const change = everywhere(x ^ y);
			into[i] = pairs.intern(renamed(low, label, change), renamed(high, label, change));
		}
		this.joins += joins;
	}

	exchanged(id: number, a: number, b: number): number {
		this.one[0] = id;
		this.exchangedEach(this.one, 1, a, b, this.one);
		return this.one[0]!;
	}

	exchangedEach(ids: Int32Array, many: number, a: number, b: number, into: Int32Array) {
		for (let i = 0; i < many; i++) into[i] = this.exchange(ids[i]!, a, b);
	}

	private exchange(id: number, a: number, b: number): number {
		this.take(id);
		const netA = figureOf(this.low, this.high, a);
		const netB = figureOf(this.low, this.high, b);
		if (netA === netB) return id;
		this.joins++;
		const other = netA ^ netB;
		const low = this.low ^ at(a, other) ^ at(b, other);
		const high = this.high ^ at(a - 8, other) ^ at(b - 8, other);
		// Either net is called anew by its lowest node, both at once, since each may get the other's name.
		const lowA = matching(low, netA);
		const highA = matching(high, netA);
		const lowB = matching(low, netB);
		const highB = matching(high, netB);
		const toA = firstOf(lowA, highA);
		const toB = firstOf(lowB, highB);
		this.low = relabelled(relabelled(low, lowA, netA, toA), lowB, netB, toB);
		this.high = relabelled(relabelled(high, highA, netA, toA), highB, netB, toB);
		return this.kept();
	}

	/** Pairs of nodes, one after the other, that are enough to make the partition. */
	private chainOf(id: number): Int32Array {
		const known = this.chains[id];
		if (known) return known;
		this.take(id);
		const ends: number[] = [];
		for (let i = 0; i < this.nodes; i++) {
			const lowest = figureOf(this.low, this.high, i);
			if (lowest !== i) ends.push(lowest, i);
		}
		return (this.chains[id] = Int32Array.from(ends));
	}

	seenJoin(x: number, y: number): number {
		this.one[0] = x;
		this.seenJoins(this.one, 0, 1, y, this.one);
		return this.one[0]!;
	}

	seenJoins(list: Int32Array, from: number, to: number, y: number, into: Int32Array) {
		const chain = this.chainOf(y);
		const { seen } = this;
		const { words } = this.pairs;
		this.joins += to - from;
		for (let i = from; i < to; i++) {
			const x = list[i]!;
			let low = words[2 * x]!;
			let high = words[2 * x + 1]!;
			for (let k = 0; k < chain.length; k += 2) {
				const p = figureOf(low, high, chain[k]!);
				const q = figureOf(low, high, chain[k + 1]!);
				if (p === q) continue;
				const label = everywhere(p < q ? q : p);
				const change = everywhere(p ^ q);
				low = renamed(low, label, change);
				high = renamed(high, label, change);
			}
			into[i] = seen.intern(low, high);
		}
	}

	meets(x: number, y: number, a: number, b: number): boolean {
		this.joins++;
		const chain = this.chainOf(y);
		this.take(x);
		for (let k = 0; k < chain.length; k += 2) this.unite(chain[k]!, chain[k + 1]!);
		return figureOf(this.low, this.high, a) === figureOf(this.low, this.high, b);
	}
}
