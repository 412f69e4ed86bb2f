/**
 * What is proven of a hunt before it may be taught: what is told is true of the hidden fault and
 * stands in the words of the exercise, the plan keeps to what the learner is offered, and the
 * readings allowed are enough for it.
 */
import {
	agreesWith,
	agreeing,
	answerTo,
	bestHunt,
	bestProbe,
	everyClass,
	isInQuestion,
	isJoinedAt,
	isKeptOff,
	parIn,
	placeOf,
	probeNodes,
	statesOfBench,
	suspectsOf,
	type Dictionary,
	type Reading
} from '../diagnosis';
import { PLUG_KINDS, fits, splitNode, type NodeName, type When } from '../engine';
import { truthOf } from './answers';
import type { FindExercise } from './exercise';
import { hiddenClassOf } from './find';
import type { Block, Inline } from './prose';

const say = (holds: boolean, otherwise: string): string[] => (holds ? [] : [otherwise]);

const inlineText = (inline: readonly Inline[]): string =>
	inline.map((i) => ('text' in i ? i.text : inlineText(i.inline))).join('');
const blockText = (block: Block): string => {
	if (block.kind === 'paragraph') return inlineText(block.inline);
	return block.kind === 'code' ? block.text : block.items.flat().map(blockText).join('\n');
};

/** All that a learner reads before the first reading, bare of its marks. */
export const shownTextOf = ({ title, aim, why, text, cautions }: FindExercise): string =>
	[title, aim, why, ...text.map(blockText), cautions.chassis, cautions.mains].join('\n');

/** How a text may name a contact, besides by its own sign: the trade's word for it. */
const WORDS: Readonly<Record<string, string>> = {
	'1': 'pins? 1',
	'2': 'pins? (1, )?2|hot',
	'3': 'pins? (1, 2, )?3|cold',
	T: 'T|tip',
	R: 'R|ring',
	S: 'S|sleeve'
};
const isWord = (text: string, word: string, flags = ''): boolean =>
	new RegExp(`(^|\\W)(${word})s?(\\W|$)`, flags).test(text);

/** Whether a contact is named, and with several sockets its socket too. Devices go by many words. */
function isNamed({ bench }: FindExercise, text: string, node: NodeName): boolean {
	const [owner, contact] = splitNode(node);
	const socket = bench.sockets.find((s) => s.id === owner);
	if (!socket) return true;
	const names = [socket.id, socket.label].filter((name) => name !== '');
	const isOne = bench.sockets.length === 1;
	return (
		isWord(text, WORDS[contact] ?? contact) &&
		(isOne || names.some((name) => isWord(text, name, 'i')))
	);
}

/** Nodes that every one of the readings touches; of readings that all hold, every node. */
function mustName(readings: readonly Reading[], any: boolean): NodeName[] {
	const nodes = [...new Set(readings.flatMap(({ pair }) => [...pair]))];
	return any ? nodes.filter((n) => readings.every(({ pair }) => pair.includes(n))) : nodes;
}

/** What is told is true, is said, and names what it is about. */
export function symptomProblems(exercise: FindExercise): string[] {
	const { symptom, hidden } = exercise;
	const { told, kindsSay, keepOffSays } = symptom;
	const text = shownTextOf(exercise);
	const truth = truthOf(exercise);
	const isTrue = (reading: Reading) => answerTo(truth, reading) === reading.answer;
	const said = [...told.map(({ says }) => says), kindsSay, keepOffSays].filter((s) => s !== '');
	return [
		...say(text.includes('ne fault'), 'the text does not say that there is one fault'),
		...said.flatMap((s) => say(text.includes(s), `the exercise nowhere says "${s}"`)),
		...told.flatMap((clause) =>
			say(
				agreesWith({ told: [clause] }, isTrue),
				`"${clause.says}" is not what the meter finds with the hidden fault`
			)
		),
		...told.flatMap(({ readings, any }) =>
			mustName(readings, any).flatMap((n) =>
				say(isNamed(exercise, text, n), `nothing shown names ${n}`)
			)
		),
		...say(isInQuestion(symptom, hidden), 'the hidden fault is of no kind that is in question')
	];
}

/** The most readings that the plan may need, whatever the fault. */
export function deepestIn(dictionary: Dictionary, ids: Int32Array, from: When = {}): number {
	const probe = bestProbe(dictionary, ids, from);
	if (!probe) return 0;
	const place = placeOf(dictionary, probe);
	const sides = [true, false].map((joined) =>
		ids.filter((id) => isJoinedAt(dictionary, id, place) === joined)
	);
	return 1 + Math.max(...sides.map((side) => deepestIn(dictionary, side, probe.when)));
}

/** Plug states and nodes that the screen offers, and none that a caution asks to keep off. */
function isOffered({ bench, symptom }: FindExercise, { when, pair }: Reading): boolean {
	const plugs = Object.entries(when).every(([id, plug]) => {
		const { kind } = bench.sockets.find((s) => s.id === id)!;
		return plug === 'none' || PLUG_KINDS.some((p) => p === plug && fits(p, kind));
	});
	const states = statesOfBench(bench).map((s) => JSON.stringify(s));
	const nodes = probeNodes(bench);
	return (
		plugs &&
		states.includes(JSON.stringify(when)) &&
		pair.every((n) => nodes.includes(n)) &&
		!isKeptOff(symptom, pair)
	);
}

/**
 * The readings allowed are enough on average over all that is in question, and for the hidden fault;
 * and the plan never takes a reading that is not offered.
 */
export function planProblems(exercise: FindExercise): string[] {
	const { most, bench, symptom } = exercise;
	const suspects = suspectsOf(bench, symptom);
	const ids = everyClass(suspects);
	const hidden = hiddenClassOf(suspects, exercise);
	if (!ids.includes(hidden)) return ['the hidden fault is not among those in question'];
	const par = parIn(suspects, ids);
	const best = bestHunt(suspects, hidden);
	const left = agreeing(suspects, best);
	return [
		...say(
			par.probes !== null && par.probes <= most,
			`par is ${par.probes}, and ${most} readings are allowed`
		),
		...say(best.length <= most, `the best hunt takes ${best.length} readings of ${most}`),
		...say(left.length === 1, `the best hunt leaves ${left.length} classes`),
		...best
			.filter((r) => !isOffered(exercise, r))
			.map((r) => `the best hunt takes a reading that is not offered: ${JSON.stringify(r)}`)
	];
}
