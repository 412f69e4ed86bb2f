/** An unmarked socket without a screen: what is kept, what a step back brings, what is promised. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readingsLeft } from '../diagnosis/lugsLeft';
import type { KeptLugs } from '../storage';
import { LugHunt } from './lugHunt.svelte';
import { frontWords } from '../words/referenceTell';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function begun() {
	const kept: KeptLugs[] = [];
	const hunt = new LugHunt((k) => kept.push(k));
	hunt.see(frontWords('patch-jack'), 5);
	return { hunt, kept };
}

describe('an unmarked socket', () => {
	it('goes on in another page from what was kept', () => {
		const { hunt, kept } = begun();
		hunt.carry('trs', false);
		hunt.answer(false);
		hunt.answer(true);
		const other = new LugHunt();
		other.open(kept.at(-1)!);
		expect(other.readings).toEqual(hunt.readings);
		expect([other.front, other.count, other.plugs]).toEqual([hunt.front, 5, hunt.plugs]);
		expect(other.next).toEqual(hunt.next);
	});
	it('says how many readings are left once it has counted, anew after each', () => {
		const { hunt } = begun();
		expect(hunt.left).toBeNull();
		vi.runAllTimers();
		expect(hunt.left).toBe(readingsLeft(hunt.kinds, [], hunt.plugs));
		hunt.answer(false);
		expect(hunt.left).toBeNull();
		hunt.answer(false);
		vi.runAllTimers();
		expect(hunt.left).toBe(readingsLeft(hunt.kinds, hunt.readings, hunt.plugs));
		hunt.end();
	});
	it('begins anew with another socket, and a step back brings the readings with theirs', () => {
		const { hunt } = begun();
		hunt.answer(false);
		hunt.see(frontWords('hybrid-9'));
		expect([hunt.readings, hunt.count]).toEqual([[], 5]);
		hunt.undo();
		expect(hunt.readings).toHaveLength(1);
		expect(hunt.front).toBe(frontWords('patch-jack'));
		hunt.takeAway();
		expect(hunt.readings).toEqual([]);
		hunt.undo();
		hunt.clear();
		hunt.undo();
		expect(hunt.readings).toHaveLength(1);
	});
});
