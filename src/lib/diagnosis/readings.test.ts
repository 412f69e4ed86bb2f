/** What the gate of readings lets in, and how it names what it refuses. */
import { describe, expect, it } from 'vitest';
import type { When } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import type { Reading } from './evidence';
import { checkReadings, strangeReading } from './readings';

const GOOD: Reading = { when: { A: 'none' }, pair: ['A.T', 'A.2'], answer: 'joined' };
const problemOf = (value: unknown) => {
	const parsed = checkReadings(value);
	return parsed.ok ? null : parsed.problem;
};

describe('the readings file', () => {
	it('is a list of readings; a state that is left out is the file’s own', () => {
		const { when: _, ...bare } = GOOD;
		const parsed = checkReadings({ readings: [GOOD, bare] });
		expect(parsed).toEqual({ ok: true, value: [GOOD, { ...bare, when: {} }] });
		expect(checkReadings({ readings: [] })).toEqual({ ok: true, value: [] });
	});
	it.each<[string, unknown, string, RegExp]>([
		['no object', [GOOD], '$', /a readings file, an object in braces/],
		['no readings', {}, '$.readings', /missing; a readings file needs readings/],
		['another key', { readings: [], most: 2 }, '$.most', /unknown key/],
		['no list', { readings: GOOD }, '$.readings', /a list of readings/],
		[
			'a strange answer',
			{ readings: [{ ...GOOD, answer: 'beep' }] },
			'$.readings[0].answer',
			/joined or apart/
		],
		['no answer', { readings: [{ when: {}, pair: GOOD.pair }] }, '$.readings[0].answer', /missing/],
		[
			'another key of a reading',
			{ readings: [{ ...GOOD, ohms: 1 }] },
			'$.readings[0].ohms',
			/unknown key/
		],
		[
			'three nodes',
			{ readings: [GOOD, { ...GOOD, pair: ['A.T', 'A.2', 'A.3'] }] },
			'$.readings[1].pair[2]',
			/two nodes/
		],
		[
			'one node twice',
			{ readings: [{ ...GOOD, pair: ['A.T', 'A.T'] }] },
			'$.readings[0].pair',
			/two different nodes/
		],
		['no node', { readings: [{ ...GOOD, pair: ['A.T', 'A'] }] }, '$.readings[0].pair[1]', /a node/],
		[
			'a state that is no text',
			{ readings: [{ ...GOOD, when: { A: 1 } }] },
			'$.readings[0].when.A',
			/an id/
		]
	])('refuses %s with its path', (_, value, path, message) => {
		expect(problemOf(value)).toMatchObject({ path, message: expect.stringMatching(message) });
	});
});

describe('readings against a bench', () => {
	const bench = benchOf({
		sockets: [{ id: 'A', kind: 'hybrid-5' }],
		plugs: [{ id: 'p', kind: 'ts' }]
	});
	const strange = (reading: Partial<Reading>) => {
		const parsed = strangeReading(bench, [GOOD, { ...GOOD, ...reading }]);
		return parsed && !parsed.ok ? parsed.problem : null;
	};
	it('may name any plug that fits, a plug of the bench, and any node', () => {
		const states: When[] = [{}, { A: 'dummy' }, { A: 'p' }, { A: 'three-pin' }];
		for (const when of states) expect(strange({ when, pair: ['p.tip', 'A.G'] })).toBeNull();
	});
	it.each<[Partial<Reading>, string, RegExp]>([
		[{ when: { B: 'none' } }, '$.readings[1].when.B', /no socket "B"/],
		[{ when: { A: 'q' } }, '$.readings[1].when.A', /is no state/],
		[{ pair: ['A.T', 'A.R'] }, '$.readings[1].pair[1]', /no contact "R"/],
		[{ pair: ['panel', 'A.T'] }, '$.readings[1].pair[0]', /no panel/]
	])('are refused for what it does not have: %j', (reading, path, message) => {
		expect(strange(reading)).toMatchObject({ path, message: expect.stringMatching(message) });
	});
});
