/**
 * Judging a prediction. Which pairs sound is never written down: the meter is put on each pair of
 * the bench. Score: right ticks over right ticks, missed ones and false ones.
 */
import { inState, readMeter } from '../engine';
import type { PredictExercise } from './exercise';
import type { Cell, Item, Sureness } from './judged';
import { refuse, type Result } from './result';
import { samePair } from './same';

export const sameCell = (x: Cell, y: Cell): boolean =>
	samePair([x[0], x[1]], [y[0], y[1]]) && (x[2] ?? 0) === (y[2] ?? 0);

/** Every cell of the exercise, question by question. */
export const cellsOf = (exercise: PredictExercise): Cell[] =>
	exercise.questions.flatMap(({ pairs }, i) => pairs.map(([a, b]): Cell => [a, b, i]));

/** The cells on which the meter sounds. */
export const soundingCells = (exercise: PredictExercise): Cell[] =>
	exercise.questions.flatMap(({ state, pairs }, i) => {
		const bench = inState(exercise.bench, state);
		return pairs
			.filter((pair) => readMeter(bench, 'continuity', ...pair).beep)
			.map(([a, b]): Cell => [a, b, i]);
	});

function surenessOf(items: readonly Item[]): Sureness {
	const count = (right: boolean, sure: boolean): number =>
		items.filter((i) => i.right === right && i.sure === sure).length;
	return {
		rightSure: count(true, true),
		rightUnsure: count(true, false),
		wrongSure: count(false, true),
		wrongUnsure: count(false, false)
	};
}

export function judgePrediction(
	exercise: PredictExercise,
	ticked: readonly Cell[],
	unsure: readonly Cell[]
): Result {
	const cells = cellsOf(exercise);
	const strange = [...ticked, ...unsure].find((t) => !cells.some((c) => sameCell(t, c)));
	if (strange)
		return refuse(`${strange[0]} and ${strange[1]} were not among the pairs to choose from`);
	const sounding = soundingCells(exercise);
	const items = cells.map((cell): Item => {
		const [a, b, question = 0] = cell;
		const is = (list: readonly Cell[]) => list.some((c) => sameCell(c, cell));
		const [sounds, said] = [is(sounding), is(ticked)];
		return {
			right: sounds === said,
			when: exercise.questions[question]!.state,
			pair: [a, b],
			wanted: sounds ? 'sounds' : 'silent',
			found: said ? 'sounds' : 'silent',
			hazard: false,
			why: '',
			question,
			sure: !is(unsure)
		};
	});
	const wrong = items.filter((i) => !i.right).length;
	const good = items.filter((i) => i.right && i.wanted === 'sounds').length;
	const score = wrong === 0 ? 1 : good / (good + wrong);
	return { score, passed: wrong === 0, items, predict: surenessOf(items) };
}
