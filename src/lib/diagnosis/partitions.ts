/**
 * Partitions of numbered nodes into nets, each distinct one kept once and known by its number. A
 * probe can touch the first few nodes only, so joins are kept as those see them. Two ways of keeping
 * them: two words each for up to sixteen nodes, which is one socket's dozen and its plug, and rows of
 * labels for any number.
 */
import { MOST_CONTACTS } from '../engine';
import { PackedPartitions } from './packedPartitions';
import { RowPartitions } from './rowPartitions';

/** Partitions as rows of labels, numbered as they first appear, one row after another in `data`. */
export interface Labels {
	readonly size: number;
	readonly width: number;
	readonly data: Int32Array;
	/** Label of node `i` in partition `id`. */
	at(id: number, i: number): number;
}

export interface Partitions {
	/** Partitions made by joining, whether they were new or not: exact. */
	readonly joins: number;
	/** The joins as probes see them. */
	readonly seen: Labels;
	/**
	 * The partition `start` (a number; −1: every node by itself) with these pairs joined: `ends` holds
	 * the two nodes of each pair one after the other; pairs that `skip` marks are left out.
	 */
	with(start: number, ends: Int32Array, skip?: Uint8Array): number;
	/** The partition with two nodes joined; itself when they are on one net. */
	joined(id: number, a: number, b: number): number;
	/** The partition with two nodes in each other's place. */
	exchanged(id: number, a: number, b: number): number;
	/** The same for the first `many` of a list, into the same places; `into` may be the list itself. */
	joinedEach(ids: Int32Array, many: number, a: number, b: number, into: Int32Array): void;
	exchangedEach(ids: Int32Array, many: number, a: number, b: number, into: Int32Array): void;
	/** The join of two partitions as probes see it: a number in `seen`. */
	seenJoin(x: number, y: number): number;
	/** The same for places `from` to `to` (not included) of a list beside `y`, into the same places. */
	seenJoins(list: Int32Array, from: number, to: number, y: number, into: Int32Array): void;
	/** Whether two nodes are on one net in the join of two partitions. */
	meets(x: number, y: number, a: number, b: number): boolean;
}

/** Partitions of so many nodes, of which probes can touch the first `touched`. */
export const partitionsOf = (nodes: number, touched: number): Partitions =>
	nodes <= MOST_CONTACTS ? new PackedPartitions(nodes, touched) : new RowPartitions(nodes, touched);
