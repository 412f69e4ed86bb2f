/**
 * From files to exercises, wherever the files came from: `content.vite.ts` and `content.node.ts` only
 * fetch texts. Broken content throws, so that a build or a test run with it fails.
 */
import type { Exercise } from './exercise';
import { parseExercise } from './schema';

/** Course order: what the first exercise teaches, the second uses. */
const ORDER = ['predict-ts-in-nine', 'wire-one-cable-six', 'find-fault-in-six'];

const placeOf = (id: string): number => {
	const place = ORDER.indexOf(id);
	return place < 0 ? ORDER.length : place;
};

/** Exercise ids that stand on the shelf twice, and caution texts that two exercises share. */
export function sharedBy(exercises: readonly Exercise[]): string[] {
	const all = exercises.flatMap((e) => [e.id, e.cautions.chassis, e.cautions.mains]);
	return all.filter((text, i) => all.indexOf(text) !== i);
}

function exerciseIn(folder: string, files: Readonly<Record<string, string>>): Exercise {
	const parsed = parseExercise(
		files[`${folder}/exercise.json`] ?? '',
		files[`${folder}/text.md`] ?? ''
	);
	if (!parsed.ok) throw new Error(`${folder}: ${parsed.problem.path}: ${parsed.problem.message}`);
	if (parsed.value.id !== folder)
		throw new Error(`${folder}: $.id: it should be the name of its folder`);
	return parsed.value;
}

/**
 * Exercises in course order from texts by `FOLDER/FILE`. Throws an Error that names the folder, the
 * JSON path and what is wrong.
 */
export function shelve(files: Readonly<Record<string, string>>): Exercise[] {
	const folders = [...new Set(Object.keys(files).map((path) => path.split('/')[0]!))].sort();
	const exercises = folders.map((folder) => exerciseIn(folder, files));
	const [shared] = sharedBy(exercises);
	if (shared !== undefined) throw new Error(`two exercises share the text "${shared}"`);
	return exercises.sort((a, b) => placeOf(a.id) - placeOf(b.id));
}
