/**
 * Needs against sockets, by hand from what the kinds of socket are: contacts as counted in the trade
 * (common practice), break contacts, and which plug goes where.
 */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS, type SocketKind } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { readExercises } from './content.node';
import type { ChooseExercise } from './exercise';
import { fittingOptions } from './choose';
import { judge } from './judge';
import { failuresOf, type Need, type Option } from './needs';

const bench = benchOf({
	panel: { metal: true },
	sockets: [
		...SOCKET_KINDS.map((kind) => ({ id: kind, kind })),
		{ id: 'metal', kind: 'jack-trs', bush: 'metal' }
	]
});
const option = (...sockets: string[]): Option => ({
	id: 'x',
	sockets,
	termination: 'cup',
	latch: true
});
const failing = (need: Need, ...sockets: string[]) =>
	failuresOf(bench, option(...sockets), [need])[0];
/** Kinds of socket that meet the need. */
const meeting = (need: Need): SocketKind[] =>
	SOCKET_KINDS.filter((kind) => failing(need, kind) === undefined);

describe('a need is met by', () => {
	it.each<[string, Need, SocketKind[]]>([
		['nine contacts or more', { need: 'contacts', least: 9, most: 99 }, ['hybrid-9', 'hybrid-10']],
		[
			'just five',
			{ need: 'contacts', least: 5, most: 5 },
			['hybrid-5', 'patch-jack', 'jack-ts-changeover']
		],
		[
			'a three-pin plug going in',
			{ need: 'takes', plug: 'three-pin' },
			['hybrid-5', 'hybrid-6', 'hybrid-9', 'hybrid-10', 'three-pin-female', 'three-pin-male']
		],
		[
			'a contact of its own for every part of a TRS plug',
			{ need: 'meets', plug: 'trs' },
			['hybrid-6', 'hybrid-9', 'hybrid-10', 'jack-trs', 'jack-trs-break', 'patch-jack']
		],
		[
			'break contacts on tip and ring',
			{ need: 'breaks', on: ['T', 'R'] },
			['hybrid-9', 'hybrid-10', 'jack-trs-break', 'patch-jack']
		],
		[
			'a break contact on the sleeve as well',
			{ need: 'breaks', on: ['S'] },
			['hybrid-9', 'hybrid-10', 'jack-trs-break']
		],
		['a break contact on pin 1', { need: 'breaks', on: ['1'] }, ['hybrid-10']],
		['an isolated changeover', { need: 'changeover' }, ['jack-ts-changeover']],
		[
			'either of two plugs, one at a time',
			{ need: 'one-at-a-time', plugs: ['three-pin', 'ts'] },
			['hybrid-5', 'hybrid-6', 'hybrid-9', 'hybrid-10']
		],
		['both plugs at once, in one socket', { need: 'both-at-once', plugs: ['three-pin', 'ts'] }, []],
		['an output', { need: 'gender', is: 'male' }, ['three-pin-male']],
		[
			'a TS plug joining ring and sleeve',
			{ need: 'behaves', with: 'ts', joined: [['R', 'S']], apart: [['T', 'S']] },
			['hybrid-6', 'hybrid-9', 'hybrid-10', 'jack-trs', 'jack-trs-break', 'patch-jack']
		],
		[
			'a tip that an insulating plug cuts off from TN',
			{ need: 'behaves', with: 'dummy', joined: [], apart: [['T', 'TN']] },
			['hybrid-9', 'hybrid-10', 'jack-ts-break', 'jack-trs-break', 'patch-jack']
		]
	])('%s', (_, need, kinds) => expect(meeting(need)).toEqual(kinds));

	it('two sockets beside each other, where both plugs go in at once', () => {
		const both: Need = { need: 'both-at-once', plugs: ['three-pin', 'trs'] };
		expect(failing(both, 'three-pin-female', 'jack-trs')).toBeUndefined();
		expect(
			failing({ ...both, need: 'one-at-a-time' }, 'three-pin-female', 'jack-trs')
		).toBeDefined();
		expect(failing(both, 'hybrid-6', 'three-pin-female')).toBeUndefined();
		expect(failing(both, 'hybrid-6')).toBeDefined();
	});
	it('an insulated bush, where the sleeve must keep off the panel', () => {
		expect(failing({ need: 'sleeve-off-panel' }, 'jack-trs')).toBeUndefined();
		expect(failing({ need: 'sleeve-off-panel' }, 'metal')).toBeDefined();
	});
	it('attributes of the variant: how wires end, whether it latches', () => {
		expect(failing({ need: 'termination', among: ['cup', 'crimp'] }, 'jack-ts')).toBeUndefined();
		expect(failing({ need: 'termination', among: ['board'] }, 'jack-ts')).toBeDefined();
		expect(failing({ need: 'latch', is: true }, 'jack-ts')).toBeUndefined();
		expect(failing({ need: 'latch', is: false }, 'jack-ts')).toBeDefined();
		expect(failing({ need: 'openings', most: 1 }, 'jack-ts', 'metal')).toMatchObject({ count: 2 });
	});
	it('nothing: then it is said what is missing', () => {
		expect(failing({ need: 'breaks', on: ['T', 'R'] }, 'jack-ts-break')).toMatchObject({
			missing: 'R'
		});
		expect(failing({ need: 'meets', plug: 'trs' }, 'hybrid-5')).toMatchObject({ missing: 'ring' });
		expect(failing({ need: 'contacts', least: 6, most: 99 }, 'hybrid-5')).toMatchObject({
			count: 5
		});
		expect(
			failing({ need: 'behaves', with: 'none', joined: [['T', 'TN']], apart: [] }, 'jack-ts')
		).toMatchObject({ missing: 'TN' });
		expect(
			failing({ need: 'behaves', with: 'trs', joined: [['T', 'TN']], apart: [] }, 'patch-jack')
		).toMatchObject({ pair: ['T', 'TN'] });
		expect(failing({ need: 'takes', plug: 'ts' }, 'three-pin-male')).toMatchObject({ plug: 'ts' });
	});
});

describe('a choice', () => {
	const choose = readExercises().find((e) => e.id === 'choose-one-opening') as ChooseExercise;
	const judged = (...chosen: string[]) => judge(choose, { kind: 'choose', chosen });
	it('is right with every variant that fits and no other', () => {
		expect(fittingOptions(choose)).toEqual(['A', 'F']);
		expect(judged('F', 'A')).toMatchObject({ score: 1, passed: true });
	});
	it('scores right ones over right, missed and false ones', () => {
		expect(judged('A').score).toBe(0.5);
		expect(judged('A', 'F', 'B').score).toBe(0.6667);
		expect(judged().score).toBe(0);
	});
	it('says of every other variant what it fails', () => {
		const fails = judged('A', 'F').choose!.options.map((o) => o.fails.map((f) => f.need.need));
		expect(fails).toEqual([
			[],
			['breaks'],
			['termination'],
			['openings', 'one-at-a-time'],
			['meets', 'breaks', 'latch'],
			[]
		]);
	});
	it('refuses what was not offered', () => expect(judged('Z').refused).toContain('not among'));
});
