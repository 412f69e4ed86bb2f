/**
 * The proofs of hunts: over the whole course the readings allowed are enough for the plan, whatever
 * the fault; and a hunt that tells what is not so, or allows too little, is found.
 */
import { describe, expect, it } from 'vitest';
import { agreeing, answerTo, bestHunt, everyClass, parIn, suspectsOf } from '../diagnosis';
import { withFaults } from '../engine';
import { readExercises } from './content.node';
import type { FindExercise, ToldSymptom } from './exercise';
import { judge } from './judge';
import { hiddenClassOf } from './find';
import { deepestIn, planProblems, symptomProblems } from './proofsOfHunts';

const hunts = readExercises().filter((e): e is FindExercise => e.kind === 'find');
const of = (id: string) => hunts.find((e) => e.id === id)!;

describe.each(hunts.map((e) => [e.id, e] as const))('%s', (_, exercise) => {
	const { bench, symptom, most, hidden } = exercise;
	const suspects = suspectsOf(bench, symptom);
	const ids = everyClass(suspects);

	it('tells nothing that is not so, and says all that it counts on', () =>
		expect(symptomProblems(exercise)).toEqual([]));
	it('allows as many readings as the plan takes at worst', () => {
		expect(deepestIn(suspects, ids)).toBeLessThanOrEqual(most);
		expect(parIn(suspects, ids).probes).toBeLessThanOrEqual(most);
		expect(planProblems(exercise)).toEqual([]);
	});
	it('is won by its best hunt, with full score', () => {
		const readings = bestHunt(suspects, hiddenClassOf(suspects, exercise));
		const answer = { kind: 'find', fault: hidden, probes: readings } as const;
		expect(judge(exercise, answer)).toMatchObject({ score: 1, passed: true });
	});
	it('leaves the suspects that the plain engine leaves', () => {
		const fitting = judge(exercise, { kind: 'find', fault: hidden, probes: [] }).find!.fitting;
		const byName = suspects.faults.flatMap((f, i) =>
			fitting.some((x) => JSON.stringify(x) === JSON.stringify(f)) ? [suspects.classOfSet([i])] : []
		);
		expect([...new Set(byName)].sort((a, b) => a - b)).toEqual([...ids]);
	});
	it('can be settled for every suspect without a reading that its cautions ask to leave', () => {
		for (const id of ids) {
			const hunt = bestHunt(suspects, id);
			const there = withFaults(
				bench,
				suspects.heaviest(id).map((i) => suspects.faults[i]!)
			);
			expect(hunt.map((r) => r.answer)).toEqual(hunt.map((r) => answerTo(there, r)));
			expect([...agreeing(suspects, hunt)]).toEqual([id]);
		}
	});
});

describe('a hunt that may not be taught', () => {
	const chain = of('find-broken-chain-of-eight');
	const withTold = (part: Partial<ToldSymptom>): FindExercise => ({
		...chain,
		symptom: { ...chain.symptom, ...part }
	});
	const [told] = chain.symptom.told;
	it('tells what the meter does not find', () => {
		const readings = [{ ...told!.readings[0]!, answer: 'joined' as const }];
		const lying = withTold({ told: [{ ...told!, readings }] });
		expect(symptomProblems(lying)).toEqual([
			`"${told!.says}" is not what the meter finds with the hidden fault`
		]);
		expect(planProblems(lying)).toEqual(['the hidden fault is not among those in question']);
	});
	it('counts on what it does not say', () => {
		const silent = withTold({ told: [{ ...told!, says: 'the third jumper is broken' }] });
		expect(symptomProblems(silent)).toEqual([
			'the exercise nowhere says "the third jumper is broken"'
		]);
	});
	it('tells of a contact that it does not name', () => {
		const readings = [{ when: {}, pair: ['J1.TN', 'J8.S'] as const, answer: 'apart' as const }];
		const text = symptomProblems(withTold({ told: [{ ...told!, readings }] }));
		expect(text).toEqual(['nothing shown names J1.TN']);
	});
	it('leaves the hidden fault’s own kind out', () =>
		expect(symptomProblems(withTold({ kinds: ['swap'] }))).toEqual([
			'the hidden fault is of no kind that is in question'
		]));
	it('allows fewer readings than par', () => {
		const [problem] = planProblems({ ...chain, most: 3 });
		expect(problem).toMatch(/^par is 3\.1\d+, and 3 readings are allowed$/);
	});
	it('asks to keep off what only could tell its fault', () => {
		const bound = withTold({ keepOff: ['J5.S', 'J6.S'] });
		expect(planProblems(bound)).toContain('the best hunt leaves 3 classes');
	});
});
