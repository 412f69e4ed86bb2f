/**
 * The layer of wires: wires and cores where they land, bonds, bridges. It is the same in all plug
 * states. Opens and swaps are laid out set by set, swaps one after another in list order as the
 * engine has them; bridges only ever join more, so they are counted in one after another over the
 * distinct partitions (as coins are counted in a table of sums) and no set of them is laid out.
 */
import { circuit, type Bench, type Conductor, type Fault, type NodeName } from '../engine';
import type { Partitions } from './partition';
import { weightOf } from './weights';
import { Tally } from './tally';

const nameOf = ({ reason }: Conductor): string | null =>
	reason.kind === 'wire'
		? reason.wire
		: reason.kind === 'core'
			? `${reason.cable}:${reason.core}`
			: null;
const FIXED: readonly string[] = ['chassis', 'bush', 'bridge', 'inside-device', 'inside-plug'];

export class WireLayer {
	private readonly wires: readonly string[];
	/** Where wires land without more faults, two ends by two. */
	private readonly ends: Int32Array;
	private readonly frame: number;
	private readonly cut: Uint8Array;

	constructor(
		bench: Bench,
		private readonly faults: readonly Fault[],
		private readonly index: ReadonlyMap<NodeName, number>,
		private readonly partitions: Partitions
	) {
		const joining = circuit(bench).conductors.filter((c) => c.joins);
		const wires = joining.filter((c) => nameOf(c) !== null);
		const fixed = joining.filter((c) => FIXED.includes(c.reason.kind));
		const endsOf = (list: readonly Conductor[]) =>
			Int32Array.from(list.flatMap((c) => [index.get(c.a)!, index.get(c.b)!]));
		this.wires = wires.map((c) => nameOf(c)!);
		this.ends = endsOf(wires);
		this.frame = partitions.with(-1, endsOf(fixed));
		this.cut = new Uint8Array(wires.length);
	}

	/** The wire that a fault opens; −1 for other faults and for a wire that is cut already. */
	private wireOf(fault: number): number {
		const open = this.faults[fault]!;
		return open.kind === 'open' ? this.wires.indexOf(open.wire) : -1;
	}

	private swapped(ends: Int32Array, fault: number): Int32Array {
		const swap = this.faults[fault]!;
		if (swap.kind !== 'swap') return ends;
		const [x, y] = swap.contacts.map((c) => this.index.get(c)!);
		return ends.map((at) => (at === x ? y! : at === y ? x! : at));
	}

	private bridged(id: number, fault: number): number {
		const bridge = this.faults[fault]!;
		if (bridge.kind !== 'bridge') return id;
		const [a, b] = bridge.between;
		return this.partitions.joined(id, this.index.get(a)!, this.index.get(b)!);
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
		const tally = new Tally(most);
		this.cut.fill(0);
		yield* this.withSwaps(tally, this.numbersOf('swap'), this.numbersOf('open'), this.ends, [], 1);
		for (const bridge of this.numbersOf('bridge')) {
			this.countIn(tally, bridge);
			yield;
		}
		return tally;
	}

	/** The set as it is, and with each of these swaps; with each every set of opens. */
	private *withSwaps(
		tally: Tally,
		swaps: readonly number[],
		opens: readonly number[],
		ends: Int32Array,
		set: number[],
		weight: number
	): Generator<void> {
		this.withOpens(tally, opens, 0, ends, set, weight);
		if (set.length === tally.most) return;
		for (const [k, swap] of swaps.entries()) {
			const landed = this.swapped(ends, swap);
			const heavier = weight * weightOf(this.faults[swap]!);
			set.push(swap);
			yield* this.withSwaps(tally, swaps.slice(k + 1), opens, landed, set, heavier);
			set.pop();
			if (set.length < 2) yield;
		}
	}

	/** The set as it is, and with each of the opens from `from` on. */
	private withOpens(
		tally: Tally,
		opens: readonly number[],
		from: number,
		ends: Int32Array,
		set: number[],
		weight: number
	) {
		const left = this.partitions.with(this.frame, ends, this.cut);
		tally.add(left, set.length, 1, weight, weight, set, 0);
		if (set.length === tally.most) return;
		for (let k = from; k < opens.length; k++) {
			const fault = opens[k]!;
			const wire = this.wireOf(fault);
			set.push(fault);
			if (wire >= 0) this.cut[wire] = 1;
			this.withOpens(tally, opens, k + 1, ends, set, weight * weightOf(this.faults[fault]!));
			if (wire >= 0) this.cut[wire] = 0;
			set.pop();
		}
	}

	/**
	 * Counts one bridge in: every set so far that has room for it, with it added. Where its two nodes
	 * are on one net already the partition stays, and those go first, because the others add to them.
	 */
	private countIn(tally: Tally, bridge: number) {
		const { most, open } = tally;
		const { partitions } = this;
		const fault = this.faults[bridge]!;
		if (fault.kind !== 'bridge') return;
		const [a, b] = fault.between.map((node) => this.index.get(node)!) as [number, number];
		const weight = weightOf(fault);
		const apart: number[] = [];
		for (const id of open.slice())
			if (!partitions.isJoined(id, a, b)) apart.push(id);
			else for (let size = most - 1; size >= 0; size--) tally.carry(id, size, id, bridge, weight);
		for (const id of apart) {
			const to = partitions.joined(id, a, b);
			for (let size = most - 1; size >= 0; size--) tally.carry(id, size, to, bridge, weight);
		}
	}
}
