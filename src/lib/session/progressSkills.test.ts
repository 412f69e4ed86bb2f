import { describe, expect, it } from 'vitest';
import { EXERCISE_KINDS } from '../exercises';
import { tried } from '../storage/progress.testing';
import { pastsOf, standingOf } from './progressReview';
import { KIND_SKILLS, countsOf, skillsOf, type Listed } from './progressSkills';

const course: Listed[] = [
	{ id: 'a', kind: 'wire', title: 'A', unit: 2 },
	{ id: 'b', kind: 'predict', title: 'B', unit: 1 },
	{ id: 'c', kind: 'wire', title: 'C', unit: 2 },
	{ id: 'd', kind: 'find', title: 'D', unit: 2 }
];
const at = new Date(Date.UTC(2031, 4, 6)).toISOString();
const pasts = pastsOf([tried({ exercise: 'a', at }), tried({ exercise: 'd', at, passed: false })]);
const standing = (id: string) => standingOf(pasts.get(id), new Date(at));

describe('skills', () => {
	it('are the kinds of exercise in each unit, counted', () => {
		const counts = skillsOf(course, standing).map(({ unit, kind, counts: { solid, all } }) => [
			unit,
			kind,
			`${solid} of ${all}`
		]);
		expect(counts).toEqual([
			[1, 'predict', '0 of 1'],
			[2, 'wire', '1 of 2'],
			[2, 'find', '0 of 1']
		]);
	});
	it('add up to every exercise of the course, each in one state', () => {
		const total = countsOf(course.map(({ id }) => standing(id)));
		expect(total).toEqual({ all: 4, new: 2, tried: 1, learning: 0, due: 0, solid: 1 });
		const sum = skillsOf(course, standing).reduce((n, { counts }) => n + counts.all, 0);
		expect(sum).toBe(course.length);
	});
	it('have a name for every kind of exercise', () => {
		for (const kind of EXERCISE_KINDS) expect(KIND_SKILLS).toHaveProperty(kind);
	});
});
