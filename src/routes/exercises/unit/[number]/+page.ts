import { error } from '@sveltejs/kit';
import { course } from '$lib/exercises/content.vite';
import type { EntryGenerator, PageLoad } from './$types';

export const entries: EntryGenerator = () =>
	course.units.map((u) => ({ number: String(u.number) }));

export const load: PageLoad = ({ params }) => {
	const unit = course.units.find((u) => String(u.number) === params.number);
	if (!unit) error(404, `There is no unit ${params.number}`);
	return { unit, first: course.exercises.find((e) => e.unit === unit.number) ?? null };
};
