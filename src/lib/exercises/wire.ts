/** Judging a wiring: the exercise's requirements run through the engine, check by check. */
import {
	checkBench,
	checksOf,
	fileOf,
	hearing,
	holds,
	inState,
	scoreOf,
	splitNode,
	type Bench,
	type Check,
	type Requirement,
	type Wire
} from '../engine';
import type { PutRightExercise, WireExercise } from './exercise';
import type { Item, Outcome } from './judged';
import { refuse, type Result } from './result';

const OPPOSITE: Readonly<Partial<Record<Check['wanted'], Outcome>>> = {
	joined: 'apart',
	apart: 'joined',
	hears: 'deaf',
	deaf: 'hears'
};

/** How it is where a check does not hold; `bench` is in the check's state. */
function foundIn(bench: Bench, { pair, wanted }: Check): Outcome {
	const opposite = OPPOSITE[wanted];
	if (opposite) return opposite;
	const heard = hearing(bench, ...pair);
	return heard ? `polarity ${heard.polarity}` : 'deaf';
}

function itemsOf(bench: Bench, r: Requirement): Item[] {
	const there = inState(bench, r.when);
	return checksOf(r).map((check): Item => {
		const right = holds(there, check);
		const found = right ? check.wanted : foundIn(there, check);
		return { right, ...check, found, hazard: r.hazard, why: r.why };
	});
}

/** Why these wires are no answer: not of this bench, or soldered where the learner may not. */
function refusedFor(
	exercise: WireExercise | PutRightExercise,
	wires: readonly Wire[]
): string | null {
	const checked = checkBench(fileOf({ ...exercise.bench, wires }));
	if (!checked.ok) return `${checked.problem.path}: ${checked.problem.message}`;
	const isFree = (end: string) => exercise.mayWire.includes(splitNode(end)[0]);
	const strange = wires.find((w) => !isFree(w.from) || !isFree(w.to));
	return strange
		? `wire ${strange.id} leaves the socket; only contacts of ${exercise.mayWire.join(', ')} may be joined here`
		: null;
}

/** Judges wires against the requirement of an exercise, in every state that it names. */
export function judgeWiring(
	exercise: WireExercise | PutRightExercise,
	wires: readonly Wire[]
): Result {
	const refused = refusedFor(exercise, wires);
	if (refused) return refuse(refused);
	const bench = { ...exercise.bench, wires };
	const { score } = scoreOf(bench, exercise.require);
	const items = exercise.require.flatMap((r) => itemsOf(bench, r));
	const unsafe = items.some((i) => !i.right && i.hazard);
	return { score, passed: items.every((i) => i.right), unsafe, items };
}
