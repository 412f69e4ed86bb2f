/**
 * The cheapest columns that cover every element: the core of the test card (probes that catch
 * faults, in plug states that have to be set up) and of a contradiction (readings that every
 * hypothesis fails). Rules that lose nothing come first (coverTable.ts). What is left falls into
 * pieces that share nothing; each is searched, deepest cut first: over the groups that may be
 * opened, then over the columns of the element with fewest. The bound is what must be paid for
 * elements of which no column covers two, and for opening groups. Minimum set cover has no short
 * way in general (Karp 1972), so the search may be given a limit, and the answer says whether it
 * was reached.
 */
import { isDearerThan } from './coverBound';
import { Table, type Column, type Opening } from './coverTable';

export interface Cover {
	/** Positions of the chosen columns, ascending. */
	readonly chosen: readonly number[];
	/** Whether it is certain that no cheaper cover exists. */
	readonly exact: boolean;
}

/** Nothing to be opened. */
const NO_OPENING: Opening = { groups: [], ownerOf: [], owners: [] };

interface Limit {
	left: number;
}
interface Found {
	readonly names: readonly number[];
	readonly cost: number;
}

/** Columns that hang together: by an element, by a closed group, by an owner that costs. */
function piecesOf(table: Table): Table[] {
	const left = table.columnsLeft();
	const parent = new Map<string, string>();
	const root = (key: string): string => {
		let at = key;
		for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
		return at;
	};
	const unite = (a: string, b: string) => {
		const [x, y] = [root(a), root(b)];
		if (x !== y) parent.set(y, x);
	};
	for (const e of table.elementsLeft()) {
		const list = table.elements[e]!.list();
		for (const c of list) unite(`c${list[0]}`, `c${c}`);
	}
	for (const c of left) {
		const group = table.group[c]!;
		if (table.isOpen(group)) continue;
		unite(`c${c}`, `g${group}`);
		if (table.ownerCostOf(group) > 0) unite(`g${group}`, `o${table.ownerOf[group]}`);
	}
	const pieces = new Map<string, number[]>();
	for (const c of left) {
		const at = root(`c${c}`);
		const piece = pieces.get(at);
		if (piece) piece.push(c);
		else pieces.set(at, [c]);
	}
	return [...pieces.values()].map((columns) => table.only(columns));
}

/** What opening costs while columns are chosen: a group once, and its owner once. */
class Openings {
	private readonly opened = new Set<number>();
	private readonly owners = new Set<number>();
	constructor(private readonly table: Table) {}

	costOf(group: number): number {
		const { table } = this;
		if (group < 0 || this.opened.has(group)) return 0;
		return (
			table.groupCostOf(group) +
			(this.owners.has(table.ownerOf[group]!) ? 0 : table.ownerCostOf(group))
		);
	}
	open(group: number) {
		if (group < 0) return;
		this.opened.add(group);
		this.owners.add(this.table.ownerOf[group]!);
	}
}

/** The column that covers most for what it costs now, again and again; none that is then idle. Rests after each. */
function* greedy(table: Table): Generator<void, Found> {
	const openings = new Openings(table);
	const columns = table.columnsLeft();
	const gains = new Int32Array(table.columns.length);
	for (const c of columns) gains[c] = table.columns[c]!.size;
	const open = new Set(table.elementsLeft());
	const chosen: number[] = [];
	while (open.size > 0) {
		yield;
		let best = -1;
		let most = 0;
		for (const c of columns) {
			if (gains[c] === 0) continue;
			const worth = gains[c]! / (table.cost[c]! + openings.costOf(table.group[c]!));
			if (worth > most) [best, most] = [c, worth];
		}
		chosen.push(best);
		openings.open(table.group[best]!);
		for (const e of table.columns[best]!.list())
			if (open.delete(e)) for (const c of table.elements[e]!.list()) gains[c]!--;
	}
	return costed(table, withoutIdle(table, chosen));
}

/** Leaves out columns that the others make needless, the dearest first. */
function withoutIdle(table: Table, chosen: readonly number[]): number[] {
	const times = new Map<number, number>();
	const add = (c: number, n: number) => {
		for (const e of table.columns[c]!.list()) times.set(e, (times.get(e) ?? 0) + n);
	};
	for (const c of chosen) add(c, 1);
	const order = [...chosen].sort((a, b) => table.cost[b]! - table.cost[a]!);
	return order.filter((c) => {
		if (table.columns[c]!.list().some((e) => times.get(e)! < 2)) return true;
		add(c, -1);
		return false;
	});
}

/** What these columns cost, with the groups that they need. */
function costed(table: Table, chosen: readonly number[]): Found {
	const groups = new Set(chosen.map((c) => table.group[c]!).filter((g) => !table.isOpen(g)));
	const owners = new Map([...groups].map((g) => [table.ownerOf[g]!, table.ownerCostOf(g)]));
	const cost =
		chosen.reduce((sum, c) => sum + table.cost[c]!, 0) +
		[...groups].reduce((sum, g) => sum + table.groupCostOf(g), 0) +
		[...owners.values()].reduce((sum, n) => sum + n, 0);
	return { names: chosen.map((c) => table.names[c]!), cost };
}

/** A cover that costs at most `most`, the cheapest; null if there is none, or the limit is reached. */
function* search(table: Table, most: number, limit: Limit): Generator<void, Found | null> {
	yield* table.reduce();
	if (table.isLost) return null;
	const { taken, spent } = table;
	if (table.liveElements === 0) return spent <= most ? { names: taken, cost: spent } : null;
	if (limit.left <= 0 || isDearerThan(table, most - spent)) return null;
	limit.left -= table.columnsLeft().reduce((sum, c) => sum + table.columns[c]!.size, 0);
	yield;
	const pieces = piecesOf(table);
	let [names, cost]: [readonly number[], number] = [taken, spent];
	if (pieces.length === 1) {
		const found = yield* branch(pieces[0]!, most - spent, limit);
		return found && { names: [...names, ...found.names], cost: cost + found.cost };
	}
	for (const piece of pieces) {
		const found = yield* cheapest(piece, most - cost, limit);
		if (!found) return null;
		names = [...names, ...found.names];
		cost += found.cost;
	}
	return { names, cost };
}

function* branch(table: Table, most: number, limit: Limit): Generator<void, Found | null> {
	const closed = table.closedGroups();
	return closed.length > 0
		? yield* branchOnGroup(table, closed[0]!, most, limit)
		: yield* branchOnElement(table, most, limit);
}

function* branchOnGroup(
	table: Table,
	group: number,
	most: number,
	limit: Limit
): Generator<void, Found | null> {
	const without = table.copy();
	for (const c of table.columnsLeft()) if (table.group[c] === group) without.dropColumn(c);
	table.open(group);
	const opened = yield* search(table, most, limit);
	const closed = yield* search(without, opened ? opened.cost - 1 : most, limit);
	return closed ?? opened;
}

function* branchOnElement(table: Table, most: number, limit: Limit): Generator<void, Found | null> {
	const lists = table.elementsLeft().map((e) => table.elements[e]!);
	const byWidth = lists
		.reduce((x, y) => (y.size < x.size ? y : x))
		.list()
		.sort((a, b) => table.columns[b]!.size - table.columns[a]!.size || a - b);
	let best: Found | null = null;
	for (const column of byWidth) {
		if (!table.columns[column]) continue;
		const rest = table.copy();
		rest.take(column);
		best = (yield* search(rest, best ? best.cost - 1 : most, limit)) ?? best;
		// Every other way leaves this column out.
		table.dropColumn(column);
		if (table.isLost) break;
	}
	return best;
}

/** The cheapest cover that costs at most `most`. */
function* cheapest(table: Table, most: number, limit: Limit): Generator<void, Found | null> {
	const first = yield* greedy(table);
	// Where the rules were cut short, a search of what they left would be no shorter.
	if (limit.left <= 0) return first.cost <= most ? first : null;
	const found = yield* search(table.copy(), Math.min(most, first.cost - 1), limit);
	return found ?? (first.cost <= most ? first : null);
}

/**
 * The columns that cover together, for the least cost, all that any of them covers. `steps`: most
 * elements of columns that branches of the search may look at. `looks`: most members that the rules may
 * look at before it; where that does not do, the cover is the best that was found and not proven. Rests
 * at each `yield`.
 */
export function* cheapestCover(
	columns: readonly Column[],
	opening: Opening,
	steps = Infinity,
	looks = Infinity
): Generator<void, Cover & { readonly cost: number }> {
	const limit = { left: steps };
	const table = Table.of(columns, opening);
	yield* table.reduce(looks);
	if (table.work > looks) limit.left = 0;
	const { taken, spent } = table;
	const rest = table.liveElements > 0 ? yield* cheapest(table, Infinity, limit) : null;
	const names = [...taken, ...(rest?.names ?? [])];
	return {
		chosen: names.sort((a, b) => a - b),
		cost: spent + (rest?.cost ?? 0),
		exact: limit.left > 0
	};
}

/**
 * Positions of the columns that the rules leave, or take: a cheapest cover needs no other. `looks`: most
 * members that the rules may look at; where that does not do, `isWhole` is false and more columns are
 * left. Rests at each `yield`, and says there how many are left.
 */
export function* usefulColumns(
	columns: readonly Column[],
	opening: Opening,
	looks = Infinity
): Generator<number, { readonly positions: readonly number[]; readonly isWhole: boolean }> {
	const table = Table.of(columns, opening);
	for (const reducing = table.reduce(looks); !reducing.next().done;) yield table.liveColumns;
	const positions = [...table.taken, ...table.columnsLeft()].sort((a, b) => a - b);
	return { positions, isWhole: table.work <= looks };
}

/**
 * The fewest of the columns that together cover all that any of them covers. A column is the list
 * of elements that it covers; elements are whole numbers.
 */
export function fewestColumns(columns: readonly (readonly number[])[], steps = Infinity): Cover {
	const plain = columns.map((covers) => ({ covers, cost: 1, group: -1 }));
	const search = cheapestCover(plain, NO_OPENING, steps);
	for (;;) {
		const step = search.next();
		if (step.done) return { chosen: step.value.chosen, exact: step.value.exact };
	}
}
