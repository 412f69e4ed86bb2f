/** Judging an order of steps: the rules that it keeps, and what would have come of it. */
import type { OrderExercise } from './exercise';
import type { Procedure } from './judged';
import { play, type Played, type Rule, type Step } from './procedure';
import { refuse, type Result } from './result';

const stepsOf = (exercise: OrderExercise, order: readonly string[]): Step[] =>
	order.flatMap((id) => exercise.steps.find((s) => s.id === id) ?? []);

/** What this order would have done, step by step; steps that do not exist are passed over. */
export const playOrder = (exercise: OrderExercise, order: readonly string[]): Played =>
	play(exercise.bench, exercise.probes, stepsOf(exercise, order));

export function judgeOrder(exercise: OrderExercise, order: readonly string[]): Result {
	const strange = order.find((id) => !exercise.steps.some((s) => s.id === id));
	if (strange !== undefined) return refuse(`"${strange}" is not among the steps`);
	if (new Set(order).size < order.length) return refuse('a step stands in the order twice');
	const at = (id: string): number => order.indexOf(id);
	// A rule about a step that is not done is not broken; that the step is missing is told by itself.
	const isKept = ({ first, then }: Rule): boolean =>
		at(then) < 0 || (at(first) >= 0 && at(first) < at(then));
	const rules = exercise.rules.map((rule) => ({ rule, kept: isKept(rule) }));
	const missing = exercise.steps.filter((s) => s.needed && at(s.id) < 0).map((s) => s.id);
	const spare = exercise.steps.filter((s) => !s.needed && at(s.id) >= 0).map((s) => s.id);
	const { consequences } = playOrder(exercise, order);
	const done = order.length - spare.length;
	const good = rules.filter((r) => r.kept && at(r.rule.then) >= 0).length + done;
	const all = rules.length + exercise.steps.filter((s) => s.needed).length;
	const unsafe = consequences.some((c) => c.hazard);
	const broken = missing.length + spare.length + rules.filter((r) => !r.kept).length;
	const passed = broken === 0 && consequences.length === 0;
	const procedure: Procedure = { rules, missing, spare, consequences };
	// What is right of it, less what has no place in it; short of passing, never the last tenth.
	const score = passed ? 1 : Math.min(Math.max(good - spare.length, 0) / all, 0.9);
	return { score: unsafe ? 0 : score, passed, unsafe, order: procedure };
}
