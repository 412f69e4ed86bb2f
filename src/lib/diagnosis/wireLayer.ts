/**
 * The layer of wires: wires and cores where they land, bonds, bridges. It is the same in all plug
 * states. Only sets of opens are laid out one by one. A swap puts two nodes of the wires' partition
 * into each other's place, and a bridge joins two, so these are counted in, fault by fault in list
 * order, over the distinct partitions (as coins are counted in a table of sums). Swaps come before
 * all that does not move with the wires: bonds, plugs' insides, and bridges.
 */
import { circuit, type Bench, type Conductor, type Fault, type NodeName } from '../engine';
import type { Partitions } from './partitions';
import { weightOf } from './weights';
import { Tally } from './tally';

/** The name of the wire or core that a conductor is; null for anything else. */
export const wireNameOf = ({ reason }: Conductor): string | null =>
	reason.kind === 'wire'
		? reason.wire
		: reason.kind === 'core'
			? `${reason.cable}:${reason.core}`
			: null;
/** What no fault of the list takes away. */
export const FIXED: readonly string[] = [
	'chassis',
	'bush',
	'bridge',
	'inside-device',
	'inside-plug'
];

export class WireLayer {
	private readonly wires: readonly string[];
	/** Where wires land without more faults, two ends by two. */
	private readonly ends: Int32Array;
	/** What does not move with the wires, two ends by two. */
	private readonly fixed: Int32Array;
	private readonly frame: number;
	private readonly cut: Uint8Array;

	constructor(
		bench: Bench,
		private readonly faults: readonly Fault[],
		private readonly index: ReadonlyMap<NodeName, number>,
		private readonly partitions: Partitions
	) {
		const joining = circuit(bench).conductors.filter((c) => c.joins);
		const wires = joining.filter((c) => wireNameOf(c) !== null);
		const fixed = joining.filter((c) => FIXED.includes(c.reason.kind));
		const endsOf = (list: readonly Conductor[]) =>
			Int32Array.from(list.flatMap((c) => [index.get(c.a)!, index.get(c.b)!]));
		this.wires = wires.map((c) => wireNameOf(c)!);
		this.ends = endsOf(wires);
		this.fixed = endsOf(fixed);
		this.frame = partitions.with(-1, this.fixed);
		this.cut = new Uint8Array(wires.length);
	}

	/** The wire that a fault opens; −1 for other faults and for a wire that is cut already. */
	private wireOf(fault: number): number {
		const open = this.faults[fault]!;
		return open.kind === 'open' ? this.wires.indexOf(open.wire) : -1;
	}

	private swapped(ends: Int32Array, fault: number): Int32Array {
		if (this.faults[fault]!.kind !== 'swap') return ends;
		const [x, y] = this.endsOf(fault);
		return ends.map((at) => (at === x ? y : at === y ? x : at));
	}

	private bridged(id: number, fault: number): number {
		if (this.faults[fault]!.kind !== 'bridge') return id;
		return this.partitions.joined(id, ...this.endsOf(fault));
	}

	/** The partition under a set of faults, given by their numbers in list order. */
	partitionUnder(set: readonly number[]): number {
		this.cut.fill(0);
		for (const fault of set) if (this.wireOf(fault) >= 0) this.cut[this.wireOf(fault)] = 1;
		const ends = set.reduce((landed, fault) => this.swapped(landed, fault), this.ends);
		const wired = this.partitions.with(this.frame, ends, this.cut);
		return set.reduce((id, fault) => this.bridged(id, fault), wired);
	}

	private numbersOf = (kind: Fault['kind']): number[] =>
		this.faults.flatMap((f, i) => (f.kind === kind ? [i] : []));

	/** Every set of at most `most` faults of wires, counted and weighed by the partition it leaves. */
	*tally(most: number): Generator<void, Tally> {
		const { partitions } = this;
		const loose = new Tally(most);
		this.cut.fill(0);
		this.withOpens(loose, this.numbersOf('open'), [], 1);
		for (const swap of this.numbersOf('swap')) {
			const [a, b] = this.endsOf(swap);
			loose.countIn(swap, weightOf(this.faults[swap]!), (ids, many, into) =>
				partitions.exchangedEach(ids, many, a, b, into)
			);
			yield;
		}
		const tally = new Tally(most);
		for (let id = 0; id < loose.ids; id++)
			if (loose.fewest[id]! <= most) loose.pour(id, tally, partitions.with(id, this.fixed));
		for (const bridge of this.numbersOf('bridge')) {
			const [a, b] = this.endsOf(bridge);
			tally.countIn(bridge, weightOf(this.faults[bridge]!), (ids, many, into) =>
				partitions.joinedEach(ids, many, a, b, into)
			);
			yield;
		}
		return tally;
	}

	/** The nodes of a swap or a bridge. */
	private endsOf(fault: number): [number, number] {
		const pair = this.faults[fault]!;
		const nodes = pair.kind === 'swap' ? pair.contacts : pair.kind === 'bridge' ? pair.between : [];
		return nodes.map((node) => this.index.get(node)!) as [number, number];
	}

	/** The set as it is, and with each of these opens, which all come after it in the list. */
	private withOpens(tally: Tally, more: readonly number[], set: number[], weight: number) {
		const left = this.partitions.with(-1, this.ends, this.cut);
		tally.add(left, set, weight);
		if (set.length === tally.most) return;
		for (const [k, fault] of more.entries()) {
			const wire = this.wireOf(fault);
			if (wire >= 0) this.cut[wire] = 1;
			const heavier = weight * weightOf(this.faults[fault]!);
			this.withOpens(tally, more.slice(k + 1), [...set, fault], heavier);
			if (wire >= 0) this.cut[wire] = 0;
		}
	}
}
