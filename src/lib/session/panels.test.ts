/** Which panels there are to choose from: never a second one that is the same. */
import { describe, expect, it } from 'vitest';
import { benchOf } from '../engine/bench.fixture';
import { freshAt, memoryStore, saveBench, saveReadings } from '../storage';
import { keptPanels } from './panels';
import { startBench } from './start';

const RACK = benchOf({ title: 'Rack', sockets: [{ id: 'J', kind: 'jack-trs' }] });
const kept = (bench = RACK) => ({ bench, noted: [], most: 1, near: false, at: freshAt(bench) });

describe('the panels that are kept', () => {
	it('are the first bench alone where nothing is stored', () =>
		expect(keptPanels(memoryStore())).toEqual({ bench: startBench(), real: null, notice: '' }));
	it('are two where the panel at the real bench is another one, and the bench stays as it is', () => {
		const store = memoryStore();
		saveReadings(kept(), store);
		expect(keptPanels(store)).toMatchObject({ bench: startBench(), real: RACK });
		saveBench(RACK, store);
		expect(keptPanels(store)).toMatchObject({ bench: RACK, real: null });
	});
	it('say what is wrong with a bench that cannot be read', () => {
		const store = memoryStore();
		store.setItem('solderside-bench-1', '{');
		expect(keptPanels(store).notice).toMatch(/The text is kept\. At \$/);
	});
});
