/// <reference types="vite/client" />
/** The exercises for the screens: Vite puts the texts of the content folder into the build. */
import type { Exercise } from './exercise';
import { shelve } from './shelf';

const texts = import.meta.glob<string>(['./content/*/exercise.json', './content/*/text.md'], {
	eager: true,
	query: '?raw',
	import: 'default'
});

/** All exercises, in course order. */
export const exercises: readonly Exercise[] = shelve(
	Object.fromEntries(
		Object.entries(texts).map(([path, text]) => [path.replace('./content/', ''), text])
	)
);
