/**
 * The layer of contacts: what springs, breaks, changeovers and plugs join, state by state. The rule
 * of contact is the engine's: each socket is asked alone, with what it holds, for every set of its
 * own faults, and the answers are laid together. A bare plug's own conductors are nobody's nodes:
 * what two contacts share through one is joined directly.
 */
import {
	EMPTY_BENCH,
	inState,
	netsOf,
	plugIn,
	splitNode,
	type Bench,
	type Fault,
	type NodeName,
	type Plug,
	type When
} from '../engine';
import type { Partitions } from './partition';
import { Rows } from './rows';
import { Tally } from './tally';
import { weightOf } from './weights';

/** The socket whose contact the fault is a fault of; −1 for faults of wires. */
function placeOf(bench: Bench, fault: Fault): number {
	if (!('contact' in fault)) return -1;
	const [owner] = splitNode(fault.contact);
	return bench.sockets.findIndex((s) => s.id === owner);
}

/** One socket with one holding: what it joins under each set of its faults, as asked so far. */
interface Asked {
	readonly plug: Plug | null;
	readonly ends: Map<string, readonly number[]>;
}

export class ContactLayer {
	/** Per column and socket. */
	private readonly asked: readonly (readonly Asked[])[];
	private readonly place: readonly number[];
	/** One partition for each column, for each distinct outcome of faults of contacts. */
	readonly outcomes: Rows;
	private readonly known = new Map<string, number>();

	constructor(
		private readonly bench: Bench,
		states: readonly When[],
		private readonly faults: readonly Fault[],
		private readonly index: ReadonlyMap<NodeName, number>,
		private readonly partitions: Partitions
	) {
		const known = new Map<string, Asked>();
		this.asked = states.map((when) => {
			const there = inState(bench, when);
			return bench.sockets.map(({ id }) => {
				const plug = plugIn(there, id);
				const key = JSON.stringify([id, plug]);
				if (!known.has(key)) known.set(key, { plug, ends: new Map() });
				return known.get(key)!;
			});
		});
		this.place = faults.map((f) => placeOf(bench, f));
		this.outcomes = new Rows(states.length, true);
	}

	/** The ends, two by two, of what this socket joins among the bench's nodes. */
	private endsOf(place: number, { plug, ends }: Asked, set: readonly number[]): readonly number[] {
		const key = set.join();
		const known = ends.get(key);
		if (known) return known;
		const file = this.bench.faults.filter((f) => placeOf(this.bench, f) === place);
		const alone: Bench = {
			...EMPTY_BENCH,
			sockets: [this.bench.sockets[place]!],
			plugs: plug ? [plug] : [],
			faults: [...file, ...set.map((f) => this.faults[f]!)]
		};
		const found = netsOf(alone).list.flatMap((net) => {
			const nodes = net.flatMap((name) => this.index.get(name) ?? []);
			return nodes.slice(1).flatMap((node, i) => [nodes[i]!, node]);
		});
		ends.set(key, found);
		return found;
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
		const own = this.bench.sockets.map((_, i) => set.filter((f) => this.place[f] === i));
		const row = this.asked.map((sockets) =>
			this.partitions.with(
				-1,
				sockets.flatMap((asked, i) => this.endsOf(i, asked, own[i]!))
			)
		);
		return this.outcomes.intern(row);
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
		tally.add(this.outcomeOf(set), set.length, 1, weight, weight, set, 0);
		if (set.length === tally.most) return;
		for (const [k, fault] of more.entries()) {
			const heavier = weight * weightOf(this.faults[fault]!);
			yield* this.layOut(tally, more.slice(k + 1), [...set, fault], heavier);
			if (set.length < 2) yield;
		}
	}
}
