/** Tools of the gate: the first problem is thrown with its JSON path and caught in `schema.ts`. */
import {
	strangeRequirement,
	type Bench,
	type Fault,
	type Parsed,
	type Problem,
	type Requirement,
	type When
} from '../engine';
import type { Sign } from './exercise';
import { faultKey } from './same';

export class Wrong extends Error {
	constructor(readonly problem: Problem) {
		super(problem.message);
	}
}
/** The value, or out with the problem, its path moved under `from` → `to`. */
export function need<T>(parsed: Parsed<T>, from = '$', to = '$'): T {
	if (parsed.ok) return parsed.value;
	const { path, message } = parsed.problem;
	throw new Wrong({ path: path.startsWith(from) ? to + path.slice(from.length) : path, message });
}
export const fail = (path: string, message: string): never => {
	throw new Wrong({ path, message });
};

/** A requirement that asks for nothing; the gate for states and nodes is the engine's. */
const asking = (when: When, joined: Requirement['joined']): Requirement => ({
	when,
	joined,
	apart: [],
	hears: [],
	deaf: [],
	polarity: [],
	hazard: false,
	why: ''
});
/** Pairs of nodes in a state of the bench, all of them there. */
export function needNodes(
	bench: Bench,
	when: When,
	pairs: Requirement['joined'],
	path: string,
	state = '$'
) {
	const strange = strangeRequirement(bench, [asking(when, pairs)]);
	if (!strange || strange.ok) return;
	if (strange.problem.path.startsWith('$.require[0].when'))
		need(strange, '$.require[0].when', state);
	need(strange, '$.require[0].joined', path);
}

/** One pair of nodes in a state of the bench, both of them there. */
export function needPair(
	bench: Bench,
	when: When,
	pair: readonly [string, string],
	path: string,
	state = '$'
) {
	const strange = strangeRequirement(bench, [asking(when, [pair])]);
	if (!strange || strange.ok) return;
	const { path: at } = strange.problem;
	if (at.startsWith('$.require[0].when')) need(strange, '$.require[0].when', state);
	need(strange, '$.require[0].joined[0]', path);
}

export function needDifferent(keys: readonly string[], path: string, what: string) {
	const i = keys.findIndex((key, k) => keys.indexOf(key) !== k);
	if (i >= 0) fail(`${path}[${i}]`, `this ${what} stands in the list already`);
}

/** Every one of these is among those; else the first that is not is refused in its place. */
export function needAmong(
	items: readonly string[],
	known: readonly string[],
	path: string,
	message: (item: string) => string
) {
	const i = items.findIndex((item) => !known.includes(item));
	if (i >= 0) fail(`${path}[${i}]`, message(items[i]!));
}

export interface Signed {
	readonly shownBy: readonly Sign[];
	readonly shownByNaming: readonly Fault[];
}
/** A belief may only be shown by what this exercise judges, and by something. */
export function needShown(
	beliefs: readonly Signed[],
	isJudged: (sign: Sign) => boolean,
	faults: readonly Fault[] = []
) {
	const named = new Set(faults.map(faultKey));
	for (const [i, b] of beliefs.entries()) {
		const at = `$.beliefs[${i}]`;
		const sign = b.shownBy.findIndex((s) => !isJudged(s));
		if (sign >= 0) fail(`${at}.shownBy[${sign}]`, 'this is not judged here');
		const strange = b.shownByNaming.findIndex((f) => !named.has(faultKey(f)));
		if (strange >= 0) fail(`${at}.shownByNaming[${strange}]`, 'nobody can name this here');
		if (b.shownBy.length + b.shownByNaming.length === 0)
			fail(`${at}.shownBy`, 'say what in an answer shows this belief');
	}
}
