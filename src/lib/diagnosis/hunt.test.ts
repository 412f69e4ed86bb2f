/** Hunts judged: the best one loses nothing, an idle probe is wasted, and a bad one is counted once. */
import { describe, expect, it } from 'vitest';
import { benchOf } from '../engine/bench.fixture';
import { dictionaryOf } from './dictionary';
import { everyClass, type Reading } from './evidence';
import { bestHunt, huntOf } from './hunt';
import { someMembers, withoutSound } from './members';
import { bestNext } from './next';
import { greedyPlan, Optimum } from './optimum';
import { BENCHES } from './oracle.fixture';
import { MOST_EXACT, parIn, systemIn } from './par';
import { answerTo, probesOf } from './probes';
import { withFaults } from '../engine';

const JACK = benchOf({ sockets: [{ id: 'J', kind: 'jack-ts-break' }] });
const NINE = BENCHES['a hybrid of nine with two jumpers on a metal panel, cabled to a desk']!;
const readingOf = (probe: Pick<Reading, 'when' | 'pair'>, hidden: number | null): Reading => {
	const list = dictionaryOf(NINE, 1).faults;
	const there = withFaults(NINE, hidden === null ? [] : [list[hidden]!]);
	return { ...probe, answer: answerTo(there, probe) };
};

describe('par', () => {
	it('is exact where few classes remain, and between its bounds and the greedy plan', () => {
		const dictionary = dictionaryOf(JACK, 1);
		const ids = everyClass(dictionary);
		const par = parIn(dictionary, ids);
		expect(par.exact).toBe(true);
		expect(par.classes).toBe(5);
		const { system } = systemIn(dictionary, ids);
		expect(par.probes).toBeCloseTo(new Optimum(system).cost(), 12);
		expect(par.bounds.entropy).toBeLessThanOrEqual(par.bounds.huffman);
		expect(par.bounds.huffman).toBeLessThanOrEqual(par.probes!);
	});
	it('is the greedy plan’s figure where many remain, and says so', () => {
		const dictionary = dictionaryOf(NINE, 1);
		const ids = everyClass(dictionary);
		const par = parIn(dictionary, ids);
		expect(par.exact).toBe(false);
		expect(par.bounds.huffman).toBeLessThanOrEqual(par.probes!);
		expect(par.probes).toBeCloseTo(greedyPlan(systemIn(dictionary, ids).system).cost, 1);
	});
	it('is what the hunts for every class come to on average, each by its weight', () => {
		const dictionary = dictionaryOf(JACK, 1);
		const ids = everyClass(dictionary);
		let spent = 0;
		let total = 0;
		for (const id of ids) {
			spent += dictionary.weight[id]! * bestHunt(dictionary, id).length;
			total += dictionary.weight[id]!;
		}
		expect(spent / total).toBeCloseTo(parIn(dictionary, ids).probes!, 12);
	});
});

describe('a hunt', () => {
	const dictionary = dictionaryOf(NINE, 1);
	it('along the best probes loses nothing, wastes nothing, and ends in the hidden class', () => {
		for (let hidden = 0; hidden < dictionary.faults.length; hidden += 5) {
			const id = dictionary.classOfSet([hidden]);
			const readings = bestHunt(dictionary, id);
			expect(readings).toEqual(readings.map((r) => readingOf(r, hidden)));
			const hunt = huntOf(dictionary, readings);
			expect([...hunt.left]).toEqual([id]);
			expect(hunt.settled).toBe(true);
			for (const step of hunt.steps) {
				expect(step.wasted).toBe(false);
				expect(step.regret.lost).toBeLessThan(1e-9);
				expect(step.after).toBeLessThan(step.before);
				expect(step.regret.unit).toBe(step.before > MOST_EXACT ? 'bits' : 'probes');
			}
		}
	});
	it('counts a repeated probe as wasted, and what follows is not charged for it', () => {
		const good = bestHunt(dictionary, dictionary.classOfSet([0]));
		const again = [good[0]!, good[0]!, ...good.slice(1)];
		const { steps, settled } = huntOf(dictionary, again);
		expect(settled).toBe(true);
		expect(steps.map((s) => s.wasted)).toEqual(again.map((_, i) => i === 1));
		expect(steps.filter((s) => s.regret.lost > 1e-9)).toHaveLength(1);
		expect(steps[1]!.ruledOut).toBe(0);
	});
	it('charges a poor first probe with what it gave up in bits', () => {
		const ids = everyClass(dictionary);
		const best = bestNext(dictionary, ids)!;
		const poor = readingOf({ when: { A: 'ts' }, pair: ['A.1', 'A.G'] }, 3);
		const [step] = huntOf(dictionary, [poor]).steps;
		expect(step!.wasted).toBe(false);
		expect(step!.regret).toEqual({ unit: 'bits', lost: best.gain - step!.gain });
		expect(step!.regret.lost).toBeGreaterThan(0.1);
	});
	it('with few classes left charges the exact loss in probes, and a whole one for a wasted probe', () => {
		const few = dictionaryOf(JACK, 1);
		const optimum = new Optimum(systemIn(few, everyClass(few)).system).cost();
		const losses = probesOf(JACK).map((probe) => {
			const reading: Reading = { ...probe, answer: answerTo(JACK, probe) };
			const [step] = huntOf(few, [reading]).steps;
			return { ...step!.regret, wasted: step!.wasted };
		});
		expect(Math.min(...losses.map((l) => l.lost))).toBeLessThan(1e-9);
		expect(losses.some((l) => l.lost > 0.01 && !l.wasted)).toBe(true);
		expect(losses.filter((l) => l.wasted).every((l) => l.lost === 1)).toBe(true);
		expect(losses.every((l) => l.lost < optimum + 1)).toBe(true);
	});
	it('says how many sets of faults a reading ruled out', () => {
		const [step] = huntOf(dictionary, [readingOf({ when: {}, pair: ['A.2', 'A.T'] }, 0)]).steps;
		const there = dictionary.faults.filter(
			(_, i) => readingOf({ when: {}, pair: ['A.2', 'A.T'] }, i).answer === 'apart'
		);
		// The sound bench joins 2 and T, so what stays are the faults that part them.
		expect(step!.ruledOut).toBe(1 + dictionary.faults.length - there.length);
	});
	it('that contradicts itself ends with no class', () => {
		const probe = { when: {}, pair: ['A.2', 'A.T'] as const };
		const hunt = huntOf(dictionary, [
			{ ...probe, answer: 'joined' },
			{ ...probe, answer: 'apart' }
		]);
		expect(hunt.left).toHaveLength(0);
		expect([hunt.settled, hunt.steps[1]!.wasted]).toEqual([false, true]);
	});
});

describe('a hunt for somebody who knows that something is wrong', () => {
	it('does not spend probes on the sound bench', () => {
		const dictionary = withoutSound(dictionaryOf(JACK, 1));
		const par = parIn(dictionary, everyClass(dictionary));
		// The class of the sound bench stays: a bent S is in it.
		expect(par.classes).toBe(5);
		const sound = dictionary.classOfSet([]);
		expect(dictionary.heaviest(sound).map((i) => dictionary.faults[i])).toEqual([
			{ kind: 'spring-bent', contact: 'J.S' }
		]);
		const ten = withoutSound(
			dictionaryOf(benchOf({ sockets: [{ id: 'M', kind: 'three-pin-male' }] }), 1)
		);
		expect(everyClass(ten)).toHaveLength(6);
	});
});

describe('members of a class', () => {
	it('are as many as the class counts, each once and each of the class', () => {
		const dictionary = dictionaryOf(JACK, 3);
		for (const id of everyClass(dictionary)) {
			const sets = someMembers(dictionary, id, Infinity);
			expect(sets).toHaveLength(dictionary.count[id]!);
			expect(new Set(sets.map((s) => s.join())).size).toBe(sets.length);
			for (const set of sets) expect(dictionary.classOfSet(set)).toBe(id);
			expect(sets).toContainEqual(dictionary.heaviest(id));
		}
	});
});
