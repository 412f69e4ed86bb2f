/**
 * What the judge found, in words: a headline, and a sentence or two on each thing that was judged. What
 * only one kind of exercise has stands in `needs.ts`, `naming.ts` and `procedure.ts`.
 */
import {
	BEEPS_UNDER,
	hearing,
	isJoined,
	readMeter,
	showOhms,
	type Bench,
	type Fault
} from '../engine';
import {
	faultKey,
	replayBench,
	type Answer,
	type Exercise,
	type FindExercise,
	type Item,
	type Judged,
	type Mending,
	type Outcome,
	type Sureness
} from '../exercises';
import { bothText, earShould } from './checks';
import { classesWithFaults, shareWords } from './classes';
import { faultName, faultWords } from './faults';
import { levelWords } from './heard';
import { andOf, sentence, whenWords } from './names';
import { nameItemWords, namingHeadline } from './naming';
import { numberWords } from './numbers';
import { whyWords } from './path';
import { procedureHeadline } from './procedure';

/** `sound`, `be silent`: what a pair should do. */
const SHOULD: Readonly<Partial<Record<Outcome, string>>> = {
	sounds: 'sound',
	silent: 'be silent',
	joined: 'be joined',
	apart: 'be apart'
};
const ARE: Readonly<Partial<Record<Outcome, string>>> = {
	sounds: 'they sound',
	silent: 'they are silent',
	joined: 'they are joined',
	apart: 'they are apart'
};

/** What an input should hear and what it does hear; null for an item about two nodes. */
function earWords(bench: Bench, { pair: [input, source], wanted }: Item): string | null {
	const should = earShould(wanted, source);
	if (should === null) return null;
	const heard = hearing(bench, input, source);
	const does = heard ? `it hears ${source} ${levelWords(heard)}` : `it hears nothing of ${source}`;
	return `${input} should ${should}, and ${does}`;
}

/** Why a pair that is joined does not sound all the same: too many ohms, or a live circuit. */
function silentWords(bench: Bench, pair: readonly [string, string]): string {
	const { warning } = readMeter(bench, 'continuity', ...pair);
	if (warning) return ` ${sentence(`the meter gives no reading: ${warning}`)}`;
	const { ohms } = readMeter(bench, 'ohms', ...pair);
	return ohms !== null && isJoined(bench, ...pair)
		? ` That is ${showOhms(ohms)} with the leads, and the meter sounds under ${BEEPS_UNDER} Ω.`
		: '';
}

/** `state`: said first where the exercise asks in several states. */
function predictWords(bench: Bench, item: Item, state: string): string {
	const names = bothText(bench, item.pair);
	const silent = item.wanted === 'silent' ? silentWords(bench, item.pair) : '';
	const why = `${whyWords(bench, ...item.pair)}${silent}`;
	const unsure = item.sure === false ? ', and you were not sure' : '';
	const said = item.right
		? `${names}: ${ARE[item.wanted]}, as you said${unsure}`
		: `you expected ${names} to ${SHOULD[item.found]}${unsure}, and ${ARE[item.wanted]}`;
	return `${sentence(state ? `${state}: ${said}` : said)} ${why}`;
}

function wireWords(bench: Bench, item: Item): string {
	const when = whenWords(bench, item.when);
	const ear = earWords(bench, item);
	if (ear !== null) return sentence(`${when}, ${ear}`);
	const should = `${bothText(bench, item.pair)} should ${SHOULD[item.wanted]}`;
	const clause = `${when}, ${should}, and ${item.right ? 'so they are' : ARE[item.found]}`;
	return item.right ? sentence(clause) : `${sentence(clause)} ${whyWords(bench, ...item.pair)}`;
}

function huntWords(exercise: FindExercise, answer: Answer, item: Item): string {
	const { bench } = exercise;
	const named = answer.kind === 'find' ? answer.fault : null;
	const pair = `${whenWords(bench, item.when)}, ${bothText(bench, item.pair)}`;
	const says = item.wanted === 'sounds' ? 'sound' : 'are silent';
	const would = item.wanted === 'sounds' ? 'be silent' : 'sound';
	if (item.right) return sentence(`${pair} ${says}; on a sound bench they would ${would}`);
	const theirs = named ? 'with the fault you named' : 'if nothing were wrong';
	return sentence(`${pair} ${says}; ${theirs} they would ${would}`);
}

/** One judged thing with its reason, and, where it is wrong, why it was asked for. */
export function itemWords(exercise: Exercise, answer: Answer, item: Item): string {
	if (exercise.kind === 'find') return huntWords(exercise, answer, item);
	if (exercise.kind === 'name') return nameItemWords(exercise, answer, item);
	const bench = replayBench(exercise, answer, item);
	if (exercise.kind === 'predict') {
		const isOne = exercise.questions.length === 1;
		return predictWords(bench, item, isOne ? '' : whenWords(exercise.bench, item.when));
	}
	const words = wireWords(bench, item);
	return item.right || item.why === '' ? words : `${words} ${item.why}`;
}

const percent = (score: number): string => `${Math.round(score * 100)} %`;

/** How knowing and being sure went together; nothing to say where the learner was sure of all, rightly. */
function sureWords({ rightUnsure, wrongSure, wrongUnsure }: Sureness): string[] {
	if (rightUnsure + wrongUnsure === 0) return [];
	return [
		...(rightUnsure > 0
			? [
					`You were right and not sure of ${numberWords(rightUnsure)}: you know more than you think.`
				]
			: []),
		...(wrongSure > 0
			? [`You were wrong and sure of ${numberWords(wrongSure)}: look at these first.`]
			: [])
	];
}

function predictHeadline({ items, passed, score, predict }: Judged): string[] {
	const right = items.filter((i) => i.right).length;
	const headline = passed
		? `All ${items.length} pairs are right.`
		: `${right} of ${items.length} pairs are right; the score is ${percent(score)}.`;
	const count = passed
		? []
		: ['The score is the sounding pairs that you ticked, out of these and your mistakes together.'];
	return [headline, ...count, ...(predict ? sureWords(predict) : [])];
}

function wireHeadline({ items, passed, score }: Judged): string[] {
	if (passed) return ['The wiring does all that was asked.'];
	const wrong = items.filter((i) => !i.right);
	const checks = `${wrong.length} of ${items.length} checks ${wrong.length === 1 ? 'fails' : 'fail'}`;
	return wrong.some((i) => i.hazard)
		? [`This wiring must not go out: it fails on safety, so the score is 0. ${checks}.`]
		: [`Not yet: ${checks}; the score is ${percent(score)}.`];
}

const changesText = (n: number): string => `${numberWords(n)} ${n === 1 ? 'change' : 'changes'}`;

function mendHeadline(judged: Judged, { changes, fewest, allow }: Mending): string[] {
	if (judged.items.some((i) => !i.right)) return wireHeadline(judged);
	const took = `It works, with ${changesText(changes)}`;
	if (fewest === null) return [`${took}.`];
	if (changes <= fewest) return [`${took}, and fewer would not do.`];
	const spare = `${took}; ${changesText(fewest)} would do`;
	if (changes <= fewest + allow) return [`${spare}.`];
	return [
		`${spare}, so the score is ${percent(judged.score)}. Every joint that is opened can fail.`
	];
}

function choiceHeadline({ passed, score, choose }: Judged): string[] {
	const options = choose?.options ?? [];
	const right = options.filter((o) => o.right).length;
	const fit = options.filter((o) => o.fits).map((o) => o.id);
	return passed
		? [`${andOf(fit)} ${fit.length === 1 ? 'meets' : 'meet'} every need, and nothing else does.`]
		: [
				`${right} of ${options.length} variants are judged rightly; the score is ${percent(score)}.`,
				'The score is the variants that you rightly chose, out of these and your mistakes together.'
			];
}

type Hunt = NonNullable<Judged['find']>;
const readings = (n: number): string => `${n} ${n === 1 ? 'reading' : 'readings'}`;

/** What the readings left open, and the chance that a name had; or that they leave nothing open. */
function proofWords({ found, proven, fitting, classes, chance, named, used }: Hunt): string {
	if (proven && found)
		return 'Your readings rule out everything else that could be wrong with one fault.';
	const read = used === 0 ? 'With no reading taken' : 'With the readings taken';
	const open =
		classes === 1
			? 'Your readings left one class of faults'
			: `${read}, ${classesWithFaults(classes, fitting.length)} were still possible`;
	if (found)
		return `${open}; the chance of being right was about ${shareWords(chance)}, and that is the score at most.`;
	if (!named) return sentence(open);
	const isOpen = fitting.some((f) => faultKey(f) === faultKey(named));
	return isOpen ? `${open}, the one you named among them.` : `${open}, and not the one you named.`;
}

/** What was named instead; what it would do is said where it is chosen, and is no reproach here. */
const saidWords = (bench: Bench, named: Fault | null): string =>
	named ? `you named another fault: ${faultName(bench, named)}` : 'you said that nothing is wrong';

/** Found is what readings prove; a right name without them is said to be a guess. */
function foundHeadline({ found, proven, used, most }: Hunt, took: string): string {
	if (!found) return `That is not it. ${took}`;
	if (!proven && used === 0)
		return 'Not passed: nothing was measured. The name is right, and a right guess proves nothing.';
	if (!proven) return `Not passed: the name is right, and your readings do not prove it. ${took}`;
	return used <= most
		? `Found. ${took}`
		: `Found, but with ${used - most} more than the ${readings(most)} allowed. Try it again and let each answer choose the next.`;
}

function huntHeadline(bench: Bench, find: Hunt): string[] {
	const { used, most, found, hidden, named, alike, fewest, proven } = find;
	const was = sentence(`the fault was that ${faultWords(bench, hidden)}`);
	const took = `You took ${used} of ${readings(most)}.`;
	const others = alike.length - 1;
	const same =
		others > 0
			? `${others} more in the list ${others === 1 ? 'is' : 'are'} of its class: no probe can tell them apart.`
			: '';
	const headline = foundHeadline(find, took);
	const said = found ? '' : sentence(saidWords(bench, named));
	const bound =
		found && fewest !== null && (used > fewest || !proven)
			? `For whoever knows where to look, ${numberWords(fewest)} ${fewest === 1 ? 'reading proves' : 'readings prove'} it.`
			: '';
	return [headline, said, was, same, proofWords(find), bound].filter((w) => w !== '');
}

/** The result in a few sentences, the headline first. `told`: whether the answer may be told. */
export function judgedWords(exercise: Exercise, judged: Judged, told = true): string[] {
	if (judged.refused !== null) return [sentence(`this cannot be judged: ${judged.refused}`)];
	if (judged.find) return huntHeadline(exercise.bench, judged.find);
	if (judged.putRight) return mendHeadline(judged, judged.putRight);
	if (judged.choose) return choiceHeadline(judged);
	if (judged.name && exercise.kind === 'name') return namingHeadline(exercise, judged.name, told);
	if (judged.order) return procedureHeadline(judged, judged.order);
	return judged.kind === 'predict' ? predictHeadline(judged) : wireHeadline(judged);
}
