/** What a choose exercise may ask for, and what a variant may be: shape only. */
import * as v from 'valibot';
import { PLUG_KINDS, exact, list, oneOf, want } from '../engine';
import { NEEDS, TERMINATIONS, type Need } from './needs';
import { namePair, some, whole } from './shapesShared';

const plug = v.picklist(PLUG_KINDS, want(oneOf(PLUG_KINDS)));
const plugs = v.strictTuple([plug, plug], want('two plug kinds in square brackets'));
const termination = v.picklist(TERMINATIONS, want(oneOf(TERMINATIONS)));
const named = <N extends Need['need'], E extends v.ObjectEntries>(need: N, entries: E) =>
	exact({ need: v.literal(need), ...entries }, `the need ${need}`);

const forms = [
	named('contacts', { least: v.optional(whole(0, 99), 0), most: v.optional(whole(0, 99), 99) }),
	named('takes', { plug }),
	named('meets', { plug }),
	named('breaks', { on: some(v.string(want('a spring or pin')), 'springs') }),
	named('changeover', {}),
	named('behaves', {
		with: v.picklist(['none', ...PLUG_KINDS], want(`none, ${oneOf(PLUG_KINDS)}`)),
		joined: v.optional(list(namePair, 'pairs of contacts'), []),
		apart: v.optional(list(namePair, 'pairs of contacts'), [])
	}),
	named('one-at-a-time', { plugs }),
	named('both-at-once', { plugs }),
	named('openings', { most: whole(1, 99) }),
	named('termination', { among: some(termination, 'terminations') }),
	named('latch', { is: v.boolean(want('true or false')) }),
	named('gender', { is: v.picklist(['female', 'male'], want('female or male')) }),
	named('sleeve-off-panel', {})
];
export const needShape = v.variant('need', forms as never, (issue: v.BaseIssue<unknown>) =>
	want(issue.expected === 'Object' ? 'a need, an object in braces' : oneOf(NEEDS))(issue)
) as unknown as v.GenericSchema<unknown, Need>;

export const optionShape = exact(
	{
		id: v.pipe(
			v.string(want('a short id')),
			v.regex(/^[A-Za-z0-9-]{1,12}$/, want('an id of 1 to 12 letters, digits or hyphens'))
		),
		sockets: some(v.string(want('a socket’s id')), 'sockets'),
		termination,
		latch: v.optional(v.boolean(want('true or false')), false)
	},
	'an option'
);
