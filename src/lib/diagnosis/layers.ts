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
import { Partitions } from './partition';
import { probeNodes, statesOfBench, type Probe } from './probes';
import { Rows } from './rows';
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
	readonly seen: Rows;
	readonly rows: Rows;
	readonly wires: WireLayer;
	readonly contacts: ContactLayer;
	private readonly partitions: Partitions;
	private readonly touched: Int32Array;
	private readonly extras: readonly Extra[];
	/** Per partition of contacts, by place in the list of wires: what the two come to, plus 1. */
	private readonly memo: Int32Array[] = [];
	private readonly row: Int32Array;

	constructor(bench: Bench, extras: readonly Probe[]) {
		const all = nodesOfBench(bench);
		const index = new Map(all.map((node, i) => [node, i]));
		this.faults = faultListOf(bench);
		this.nodes = [...probeNodes(bench)].sort(byCodePoint);
		this.states = statesOfBench(bench);
		const columns = columnsOf(bench, [...this.states, ...extras.map((p) => p.when)]);
		this.columnOf = columns.of.slice(0, this.states.length);
		this.columns = this.columnOf.reduce((most, c) => Math.max(most, c + 1), 0);
		this.columnAt = new Map([...columns.at].filter(([, c]) => c < this.columns));
		this.touched = Int32Array.from(this.nodes.map((node) => index.get(node)!));
		this.extras = extras.map(({ pair: [a, b] }, k) => {
			const column = columns.of[this.states.length + k]!;
			return { column, a: index.get(a)!, b: index.get(b)! };
		});
		this.partitions = new Partitions(all.length);
		this.seen = new Rows(this.nodes.length);
		this.rows = new Rows(this.columns + extras.length);
		this.row = new Int32Array(this.rows.width);
		this.wires = new WireLayer(bench, this.faults, index, this.partitions);
		this.contacts = new ContactLayer(bench, columns.states, this.faults, index, this.partitions);
	}

	get joins(): number {
		return this.partitions.joins;
	}

	/** Writes the answers to the extra probes behind those of the columns. */
	private addExtras(wired: number, outcome: number) {
		const { row, contacts, columns, extras, partitions } = this;
		for (let k = 0; k < extras.length; k++) {
			const { column, a, b } = extras[k]!;
			const contact = contacts.outcomes.at(outcome, column);
			row[columns + k] = partitions.meets(wired, contact, a, b) ? 1 : 0;
		}
	}

	/**
	 * The class of one outcome of contacts beside each of many of wires; a new one where nothing has
	 * answered so yet. Outcomes with fewer faults must be asked first, and `wired` must begin alike
	 * each time: what was joined is remembered by the place in that list.
	 */
	beside(outcome: number, wired: Int32Array): (place: number) => number {
		const { row, contacts, columns, memo, partitions, touched, seen } = this;
		const contact = Array.from({ length: columns }, (_, c) => contacts.outcomes.at(outcome, c));
		const known = contact.map((id) => (memo[id] ??= new Int32Array(wired.length)));
		return (place) => {
			const id = wired[place]!;
			for (let c = 0; c < columns; c++) {
				const column = known[c]!;
				// 0 stands for what has not been joined yet.
				let joined = column[place]!;
				if (joined === 0)
					joined = column[place] = 1 + partitions.seenJoin(id, contact[c]!, touched, seen);
				row[c] = joined - 1;
			}
			if (this.extras.length > 0) this.addExtras(id, outcome);
			return this.rows.intern(row);
		};
	}

	readonly classOfSet = (set: readonly number[]): number => {
		const { row, contacts, columns, partitions, touched, seen } = this;
		const wired = this.wires.partitionUnder(set);
		const outcome = contacts.outcomeOf(set);
		for (let c = 0; c < columns; c++)
			row[c] = partitions.seenJoin(wired, contacts.outcomes.at(outcome, c), touched, seen);
		this.addExtras(wired, outcome);
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
