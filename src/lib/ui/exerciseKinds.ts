import type { ExerciseKind } from '../exercises';

/** What a learner does in an exercise of each kind. */
export const EXERCISE_KIND_WORDS: Readonly<Record<ExerciseKind, string>> = {
	predict: 'Predict what will sound',
	wire: 'Wire it',
	find: 'Find the fault'
};
