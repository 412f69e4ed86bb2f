/**
 * Readings against the dictionary: which classes agree with all of them. A probe is found by what
 * the sockets hold and by its two nodes; readings in states or of nodes outside the bench's own
 * list are asked for when the dictionary is made ("extras") and stand there as answers of their own.
 */
import type { Bench } from '../engine';
import type { Dictionary } from './dictionary';
import { probeNodes, statesOfBench, type Probe, type ProbeAnswer } from './probes';
import { columnsOf, stateKey } from './setting';

/** A probe and what the meter said: joined (it sounds) or apart. */
export interface Reading extends Probe {
	readonly answer: ProbeAnswer;
}

/** The probes among these that the bench's own states and nodes do not cover. */
export function extrasOf(bench: Bench, probes: readonly Probe[]): Probe[] {
	const { at } = columnsOf(bench, statesOfBench(bench));
	const nodes = new Set(probeNodes(bench));
	const strange = ({ when, pair }: Probe) =>
		!at.has(stateKey(bench, when)) || pair.some((node) => !nodes.has(node));
	return probes.filter(strange).map(({ when, pair }) => ({ when, pair }));
}

/** Where the dictionary keeps the answers to a probe. */
export interface Place {
	readonly column: number;
	/** Positions in `nodes`; −1 for an extra probe, whose column holds the answer itself. */
	readonly a: number;
	readonly b: number;
}

const isSamePair = ([a, b]: Probe['pair'], [x, y]: Probe['pair']): boolean =>
	(a === x && b === y) || (a === y && b === x);

/** The place of a probe. Throws if the dictionary was made without it. */
export function placeOf(dictionary: Dictionary, { when, pair }: Probe): Place {
	const { bench, nodeAt, columnAt, columns, extras } = dictionary;
	const key = stateKey(bench, when);
	const column = columnAt.get(key);
	const [a, b] = pair.map((node) => nodeAt.get(node));
	if (column !== undefined && a !== undefined && b !== undefined) return { column, a, b };
	const extra = extras.findIndex(
		(e) => isSamePair(e.pair, pair) && stateKey(bench, e.when) === key
	);
	if (extra < 0) throw new Error('the dictionary was made without this probe');
	return { column: columns + extra, a: -1, b: -1 };
}

/** Whether the class answers "joined" there. */
export function isJoinedAt({ rows, seen }: Dictionary, id: number, place: Place): boolean {
	const found = rows.at(id, place.column);
	return place.a < 0 ? found === 1 : seen.at(found, place.a) === seen.at(found, place.b);
}

/** Every class of the dictionary that has a set in it. */
export const everyClass = ({ size, count }: Dictionary): Int32Array =>
	Int32Array.from({ length: size }, (_, id) => id).filter((id) => count[id]! > 0);

/** The classes among `from` that agree with all the readings, in the same order. */
export function agreeing(
	dictionary: Dictionary,
	readings: readonly Reading[],
	from = everyClass(dictionary)
): Int32Array {
	return readings.reduce((ids, reading) => {
		const place = placeOf(dictionary, reading);
		const joined = reading.answer === 'joined';
		return ids.filter((id) => isJoinedAt(dictionary, id, place) === joined);
	}, from);
}

/** What the classes weigh together. */
export function weightIn({ weight }: Dictionary, ids: Int32Array): number {
	let sum = 0;
	for (const id of ids) sum += weight[id]!;
	return sum;
}
