import { describe, expect, it } from 'vitest';
import { benchOf } from '../engine/bench.fixture';
import { memoryStore } from './store';
import { TICKS_KEY, loadTicks, saveTicks } from './ticks';

const panel = (title: string, mm = 40) =>
	benchOf({
		title,
		sockets: [{ id: 'A', kind: 'hybrid-9' }],
		wires: [{ id: 'w1', from: 'A.TN', to: 'A.2', mm }]
	});

describe('ticks on a test card', () => {
	it('come back for the same panel, and for no other', () => {
		const store = memoryStore();
		expect(loadTicks(panel('Left'), store)).toEqual([]);
		expect(saveTicks(panel('Left'), ['a', 'b'], store)).toBe(true);
		saveTicks(panel('Right'), ['c'], store);
		expect(loadTicks(panel('Left'), store)).toEqual(['a', 'b']);
		expect(loadTicks(panel('Right'), store)).toEqual(['c']);
		expect(loadTicks(panel('Left', 41), store)).toEqual([]);
	});
	it('stay when a plug lies elsewhere on the bench', () => {
		const store = memoryStore();
		saveTicks(panel('Left'), ['a'], store);
		const plugged = {
			...panel('Left'),
			plugs: benchOf({ plugs: [{ id: 'p', kind: 'ts' }] }).plugs
		};
		expect(loadTicks(plugged, store)).toEqual(['a']);
	});
	it('are gone when they are cleared, and the oldest panel makes room for new ones', () => {
		const store = memoryStore();
		saveTicks(panel('Left'), ['a'], store);
		saveTicks(panel('Left'), [], store);
		expect(store.getItem(TICKS_KEY)).toBe('[]');
		for (let i = 0; i < 30; i++) saveTicks(panel(`No. ${i}`), ['a'], store);
		expect(loadTicks(panel('No. 0'), store)).toEqual([]);
		expect(loadTicks(panel('No. 29'), store)).toEqual(['a']);
	});
	it('are none where what is stored cannot be read, and can be kept again', () => {
		const store = memoryStore();
		for (const bad of ['{', 'null', '{}', '[{"panel":1}]', '[{"panel":"x","ticks":[1]}]']) {
			store.setItem(TICKS_KEY, bad);
			expect(loadTicks(panel('Left'), store), bad).toEqual([]);
		}
		expect(saveTicks(panel('Left'), ['a'], store)).toBe(true);
		expect(loadTicks(panel('Left'), store)).toEqual(['a']);
		expect(saveTicks(panel('Left'), ['a'], null)).toBe(false);
	});
});
