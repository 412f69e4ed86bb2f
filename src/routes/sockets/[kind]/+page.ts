import { error } from '@sveltejs/kit';
import { SOCKET_KINDS } from '$lib/engine';
import type { EntryGenerator, PageLoad } from './$types';

export const entries: EntryGenerator = () => SOCKET_KINDS.map((kind) => ({ kind }));

export const load: PageLoad = ({ params }) => {
	const at = SOCKET_KINDS.findIndex((kind) => kind === params.kind);
	const kind = SOCKET_KINDS[at];
	if (!kind) error(404, `There is no socket "${params.kind}"`);
	return { kind, before: SOCKET_KINDS[at - 1] ?? null, after: SOCKET_KINDS[at + 1] ?? null };
};
