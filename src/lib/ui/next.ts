/** Where an exercise leads when it is passed: set by its page, read by whatever tells of the pass. */
import { getContext, setContext } from 'svelte';

export interface Next {
	/** An exercise; null for the page of progress. */
	readonly id: string | null;
	/** Whether the set of today is being gone through. */
	readonly inSet: boolean;
	readonly words: string;
}
const KEY = Symbol('next exercise');

/** Says for all below what comes next; null where there is nothing more. */
export const setNextExercise = (next: () => Next | null) => setContext(KEY, next);

/** What comes next; null outside a page that says it. */
export const nextExercise = (): (() => Next | null) =>
	getContext<(() => Next | null) | undefined>(KEY) ?? (() => null);
