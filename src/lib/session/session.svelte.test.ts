import { describe, expect, it } from 'vitest';
import { benchOf } from '../engine/bench.fixture';
import { Session } from './session.svelte';

const bench = benchOf({ sockets: [{ id: 'A', kind: 'hybrid-6' }] });

describe('clicks on contacts', () => {
	it('take pair after pair in a hunt, red and black in turn', () => {
		const hunt = new Session(bench, { reasons: false, edits: 'plugs' });
		for (const node of ['A.1', 'A.T', 'A.2', 'A.R']) hunt.use(node);
		expect([hunt.red, hunt.black]).toEqual(['A.2', 'A.R']);
		expect(hunt.readings).toBe(2);
		hunt.use('A.3');
		expect([hunt.red, hunt.black]).toEqual(['A.3', null]);
		// A plug that goes in or out takes no reading.
		for (const move of [
			() => hunt.plugInto('ts', 'A'),
			() => hunt.pullOut('A'),
			() => hunt.undo(),
			() => hunt.redo()
		]) {
			hunt.setProbe('red', 'A.T');
			hunt.setProbe('black', 'A.TN');
			move();
			expect([hunt.red, hunt.black, hunt.reading]).toEqual([null, null, null]);
			expect(hunt.said).toMatch(/ Both probes are off\.$/);
		}
	});
	it('move the black probe on an open bench, once both are on', () => {
		const session = new Session(bench);
		for (const node of ['A.1', 'A.T', 'A.R']) session.use(node);
		expect([session.red, session.black]).toEqual(['A.1', 'A.R']);
		session.liftProbes();
		session.use('A.S');
		expect([session.red, session.black]).toEqual(['A.S', null]);
	});
});
