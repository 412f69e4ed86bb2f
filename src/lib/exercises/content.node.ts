/** The exercises for tests and the command line: the same texts, read from the folder. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Exercise } from './exercise';
import { shelve } from './shelf';

export const CONTENT = fileURLToPath(new URL('./content', import.meta.url));

/** Texts by `FOLDER/FILE`. */
export const readTexts = (): Record<string, string> =>
	Object.fromEntries(
		readdirSync(CONTENT).flatMap((folder) =>
			readdirSync(join(CONTENT, folder)).map((file) => [
				`${folder}/${file}`,
				readFileSync(join(CONTENT, folder, file), 'utf8')
			])
		)
	);

/** All exercises, in course order. Throws on broken content. */
export const readExercises = (): Exercise[] => shelve(readTexts());
