import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, type Bench } from '../engine';
import { dictionaryOf } from './dictionary';
import { agreeing, everyClass } from './evidence';
import { groupKey, groupsIn } from './groups';
import { withoutSound } from './members';

const bench: Bench = {
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind: 'hybrid-6', bush: 'insulated', label: '' }],
	wires: [{ id: 'w1', from: 'A.2', to: 'A.T', awg: 26, mm: 40 }]
};

describe('what remains, class by class', () => {
	it('names every single fault once, and sound with the faults that no probe can catch', () => {
		const dictionary = dictionaryOf(bench, 1);
		const groups = groupsIn(dictionary, everyClass(dictionary), 1000);
		const named = groups.flatMap(({ sets }) => sets);
		expect(named).toHaveLength(dictionary.faults.length + 1);
		expect(new Set(named.map((set) => JSON.stringify(set))).size).toBe(named.length);
		for (const { sets, members } of groups) expect(sets).toHaveLength(members);
		expect(groups.reduce((sum, g) => sum + g.weight, 0)).toBeCloseTo(1, 12);
		expect(groups[0]!.sets[0]).toEqual([]);
	});

	it('puts the heavier class first, and stops where it is told to', () => {
		const dictionary = withoutSound(dictionaryOf(bench, 1));
		const all = groupsIn(dictionary, everyClass(dictionary), 1000);
		const weights = all.map((g) => g.weight);
		expect(weights).toEqual([...weights].sort((a, b) => b - a));
		expect(all.flatMap(({ sets }) => sets).every((set) => set.length === 1)).toBe(true);
		expect(groupsIn(dictionary, everyClass(dictionary), 3)).toEqual(all.slice(0, 3));
	});

	it('keeps the name of a class after a reading', () => {
		const dictionary = dictionaryOf(bench, 2);
		const before = groupsIn(dictionary, everyClass(dictionary), 1e6).map(groupKey);
		const ids = agreeing(dictionary, [{ when: {}, pair: ['A.2', 'A.T'], answer: 'apart' }]);
		const after = groupsIn(dictionary, ids, 1e6).map(groupKey);
		expect(new Set(before).size).toBe(before.length);
		expect(after.length).toBeGreaterThan(0);
		expect(after.length).toBeLessThan(before.length);
		expect(after.every((key) => before.includes(key))).toBe(true);
	});
});
