/**
 * The fewest columns that cover every element: the core of the test card (probes that catch faults)
 * and of a contradiction (readings that every hypothesis fails). Rules that lose nothing come first:
 * a column whose elements another one also covers goes, an element that is covered whenever another
 * one is goes, and a column that alone covers an element is taken. What is left falls into parts
 * that share nothing; each is searched, deepest cut first, against a bound of elements of which no
 * column covers two. Minimum set cover has no short way in general (Karp 1972), so the search may be
 * given a limit, and the answer says whether it was reached.
 */
import { Bits } from './bits';

export interface Cover {
	/** Positions of the chosen columns, ascending. */
	readonly chosen: readonly number[];
	/** Whether it is certain that no smaller cover exists. */
	readonly exact: boolean;
}

interface Part {
	/** Elements that each column covers. */
	columns: Map<number, Bits>;
	/** Columns that cover each element. */
	elements: Map<number, Bits>;
}

function partOf(columns: readonly (readonly number[])[]): Part {
	const count = 1 + Math.max(-1, ...columns.map((c) => c.reduce((m, e) => Math.max(m, e), -1)));
	const part: Part = { columns: new Map(), elements: new Map() };
	columns.forEach((covers, c) => {
		if (covers.length === 0) return;
		part.columns.set(c, Bits.of(covers, count));
		for (const e of covers) {
			if (!part.elements.has(e)) part.elements.set(e, new Bits(columns.length));
			part.elements.get(e)!.add(c);
		}
	});
	return part;
}

const copyOf = ({ columns, elements }: Part): Part => ({
	columns: new Map([...columns].map(([c, bits]) => [c, bits.copy()])),
	elements: new Map([...elements].map(([e, bits]) => [e, bits.copy()]))
});

function dropColumn(part: Part, column: number) {
	for (const e of part.columns.get(column)!.list()) part.elements.get(e)?.delete(column);
	part.columns.delete(column);
}

function dropElement(part: Part, element: number) {
	for (const c of part.elements.get(element)!.list()) {
		const covers = part.columns.get(c)!;
		covers.delete(element);
		if (covers.size === 0) part.columns.delete(c);
	}
	part.elements.delete(element);
}

function take(part: Part, column: number) {
	for (const e of part.columns.get(column)!.list()) dropElement(part, e);
	part.columns.delete(column);
}

type Sets = ReadonlyMap<number, Bits>;

/** The other sets that contain this one, equal ones too: they all share its rarest member. */
function containing(at: number, sets: Sets, holders: Sets): number[] {
	const bits = sets.get(at)!;
	const members = bits.list();
	if (members.length === 0) return [...sets.keys()].filter((other) => other !== at);
	const sizeAt = (member: number) => holders.get(member)!.size;
	const rarest = members.reduce((x, y) => (sizeAt(y) < sizeAt(x) ? y : x));
	const near = holders.get(rarest)!.list();
	return near.filter((other) => other !== at && bits.isWithin(sets.get(other)!));
}

/** Columns that another one makes idle: of equal ones the first stays. */
const idleColumns = ({ columns, elements }: Part): number[] =>
	[...columns].flatMap(([c, { size }]) => {
		const wider = containing(c, columns, elements);
		return wider.some((other) => columns.get(other)!.size > size || other < c) ? [c] : [];
	});

/** Elements that are covered whenever another one is: of equal ones the first stays. */
const sureElements = ({ columns, elements }: Part): Set<number> =>
	new Set(
		[...elements].flatMap(([e, { size }]) =>
			containing(e, elements, columns).filter(
				(other) => elements.get(other)!.size > size || other > e
			)
		)
	);

/** Applies the rules until none applies; the columns that had to be taken. */
function reduce(part: Part): number[] {
	const taken: number[] = [];
	for (;;) {
		const before = part.columns.size + part.elements.size;
		for (const e of sureElements(part)) dropElement(part, e);
		for (const c of idleColumns(part)) dropColumn(part, c);
		const only = [...part.elements.values()].find((columns) => columns.size === 1);
		if (only) {
			const [column] = only.list();
			taken.push(column!);
			take(part, column!);
		} else if (part.columns.size + part.elements.size === before) return taken;
	}
}

/** Elements of which no column covers two, one after another: each needs a column of its own. */
function bound(part: Part): number {
	const blocked = new Set<number>();
	let n = 0;
	for (const [, columns] of [...part.elements].sort(([, a], [, b]) => a.size - b.size)) {
		const list = columns.list();
		if (list.some((c) => blocked.has(c))) continue;
		for (const c of list) blocked.add(c);
		n++;
	}
	return n;
}

/** Parts that share no column. */
function partsOf(part: Part): Part[] {
	const left = new Set(part.elements.keys());
	const parts: Part[] = [];
	for (const start of part.elements.keys()) {
		if (!left.delete(start)) continue;
		const piece: Part = { columns: new Map(), elements: new Map() };
		const open = [start];
		for (let e = open.pop(); e !== undefined; e = open.pop()) {
			piece.elements.set(e, part.elements.get(e)!);
			for (const c of part.elements.get(e)!.list()) {
				if (piece.columns.has(c)) continue;
				piece.columns.set(c, part.columns.get(c)!);
				for (const other of part.columns.get(c)!.list()) if (left.delete(other)) open.push(other);
			}
		}
		parts.push(piece);
	}
	return parts;
}

/** The widest column each time. */
function greedy(start: Part): number[] {
	const part = copyOf(start);
	const chosen: number[] = [];
	while (part.elements.size > 0) {
		const [column] = [...part.columns].reduce((x, y) => (y[1].size > x[1].size ? y : x));
		chosen.push(column);
		take(part, column);
	}
	return chosen;
}

interface Limit {
	left: number;
}

/** A cover of at most `most` columns, the smallest; null if there is none (or the limit is reached). */
function search(start: Part, most: number, limit: Limit): number[] | null {
	const part = copyOf(start);
	const taken = reduce(part);
	if (part.elements.size === 0) return taken.length <= most ? taken : null;
	if (taken.length + bound(part) > most || limit.left-- <= 0) return null;
	const parts = partsOf(part);
	if (parts.length > 1) {
		for (const piece of parts) {
			const found = smallest(piece, most - taken.length, limit);
			if (!found) return null;
			taken.push(...found);
		}
		return taken.length <= most ? taken : null;
	}
	const [, columns] = [...part.elements].reduce((x, y) => (y[1].size < x[1].size ? y : x));
	const byWidth = columns.list().sort((a, b) => {
		return part.columns.get(b)!.size - part.columns.get(a)!.size || a - b;
	});
	let best: number[] | null = null;
	for (const column of byWidth) {
		const rest = copyOf(part);
		take(rest, column);
		const room: number = (best ? best.length - 1 : most) - taken.length - 1;
		const found: number[] | null = room < 0 ? null : search(rest, room, limit);
		if (found) best = [...taken, column, ...found];
		if (!part.columns.delete(column)) continue;
		// Every other way leaves this column out.
		for (const bits of part.elements.values()) bits.delete(column);
	}
	return best;
}

/** The smallest cover of the part within `most` columns. */
function smallest(part: Part, most: number, limit: Limit): number[] | null {
	const first = greedy(part);
	const found = search(part, Math.min(most, first.length - 1), limit);
	return found ?? (first.length <= most ? first : null);
}

/**
 * The fewest of the columns that together cover all that any of them covers. A column is the list
 * of elements that it covers; elements are whole numbers. `steps`: most branches of the search.
 */
export function fewestColumns(columns: readonly (readonly number[])[], steps = Infinity): Cover {
	const limit = { left: steps };
	const part = partOf(columns);
	const chosen = smallest(part, columns.length, limit) ?? [];
	return { chosen: chosen.sort((a, b) => a - b), exact: limit.left > 0 };
}
