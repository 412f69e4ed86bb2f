import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attempts as randomAttempts, tried } from '../storage/progress.testing';
import type { Attempt } from '../storage/progress';
import {
	DAY,
	EARLY,
	RATINGS,
	RATING_RULES,
	STATES,
	dueOf,
	usualWait,
	pastsOf,
	ratingOf,
	standingOf
} from './progressReview';

const START = Date.UTC(2031, 4, 6, 18);
const MINUTE = 60_000;
const at = (ms: number) => new Date(START + ms);
/** A try so many milliseconds after the start. */
const after = (ms: number, change: Partial<Attempt> = {}): Attempt =>
	tried({ at: at(ms).toISOString(), ...change });
const failed = { passed: false, score: 0.5 };
/** How `wire-one` stands so many milliseconds after the start. */
const standing = (ms: number, ...attempts: Attempt[]) =>
	standingOf(pastsOf(attempts).get('wire-one'), at(ms));

describe('the rating of a try', () => {
	it.each([
		['again', failed, false],
		['again', { ...failed, hints: 1 }, true],
		['hard', { hints: 1 }, false],
		['hard', { unsure: 2 }, false],
		['hard', { hints: 1 }, true],
		['good', {}, true],
		['easy', {}, false]
	] as const)('is %s for %o, after a failure: %s', (rating, change, before) => {
		expect(ratingOf(tried(change), before)).toBe(rating);
	});
	it('has a row of the table for each rating, in the order of the scheduler', () => {
		expect(RATING_RULES.map(({ rating }) => rating)).toEqual(RATINGS);
	});
	it('takes its first waits from the scheduler’s default parameters', () => {
		// The steps of the default parameters (10 minutes; the middle of 1 and 10; 10), and the first
		// stability of "easy", 8.2956 days.
		expect(RATINGS.map(usualWait)).toEqual([10 * MINUTE, 6 * MINUTE, 10 * MINUTE, 8 * DAY]);
	});
});

describe('an exercise', () => {
	it('is not begun without a try, and only tried until the first pass', () => {
		expect(standing(0)).toMatchObject({ state: 'new', due: null, tries: 0 });
		expect(standing(1, after(0, failed))).toMatchObject({ state: 'tried', due: null, tries: 1 });
		expect(standing(365 * DAY, after(0, failed))).toMatchObject({ state: 'tried' });
	});
	it('is solid for days after a first try that passes, then due', () => {
		const one = after(0);
		expect(standing(0, one)).toMatchObject({ state: 'solid', due: at(8 * DAY) });
		expect(standing(7.5 * DAY - 1, one).state).toBe('solid');
		expect(standing(7.5 * DAY, one).state).toBe('due');
		expect(standing(800 * DAY, one).state).toBe('due');
	});
	it('comes back after ten minutes when it took more than one try', () => {
		const two = [after(0, failed), after(MINUTE)];
		expect(standing(2 * MINUTE, ...two)).toMatchObject({ state: 'learning', due: at(11 * MINUTE) });
		expect(standing(11 * MINUTE - 1, ...two).state).toBe('learning');
		expect(standing(11 * MINUTE, ...two).state).toBe('due');
	});
	it('forgets a failure once it was passed when due', () => {
		// Good, then easy: the default parameters give more than the 2 days of good, then good.
		const three = [after(0, failed), after(MINUTE), after(11 * MINUTE)];
		const { due } = standing(DAY, ...three);
		expect(due!.getTime()).toBeGreaterThan(START + 11 * MINUTE + 2 * DAY);
	});
	it('moves farther away each time it is passed when due', () => {
		const one = after(0);
		const two = after(8 * DAY);
		const second = standing(8 * DAY, one, two);
		expect(second.state).toBe('solid');
		expect(second.due!.getTime() - at(8 * DAY).getTime()).toBeGreaterThan(8 * DAY);
	});
	it('is not moved by a pass before it is due: that is practice', () => {
		const one = after(0);
		const more = [after(MINUTE), after(DAY), after(2 * DAY, { hints: 3 })];
		expect(standing(3 * DAY, one, ...more)).toMatchObject({
			due: standing(3 * DAY, one).due,
			tries: 4,
			passes: 4
		});
	});
	it('comes back soon after a failure, due or not', () => {
		expect(standing(DAY, after(0), after(DAY, failed))).toMatchObject({
			state: 'learning',
			lapsed: true,
			due: at(DAY + 10 * MINUTE)
		});
		expect(standing(9 * DAY, after(0), after(9 * DAY, failed)).due).toEqual(
			at(9 * DAY + 10 * MINUTE)
		);
	});
	it('counts a row of failures once', () => {
		const once = [after(0), after(9 * DAY, failed)];
		const often = [...once, after(9 * DAY + 1, failed), after(9 * DAY + 2, failed)];
		expect(standing(10 * DAY, ...often).card).toEqual(standing(10 * DAY, ...once).card);
	});
	it('that was failed and mended at once must be passed again when it is due', () => {
		const [a, b] = [after(0), after(9 * DAY, failed)];
		const mended = after(9 * DAY + 2 * MINUTE);
		expect(standing(9 * DAY + 3 * MINUTE, a, b, mended).state).toBe('learning');
		expect(standing(9 * DAY + 10 * MINUTE, a, b, mended).state).toBe('due');
		const again = after(9 * DAY + 15 * MINUTE);
		expect(standing(9 * DAY + 16 * MINUTE, a, b, mended, again).state).toBe('solid');
	});
	it('is the same whatever else was tried', () => {
		const other = after(MINUTE, { exercise: 'other', ...failed });
		expect(standing(DAY, after(0), other)).toEqual(standing(DAY, after(0)));
	});
	it('is always in one of the five states, with a date exactly from the first pass on', () => {
		fc.assert(
			fc.property(randomAttempts, fc.date({ noInvalidDate: true }), (all, now) => {
				for (const [id, past] of pastsOf(all)) {
					const { state, due, passes, tries } = standingOf(past, now);
					expect(STATES).toContain(state);
					expect(due !== null).toBe(all.some((a) => a.exercise === id && a.passed));
					expect(passes).toBeLessThanOrEqual(tries);
				}
			}),
			{ numRuns: 1000 }
		);
	});
});

describe('what is due', () => {
	const course = ['c', 'a', 'b', 'd'];
	it('comes the longest due first, equals in the order of the course', () => {
		const all = [
			after(0, { exercise: 'a' }),
			after(0, { exercise: 'b' }),
			after(DAY, { exercise: 'c' }),
			after(20 * DAY, { exercise: 'd' })
		];
		const pasts = pastsOf(all);
		expect(dueOf(course, pasts, at(8 * DAY - EARLY))).toEqual(['a', 'b']);
		expect(dueOf(course, pasts, at(9 * DAY))).toEqual(['a', 'b', 'c']);
		expect(dueOf(['b', 'a'], pasts, at(9 * DAY))).toEqual(['b', 'a']);
		expect(dueOf(course, pasts, at(-DAY))).toEqual([]);
	});
	it('grows with time and never holds what was just passed', () => {
		fc.assert(
			fc.property(
				randomAttempts,
				fc.integer({ min: 0, max: 4e12 }),
				fc.nat(4e11),
				(all, time, more) => {
					const ids = [...new Set(all.map((a) => a.exercise))];
					const pasts = pastsOf(all);
					const early = dueOf(ids, pasts, new Date(time));
					const later = dueOf(ids, pasts, new Date(time + more));
					expect(later).toEqual(expect.arrayContaining(early));
					const [next] = later;
					if (next === undefined) return;
					const now = new Date(time + more);
					const pass = tried({ exercise: next, at: now.toISOString() });
					expect(dueOf(ids, pastsOf([...all, pass]), now)).not.toContain(next);
				}
			),
			{ numRuns: 1000 }
		);
	});
});
