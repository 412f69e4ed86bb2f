/**
 * What is proven of an exercise before it may be taught, beyond its shape: that it can be failed and
 * passed for the reasons that it gives. content.test.ts runs it over the whole course; it asks the
 * same judge as the screens.
 */
import { classOf, sameClass } from '../diagnosis';
import { checksOf, splitNode, type Wire } from '../engine';
import { solutionOf, startAnswer } from './answers';
import type {
	Exercise,
	FindExercise,
	NameExercise,
	OrderExercise,
	PredictExercise,
	PutRightExercise,
	WireExercise,
	WrongAnswer
} from './exercise';
import { judge } from './judge';
import { factorial, lettersOf, sameNamings } from './name';
import { cellsOf, soundingCells } from './predict';
import type { Rule } from './procedure';
import { planProblems, symptomProblems } from './proofsOfHunts';
import { fewestToMend } from './putRight';
import { isSaid } from './verdict';

const say = (holds: boolean, otherwise: string): string[] => (holds ? [] : [otherwise]);

/** The start does not pass. */
export function startProblems(exercise: Exercise): string[] {
	const { passed, score } = judge(exercise, startAnswer(exercise));
	return say(!passed && score < 1, `whoever does nothing passes, with score ${score}`);
}

/** The solution passes with score 1. */
export function solutionProblems(exercise: Exercise): string[] {
	const { score, passed, refused, items, find, putRight, order } = judge(
		exercise,
		solutionOf(exercise)
	);
	if (passed && score === 1) return [];
	const wrong = items.filter((i) => !i.right);
	const seen = { score, refused, wrong, find, putRight, order };
	return [`the solution does not score 1: ${JSON.stringify(seen)}`];
}

/** A wrong answer is judged, scores less than 1, is unsafe only as declared, and gets every verdict. */
export function wrongProblems(exercise: Exercise, wrong: WrongAnswer): string[] {
	const judged = judge(exercise, wrong.answer);
	if (judged.refused !== null) return [`it cannot be judged: ${judged.refused}`];
	const missed = wrong.says.filter((v) => !isSaid(judged, v));
	const { score, unsafe } = judged;
	return [
		...say(score < 1, 'it scores 1'),
		...say(unsafe === wrong.unsafe, `unsafe is ${unsafe}, and it says ${wrong.unsafe}`),
		...say(!unsafe || score === 0, `it is unsafe and scores ${score}`),
		...missed.map((v) => `the judge does not say ${JSON.stringify(v)} of it`)
	];
}

/** Every belief that the exercise names is shown by one of its wrong answers. */
export function beliefProblems(exercise: Exercise): string[] {
	const shown = new Set(exercise.wrong.flatMap((w) => judge(exercise, w.answer).beliefs));
	return exercise.beliefs
		.filter((b) => !shown.has(b.id))
		.map((b) => `no wrong answer shows the belief ${b.id}`);
}

function predictProblems(exercise: PredictExercise): string[] {
	const sounding = soundingCells(exercise).length;
	const all = cellsOf(exercise).length;
	return [
		...say(sounding > 0, 'no pair sounds, so whoever ticks nothing is right'),
		...say(sounding < all, 'every pair sounds, so whoever ticks all is right')
	];
}

/** A joint that a hazard forbids, laid into the solution, is unsafe and scores 0. */
function hazardProblems(exercise: WireExercise | PutRightExercise): string[] {
	const free = (node: string) => exercise.mayWire.includes(splitNode(node)[0]);
	const hazards = exercise.require.filter((r) => r.hazard).flatMap(checksOf);
	const layable = hazards.filter((c) => c.wanted === 'apart' && c.pair.every(free));
	return [
		...say(layable.length > 0, 'no requirement is a hazard that a jumper could bring about'),
		...layable.flatMap(({ pair: [from, to] }) => {
			const stray: Wire = { id: 'stray', from, to, awg: 26, mm: 40 };
			const wires = [...exercise.solution, stray];
			const { unsafe, score } = judge(exercise, { kind: exercise.kind, wires });
			return say(unsafe && score === 0, `a joint from ${from} to ${to} is not caught as unsafe`);
		})
	];
}

const mendProblems = (exercise: PutRightExercise): string[] =>
	say(fewestToMend(exercise) !== null, 'the fewest changes could not be searched out');

function huntProblems(exercise: FindExercise): string[] {
	const { bench, hidden, most, solution } = exercise;
	return [
		...symptomProblems(exercise),
		...say(
			classOf(bench, [hidden]).length > 0,
			'no fault of the list answers like the hidden one, so nobody could name it'
		),
		...say(
			!sameClass(bench, [hidden], []),
			'no probe can tell the hidden fault from a sound bench'
		),
		...say(solution.length <= most, 'the solution takes more readings than are allowed'),
		...planProblems(exercise)
	];
}

/** Some naming can be ruled out: else there is nothing to find. */
const namingProblems = (exercise: NameExercise): string[] =>
	say(
		sameNamings(exercise) < factorial(lettersOf(exercise).length),
		'no reading tells any of these lugs from another'
	);

/** Orders of the steps that keep every rule, up to `most`. */
export function ordersKeeping(ids: readonly string[], rules: readonly Rule[], most: number) {
	const orders: string[][] = [];
	const grow = (done: string[]) => {
		if (orders.length >= most) return;
		if (done.length === ids.length) orders.push(done);
		for (const id of ids) {
			if (done.includes(id)) continue;
			if (rules.every((r) => r.then !== id || done.includes(r.first))) grow([...done, id]);
		}
	};
	grow([]);
	return orders;
}

/** The rules say all that the engine minds: an order that keeps them has no consequence. */
function procedureProblems(exercise: OrderExercise): string[] {
	const needed = exercise.steps.filter((s) => s.needed).map((s) => s.id);
	const orders = ordersKeeping(needed, exercise.rules, 5000);
	const bad = orders
		.map((order) => ({ order, judged: judge(exercise, { kind: 'order', order }) }))
		.find(({ judged }) => !judged.passed);
	return say(
		!bad,
		`an order that keeps every rule does not pass: ${bad?.order.join(', ')}: ${JSON.stringify(bad?.judged.order?.consequences)}`
	).concat(
		say(
			exercise.wrong.some((w) => w.unsafe),
			'no wrong answer is an unsafe order'
		)
	);
}

/** What is proven of this kind of exercise only. */
export function kindProblems(exercise: Exercise): string[] {
	switch (exercise.kind) {
		case 'predict':
			return predictProblems(exercise);
		case 'wire':
			return hazardProblems(exercise);
		case 'put-right':
			return [...mendProblems(exercise), ...hazardProblems(exercise)];
		case 'find':
			return huntProblems(exercise);
		case 'choose':
			return [];
		case 'name':
			return namingProblems(exercise);
		case 'order':
			return procedureProblems(exercise);
	}
}
