/** What each fault does to the circuit, alone and with others. */
import { describe, expect, it } from 'vitest';
import type { Bench, Fault } from './bench';
import { benchOf } from './bench.fixture';
import { circuit, type Conductor } from './circuit';
import { isJoined } from './nets';

const text = (c: Pick<Conductor, 'a' | 'b'>) => `${c.a} ${c.b}`;
const conductorsOf = (bench: Bench) => circuit(bench).conductors.map(text);
const find = (bench: Bench, a: string, b: string) =>
	circuit(bench).conductors.find((c) => text(c) === `${a} ${b}` || text(c) === `${b} ${a}`);
const gap = (bench: Bench, a: string, b: string) =>
	circuit(bench).gaps.find((g) => text(g) === `${a} ${b}` || text(g) === `${b} ${a}`);

describe('faults', () => {
	const base = {
		sockets: [{ id: 'A', kind: 'hybrid-9' }],
		wires: [
			{ id: 'w', from: 'A.T', to: 'A.2', mm: 100 },
			{ id: 'v', from: 'A.2', to: 'A.3' },
			{ id: 'u', from: 'A.R', to: 'A.G' }
		],
		cables: [
			{
				id: 'c',
				m: 1,
				cores: [
					['A.1', 'A.S'],
					['A.2', 'A.S']
				]
			}
		]
	};
	const with_ = (faults: Fault[], more: Record<string, unknown> = {}) =>
		benchOf({ ...base, ...more, faults });
	const ts = { plugs: [{ id: 'p', kind: 'ts', socket: 'A' }] };
	const sound = with_([]);

	it('open: the wire or core conducts nothing, and the others do', () => {
		const cut = with_([{ kind: 'open', wire: 'w' }]);
		expect(find(cut, 'A.T', 'A.2')).toBeUndefined();
		expect(gap(cut, 'A.T', 'A.2')!.reason).toEqual({ kind: 'cut', wire: 'w' });
		expect(find(cut, 'A.2', 'A.3')).toBeDefined();
		const core = with_([{ kind: 'open', wire: 'c:1' }]);
		expect(find(core, 'A.2', 'A.S')).toBeUndefined();
		expect(find(core, 'A.1', 'A.S')).toBeDefined();
	});
	it('resistive: adds its ohms in series, twice if it stands twice, and still joins', () => {
		const r = (faults: Fault[]) => find(with_(faults), 'A.T', 'A.2')!;
		const fault: Fault = { kind: 'resistive', wire: 'w', ohms: 7 };
		expect(r([fault]).ohms - r([]).ohms).toBeCloseTo(7, 9);
		expect(r([fault, fault]).ohms - r([]).ohms).toBeCloseTo(14, 9);
		expect(r([{ ...fault, ohms: 1e9 }]).joins).toBe(true);
		expect(find(with_([{ ...fault, wire: 'c:0' }]), 'A.1', 'A.S')!.ohms).toBeGreaterThan(7);
		expect(find(with_([{ ...fault, wire: 'c:0' }]), 'A.2', 'A.S')!.ohms).toBeLessThan(1);
	});
	it('bridge: joins its two nodes through 0.010 Ω, anywhere on the bench', () => {
		const more = { plugs: [{ id: 'p', kind: 'ts' }], devices: [{ id: 'M', kind: 'mic' }] };
		const bench = with_([{ kind: 'bridge', between: ['p.tip', 'M.hot'] }], more);
		expect(find(bench, 'p.tip', 'M.hot')).toEqual({
			a: 'p.tip',
			b: 'M.hot',
			ohms: 0.01,
			joins: true,
			reason: { kind: 'bridge', fault: 0 }
		});
	});
	it('swap: every wire and core that should land on one lands on the other', () => {
		const swapped = with_([{ kind: 'swap', contacts: ['A.2', 'A.S'] }]);
		const landed = circuit(swapped).conductors.flatMap((c) =>
			c.reason.kind === 'wire' || c.reason.kind === 'core' ? [text(c)] : []
		);
		expect(landed).toEqual(['A.T A.S', 'A.S A.3', 'A.R A.G', 'A.1 A.2', 'A.S A.2']);
	});
	it('swap: springs, breaks and bonds stay where they are', () => {
		const swapped = with_([{ kind: 'swap', contacts: ['A.T', 'A.R'] }], ts);
		expect(find(swapped, 'A.T', 'p.tip')).toBeDefined();
		expect(find(swapped, 'A.R', 'p.sleeve')).toBeDefined();
		const chassis = with_([{ kind: 'swap', contacts: ['A.1', 'A.G'] }], {
			panel: { metal: true }
		});
		expect(find(chassis, 'A.G', 'panel')).toBeDefined();
		expect(find(chassis, 'A.1', 'panel')).toBeUndefined();
		expect(find(chassis, 'A.R', 'A.1')).toBeDefined();
	});
	it('swap: a bridge stays on the contacts that it names', () => {
		const bench = with_([
			{ kind: 'swap', contacts: ['A.T', 'A.RN'] },
			{ kind: 'bridge', between: ['A.T', 'A.G'] }
		]);
		expect(circuit(bench).conductors.at(-1)).toMatchObject({ a: 'A.T', b: 'A.G' });
	});
	it('swaps act one after another in file order: 2↔3, then 3↔1 sends 2 to 1, 3 to 2, 1 to 3', () => {
		const bench = with_([
			{ kind: 'swap', contacts: ['A.2', 'A.3'] },
			{ kind: 'swap', contacts: ['A.3', 'A.1'] }
		]);
		expect(find(bench, 'A.T', 'A.1')!.reason).toEqual({ kind: 'wire', wire: 'w' });
		expect(find(bench, 'A.1', 'A.2')!.reason).toEqual({ kind: 'wire', wire: 'v' });
		expect(find(bench, 'A.3', 'A.S')!.reason).toEqual({ kind: 'core', cable: 'c', core: 0 });
	});
	it('the same swap twice undoes itself', () => {
		const swap: Fault = { kind: 'swap', contacts: ['A.2', 'A.S'] };
		expect(conductorsOf(with_([swap, swap]))).toEqual(conductorsOf(sound));
	});
	it('break-dirty: adds its ohms to the closed break, and nothing to the open one', () => {
		const dirty: Fault = { kind: 'break-dirty', contact: 'A.TN', ohms: 120 };
		expect(find(with_([dirty]), 'A.T', 'A.TN')).toMatchObject({ ohms: 120.015, joins: true });
		expect(find(with_([dirty]), 'A.R', 'A.RN')!.ohms).toBe(0.015);
		expect(find(with_([dirty], ts), 'A.T', 'A.TN')).toBeUndefined();
	});
	it('break-stuck-open: the break never closes', () => {
		const stuck = with_([{ kind: 'break-stuck-open', contact: 'A.TN' }]);
		expect(find(stuck, 'A.T', 'A.TN')).toBeUndefined();
		expect(gap(stuck, 'A.T', 'A.TN')!.reason).toMatchObject({ kind: 'stuck-open' });
		expect(find(stuck, 'A.R', 'A.RN')).toBeDefined();
	});
	it('break-stuck-closed: the break never opens, and the spring still takes the plug', () => {
		const stuck = with_([{ kind: 'break-stuck-closed', contact: 'A.TN' }], ts);
		expect(find(stuck, 'A.T', 'A.TN')).toMatchObject({
			ohms: 0.015,
			reason: { kind: 'rest', stuck: true }
		});
		expect(find(stuck, 'A.T', 'p.tip')).toBeDefined();
		expect(find(stuck, 'A.R', 'A.RN')).toBeUndefined();
	});
	it('break-stuck-closed on 1N holds against a three-pin plug', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'hybrid-10' }],
			plugs: [{ id: 'p', kind: 'three-pin', socket: 'A' }],
			faults: [{ kind: 'break-stuck-closed', contact: 'A.1N' }]
		});
		expect(isJoined(bench, 'A.1N', 'p.1')).toBe(true);
	});
	it('spring-bent: the spring never touches a plug and never lifts its break', () => {
		const bent = with_([{ kind: 'spring-bent', contact: 'A.T' }], ts);
		expect(find(bent, 'A.T', 'p.tip')).toBeUndefined();
		expect(find(bent, 'A.T', 'A.TN')).toBeDefined();
		expect(find(bent, 'A.S', 'p.sleeve')).toBeDefined();
		expect(find(bent, 'A.R', 'A.RN')).toBeUndefined();
	});
	it('spring-bent on the tip leaves a changeover at rest', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-ts-changeover' }],
			plugs: [{ id: 'p', kind: 'ts', socket: 'A' }],
			faults: [{ kind: 'spring-bent', contact: 'A.T' }]
		});
		expect(find(bench, 'A.C', 'A.NC')).toBeDefined();
		expect(find(bench, 'A.C', 'A.NO')).toBeUndefined();
	});
	it('a break that is stuck open stays open whatever else is wrong with it', () => {
		const open: Fault = { kind: 'break-stuck-open', contact: 'A.TN' };
		for (const other of [
			{ kind: 'break-stuck-closed', contact: 'A.TN' },
			{ kind: 'spring-bent', contact: 'A.T' },
			{ kind: 'break-dirty', contact: 'A.TN', ohms: 1 }
		] as Fault[])
			for (const plugs of [{}, ts])
				for (const faults of [
					[open, other],
					[other, open]
				])
					expect(find(with_(faults, plugs), 'A.T', 'A.TN')).toBeUndefined();
	});
});
