/** What a need asks for, and by what a variant fails it: a clause each. */
import type { Need, NeedFailure, Option, OptionJudged } from '../exercises';
import { kindWords } from './kinds';
import { andOf, contactText, sentence } from './names';

const plugName = (plug: Parameters<typeof kindWords>[0]): string => {
	const { name } = kindWords(plug);
	return `${/^[aeiou]/i.test(name) ? 'an' : 'a'} ${name}`;
};
const ENDS = { cup: 'solder cups', board: 'board pins', crimp: 'crimps' } as const;
const orOf = (words: readonly string[]): string => andOf(words).replace(/ and /, ' or ');
const pairsText = (pairs: readonly (readonly [string, string])[]): string =>
	andOf(pairs.map(([a, b]) => `${contactText(a)} with ${contactText(b)}`));

function rangeText(least: number, most: number): string {
	if (least === most) return `${least} contacts`;
	if (most >= 99) return `${least} contacts or more`;
	return least === 0 ? `${most} contacts at most` : `${least} to ${most} contacts`;
}

function behaviourText({ with: state, joined, apart }: Extract<Need, { need: 'behaves' }>): string {
	const when = state === 'none' ? 'with no plug in' : `with ${plugName(state)} in`;
	const asked = [
		...(joined.length ? [`joins ${pairsText(joined)}`] : []),
		...(apart.length ? [`keeps apart ${pairsText(apart)}`] : [])
	];
	return `${when}, ${andOf(asked)}`;
}

/** What is asked for, a clause without a subject: `takes a TRS plug`. */
export function needWords(need: Need): string {
	switch (need.need) {
		case 'contacts':
			return `has ${rangeText(need.least, need.most)}, chassis lugs not counted`;
		case 'takes':
			return `takes ${plugName(need.plug)}`;
		case 'meets':
			return `gives every part of ${plugName(need.plug)} a contact of its own`;
		case 'breaks':
			return `has break contacts on ${andOf(need.on.map(contactText))}`;
		case 'changeover':
			return 'has a changeover that touches no signal';
		case 'behaves':
			return behaviourText(need);
		case 'one-at-a-time':
			return `takes ${orOf(need.plugs.map(plugName))}, never both together`;
		case 'both-at-once':
			return `takes ${andOf(need.plugs.map(plugName))} together`;
		case 'openings':
			return need.most === 1 ? 'needs one opening' : `needs ${need.most} openings at most`;
		case 'termination':
			return `ends in ${orOf(need.among.map((t) => ENDS[t]))}`;
		case 'latch':
			return need.is ? 'latches the circular plug' : 'has no latch';
		case 'gender':
			return need.is === 'female' ? 'is an input, female pins' : 'is an output, male pins';
		case 'sleeve-off-panel':
			return 'keeps the sleeve off the panel';
	}
}

function behavedWords({ missing, pair, plug }: NeedFailure): string {
	if (plug) return `${plugName(plug)} does not go in`;
	if (missing) return `it has no contact ${missing}`;
	const [a, b] = pair!;
	return `${contactText(a)} and ${contactText(b)} do otherwise`;
}

/** By what a variant fails a need: `it has no break contact on R`. */
export function failureWords(failure: NeedFailure, option: Option): string {
	const { need, count, missing, plug } = failure;
	switch (need.need) {
		case 'contacts':
			return `it has ${count} contacts, and ${rangeText(need.least, need.most)} are wanted`;
		case 'takes':
			return `${plugName(need.plug)} does not go in`;
		case 'meets':
			return plug
				? `${plugName(plug)} does not go in`
				: `the ${missing} of ${plugName(need.plug)} has no contact of its own`;
		case 'breaks':
			return `it has no break contact on ${contactText(missing!)}`;
		case 'changeover':
			return 'it has no changeover';
		case 'behaves':
			return behavedWords(failure);
		case 'one-at-a-time':
			return plug ? `${plugName(plug)} does not go in` : 'it takes both plugs together';
		case 'both-at-once':
			return plug ? `${plugName(plug)} does not go in` : 'it takes one plug at a time';
		case 'openings':
			return `it needs ${count} openings`;
		case 'termination':
			return `its wires end in ${ENDS[option.termination]}, and ${orOf(need.among.map((t) => ENDS[t]))} are wanted`;
		case 'latch':
			return need.is ? 'it has no latch' : 'it has a latch';
		case 'gender':
			return need.is === 'female' ? 'it has no female pins' : 'it has no male pins';
		case 'sleeve-off-panel':
			return 'its sleeve is joined to the panel';
	}
}

/** One sentence on a variant: what was said of it, whether that is right, and what it fails. */
export function optionWords(option: Option, judged: OptionJudged): string {
	const fails = judged.fails.map((f) => failureWords(f, option)).join('; ');
	if (judged.fits)
		return sentence(
			`${option.id} meets every need${judged.chosen ? ', as you said' : ', and you left it out'}`
		);
	return sentence(
		`${option.id} ${judged.chosen ? 'does not meet the need' : 'is rightly left out'}: ${fails}`
	);
}
