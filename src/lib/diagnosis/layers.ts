/**
 * The two layers of a bench laid together: its nodes and plug states numbered, and the row of
 * answers of any outcome of wires beside any outcome of contacts. A pair of partitions is joined
 * once and remembered.
 */
import {
	byCodePoint,
	nodesOfBench,
	type Bench,
	type Fault,
	type NodeName,
	type When
} from '../engine';
import { ContactLayer } from './contactLayer';
import { faultListOf } from './faults';
import { partitionsOf, type Labels, type Partitions } from './partitions';
import { probeNodes, statesOfBench, type Probe } from './probes';
import { Rows, grown } from './rows';
import { columnsOf } from './setting';
import { WireLayer } from './wireLayer';

interface Extra {
	readonly column: number;
	readonly a: number;
	readonly b: number;
}

export class Layers {
	readonly faults: readonly Fault[];
	readonly nodes: readonly NodeName[];
	readonly states: readonly When[];
	readonly columnOf: readonly number[];
	readonly columns: number;
	readonly columnAt: ReadonlyMap<string, number>;
	readonly seen: Labels;
	readonly rows: Rows;
	readonly wires: WireLayer;
	readonly contacts: ContactLayer;
	private readonly partitions: Partitions;
	private readonly extras: readonly Extra[];
	/** Per partition of contacts, by place in the list of wires, what the two come to; and how far. */
	private readonly memo: Int32Array[] = [];
	private readonly known: number[] = [];
	private readonly row: Int32Array;
	/** Rows of answers, before they have a number. */
	private answers: Int32Array;

	constructor(bench: Bench, extras: readonly Probe[]) {
		this.faults = faultListOf(bench);
		this.nodes = [...probeNodes(bench)].sort(byCodePoint);
		// What a probe can touch comes first, so that it can be seen without the rest.
		const all = [...new Set([...this.nodes, ...nodesOfBench(bench)])];
		const index = new Map(all.map((node, i) => [node, i]));
		this.states = statesOfBench(bench);
		const columns = columnsOf(bench, [...this.states, ...extras.map((p) => p.when)]);
		this.columnOf = columns.of.slice(0, this.states.length);
		this.columns = this.columnOf.reduce((most, c) => Math.max(most, c + 1), 0);
		this.columnAt = new Map([...columns.at].filter(([, c]) => c < this.columns));
		this.extras = extras.map(({ pair: [a, b] }, k) => {
			const column = columns.of[this.states.length + k]!;
			return { column, a: index.get(a)!, b: index.get(b)! };
		});
		this.partitions = partitionsOf(all.length, this.nodes.length);
		this.seen = this.partitions.seen;
		this.rows = new Rows(this.columns + extras.length);
		this.row = new Int32Array(this.rows.width);
		this.answers = new Int32Array(64 * this.rows.width);
		this.wires = new WireLayer(bench, this.faults, index, this.partitions);
		this.contacts = new ContactLayer(bench, columns.states, this.faults, index, this.partitions);
	}

	get joins(): number {
		return this.partitions.joins;
	}

	/** Writes the answers to the extra probes behind those of the columns of the row that begins at `from`. */
	private addExtras(wired: number, outcome: number, row: Int32Array, from: number) {
		const { contacts, columns, extras, partitions } = this;
		for (let k = 0; k < extras.length; k++) {
			const { column, a, b } = extras[k]!;
			const contact = contacts.outcomes.at(outcome, column);
			row[from + columns + k] = partitions.meets(wired, contact, a, b) ? 1 : 0;
		}
	}

	/** What a partition of contacts comes to beside each of `wired`, by place, worked out up to `to`. */
	private joinsOf(contact: number, wired: Int32Array, to: number): Int32Array {
		const memo = (this.memo[contact] ??= new Int32Array(wired.length));
		const from = this.known[contact] ?? 0;
		if (from >= to) return memo;
		this.partitions.seenJoins(wired, from, to, contact, memo);
		this.known[contact] = to;
		return memo;
	}

	/**
	 * Writes the classes of one outcome of contacts beside places `from` to `to` (not included) of
	 * `wired`; a new one where nothing has answered so yet. Outcomes with fewer faults must be asked
	 * first, and `wired` must begin alike each time: what was joined is remembered by the place there.
	 */
	beside(outcome: number, wired: Int32Array, from: number, to: number, into: Int32Array) {
		const { rows, contacts, columns } = this;
		const { width } = rows;
		this.answers = grown(this.answers, (to - from) * width);
		const { answers } = this;
		for (let c = 0; c < columns; c++) {
			const known = this.joinsOf(contacts.outcomes.at(outcome, c), wired, to);
			for (let place = from, at = c; place < to; place++, at += width) answers[at] = known[place]!;
		}
		if (this.extras.length > 0)
			for (let place = from; place < to; place++)
				this.addExtras(wired[place]!, outcome, answers, (place - from) * width);
		rows.internEach(answers, to - from, into);
	}

	readonly classOfSet = (set: readonly number[]): number => {
		const { row, contacts, columns, partitions } = this;
		const wired = this.wires.partitionUnder(set);
		const outcome = contacts.outcomeOf(set);
		for (let c = 0; c < columns; c++)
			row[c] = partitions.seenJoin(wired, contacts.outcomes.at(outcome, c));
		this.addExtras(wired, outcome, row, 0);
		return this.rows.find(row);
	};

	/** What a dictionary shows of this. */
	face() {
		const { faults, states, columnOf, columns, columnAt, nodes, seen, rows, classOfSet } = this;
		const nodeAt = new Map(nodes.map((node, i) => [node, i]));
		const columnStates = [...columnAt.values()].map((c) => states[columnOf.indexOf(c)]!);
		const asked = { states, columnOf, columns, columnAt, columnStates, nodes, nodeAt };
		return { faults, ...asked, seen, rows, classOfSet };
	}
}
