/**
 * Everything that is wrong with an answer, one line each, for any kind of exercise, with what a screen
 * needs to show it: the reading, the step, the variant or the lug.
 */
import type { Answer, Exercise, Item, Judged } from '../exercises';
import { itemWords } from './judged';
import { sentence } from './names';
import { lugWords } from './naming';
import { optionWords } from './needs';
import { numberWords } from './numbers';
import { brokenRules, consequenceWords, missingWords, ruleWords, stepText } from './procedure';

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
		...order.missing.map((id) => plain(missingWords(exercise, id, order))),
		...order.spare.map((id) => plain(`“${stepText(exercise, id)}” has no place in a safe test.`)),
		...brokenRules(order).map((rule) => plain(ruleWords(exercise, rule)))
	];
}

type Choice = Extract<Exercise, { kind: 'choose' }>;

const optionLines = ({ options }: Choice, { choose }: Judged): Line[] =>
	(choose?.options ?? []).map((o) => ({
		text: optionWords(
			options.find((x) => x.id === o.id)!,
			o
		),
		hazard: false,
		option: o.id
	}));

/** Without the answer: what is wrong with those that were chosen, and how many are still left out. */
function choiceLines(exercise: Choice, judged: Judged, told: boolean): Line[] {
	const options = judged.choose?.options ?? [];
	const wrong = optionLines(exercise, judged).filter((_, i) => !options[i]!.right);
	if (told) return wrong;
	const left = options.filter((o) => !o.right && !o.chosen).length;
	const more = `${numberWords(left)} ${left === 1 ? 'variant that meets' : 'variants that meet'} every need ${left === 1 ? 'is' : 'are'} still left out`;
	return [
		...wrong.filter((line) => options.some((o) => o.id === line.option && o.chosen)),
		...(left > 0 ? [{ text: sentence(more), hazard: false }] : [])
	];
}

/** After success: what each variant lacks that was rightly left out; [] for every other kind. */
export const leftOutLines = (exercise: Exercise, judged: Judged): string[] =>
	exercise.kind === 'choose' && judged.passed
		? optionLines(exercise, judged).flatMap(({ text }, i) =>
				judged.choose!.options[i]!.fits ? [] : [text]
			)
		: [];

/** Whether `wrongLines` keeps something back where the answer is not to be told. */
export const keepsBack = ({ name, choose, passed }: Judged): boolean =>
	!passed && Boolean(name?.lugs.some((l) => !l.right) || choose?.options.some((o) => !o.right));

/**
 * What is wrong, most telling first; [] for an answer that passes. `told` false: it keeps back what
 * the lugs are and which variants were left out, until the learner asks.
 */
export function wrongLines(
	exercise: Exercise,
	answer: Answer,
	judged: Judged,
	told = true
): Line[] {
	const items = judged.items
		.filter((i) => !i.right)
		.map((item): Line => ({ text: itemWords(exercise, answer, item), hazard: item.hazard, item }));
	if (exercise.kind === 'order') return orderLines(exercise, judged);
	if (exercise.kind === 'choose') return choiceLines(exercise, judged, told);
	if (exercise.kind !== 'name') return items;
	const lugs = (judged.name?.lugs ?? []).filter((l) => !l.right);
	return [...lugs.map((l) => ({ text: lugWords(l, told), hazard: false, lug: l.lug })), ...items];
}
