/**
 * Partitions of numbered nodes into nets. One is a row of labels: the number of the net that each
 * node is on, numbered as they first appear, so that equal partitions are equal rows. That is right
 * for any number of nodes, and for the dozen of one socket as short as a matrix of bits. Each
 * distinct row is kept once and known by its number (rows.ts). `joins` counts the work, exactly.
 */
import { Rows } from './rows';

export class Partitions {
	readonly rows: Rows;
	/** Partitions made by joining, whether they were new or not. */
	joins = 0;
	private readonly chains: Int32Array[] = [];
	private readonly parent: Int32Array;
	private readonly seen: Int32Array;
	private readonly labels: Int32Array;

	constructor(readonly nodes: number) {
		this.rows = new Rows(nodes);
		this.parent = new Int32Array(nodes);
		this.seen = new Int32Array(nodes);
		this.labels = new Int32Array(nodes);
	}

	private root(start: number): number {
		const { parent } = this;
		let i = start;
		while (parent[i] !== i) i = parent[i] = parent[parent[i]!]!;
		return i;
	}

	private unite(a: number, b: number) {
		this.parent[this.root(a)] = this.root(b);
	}

	/** Numbers the roots of these nodes as they first appear; `first`: the partition behind the roots. */
	private named(first: Int32Array | null, from: number, nodes: Int32Array | null): Int32Array {
		const { seen, labels } = this;
		const n = nodes ? nodes.length : this.nodes;
		seen.fill(-1);
		let next = 0;
		for (let i = 0; i < n; i++) {
			const node = nodes ? nodes[i]! : i;
			const root = this.root(first ? first[from + node]! : node);
			if (seen[root]! < 0) seen[root] = next++;
			labels[i] = seen[root]!;
		}
		return labels;
	}

	/**
	 * The partition `start` (a number; −1: every node by itself) with these pairs joined: `ends` holds
	 * the two nodes of each pair one after the other; pairs that `skip` marks are left out.
	 */
	with(start: number, ends: Int32Array, skip: Uint8Array | null = null): number {
		const { parent, rows, nodes } = this;
		this.joins++;
		for (let i = 0; i < nodes; i++) parent[i] = i;
		const from = start * nodes;
		const { data } = rows;
		for (let k = 0; k < ends.length; k += 2) {
			if (skip && skip[k >> 1]) continue;
			const a = ends[k]!;
			const b = ends[k + 1]!;
			if (start < 0) this.unite(a, b);
			else this.unite(data[from + a]!, data[from + b]!);
		}
		return rows.intern(start < 0 ? this.named(null, 0, null) : this.named(data, from, null));
	}

	/** The partition with two nodes joined; itself when they are on one net. */
	joined(id: number, a: number, b: number): number {
		const { rows, nodes, labels } = this;
		const { data } = rows;
		const from = id * nodes;
		const low = Math.min(data[from + a]!, data[from + b]!);
		const high = Math.max(data[from + a]!, data[from + b]!);
		if (low === high) return id;
		this.joins++;
		for (let i = 0; i < nodes; i++) {
			const label = data[from + i]!;
			labels[i] = label === high ? low : label > high ? label - 1 : label;
		}
		return rows.intern(labels);
	}

	/** The partition with two nodes in each other's place. */
	exchanged(id: number, a: number, b: number): number {
		const { rows, nodes, labels, seen } = this;
		const { data } = rows;
		const from = id * nodes;
		const netA = data[from + a]!;
		const netB = data[from + b]!;
		if (netA === netB) return id;
		this.joins++;
		seen.fill(-1);
		let next = 0;
		for (let i = 0; i < nodes; i++) {
			const net = i === a ? netB : i === b ? netA : data[from + i]!;
			if (seen[net]! < 0) seen[net] = next++;
			labels[i] = seen[net]!;
		}
		return rows.intern(labels);
	}

	/** Pairs of nodes, one after the other, that are enough to make the partition. */
	private chainOf(id: number): Int32Array {
		const known = this.chains[id];
		if (known) return known;
		const last = new Map<number, number>();
		const ends: number[] = [];
		for (let i = 0; i < this.nodes; i++) {
			const net = this.rows.at(id, i);
			const before = last.get(net);
			if (before !== undefined) ends.push(before, i);
			last.set(net, i);
		}
		return (this.chains[id] = Int32Array.from(ends));
	}

	/** The join of two partitions as these nodes see it, interned in `into` (its width: their number). */
	seenJoin(x: number, y: number, nodes: Int32Array, into: Rows): number {
		this.layTogether(x, y);
		return into.intern(this.named(this.rows.data, x * this.nodes, nodes));
	}

	/** Unites the nets of `x`, as roots, wherever `y`, which joins little, joins them. */
	private layTogether(x: number, y: number) {
		const { parent, rows, nodes } = this;
		const chain = this.chainOf(y);
		const { data } = rows;
		const from = x * nodes;
		this.joins++;
		for (let i = 0; i < nodes; i++) parent[i] = i;
		for (let k = 0; k < chain.length; k += 2)
			this.unite(data[from + chain[k]!]!, data[from + chain[k + 1]!]!);
	}

	/** Whether two nodes are on one net in the join of two partitions. */
	meets(x: number, y: number, a: number, b: number): boolean {
		this.layTogether(x, y);
		const from = x * this.nodes;
		return this.root(this.rows.data[from + a]!) === this.root(this.rows.data[from + b]!);
	}

	/** Whether two nodes are on one net. */
	isJoined(id: number, a: number, b: number): boolean {
		return this.rows.at(id, a) === this.rows.at(id, b);
	}
}
