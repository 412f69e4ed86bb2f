/**
 * A learner's tries as data, and the one gate from text to them. A try is named by its exercise and
 * its instant, on every machine alike, so that files from two machines merge without doubles.
 * What is due and what is solid is never stored: it follows from the tries.
 */
import * as v from 'valibot';
import {
	braced,
	checkShape,
	exact,
	list,
	oneOf,
	quote,
	want,
	type Parsed,
	type Problem
} from '../engine/parse';
import { EXERCISE_KINDS, type ExerciseKind } from '../exercises/exercise';

export const PROGRESS_FORMAT = 'solderside-progress';
/** Counts the forms in which tries are kept, in the browser and in a file. */
export const PROGRESS_VERSION = 2;
/** Largest file that is read, in bytes (32 MiB): over 100,000 tries. */
export const MOST_PROGRESS = 2 ** 25;

/** One answer that was judged. */
export interface Attempt {
	/** The exercise's permanent id. */
	readonly exercise: string;
	readonly kind: ExerciseKind;
	/** When, ISO 8601 in UTC with milliseconds. */
	readonly at: string;
	/** 0 to 1. */
	readonly score: number;
	readonly passed: boolean;
	/** Things that were marked "not sure". */
	readonly unsure: number;
	/** Readings taken; null where none are counted. */
	readonly probes: number | null;
	/** Hints that stood open before the answer. */
	readonly hints: number;
	/** Ids of the beliefs that the mistakes showed. */
	readonly beliefs: readonly string[];
}

/** A try as version 1 kept it, under a running number. */
export interface FirstAttempt {
	readonly exercise: string;
	readonly kind: ExerciseKind;
	/** Milliseconds since 1970. */
	readonly time: number;
	readonly score: number;
	readonly passed: boolean;
	readonly hints: number;
	readonly probes: number | null;
}

const LAST_INSTANT = Date.UTC(10_000, 0) - 1;
const ID_RIGHT = 'an id: lower-case letters, digits and single hyphens, at most 64';
const id = v.pipe(
	v.string(want(ID_RIGHT)),
	v.maxLength(64, want(ID_RIGHT)),
	v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, want(ID_RIGHT))
);
function whole(to: number) {
	const right = want(`a whole number from 0 to ${to}`);
	return v.pipe(v.number(right), v.integer(right), v.minValue(0, right), v.maxValue(to, right));
}
const AT_RIGHT = 'a date like 2031-05-06T07:08:09.000Z';
function isInstant(text: string): boolean {
	const time = Date.parse(text);
	return time >= 0 && time <= LAST_INSTANT && new Date(time).toISOString() === text;
}
const at = v.pipe(v.string(want(AT_RIGHT)), v.check(isInstant, want(AT_RIGHT)));
const SCORE_RIGHT = want('a number from 0 to 1');
const YES_OR_NO = want('true or false');

const shared = {
	exercise: id,
	kind: v.picklist(EXERCISE_KINDS, want(oneOf(EXERCISE_KINDS))),
	score: v.pipe(v.number(SCORE_RIGHT), v.minValue(0, SCORE_RIGHT), v.maxValue(1, SCORE_RIGHT)),
	passed: v.boolean(YES_OR_NO),
	hints: whole(1000),
	probes: v.nullable(whole(100_000))
};
const attempt = exact(
	{
		...shared,
		at,
		unsure: whole(1000),
		beliefs: v.pipe(list(id, 'ids'), v.maxLength(100, want('a list of at most 100 ids')))
	},
	'a try'
);
const first = exact({ ...shared, time: whole(LAST_INSTANT) }, 'a try of version 1');

const file = <const A extends v.GenericSchema>(version: number, of: A) =>
	exact(
		{
			format: v.literal(PROGRESS_FORMAT, want(quote(PROGRESS_FORMAT))),
			version: v.literal(version, want(String(version))),
			attempts: list(of, 'tries')
		},
		'a progress file'
	);
const VERSION_RIGHT =
	'1 or 2; a later version was written by a later release of this page, so load the page anew';
const head = braced(
	v.looseObject(
		{
			format: v.literal(PROGRESS_FORMAT, want(quote(PROGRESS_FORMAT))),
			version: v.picklist([1, PROGRESS_VERSION], want(VERSION_RIGHT))
		},
		want('a progress file, an object in braces')
	),
	'a progress file'
);

/** The name of a try: no two tries share it. */
export const keyOf = ({ exercise, at }: Attempt): string => `${exercise} ${at}`;

/** Oldest first; tries of one instant by exercise. */
export const inOrder = (attempts: readonly Attempt[]): Attempt[] =>
	[...attempts].sort((a, b) => compare(a.at, b.at) || compare(a.exercise, b.exercise));

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The first try of each name, oldest first. */
export function withoutDoubles(attempts: readonly Attempt[]): Attempt[] {
	const named = new Map<string, Attempt>();
	for (const one of attempts) if (!named.has(keyOf(one))) named.set(keyOf(one), one);
	return inOrder([...named.values()]);
}

/** All tries of both, oldest first; of two with one name the first list's is kept. */
export const merged = (mine: readonly Attempt[], theirs: readonly Attempt[]): Attempt[] =>
	withoutDoubles([...mine, ...theirs]);

/** A try of version 1 in today's form: nobody was asked then how sure they were. */
export const fromFirst = ({ time, ...rest }: FirstAttempt): Attempt => ({
	...rest,
	at: new Date(time).toISOString(),
	unsure: 0,
	beliefs: []
});

/** A try of today's form, or what is wrong with it. */
export const checkAttempt = (value: unknown): Parsed<Attempt> => checkShape(attempt, value);
/** A try of version 1, or what is wrong with it. */
export const checkFirst = (value: unknown): Parsed<FirstAttempt> => checkShape(first, value);

function doubled(attempts: readonly Attempt[]): Problem | null {
	const seen = new Map<string, number>();
	for (const [i, one] of attempts.entries()) {
		const before = seen.get(keyOf(one));
		if (before !== undefined)
			return {
				path: `$.attempts[${i}]`,
				message: `the exercise and the instant of $.attempts[${before}] again; a try stands in a file once`
			};
		seen.set(keyOf(one), i);
	}
	return null;
}

/** Tries from a JSON value of any version, oldest first, or the first problem. Never throws. */
export function checkProgress(value: unknown): Parsed<Attempt[]> {
	const top = checkShape(head, value);
	if (!top.ok) return top;
	if (top.value.version === 1) {
		const old = checkShape(file(1, first), value);
		return old.ok ? { ok: true, value: withoutDoubles(old.value.attempts.map(fromFirst)) } : old;
	}
	const now = checkShape(file(PROGRESS_VERSION, attempt), value);
	if (!now.ok) return now;
	const problem = doubled(now.value.attempts);
	return problem ? { ok: false, problem } : { ok: true, value: inOrder(now.value.attempts) };
}

/** The same from the text of a file. Never throws. */
export function parseProgress(text: string): Parsed<Attempt[]> {
	let value: unknown;
	try {
		value = JSON.parse(text.replace(/^\uFEFF/, ''));
	} catch (error) {
		const why = (error as Error).message.replace(/\s+/g, ' ').slice(0, 160);
		const message = `not JSON (${why}); a progress file is one JSON object`;
		return { ok: false, problem: { path: '$', message } };
	}
	return checkProgress(value);
}

/** A try on one line, its keys always in the same order. */
function lineOf({ exercise, kind, at, score, passed, unsure, probes, hints, beliefs }: Attempt) {
	const inOneOrder: Attempt = { exercise, kind, at, score, passed, unsure, probes, hints, beliefs };
	return `\t\t${JSON.stringify(inOneOrder)}`;
}

/** The text of a progress file, oldest try first, a line a try. Equal tries give equal texts. */
export function makeProgress(attempts: readonly Attempt[]): string {
	const lines = inOrder(attempts).map(lineOf);
	const body = lines.length > 0 ? `[\n${lines.join(',\n')}\n\t]` : '[]';
	return `{\n\t"format": "${PROGRESS_FORMAT}",\n\t"version": ${PROGRESS_VERSION},\n\t"attempts": ${body}\n}\n`;
}
