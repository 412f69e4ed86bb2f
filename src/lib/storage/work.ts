/**
 * What a learner has soldered in an exercise, kept so that a reload loses nothing. Only the wires
 * are the learner's; they are laid on the exercise's own bench and pass the gate again, because the
 * exercise may have changed since.
 */
import type { Bench } from '../engine/bench';
import { checkBench, fileOf, makeBench, parseBench } from '../engine/parse';
import { browserStore, readText, writeText, type TextStore } from './store';

const keyOf = (exercise: string): string => `solderside-work-1-${exercise}`;

/** The exercise's bench with the learner's wires, or null where there are none or they no longer fit. */
export function loadWork(
	exercise: string,
	start: Bench,
	store: TextStore | null = browserStore()
): Bench | null {
	const text = readText(store, keyOf(exercise));
	const stored = text === null ? null : parseBench(text);
	if (!stored?.ok) return null;
	const merged = checkBench(fileOf({ ...start, wires: stored.value.wires }));
	return merged.ok ? merged.value : null;
}

/** Keeps the wires of the bench; false where there is no store or no room in it. */
export const saveWork = (
	exercise: string,
	bench: Bench,
	store: TextStore | null = browserStore()
): boolean => writeText(store, keyOf(exercise), makeBench(bench));
