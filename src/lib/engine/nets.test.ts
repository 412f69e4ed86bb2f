/** Nets as the answer of a program would print them, and questions about two nodes. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import { byCodePoint, isJoined, netsOf } from './nets';

describe('nets', () => {
	const bench = benchOf({
		sockets: [
			{ id: 'b', kind: 'jack-ts-break' },
			{ id: 'B', kind: 'three-pin-male' }
		],
		wires: [
			{ id: 'w', from: 'b.S', to: 'B.G' },
			{ id: 'v', from: 'B.G', to: 'B.1' }
		],
		devices: [{ id: 'M', kind: 'mic-input', phantom: true }]
	});
	it('hold every node once, single ones too, sorted within and among themselves', () => {
		expect(netsOf(bench).list).toEqual([
			['B.1', 'B.G', 'b.S'],
			['B.2'],
			['B.3'],
			['M.chassis', 'M.shield'],
			['M.cold'],
			['M.hot'],
			['b.T', 'b.TN']
		]);
	});
	it('are joined by the shield bond of a device, not by its coil, load, output or feed', () => {
		const kinds = ['mic', 'mic-input', 'line-out', 'line-out-unbalanced', 'line-in'];
		for (const kind of kinds) {
			const one = benchOf({ devices: [{ id: 'D', kind, phantom: kind === 'mic-input' }] });
			expect(isJoined(one, 'D.hot', kind === 'mic' ? 'D.cold' : 'D.shield')).toBe(false);
			if (kind !== 'mic') expect(isJoined(one, 'D.shield', 'D.chassis')).toBe(true);
		}
	});
	it('stay whole under dirt and added resistance: a net is a fact about conductors', () => {
		const poor = benchOf({
			sockets: [{ id: 'A', kind: 'jack-ts-break' }],
			wires: [{ id: 'w', from: 'A.T', to: 'A.S' }],
			faults: [
				{ kind: 'resistive', wire: 'w', ohms: 1e9 },
				{ kind: 'break-dirty', contact: 'A.TN', ohms: 1e9 }
			]
		});
		expect(netsOf(poor).list).toEqual([['A.S', 'A.T', 'A.TN']]);
	});
	it('say of a node that is not there that it is joined to nothing', () => {
		expect(isJoined(bench, 'x.T', 'x.T')).toBe(false);
		expect(isJoined(bench, 'b.T', 'panel')).toBe(false);
		expect(isJoined(bench, 'b.T', 'b.T')).toBe(true);
	});
	it('of an empty bench are none', () => {
		expect(netsOf(benchOf({})).list).toEqual([]);
	});
	it('are in plain code-point order: digits, capitals, _, small letters', () => {
		expect(['b', '_', 'B', '10', '9', 'a.T', 'a-', 'a'].sort(byCodePoint)).toEqual([
			...['10', '9', 'B', '_', 'a', 'a-', 'a.T', 'b']
		]);
	});
});
