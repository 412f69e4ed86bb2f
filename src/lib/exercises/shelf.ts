/**
 * From files to exercises, wherever the files came from: `content.vite.ts` and `content.node.ts` only
 * fetch texts. Folder order is course order: `NN-unit/ID/exercise.json` and `text.md`, beside them
 * `units.json` and `beliefs.json`. Broken content throws, so that a build or a test run with it fails.
 */
import type { Parsed } from '../engine';
import { parseBeliefs, type Beliefs } from './beliefs';
import type { Exercise } from './exercise';
import { lateExercise } from './late';
import { parseExercise } from './schema';
import { parseUnits, type Unit } from './units';

export type Texts = Readonly<Record<string, string>>;

/** Everything that the course is made of, in course order. */
export interface Course {
	readonly units: readonly Unit[];
	readonly exercises: readonly Exercise[];
	readonly beliefs: Beliefs;
}

/** Exercise ids that stand on the shelf twice, and caution texts that two exercises share. */
export function sharedBy(exercises: readonly Exercise[]): string[] {
	const all = exercises.flatMap((e) => [e.id, e.cautions.chassis, e.cautions.mains]);
	return all.filter((text, i) => all.indexOf(text) !== i);
}

/** Two exercises that want the same place in the same unit, by id; null if there are none. */
export function samePlace(exercises: readonly Exercise[]): readonly [string, string] | null {
	for (const [i, a] of exercises.entries()) {
		const b = exercises.slice(i + 1).find((x) => x.unit === a.unit && x.place === a.place);
		if (b) return [a.id, b.id];
	}
	return null;
}

/** `NN-unit/ID` of every exercise among the texts. */
export const foldersOf = (texts: Texts): string[] =>
	[
		...new Set(
			Object.keys(texts)
				.filter((path) => path.split('/').length === 3)
				.map((path) => path.split('/').slice(0, 2).join('/'))
		)
	].sort();

function orThrow<T>(where: string, parsed: Parsed<T>): T {
	if (parsed.ok) return parsed.value;
	throw new Error(`${where}: ${parsed.problem.path}: ${parsed.problem.message}`);
}

/** The shared list of beliefs. Throws where it is broken. */
export const beliefsIn = (texts: Texts): Beliefs =>
	orThrow('beliefs.json', parseBeliefs(texts['beliefs.json'] ?? ''));

/** The exercise of one folder. Throws an Error that names the folder, the JSON path and what is wrong. */
export function exerciseIn(folder: string, texts: Texts, beliefs: Beliefs): Exercise {
	const [unit, id] = folder.split('/');
	const json = texts[`${folder}/exercise.json`] ?? '';
	const parsed = parseExercise(json, texts[`${folder}/text.md`] ?? '', beliefs);
	const exercise = orThrow(folder, parsed);
	if (exercise.id !== id) throw new Error(`${folder}: $.id: it should be the name of its folder`);
	if (exercise.unit !== Number(/^(\d\d)-/.exec(unit!)?.[1]))
		throw new Error(
			`${folder}: $.unit: it should be the number that its unit's folder begins with`
		);
	return exercise;
}

const inOrder = (a: Exercise, b: Exercise): number => a.unit - b.unit || a.place - b.place;
const unitsIn = (texts: Texts): Unit[] =>
	orThrow('units.json', parseUnits(texts['units.json'] ?? ''));

/**
 * The course for a reader who opens one exercise of many: each passes its gate when it is opened, and
 * throws then if it is broken. `courseOf` is the same with every gate passed at once.
 */
export function lateCourseOf(texts: Texts): Course {
	const beliefs = beliefsIn(texts);
	const exercises = foldersOf(texts).map((folder) =>
		lateExercise(JSON.parse(texts[`${folder}/exercise.json`] ?? ''), () =>
			exerciseIn(folder, texts, beliefs)
		)
	);
	return { units: unitsIn(texts), exercises: exercises.sort(inOrder), beliefs };
}

/** The course from texts by path. Throws an Error that names the file, the JSON path and what is wrong. */
export function courseOf(texts: Texts): Course {
	const beliefs = beliefsIn(texts);
	const units = unitsIn(texts);
	const exercises = foldersOf(texts).map((folder) => exerciseIn(folder, texts, beliefs));
	const [shared] = sharedBy(exercises);
	if (shared !== undefined) throw new Error(`two exercises share the text "${shared}"`);
	const clash = samePlace(exercises);
	if (clash) throw new Error(`${clash[0]} and ${clash[1]} want the same place in one unit`);
	return { units, exercises: exercises.sort(inOrder), beliefs };
}
