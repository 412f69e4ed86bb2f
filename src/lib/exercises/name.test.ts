/**
 * Names for lugs. What can be told from what was worked out by hand: with plug conductors at hand every
 * spring shows itself; with bare plugs only, ring and sleeve of a jack behave alike.
 */
import { describe, expect, it } from 'vitest';
import { benchOf } from '../engine/bench.fixture';
import { readExercises } from './content.node';
import type { NameExercise } from './exercise';
import { judge } from './judge';
import { lettersOf, lugOfNode, nodeOfLug, nodesToProbe, sameNamings, statesToName } from './name';

const five = readExercises().find((e) => e.id === 'name-lugs-of-five') as NameExercise;
type Names = Readonly<Record<string, string>>;
const TRUE_NAMES: Names = { a: 'RN', b: 'T', c: 'S', d: 'TN', e: 'R' };
const judged = (names: Names, exercise = five, kind = 'patch-jack' as const) =>
	judge(exercise, { kind: 'name', names, socketKind: kind, probes: [] });
/** The same jack without the plug whose conductors can be reached. */
const bare: NameExercise = {
	...five,
	bench: { ...five.bench, plugs: [] },
	candidates: ['patch-jack'],
	plugs: ['ts', 'trs', 'shorting']
};

describe('names', () => {
	it('that are all true score 1', () =>
		expect(judged(TRUE_NAMES)).toMatchObject({ score: 1, passed: true, items: [] }));
	it('can be one way only where a plug’s own conductors can be probed', () => {
		expect(sameNamings(five)).toBe(1);
		expect(judged({ ...TRUE_NAMES, c: 'R', e: 'S' }).passed).toBe(false);
	});
	it('may be exchanged where no probe can tell: bare plugs open T and R alike, and TS joins R to S', () => {
		// A shorting plug joins T, R and S; TS joins R and S; RN tells R from S. So nothing is alike here.
		expect(sameNamings(bare)).toBe(1);
		// Without the TS plug T and R behave alike, each with its break contact.
		const few: NameExercise = { ...bare, plugs: ['trs', 'shorting'] };
		expect(sameNamings(few)).toBe(2);
		const crossed = { a: 'TN', b: 'R', c: 'S', d: 'RN', e: 'T' };
		expect(judged(crossed, few)).toMatchObject({ score: 1, passed: true });
		expect(judged(crossed, few).name!.alike).toEqual([
			['a', 'd'],
			['b', 'e']
		]);
		expect(judged(crossed, bare).passed).toBe(false);
		// Half exchanged is wrong in any case: TN belongs to T.
		expect(judged({ ...crossed, a: 'RN', d: 'TN' }, few).passed).toBe(false);
	});
	it('are judged by the nearest right naming, so that one slip costs two lugs', () => {
		const few: NameExercise = { ...bare, plugs: ['trs', 'shorting'] };
		const slip = { a: 'TN', b: 'R', c: 'T', d: 'RN', e: 'S' };
		expect(judged(slip, few)).toMatchObject({ score: 0.6 });
	});
	it('that are wrong are answered with a reading that shows it, and the reading is true', () => {
		const { items } = judged({ ...TRUE_NAMES, b: 'TN', d: 'T' });
		expect(items.length).toBeGreaterThan(0);
		for (const item of items) {
			expect(item.found).not.toBe(item.wanted);
			expect(item.pair.some((node) => ['b', 'd'].includes(lugOfNode(five, node) ?? ''))).toBe(true);
		}
	});
	it('that are missing are wrong', () => {
		const result = judged({});
		expect(result).toMatchObject({ passed: false });
		expect(result.name!.lugs.every((l) => !l.right && l.called === null)).toBe(true);
	});
	it('need the kind where two are in question', () => {
		const result = judge(five, { kind: 'name', names: TRUE_NAMES, probes: [] });
		expect(result).toMatchObject({ passed: false, name: { kindCalled: null, kindRight: false } });
		expect(result.score).toBe(0.8333);
	});
	it('for a socket of another kind are right if nothing can tell the two kinds apart', () => {
		const bench = benchOf({ sockets: [{ id: 'X', kind: 'three-pin-female' }] });
		const lugs = { a: '1', b: '2', c: '3' };
		const twin: NameExercise = {
			...five,
			bench,
			socket: 'X',
			candidates: ['three-pin-female', 'three-pin-male'],
			lugs,
			plugs: ['three-pin'],
			beliefs: []
		};
		const answer = { kind: 'name', names: lugs, socketKind: 'three-pin-male', probes: [] } as const;
		expect(judge(twin, answer)).toMatchObject({ score: 1, passed: true });
	});
	it('with more readings than allowed score half', () => {
		const strict: NameExercise = { ...five, most: 1 };
		const probes = [
			{ when: {}, pair: ['X.T', 'X.TN'] },
			{ when: {}, pair: ['X.R', 'X.RN'] }
		] as const;
		const answer = { kind: 'name', names: TRUE_NAMES, socketKind: 'patch-jack', probes } as const;
		expect(judge(strict, answer)).toMatchObject({ score: 0.5, passed: false, name: { used: 2 } });
	});
	it('have a par: with a yes or no each, eight readings at least tell 240 namings apart', () =>
		expect(judged(TRUE_NAMES).name!.par).toBe(8));
	it('that no lug can bear are refused', () => {
		expect(judged({ a: 'G' }).refused).toContain('no name');
		expect(judged({ z: 'T' }).refused).toContain('no unmarked lug');
		const odd = { kind: 'name', names: {}, socketKind: 'jack-ts', probes: [] } as const;
		expect(judge(five, odd).refused).toContain('not among the kinds');
	});
});

describe('an unmarked socket', () => {
	it('gives its lugs letters, and letters their nodes', () => {
		expect(lettersOf(five)).toEqual(['a', 'b', 'c', 'd', 'e']);
		expect(nodeOfLug(five, 'b')).toBe('X.T');
		expect(lugOfNode(five, 'X.T')).toBe('b');
		expect(lugOfNode(five, 'lead.tip')).toBeNull();
	});
	it('is probed at its lugs and at whatever bears a name', () =>
		expect(nodesToProbe(five)).toEqual([
			...['X.RN', 'X.T', 'X.S', 'X.TN', 'X.R'],
			...['lead.tip', 'lead.ring', 'lead.sleeve']
		]));
	it('is probed as it stands, empty, and with each plug', () =>
		expect(statesToName(five)).toEqual([{ X: 'none' }, { X: 'lead' }, { X: 'dummy' }]));
});
