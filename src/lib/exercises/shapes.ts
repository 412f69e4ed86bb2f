/**
 * What exercise.json may say, shape only: keys, lengths, lists. What one entry says about another is
 * checked in `schema.ts`. An exercise without its two cautions, or with cautions that do not name
 * what the learner does in it, has the wrong shape.
 */
import * as v from 'valibot';
import { readingShape } from '../diagnosis/readings';
import {
	FAULT_KINDS,
	PLUG_KINDS,
	SOCKET_KINDS,
	exact,
	fault,
	list,
	node,
	oneOf,
	requireShape,
	want,
	whenShape
} from '../engine';
import { FLAGS, type ExerciseKind } from './exercise';
import { needShape, optionShape } from './shapesOfNeeds';
import { id, pair, some, whole, words } from './shapesShared';
import { verdictShape } from './shapesOfVerdicts';
import { ACTIONS } from './procedure';

export const EXERCISE_FORMAT = 'solderside-exercise';
export const EXERCISE_VERSION = 1;
export const UNITS = 12;

/** What a caution of each kind must speak of, so that it names what is done in that exercise. */
const DONE: Readonly<Record<ExerciseKind, { readonly word: RegExp; readonly right: string }>> = {
	predict: { word: /\b(plug|prob)/i, right: 'the plug that is put in, or the probes' },
	wire: { word: /\b(jumper|solder)/i, right: 'the jumpers that are soldered' },
	'put-right': { word: /\b(jumper|solder)/i, right: 'the jumpers that are soldered' },
	find: { word: /\bprob/i, right: 'the probes that are put on' },
	choose: { word: /\bsocket/i, right: 'the socket that is chosen' },
	name: { word: /\bprob/i, right: 'the probes that are put on' },
	order: { word: /\b(step|order|prob|test)/i, right: 'the steps of the test' }
};
const CHASSIS = [/\bchassis\b/i, /\b(signal ground|pin 1|sleeve)\b/i];
const MAINS = [
	/\bmains\b/i,
	/\bdead\b/i,
	/\bprotective earth\b/i,
	/\blocal codes\b/i,
	/\blicensed\b/i
];

function caution(kind: ExerciseKind, must: readonly RegExp[], what: string) {
	const { word, right } = DONE[kind];
	return v.pipe(
		words(80, 700),
		v.check((text) => word.test(text), want(`a caution that names ${right}`)),
		v.check((text) => must.every((m) => m.test(text)), want(what))
	);
}
const CHASSIS_RIGHT =
	'a caution that speaks of the chassis and of signal ground, pin 1 or the sleeve';
const MAINS_RIGHT =
	'a caution that speaks of mains, a dead circuit, protective earth, local codes and licensed practice';

const SIGN_RIGHT = 'a sign: a list of one to three names';
const sign = v.pipe(
	v.array(v.union([v.string(), v.number()], want('a name, or the number of a question'))),
	v.minLength(1, want(SIGN_RIGHT)),
	v.maxLength(3, want(SIGN_RIGHT))
);
const belief = exact(
	{
		id,
		shownBy: v.optional(list(sign, 'signs'), []),
		shownByNaming: v.optional(list(fault, 'faults'), [])
	},
	'a belief (what it says stands in beliefs.json)'
);
const source = exact(
	{
		fact: words(10, 300),
		source: words(3, 200),
		flag: v.picklist(FLAGS, want(oneOf(FLAGS)))
	},
	'a source'
);
const wires = v.array(v.unknown(), want('a list of wires in square brackets'));
const probe = exact({ when: v.optional(whenShape, {}), pair }, 'a reading');
const probes = list(probe, 'readings');
const says = words(8, 300);
const symptom = exact(
	{
		told: v.optional(
			list(
				exact(
					{
						says,
						readings: some(readingShape, 'readings'),
						any: v.optional(v.boolean(want('true or false')), false)
					},
					'something told, in the words of the exercise'
				),
				'things told'
			),
			[]
		),
		kinds: v.optional(
			exact(
				{ says, among: some(v.picklist(FAULT_KINDS, want(oneOf(FAULT_KINDS))), 'kinds of fault') },
				'the kinds of fault in question'
			)
		),
		keepOff: v.optional(
			exact(
				{
					says,
					off: some(v.union([node, pair], want('a node or a pair of nodes')), 'nodes and pairs')
				},
				'what to keep the probes off'
			)
		)
	},
	'a symptom'
);
const ids = list(v.string(want('an id')), 'ids');
const CELL_RIGHT = 'two nodes, and the number of the question if it is not the first';
const cell = v.union(
	[v.strictTuple([node, node]), v.strictTuple([node, node, v.number()])],
	want(CELL_RIGHT)
);
const socketKind = v.picklist(SOCKET_KINDS, want(oneOf(SOCKET_KINDS)));
const letters = v.record(
	v.pipe(v.string(), v.regex(/^[a-z]$/, want('a letter'))),
	v.string(want('a contact')),
	want('letters and contacts, an object in braces')
);

const answers = {
	predict: exact(
		{ ticked: list(cell, 'pairs'), unsure: v.optional(list(cell, 'pairs'), []) },
		'a prediction'
	),
	wire: exact({ wires }, 'a wiring'),
	'put-right': exact({ wires }, 'a wiring'),
	find: exact({ fault: v.nullable(fault), probes: v.optional(probes, []) }, 'a finding'),
	choose: exact({ chosen: ids }, 'a choice'),
	name: exact(
		{ names: letters, socketKind: v.optional(socketKind), probes: v.optional(probes, []) },
		'a naming'
	),
	order: exact({ order: ids }, 'an order')
} as const;

const wrongShape = <K extends ExerciseKind>(kind: K) =>
	v.pipe(
		list(
			exact(
				{
					name: words(5, 120),
					answer: answers[kind],
					unsafe: v.optional(v.boolean(want('true or false')), false),
					says: some(verdictShape, 'verdicts')
				},
				'a wrong answer'
			),
			'wrong answers'
		),
		v.minLength(2, want('a list of two wrong answers or more'))
	);

const common = <K extends ExerciseKind>(kind: K) => ({
	format: v.literal(EXERCISE_FORMAT, want(`"${EXERCISE_FORMAT}"`)),
	version: v.literal(EXERCISE_VERSION, want(String(EXERCISE_VERSION))),
	id,
	kind: v.literal(kind),
	unit: whole(1, UNITS),
	place: whole(1, 99),
	title: words(5, 80),
	aim: words(20, 200),
	why: words(40, 600),
	bench: v.looseObject({}, want('a bench, an object in braces')),
	cautions: exact(
		{
			chassis: caution(kind, CHASSIS, CHASSIS_RIGHT),
			mains: caution(kind, MAINS, MAINS_RIGHT)
		},
		'the cautions'
	),
	sources: some(source, 'sources'),
	beliefs: some(belief, 'beliefs'),
	hints: some(words(10, 300), 'hints'),
	wrong: wrongShape(kind)
});
const question = exact(
	{
		state: whenShape,
		pairs: v.pipe(list(pair, 'pairs'), v.minLength(2, want('a list of two pairs or more')))
	},
	'a question'
);
const wiring = {
	mayWire: some(v.string(want('a socket’s id')), 'sockets'),
	require: requireShape,
	solution: wires
} as const;
const step = exact(
	{
		id,
		text: words(5, 200),
		does: v.picklist(ACTIONS, want(oneOf(ACTIONS))),
		needed: v.optional(v.boolean(want('true or false')), true)
	},
	'a step'
);
const rule = exact({ first: id, then: id, why: words(20, 300) }, 'a rule');

export const shapes = {
	predict: exact(
		{ ...common('predict'), questions: some(question, 'questions') },
		'a predict exercise'
	),
	wire: exact({ ...common('wire'), ...wiring }, 'a wire exercise'),
	'put-right': exact(
		{ ...common('put-right'), ...wiring, allow: v.optional(whole(0, 20), 0) },
		'a put-right exercise'
	),
	find: exact(
		{
			...common('find'),
			hidden: fault,
			symptom: v.optional(symptom, {}),
			most: whole(1, 100),
			solution: exact({ probes: some(probe, 'readings') }, 'the solution')
		},
		'a find exercise'
	),
	choose: exact(
		{
			...common('choose'),
			need: words(20, 600),
			needs: some(needShape, 'needs'),
			options: v.pipe(
				list(optionShape, 'options'),
				v.minLength(3, want('a list of three options or more'))
			)
		},
		'a choose exercise'
	),
	name: exact(
		{
			...common('name'),
			socket: v.string(want('a socket’s id')),
			candidates: some(socketKind, 'kinds'),
			lugs: letters,
			most: v.optional(v.nullable(whole(1, 200)), null),
			plugs: v.optional(list(v.picklist(PLUG_KINDS, want(oneOf(PLUG_KINDS))), 'plug kinds'), [])
		},
		'a name exercise'
	),
	order: exact(
		{
			...common('order'),
			steps: v.pipe(list(step, 'steps'), v.minLength(4, want('a list of four steps or more'))),
			rules: some(rule, 'rules'),
			probes: pair,
			solution: some(id, 'step ids')
		},
		'an order exercise'
	)
} as const;

/** What `shapes` lets through for one kind. */
export type Shape<K extends ExerciseKind> = v.InferOutput<(typeof shapes)[K]>;
