/** For tests: real sockets with their contacts in some order under the lugs, and the engine as the meter. */
import type { PlugState, SocketKind } from '../engine';
import { lugKnowledge, type LugReading } from './lugs';
import { BAG, lookAlikes, viewOf } from './tell';
import type { Question } from './tellPlan';

/** An order of n contacts; small, fixed, and different for each seed. */
export function shuffled(n: number, seed: number): number[] {
	const order = Array.from({ length: n }, (_, i) => i);
	let s = seed * 2654435761 + 1;
	for (let i = n - 1; i > 0; i--) {
		s = (Math.imul(s ^ (s >>> 15), 2246822519) + 374761393) | 0;
		const k = (s >>> 0) % (i + 1);
		[order[i], order[k]] = [order[k]!, order[i]!];
	}
	return order;
}

/** What the meter says of a socket whose lug x is contact `order[x]`. */
export function ask(
	kind: SocketKind,
	order: readonly number[],
	{ state, a, b }: Question
): LugReading {
	const { lugs, parts } = viewOf(kind, state);
	const net = typeof a === 'number' ? lugs[order[a]!] : parts.get(a);
	return { state, a, b, sounds: net === lugs[order[b]!] };
}

/** The kind and those that look like it. */
export const groupOf = (kind: SocketKind): SocketKind[] => [kind, ...lookAlikes(kind)].sort();

/** A whole hunt: every question that is asked, with the true answer. */
export function hunt(
	kind: SocketKind,
	order: readonly number[],
	plugs: readonly PlugState[] = BAG
) {
	const kinds = groupOf(kind);
	const readings: LugReading[] = [];
	for (;;) {
		const known = lugKnowledge(kinds, readings, plugs);
		if (!known.next) return { known, readings };
		readings.push(ask(kind, order, known.next));
		if (readings.length > 100) throw new Error('the questions do not end');
	}
}
