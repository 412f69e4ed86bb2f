/** The exercises for tests and the command line: the same texts, read from the folder. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Exercise } from './exercise';
import { shelve } from './shelf';

export const CONTENT = fileURLToPath(new URL('./content', import.meta.url));

const foldersIn = (path: string): string[] =>
	readdirSync(path, { withFileTypes: true })
		.filter((entry) => entry.isDirectory())
		.map((entry) => entry.name);

/** Texts by `FOLDER/FILE`. */
export const readTexts = (): Record<string, string> =>
	Object.fromEntries(
		foldersIn(CONTENT).flatMap((folder) =>
			['exercise.json', 'text.md'].map((file) => [
				`${folder}/${file}`,
				readFileSync(join(CONTENT, folder, file), 'utf8')
			])
		)
	);

/** All exercises, in course order. Throws on broken content. */
export const readExercises = (): Exercise[] => shelve(readTexts());
