/** The course for tests and the command line: the same texts, read from the folder. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Exercise } from './exercise';
import { courseOf, type Course } from './shelf';

export const CONTENT = fileURLToPath(new URL('./content', import.meta.url));

/** Every JSON and Markdown file of the folder, by its path in it, with `/` between. */
export const readTexts = (): Record<string, string> =>
	Object.fromEntries(
		readdirSync(CONTENT, { withFileTypes: true, recursive: true })
			.filter((entry) => entry.isFile() && /\.(json|md)$/.test(entry.name))
			.map((entry) => join(entry.parentPath, entry.name))
			.map((path) => [
				path.slice(CONTENT.length + 1).replaceAll('\\', '/'),
				readFileSync(path, 'utf8')
			])
	);

/** The whole course. Throws on broken content. */
export const readCourse = (): Course => courseOf(readTexts());

/** All exercises, in course order. Throws on broken content. */
export const readExercises = (): readonly Exercise[] => readCourse().exercises;
