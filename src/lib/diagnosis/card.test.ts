/** The test card against the plain engine: it catches all that can be caught, and none of it is idle. */
import { describe, expect, it } from 'vitest';
import { withFaults } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { cardOf } from './card';
import { faultClassesOf } from './classes';
import { faultListOf } from './faults';
import { answerTo, probesOf, type Probe } from './probes';
import { BENCHES } from './oracle.fixture';
import { sameClass, signature } from './signature';

describe.each(Object.entries(BENCHES))('the card of %s', (_, bench) => {
	const card = cardOf(bench);
	const list = faultListOf(bench);
	const catches = (probe: Probe, at: number) =>
		answerTo(withFaults(bench, [list[at]!]), probe) !== answerTo(bench, probe);
	const loud = list.flatMap((f, i) => (sameClass(bench, [f], []) ? [] : [i]));

	it('expects what the sound bench answers', () => {
		for (const probe of card.probes) expect(answerTo(bench, probe)).toBe(probe.expect);
	});
	it('lists as silent just the faults in the class of the sound bench', () => {
		expect(card.silent).toEqual(list.filter((f) => sameClass(bench, [f], [])));
	});
	it('catches every other fault', () => {
		for (const at of loud) expect(card.probes.some((p) => catches(p, at))).toBe(true);
	});
	it('needs each of its probes', () => {
		for (const idle of card.probes) {
			const rest = card.probes.filter((p) => p !== idle);
			expect(loud.every((at) => rest.some((p) => catches(p, at)))).toBe(false);
		}
	});
	it('is certain to be the shortest', () => expect(card.exact).toBe(true));
	it('comes to each plug state once', () => {
		const states = card.probes.map((p) => JSON.stringify(p.when));
		const runs = states.filter((s, i) => s !== states[i - 1]);
		expect(runs).toHaveLength(new Set(runs).size);
	});
	it('has classes that the signatures of the plain engine agree with', () => {
		const { classes, faults } = faultClassesOf(bench);
		expect(faults).toEqual(list);
		expect(classes.flat()).toHaveLength(list.length);
		const keys = classes.map((c) => new Set(c.map((f) => signature(withFaults(bench, [f])))));
		for (const key of keys) expect(key.size).toBe(1);
		expect(new Set(keys.map((k) => [...k][0])).size).toBe(classes.length);
	});
});

describe('the fewest probes', () => {
	it('of a jack with a break are found by trying every set of probes', () => {
		const bench = benchOf({ sockets: [{ id: 'J', kind: 'jack-ts-break' }] });
		const list = faultListOf(bench).filter((f) => !sameClass(bench, [f], []));
		const probes = probesOf(bench);
		const masks = probes.map((p) =>
			list.reduce((mask, f, i) => {
				const caught = answerTo(withFaults(bench, [f]), p) !== answerTo(bench, p);
				return caught ? mask | (1 << i) : mask;
			}, 0)
		);
		let reached = new Set([0]);
		let fewest = 0;
		while (!reached.has((1 << list.length) - 1)) {
			reached = new Set([...reached].flatMap((r) => masks.map((m) => r | m)));
			fewest++;
		}
		expect(cardOf(bench).probes).toHaveLength(fewest);
	});
});
