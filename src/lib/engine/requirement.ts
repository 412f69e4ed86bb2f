/** What must be true of a bench, as elementary checks, and the score they give. */
import * as v from 'valibot';
import { PLUG_KINDS, type Bench, type PlugKind } from './bench';
import { inState, statesOf, type When } from './edit';
import { hearing, inputsOf, sourcesOf } from './hears';
import { isJoined } from './nets';
import {
	checkShape,
	exact,
	jsonPath,
	list,
	node,
	oneOf,
	quote,
	strangeNode,
	want,
	type Parsed
} from './parse';
import { fits } from './parts';

export interface Requirement {
	readonly when: When;
	readonly joined: readonly (readonly string[])[];
	readonly apart: readonly (readonly string[])[];
	/** [input, source]: the input hears the source. */
	readonly hears: readonly (readonly [string, string])[];
	readonly deaf: readonly (readonly [string, string])[];
	readonly polarity: readonly (readonly [string, string, '+' | '-'])[];
	readonly hazard: boolean;
	readonly why: string;
}
export interface Check {
	readonly when: When;
	readonly pair: readonly [string, string];
	readonly wanted: 'joined' | 'apart' | 'hears' | 'deaf' | 'polarity +' | 'polarity -';
}
export interface Scored {
	readonly checks: number;
	readonly passed: number;
	readonly unsafe: readonly Check[];
	readonly failed: readonly Check[];
	/** passed/checks to four decimals; 0 when anything is unsafe. */
	readonly score: number;
}

const word = v.string(want('an id in quotation marks'));
const group = v.pipe(
	list(node, 'nodes'),
	v.minLength(2, want('a list of two nodes or more')),
	v.check((nodes) => new Set(nodes).size === nodes.length, want('a list of different nodes'))
);
const earPair = v.strictTuple([word, word], want('[input, source]'));
/** Socket ids to states. Not `v.record`: that drops the ids `prototype` and `constructor`. */
export const whenShape = v.pipe(
	v.custom<When>(
		(x) => typeof x === 'object' && x !== null && !Array.isArray(x),
		want('an object: socket to none, a plug kind or a plug’s id')
	),
	v.rawCheck(({ dataset: { typed, value: input }, addIssue }) => {
		if (!typed) return;
		for (const [key, value] of Object.entries<unknown>(input))
			if (typeof value !== 'string')
				addIssue({
					message: `${quote(value)} stands here; it should be an id in quotation marks`,
					path: [{ type: 'object', origin: 'value', input: { ...input }, key, value }]
				});
	})
);
const requirementShape = exact(
	{
		when: v.optional(whenShape, {}),
		joined: v.optional(list(group, 'lists of nodes'), []),
		apart: v.optional(list(group, 'lists of nodes'), []),
		hears: v.optional(list(earPair, '[input, source]'), []),
		deaf: v.optional(list(earPair, '[input, source]'), []),
		polarity: v.optional(
			list(
				v.strictTuple(
					[word, word, v.picklist(['+', '-'], want('"+" or "-"'))],
					want('[input, source, "+" or "-"]')
				),
				'[input, source, "+" or "-"]'
			),
			[]
		),
		hazard: v.optional(v.boolean(want('true or false')), false),
		why: v.optional(v.string(want('one sentence in quotation marks')), '')
	},
	'a requirement'
);
export const requireShape = v.pipe(
	list(requirementShape, 'requirements'),
	v.minLength(1, want('a list with at least one requirement'))
);
const exerciseShape = v.object({ require: requireShape }, (issue: v.BaseIssue<unknown>) =>
	issue.received === 'undefined'
		? 'missing; an exercise needs require, a list of requirements'
		: 'an exercise is an object in braces, with require'
);

/** Requirements of an exercise; other keys of the exercise are its own business. */
export function checkRequirements(value: unknown): Parsed<Requirement[]> {
	const shape = checkShape(exerciseShape, value);
	if (!shape.ok) return shape;
	const { require } = shape.value;
	if (require.some((r) => checksOf(r).length > 0)) return { ok: true, value: require };
	return {
		ok: false,
		problem: { path: '$.require', message: 'nothing is checked; ask for at least one pair' }
	};
}

/** The elementary checks of one requirement: all pairs of every group, then what is heard. */
export function checksOf(r: Requirement): Check[] {
	const pairs = (groups: readonly (readonly string[])[], wanted: 'joined' | 'apart') =>
		groups.flatMap((nodes) =>
			nodes.flatMap((a, i) =>
				nodes.slice(i + 1).map((b): Check => ({ when: r.when, pair: [a, b], wanted }))
			)
		);
	const ears = (list: readonly (readonly [string, string])[], wanted: 'hears' | 'deaf') =>
		list.map((pair): Check => ({ when: r.when, pair: [pair[0], pair[1]], wanted }));
	return [
		...pairs(r.joined, 'joined'),
		...pairs(r.apart, 'apart'),
		...ears(r.hears, 'hears'),
		...ears(r.deaf, 'deaf'),
		...r.polarity.map(([input, source, sign]): Check => ({
			when: r.when,
			pair: [input, source],
			wanted: `polarity ${sign}`
		}))
	];
}

/** Whether the check holds of a bench that is in the check's state already. */
export function holds(bench: Bench, check: Check): boolean {
	const [a, b] = check.pair;
	switch (check.wanted) {
		case 'joined':
			return isJoined(bench, a, b);
		case 'apart':
			return !isJoined(bench, a, b);
		case 'hears':
			return hearing(bench, a, b) !== null;
		case 'deaf':
			return hearing(bench, a, b) === null;
		default:
			return hearing(bench, a, b)?.polarity === check.wanted.slice(-1);
	}
}

/** Runs every check of the requirements against the bench. */
export function scoreOf(bench: Bench, require: readonly Requirement[]): Scored {
	const unsafe: Check[] = [];
	const failed: Check[] = [];
	let checks = 0;
	for (const r of require) {
		const there = inState(bench, r.when);
		for (const check of checksOf(r)) {
			checks += 1;
			if (holds(there, check)) continue;
			failed.push(check);
			if (r.hazard) unsafe.push(check);
		}
	}
	const passed = checks - failed.length;
	const score = unsafe.length > 0 || checks === 0 ? 0 : Number((passed / checks).toFixed(4));
	return { checks, passed, unsafe, failed, score };
}

const noSuch = (what: string, id: string, there: readonly string[]): string =>
	`the bench has no ${what} "${id}"${there.length ? `; say ${oneOf(there.slice(0, 20))}` : ''}`;

/** What a plug state names and the bench does not have, or that cannot be; null if it can. */
export function strangeWhen(bench: Bench, when: When, path: string): Parsed<never> | null {
	const used = new Set<string>();
	const socketIds = bench.sockets.map((s) => s.id);
	for (const [socketId, state] of Object.entries(when)) {
		const at = `${path}${jsonPath([socketId]).slice(1)}`;
		const no = (message: string): Parsed<never> => ({ ok: false, problem: { path: at, message } });
		const socket = bench.sockets.find((s) => s.id === socketId);
		if (!socket) return no(noSuch('socket', socketId, socketIds));
		if (state === 'none') continue;
		const plug = bench.plugs.find((p) => p.id === state);
		const kind: PlugKind | undefined = PLUG_KINDS.find((k) => k === state) ?? plug?.kind;
		if (!kind)
			return no(`"${state}" is no state; say none, ${oneOf(PLUG_KINDS)} or the id of a plug`);
		const right = oneOf(statesOf(bench, socketId));
		if (!fits(kind, socket.kind))
			return no(`a ${kind} plug does not go into a ${socket.kind}; ${right} would`);
		if (plug && used.has(plug.id))
			return no(`plug "${plug.id}" cannot be in two sockets at once; name another`);
		if (plug) used.add(plug.id);
	}
	return null;
}

/** The first thing a requirement names that the bench does not have; null if all is there. */
export function strangeRequirement(
	bench: Bench,
	require: readonly Requirement[]
): Parsed<never> | null {
	const inputs = inputsOf(bench).map((d) => d.id);
	const sources = sourcesOf(bench).map((d) => d.id);
	for (const [i, r] of require.entries()) {
		const at = `$.require[${i}]`;
		const strange = strangeWhen(bench, r.when, `${at}.when`);
		if (strange) return strange;
		for (const field of ['joined', 'apart'] as const)
			for (const [k, nodes] of r[field].entries())
				for (const [j, name] of nodes.entries()) {
					const message = strangeNode(bench, name);
					const path = `${at}.${field}[${k}][${j}]`;
					if (message) return { ok: false, problem: { path, message } };
				}
		for (const field of ['hears', 'deaf', 'polarity'] as const)
			for (const [k, [input, source]] of r[field].entries()) {
				const path = `${at}.${field}[${k}]`;
				if (!inputs.includes(input))
					return {
						ok: false,
						problem: { path: `${path}[0]`, message: noSuch('input', input, inputs) }
					};
				if (!sources.includes(source))
					return {
						ok: false,
						problem: { path: `${path}[1]`, message: noSuch('source', source, sources) }
					};
			}
	}
	return null;
}
