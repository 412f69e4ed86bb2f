import { describe, expect, it } from 'vitest';
import { readExercises } from '../../exercises/content.node';
import { DAY, type Standing } from '../../session/progressReview';
import { panelOf, ROW } from './panel';
import { countWords, standingWords, timeWords } from './progressWords';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

describe('a length of time in words', () => {
	it.each([
		[0, '1 minute'],
		[6 * MINUTE, '6 minutes'],
		[59 * MINUTE, '59 minutes'],
		[HOUR, '1 hour'],
		[12 * HOUR, '12 hours'],
		[DAY - 1, '1 day'],
		[8 * DAY, '8 days'],
		[59 * DAY, '59 days'],
		[60 * DAY, '2 months'],
		[729 * DAY, '24 months'],
		[730 * DAY, '2 years']
	])('%d ms are %s', (ms, words) => {
		expect(timeWords(ms)).toBe(words);
	});
	it('has a plural of its own where the word needs one', () => {
		expect([countWords(1, 'try', 'tries'), countWords(0, 'try', 'tries')]).toEqual([
			'1 try',
			'0 tries'
		]);
	});
});

describe('how an exercise stands, in words', () => {
	const now = new Date(Date.UTC(2031, 4, 6));
	const standing = (state: Standing['state'], ahead: number | null): Standing => ({
		card: null,
		lapsed: false,
		failed: false,
		tries: 1,
		passes: 1,
		last: null,
		state,
		due: ahead === null ? null : new Date(now.getTime() + ahead)
	});
	it.each([
		['new', null, 'not begun'],
		['tried', null, 'begun'],
		['learning', 10 * MINUTE, 'fresh, back in 10 minutes'],
		['solid', 8 * DAY, 'solid, back in 8 days'],
		['due', 11 * HOUR, 'due today'],
		['due', -HOUR, 'due today'],
		['due', -4 * DAY, 'due 4 days ago']
	] as const)('%s, %d ms away: %s', (state, ahead, words) => {
		expect(standingWords(standing(state, ahead), now)).toBe(words);
	});
});

describe('the panel', () => {
	const exercises = readExercises();
	it.each([280, 358, 390, 788, 1440])(
		'%d wide, has every exercise once, none over another',
		(width) => {
			const { rows, cell, rowWidth, ear, radius, height } = panelOf(exercises, width);
			const places = rows.flatMap((row) => row.places);
			expect(places.map(({ id }) => id).sort()).toEqual(exercises.map(({ id }) => id).sort());
			for (const row of rows) {
				expect(row.y + ROW).toBeLessThanOrEqual(height);
				for (const [i, place] of row.places.entries()) {
					expect(place.x - 1.3 * radius).toBeGreaterThanOrEqual(row.x + ear);
					expect(place.x + 1.3 * radius).toBeLessThanOrEqual(row.x + rowWidth - ear);
					if (i > 0) expect(place.x - row.places[i - 1]!.x).toBeCloseTo(cell);
					expect(cell).toBeGreaterThanOrEqual(2.6 * radius);
				}
			}
		}
	);
});
