/**
 * A table of columns and the elements that they cover, with what columns cost, and the rules that
 * make it smaller without losing the cheapest cover. A column may belong to a group that has to be
 * opened first (a plug state) and a group to an owner (its socket): opening costs once for the group
 * and once for the owner. The rules: an element that is covered whenever another one is goes; a column
 * goes whose elements another one covers for no more, if that one's group is open or the same; what
 * only one column covers is taken; what only one closed group can cover opens it. Only what a change
 * touched is looked at again.
 */
import { Bits } from './bits';

export interface Column {
	readonly covers: readonly number[];
	/** Whole and above nothing. */
	readonly cost: number;
	/** −1: it needs nothing opened. */
	readonly group: number;
}
export interface Opening {
	/** What opening each group costs, besides its owner. */
	readonly groups: readonly number[];
	readonly ownerOf: readonly number[];
	/** What the first group of each owner costs more. */
	readonly owners: readonly number[];
}

/** Numbers that wait for their turn, each once. */
class Waiting {
	private readonly list: number[] = [];
	private readonly has = new Set<number>();

	add(n: number) {
		if (this.has.has(n)) return;
		this.has.add(n);
		this.list.push(n);
	}

	next(): number | undefined {
		const n = this.list.pop();
		if (n !== undefined) this.has.delete(n);
		return n;
	}
}

export class Table {
	/** By number; undefined once they are gone. */
	columns: (Bits | undefined)[] = [];
	elements: (Bits | undefined)[] = [];
	liveColumns = 0;
	liveElements = 0;
	/** Whether some element can no longer be covered. */
	isLost = false;
	/** Names of columns that had to be taken, and what they and opened groups cost. */
	taken: number[] = [];
	spent = 0;
	/** Members of columns and elements, and words of bits, that the rules have looked at. */
	work = 0;
	/** What has to be looked at again. */
	private readonly dirtyColumns = new Waiting();
	private readonly dirtyElements = new Waiting();

	private constructor(
		readonly cost: readonly number[],
		readonly group: readonly number[],
		readonly names: readonly number[],
		private groupCost: number[],
		readonly ownerOf: readonly number[],
		private ownerCost: number[]
	) {}

	static of(columns: readonly Column[], opening: Opening, names?: readonly number[]): Table {
		const table = new Table(
			columns.map((c) => c.cost),
			columns.map((c) => c.group),
			names ?? [...columns.keys()],
			[...opening.groups],
			opening.ownerOf,
			[...opening.owners]
		);
		const most = columns.reduce((m, c) => c.covers.reduce((x, e) => Math.max(x, e), m), -1);
		table.elements = Array<Bits | undefined>(most + 1).fill(undefined);
		columns.forEach(({ covers }, c) => {
			table.columns.push(covers.length > 0 ? Bits.of(covers, most + 1) : undefined);
			for (const e of covers) (table.elements[e] ??= new Bits(columns.length)).add(c);
		});
		const [live, open] = [table.columnsLeft(), table.elementsLeft()];
		table.liveColumns = live.length;
		table.liveElements = open.length;
		for (const c of live) table.dirtyColumns.add(c);
		for (const e of open) table.dirtyElements.add(e);
		return table;
	}

	/** These columns by themselves, with what they cover. */
	only(columns: readonly number[]): Table {
		const numbers = new Map<number, number>();
		const numberOf = (e: number): number => {
			if (!numbers.has(e)) numbers.set(e, numbers.size);
			return numbers.get(e)!;
		};
		return Table.of(
			columns.map((c) => ({
				covers: this.columns[c]!.list().map(numberOf),
				cost: this.cost[c]!,
				group: this.group[c]!
			})),
			{ groups: this.groupCost, ownerOf: this.ownerOf, owners: this.ownerCost },
			columns.map((c) => this.names[c]!)
		);
	}

	/** A copy in which nothing has been taken yet. */
	copy(): Table {
		const { cost, group, names, ownerOf } = this;
		const next = new Table(cost, group, names, [...this.groupCost], ownerOf, [...this.ownerCost]);
		next.columns = this.columns.map((bits) => bits?.copy());
		next.elements = this.elements.map((bits) => bits?.copy());
		next.liveColumns = this.liveColumns;
		next.liveElements = this.liveElements;
		next.isLost = this.isLost;
		return next;
	}

	/** Words of bits that are gone through to list what covers an element. */
	private get wordsOfElement(): number {
		return this.columns.length >>> 5;
	}

	/** Numbers of the columns and the elements that are left. */
	columnsLeft = (): number[] => [...this.columns.keys()].filter((c) => this.columns[c]);
	elementsLeft = (): number[] => [...this.elements.keys()].filter((e) => this.elements[e]);

	/** What opening this group costs now; 0 for one that is open. */
	openingOf(group: number): number {
		return group < 0 ? 0 : this.groupCost[group]! + this.ownerCostOf(group);
	}
	ownerCostOf = (group: number): number => this.ownerCost[this.ownerOf[group]!]!;
	groupCostOf = (group: number): number => this.groupCost[group]!;
	isOpen = (group: number): boolean => this.openingOf(group) === 0;

	/** Groups that some column still needs and that are not open, the commonest first. */
	closedGroups(): number[] {
		const times = new Map<number, number>();
		for (const c of this.columnsLeft()) {
			const group = this.group[c]!;
			if (!this.isOpen(group)) times.set(group, (times.get(group) ?? 0) + 1);
		}
		return [...times].sort((x, y) => y[1] - x[1]).map(([group]) => group);
	}

	open(group: number) {
		if (this.isOpen(group)) return;
		this.spent += this.openingOf(group);
		this.groupCost[group] = 0;
		this.ownerCost[this.ownerOf[group]!] = 0;
		// Its columns may now stand for those of other groups.
		for (const [c, bits] of this.columns.entries()) {
			if (!bits || this.group[c] !== group) continue;
			for (const e of bits.list())
				for (const other of this.elements[e]!.list())
					if (this.group[other] !== group && this.columns[other]!.size <= bits.size)
						this.dirtyColumns.add(other);
		}
	}

	dropColumn(column: number) {
		const bits = this.columns[column];
		if (!bits) return;
		for (const e of bits.list()) {
			this.elements[e]!.delete(column);
			this.dirtyElements.add(e);
			if (this.elements[e]!.size === 0) this.isLost = true;
		}
		this.columns[column] = undefined;
		this.liveColumns--;
	}

	private dropElement(element: number) {
		for (const c of this.elements[element]!.list()) {
			const bits = this.columns[c]!;
			bits.delete(element);
			this.dirtyColumns.add(c);
			if (bits.size > 0) continue;
			this.columns[c] = undefined;
			this.liveColumns--;
		}
		this.elements[element] = undefined;
		this.liveElements--;
	}

	take(column: number) {
		this.open(this.group[column]!);
		this.taken.push(this.names[column]!);
		this.spent += this.cost[column]!;
		for (const e of this.columns[column]!.list()) this.dropElement(e);
	}

	/** Whether a column that covers as much may stand in this one's place. */
	private mayStandFor(other: number, column: number): boolean {
		return (
			this.cost[other]! <= this.cost[column]! &&
			(this.group[other] === this.group[column] || this.isOpen(this.group[other]!))
		);
	}

	/** Whether another column makes this one idle; of two that are alike the first stays. */
	private isIdle(column: number): boolean {
		const bits = this.columns[column]!;
		const members = bits.list();
		const near = this.elements[rarest(members, this.elements)]!;
		this.work += members.length + near.size + this.wordsOfElement;
		return near.list().some((other) => {
			if (other === column) return false;
			const wider = this.columns[other]!;
			if (wider.size < bits.size || !this.mayStandFor(other, column)) return false;
			if (!members.every((e) => wider.has(e))) return false;
			return wider.size > bits.size || other < column || !this.mayStandFor(column, other);
		});
	}

	/** The elements that are covered whenever this one is. */
	private sureWith(element: number): number[] {
		const bits = this.elements[element]!;
		const members = bits.list();
		const near = this.columns[rarest(members, this.columns)]!;
		this.work += members.length * (1 + near.size) + this.wordsOfElement;
		return near.list().filter((other) => {
			const wider = this.elements[other]!;
			if (other === element || wider.size < bits.size) return false;
			return members.every((c) => wider.has(c));
		});
	}

	/** The one closed group without which the element stays open; −1 if there is none. */
	private onlyGroup(element: number): number {
		const { group } = this;
		const list = this.elements[element]!.list();
		const first = group[list[0]!]!;
		return !this.isOpen(first) && list.every((c) => group[c] === first) ? first : -1;
	}

	private lookAtElement(element: number) {
		const bits = this.elements[element];
		if (!bits) return;
		if (bits.size === 0) {
			this.isLost = true;
			return;
		}
		if (bits.size === 1) {
			this.take(bits.list()[0]!);
			return;
		}
		const group = this.onlyGroup(element);
		if (group >= 0) this.open(group);
		for (const other of this.sureWith(element)) this.dropElement(other);
	}

	/**
	 * Applies the rules until none applies, or until they have looked at more than `most` members: what is
	 * left then is larger than it need be, and nothing is lost. Rests now and then.
	 */
	*reduce(most = Infinity): Generator<void> {
		let rested = this.work;
		for (let n = 1; !this.isLost && this.work <= most; n++) {
			if (n % REST === 0 || this.work - rested > REST_WORK) {
				rested = this.work;
				yield;
			}
			const element = this.dirtyElements.next();
			if (element !== undefined) {
				this.lookAtElement(element);
				continue;
			}
			const column = this.dirtyColumns.next();
			if (column === undefined) return;
			if (this.columns[column] && this.isIdle(column)) this.dropColumn(column);
		}
	}
}

/** Columns or elements looked at between two rests. */
const REST = 64;
/** Members looked at after which it rests in any case. */
const REST_WORK = 1_000_000;

/** The member that the fewest have. */
function rarest(members: readonly number[], sets: readonly (Bits | undefined)[]): number {
	let best = members[0]!;
	for (const m of members) if (sets[m]!.size < sets[best]!.size) best = m;
	return best;
}
