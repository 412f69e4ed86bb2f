/** The sum of a hunt, and what an answer would be worth: facts of the hunts themselves. */
import { describe, expect, it } from 'vitest';
import { MOST_EXACT, answerTo, toldHunt, type HuntReading, type Probe } from '../diagnosis';
import { truthOf } from '../exercises/answers';
import { readExercises } from '../exercises/content.node';
import type { FindExercise } from '../exercises';
import { sumWords, toldWords, worthWords } from './hunt';

const find = readExercises().find((e) => e.id === 'find-fault-in-six') as FindExercise;
const told = (probes: readonly Probe[]) =>
	toldHunt({
		bench: find.bench,
		symptom: find.symptom,
		from: {},
		hidden: find.hidden,
		readings: probes.map((p): HuntReading => ({
			...p,
			answer: answerTo(truthOf(find), p),
			suspect: null
		}))
	});
const at = (a: string, b: string): Probe => ({ when: {}, pair: [a, b] });

describe('the sum of a hunt', () => {
	it('counts a probe that was taken twice as wasted, and says that most was lost there', () => {
		const { best } = told([]);
		const first = best![0]!.reading;
		const { steps } = told([first, first]);
		expect(sumWords(steps, 0)).toMatch(
			/^One of your two probes was wasted: number 2\. .* Most was lost with number 2: /
		);
		expect(toldWords(steps[1]!)).toMatch(/^Wasted: /);
	});
	it('finds nothing to reproach in the best hunt', () => {
		const { best } = told([]);
		const { steps } = told(best!.map(({ reading }) => reading));
		expect(sumWords(steps, 0)).toBe(
			'None of your probes was wasted. Each was as good as the best probe there.'
		);
	});
	it('speaks of one probe as of one', () => {
		const { steps } = told([told([]).best![0]!.reading]);
		expect(sumWords(steps, 0)).toBe('It was not wasted. It was as good as the best probe there.');
	});
	it('adds up what was given up, bits and probes apart', () => {
		const { steps } = told([
			at('A.2', 'A.T'),
			at('A.3', 'A.T'),
			at('A.2', 'A.R'),
			at('A.1', 'A.G')
		]);
		const bits = steps.filter((s) => s.before > MOST_EXACT);
		const sum = bits.reduce((n, s) => n + s.regret.lost, 0);
		expect(sum).toBeGreaterThan(0.01);
		expect(sumWords(steps, 0)).toContain(`together: ${sum.toFixed(2)} bit`);
	});
	it('tells of readings that said neither', () =>
		expect(sumWords([], 2)).toBe(
			'Two more told neither joined nor apart, and count as used all the same.'
		));
});

describe('before an answer', () => {
	it('says that a guess is one, until one class is left', () => {
		expect(worthWords(0, 32, false)).toMatch(/^Nothing is measured yet and 32 classes of faults/);
		expect(worthWords(3, 2, false)).toMatch(/^2 classes of faults are still possible/);
		expect(worthWords(3, 1, true)).toMatch(/prove it/);
	});
	it('counts the single faults only where they are more than the classes', () => {
		const { steps, faults, par } = told([at('A.2', 'A.T')]);
		expect(faults).toBeGreaterThan(par.classes);
		expect(toldWords(steps[0]!)).toMatch(
			/^Ruled out \d+ of 32 classes of faults; \d+ left( \(\d+ single faults\))?\.$/
		);
	});
});
