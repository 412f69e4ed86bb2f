/**
 * Diagnosis against a plain one, written here out of the engine alone: every set of faults is put on
 * the bench, every probe asked of it, and the sums are done over all of them.
 */
import { describe, expect, it } from 'vitest';
import { withFaults, type Bench, type Fault } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { diagnose, diagnosisIn } from './diagnose';
import { dictionaryOf } from './dictionary';
import { faultListOf } from './faults';
import { agreeing, weightIn, type Reading } from './evidence';
import { bitsOf } from './next';
import { answerTo, nodesAtPanel, probeNodes, probesOf, statesOfBench } from './probes';
import { BENCHES, drawing, plainAnswers } from './oracle.fixture';
import { weightOfSet } from './weights';

/** Every set of at most `most` faults, in list order. */
function setsOf(faults: readonly Fault[], most: number): Fault[][] {
	if (most === 0) return [[]];
	return [
		[],
		...faults.flatMap((f, i) => setsOf(faults.slice(i + 1), most - 1).map((s) => [f, ...s]))
	];
}

interface Plain {
	readonly sets: readonly Fault[][];
	readonly weights: readonly number[];
	/** Gain of the best probe, bits. */
	readonly gain: number;
	readonly classes: number;
}

function plainly(bench: Bench, readings: readonly Reading[], most: number): Plain {
	const sets = setsOf(faultListOf(bench), most).filter((set) => {
		const there = withFaults(bench, set);
		return readings.every((r) => answerTo(there, r) === r.answer);
	});
	const raw = sets.map(weightOfSet);
	const total = raw.reduce((a, b) => a + b, 0);
	const weights = raw.map((w) => w / total);
	const answers = sets.map((set) => plainAnswers(bench, set));
	let gain = 0;
	const nodes = probeNodes(bench).length;
	for (let state = 0; state < statesOfBench(bench).length; state++)
		for (let a = 0; a < nodes; a++)
			for (let b = a + 1; b < nodes; b++) {
				let p = 0;
				answers.forEach((nets, i) => (p += nets[state]![a] === nets[state]![b] ? weights[i]! : 0));
				const q = 1 - p;
				if (p > 1e-12 && q > 1e-12) gain = Math.max(gain, -p * Math.log2(p) - q * Math.log2(q));
			}
	const classes = new Set(answers.map((nets) => JSON.stringify(nets))).size;
	return { sets, weights, gain, classes };
}

/** What the bench with a hidden fault or two answers to some probes drawn from the seed. */
function readingsOf(bench: Bench, seed: number, howMany: number): Reading[] {
	const draw = drawing(seed);
	const list = faultListOf(bench);
	const hidden = [list[draw(list.length)]!, list[draw(list.length)]!].slice(0, 1 + draw(2));
	const probes = probesOf(bench);
	const there = withFaults(bench, hidden);
	return Array.from({ length: howMany }, () => {
		const probe = probes[draw(probes.length)]!;
		return { ...probe, answer: answerTo(there, probe) };
	});
}

const JACK = benchOf({
	sockets: [{ id: 'J', kind: 'jack-ts-break' }],
	devices: [{ id: 'D', kind: 'line-in-unbalanced' }],
	wires: [
		{ id: 'w1', from: 'J.TN', to: 'D.hot' },
		{ id: 'w2', from: 'J.S', to: 'D.shield' }
	]
});
const keyOf = (faults: readonly Fault[]) => JSON.stringify(faults);

describe.each(Object.entries(BENCHES).filter(([name]) => name !== 'nothing at all'))(
	'single faults of %s',
	(_, bench) => {
		it.each([1, 2, 3])('are those of the plain diagnosis, draw %i', (seed) => {
			const readings = readingsOf(bench, seed, 2 * seed);
			const plain = plainly(bench, readings, 1);
			const found = diagnose(bench, readings);
			expect(found.total).toBe(plain.sets.length);
			if (plain.sets.length > 50) expect(found.candidates).toHaveLength(50);
			const at = new Map(plain.sets.map((set, i) => [keyOf(set), plain.weights[i]!]));
			for (const { faults, weight } of found.candidates)
				expect(weight).toBeCloseTo(at.get(keyOf(faults))!, 12);
			const likeliest = Math.max(...plain.weights, 0);
			if (found.total > 0) expect(found.candidates[0]!.weight).toBeCloseTo(likeliest, 12);
			expect(found.next?.gain ?? 0).toBeCloseTo(plain.gain, 9);
			expect(found.next === null).toBe(plain.classes < 2);
		});
	}
);

describe('sets of more faults', () => {
	it.each([
		[2, 0],
		[2, 3],
		[3, 2],
		[3, 5]
	])('of at most %i after %i readings are those of the plain diagnosis', (most, howMany) => {
		const readings = readingsOf(JACK, 7, howMany);
		const plain = plainly(JACK, readings, most);
		const { candidates, total, next } = diagnose(JACK, readings, most);
		expect(total).toBe(plain.classes);
		expect(next?.gain ?? 0).toBeCloseTo(plain.gain, 9);
		const classes = new Map<string, { weight: number; members: number }>();
		plain.sets.forEach((set, i) => {
			const key = JSON.stringify(plainAnswers(JACK, set));
			const known = classes.get(key) ?? { weight: 0, members: 0 };
			const weight = known.weight + plain.weights[i]!;
			classes.set(key, { weight, members: known.members + 1 });
		});
		for (const { faults, weight, members } of candidates) {
			const known = classes.get(JSON.stringify(plainAnswers(JACK, faults)))!;
			expect(weight).toBeCloseTo(known.weight, 12);
			expect(members).toBe(known.members);
		}
		const weights = candidates.map((c) => c.weight);
		expect(weights).toEqual([...weights].sort((a, b) => b - a));
	});
});

describe('weights', () => {
	it('sum to 1 over all candidates, those that are not listed too', () => {
		for (const bench of Object.values(BENCHES)) {
			const { candidates, total } = diagnose(bench, []);
			const listed = candidates.reduce((sum, c) => sum + c.weight, 0);
			const rest = plainly(bench, [], 1).weights.reduce((a, b) => a + b, 0);
			expect(rest).toBeCloseTo(1, 12);
			expect(listed).toBeLessThanOrEqual(1 + 1e-12);
			if (total <= 50) expect(listed).toBeCloseTo(1, 12);
		}
	});
});

describe('readings outside the bench’s own probes', () => {
	const bench = BENCHES['two patch jacks, a plug half way in one']!;
	const outside: Reading[] = [
		{ when: { U: 'trs', L: 'ts' }, pair: ['U.T', 'L.S'], answer: 'apart' },
		{ when: { L: 'p' }, pair: ['p.tip', 'L.T'], answer: 'joined' },
		{ when: { U: 'dummy' }, pair: ['U.TN', 'L.TN'], answer: 'joined' },
		{ when: { L: 'shorting' }, pair: ['L.T', 'L.R'], answer: 'joined' }
	];
	it('rule out as the plain engine does, one by one and together', () => {
		for (const readings of [...outside.map((r) => [r]), outside]) {
			const plain = plainly(bench, readings, 1);
			const found = diagnose(bench, readings);
			expect(plain.sets.length).toBeGreaterThan(0);
			expect(found.total).toBe(plain.sets.length);
			expect(found.next?.gain ?? 0).toBeCloseTo(plain.gain, 9);
		}
	});
	it('rule something out that no usual reading is needed for', () => {
		const all = plainly(bench, [], 1).sets.length;
		expect(diagnose(bench, outside).total).toBeLessThan(all);
	});
});

describe('a contradiction', () => {
	const fits = (readings: readonly Reading[], most: number) =>
		plainly(JACK, readings, most).sets.length > 0;
	const subsets = (readings: readonly Reading[]): Reading[][] =>
		readings.reduce<Reading[][]>((all, r) => [...all, ...all.map((s) => [...s, r])], [[]]);
	it('is answered by a set of readings that nothing satisfies, and none is smaller', () => {
		const draw = drawing(11);
		const probes = probesOf(JACK);
		let met = 0;
		for (let round = 0; round < 12; round++) {
			const readings = Array.from({ length: 7 }, (): Reading => {
				const probe = probes[draw(probes.length)]!;
				return { ...probe, answer: draw(2) ? 'joined' : 'apart' };
			});
			const { conflict, candidates, next } = diagnose(JACK, readings);
			expect(conflict === undefined).toBe(fits(readings, 1));
			if (!conflict) continue;
			met++;
			expect([candidates, next]).toEqual([[], null]);
			expect(fits(conflict, 1)).toBe(false);
			const least = Math.min(
				...subsets(readings)
					.filter((s) => s.length < conflict.length)
					.map((s) => (fits(s, 1) ? Infinity : s.length))
			);
			expect(least).toBe(Infinity);
		}
		expect(met).toBeGreaterThan(5);
	});
	it('of one probe read both ways is those two readings', () => {
		const pair = ['J.T', 'J.TN'] as const;
		const readings: Reading[] = [
			{ when: {}, pair: ['J.S', 'J.T'], answer: 'apart' },
			{ when: {}, pair, answer: 'joined' },
			{ when: { J: 'none' }, pair: [pair[1], pair[0]], answer: 'apart' }
		];
		expect(diagnose(JACK, readings, 3).conflict).toEqual(readings.slice(1));
	});
});

describe('the next probe', () => {
	it('of several that tell as much is the one without a plug change, then the first of the file', () => {
		const bench = benchOf({ sockets: [{ id: 'J', kind: 'jack-ts' }] });
		const { next } = diagnose(bench, []);
		expect(next).toMatchObject({ when: {}, pair: ['J.S', 'J.T'] });
		const later: Reading = { when: { J: 'ts' }, pair: ['J.S', 'J.T'], answer: 'apart' };
		expect(diagnose(bench, [later]).next).toBeNull();
	});
	it('stays in the plug state of the last reading where that costs nothing', () => {
		// Plugs change nothing in an outlet without breaks, so every state tells the same.
		const bench = benchOf({ sockets: [{ id: 'M', kind: 'three-pin-male' }] });
		const read: Reading = { when: { M: 'three-pin' }, pair: ['M.1', 'M.2'], answer: 'apart' };
		expect(diagnose(bench, [read]).next?.when).toEqual({ M: 'three-pin' });
		expect(diagnose(bench, []).next?.when).toEqual({});
	});
	describe('from the panel alone', () => {
		const bench = BENCHES['a hybrid of nine with two jumpers on a metal panel, cabled to a desk']!;
		const near = nodesAtPanel(bench);
		const dictionary = dictionaryOf(bench, 1);
		const asks = (readings: readonly Reading[]) => {
			const all = diagnosisIn(dictionary, readings);
			return { all, near: diagnosisIn(dictionary, readings, undefined, undefined, near) };
		};
		/** The hunt for a sound bench with every answer true, by that advice. */
		function hunted(within: boolean): Reading[] {
			const readings: Reading[] = [];
			for (;;) {
				const next = asks(readings)[within ? 'near' : 'all'].next;
				if (!next) return readings;
				readings.push({ when: next.when, pair: next.pair, answer: answerTo(bench, next) });
			}
		}

		it('the contacts of sockets and the panel are within reach, a device’s terminals are not', () => {
			expect(near).toContain('A.TN');
			expect(near).toContain('panel');
			expect(near.some((node) => node.startsWith('D.'))).toBe(false);
		});
		it('no probe leaves the panel, each is the best of those, and what remains is the same', () => {
			const taken = hunted(true);
			expect(taken.length).toBeGreaterThan(3);
			for (let n = 0; n <= taken.length; n++) {
				const readings = taken.slice(0, n);
				const { all, near: here } = asks(readings);
				expect(here.candidates).toEqual(all.candidates);
				const best = here.next?.gain ?? 0;
				const ids = agreeing(dictionary, readings);
				const total = weightIn(dictionary, ids);
				for (const probe of probesOf(bench)) {
					if (!probe.pair.every((node) => near.includes(node))) continue;
					const joined = agreeing(dictionary, [{ ...probe, answer: 'joined' }], ids);
					if (joined.length === 0 || joined.length === ids.length) continue;
					const gain = bitsOf(weightIn(dictionary, joined) / total);
					expect(gain, JSON.stringify([n, probe])).toBeLessThanOrEqual(best + 1e-9);
				}
			}
		});
		it('where only a far end tells more, there is no advice and several candidates', () => {
			const { near: here, all } = asks(hunted(true));
			expect(here.next).toBeNull();
			expect(here.total).toBeGreaterThan(1);
			expect(all.next?.pair.some((node) => node.startsWith('D.'))).toBe(true);
			// An open core is what the meter cannot see from one end.
			expect(here.candidates.flatMap((c) => c.faults)).toContainEqual({
				kind: 'open',
				wire: 'c:0'
			});
		});
	});
});
