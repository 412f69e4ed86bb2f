import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, type Bench } from '../engine/bench';
import { memoryStore } from './store';
import { loadWork, saveWork } from './work';

const start: Bench = {
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind: 'hybrid-6', bush: 'insulated', label: '' }],
	wires: [{ id: 'w1', from: 'A.2', to: 'A.T', awg: 26, mm: 40 }]
};
const wire = { id: 'mine', from: 'A.R', to: 'A.3', awg: 26, mm: 40 };

describe('work on an exercise', () => {
	it('is nothing at first', () => {
		expect(loadWork('x', start, memoryStore())).toBeNull();
	});
	it('comes back with the wires that were soldered', () => {
		const store = memoryStore();
		saveWork('x', { ...start, wires: [wire] }, store);
		expect(loadWork('x', start, store)?.wires).toEqual([wire]);
		expect(loadWork('y', start, store)).toBeNull();
	});
	it('takes everything but the wires from the exercise itself', () => {
		const store = memoryStore();
		saveWork('x', { ...start, title: 'old', wires: [wire] }, store);
		expect(loadWork('x', start, store)).toEqual({ ...start, wires: [wire] });
	});
	it('is left out when its wires no longer fit the exercise', () => {
		const store = memoryStore();
		saveWork('x', { ...start, wires: [wire] }, store);
		expect(loadWork('x', { ...start, sockets: [], wires: [] }, store)).toBeNull();
	});
});
