import { afterEach, describe, expect, it, vi } from 'vitest';
import { benchOf } from '../engine/bench.fixture';
import { framesByHand } from './frames.fixture';
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

describe('a plug on its way', () => {
	afterEach(() => vi.unstubAllGlobals());
	function moving() {
		const frame = framesByHand();
		const rest = () => {
			while (frame() > 0);
		};
		const session = new Session(bench);
		session.plugInto('trs', 'A');
		rest();
		return { session, id: session.bench.plugs.at(-1)!.id, rest };
	}

	it('is told of some frames later', () => {
		const { session, id, rest } = moving();
		const before = session.said;
		session.setTravel(id, 26.5);
		expect(session.said).toBe(before);
		rest();
		expect(session.said).not.toBe(before);
		expect(session.said).toMatch(/tip/);
	});

	it('does not take the place of what was said meanwhile', () => {
		const { session, id, rest } = moving();
		session.setTravel(id, 26.5);
		session.setProbe('red', 'A.T');
		const probe = session.said;
		expect(probe).toMatch(/Red probe on/);
		rest();
		expect(session.said).toBe(probe);
	});
});
