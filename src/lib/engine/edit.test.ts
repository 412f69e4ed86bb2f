/** Changed copies of a bench: plugs in, out and moved; ids that are free. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import {
	contactsOf,
	freeId,
	inState,
	plugIn,
	statesOf,
	withBarePlug,
	withEmpty,
	withPlug
} from './edit';
import { makeBench, parseBench } from './parse';

const bench = benchOf({
	sockets: [
		{ id: 'A', kind: 'hybrid-9' },
		{ id: 'B', kind: 'jack-ts' }
	],
	plugs: [
		{ id: 'bare1', kind: 'ts', socket: 'A', travel: 12 },
		{ id: 'q', kind: 'trs' }
	]
});

describe('plugs', () => {
	it('emptying a socket leaves its plug on the bench, loose', () => {
		const empty = withEmpty(bench, 'A');
		expect(plugIn(empty, 'A')).toBeNull();
		expect(empty.plugs.map((p) => p.id)).toEqual(['bare1', 'q']);
	});
	it('a bare plug gets an id that is free, and is seated', () => {
		const bare = withBarePlug(bench, 'A', 'shorting');
		expect(plugIn(bare, 'A')).toEqual({ id: 'bare2', kind: 'shorting', socket: 'A', travel: 30.5 });
		expect(bare.plugs[0]).toMatchObject({ id: 'bare1', socket: null });
	});
	it('a moved plug leaves the socket it was in', () => {
		const moved = withPlug(bench, 'B', 'bare1');
		expect(plugIn(moved, 'A')).toBeNull();
		expect(plugIn(moved, 'B')).toMatchObject({ id: 'bare1', travel: 30.5 });
	});
	it('a plug moved into a socket that is taken sends the other out', () => {
		const moved = withPlug(bench, 'A', 'q', 3);
		expect(moved.plugs).toEqual([
			{ id: 'bare1', kind: 'ts', socket: null, travel: 12 },
			{ id: 'q', kind: 'trs', socket: 'A', travel: 3 }
		]);
	});
	it('a state names sockets; the others keep their plugs at their travel', () => {
		expect(plugIn(inState(bench, { B: 'q' }), 'A')).toMatchObject({ id: 'bare1', travel: 12 });
		expect(plugIn(inState(bench, { A: 'none' }), 'A')).toBeNull();
		expect(plugIn(inState(bench, { A: 'bare1' }), 'A')).toMatchObject({ travel: 30.5 });
		expect(inState(bench, {})).toEqual(bench);
	});
	it('a state may move a plug out of a socket that it fills with another', () => {
		for (const when of [
			{ A: 'dummy', B: 'bare1' },
			{ B: 'bare1', A: 'dummy' }
		]) {
			const there = inState(bench, when);
			expect(plugIn(there, 'A')!.kind).toBe('dummy');
			expect(plugIn(there, 'B')!.id).toBe('bare1');
		}
	});
	it('every state of every socket is a bench that a file may hold', () => {
		for (const socket of ['A', 'B'])
			for (const state of statesOf(bench, socket)) {
				const there = inState(bench, { [socket]: state });
				expect(parseBench(makeBench(there))).toEqual({ ok: true, value: there });
			}
	});
});

describe('names', () => {
	it('a free id is the stem with the first number that nobody has', () => {
		expect(freeId(bench, 'w')).toBe('w1');
		expect(freeId(bench, 'bare')).toBe('bare2');
	});
	it('states and contacts of a socket that is not there are none', () => {
		expect(statesOf(bench, 'X')).toEqual([]);
		expect(contactsOf(bench, 'X')).toEqual([]);
		expect(contactsOf(bench, 'B')).toEqual(['B.T', 'B.S']);
	});
});
