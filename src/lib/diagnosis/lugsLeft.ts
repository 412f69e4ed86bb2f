/**
 * How many more readings it takes to name the lugs. The exact mean would need every way through the
 * questions; this is one typical way: the meter is let sound as often as its chances say, each beep when
 * the chances since the last one have come to a half. `lugsLeft.test.ts` lays it beside whole hunts: it is
 * within a seventh at the start, and within a fifth half way. The
 * bound of information (log2 of the ways) would promise too little: few questions halve what is left.
 */
import type { PlugState, SocketKind } from '../engine';
import { lugKnowledge, type LugReading } from './lugs';

/** Counts on, a step for each reading, so that whoever waits can do other work between; returns the number. */
export function* countingLeft(
	kinds: readonly SocketKind[],
	readings: readonly LugReading[],
	plugs?: readonly PlugState[]
): Generator<number, number> {
	const taken = [...readings];
	let due = 0;
	for (;;) {
		const { next } = lugKnowledge(kinds, taken, plugs);
		if (!next) return taken.length - readings.length;
		const { state, a, b, chance } = next;
		due += chance;
		const sounds = due >= 0.5;
		if (sounds) due -= 1;
		taken.push({ state, a, b, sounds });
		yield taken.length - readings.length;
	}
}

/** About how many more readings it takes; 0 where none can tell more. */
export function readingsLeft(
	kinds: readonly SocketKind[],
	readings: readonly LugReading[],
	plugs?: readonly PlugState[]
): number {
	const counting = countingLeft(kinds, readings, plugs);
	for (;;) {
		const step = counting.next();
		if (step.done) return step.value;
	}
}
