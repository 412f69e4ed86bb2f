/**
 * Judging a mending: the requirement first, then the changes against the fewest that do it. The fewest
 * is searched for, never written down; with more than are allowed the wiring works and scores less.
 */
import type { Wire } from '../engine';
import type { PutRightExercise } from './exercise';
import type { Result } from './result';
import { fewestChanges } from './search';
import { judgeWiring } from './wire';

const endsOf = ({ from, to }: Wire): string => [from, to].sort().join(' ');

/**
 * Wires taken out and put in between two wirings. Only ends count: a wire that is longer, thicker or
 * renamed is the same wire; one that is moved counts twice.
 */
export function changesBetween(before: readonly Wire[], after: readonly Wire[]): number {
	const left = after.map(endsOf);
	const gone = before.filter((w) => {
		const at = left.indexOf(endsOf(w));
		if (at >= 0) left.splice(at, 1);
		return at < 0;
	});
	return gone.length + left.length;
}

const fewest = new WeakMap<PutRightExercise, number | null>();

/** The fewest changes from the start to a right wiring; null if the search gave up before it knew. */
export function fewestToMend(exercise: PutRightExercise): number | null {
	const known = fewest.get(exercise);
	if (known !== undefined) return known;
	const search = fewestChanges(exercise, { sets: 1 });
	const made = search.kind === 'found' ? search.changes : null;
	fewest.set(exercise, made);
	return made;
}

export function judgeMending(exercise: PutRightExercise, wires: readonly Wire[]): Result {
	const wired = judgeWiring(exercise, wires);
	if (wired.refused) return wired;
	const changes = changesBetween(exercise.bench.wires, wires);
	const { allow } = exercise;
	const putRight = { changes, fewest: fewestToMend(exercise), allow };
	const enough = putRight.fewest === null ? Infinity : putRight.fewest + allow;
	if (!wired.passed || changes <= enough) return { ...wired, putRight };
	return { ...wired, score: enough / changes, passed: false, putRight };
}
