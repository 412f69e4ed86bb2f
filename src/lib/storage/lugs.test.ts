import { describe, expect, it } from 'vitest';
import { LUGS_KEY, loadLugs, saveLugs, type KeptLugs } from './lugs';
import { memoryStore } from './store';

const KEPT: KeptLugs = {
	kind: 'hybrid-9',
	bag: ['ts', 'three-pin'],
	readings: [
		{ state: 'none', a: 0, b: 8, sounds: false },
		{ state: 'ts', a: 'sleeve', b: 3, sounds: true },
		{ state: 'three-pin', a: '1', b: 2, sounds: false }
	]
};

describe('readings of an unmarked socket', () => {
	it('come back as they were noted', () => {
		const store = memoryStore();
		expect(loadLugs(store)).toBeNull();
		expect(saveLugs(KEPT, store)).toBe(true);
		expect(loadLugs(store)).toEqual(KEPT);
	});
	it.each([
		['no JSON', '{'],
		['nothing', 'null'],
		['a list', '[]'],
		['a kind that does not exist', { ...KEPT, kind: 'hybrid-7' }],
		['no readings', { ...KEPT, readings: 3 }],
		['no plugs', { ...KEPT, bag: null }],
		['a lug too many', { ...KEPT, kind: 'hybrid-6' }],
		['a plug that does not fit', { ...KEPT, kind: 'jack-trs-break', readings: [KEPT.readings[2]] }],
		['a lug against itself', { ...KEPT, readings: [{ state: 'none', a: 1, b: 1, sounds: true }] }],
		[
			'a part that the plug does not have',
			{ ...KEPT, readings: [{ state: 'ts', a: 'ring', b: 1, sounds: true }] }
		],
		['a part of no plug', { ...KEPT, readings: [{ state: 'none', a: 'tip', b: 1, sounds: true }] }],
		['no answer', { ...KEPT, readings: [{ state: 'none', a: 0, b: 1 }] }]
	])('with %s are not shown, and stay where they are', (_, bad) => {
		const store = memoryStore();
		const text = typeof bad === 'string' ? bad : JSON.stringify(bad);
		store.setItem(LUGS_KEY, text);
		expect(loadLugs(store)).toBeNull();
		expect(store.getItem(LUGS_KEY)).toBe(text);
	});
});
