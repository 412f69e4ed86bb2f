/**
 * Partitions of any number of numbered nodes into nets. One is a row of labels: the number of the
 * net that each node is on, numbered as they first appear, so that equal partitions are equal rows.
 * Each distinct row is kept once and known by its number (rows.ts). Up to sixteen nodes are quicker as
 * two words (packedPartitions.ts), which this is the oracle of.
 */
import type { Partitions } from './partitions';
import { Rows } from './rows';

export class RowPartitions implements Partitions {
	readonly seen: Rows;
	joins = 0;
	private readonly rows: Rows;
	private readonly chains: Int32Array[] = [];
	private readonly parent: Int32Array;
	private readonly netAt: Int32Array;
	private readonly labels: Int32Array;
	private readonly seenLabels: Int32Array;

	constructor(
		private readonly nodes: number,
		touched: number
	) {
		this.rows = new Rows(nodes);
		this.seen = new Rows(touched);
		this.parent = new Int32Array(nodes);
		this.netAt = new Int32Array(nodes);
		this.labels = new Int32Array(nodes);
		this.seenLabels = new Int32Array(touched);
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

	/** Writes the roots of the first nodes, numbered as they first appear; `from`: the partition behind the roots. */
	private name(from: number, into: Int32Array): Int32Array {
		const { netAt, rows } = this;
		const { data } = rows;
		netAt.fill(-1);
		let next = 0;
		for (let i = 0; i < into.length; i++) {
			const root = this.root(from < 0 ? i : data[from + i]!);
			if (netAt[root]! < 0) netAt[root] = next++;
			into[i] = netAt[root]!;
		}
		return into;
	}

	with(start: number, ends: Int32Array, skip: Uint8Array | null = null): number {
		const { parent, rows, nodes } = this;
		if (start >= 0 && ends.length === 0) return start;
		this.joins++;
		for (let i = 0; i < nodes; i++) parent[i] = i;
		const from = start < 0 ? -1 : start * nodes;
		const { data } = rows;
		for (let k = 0; k < ends.length; k += 2) {
			if (skip && skip[k >> 1]) continue;
			const a = ends[k]!;
			const b = ends[k + 1]!;
			if (start < 0) this.unite(a, b);
			else this.unite(data[from + a]!, data[from + b]!);
		}
		return rows.intern(this.name(from, this.labels));
	}

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

	exchanged(id: number, a: number, b: number): number {
		const { rows, nodes, labels, netAt } = this;
		const { data } = rows;
		const from = id * nodes;
		const netA = data[from + a]!;
		const netB = data[from + b]!;
		if (netA === netB) return id;
		this.joins++;
		netAt.fill(-1);
		let next = 0;
		for (let i = 0; i < nodes; i++) {
			const net = i === a ? netB : i === b ? netA : data[from + i]!;
			if (netAt[net]! < 0) netAt[net] = next++;
			labels[i] = netAt[net]!;
		}
		return rows.intern(labels);
	}

	joinedEach(ids: Int32Array, many: number, a: number, b: number, into: Int32Array) {
		for (let i = 0; i < many; i++) into[i] = this.joined(ids[i]!, a, b);
	}

	exchangedEach(ids: Int32Array, many: number, a: number, b: number, into: Int32Array) {
		for (let i = 0; i < many; i++) into[i] = this.exchanged(ids[i]!, a, b);
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

	seenJoin(x: number, y: number): number {
		this.layTogether(x, y);
		return this.seen.intern(this.name(x * this.nodes, this.seenLabels));
	}

	seenJoins(list: Int32Array, from: number, to: number, y: number, into: Int32Array) {
		for (let i = from; i < to; i++) into[i] = this.seenJoin(list[i]!, y);
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

	meets(x: number, y: number, a: number, b: number): boolean {
		this.layTogether(x, y);
		const from = x * this.nodes;
		return this.root(this.rows.data[from + a]!) === this.root(this.rows.data[from + b]!);
	}
}
