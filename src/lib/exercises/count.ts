/** The course in numbers: what `npm test` prints, and what a reader may be told. */
import { EXERCISE_KINDS, type Exercise, type ExerciseKind } from './exercise';

export interface Count {
	readonly exercises: number;
	readonly wrong: number;
	readonly kinds: Readonly<Record<ExerciseKind, number>>;
	/** By unit, in order. */
	readonly units: readonly { readonly number: number; readonly exercises: number }[];
	/** Belief → how many exercises meet it. */
	readonly beliefs: Readonly<Record<string, number>>;
}

/** Counts what is there; a unit or belief that no exercise meets counts 0. */
export function countOf(
	exercises: readonly Exercise[],
	units: readonly number[],
	beliefs: readonly string[]
): Count {
	const count = (of: (e: Exercise) => boolean) => exercises.filter(of).length;
	const meets = (id: string) => count((e) => e.beliefs.some((b) => b.id === id));
	return {
		exercises: exercises.length,
		wrong: exercises.reduce((sum, e) => sum + e.wrong.length, 0),
		kinds: Object.fromEntries(
			EXERCISE_KINDS.map((kind) => [kind, count((e) => e.kind === kind)])
		) as Count['kinds'],
		units: units.map((number) => ({ number, exercises: count((e) => e.unit === number) })),
		beliefs: Object.fromEntries(beliefs.map((id) => [id, meets(id)]))
	};
}

const pad = (text: string | number, width: number) => String(text).padStart(width);

/** The same as lines of text. */
export function countLines({ exercises, wrong, kinds, units, beliefs }: Count): string[] {
	const met = Object.entries(beliefs).sort(([, a], [, b]) => b - a);
	return [
		`${exercises} exercises in ${units.length} units, of ${Object.keys(kinds).length} kinds, with ${wrong} wrong answers and ${met.length} beliefs`,
		'',
		...Object.entries(kinds).map(([kind, n]) => `${pad(n, 5)}  ${kind}`),
		'',
		...units.map((u) => `${pad(u.exercises, 5)}  unit ${u.number}`),
		'',
		...met.map(([id, n]) => `${pad(n, 5)}  ${id}`)
	];
}
