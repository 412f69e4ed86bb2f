import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, inState, isJoined, withFaults, type Bench, type Fault } from '../engine';
import { NO_SYMPTOM } from './symptom';
import { toldHunt, type HuntReading } from './told';

const bench: Bench = {
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind: 'hybrid-6', bush: 'insulated', label: '' }],
	wires: [
		{ id: 'w1', from: 'A.2', to: 'A.T', awg: 26, mm: 40 },
		{ id: 'w2', from: 'A.3', to: 'A.R', awg: 26, mm: 40 }
	]
};
const hidden: Fault = { kind: 'open', wire: 'w2' };
const read = (a: string, b: string, suspect: Fault | null = null): HuntReading => {
	const pair = [`A.${a}`, `A.${b}`] as const;
	const joined = isJoined(inState(withFaults(bench, [hidden]), {}), ...pair);
	return { when: {}, pair, answer: joined ? 'joined' : 'apart', suspect };
};

describe('a hunt as its hunter is told of it', () => {
	it('says what each reading ruled out, and whether the suspicion stands', () => {
		const suspect: Fault = { kind: 'swap', contacts: ['A.2', 'A.3'] };
		const w1: Fault = { kind: 'open', wire: 'w1' };
		const readings = [read('2', 'T', w1), read('3', 'R', hidden), read('2', 'T', suspect)];
		const told = toldHunt({ bench, readings, from: {}, symptom: NO_SYMPTOM, hidden: null });
		expect(told.steps.map((s) => s.stands)).toEqual([false, true, expect.any(Boolean)]);
		expect(told.steps[0]!.gone).toContainEqual(w1);
		expect(told.steps[0]!.gone).not.toContainEqual(hidden);
		expect(told.steps[1]!.after).toBeLessThan(told.steps[1]!.before);
		expect(told.steps[2]!.wasted).toBe(true);
		expect(told.steps[2]!.gone).toEqual([]);
		expect(told.left).toBe(told.steps[2]!.after);
		expect(told.best).toBeNull();
	});

	it('punishes a wasted probe once, and lays a best hunt without loss beside it', () => {
		const readings = [read('2', 'T'), read('2', 'T'), read('3', 'R')];
		const { steps, best } = toldHunt({ bench, readings, from: {}, symptom: NO_SYMPTOM, hidden });
		expect(steps[1]!.regret.lost).toBeGreaterThan(0);
		const without = toldHunt({
			bench,
			readings: [readings[0]!, readings[2]!],
			from: {},
			symptom: NO_SYMPTOM,
			hidden
		});
		expect(steps[2]!.regret).toEqual(without.steps[1]!.regret);
		expect(best!.length).toBeGreaterThan(0);
		for (const { regret } of best!) expect(regret.lost).toBeLessThan(1e-9);
		expect(best!.at(-1)!.after).toBe(1);
	});
});
