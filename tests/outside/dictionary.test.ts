/**
 * The fault dictionary on random benches of every make-up, with plugs at any travel and faults of
 * their own, against the plain engine: each set of faults is put on the bench and its nets read off.
 * On one bench also against the disjoint sets of mnemonist, a general-purpose library, set by set:
 * see tests/benchmark/diagnosis.ts, where the number of classes has to agree.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dictionaryOf, extrasOf, isJoinedAt, placeOf, type Reading } from '../../src/lib/diagnosis';
import { faultListOf } from '../../src/lib/diagnosis/faults';
import { plainAnswers } from '../../src/lib/diagnosis/oracle.fixture';
import { inState, isJoined, nodesOfBench, statesOf, withFaults } from '../../src/lib/engine';
import { RUNS, benches } from './benches';

const runs = { ...RUNS, numRuns: 250 };

describe('of any bench', () => {
	it('single faults and pairs of faults answer as the plain engine says', () => {
		let pairs = 0;
		fc.assert(
			fc.property(
				benches(),
				fc.array(fc.nat(9999), { minLength: 12, maxLength: 12 }),
				(bench, at) => {
					const n = faultListOf(bench).length;
					const most = n <= 110 ? 2 : 1;
					const dictionary = dictionaryOf(bench, most);
					const { faults, columnOf, rows, seen, nodes } = dictionary;
					const sets = at.map((x, i) =>
						n === 0 ? [] : i % 2 && most > 1 ? [x % n, at[i - 1]! % n] : [x % n]
					);
					for (const set of sets) {
						const numbers = [...new Set(set)].sort((a, b) => a - b);
						if (numbers.length === 2) pairs++;
						const id = dictionary.classOfSet(numbers);
						const found = columnOf.map((c) => nodes.map((_, i) => seen.at(rows.at(id, c), i)));
						expect(found).toEqual(
							plainAnswers(
								bench,
								numbers.map((i) => faults[i]!)
							)
						);
					}
				}
			),
			runs
		);
		expect(pairs).toBeGreaterThan(300);
	});
	it('readings with several plugs, plugs of the bench and plugs’ own parts answer so too', () => {
		let met = 0;
		fc.assert(
			fc.property(
				benches(),
				fc.array(fc.nat(9999), { minLength: 8, maxLength: 8 }),
				(bench, at) => {
					const nodes = nodesOfBench(bench);
					if (nodes.length < 2) return;
					const when = Object.fromEntries(
						bench.sockets.map((s, i) => {
							const states = statesOf(bench, s.id);
							return [s.id, states[at[i]! % states.length]!];
						})
					);
					const a = at[4]! % nodes.length;
					const b = (a + 1 + (at[5]! % (nodes.length - 1))) % nodes.length;
					const reading: Reading = { when, pair: [nodes[a]!, nodes[b]!], answer: 'joined' };
					const extras = extrasOf(bench, [reading]);
					met += extras.length;
					const dictionary = dictionaryOf(bench, 1, extras);
					const place = placeOf(dictionary, reading);
					const n = dictionary.faults.length;
					for (const i of n === 0 ? [] : [at[6]! % n, at[7]! % n]) {
						const there = inState(withFaults(bench, [dictionary.faults[i]!]), when);
						const joined = isJoined(there, ...reading.pair);
						expect(isJoinedAt(dictionary, dictionary.classOfSet([i]), place)).toBe(joined);
					}
				}
			),
			runs
		);
		expect(met).toBeGreaterThan(50);
	});
});
