/** Which plug states and pairs a tester has, and that faults with the same answers are one class. */
import { describe, expect, it } from 'vitest';
import { inState, isJoined, withFaults, type Bench, type Fault } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { faultListOf } from './faults';
import { answerTo, probeNodes, probesOf, statesOfBench } from './probes';
import { classOf, sameClass, signature } from './signature';

const NINE = benchOf({
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-9' }],
	wires: [
		{ id: 'w1', from: 'A.2', to: 'A.TN' },
		{ id: 'w2', from: 'A.3', to: 'A.RN' }
	],
	plugs: [{ id: 'p', kind: 'trs' }],
	devices: [{ id: 'D', kind: 'mic-input' }]
});

describe('probes', () => {
	it('know the bench as it is, then each socket empty and with each bare plug that fits', () => {
		const bench = benchOf({
			sockets: [
				{ id: 'A', kind: 'hybrid-5' },
				{ id: 'M', kind: 'three-pin-male' },
				{ id: 'J', kind: 'jack-ts' }
			]
		});
		expect(statesOfBench(bench)).toEqual([
			{},
			...['none', 'ts', 'trs', 'three-pin'].map((A) => ({ A })),
			...['none', 'three-pin'].map((M) => ({ M })),
			...['none', 'ts', 'trs'].map((J) => ({ J }))
		]);
	});
	it('reach contacts, terminals and the panel, and no conductor of a plug', () => {
		expect(probeNodes(NINE)).toHaveLength(10 + 4 + 1);
		expect(probeNodes(NINE)).not.toContain('p.tip');
		expect(probesOf(NINE)).toHaveLength(5 * ((15 * 14) / 2));
	});
	it('answer joined for one net and apart for two', () => {
		expect(answerTo(NINE, { when: { A: 'none' }, pair: ['A.2', 'A.T'] })).toBe('joined');
		expect(answerTo(NINE, { when: { A: 'ts' }, pair: ['A.2', 'A.T'] })).toBe('apart');
	});
});

/** The plain reading of "the answers to all probes": one letter each. */
function rawAnswers(bench: Bench): string {
	const letters = probesOf(bench).map(({ when, pair }) => ({ when, pair }));
	const states = new Map(
		statesOfBench(bench).map((when) => [JSON.stringify(when), inState(bench, when)])
	);
	return letters
		.map(({ when, pair }) => (isJoined(states.get(JSON.stringify(when))!, ...pair) ? 'j' : 'a'))
		.join('');
}

describe('classes', () => {
	it('are the same by signature as by every single answer, over the whole list', () => {
		const list: (Fault | null)[] = [null, ...faultListOf(NINE)];
		const benches = list.map((f) => withFaults(NINE, f ? [f] : []));
		const groups = (keys: string[]) => keys.map((key) => keys.indexOf(key));
		expect(groups(benches.map(signature))).toEqual(groups(benches.map(rawAnswers)));
	});
	it('put a wire cut and the contact behind it stuck open apart, since the wire has another end', () => {
		const cut: Fault = { kind: 'open', wire: 'w1' };
		expect(sameClass(NINE, [cut], [{ kind: 'break-stuck-open', contact: 'A.TN' }])).toBe(false);
		expect(sameClass(NINE, [cut], [cut, cut])).toBe(true);
	});
	it('leave what no probe can tell from a sound bench in the class of none', () => {
		const twin = benchOf({
			sockets: [{ id: 'A', kind: 'hybrid-6' }],
			wires: [
				{ id: 'w1', from: 'A.2', to: 'A.T' },
				{ id: 'w2', from: 'A.2', to: 'A.T' }
			]
		});
		expect(sameClass(twin, [{ kind: 'open', wire: 'w1' }], [])).toBe(true);
		expect(classOf(twin, []).map((f) => JSON.stringify(f))).toEqual([
			'{"kind":"open","wire":"w1"}',
			'{"kind":"open","wire":"w2"}',
			'{"kind":"bridge","between":["A.2","A.T"]}',
			// A bare plug's tip leads nowhere, so nobody sees that it does not touch T.
			'{"kind":"spring-bent","contact":"A.T"}'
		]);
	});
	it('tell a bent spring from a break stuck closed only by the plug’s touch', () => {
		const bent: Fault = { kind: 'spring-bent', contact: 'A.T' };
		const stuck: Fault = { kind: 'break-stuck-closed', contact: 'A.TN' };
		// A bare plug's tip touches nothing that a probe can reach, so T's two faults look alike.
		expect(sameClass(NINE, [bent], [stuck])).toBe(true);
		const ring: Fault = { kind: 'spring-bent', contact: 'A.R' };
		// A TS plug's sleeve joins R to S, and a bent R misses that.
		expect(sameClass(NINE, [ring], [{ kind: 'break-stuck-closed', contact: 'A.RN' }])).toBe(false);
	});
});
