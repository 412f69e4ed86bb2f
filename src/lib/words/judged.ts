/** What the judge found, in words: a headline, and a sentence or two on each thing that was judged. */
import { hearing, type Bench } from '../engine';
import {
	replayBench,
	type Answer,
	type Exercise,
	type FindExercise,
	type Item,
	type Judged,
	type Outcome
} from '../exercises';
import { faultWords } from './faults';
import { levelWords } from './heard';
import { sentence, textName, whenWords } from './names';
import { whyWords } from './path';

const pairText = (bench: Bench, [a, b]: readonly [string, string]): string =>
	`${textName(bench, a)} and ${textName(bench, b)}`;

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

/** What an input should do with a source. */
function earShould(wanted: Outcome, source: string): string | null {
	if (wanted === 'hears') return `hear ${source}`;
	if (wanted === 'deaf') return `hear nothing of ${source}`;
	if (wanted === 'polarity +') return `hear ${source} with its polarity kept`;
	return wanted === 'polarity -' ? `hear ${source} with its polarity reversed` : null;
}

/** What an input should hear and what it does hear; null for an item about two nodes. */
function earWords(bench: Bench, { pair: [input, source], wanted }: Item): string | null {
	const should = earShould(wanted, source);
	if (should === null) return null;
	const heard = hearing(bench, input, source);
	const does = heard ? `it hears ${source} ${levelWords(heard)}` : `it hears nothing of ${source}`;
	return `${input} should ${should}, and ${does}`;
}

function predictWords(bench: Bench, item: Item): string {
	const names = pairText(bench, item.pair);
	const why = whyWords(bench, ...item.pair);
	return item.right
		? `${sentence(`${names}: ${ARE[item.wanted]}, as you said`)} ${why}`
		: `${sentence(`you expected ${names} to ${SHOULD[item.found]}, and ${ARE[item.wanted]}`)} ${why}`;
}

function wireWords(bench: Bench, item: Item): string {
	const when = whenWords(bench, item.when);
	const ear = earWords(bench, item);
	if (ear !== null) return sentence(`${when}, ${ear}`);
	const should = `${pairText(bench, item.pair)} should ${SHOULD[item.wanted]}`;
	const clause = `${when}, ${should}, and ${item.right ? 'so they are' : ARE[item.found]}`;
	return item.right ? sentence(clause) : `${sentence(clause)} ${whyWords(bench, ...item.pair)}`;
}

function huntWords(exercise: FindExercise, answer: Answer, item: Item): string {
	const { bench } = exercise;
	const named = answer.kind === 'find' ? answer.fault : null;
	const pair = `${whenWords(bench, item.when)}, ${pairText(bench, item.pair)}`;
	const says = item.wanted === 'sounds' ? 'sound' : 'are silent';
	const would = item.wanted === 'sounds' ? 'be silent' : 'sound';
	if (item.right) return sentence(`${pair} ${says}; on a sound bench they would ${would}`);
	const theirs = named ? 'with the fault you named' : 'if nothing were wrong';
	return sentence(`${pair} ${says}; ${theirs} they would ${would}`);
}

/** One judged thing with its reason, and, where it is wrong, why it was asked for. */
export function itemWords(exercise: Exercise, answer: Answer, item: Item): string {
	if (exercise.kind === 'find') return huntWords(exercise, answer, item);
	const bench = replayBench(exercise, answer, item);
	if (exercise.kind === 'predict') return predictWords(bench, item);
	const words = wireWords(bench, item);
	return item.right || item.why === '' ? words : `${words} ${item.why}`;
}

const percent = (score: number): string => `${Math.round(score * 100)} %`;

function predictHeadline({ items, passed, score }: Judged): string[] {
	const right = items.filter((i) => i.right).length;
	return passed
		? [`All ${items.length} pairs are right.`]
		: [`${right} of ${items.length} pairs are right; the score is ${percent(score)}.`];
}

function wireHeadline({ items, passed, score }: Judged): string[] {
	if (passed) return ['The wiring does all that was asked.'];
	const wrong = items.filter((i) => !i.right);
	const checks = `${wrong.length} of ${items.length} checks ${wrong.length === 1 ? 'fails' : 'fail'}`;
	return wrong.some((i) => i.hazard)
		? [`This wiring must not go out: it fails on safety, so the score is 0. ${checks}.`]
		: [`Not yet: ${checks}; the score is ${percent(score)}.`];
}

type Hunt = NonNullable<Judged['find']>;
const readings = (n: number): string => `${n} ${n === 1 ? 'reading' : 'readings'}`;

/** Whether the readings alone make the case, or luck had a part in it. */
function proofWords({ found, proven, fitting, alike, soundFits }: Hunt): string {
	if (!found) return '';
	if (proven) return 'Your readings rule out everything else that could be wrong with one fault.';
	const others = fitting.length - alike.length + (soundFits ? 1 : 0);
	return others === 1
		? 'Your readings would fit one other explanation as well; one more would have settled it.'
		: `Your readings would fit ${others} other explanations as well; a few more would have settled it.`;
}

function huntHeadline(bench: Bench, find: Hunt): string[] {
	const { used, most, found, hidden, named, alike } = find;
	const was = sentence(`the fault was that ${faultWords(bench, hidden)}`);
	const took = `You took ${used} of ${readings(most)}.`;
	const others = alike.length - 1;
	const same = others > 0 ? `${others} more in the list cannot be told from it.` : '';
	const headline = !found
		? `That is not it. ${took}`
		: used <= most
			? `Found. ${took}`
			: `Found, but with ${used - most} more than the ${readings(most)} allowed. Try it again and let each answer choose the next.`;
	const said = found ? '' : sentence(`you said that ${faultWords(bench, named)}`);
	return [headline, said, was, same, proofWords(find)].filter((w) => w !== '');
}

/** The result in a few sentences, the headline first. */
export function judgedWords(exercise: Exercise, judged: Judged): string[] {
	if (judged.refused !== null) return [sentence(`this cannot be judged: ${judged.refused}`)];
	if (judged.find) return huntHeadline(exercise.bench, judged.find);
	return judged.kind === 'predict' ? predictHeadline(judged) : wireHeadline(judged);
}
