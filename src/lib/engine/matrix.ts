/**
 * The continuity matrix of a socket: for each bare plug that fits, which of its contacts are joined.
 * This is the plain way, a circuit for each state; fastMatrix.ts has the one that screens use.
 */
import type { Bench, NodeName, PlugKind } from './bench';
import { contactsOf, inState, statesOf } from './edit';
import { byCodePoint, isJoined } from './nets';

export type Pair = readonly [NodeName, NodeName];
export type PlugState = 'none' | PlugKind;

/** All unordered pairs, each sorted, in sorted order. */
export function pairsOf(nodes: readonly NodeName[]): Pair[] {
	const sorted = [...nodes].sort(byCodePoint);
	return sorted.flatMap((a, i) => sorted.slice(i + 1).map((b): Pair => [a, b]));
}

/** As `matrixOf`, by the nets of the whole bench in each state. */
export function plainMatrixOf(bench: Bench, socket: string): Partial<Record<PlugState, Pair[]>> {
	const pairs = pairsOf(contactsOf(bench, socket));
	return Object.fromEntries(
		statesOf(bench, socket).map((state) => {
			const there = inState(bench, { [socket]: state });
			return [state, pairs.filter(([a, b]) => isJoined(there, a, b))];
		})
	);
}
