/** The course as the built site has it, and the addresses that every sweep over the site visits. */
import type { Exercise, ExerciseKind, ExerciseOf } from '../../src/lib/exercises';
import { readExercises } from '../../src/lib/exercises/content.node';

export const course: readonly Exercise[] = readExercises();
export const pathOf = ({ id }: Exercise): string => `/exercises/${id}/`;

/** The first exercise of each kind that there is: screens differ by kind, not by exercise. */
export const oneOfEachKind: readonly Exercise[] = course.filter(
	({ kind }, i) => course.findIndex((e) => e.kind === kind) === i
);

/** The exercise of that id, which must be of that kind. */
export function exerciseOf<K extends ExerciseKind>(kind: K, id: string): ExerciseOf<K> {
	const found = course.find((e): e is ExerciseOf<K> => e.kind === kind && e.id === id);
	if (!found) throw new Error(`There is no ${kind} exercise "${id}"`);
	return found;
}
export const predict = exerciseOf('predict', 'predict-ts-in-nine');
export const wire = exerciseOf('wire', 'wire-one-cable-six');
export const find = exerciseOf('find', 'find-fault-in-six');
export const putRight = exerciseOf('put-right', 'put-right-mirror-sketch');
export const choose = exerciseOf('choose', 'choose-six-contacts');
export const name = exerciseOf('name', 'name-halves-of-six');
export const order = exerciseOf('order', 'order-before-the-iron');

/** Every screen there is, once. */
export const PAGES: readonly string[] = [
	'/',
	'/exercises/',
	'/exercises/unit/6/',
	...oneOfEachKind.map(pathOf),
	'/sockets/',
	'/sockets/hybrid-9/',
	'/glossary/',
	'/progress/',
	'/schedule/',
	'/card/',
	'/real/',
	'/lugs/',
	'/gallery/'
];
