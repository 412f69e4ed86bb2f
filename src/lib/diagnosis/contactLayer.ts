/**
 * The layer of contacts: what springs, breaks, changeovers and plugs join, column by column. An
 * outcome is what a set of faults of contacts leaves in all columns together; few sets differ.
 */
import {
	inState,
	plugIn,
	splitNode,
	type Bench,
	type Fault,
	type NodeName,
	type When
} from '../engine';
import type { Partitions } from './partitions';
import { Rows } from './rows';
import { SocketJoins, spoiled, type Spoiled } from './socketJoins';
import { Tally } from './tally';
import { weightOf } from './weights';

/** The socket whose contact the fault is a fault of; −1 for faults of wires. */
function placeOf(bench: Bench, fault: Fault): number {
	if (!('contact' in fault)) return -1;
	const [owner] = splitNode(fault.contact);
	return bench.sockets.findIndex((s) => s.id === owner);
}

function concatenated(lists: readonly Int32Array[]): Int32Array {
	const all = new Int32Array(lists.reduce((sum, list) => sum + list.length, 0));
	let at = 0;
	for (const list of lists) {
		all.set(list, at);
		at += list.length;
	}
	return all;
}

export class ContactLayer {
	/** Per column and socket. */
	private readonly joins: readonly (readonly SocketJoins[])[];
	private readonly place: readonly number[];
	private readonly spoiled: readonly Spoiled[];
	/** One partition for each column, for each distinct outcome of faults of contacts. */
	readonly outcomes: Rows;
	private readonly known = new Map<string, number>();

	constructor(
		bench: Bench,
		states: readonly When[],
		faults: readonly Fault[],
		index: ReadonlyMap<NodeName, number>,
		private readonly partitions: Partitions
	) {
		const file = bench.sockets.map((_, i) => bench.faults.filter((f) => placeOf(bench, f) === i));
		const known = new Map<string, SocketJoins>();
		this.joins = states.map((when) => {
			const there = inState(bench, when);
			return bench.sockets.map((socket, i) => {
				const plug = plugIn(there, socket.id);
				const key = JSON.stringify([socket.id, plug]);
				if (!known.has(key)) known.set(key, new SocketJoins(socket, plug, index, file[i]!));
				return known.get(key)!;
			});
		});
		this.place = faults.map((f) => placeOf(bench, f));
		this.spoiled = faults.map((f, i) => spoiled(bench.sockets[this.place[i]!], f, i));
		this.outcomes = new Rows(states.length);
	}

	/** The outcome of a set of faults, given by their numbers; faults of wires are passed over. */
	outcomeOf(set: readonly number[]): number {
		const contacts = set.filter((f) => this.place[f]! >= 0);
		const key = contacts.join();
		const known = this.known.get(key);
		if (known !== undefined) return known;
		const outcome = this.laidTogether(contacts);
		this.known.set(key, outcome);
		return outcome;
	}

	private laidTogether(set: readonly number[]): number {
		const sockets = this.joins[0]?.length ?? 0;
		const own = Array.from({ length: sockets }, (_, i) => {
			const numbers = set.filter((f) => this.place[f] === i);
			return { key: numbers.join(), faults: numbers.map((f) => this.spoiled[f]!) };
		});
		const row = this.joins.map((column) => {
			const ends = column.map((socket, i) => socket.endsUnder(own[i]!.faults, own[i]!.key));
			return this.partitions.with(-1, ends.length === 1 ? ends[0]! : concatenated(ends));
		});
		return this.outcomes.intern(Int32Array.from(row));
	}

	/** Every set of at most `most` faults of contacts, counted and weighed by its outcome. */
	*tally(most: number): Generator<void, Tally> {
		const tally = new Tally(most);
		const numbers = [...this.place.keys()].filter((f) => this.place[f]! >= 0);
		yield* this.layOut(tally, numbers, [], 1);
		return tally;
	}

	/** The set as it is, and with each of these faults, which all come after it in the list. */
	private *layOut(tally: Tally, more: number[], set: number[], weight: number): Generator<void> {
		tally.add(this.outcomeOf(set), set, weight);
		if (set.length === tally.most) return;
		for (const [k, fault] of more.entries()) {
			const heavier = weight * weightOf(this.spoiled[fault]!.fault);
			yield* this.layOut(tally, more.slice(k + 1), [...set, fault], heavier);
			if (set.length < 2) yield;
		}
	}
}
