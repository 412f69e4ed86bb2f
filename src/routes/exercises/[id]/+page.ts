import { error } from '@sveltejs/kit';
import { exercises } from '$lib/exercises/content.vite';
import type { EntryGenerator, PageLoad } from './$types';

export const entries: EntryGenerator = () => exercises.map(({ id }) => ({ id }));

export const load: PageLoad = ({ params }) => {
	const at = exercises.findIndex((e) => e.id === params.id);
	const exercise = exercises[at];
	if (!exercise) error(404, `There is no exercise "${params.id}"`);
	return { exercise, next: exercises[at + 1] ?? null };
};
