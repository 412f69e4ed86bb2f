/**
 * Skills: what a learner can do (the kind of exercise) with what (the unit). They are counted, never
 * weighed: "3 of 5 solid" says what is there and what is missing, points would not.
 */
import type { ExerciseKind } from '../exercises';
import type { ReviewState, Standing } from './progressReview';

/** What this folder needs to know of an exercise. */
export interface Listed {
	readonly id: string;
	readonly kind: ExerciseKind;
	readonly title: string;
	/** 1 to 12. */
	readonly unit?: number;
}

/** A unit of the course by its number, from 1. */
export interface UnitName {
	readonly number: number;
	readonly title: string;
}

/** What each kind of exercise trains, as a heading. */
export const KIND_SKILLS = {
	predict: 'Predict',
	wire: 'Wire',
	'put-right': 'Put right',
	find: 'Find',
	choose: 'Choose',
	name: 'Name',
	order: 'Order'
} as const satisfies Readonly<Record<string, string>>;
export type SkillKind = keyof typeof KIND_SKILLS;

export const unitOf = (exercise: Listed): number => exercise.unit ?? 1;

/** The exercises of each unit that has any, in the order of the course. */
export function unitsOf<E extends Listed>(
	exercises: readonly E[]
): { unit: number; exercises: E[] }[] {
	const units = [...new Set(exercises.map(unitOf))].sort((a, b) => a - b);
	return units.map((unit) => ({
		unit,
		exercises: exercises.filter((e) => unitOf(e) === unit)
	}));
}

/** How many exercises stand how. */
export type Counts = Readonly<Record<ReviewState | 'all', number>>;

export function countsOf(standings: readonly Standing[]): Counts {
	const of = (state: ReviewState) => standings.filter((s) => s.state === state).length;
	return {
		all: standings.length,
		new: of('new'),
		tried: of('tried'),
		learning: of('learning'),
		due: of('due'),
		solid: of('solid')
	};
}

/** One skill: a kind of exercise in a unit. */
export interface Skill {
	readonly unit: number;
	readonly kind: string;
	readonly counts: Counts;
}

/** Every skill that the course trains, by unit and in the order of kinds. */
export function skillsOf(
	exercises: readonly Listed[],
	standing: (id: string) => Standing
): Skill[] {
	return unitsOf(exercises).flatMap(({ unit, exercises: ofUnit }) =>
		Object.keys(KIND_SKILLS).flatMap((kind) => {
			const those = ofUnit.filter((e) => e.kind === kind);
			if (those.length === 0) return [];
			return [{ unit, kind, counts: countsOf(those.map(({ id }) => standing(id))) }];
		})
	);
}
