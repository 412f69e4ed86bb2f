import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	PROGRESS_FORMAT,
	inOrder,
	keyOf,
	makeProgress,
	merged,
	parseProgress,
	type Attempt
} from './progress';
import { attempt, attempts, tried } from './progress.testing';

const runs = { numRuns: 1000 };
const good = { format: PROGRESS_FORMAT, version: 2, attempts: [tried()] };
const first = {
	exercise: 'wire-one',
	kind: 'wire',
	time: Date.UTC(2031, 4, 6, 7, 8, 9),
	score: 0.5,
	passed: false,
	hints: 1,
	probes: null
};

/** The value changed at one place and read as a file. */
function parsed(change: (value: typeof good & Record<string, unknown>) => void) {
	const value = structuredClone(good) as typeof good & Record<string, unknown>;
	change(value);
	return parseProgress(JSON.stringify(value));
}

describe('a progress file', () => {
	it('reads back as the tries it was made from', () => {
		fc.assert(
			fc.property(attempts, (all) => {
				expect(parseProgress(makeProgress(all))).toEqual({ ok: true, value: all });
			}),
			runs
		);
	});
	it('is the same text after it was read', () => {
		fc.assert(
			fc.property(attempts, (all) => {
				const text = makeProgress([...all].reverse());
				const again = parseProgress(text);
				expect(again.ok && makeProgress(again.value)).toBe(text);
			}),
			runs
		);
	});
	it('is JSON with a format and a version', () => {
		expect(JSON.parse(makeProgress([tried()]))).toEqual(good);
		expect(JSON.parse(makeProgress([]))).toEqual({ ...good, attempts: [] });
	});
	it('of version 1 is read too, and had asked nobody how sure they were', () => {
		const file = { format: PROGRESS_FORMAT, version: 1, attempts: [first, first] };
		expect(parseProgress(JSON.stringify(file))).toEqual({
			ok: true,
			value: [tried({ score: 0.5, passed: false, hints: 1 })]
		});
	});
});

describe('what is wrong with a file', () => {
	type Change = Parameters<typeof parsed>[0];
	const one = (change: (attempt: Record<string, unknown>) => void): Change => {
		return (value) => change(value.attempts[0] as unknown as Record<string, unknown>);
	};
	const wrong: [name: string, path: string, says: string, change: Change][] = [
		['another format', '$.format', 'solderside-progress', (f) => (f.format = 'solderside-bench')],
		['no format', '$.format', 'missing', (f) => delete (f as Record<string, unknown>).format],
		['a later version', '$.version', 'a later release', (f) => (f.version = 3)],
		['no tries', '$.attempts', 'missing', (f) => delete (f as Record<string, unknown>).attempts],
		['an unknown key', '$.extra', 'unknown key', (f) => (f.extra = 1)],
		[
			'an inherited key',
			'$.constructor',
			'unknown key',
			(f) => Object.assign(f, { constructor: 1 })
		],
		['a list for a try', '$.attempts[0]', 'a try', (f) => (f.attempts[0] = [] as never)],
		['a missing date', '$.attempts[0].at', 'missing', one((a) => delete a.at)],
		['a date of another form', '$.attempts[0].at', 'a date like', one((a) => (a.at = '6 May'))],
		[
			'a day that is not in the calendar',
			'$.attempts[0].at',
			'a date like',
			one((a) => (a.at = '2031-02-30T00:00:00.000Z'))
		],
		['a score over 1', '$.attempts[0].score', 'from 0 to 1', one((a) => (a.score = 1.5))],
		['a score in words', '$.attempts[0].score', '"1"', one((a) => (a.score = '1'))],
		['an unknown kind', '$.attempts[0].kind', 'predict', one((a) => (a.kind = 'guess'))],
		['a half probe', '$.attempts[0].probes', 'whole number', one((a) => (a.probes = 0.5))],
		['fewer than no hints', '$.attempts[0].hints', 'whole number', one((a) => (a.hints = -1))],
		['a path for an id', '$.attempts[0].exercise', 'an id', one((a) => (a.exercise = '../x'))],
		[
			'a belief that is no id',
			'$.attempts[0].beliefs[1]',
			'an id',
			one((a) => (a.beliefs = ['a', 7]))
		],
		[
			'one try twice',
			'$.attempts[1]',
			'$.attempts[0] again',
			(f) => f.attempts.push({ ...tried(), score: 0 })
		]
	];
	it.each(wrong)('%s is refused at %s', (_name, path, says, change) => {
		expect(parsed(() => {}).ok).toBe(true);
		const result = parsed(change);
		expect(result).toMatchObject({ ok: false, problem: { path } });
		expect(!result.ok && result.problem.message).toContain(says);
	});
	it.each([
		['nothing', ''],
		['a list', '[]'],
		['null', 'null'],
		['a text', '"x"'],
		['an open brace', '{'],
		['a deep nest', `${'['.repeat(5000)}${']'.repeat(5000)}`]
	])('%s is refused at the top', (_name, text) => {
		expect(parseProgress(text)).toMatchObject({ ok: false, problem: { path: '$' } });
	});
	it('never throws, whatever stands there', () => {
		fc.assert(
			fc.property(fc.json(), fc.anything(), (text, value) => {
				parseProgress(text);
				parseProgress(JSON.stringify({ ...good, attempts: [value] }) ?? '');
			}),
			runs
		);
	});
	it('is said without the whole of what stands there', () => {
		const result = parsed((f) => (f.format = 'x'.repeat(10_000)));
		expect(!result.ok && result.problem.message.length).toBeLessThan(300);
	});
});

describe('merging', () => {
	const names = (all: readonly Attempt[]) => all.map(keyOf).sort();
	it('loses no try of either list and doubles none', () => {
		fc.assert(
			fc.property(attempts, attempts, (mine, theirs) => {
				const all = new Set([...names(mine), ...names(theirs)]);
				expect(names(merged(mine, theirs))).toEqual([...all].sort());
			}),
			runs
		);
	});
	it('leaves every try of the first list as it is', () => {
		fc.assert(
			fc.property(attempts, attempts, (mine, theirs) => {
				expect(merged(mine, theirs)).toEqual(expect.arrayContaining(mine));
			}),
			runs
		);
	});
	it('changes nothing when it is done again, and names the same tries the other way round', () => {
		fc.assert(
			fc.property(attempts, attempts, (mine, theirs) => {
				const once = merged(mine, theirs);
				expect(merged(once, theirs)).toEqual(once);
				expect(names(merged(theirs, mine))).toEqual(names(once));
			}),
			runs
		);
	});
	it('puts the oldest first, whatever the order was', () => {
		fc.assert(
			fc.property(fc.array(attempt), (all) => {
				const dates = inOrder(all).map(({ at }) => at);
				expect(dates).toEqual([...dates].sort());
			}),
			runs
		);
	});
});
