/** The host of the advisor: stages in order, slices that pause, and newer questions that win. */
import { describe, expect, it } from 'vitest';
import { diagnose, dictionaryOf, everyClass, parIn, type Reading } from '../diagnosis';
import { benchOf } from '../engine/bench.fixture';
import { AdviceHost, type Answer } from './adviceHost';

const BENCH = benchOf({
	sockets: [{ id: 'A', kind: 'hybrid-9' }],
	wires: [{ id: 'w1', from: 'A.TN', to: 'A.2' }]
});

/** A host with a clock of its own: every look at it takes a millisecond. */
function hosted(slice: number) {
	const answers: Answer[] = [];
	const queue: (() => void)[] = [];
	let time = 0;
	const host = new AdviceHost({
		post: (a) => answers.push(structuredClone(a)),
		later: (run) => queue.push(run),
		now: () => time++,
		slice
	});
	const runOne = () => queue.shift()?.();
	const runAll = () => {
		let pauses = 0;
		for (; queue.length > 0; pauses++) runOne();
		return pauses;
	};
	return { host, answers, runOne, runAll };
}
const replies = (answers: readonly Answer[]) =>
	answers.map((a) => {
		if ('error' in a) throw new Error(a.error);
		return a.reply;
	});

describe('the host of advice', () => {
	const readings: Reading[] = [{ when: {}, pair: ['A.2', 'A.T'], answer: 'apart' }];

	it('answers in stages, the last one marked, each as a diagnosis of its own would', () => {
		const { host, answers, runAll } = hosted(1000);
		host.take({ turn: 3, ask: { bench: BENCH, readings, most: 2 } });
		expect(answers).toEqual([]);
		runAll();
		expect(answers.map((a) => a.turn)).toEqual([3, 3]);
		replies(answers).forEach((reply, i) => {
			expect(reply).toMatchObject(diagnose(BENCH, readings, i + 1));
			expect([reply.most, reply.last]).toEqual([i + 1, i === 1]);
		});
	});
	it('gives par after all else, where it is asked for', () => {
		const { host, answers, runAll } = hosted(1000);
		host.take({ turn: 0, ask: { bench: BENCH, readings: [], most: 1, par: true } });
		runAll();
		const [first, second] = replies(answers);
		expect([first!.par, first!.last, second!.last]).toEqual([null, false, true]);
		const dictionary = dictionaryOf(BENCH, 1);
		expect(second!.par).toEqual(parIn(dictionary, everyClass(dictionary)));
	});
	it('pauses when a slice is over, and goes on after it', () => {
		const short = hosted(2);
		short.host.take({ turn: 0, ask: { bench: BENCH, readings, most: 3 } });
		expect(short.runAll()).toBeGreaterThan(20);
		expect(replies(short.answers).map((r) => r.most)).toEqual([1, 2, 3]);
	});
	it('lets a newer question take the place of the older one', () => {
		const { host, answers, runOne, runAll } = hosted(2);
		host.take({ turn: 0, ask: { bench: BENCH, readings: [], most: 3 } });
		runOne();
		host.take({ turn: 1, ask: { bench: BENCH, readings, most: 1 } });
		runAll();
		expect(answers.filter((a) => a.turn === 0).every((a) => 'reply' in a && !a.reply.last)).toBe(
			true
		);
		expect(answers.at(-1)).toMatchObject({ turn: 1, reply: { most: 1, last: true } });
	});
	it('is quicker with a bench that it knows', () => {
		const { host, runAll } = hosted(2);
		host.take({ turn: 0, ask: { bench: BENCH, readings: [], most: 2 } });
		const first = runAll();
		host.take({ turn: 1, ask: { bench: structuredClone(BENCH), readings, most: 2 } });
		expect(runAll()).toBeLessThan(first / 2);
	});
	it('leaves "sound" out for somebody who knows that something is wrong', () => {
		const { host, answers, runAll } = hosted(1000);
		host.take({ turn: 0, ask: { bench: BENCH, readings: [], most: 1, sound: false } });
		runAll();
		const [reply] = replies(answers);
		expect(reply!.candidates.every((c) => c.faults.length === 1)).toBe(true);
		expect(reply!.total).toBe(dictionaryOf(BENCH, 1).faults.length);
		const sum = reply!.candidates.reduce((s, c) => s + c.weight, 0);
		expect(sum).toBeLessThanOrEqual(1 + 1e-12);
	});
	it('says why when a question cannot be answered', () => {
		const { host, answers, runAll } = hosted(1000);
		const bench = { ...BENCH, sockets: null as never };
		host.take({ turn: 5, ask: { bench, readings, most: 1 } });
		runAll();
		expect(answers).toHaveLength(1);
		expect(answers[0]).toMatchObject({ turn: 5, error: expect.any(String) });
	});
});
