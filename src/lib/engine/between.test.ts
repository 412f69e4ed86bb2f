/** The device that hangs between two nodes, by hand from a drawing of one socket and one input. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import { deviceBetween } from './between';
import type { When } from './edit';

const bench = benchOf({
	sockets: [{ id: 'A', kind: 'hybrid-9' }],
	devices: [{ id: 'DESK', kind: 'mic-input' }],
	wires: [
		{ id: 'w1', from: 'A.TN', to: 'A.2', mm: 20 },
		{ id: 'w2', from: 'A.2', to: 'DESK.hot', mm: 20 },
		{ id: 'w3', from: 'A.3', to: 'DESK.cold', mm: 20 },
		{ id: 'w4', from: 'A.1', to: 'DESK.shield', mm: 20 }
	]
});
const between = (a: string, b: string, when: When = {}) => deviceBetween(bench, when, [a, b])?.id;

describe('what hangs between two nodes', () => {
	it('is the input that both its wires lead to', () => {
		expect(between('A.2', 'A.3')).toBe('DESK');
		expect(between('A.3', 'A.2')).toBe('DESK');
	});
	it('reaches through a closed break contact, and not through one that a plug has opened', () => {
		expect(between('A.T', 'A.3')).toBe('DESK');
		expect(between('A.T', 'A.3', { A: 'trs' })).toBeUndefined();
	});
	it('is nothing on one net, on the bond to the chassis, and where a wire leads nowhere', () => {
		expect(between('A.TN', 'A.2')).toBeUndefined();
		expect(between('A.1', 'DESK.chassis')).toBeUndefined();
		expect(between('A.1', 'A.2')).toBeUndefined();
	});
});
