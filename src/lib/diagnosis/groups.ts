/**
 * What remains, class by class: the sets in one class answer every probe alike, so a person who holds
 * a meter has one suspect there and not many. Single faults are all named; of larger sets one is.
 */
import type { Fault } from '../engine';
import type { Dictionary } from './dictionary';
import { weightIn } from './evidence';
import { weightOfSet } from './weights';

export interface Group {
	/** Sets by name, the likeliest first; an empty one is a sound bench. At least one. */
	readonly sets: readonly (readonly Fault[])[];
	/** Sets in the class, named or not. */
	readonly members: number;
	/** Part of the weight of all that remains. */
	readonly weight: number;
}

/** The names of the classes, single faults and "sound". */
function singlesBy(dictionary: Dictionary, ids: Int32Array): Map<number, Fault[][]> {
	const { faults, classOfSet, hasSound } = dictionary;
	const by = new Map<number, Fault[][]>([...ids].map((id) => [id, []]));
	const sets = [...(hasSound ? [[]] : []), ...faults.map((_, i) => [i])];
	for (const set of sets) by.get(classOfSet(set))?.push(set.map((i) => faults[i]!));
	for (const named of by.values()) named.sort((x, y) => weightOfSet(y) - weightOfSet(x));
	return by;
}

/** The classes `ids`, the heaviest first, at most `listed` of them. */
export function groupsIn(dictionary: Dictionary, ids: Int32Array, listed: number): Group[] {
	const { weight, count, heaviest, faults, most } = dictionary;
	const total = weightIn(dictionary, ids);
	const order = [...ids].sort((a, b) => weight[b]! - weight[a]! || a - b).slice(0, listed);
	const singles = most === 1 ? singlesBy(dictionary, Int32Array.from(order)) : null;
	return order.map((id) => ({
		sets: singles?.get(id) ?? [heaviest(id).map((i) => faults[i]!)],
		members: count[id]!,
		weight: weight[id]! / total
	}));
}

/** A name for the class that stays the same from one reading to the next. */
export const groupKey = ({ sets }: Group): string => JSON.stringify(sets[0]);
