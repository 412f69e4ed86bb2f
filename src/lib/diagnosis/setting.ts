/**
 * Plug states as they really are: what each socket holds. States that put the same plugs into the
 * same sockets are one column of the dictionary (`none` of a socket that is empty in the file is the
 * file's own state), and the way from one state to another costs a plug change for each socket that
 * has to hold something else.
 */
import { inState, plugIn, type Bench, type Plug, type When } from '../engine';

/** What a socket holds: the empty text, a plug of the file by its id, or a bare plug by its kind. */
const holdingOf = (bench: Bench, plug: Plug | null): string => {
	if (!plug) return '';
	const own = bench.plugs.some((p) => p.id === plug.id);
	return own ? `${plug.id} at ${plug.travel}` : `bare ${plug.kind}`;
};

/** What every socket holds in that state, in file order. */
export function holdingsIn(bench: Bench, when: When): string[] {
	const there = inState(bench, when);
	return bench.sockets.map((s) => holdingOf(bench, plugIn(there, s.id)));
}

/** One text for each state that is really another: two states with the same key answer alike. */
export const stateKey = (bench: Bench, when: When): string =>
	JSON.stringify(holdingsIn(bench, when));

/** Sockets that have to be given another plug, or emptied, on the way from one state to the other. */
export function plugChanges(bench: Bench, from: When, to: When): number {
	const before = holdingsIn(bench, from);
	return holdingsIn(bench, to).filter((holding, i) => holding !== before[i]).length;
}

export interface Columns {
	/** One state for each column, the first of those that are alike. */
	readonly states: readonly When[];
	/** The column of each state given. */
	readonly of: readonly number[];
	/** Column by state key. */
	readonly at: ReadonlyMap<string, number>;
}

/** States that are alike laid together. */
export function columnsOf(bench: Bench, states: readonly When[]): Columns {
	const columns = new Map<string, number>();
	const kept: When[] = [];
	const of = states.map((when) => {
		const key = stateKey(bench, when);
		if (!columns.has(key)) {
			columns.set(key, kept.length);
			kept.push(when);
		}
		return columns.get(key)!;
	});
	return { states: kept, of, at: columns };
}
