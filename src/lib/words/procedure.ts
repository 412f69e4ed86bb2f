/** What an order of steps would have done, in words. */
import { showVolts } from '../engine';
import type {
	Consequence,
	ConsequenceKind,
	Judged,
	OrderExercise,
	Procedure,
	Rule,
	Situation
} from '../exercises';
import { andOf, sentence } from './names';
import { numberWords } from './numbers';

const WORDS: Readonly<Record<ConsequenceKind, string>> = {
	'live-probe':
		'the meter stands on continuity across a live line: it gives no reading and warns, and one that cannot warn may be damaged',
	'mains-probe': 'the line is probed while the equipment on it is still plugged in',
	'not-proven-dead': 'nobody has shown with the meter on volts that the line is dead',
	'unproven-meter':
		'the meter is not proven just before this test: a meter that is flat shows every line as dead',
	'not-proven-again':
		'the meter was not proven again after the test on volts, so it may have died in between',
	'still-live': 'the line is not dead yet',
	'opened-powered': 'the box is opened while it is plugged in',
	'soldered-live': 'the iron meets a live line',
	'plug-meets-phantom':
		'a plug moves in the jack of a line that carries phantom voltage: it joins on its way what should stay apart, and what hangs on it can be damaged',
	thump: 'the channel is open, so a thump goes to the loudspeakers',
	'swapped-blind': 'a part is changed before a single reading: nothing is proven by it',
	'lost-earth':
		'protective earth is lost: the case can become live, and the first to touch it finds out. This is never done'
};

/** The text of a step, to stand in quotation marks; its id where there is none. */
export const stepText = (exercise: OrderExercise, id: string): string =>
	(exercise.steps.find((s) => s.id === id)?.text ?? id).replace(/\.$/, '');

const cameClause = (c: Consequence): string =>
	`${WORDS[c.kind]}${c.volts === undefined ? '' : `; ${showVolts(c.volts)} stands there`}`;

/** What came of a step, alone: `The iron meets a live line; 48.00 V stands there.` */
export const cameWords = (c: Consequence): string => sentence(cameClause(c));

/** One consequence, with the step that brings it: `Step 4, “…”: …; 48.00 V stands there.` */
export const consequenceWords = (exercise: OrderExercise, c: Consequence): string =>
	sentence(`step ${c.at + 1}, “${stepText(exercise, c.step)}”: ${cameClause(c)}`);

/** A broken rule and its reason. */
export const ruleWords = (exercise: OrderExercise, { first, then, why }: Rule): string =>
	`“${stepText(exercise, first)}” must come before “${stepText(exercise, then)}”. ${why}`;

/** Rules that are broken by the order itself; one whose first step is left out is told with that step. */
export const brokenRules = ({ rules, missing }: Procedure): Rule[] =>
	rules.flatMap(({ rule, kept }) => (kept || missing.includes(rule.first) ? [] : [rule]));

/** A needed step that is left out, with the reason of the first rule that wanted it. */
export function missingWords(exercise: OrderExercise, id: string, { rules }: Procedure): string {
	const wanted = rules.find(({ rule, kept }) => !kept && rule.first === id)?.rule;
	return wanted
		? `“${stepText(exercise, id)}” is left out, and it must come before “${stepText(exercise, wanted.then)}”. ${wanted.why}`
		: `“${stepText(exercise, id)}” is left out, and it is needed.`;
}

/** Where things stand before a step: mains, line, meter. */
export function situationWords(s: Situation): string {
	const meter = s.provenDead
		? 'the line is proven dead'
		: s.foundDead
			? 'the line was found dead, and the meter is not proven again yet'
			: s.proven
				? 'the meter is proven'
				: 'the meter is not proven';
	return sentence(
		[
			s.mains ? 'the equipment is plugged in' : 'the equipment is unplugged',
			s.phantom ? 'phantom power is switched on' : 'phantom power is switched off',
			s.charged ? 'the line carries voltage' : 'the line carries none',
			s.muted ? 'the channel is muted' : 'the channel is open',
			meter
		].join('; ')
	);
}

/** One thing that stands one way or another: a name, how it stands, and whether that can do harm. */
export interface Lamp {
	readonly name: string;
	readonly state: string;
	readonly warns: boolean;
}

/** The same, thing by thing, for a row of lamps; always the same five, in this order. */
export function lampsOf(s: Situation): Lamp[] {
	const dead = s.provenDead
		? 'proven dead'
		: s.foundDead
			? 'found dead, meter not proven again'
			: 'not proven dead';
	return [
		{ name: 'Mains plug', state: s.mains ? 'in' : 'pulled', warns: s.mains },
		{ name: 'Phantom switch', state: s.phantom ? 'on' : 'off', warns: s.phantom },
		{
			name: 'Line',
			state: `${s.charged ? 'carries voltage' : 'carries none'}; ${dead}`,
			warns: s.charged
		},
		{ name: 'Channel', state: s.muted ? 'muted' : 'open', warns: !s.muted && s.mains },
		{ name: 'Meter', state: s.proven ? 'proven' : 'not proven', warns: false }
	];
}

const percent = (score: number): string => `${Math.round(score * 100)} %`;

/** The result of an order: whether it is safe, and what is amiss in numbers. */
export function procedureHeadline({ passed, unsafe, score }: Judged, p: Procedure): string[] {
	if (passed) return ['This order is safe, and it proves something.'];
	const broken = brokenRules(p).length;
	const amiss = [
		...(broken > 0
			? [`${numberWords(broken)} ${broken === 1 ? 'rule is' : 'rules are'} broken`]
			: []),
		...(p.missing.length > 0
			? [
					`${numberWords(p.missing.length)} needed ${p.missing.length === 1 ? 'step is' : 'steps are'} left out`
				]
			: []),
		...(p.spare.length > 0
			? [
					`${numberWords(p.spare.length)} ${p.spare.length === 1 ? 'step has' : 'steps have'} no place in it`
				]
			: [])
	];
	const counts = amiss.length > 0 ? [sentence(andOf(amiss))] : [];
	return unsafe
		? [
				'Nobody may work like this: somebody or something can come to harm, so the score is 0.',
				...counts
			]
		: [
				`Not yet; the score is ${percent(score)}.`,
				...counts,
				'The score counts needed steps that are there and rules that are kept, less what has no place; short of right it is 90 % at most.'
			];
}
