/**
 * A verdict: what the judge must say of a wrong answer. It is one of several forms, told apart by
 * its keys; which forms a kind of exercise has, and whether what they name is there, is checked here
 * as well.
 */
import * as v from 'valibot';
import { exact, oneOf, want, whenShape } from '../engine';
import type { ExerciseKind } from './exercise';
import { namePair } from './shapesShared';

const name = v.optional(v.string(want('a name in quotation marks')));
const count = v.optional(
	v.pipe(v.number(want('a whole number over 0')), v.integer(), v.minValue(1))
);

export const verdictShape = exact(
	{
		pair: v.optional(namePair),
		wanted: name,
		when: v.optional(whenShape),
		belief: name,
		option: name,
		need: name,
		lug: name,
		consequence: name,
		step: name,
		first: name,
		then: name,
		missing: name,
		spare: name,
		extraChanges: count,
		extraReadings: count,
		unproven: v.optional(v.literal(true, want('true')))
	},
	'a verdict'
);
export type VerdictShape = v.InferOutput<typeof verdictShape>;

/** Keys that a form must have, and keys that it may have besides. */
interface Form {
	readonly must: readonly string[];
	readonly may: readonly string[];
	readonly of: readonly ExerciseKind[];
}
const FORMS: readonly Form[] = [
	{ must: ['pair', 'wanted'], may: ['when'], of: ['predict', 'wire', 'put-right', 'find', 'name'] },
	{
		must: ['belief'],
		may: [],
		of: ['predict', 'wire', 'put-right', 'find', 'choose', 'name', 'order']
	},
	{ must: ['option'], may: ['need'], of: ['choose'] },
	{ must: ['lug'], may: [], of: ['name'] },
	{ must: ['consequence'], may: ['step'], of: ['order'] },
	{ must: ['first', 'then'], may: [], of: ['order'] },
	{ must: ['missing'], may: [], of: ['order'] },
	{ must: ['spare'], may: [], of: ['order'] },
	{ must: ['extraChanges'], may: [], of: ['put-right'] },
	{ must: ['extraReadings'], may: [], of: ['find', 'name'] },
	{ must: ['unproven'], may: [], of: ['find'] }
];

/** Why this is no verdict for that kind of exercise; null if it is one. */
export function strangeVerdict(kind: ExerciseKind, verdict: VerdictShape): string | null {
	const keys = Object.entries(verdict)
		.filter(([, value]) => value !== undefined)
		.map(([key]) => key);
	const forms = FORMS.filter((f) => f.of.includes(kind));
	const isForm = ({ must, may }: Form) =>
		must.every((k) => keys.includes(k)) && keys.every((k) => [...must, ...may].includes(k));
	if (forms.some(isForm)) return null;
	const right = forms.map(({ must, may }) =>
		[must.join(' and '), ...may.map((m) => `(${m})`)].join(' ')
	);
	return `${keys.join(', ') || 'nothing'} stands here; a verdict on a ${kind} exercise has ${oneOf(right)}`;
}
