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

/** Help that was taken in an exercise: hints, or the answer. */
export interface Help {
	/** Whether any was taken. */
	readonly taken: () => boolean;
	/** The answer was asked for. */
	readonly answer: () => void;
}
const HELP = Symbol('help');

/** Says for all below what help was taken, and where to note more. */
export const setHelp = (help: Help) => setContext(HELP, help);

/** The help of this page; none outside a page that keeps count of it. */
export const helpTaken = (): Help =>
	getContext<Help | undefined>(HELP) ?? { taken: () => false, answer: () => {} };
