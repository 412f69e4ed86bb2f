import type { ExerciseKind } from '../exercises';

/** What a learner does in an exercise of each kind. */
export const EXERCISE_KIND_WORDS: Readonly<Record<ExerciseKind, string>> = {
	predict: 'Predict what will sound',
	wire: 'Wire it',
	'put-right': 'Put it right',
	find: 'Find the fault',
	choose: 'Choose the socket',
	name: 'Name the contacts',
	order: 'Put the steps in order'
};
