/**
 * What a cover must cost at least. Two bounds are quick: elements of which no column covers two, and
 * elements that need closed groups of which no two are the same. The third puts a price on each
 * element and asks what the columns and openings would cost if each element paid its price: any
 * prices give a bound (Lagrangian relaxation; Held and Karp 1971, for covers Beasley 1990), and
 * prices are moved towards elements that are covered too seldom for as long as that helps.
 */
import type { Table } from './coverTable';

/** The greatest common divisor. */
const common = (a: number, b: number): number => (b === 0 ? a : common(b, a % b));

/** Rounded up to a multiple of what all of these are a multiple of. */
function roundedUp(sum: number, costs: readonly number[]): number {
	const step = costs.reduce(common, 0);
	return step === 0 ? 0 : step * Math.ceil(sum / step - 1e-6);
}

/** Elements of which no column covers two: each needs a column of its own. */
export function columnBound(table: Table): number {
	const blocked = new Set<number>();
	let sum = 0;
	const elements = table.elementsLeft().map((e) => table.elements[e]!);
	for (const bits of elements.sort((a, b) => a.size - b.size)) {
		const list = bits.list();
		if (list.some((c) => blocked.has(c))) continue;
		for (const c of list) blocked.add(c);
		sum += Math.min(...list.map((c) => table.cost[c]!));
	}
	return sum;
}

/** Elements that need a closed group, no two the same one; an owner's own charge is counted once. */
export function openingBound(table: Table): number {
	const needs = new Map<string, readonly number[]>();
	for (const e of table.elementsLeft()) {
		const groups = [...new Set(table.elements[e]!.list().map((c) => table.group[c]!))];
		if (groups.every((g) => !table.isOpen(g))) needs.set(groups.join(), groups);
	}
	const used = new Set<number>();
	const paid = new Set<number>();
	let sum = 0;
	for (const groups of [...needs.values()].sort((a, b) => a.length - b.length)) {
		if (groups.some((g) => used.has(g))) continue;
		const costs = groups.map((g) => {
			const owner = table.ownerOf[g]!;
			return table.groupCostOf(g) + (paid.has(owner) ? 0 : table.ownerCostOf(g));
		});
		sum += Math.min(...costs);
		for (const g of groups) {
			used.add(g);
			paid.add(table.ownerOf[g]!);
		}
	}
	return sum;
}

/** Rounds of moving prices, and rounds without gain after which the steps are halved. */
const ROUNDS = 120;
const PATIENCE = 6;

/** Elements with prices, and the columns and openings that would be chosen at them. */
class Prices {
	private readonly elements: readonly number[];
	private readonly columns: readonly number[];
	private readonly members: readonly (readonly number[])[];
	private readonly price: Float64Array;
	private readonly times: Int32Array;
	private readonly worth: Float64Array;
	private readonly groups = new Map<number, number[]>();
	private readonly owners = new Map<number, number[]>();
	private readonly free: number[] = [];

	constructor(
		private readonly table: Table,
		private readonly isCharged: boolean
	) {
		this.elements = table.elementsLeft();
		this.columns = table.columnsLeft();
		const place = new Map(this.elements.map((e, i) => [e, i]));
		this.members = this.columns.map((c) => table.columns[c]!.list().map((e) => place.get(e)!));
		this.price = new Float64Array(this.elements.length).fill(Infinity);
		this.times = new Int32Array(this.elements.length);
		this.worth = new Float64Array(this.columns.length);
		this.members.forEach((members, i) => {
			const share = table.cost[this.columns[i]!]! / members.length;
			for (const e of members) this.price[e] = Math.min(this.price[e]!, share);
		});
		this.columns.forEach((c, i) => this.file(table.group[c]!, i));
	}

	private file(group: number, column: number) {
		if (!this.isCharged || this.table.isOpen(group)) {
			this.free.push(column);
			return;
		}
		if (!this.groups.has(group)) {
			this.groups.set(group, []);
			const owner = this.table.ownerOf[group]!;
			this.owners.set(owner, [...(this.owners.get(owner) ?? []), group]);
		}
		this.groups.get(group)!.push(column);
	}

	private choose(columns: readonly number[]) {
		for (const c of columns)
			if (this.worth[c]! < 0) for (const e of this.members[c]!) this.times[e]!++;
	}

	/** The gain of choosing among these all that are worth it; none is positive. */
	private gain(columns: readonly number[]): number {
		let sum = 0;
		for (const c of columns) if (this.worth[c]! < 0) sum += this.worth[c]!;
		return sum;
	}

	/** The bound at these prices; notes how often each element would be covered. */
	private bound(): number {
		const { table, members, price, worth } = this;
		this.times.fill(0);
		members.forEach((list, i) => {
			let left = table.cost[this.columns[i]!]!;
			for (const e of list) left -= price[e]!;
			worth[i] = left;
		});
		let sum = this.gain(this.free);
		for (const p of price) sum += p;
		this.choose(this.free);
		for (const groups of this.owners.values()) {
			const gains = groups.map((g) => table.groupCostOf(g) + this.gain(this.groups.get(g)!));
			const whole = gains.reduce((n, x) => n + Math.min(0, x), table.ownerCostOf(groups[0]!));
			if (whole >= 0) continue;
			sum += whole;
			groups.forEach((g, i) => gains[i]! < 0 && this.choose(this.groups.get(g)!));
		}
		return sum;
	}

	/** Moves each price by its lack of cover; false if nothing lacks or is covered twice. */
	private move(by: number): boolean {
		const { price, times } = this;
		let square = 0;
		for (const n of times) square += (1 - n) * (1 - n);
		if (square === 0) return false;
		for (let e = 0; e < price.length; e++)
			price[e] = Math.max(0, price[e]! + (by / square) * (1 - times[e]!));
		return true;
	}

	/** The best bound found; stops once it is over `most`. */
	best(most: number): number {
		let best = 0;
		let stride = 1.5;
		let idle = 0;
		for (let round = 0; round < ROUNDS && best <= most; round++) {
			const bound = this.bound();
			idle = bound > best ? 0 : idle + 1;
			best = Math.max(best, bound);
			if (idle === PATIENCE) {
				stride /= 2;
				idle = 0;
			}
			if (stride < 0.01 || !this.move(stride * Math.max(1e-3, most + 1 - bound))) break;
		}
		return best;
	}
}

/** Whether every cover costs more than `most`, as far as the bounds can tell. */
export function isDearerThan(table: Table, most: number): boolean {
	const opening = openingBound(table);
	if (columnBound(table) + opening > most) return true;
	const costs = table.columnsLeft().map((c) => table.cost[c]!);
	const apart = roundedUp(new Prices(table, false).best(most - opening), costs);
	if (apart + opening > most) return true;
	const groups = table.closedGroups();
	if (groups.length === 0) return false;
	const charges = groups.flatMap((g) => [table.groupCostOf(g), table.ownerCostOf(g)]);
	return roundedUp(new Prices(table, true).best(most), [...costs, ...charges]) > most;
}
