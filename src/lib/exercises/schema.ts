/**
 * The gate for an exercise: exercise.json and text.md in, a checked exercise or the first problem
 * with its JSON path out. The shape comes first (`shapes.ts`), then what one entry says about
 * another (`gates.ts`); the bench inside goes through the engine's own gate. That the start does not
 * pass, the solution does and every wrong answer gets its reason is proven by content.test.ts.
 */
import * as v from 'valibot';
import { checkBench, checkShape, oneOf, parseJson, want, type Bench, type Parsed } from '../engine';
import type { Beliefs } from './beliefs';
import { EXERCISE_KINDS, type Belief, type Exercise, type ExerciseKind } from './exercise';
import {
	chooseOf,
	findOf,
	nameOf,
	orderOf,
	predictOf,
	putRightOf,
	wiresOf,
	wiringOf
} from './gates';
import { Wrong, fail, need, needDifferent } from './gate';
import type { Answer } from './judged';
import { parseProse } from './prose';
import { shapes, type Shape } from './shapes';
import { strangeVerdict } from './shapesOfVerdicts';

type AnyShape = Shape<ExerciseKind>;

/** The beliefs that the exercise names, with what the shared list says of them. */
function beliefsOf(shape: AnyShape, beliefs: Beliefs): Belief[] {
	needDifferent(
		shape.beliefs.map((b) => b.id),
		'$.beliefs',
		'id'
	);
	return shape.beliefs.map((b, i): Belief => {
		const entry = beliefs.find((x) => x.id === b.id);
		if (!entry) return fail(`$.beliefs[${i}].id`, `beliefs.json has no belief "${b.id}"`);
		return { ...b, ...entry };
	});
}

function answerOf(shape: AnyShape, i: number): Answer {
	const { answer } = shape.wrong[i]!;
	const path = `$.wrong[${i}].answer.wires`;
	if ('wires' in answer && (shape.kind === 'wire' || shape.kind === 'put-right'))
		return { kind: shape.kind, wires: wiresOf(shape.bench, answer.wires, path) };
	return { kind: shape.kind, ...answer } as Answer;
}

function wrongOf(shape: AnyShape) {
	needDifferent(
		shape.wrong.map((w) => w.name),
		'$.wrong',
		'name'
	);
	return shape.wrong.map(({ name, says, unsafe }, i) => {
		for (const [k, verdict] of says.entries()) {
			const at = `$.wrong[${i}].says[${k}]`;
			const strange = strangeVerdict(shape.kind, verdict);
			if (strange) fail(at, strange);
			if (verdict.belief && !shape.beliefs.some((b) => b.id === verdict.belief))
				fail(`${at}.belief`, `the exercise has no belief "${verdict.belief}"`);
		}
		return { name, says, unsafe, answer: answerOf(shape, i) };
	});
}

/** What only one kind of exercise has. */
function ownOf(shape: AnyShape, bench: Bench): object {
	switch (shape.kind) {
		case 'predict':
			return predictOf(shape, bench);
		case 'wire':
			return wiringOf(shape, bench);
		case 'put-right':
			return putRightOf(shape, bench);
		case 'find':
			return findOf(shape, bench);
		case 'choose':
			return chooseOf(shape, bench);
		case 'name':
			return nameOf(shape, bench);
		case 'order':
			return orderOf(shape, bench);
	}
}

function exerciseOf(value: unknown, markdown: string, known: Beliefs): Exercise {
	const { kind } = need(
		checkShape(
			v.looseObject(
				{ kind: v.picklist(EXERCISE_KINDS, want(oneOf(EXERCISE_KINDS))) },
				want('an exercise, an object in braces')
			),
			value
		)
	);
	const shape = need(checkShape(shapes[kind] as v.GenericSchema<unknown, AnyShape>, value));
	const bench = need(checkBench(shape.bench), '$', '$.bench');
	const beliefs = beliefsOf(shape, known);
	const { cautions } = shape;
	if (cautions.chassis === cautions.mains)
		fail('$.cautions.mains', 'the same text as the other caution; each needs its own');
	const { id, unit, place, title, aim, why, sources, hints } = shape;
	const text = need(parseProse(markdown));
	const shared = { id, unit, place, title, aim, why, bench, cautions, sources, beliefs, hints };
	// Safe: the shape and the gate of this very kind have been passed.
	return {
		...shared,
		text,
		kind,
		...ownOf(shape, bench),
		wrong: wrongOf(shape)
	} as unknown as Exercise;
}

/** An exercise from a JSON value and its Markdown text, or the first problem. Never throws. */
export function checkExercise(
	value: unknown,
	markdown: string,
	beliefs: Beliefs
): Parsed<Exercise> {
	try {
		return { ok: true, value: exerciseOf(value, markdown, beliefs) };
	} catch (error) {
		if (error instanceof Wrong) return { ok: false, problem: error.problem };
		throw error;
	}
}

/** An exercise from the text of exercise.json and text.md, or the first problem. */
export function parseExercise(json: string, markdown: string, beliefs: Beliefs): Parsed<Exercise> {
	const value = parseJson(json, 'an exercise');
	return value.ok ? checkExercise(value.value, markdown, beliefs) : value;
}
