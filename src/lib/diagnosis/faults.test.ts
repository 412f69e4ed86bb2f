/** The fault list against lists written by hand from its rules: kinds in order, pairs sorted. */
import { describe, expect, it } from 'vitest';
import type { Fault } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { faultListOf } from './faults';

const short = (f: Fault): string =>
	f.kind === 'bridge'
		? `bridge ${f.between.join(' ')}`
		: f.kind === 'swap'
			? `swap ${f.contacts.join(' ')}`
			: `${f.kind} ${'wire' in f ? f.wire : f.contact}`;
const listOf = (file: Record<string, unknown>) => faultListOf(benchOf(file)).map(short);
const swapsOf = (file: Record<string, unknown>) => listOf(file).filter((f) => f.startsWith('swap'));

const JACK = { sockets: [{ id: 'J', kind: 'jack-ts-break' }] };

describe('the fault list', () => {
	it('of a bare jack has bridges, its break contact and its springs, in that order', () => {
		expect(listOf(JACK)).toEqual([
			'bridge J.S J.T',
			'bridge J.S J.TN',
			'bridge J.T J.TN',
			'break-stuck-open J.TN',
			'break-stuck-closed J.TN',
			'spring-bent J.T',
			'spring-bent J.S'
		]);
	});
	it('begins with every wire and then every core', () => {
		const list = listOf({
			...JACK,
			wires: [{ id: 'w1', from: 'J.TN', to: 'J.S' }],
			devices: [{ id: 'D', kind: 'line-in-unbalanced' }],
			cables: [
				{
					id: 'c',
					m: 1,
					cores: [
						['J.T', 'D.hot'],
						['J.S', 'D.shield']
					]
				}
			]
		});
		expect(list.slice(0, 4)).toEqual(['open w1', 'open c:0', 'open c:1', 'bridge J.S J.T']);
	});
	it('swaps contacts on one of which something lands, unless a wire joins the two', () => {
		expect(swapsOf({ ...JACK, wires: [{ id: 'w1', from: 'J.TN', to: 'J.S' }] })).toEqual([
			'swap J.S J.T',
			'swap J.T J.TN'
		]);
	});
	it('counts a core among the wires that join two contacts directly', () => {
		const cables = [{ id: 'c', m: 1, cores: [['J.T', 'J.S']] }];
		expect(swapsOf({ ...JACK, cables })).toEqual(['swap J.S J.TN', 'swap J.T J.TN']);
	});
	it('reckons with where wires really land when the bench has a swap of its own', () => {
		const devices = [{ id: 'D', kind: 'mic' }];
		const wires = [{ id: 'w1', from: 'J.T', to: 'D.hot' }];
		const faults = [{ kind: 'swap', contacts: ['J.T', 'J.S'] }];
		expect(swapsOf({ ...JACK, devices, wires })).toEqual(['swap J.S J.T', 'swap J.T J.TN']);
		expect(swapsOf({ ...JACK, devices, wires, faults })).toEqual(['swap J.S J.T', 'swap J.S J.TN']);
	});
	it('lets a cut wire land still, but join nothing', () => {
		const wires = [{ id: 'w1', from: 'J.TN', to: 'J.S' }];
		const faults = [{ kind: 'open', wire: 'w1' }];
		expect(swapsOf({ ...JACK, wires, faults })).toEqual([
			'swap J.S J.T',
			'swap J.S J.TN',
			'swap J.T J.TN'
		]);
	});
	it('knows the pin-1 break of a hybrid of ten, and the lug', () => {
		const list = listOf({ sockets: [{ id: 'A', kind: 'hybrid-10' }] });
		expect(list.filter((f) => f.startsWith('break'))).toEqual(
			['open', 'closed'].flatMap((how) =>
				['TN', 'RN', 'SN', '1N'].map((c) => `break-stuck-${how} A.${c}`)
			)
		);
		expect(list).toContain('bridge A.1 A.G');
		// 11 contacts with the lug: 11·10/2 bridges; no wires, so no swaps; 4 + 4 breaks; 3 springs.
		expect(list).toHaveLength(55 + 8 + 3);
	});
	it('has no bridge or swap from one socket to another', () => {
		const sockets = [...JACK.sockets, { id: 'K', kind: 'jack-ts' }];
		const wires = [{ id: 'w', from: 'J.T', to: 'K.T' }];
		const pairs = listOf({ sockets, wires }).filter((f) => /^(bridge|swap)/.test(f));
		expect(pairs.filter((f) => f.includes('J.') && f.includes('K.'))).toEqual([]);
		expect(pairs).toContain('bridge K.S K.T');
	});
	it('leaves the three-pin socket without springs or breaks', () => {
		const list = listOf({ sockets: [{ id: 'X', kind: 'three-pin-male' }] });
		expect(list.every((f) => f.startsWith('bridge'))).toBe(true);
		expect(list).toHaveLength(6);
	});
});
