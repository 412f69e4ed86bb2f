/** Words for the kinds of exercise that are more than pairs: what is wrong, line by line, and computed hints. */
import { describe, expect, it } from 'vitest';
import {
	hintFor,
	judge,
	solutionOf,
	spareOf,
	type Answer,
	type Exercise,
	type ExerciseOf,
	type ExerciseKind
} from '../exercises';
import { fittingOptions } from '../exercises/choose';
import { readExercises } from '../exercises/content.node';
import { hintWords, spareWords } from './hints';
import { judgedWords } from './judged';
import { keepsBack, leftOutLines, wrongLines } from './lines';
import { needWords } from './needs';
import { situationWords } from './procedure';

const all = readExercises();
const byId = <K extends ExerciseKind>(_: K, id: string) =>
	all.find((e) => e.id === id) as ExerciseOf<K>;
const mend = byId('put-right', 'put-right-sleeve-cup');
const choose = byId('choose', 'choose-one-opening');
const name = byId('name', 'name-lugs-of-five');
const order = byId('order', 'order-test-the-line');
const headline = (exercise: Exercise, answer: Answer) =>
	judgedWords(exercise, judge(exercise, answer));
const lines = (exercise: Exercise, answer: Answer) =>
	wrongLines(exercise, answer, judge(exercise, answer)).map((l) => l.text);

describe('whatever is right', () => {
	it.each(all.map((e) => [e.id, e] as const))('leaves nothing to say of %s', (_, exercise) => {
		const answer = solutionOf(exercise);
		expect(lines(exercise, answer).filter(() => exercise.kind !== 'find')).toEqual([]);
		const [first] = headline(exercise, answer);
		expect(first).toMatch(
			/^(All |The wiring does|It works|Found|This order is safe|.* meets? every)/
		);
	});
	it.each(all.map((e) => [e.id, e] as const))(
		'and wrong answers to %s get sentences',
		(_, exercise) => {
			for (const { answer } of exercise.wrong) {
				const said = [...headline(exercise, answer), ...lines(exercise, answer)];
				for (const text of said) expect(text).toMatch(/^[A-Z0-9“].*[.)…]$/);
				expect(said.join(' ')).not.toMatch(/undefined|null|NaN|\[object|!/);
			}
		}
	);
});

describe('a mending', () => {
	const wires = (i: number) => mend.wrong[i]!.answer;
	it('that is as short as can be is told so', () =>
		expect(headline(mend, solutionOf(mend))).toEqual([
			'It works, with three changes, and fewer would not do.'
		]));
	it('with a change to spare is told what it costs', () =>
		expect(headline(mend, wires(2))).toEqual([
			'It works, with four changes; three changes would do, so the score is 75 %. Every joint that is opened can fail.'
		]));
	it('that is unsafe is told that first', () =>
		expect(headline(mend, wires(0))[0]).toMatch(/^This wiring must not go out/));
});

describe('a computed hint', () => {
	const start = mend.bench.wires;
	const hint = (step: 1 | 2 | 3) => hintWords(mend.bench, hintFor(mend, start), step);
	it('says how many, then where, then which', () => {
		expect(hint(1)).toEqual([
			'Three changes do it, and no fewer. A jumper out is one change, a jumper in is one.'
		]);
		expect(hint(2).slice(1)).toEqual(['Look at pin 3, S, pin 1, lug G and R.']);
		expect([...hint(3).slice(2)].sort()).toEqual([
			'Put in a jumper from pin 3 to R.',
			'Take out jumper w2, pin 3 to S.',
			'Take out jumper w4, pin 1 to lug G.'
		]);
	});
	it('on a right wiring says that nothing needs to change', () =>
		expect(hintWords(mend.bench, hintFor(mend, mend.solution), 3)).toEqual([
			'Nothing needs to change: this wiring does all that is asked.'
		]));
	it('says what cannot hold together, where nothing will do', () => {
		const [first] = mend.require;
		const require = [
			{
				...first!,
				joined: [
					['A.1', 'A.S'],
					['A.2', 'A.S']
				],
				apart: [['A.1', 'A.2']]
			}
		];
		expect(hintWords(mend.bench, hintFor({ ...mend, require }, []), 1)).toEqual([
			'No wiring does all of this at once:',
			'With nothing in the socket, pin 1 and S must be joined.',
			'With nothing in the socket, pin 2 and S must be joined.',
			'With nothing in the socket, pin 1 and pin 2 must be apart.'
		]);
	});
	it('admits that it did not get to the end', () =>
		expect(hintWords(mend.bench, { kind: 'gave-up', atLeast: 4, nodes: 9 }, 3)).toEqual([
			'It takes four changes or more; this bench is too large to say how many.'
		]));
	it('after success says how few wires would do', () => {
		const spare = [...mend.solution, { ...mend.solution[0]!, id: 'spare' }];
		expect(spareWords(spareOf(mend, spare)!)).toBe('Your four jumpers work; three would do.');
		expect(spareOf(mend, mend.solution)).toBeNull();
	});
});

describe('a choice', () => {
	it('says what each variant fails that was chosen, and what was left out', () =>
		expect(lines(choose, { kind: 'choose', chosen: ['B', 'D', 'E', 'A'] })).toEqual([
			'B does not meet the need: it has no break contact on T.',
			'D does not meet the need: it needs 2 openings; it takes both plugs together.',
			'E does not meet the need: the ring of a TRS plug has no contact of its own; it has no break contact on T; it has no latch.',
			'F meets every need, and you left it out.'
		]));
	it('keeps back which one was left out until the answer is asked for', () => {
		const answer: Answer = { kind: 'choose', chosen: ['B', 'A'] };
		const judged = judge(choose, answer);
		expect(keepsBack(judged)).toBe(true);
		expect(wrongLines(choose, answer, judged, false).map((l) => l.text)).toEqual([
			'B does not meet the need: it has no break contact on T.',
			'One variant that meets every need is still left out.'
		]);
	});
	it('that is right is told what each of the others lacks', () => {
		const chosen = fittingOptions(choose);
		const judged = judge(choose, { kind: 'choose', chosen });
		const told = leftOutLines(choose, judged);
		expect(told).toHaveLength(choose.options.length - chosen.length);
		expect(told).toContain('B is rightly left out: it has no break contact on T.');
		expect(keepsBack(judged)).toBe(false);
	});
	it('says each need in words', () =>
		expect(choose.needs.map(needWords)).toEqual([
			'needs one opening',
			'takes a three-pin plug or a TRS plug, never both together',
			'gives every part of a TRS plug a contact of its own',
			'has break contacts on T and R',
			'ends in solder cups',
			'latches the circular plug'
		]));
});

describe('names for lugs', () => {
	const [exchanged] = name.wrong;
	it('are counted, with the readings', () =>
		expect(headline(name, exchanged!.answer)).toEqual([
			'1 of 5 lugs are rightly named.',
			'You took 2 readings.'
		]));
	it('are told apart by readings, with letters for lugs', () =>
		expect(lines(name, exchanged!.answer)).toEqual(
			expect.arrayContaining([
				'Lug b is T, and you called it TN.',
				'With the TRS plug lead in the socket, lug b and the tip of plug lead sound; if lug b were TN, they would be silent.'
			])
		));
	it('keep back what a lug is until the answer is asked for', () => {
		const judged = judge(name, exchanged!.answer);
		const kept = wrongLines(name, exchanged!.answer, judged, false).map((l) => l.text);
		expect(kept).toContain('Lug b is not TN.');
		expect(kept.join()).not.toMatch(/and you called it/);
		expect(
			judgedWords(name, { ...judged, name: { ...judged.name!, kindRight: false } }, false)[1]
		).toBe('It is of another kind.');
	});
	it('do not say what kind it is as if it had been said', () =>
		expect(headline(name, { kind: 'name', names: {}, probes: [] })[1]).toBe(
			'You did not say of which kind it is: Patch jack.'
		));
});

describe('an order', () => {
	it('that is unsafe says who may come to harm, what comes of it first, and the step', () => {
		const [hasty] = order.wrong;
		expect(headline(order, hasty!.answer)).toEqual([
			'Nobody may work like this: somebody or something can come to harm, so the score is 0.',
			'Five needed steps are left out.'
		]);
		expect(lines(order, hasty!.answer)[1]).toBe(
			'Step 4, “Meter on continuity: test the line”: the meter stands on continuity across a live line: it gives no reading and warns, and one that cannot warn may be damaged; 47.98 V stands there.'
		);
	});
	it('that leaves a step out is told so once, with the reason', () => {
		const told = lines(order, order.wrong[0]!.answer).filter((l) =>
			l.includes('“Try the meter on the battery once more”')
		);
		expect(told).toEqual([
			'“Try the meter on the battery once more” is left out, and it must come before “Meter on continuity: test the line”. Continuity is for a line that is proven dead.'
		]);
	});
	it('that breaks a rule is told the reason', () =>
		expect(lines(order, order.wrong[1]!.answer).at(-1)).toBe(
			'“Wait until the capacitors of the supply are empty” must come before “Meter on volts, pin 2 to pin 1 and pin 3 to pin 1: both should show nothing”. Capacitors hold phantom voltage for some seconds after the switch.'
		));
	it('has a sentence for where things stand', () =>
		expect(
			situationWords({
				mains: false,
				phantom: false,
				charged: true,
				muted: true,
				proven: true,
				foundDead: false,
				provenDead: false,
				probed: false
			})
		).toBe(
			'The equipment is unplugged; phantom power is switched off; the line carries voltage; the channel is muted; the meter is proven.'
		));
});

describe('a prediction', () => {
	const predict = byId('predict', 'predict-ts-in-nine');
	const wrong = ['A.T', 'A.2'] as const;
	const right = solutionOf(predict) as Extract<Answer, { kind: 'predict' }>;
	it('with doubts is told where the doubt was needless and where there should have been one', () => {
		const ticked = [...right.ticked, wrong];
		expect(
			headline(predict, { kind: 'predict', ticked, unsure: [right.ticked[0]!] }).slice(1)
		).toEqual([
			'The score is the sounding pairs that you ticked, out of these and your mistakes together.',
			'You were right and not sure of one: you know more than you think.',
			'You were wrong and sure of one: look at these first.'
		]);
		expect(lines(predict, { kind: 'predict', ticked, unsure: [wrong] })[0]).toMatch(
			/^You expected T and pin 2 to sound, and you were not sure, and they are silent\. /
		);
	});
	it('of a joined pair that is silent says the ohms', () => {
		const bench = {
			...predict.bench,
			wires: [{ id: 'long', from: 'A.2', to: 'A.3', awg: 40, mm: 20_000 }]
		};
		const pairs = [['A.2', 'A.3'] as const];
		const exercise = { ...predict, bench, questions: [{ state: {}, pairs }] };
		expect(lines(exercise, { kind: 'predict', ticked: pairs })[0]).toMatch(
			/That is \d+\.\d Ω with the leads, and the meter sounds under 30 Ω\.$/
		);
	});
});
