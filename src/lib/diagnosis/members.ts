/** The sets of a class by name, found one after another only when somebody asks for them. */
import type { Dictionary } from './dictionary';
import { weightOfSet } from './weights';

/** Every set of just `size` of the numbers 0 to n − 1, in order. */
function* setsOfSize(size: number, n: number, from = 0): Generator<number[]> {
	if (size === 0) {
		yield [];
		return;
	}
	for (let i = from; i <= n - size; i++)
		for (const rest of setsOfSize(size - 1, n, i + 1)) yield [i, ...rest];
}

/** The sets of the class as numbers in `faults`: fewest faults first, then in list order. */
export function* membersOf(dictionary: Dictionary, id: number): Generator<number[]> {
	const { most, faults, classOfSet } = dictionary;
	for (let size = 0; size <= most; size++)
		for (const set of setsOfSize(size, faults.length)) if (classOfSet(set) === id) yield set;
}

/** The first `howMany` sets of the class. */
export function someMembers(dictionary: Dictionary, id: number, howMany: number): number[][] {
	const found: number[][] = [];
	for (const set of membersOf(dictionary, id)) {
		found.push(set);
		if (found.length === howMany) break;
	}
	return found;
}

/** The heaviest set among those with the fewest faults, at least one; null if there is none. */
function heaviestFaulty(dictionary: Dictionary, id: number): number[] | null {
	let best: { set: number[]; weight: number } | null = null;
	for (const set of membersOf(dictionary, id)) {
		if (set.length === 0) continue;
		if (best && set.length > best.set.length) break;
		const weight = weightOfSet(set.map((i) => dictionary.faults[i]!));
		if (!best || weight > best.weight) best = { set, weight };
	}
	return best?.set ?? null;
}

/**
 * The dictionary for somebody who knows that something is wrong: "sound" weighs nothing and is no
 * candidate. Its class stays where faults that no probe can catch are in it.
 */
export function withoutSound(dictionary: Dictionary): Dictionary {
	const sound = dictionary.classOfSet([]);
	const weight = dictionary.weight.slice();
	const count = dictionary.count.slice();
	weight[sound]! -= 1;
	count[sound]! -= 1;
	let known: number[] | undefined;
	const heaviest = (id: number): number[] => {
		if (id !== sound) return dictionary.heaviest(id);
		return (known ??= heaviestFaulty(dictionary, id) ?? []);
	};
	return { ...dictionary, weight, count, heaviest, hasSound: false };
}
