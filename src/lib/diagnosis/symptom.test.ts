/** A symptom narrows the suspects as the plain engine would, and closes probes to plans only. */
import { describe, expect, it } from 'vitest';
import { isJoined, withFaults, type Fault } from '../engine';
import { dictionaryOf } from './dictionary';
import { everyClass } from './evidence';
import { bestHunt } from './hunt';
import { withoutSound } from './members';
import { dividing, probeOf } from './next';
import { BENCHES } from './oracle.fixture';
import { parIn } from './par';
import { answerTo } from './probes';
import { fewestToProve } from './proof';
import { isKeptOff, NO_SYMPTOM, suspectsOf, withSymptom, type Symptom } from './index';
import { weightOf } from './weights';

const NINE = BENCHES['a hybrid of nine with two jumpers on a metal panel, cabled to a desk']!;
const dictionary = withoutSound(dictionaryOf(NINE, 1));
const { faults } = dictionary;
const at = (pair: readonly [string, string], answer: 'joined' | 'apart') => ({
	when: {},
	pair,
	answer
});
const classesOf = (list: readonly Fault[]) =>
	[...new Set(list.map((f) => dictionary.classOfSet([faults.indexOf(f)])))].sort((a, b) => a - b);
const joins = (fault: Fault, pair: readonly [string, string]) =>
	isJoined(withFaults(NINE, [fault]), ...pair);

describe('a symptom', () => {
	it('that says nothing leaves everything', () => {
		const same = withSymptom(dictionary, NO_SYMPTOM);
		expect([...everyClass(same)]).toEqual([...everyClass(dictionary)]);
		expect(parIn(same, everyClass(same))).toEqual(parIn(dictionary, everyClass(dictionary)));
	});
	it('of readings leaves the faults that the engine finds to answer so', () => {
		const told = [{ readings: [at(['A.2', 'A.T'], 'apart')], any: false }];
		const left = everyClass(suspectsOf(NINE, { ...NO_SYMPTOM, told }));
		expect([...left]).toEqual(classesOf(faults.filter((f) => !joins(f, ['A.2', 'A.T']))));
		expect(left.length).toBeLessThan(everyClass(dictionary).length);
	});
	it('of readings of which one at least holds leaves what fits any of them', () => {
		const pairs = [
			['A.1', 'A.T'],
			['A.1', 'A.R']
		] as const;
		const told = [{ readings: pairs.map((p) => at(p, 'joined')), any: true }];
		const left = everyClass(suspectsOf(NINE, { ...NO_SYMPTOM, told }));
		expect([...left]).toEqual(classesOf(faults.filter((f) => pairs.some((p) => joins(f, p)))));
	});
	it('of kinds leaves those kinds, weighed by themselves', () => {
		const suspects = suspectsOf(NINE, { ...NO_SYMPTOM, kinds: ['swap'] });
		const swaps = faults.filter((f) => f.kind === 'swap');
		expect([...everyClass(suspects)]).toEqual(classesOf(swaps));
		expect(suspects.count.reduce((a, b) => a + b)).toBe(swaps.length);
		const weight = swaps.reduce((sum, f) => sum + weightOf(f), 0);
		expect(suspects.weight.reduce((a, b) => a + b)).toBeCloseTo(weight, 12);
		for (const id of everyClass(suspects))
			expect(faults[suspects.heaviest(id)[0]!]!.kind).toBe('swap');
	});
	it('that asks to keep off a node and a pair closes just these to plans', () => {
		const symptom: Symptom = { ...NO_SYMPTOM, keepOff: ['A.G', ['A.2', 'A.T']] };
		const suspects = suspectsOf(NINE, symptom);
		const ids = everyClass(suspects);
		const probes = (d: typeof suspects) => dividing(d, ids).map((f) => probeOf(d, f));
		expect(probes(suspects)).toEqual(
			probes(dictionary).filter(({ pair }) => !isKeptOff(symptom, pair))
		);
		expect(probes(suspects).length).toBeLessThan(probes(dictionary).length);
		for (const id of ids)
			for (const { pair } of bestHunt(suspects, id)) expect(isKeptOff(symptom, pair)).toBe(false);
	});
});

describe('the shortest proof', () => {
	it('leaves one class, and no reading of it can be spared', () => {
		for (const id of [...everyClass(dictionary)].slice(0, 12)) {
			const proof = fewestToProve(dictionary, id)!;
			const there = withFaults(
				NINE,
				dictionary.heaviest(id).map((i) => faults[i]!)
			);
			const left = (probes: typeof proof) =>
				faults.filter((f) =>
					probes.every(({ when, pair }) => {
						const seen = (b: typeof NINE) => answerTo(b, { when, pair });
						return seen(withFaults(NINE, [f])) === seen(there);
					})
				);
			expect(classesOf(left(proof))).toEqual([id]);
			proof.forEach((_, i) =>
				expect(classesOf(left(proof.filter((__, k) => k !== i))).length).toBeGreaterThan(1)
			);
			expect(proof.length).toBeLessThanOrEqual(bestHunt(dictionary, id).length);
		}
	});
});
