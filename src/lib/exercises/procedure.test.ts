/**
 * What an order of steps would have done. The rules are those of safe practice: prove the tester,
 * test, prove it again (HSE GS38, as digested); never continuity on a live line (Kuphaldt, as digested).
 */
import { describe, expect, it } from 'vitest';
import { benchOf } from '../engine/bench.fixture';
import { readExercises } from './content.node';
import type { OrderExercise } from './exercise';
import { judge } from './judge';
import { playOrder } from './order';
import { play, startOf, type Action } from './procedure';

const bench = (phantom: boolean) =>
	benchOf({ devices: [{ id: 'DESK', kind: 'mic-input', phantom }] });
const played = (does: readonly Action[], phantom = true) =>
	play(
		bench(phantom),
		['DESK.hot', 'DESK.shield'],
		does.map((d, i) => ({ id: `s${i}`, text: '', does: d, needed: true }))
	);
const came = (does: readonly Action[], phantom = true) =>
	played(does, phantom).consequences.map((c) => c.kind);
const DEAD: Action[] = ['mute', 'phantom-off', 'unplug-mains', 'wait'];
const PROOF: Action[] = ['prove-meter', 'test-volts', 'prove-meter'];

describe('a line', () => {
	it('that is made dead and proven so may be probed, and nothing comes of it', () =>
		expect(came([...DEAD, ...PROOF, 'probe', 'solder', 'open'])).toEqual([]));
	it('on which phantom power is on stops the meter: 48 V stand there', () => {
		const { consequences } = played(['probe']);
		expect(consequences.map((c) => c.kind)).toEqual([
			'mains-probe',
			'live-probe',
			'not-proven-dead'
		]);
		const live = consequences.find((c) => c.kind === 'live-probe')!;
		expect(live.hazard).toBe(true);
		expect(live.volts).toBeGreaterThan(47);
	});
	it('still holds its charge after the switch, and after the plug, until one has waited', () => {
		expect(came(['mute', 'phantom-off', 'unplug-mains', 'probe'])).toContain('live-probe');
		expect(came(['mute', 'unplug-mains', 'probe'])).toContain('live-probe');
		expect(came([...DEAD, 'probe'])).toEqual(['not-proven-dead']);
	});
	it('does not empty while the supply still feeds it', () =>
		expect(came(['mute', 'wait', 'unplug-mains', 'probe'])).toContain('live-probe'));
	it('empties without its mains even while the switch is on', () =>
		expect(came(['mute', 'unplug-mains', 'wait', ...PROOF, 'probe'])).toEqual([]));
	it('is live again when the supply is', () => {
		expect(came([...DEAD, ...PROOF, 'plug-in-mains', 'phantom-on', 'probe'])).toEqual([
			'mains-probe',
			'live-probe',
			'not-proven-dead'
		]);
		expect(came([...DEAD, ...PROOF, 'phantom-on', 'probe'])).toEqual(['not-proven-dead']);
	});
	it('without phantom power needs no wait, but still the mains plug out and a proof', () => {
		expect(came(['probe'], false)).toEqual(['mains-probe', 'not-proven-dead']);
		expect(came(['unplug-mains', ...PROOF, 'probe'], false)).toEqual([]);
	});
});

describe('a meter', () => {
	it('that was not proven before the test proves nothing', () =>
		expect(came([...DEAD, 'test-volts', 'prove-meter', 'probe'])).toEqual([
			'unproven-meter',
			'not-proven-dead'
		]));
	it('that was not proven after the test may have died in it', () =>
		expect(came([...DEAD, 'prove-meter', 'test-volts', 'probe'])).toEqual(['not-proven-again']));
	it('is proven for one test, not for all', () =>
		expect(came([...DEAD, ...PROOF, 'test-volts', 'test-volts', 'prove-meter', 'probe'])).toEqual([
			'unproven-meter',
			'not-proven-dead'
		]));
	it('that shows volts has found the line live', () =>
		expect(came(['prove-meter', 'test-volts'])).toEqual(['still-live']));
});

describe('other things', () => {
	it('a box is not opened while it is plugged in', () => {
		expect(came(['open'])).toEqual(['opened-powered']);
		expect(came(['unplug-mains', 'open'])).toEqual([]);
	});
	it('an iron does not meet a live line', () =>
		expect(came(['unplug-mains', 'solder'])).toEqual(['soldered-live', 'not-proven-dead']));
	it('a plug that moves on a charged line meets phantom voltage, and thumps in an open channel', () => {
		expect(came(['move-plug'])).toEqual(['plug-meets-phantom', 'thump']);
		expect(came(['mute', 'move-plug'])).toEqual(['plug-meets-phantom']);
		expect(came([...DEAD, 'move-plug'])).toEqual([]);
	});
	it('a part is not changed before a reading', () => {
		expect(came(['swap-part'])).toEqual(['swapped-blind']);
		expect(came([...DEAD, ...PROOF, 'probe', 'swap-part'])).toEqual([]);
	});
	it('protective earth is never lifted, whatever came before', () =>
		expect(came([...DEAD, ...PROOF, 'lift-earth'])).toEqual(['lost-earth']));
	it('the start is as the bench has it, mains in', () => {
		expect(startOf(bench(true))).toMatchObject({ mains: true, phantom: true, charged: true });
		expect(startOf(bench(false))).toMatchObject({ mains: true, phantom: false, charged: false });
	});
	it('there is a situation before each step and one after the last', () => {
		const { situations } = played(DEAD);
		expect(situations).toHaveLength(5);
		expect(situations.at(-1)).toMatchObject({ mains: false, phantom: false, charged: false });
	});
});

describe('an order', () => {
	const test = readExercises().find((e) => e.id === 'order-test-the-line') as OrderExercise;
	const judged = (order: readonly string[]) => judge(test, { kind: 'order', order });
	const swapped = (a: string, b: string) =>
		test.solution.map((id) => (id === a ? b : id === b ? a : id));
	it('that keeps every rule is right, and there is more than one', () => {
		const other = ['tell', 'mute', 'prove', 'phantom-off', 'unplug', 'wait'];
		expect(judged([...other, 'volts', 'prove-again', 'probe'])).toMatchObject({
			score: 1,
			passed: true
		});
		expect(judged(test.solution)).toMatchObject({ score: 1, passed: true });
	});
	it('that breaks a rule is told the rule and its consequence', () => {
		const { order, passed } = judged(swapped('wait', 'volts'));
		expect(passed).toBe(false);
		const broken = order!.rules.filter((r) => !r.kept).map(({ rule }) => [rule.first, rule.then]);
		expect(broken).toContainEqual(['wait', 'volts']);
		expect(order!.consequences.map((c) => c.kind)).toContain('still-live');
	});
	it('may pull the mains plug before the switch or after it: both make the line dead', () => {
		const swapped = test.solution.map((id) =>
			id === 'unplug' ? 'phantom-off' : id === 'phantom-off' ? 'unplug' : id
		);
		expect(swapped).not.toEqual(test.solution);
		expect(judged(swapped)).toMatchObject({ passed: true, score: 1 });
		const late = ['tell', 'mute', 'unplug', 'wait', 'phantom-off', ...test.solution.slice(5)];
		expect(judged(late)).toMatchObject({ passed: true, score: 1 });
	});
	it('that leaves a step out misses it, and breaks no rule about it', () => {
		const { order } = judged(test.solution.slice(0, -1));
		expect(order).toMatchObject({ missing: ['probe'], spare: [] });
		expect(order!.rules.every((r) => r.kept)).toBe(true);
	});
	it('of nothing scores nothing', () =>
		expect(judged([])).toMatchObject({ score: 0, passed: false }));
	it('with a hazard scores 0', () =>
		expect(judged([...test.solution, 'tape'])).toMatchObject({ score: 0, unsafe: true }));
	it('with a step twice, or one that is not there, is refused', () => {
		expect(judged(['tell', 'tell']).refused).toContain('twice');
		expect(judged(['dance']).refused).toContain('not among');
	});
	it('is played with what the meter reads at each step', () => {
		const { consequences } = playOrder(test, ['phantom-off', 'prove', 'volts']);
		expect(consequences.map((c) => [c.kind, c.at])).toEqual([
			['thump', 0],
			['still-live', 2]
		]);
	});
});
