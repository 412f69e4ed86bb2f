/** The continuity table of one socket on its bench. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import { matrixOf } from './fastMatrix';
import { pairsOf } from './matrix';

describe('the continuity table', () => {
	it('has a state for no plug and for every kind that fits', () => {
		const states = (kind: string) =>
			Object.keys(matrixOf(benchOf({ sockets: [{ id: 'A', kind }] }), 'A'));
		expect(states('hybrid-5')).toEqual(['none', 'ts', 'trs', 'dummy', 'shorting', 'three-pin']);
		expect(states('patch-jack')).toEqual(['none', 'ts', 'trs', 'dummy', 'shorting']);
		expect(states('three-pin-male')).toEqual(['none', 'three-pin']);
	});
	it('lists pairs of the socket’s own contacts, sorted, the chassis lug among them', () => {
		const bench = benchOf({
			sockets: [
				{ id: 'B', kind: 'hybrid-6' },
				{ id: 'A', kind: 'jack-ts' }
			],
			wires: [
				{ id: 'w1', from: 'B.T', to: 'A.T' },
				{ id: 'w2', from: 'A.T', to: 'B.1' },
				{ id: 'w3', from: 'B.G', to: 'B.1' }
			]
		});
		expect(matrixOf(bench, 'B')['none']).toEqual([
			['B.1', 'B.G'],
			['B.1', 'B.T'],
			['B.G', 'B.T']
		]);
		expect(matrixOf(bench, 'A')['none']).toEqual([]);
	});
	it('puts a bare plug in place of the one that is there, which then lies loose', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-trs-break' }],
			plugs: [{ id: 'p', kind: 'trs', socket: 'A', travel: 26.5 }],
			wires: [{ id: 'w', from: 'p.tip', to: 'p.sleeve' }]
		});
		expect(matrixOf(bench, 'A')).toEqual({
			none: [
				['A.R', 'A.RN'],
				['A.S', 'A.SN'],
				['A.T', 'A.TN']
			],
			ts: [['A.R', 'A.S']],
			trs: [],
			dummy: [],
			shorting: [
				['A.R', 'A.S'],
				['A.R', 'A.T'],
				['A.S', 'A.T']
			]
		});
	});
	it('leaves the plugs of the other sockets where they are', () => {
		const bench = benchOf({
			sockets: [
				{ id: 'A', kind: 'jack-trs' },
				{ id: 'B', kind: 'jack-trs' }
			],
			plugs: [{ id: 'p', kind: 'ts', socket: 'B' }],
			wires: [
				{ id: 'w1', from: 'A.T', to: 'B.R' },
				{ id: 'w2', from: 'A.R', to: 'B.S' }
			]
		});
		expect(matrixOf(bench, 'A')).toMatchObject({ none: [['A.R', 'A.T']], trs: [['A.R', 'A.T']] });
	});
	it('goes by nets: a coil between two contacts is no continuity', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-ts' }],
			devices: [{ id: 'M', kind: 'mic' }],
			wires: [
				{ id: 'w1', from: 'A.T', to: 'M.hot' },
				{ id: 'w2', from: 'A.S', to: 'M.cold' }
			]
		});
		expect(matrixOf(bench, 'A')['none']).toEqual([]);
	});
	it('keeps the faults of the bench', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-ts-break' }],
			faults: [{ kind: 'break-stuck-closed', contact: 'A.TN' }]
		});
		expect(matrixOf(bench, 'A')['dummy']).toEqual([['A.T', 'A.TN']]);
	});
	it('pairs are all unordered pairs, each once', () => {
		expect(pairsOf(['c', 'a', 'b'])).toEqual([
			['a', 'b'],
			['a', 'c'],
			['b', 'c']
		]);
	});
});
