/**
 * What exercise.json may say, shape only: keys, lengths, lists. What one entry says about another is
 * checked in `schema.ts`. An exercise without its two cautions, or with cautions that do not name
 * what the learner does in it, has the wrong shape.
 */
import * as v from 'valibot';
import { exact, fault, list, node, oneOf, requireShape, want } from '../engine';
import { FLAGS, type ExerciseKind } from './exercise';

export const EXERCISE_FORMAT = 'solderside-exercise';
export const EXERCISE_VERSION = 1;

const words = (from: number, to: number) => {
	const right = `a text of ${from} to ${to} characters`;
	return v.pipe(
		v.string(want(right)),
		v.minLength(from, want(right)),
		v.maxLength(to, want(right))
	);
};
const ID_RIGHT = 'a permanent id: lower-case letters, digits and single hyphens';
const id = v.pipe(v.string(want(ID_RIGHT)), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, want(ID_RIGHT)));

/** What a caution of each kind must speak of, so that it names what is done in that exercise. */
const DONE: Readonly<Record<ExerciseKind, { readonly word: RegExp; readonly right: string }>> = {
	predict: { word: /\bplug/i, right: 'the plug that is put in' },
	wire: { word: /\b(jumper|solder)/i, right: 'the jumpers that are soldered' },
	find: { word: /\bprob/i, right: 'the probes that are put on' }
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

const pair = v.pipe(
	v.strictTuple([node, node], want('two nodes in square brackets')),
	v.check(([a, b]) => a !== b, want('two different nodes'))
);
/** Two nodes, or an input and a source. */
const namePair = v.strictTuple([v.string(), v.string()], want('two names in square brackets'));
const belief = exact(
	{
		id,
		says: words(10, 200),
		truth: words(10, 400),
		shownBy: v.optional(list(namePair, 'pairs'), []),
		shownByNaming: v.optional(list(fault, 'faults'), [])
	},
	'a belief'
);
const source = exact(
	{
		fact: words(10, 300),
		source: words(3, 200),
		flag: v.picklist(FLAGS, want(oneOf(FLAGS)))
	},
	'a source'
);
const some = <T extends v.GenericSchema>(of: T, what: string) =>
	v.pipe(list(of, what), v.minLength(1, want(`a list of ${what}, one at least`)));

const common = <K extends ExerciseKind>(kind: K) => ({
	format: v.literal(EXERCISE_FORMAT, want(`"${EXERCISE_FORMAT}"`)),
	version: v.literal(EXERCISE_VERSION, want(String(EXERCISE_VERSION))),
	id,
	kind: v.literal(kind),
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
	hints: some(words(10, 300), 'hints')
});
const wires = v.array(v.unknown(), want('a list of wires in square brackets'));
const PAIRS_RIGHT = 'a list of four pairs or more';
export const shapes = {
	predict: exact(
		{
			...common('predict'),
			state: v.record(v.string(), v.string(want('none, a plug kind or a plug’s id'))),
			pairs: v.pipe(list(pair, 'pairs'), v.minLength(4, want(PAIRS_RIGHT)))
		},
		'a predict exercise'
	),
	wire: exact(
		{
			...common('wire'),
			mayWire: some(v.string(want('a socket’s id')), 'sockets'),
			require: requireShape,
			solution: wires,
			wrong: v.pipe(
				list(
					exact(
						{
							name: words(5, 120),
							wires,
							unsafe: v.boolean(want('true or false')),
							says: some(
								exact(
									{
										pair: namePair,
										wanted: v.string(want('what the check wants'))
									},
									'a verdict'
								),
								'verdicts'
							)
						},
						'a wrong answer'
					),
					'wrong answers'
				),
				v.minLength(2, want('a list of two wrong answers or more'))
			)
		},
		'a wire exercise'
	),
	find: exact(
		{
			...common('find'),
			hidden: fault,
			most: v.pipe(
				v.number(want('a whole number from 1 to 100')),
				v.integer(want('a whole number from 1 to 100')),
				v.minValue(1, want('a whole number from 1 to 100')),
				v.maxValue(100, want('a whole number from 1 to 100'))
			)
		},
		'a find exercise'
	)
} as const;

/** What `shapes` lets through for one kind. */
export type Shape<K extends ExerciseKind> = v.InferOutput<(typeof shapes)[K]>;
