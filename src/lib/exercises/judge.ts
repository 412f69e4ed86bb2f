/**
 * The judge: an exercise and an answer in, a result out. Pure; the screens, the tests and the command
 * line call the same function, and it asks the same engine as the meter.
 */
import type { Answer, Exercise, Item, Judged } from './exercise';
import { judgeHunt } from './find';
import { judgePrediction, samePair } from './predict';
import { judgeWiring } from './wire';

/** Beliefs that the mistakes show: one of their pairs was got wrong. */
const beliefsIn = (exercise: Exercise, items: readonly Item[]): string[] =>
	exercise.beliefs
		.filter((b) => b.shownBy.some((p) => items.some((i) => !i.right && samePair(i.pair, p))))
		.map((b) => b.id);

function judged(exercise: Exercise, answer: Answer): Judged {
	if (exercise.kind === 'predict' && answer.kind === 'predict')
		return judgePrediction(exercise, answer.ticked);
	if (exercise.kind === 'wire' && answer.kind === 'wire')
		return judgeWiring(exercise, answer.wires);
	if (exercise.kind === 'find' && answer.kind === 'find')
		return judgeHunt(exercise, answer.fault, answer.probes);
	return {
		id: exercise.id,
		kind: exercise.kind,
		score: 0,
		passed: false,
		items: [],
		beliefs: [],
		refused: `this is the answer of a ${answer.kind} exercise, and ${exercise.id} is a ${exercise.kind} exercise`
	};
}

/** Judges an answer. Never throws; an answer that cannot be judged has `refused` and score 0. */
export function judge(exercise: Exercise, answer: Answer): Judged {
	const result = judged(exercise, answer);
	return { ...result, beliefs: beliefsIn(exercise, result.items) };
}
