/**
 * The judge: an exercise and an answer in, a result out. Pure; the screens, the tests and the command
 * line call the same function, and it asks the same engine as the meter.
 */
import type { Answer, Exercise, Judged } from './exercise';
import { faultKey, judgeHunt } from './find';
import { judgePrediction, samePair } from './predict';
import { judgeWiring } from './wire';

/** Beliefs that the mistakes show: one of their pairs was got wrong, or one of their faults named. */
function beliefsIn(exercise: Exercise, { items, find }: Judged): string[] {
	const wrong = items.filter((i) => !i.right);
	const named = find?.named && !find.found ? faultKey(find.named) : null;
	return exercise.beliefs
		.filter(
			(b) =>
				b.shownBy.some((p) => wrong.some((i) => samePair(i.pair, p))) ||
				b.shownByNaming.some((f) => faultKey(f) === named)
		)
		.map((b) => b.id);
}

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
	return { ...result, beliefs: beliefsIn(exercise, result) };
}
