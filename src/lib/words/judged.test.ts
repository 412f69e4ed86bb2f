/** What the judge found, in words: the headline, and each wrong thing with its reason. */
import { describe, expect, it } from 'vitest';
import { probesOf, type Probe } from '../diagnosis';
import type { Fault } from '../engine';
import {
	judge,
	solutionOf,
	type Answer,
	type Exercise,
	type FindExercise,
	type PredictExercise,
	type WireExercise
} from '../exercises';
import { readExercises } from '../exercises/content.node';
import { itemWords, judgedWords } from './judged';

const exercises = readExercises();
const byId = (id: string) => exercises.find((e) => e.id === id)!;
const predict = byId('predict-ts-in-nine') as PredictExercise;
const wire = byId('wire-one-cable-six') as WireExercise;
const find = byId('find-fault-in-six') as FindExercise;
const pair = (a: string, b: string) => [`A.${a}`, `A.${b}`] as const;
const SOUNDING = [pair('R', 'S'), pair('TN', '2'), pair('RN', '3'), pair('SN', '1')];

const headline = (exercise: Exercise, answer: Answer) =>
	judgedWords(exercise, judge(exercise, answer));
const wrongOnes = (exercise: Exercise, answer: Answer) =>
	judge(exercise, answer)
		.items.filter((i) => !i.right)
		.map((i) => itemWords(exercise, answer, i));

describe('a prediction', () => {
	const answer = (...ticked: (readonly [string, string])[]): Answer => ({
		kind: 'predict',
		ticked
	});
	it('that is right is praised without a number of points', () =>
		expect(headline(predict, answer(...SOUNDING))).toEqual(['All 14 pairs are right.']));
	it('that is wrong has its pairs counted, and each its reason', () => {
		const wrong = answer(...SOUNDING.slice(1), pair('T', '2'));
		expect(headline(predict, wrong)).toEqual([
			'12 of 14 pairs are right; the score is 60 %.',
			'The score is the sounding pairs that you ticked, out of these and your mistakes together.'
		]);
		expect(wrongOnes(predict, wrong)).toEqual([
			'You expected R and S to be silent, and they sound. The sleeve of plug lead touches R; the sleeve of plug lead touches S.',
			'You expected T and pin 2 to sound, and they are silent. T and pin 2 are apart: plug lead lifts T’s spring off TN; closing it would join them.'
		]);
	});
	it('has words for what is right as well', () => {
		const right = judge(predict, answer(...SOUNDING)).items[3]!;
		expect(itemWords(predict, answer(...SOUNDING), right)).toBe(
			'TN and pin 2: they sound, as you said. Jumper w1, 30 mm of 26 AWG, joins pin 2 and TN.'
		);
	});
	it('that cannot be judged says why', () =>
		expect(headline(predict, answer(pair('T', '3')))).toEqual([
			'This cannot be judged: A.T and A.3 were not among the pairs to choose from.'
		]));
});

describe('a wiring', () => {
	const answer = (wires: WireExercise['solution']): Answer => ({ kind: 'wire', wires });
	const [crossed, lug, sleeve] = wire.wrong.map((w) => answer(w.answer.wires));
	it('that is right does all that was asked', () =>
		expect(headline(wire, answer(wire.solution))).toEqual(['The wiring does all that was asked.']));
	it('crossed reverses the line source', () => {
		expect(headline(wire, crossed!)).toEqual(['Not yet: 3 of 17 checks fail; the score is 82 %.']);
		expect(wrongOnes(wire, crossed!).at(-1)).toMatch(
			/^With the TRS plug line-plug in the socket, DESK should hear LINE with its polarity kept, and it hears LINE at −0\.3 dB, polarity reversed \(−\)\. /
		);
	});
	it('with the lug on the shield must not go out', () => {
		expect(headline(wire, lug!)).toEqual([
			'This wiring must not go out: it fails on safety, so the score is 0. 2 of 17 checks fail.'
		]);
		expect(wrongOnes(wire, lug!)[0]).toMatch(
			/^With nothing in the socket, pin 1 and lug G should be apart, and they are joined\. Jumper w4, 40 mm of 26 AWG, joins pin 1 and lug G\. The lug belongs to the panel\./
		);
	});
	it('without the sleeve lacks the shield, and says so', () =>
		expect(wrongOnes(wire, sleeve!)[0]).toBe(
			'With nothing in the socket, pin 1 and S should be joined, and they are apart. Nothing inside the socket joins the three-pin half to the jack half. One jumper for each function: shield to sleeve, hot to tip, cold to ring.'
		));
});

describe('a hunt', () => {
	const at = (a: string, b: string): Probe => ({ when: {}, pair: [a, b] });
	const OWN = [
		at('A.2', 'A.T'),
		at('A.3', 'A.T'),
		at('A.2', 'A.R'),
		at('A.2', 'DESK.hot'),
		at('A.3', 'DESK.hot')
	];
	const answer = (fault: Fault | null, probes = OWN): Answer => ({ kind: 'find', fault, probes });
	const WAS =
		'The fault was that the leads of pin 2 and pin 3 are swapped: each landed on the other.';
	it('that succeeds says how many readings it took, what it was, and that it is proven', () =>
		expect(headline(find, answer(find.hidden))).toEqual([
			'Found. You took 5 of 8 readings.',
			WAS,
			'Your readings rule out everything else that could be wrong with one fault.',
			'For whoever knows where to look, two readings prove it.'
		]));
	it('that was a right guess says that it proves nothing, what was open, and the chance it had', () => {
		const guess = headline(find, answer(find.hidden, []));
		expect(guess[0]).toBe(
			'Not passed: nothing was measured. The name is right, and a right guess proves nothing.'
		);
		expect(guess[2]).toBe(
			'With no reading taken, 32 classes of faults (54 single faults) were still possible; the chance of being right was about 1 %, and that is the score at most.'
		);
		const half = headline(find, answer(find.hidden, OWN.slice(0, 2)));
		expect(half[0]).toBe(
			'Not passed: the name is right, and your readings do not prove it. You took 2 of 8 readings.'
		);
		expect(half[2]).toMatch(/^With the readings taken, 2 classes of faults were still possible;/);
	});
	it('that took too many readings is told kindly', () => {
		const many = [...OWN, ...probesOf(find.bench).slice(0, 10)];
		expect(headline(find, answer(find.hidden, many))[0]).toMatch(
			/^Found, but with \d more than the 8 readings allowed\. Try it again/
		);
	});
	it('that fails names both faults, and the reading that speaks against the named one', () => {
		const crossed: Fault = { kind: 'swap', contacts: ['A.R', 'A.T'] };
		expect(headline(find, answer(crossed))).toEqual([
			'That is not it. You took 5 of 8 readings.',
			'You named another fault: the leads of R and T are swapped.',
			WAS,
			'Your readings left one class of faults, and not the one you named.'
		]);
		expect(headline(find, answer(crossed, [])).at(-1)).toMatch(/the one you named among them\.$/);
		expect(wrongOnes(find, answer(crossed))).toEqual([
			'With the plugs as they stand, pin 2 and hot of DESK are silent; with the fault you named they would sound.'
		]);
	});
	it('that finds nothing wrong is shown a reading', () =>
		expect(wrongOnes(find, answer(null))).toEqual([
			'With the plugs as they stand, pin 2 and T are silent; if nothing were wrong they would sound.'
		]));
});

describe('an order', () => {
	const orders = exercises.filter((e) => e.kind === 'order');
	it('is never praised or blamed as a wiring', () => {
		const said = orders.flatMap((e) =>
			[solutionOf(e), ...e.wrong.map((w) => w.answer)].flatMap((answer) => headline(e, answer))
		);
		expect(said.length).toBeGreaterThan(orders.length * 3);
		expect(said.filter((words) => /wiring/i.test(words))).toEqual([]);
	});
});
