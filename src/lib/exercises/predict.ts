/**
 * Judging a prediction. Which pairs sound is never written down: the meter is put on each pair of
 * the bench. Score: right ticks over right ticks, missed ones and false ones.
 */
import { inState, readMeter } from '../engine';
import type { Item, Judged, PredictExercise } from './exercise';

export const samePair = (x: readonly [string, string], y: readonly [string, string]): boolean =>
	(x[0] === y[0] && x[1] === y[1]) || (x[0] === y[1] && x[1] === y[0]);

export function judgePrediction(
	exercise: PredictExercise,
	ticked: readonly (readonly [string, string])[]
): Judged {
	const bench = inState(exercise.bench, exercise.state);
	const items = exercise.pairs.map((pair): Item => {
		const sounds = readMeter(bench, 'continuity', ...pair).beep;
		const said = ticked.some((t) => samePair(t, pair));
		return {
			right: sounds === said,
			when: exercise.state,
			pair,
			wanted: sounds ? 'sounds' : 'silent',
			found: said ? 'sounds' : 'silent',
			hazard: false,
			why: ''
		};
	});
	const wrong = items.filter((i) => !i.right).length;
	const good = items.filter((i) => i.right && i.wanted === 'sounds').length;
	const score = good + wrong === 0 ? 0 : Number((good / (good + wrong)).toFixed(4));
	const strange = ticked.find((t) => !exercise.pairs.some((pair) => samePair(t, pair)));
	return {
		id: exercise.id,
		kind: exercise.kind,
		score: strange ? 0 : score,
		passed: !strange && wrong === 0,
		items,
		beliefs: [],
		refused: strange ? `${strange.join(' and ')} were not among the pairs to choose from` : null
	};
}
