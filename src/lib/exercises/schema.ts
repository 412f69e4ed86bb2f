/**
 * The gate for an exercise: exercise.json and text.md in, a checked exercise or the first problem
 * with its JSON path out. The shape comes first (`shapes.ts`), then what one entry says about
 * another; the bench inside goes through the engine's own gate.
 */
import * as v from 'valibot';
import { classOf, faultListOf, sameClass } from '../diagnosis';
import {
	checkBench,
	checkShape,
	checksOf,
	oneOf,
	parseJson,
	strangeRequirement,
	want,
	type Bench,
	type Fault,
	type Parsed,
	type Problem,
	type Requirement,
	type When,
	type Wire
} from '../engine';
import {
	EXERCISE_KINDS,
	type Exercise,
	type ExerciseKind,
	type FindExercise,
	type PredictExercise,
	type WireExercise,
	type WrongAnswer
} from './exercise';
import { faultKey } from './find';
import { parseProse } from './prose';
import { shapes, type Shape } from './shapes';

class Wrong extends Error {
	constructor(readonly problem: Problem) {
		super(problem.message);
	}
}
/** The value, or out with the problem, its path moved under `from` → `to`. */
function need<T>(parsed: Parsed<T>, from = '$', to = '$'): T {
	if (parsed.ok) return parsed.value;
	const { path, message } = parsed.problem;
	throw new Wrong({ path: path.startsWith(from) ? to + path.slice(from.length) : path, message });
}
const fail = (path: string, message: string): never => {
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
function needNodes(
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

const keyOf = ([a, b]: readonly [string, string]): string => [a, b].sort().join(' ');

function needDifferent(keys: readonly string[], path: string, what: string) {
	const i = keys.findIndex((key, k) => keys.indexOf(key) !== k);
	if (i >= 0) fail(`${path}[${i}]`, `this ${what} stands in the list already`);
}

type BeliefShape = Shape<ExerciseKind>['beliefs'][number];

/** A belief may only be shown by what this exercise judges. */
function needShown(
	beliefs: readonly BeliefShape[],
	pairs: readonly (readonly [string, string])[],
	faults: readonly Fault[]
) {
	const judged = new Set(pairs.map(keyOf));
	const named = new Set(faults.map(faultKey));
	for (const [i, b] of beliefs.entries()) {
		const pair = b.shownBy.findIndex((p) => !judged.has(keyOf(p)));
		if (pair >= 0) fail(`$.beliefs[${i}].shownBy[${pair}]`, 'this pair is not judged here');
		const fault = b.shownByNaming.findIndex((f) => !named.has(faultKey(f)));
		if (fault >= 0) fail(`$.beliefs[${i}].shownByNaming[${fault}]`, 'nobody can name this here');
	}
}

function predictOf(
	shape: Shape<'predict'>,
	bench: Bench
): Pick<PredictExercise, 'state' | 'pairs'> {
	const { state, pairs } = shape;
	needNodes(bench, state, pairs, '$.pairs', '$.state');
	needDifferent(pairs.map(keyOf), '$.pairs', 'pair');
	needShown(shape.beliefs, pairs, []);
	return { state, pairs };
}

/** Wires through the engine's gate: they stand on the exercise's bench in place of its own. */
function wiresOf(benchFile: object, value: readonly unknown[], path: string): readonly Wire[] {
	return need(checkBench({ ...benchFile, wires: value }), '$.wires', path).wires;
}

function wireOf(
	shape: Shape<'wire'>,
	bench: Bench
): Pick<WireExercise, 'mayWire' | 'require' | 'solution' | 'wrong'> {
	const { mayWire, require } = shape;
	for (const [i, socket] of mayWire.entries())
		if (!bench.sockets.some((s) => s.id === socket))
			fail(`$.mayWire[${i}]`, `the bench has no socket "${socket}"`);
	const strange = strangeRequirement(bench, require);
	if (strange) need(strange);
	const checked = require.flatMap((r) => checksOf(r).map((c) => c.pair));
	needShown(shape.beliefs, checked, []);
	const wrong = shape.wrong.map((w, i): WrongAnswer => ({
		...w,
		wires: wiresOf(shape.bench, w.wires, `$.wrong[${i}].wires`)
	}));
	return { mayWire, require, solution: wiresOf(shape.bench, shape.solution, '$.solution'), wrong };
}

function findOf(shape: Shape<'find'>, bench: Bench): Pick<FindExercise, 'hidden' | 'most'> {
	const { hidden, most } = shape;
	const at = `$.faults[${bench.faults.length}]`;
	need(checkBench({ ...shape.bench, faults: [...bench.faults, hidden] }), at, '$.hidden');
	if (classOf(bench, [hidden]).length === 0)
		fail('$.hidden', 'no fault of the list answers like this one, so nobody could name it');
	if (sameClass(bench, [hidden], []))
		fail('$.hidden', 'no probe can tell this fault from a sound bench; choose one that shows');
	needShown(shape.beliefs, [], faultListOf(bench));
	return { hidden, most };
}

function exerciseOf(value: unknown, markdown: string): Exercise {
	const { kind } = need(
		checkShape(
			v.looseObject(
				{ kind: v.picklist(EXERCISE_KINDS, want(oneOf(EXERCISE_KINDS))) },
				want('an exercise, an object in braces')
			),
			value
		)
	);
	const shape = need(
		checkShape(shapes[kind] as v.GenericSchema<unknown, Shape<ExerciseKind>>, value)
	);
	const bench = need(checkBench(shape.bench), '$', '$.bench');
	needDifferent(
		shape.beliefs.map((b) => b.id),
		'$.beliefs',
		'id'
	);
	if (shape.cautions.chassis === shape.cautions.mains)
		fail('$.cautions.mains', 'the same text as the other caution; each needs its own');
	const { id, title, aim, why, cautions, sources, beliefs, hints } = shape;
	const text = need(parseProse(markdown));
	const shared = { id, title, aim, why, bench, cautions, sources, beliefs, hints, text };
	switch (shape.kind) {
		case 'predict':
			return { ...shared, kind: shape.kind, ...predictOf(shape, bench) };
		case 'wire':
			return { ...shared, kind: shape.kind, ...wireOf(shape, bench) };
		case 'find':
			return { ...shared, kind: shape.kind, ...findOf(shape, bench) };
	}
}

/** An exercise from a JSON value and its Markdown text, or the first problem. Never throws. */
export function checkExercise(value: unknown, markdown: string): Parsed<Exercise> {
	try {
		return { ok: true, value: exerciseOf(value, markdown) };
	} catch (error) {
		if (error instanceof Wrong) return { ok: false, problem: error.problem };
		throw error;
	}
}

/** An exercise from the text of exercise.json and text.md, or the first problem. */
export function parseExercise(json: string, markdown: string): Parsed<Exercise> {
	const value = parseJson(json);
	return value.ok ? checkExercise(value.value, markdown) : value;
}
