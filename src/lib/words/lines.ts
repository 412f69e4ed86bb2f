/**
 * Everything that is wrong with an answer, one line each, for any kind of exercise, with what a screen
 * needs to show it: the reading, the step, the variant or the lug.
 */
import type { Answer, Exercise, Item, Judged } from '../exercises';
import { itemWords } from './judged';
import { lugWords } from './naming';
import { optionWords } from './needs';
import { consequenceWords, ruleWords, stepText } from './procedure';

export interface Line {
	readonly text: string;
	readonly hazard: boolean;
	/** Replay it: `replayBench(exercise, answer, item)`, probes on `item.pair`. */
	readonly item?: Item;
	/** order: place in the learner's order, from 0; `playOrder(…).situations[at]` is what stood then. */
	readonly at?: number;
	/** choose: the variant's id. */
	readonly option?: string;
	/** name: the letter. */
	readonly lug?: string;
}

function orderLines(exercise: Extract<Exercise, { kind: 'order' }>, judged: Judged): Line[] {
	const { order } = judged;
	if (!order) return [];
	const plain = (text: string): Line => ({ text, hazard: false });
	return [
		...order.consequences.map((c) => ({
			text: consequenceWords(exercise, c),
			hazard: c.hazard,
			at: c.at
		})),
		...order.missing.map((id) =>
			plain(`“${stepText(exercise, id)}” is left out, and it is needed.`)
		),
		...order.spare.map((id) => plain(`“${stepText(exercise, id)}” has no place in a safe test.`)),
		...order.rules.filter((r) => !r.kept).map((r) => plain(ruleWords(exercise, r.rule)))
	];
}

/** What is wrong, most telling first; [] for an answer that passes. */
export function wrongLines(exercise: Exercise, answer: Answer, judged: Judged): Line[] {
	const items = judged.items
		.filter((i) => !i.right)
		.map((item): Line => ({ text: itemWords(exercise, answer, item), hazard: item.hazard, item }));
	if (exercise.kind === 'order') return orderLines(exercise, judged);
	if (exercise.kind === 'choose')
		return (judged.choose?.options ?? [])
			.filter((o) => !o.right)
			.map((o) => {
				const option = exercise.options.find((x) => x.id === o.id)!;
				return { text: optionWords(option, o), hazard: false, option: o.id };
			});
	if (exercise.kind !== 'name') return items;
	const lugs = (judged.name?.lugs ?? []).filter((l) => !l.right);
	return [...lugs.map((l) => ({ text: lugWords(l), hazard: false, lug: l.lug })), ...items];
}
