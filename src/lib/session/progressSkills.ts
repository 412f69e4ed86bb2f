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

/** The units of the course, from 1. */
export const UNITS = [
	'Contacts, marks, rear and front',
	'The meter and its leads',
	'Nothing is joined inside',
	'One cable for both halves',
	'Two cables from one hybrid',
	'Break contacts',
	'The one-point patch',
	'Two rows of jacks',
	'Shields and pin 1',
	'Chassis and signal ground',
	'Phantom power past a jack',
	'Faults, panels and proof'
] as const;

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
export const unitTitle = (unit: number): string => UNITS[unit - 1] ?? `Unit ${unit}`;

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
