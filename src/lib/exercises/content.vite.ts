/// <reference types="vite/client" />
/**
 * The course for the screens: Vite puts the texts of the content folder into the build. An exercise
 * passes its gate when it is opened; prerendering opens every one, so a broken one breaks the build.
 */
import { lateCourseOf, type Course } from './shelf';

const texts = import.meta.glob<string>(
	[
		'./content/units.json',
		'./content/beliefs.json',
		'./content/*/*/exercise.json',
		'./content/*/*/text.md'
	],
	{ eager: true, query: '?raw', import: 'default' }
);

export const course: Course = lateCourseOf(
	Object.fromEntries(
		Object.entries(texts).map(([path, text]) => [path.replace('./content/', ''), text])
	)
);
/** All exercises, in course order. */
export const exercises = course.exercises;
