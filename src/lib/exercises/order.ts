/** Judging an order of steps: the rules that it keeps, and what would have come of it. */
import type { OrderExercise } from './exercise';
import type { Procedure } from './judged';
import { play, type Played, type Step } from './procedure';
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
	const rules = exercise.rules.map((rule) => ({
		rule,
		kept: at(rule.first) >= 0 && at(rule.first) < at(rule.then)
	}));
	const missing = exercise.steps.filter((s) => s.needed && at(s.id) < 0).map((s) => s.id);
	const spare = exercise.steps.filter((s) => !s.needed && at(s.id) >= 0).map((s) => s.id);
	const { consequences } = playOrder(exercise, order);
	const broken = rules.filter((r) => !r.kept).length + missing.length + spare.length;
	const all = rules.length + exercise.steps.length;
	const unsafe = consequences.some((c) => c.hazard);
	const passed = broken === 0 && consequences.length === 0;
	const procedure: Procedure = { rules, missing, spare, consequences };
	// With nothing broken but something come of it, the last tenth is missing.
	const score = passed ? 1 : Math.min((all - broken) / all, 0.9);
	return { score: unsafe ? 0 : score, passed, unsafe, order: procedure };
}
