import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, type Bench } from '../engine';
import {
	READINGS_KEY,
	forgetReadings,
	freshAt,
	loadReadings,
	saveReadings,
	type AtPanel,
	type Noted
} from './readings';
import { memoryStore } from './store';

const bench: Bench = {
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind: 'hybrid-6', bush: 'insulated', label: '' }]
};
const noted: Noted[] = [
	{ when: { A: 'ts' }, pair: ['A.T', 'A.2'], answer: 'apart', meter: 'no beep', struck: false },
	{ when: {}, pair: ['A.R', 'A.S'], answer: 'joined', meter: '0.3 Ω', struck: true }
];

const at: AtPanel = { when: { A: 'ts' }, socket: 'A', first: 'A.T', second: '' };

describe('readings of real hardware', () => {
	it('come back with their panel as they were noted', () => {
		const store = memoryStore();
		expect(loadReadings(store)).toBeNull();
		expect(saveReadings({ bench, noted, most: 2, near: true, at }, store)).toBe(true);
		expect(loadReadings(store)).toEqual({ bench, noted, most: 2, near: true, at });
		forgetReadings(store);
		expect(loadReadings(store)).toBeNull();
	});

	it('written by a release that knew no switch for the far ends, they come back with it off', () => {
		const store = memoryStore();
		saveReadings({ bench, noted, most: 2, near: true, at }, store);
		const stored = JSON.parse(store.getItem(READINGS_KEY)!) as Record<string, unknown>;
		delete stored.near;
		delete stored.at;
		store.setItem(READINGS_KEY, JSON.stringify(stored));
		expect(loadReadings(store)).toEqual({ bench, noted, most: 2, near: false, at: freshAt(bench) });
	});

	it('come back with nothing set up where what was set up cannot be read', () => {
		const store = memoryStore();
		for (const bad of [
			null,
			3,
			{ when: { A: 'none-such' } },
			{ when: { B: 'ts' }, socket: 'B' },
			{ first: 'A.X', second: 7 }
		]) {
			saveReadings({ bench, noted, most: 1, near: false, at: bad as never }, store);
			expect(loadReadings(store), JSON.stringify(bad)).toEqual({
				bench,
				noted,
				most: 1,
				near: false,
				at: freshAt(bench)
			});
		}
	});

	it('are not shown when they cannot be read, and stay where they are', () => {
		const store = memoryStore();
		saveReadings({ bench, noted, most: 1, near: false, at }, store);
		const good = store.getItem(READINGS_KEY)!;
		for (const bad of ['', '{', 'null', '[]', good.replaceAll('A.T', 'B.T'), '{"bench":"{}"}']) {
			store.setItem(READINGS_KEY, bad);
			expect(loadReadings(store), bad).toBeNull();
			expect(store.getItem(READINGS_KEY)).toBe(bad);
		}
	});
});
