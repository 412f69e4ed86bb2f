/** Beside real hardware: what a reading is said to rule out, and what a number of ohms may be. */
import { describe, expect, it } from 'vitest';
import type { Fault } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { cannotWords, mendWords, ruledOutWords, setWords } from './real';

const bench = benchOf({
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-9' }],
	wires: [{ id: 'w1', from: 'A.TN', to: 'A.2', awg: 26, mm: 40 }],
	devices: [{ id: 'DESK', kind: 'mic-input' }],
	cables: [
		{
			id: 'c1',
			m: 12,
			awg: 24,
			cores: [
				['A.1', 'DESK.shield'],
				['A.2', 'DESK.hot'],
				['A.3', 'DESK.cold']
			]
		}
	]
});
const open: Fault = { kind: 'open', wire: 'w1' };
const gone = [{ sets: [[open]], members: 1, weight: 0.5 }];

describe('what a reading ruled out', () => {
	it('is a fault outright where only one is reckoned with', () =>
		expect(ruledOutWords(bench, 10, 8, gone, 1)).toMatch(
			/No longer possible: jumper w1 is open: it conducts nothing\.$/
		));
	it('is a fault alone while it may still stand beside another', () => {
		expect(ruledOutWords(bench, 10, 8, gone, 2)).toMatch(/conducts nothing \(this alone\)\.$/);
		const two = [{ ...gone[0]!, sets: [[open, { kind: 'open', wire: 'w2' } as const]] }];
		expect(ruledOutWords(bench, 10, 8, two, 2)).not.toMatch(/\(/);
		expect(ruledOutWords(bench, 10, 8, two, 3)).toMatch(/\(these and nothing else\)\.$/);
	});
	it('counts readings that contradict as both, or all', () => {
		expect([1, 2, 3].map(cannotWords)).toEqual([
			'cannot be true',
			'cannot both be true',
			'cannot all be true'
		]);
	});
});

describe('leads that are exchanged', () => {
	const swap = (a: string, b: string): Fault => ({ kind: 'swap', contacts: [a, b] });
	it('are two where both contacts have one', () =>
		expect(setWords(bench, [swap('A.2', 'A.3')])).toMatch(
			/are swapped: each landed on the other$/
		));
	it('is one lead on the wrong lug where the other contact has none, whichever is named first', () => {
		for (const fault of [swap('A.TN', 'A.T'), swap('A.T', 'A.TN')]) {
			expect(setWords(bench, [fault])).toBe('the lead of TN sits on T');
			expect(mendWords(bench, fault)).toBe('Follow the lead on T by eye, and move it to TN.');
		}
		expect(setWords(bench, [swap('A.2', 'A.R')])).toBe('the leads of pin 2 sit on R');
	});
});
