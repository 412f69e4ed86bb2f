/** Beside real hardware: what a reading is said to rule out, and what a number of ohms may be. */
import { describe, expect, it } from 'vitest';
import type { Fault } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import {
	betweenWords,
	cannotWords,
	deviceBeepWords,
	mendWords,
	ruledOutWords,
	setWords
} from './real';

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

describe('ohms across a device that is drawn', () => {
	const said = (a: string, b: string, ohms: number) => betweenWords(bench, {}, [a, b], ohms);
	it.each([60, 3000, 13_600])(
		'%d Ω are that device, which is not to be unplugged for good',
		(ohms) => {
			const { points, likely } = said('A.2', 'A.3', ohms);
			expect(likely).toBe('apart');
			expect(points.join(' ')).toMatch(/^DESK hangs between the two/);
			expect(points.join(' ')).toMatch(/transformer.*13\.6 kΩ.*capacitors.*put it back/);
			expect(points.join(' ')).not.toMatch(/not on your drawing|nplug/);
		}
	);
	it('are not said of a pair on which it does not hang', () => {
		expect(said('A.1', 'A.3', 60).points.join(' ')).toMatch(/not on your drawing/);
		expect(deviceBeepWords(bench, {}, ['A.1', 'A.3'])).toBeNull();
	});
	it('a beep there is no bridge yet', () => {
		expect(deviceBeepWords(bench, {}, ['A.TN', 'A.3'])).toMatch(/would beep on a sound panel too/);
		expect(mendWords(bench, { kind: 'bridge', between: ['A.2', 'A.3'] })).toMatch(
			/lift the far plug/
		);
	});
});
