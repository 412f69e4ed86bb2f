/** What the pages say of tries and of how exercises stand. */
import {
	DAY,
	type RatingName,
	type ReviewState,
	type Standing
} from '../../session/progressReview';
import type { Trouble } from '../../session/progress.svelte';
import type { Reason } from '../../storage/progressStore';

export const STATE_WORDS: Readonly<Record<ReviewState, { name: string; means: string }>> = {
	solid: { name: 'Solid', means: 'passed, and not due for days' },
	due: { name: 'Due', means: 'time to show that it still holds' },
	learning: { name: 'Fresh', means: 'passed, or failed again, and soon back' },
	tried: { name: 'Begun', means: 'tried and not yet passed' },
	new: { name: 'Not begun', means: 'no try yet' }
};
/** In the order of the key to the drawing. */
export const STATES_SHOWN: readonly ReviewState[] = ['solid', 'due', 'learning', 'tried', 'new'];

export const RATING_WORDS: Readonly<Record<RatingName, string>> = {
	again: 'Again',
	hard: 'Hard',
	good: 'Good',
	easy: 'Easy'
};

/** `1 try`, `3 tries`. */
export const countWords = (n: number, one: string, many = `${one}s`): string =>
	`${n} ${n === 1 ? one : many}`;
export const triesWords = (n: number): string => countWords(n, 'try', 'tries');

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** A length of time, roughly: `6 minutes`, `8 days`, `2 months`. */
export function timeWords(ms: number): string {
	const units: [number, string][] = [
		[365 * DAY, 'year'],
		[30 * DAY, 'month'],
		[DAY, 'day'],
		[HOUR, 'hour']
	];
	for (const [size, name] of units)
		if (ms >= (name === 'month' || name === 'year' ? 2 : 0.99) * size)
			return countWords(Math.round(ms / size), name);
	return countWords(Math.max(1, Math.round(ms / MINUTE)), 'minute');
}

/** How an exercise stands: `solid, back in 8 days`. No capital, no full stop. */
export function standingWords({ state, due }: Standing, now: Date): string {
	const name = STATE_WORDS[state].name.toLowerCase();
	if (!due) return name;
	const ahead = due.getTime() - now.getTime();
	if (state !== 'due') return `${name}, back in ${timeWords(ahead)}`;
	return ahead > -DAY ? `${name} today` : `${name} ${timeWords(-ahead)} ago`;
}

export const REASON_WORDS: Readonly<Record<Reason, string>> = {
	none: 'This browser gives the page no place to keep things, as in a private window or in a frame that is closed off. Your tries last until you leave or reload this page. Export them before you go.',
	blocked:
		'Another tab holds an older form of your record open. Close the other tabs of this site and load this page anew. Until then tries last only as long as this page.',
	later:
		'Your record was written by a later release of this site, and this older one leaves it alone. Load the page anew. Until then tries last only as long as this page.'
};

export const TROUBLE_WORDS: Readonly<Record<Exclude<Trouble, null>, string>> = {
	'not kept':
		'The last try could not be written to this browser’s record. It lasts until you leave the page: export your record now.',
	'not read': 'Your record could not be read just now. Nothing in it was changed.',
	'not changed': 'That could not be written. Your record is as it was.'
};
