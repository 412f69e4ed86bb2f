/** Why two nodes are joined, conductor by conductor, and what keeps them apart. */
import { describe, expect, it } from 'vitest';
import { benchOf } from './bench.fixture';
import { pathBetween } from './path';
import { ohmsPerMetre } from './parts';

const hybrid = (more: Record<string, unknown> = {}) =>
	benchOf({
		sockets: [{ id: 'A', kind: 'hybrid-9' }],
		wires: [{ id: 'w', from: 'A.TN', to: 'A.2', mm: 100 }],
		...more
	});
const ts = [{ id: 'p', kind: 'ts', socket: 'A' }];

describe('a path between joined nodes', () => {
	it('runs from one to the other with a reason for each step', () => {
		const path = pathBetween(hybrid(), 'A.T', 'A.2');
		expect(path).toMatchObject({
			kind: 'joined',
			steps: [
				{
					from: 'A.T',
					to: 'A.TN',
					through: { reason: { kind: 'rest', spring: 'T', contact: 'TN', stuck: false } }
				},
				{ from: 'A.TN', to: 'A.2', through: { reason: { kind: 'wire', wire: 'w' } } }
			]
		});
		expect(path.kind === 'joined' && path.ohms).toBeCloseTo(0.015 + ohmsPerMetre(26) / 10, 12);
	});
	it('reads the same backwards', () => {
		const there = pathBetween(hybrid(), 'A.T', 'A.2');
		const back = pathBetween(hybrid(), 'A.2', 'A.T');
		if (there.kind !== 'joined' || back.kind !== 'joined') throw new Error('not joined');
		expect(back.steps.map((s) => [s.to, s.from])).toEqual(
			[...there.steps].reverse().map((s) => [s.from, s.to])
		);
		expect(back.ohms).toBeCloseTo(there.ohms, 12);
	});
	it('goes through the sleeve of a ts plug from R to S', () => {
		expect(pathBetween(hybrid({ plugs: ts }), 'A.R', 'A.S')).toMatchObject({
			kind: 'joined',
			ohms: 0.02,
			steps: [
				{ through: { reason: { kind: 'touch', spring: 'R', plug: 'p', part: 'sleeve' } } },
				{ through: { reason: { kind: 'touch', spring: 'S', plug: 'p', part: 'sleeve' } } }
			]
		});
	});
	it('takes the way of least resistance, not of fewest conductors', () => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: 'jack-trs' }],
			wires: [
				{ id: 'far', from: 'A.T', to: 'A.S', mm: 1000 },
				{ id: 'near1', from: 'A.T', to: 'A.R', mm: 10 },
				{ id: 'near2', from: 'A.R', to: 'A.S', mm: 10 }
			]
		});
		const path = pathBetween(bench, 'A.T', 'A.S');
		expect(path).toMatchObject({ kind: 'joined', steps: [{ to: 'A.R' }, { to: 'A.S' }] });
	});
	it('names cores, bonds, bridges, mated pins and the inside of a plug', () => {
		const bench = benchOf({
			panel: { metal: true },
			sockets: [
				{ id: 'A', kind: 'three-pin-female' },
				{ id: 'J', kind: 'jack-trs', bush: 'metal' }
			],
			plugs: [
				{ id: 'p', kind: 'three-pin', socket: 'A' },
				{ id: 's', kind: 'shorting', socket: 'J' }
			],
			devices: [{ id: 'D', kind: 'line-in' }],
			cables: [{ id: 'c', m: 1, cores: [['p.shell', 'D.chassis']] }],
			faults: [{ kind: 'bridge', between: ['J.T', 'A.1'] }]
		});
		const kinds = (a: string, b: string) => {
			const path = pathBetween(bench, a, b);
			return path.kind === 'joined' ? path.steps.map((s) => s.through.reason.kind) : path.kind;
		};
		expect(kinds('D.shield', 'J.T')).toEqual([
			...['inside-device', 'core', 'mate', 'chassis', 'bush', 'touch'],
			...['inside-plug', 'inside-plug', 'touch']
		]);
		expect(kinds('J.T', 'p.1')).toEqual(['bridge', 'mate']);
	});
	it('is no path at all from a node to itself', () => {
		expect(pathBetween(hybrid(), 'A.T', 'A.T')).toEqual({ kind: 'same' });
	});
});

describe('what keeps two nodes apart', () => {
	it('the break that a plug has opened, and which plug', () => {
		const answer = pathBetween(hybrid({ plugs: ts }), 'A.T', 'A.2');
		expect(answer).toMatchObject({
			kind: 'parted',
			gaps: [
				{
					a: 'A.T',
					b: 'A.TN',
					reason: { kind: 'lifted', socket: 'A', spring: 'T', contact: 'TN', plug: 'p' }
				}
			],
			steps: [
				{ from: 'A.T', to: 'A.TN' },
				{ from: 'A.TN', to: 'A.2' }
			]
		});
	});
	it('a cut wire, a stuck break, a changeover on its other side', () => {
		const gaps = (bench: ReturnType<typeof hybrid>, a: string, b: string) => {
			const answer = pathBetween(bench, a, b);
			return answer.kind === 'parted' ? answer.gaps.map((g) => g.reason) : answer.kind;
		};
		const cut = hybrid({ faults: [{ kind: 'open', wire: 'w' }] });
		expect(gaps(cut, 'A.T', 'A.2')).toEqual([{ kind: 'cut', wire: 'w' }]);
		const stuck = hybrid({ faults: [{ kind: 'break-stuck-open', contact: 'A.TN' }] });
		expect(gaps(stuck, 'A.T', 'A.2')).toMatchObject([{ kind: 'stuck-open', contact: 'TN' }]);
		const change = benchOf({ sockets: [{ id: 'A', kind: 'jack-ts-changeover' }] });
		expect(gaps(change, 'A.C', 'A.NO')).toEqual([
			{ kind: 'changeover', socket: 'A', contact: 'NO', plug: null }
		]);
	});
	it('as few open contacts as would have to close', () => {
		const bench = benchOf({
			sockets: [
				{ id: 'A', kind: 'jack-ts-break' },
				{ id: 'B', kind: 'jack-ts-break' },
				{ id: 'C', kind: 'jack-ts-break' }
			],
			wires: [
				{ id: 'w1', from: 'A.TN', to: 'B.T' },
				{ id: 'w2', from: 'B.TN', to: 'C.T' },
				{ id: 'w3', from: 'A.TN', to: 'C.TN', mm: 100_000 },
				{ id: 'w4', from: 'C.T', to: 'C.S' }
			],
			plugs: ['A', 'B', 'C'].map((socket) => ({ id: `p${socket}`, kind: 'ts', socket })),
			faults: [{ kind: 'break-stuck-closed', contact: 'C.TN' }]
		});
		const answer = pathBetween(bench, 'A.T', 'C.S');
		if (answer.kind !== 'parted') throw new Error(answer.kind);
		expect(answer.gaps.map((g) => g.b)).toEqual(['A.TN']);
	});
	it('nothing that could close: two contacts that never had to do with each other', () => {
		expect(pathBetween(hybrid(), 'A.1', 'A.3')).toEqual({ kind: 'nothing' });
		expect(pathBetween(hybrid({ plugs: ts }), 'A.1', 'A.T')).toEqual({ kind: 'nothing' });
	});
	it('not the break of a spring, where the plug that lifts the spring is the other end', () => {
		// Either the tip spring touches the plug or it rests on its break, never both.
		const wired = hybrid({ plugs: ts });
		expect(pathBetween(wired, 'p.tip', 'A.TN')).toEqual({ kind: 'nothing' });
		expect(pathBetween(wired, 'A.2', 'p.tip')).toEqual({ kind: 'nothing' });
		const pin = benchOf({
			sockets: [{ id: 'A', kind: 'hybrid-10' }],
			plugs: [{ id: 'q', kind: 'three-pin', socket: 'A' }]
		});
		expect(pathBetween(pin, 'q.1', 'A.1N')).toEqual({ kind: 'nothing' });
		expect(pathBetween(pin, 'A.1', 'A.1N').kind).toBe('parted');
	});
	it('not a changeover between its own two sides', () => {
		for (const plugs of [[], [{ id: 'p', kind: 'ts', socket: 'A' }]]) {
			const bench = benchOf({ sockets: [{ id: 'A', kind: 'jack-ts-changeover' }], plugs });
			expect(pathBetween(bench, 'A.NC', 'A.NO')).toEqual({ kind: 'nothing' });
			expect(pathBetween(bench, 'A.NO', 'A.NC')).toEqual({ kind: 'nothing' });
		}
	});
	it('a way round, where the near way would need one spring in two places', () => {
		const bench = hybrid({
			plugs: ts,
			wires: [
				{ id: 'w', from: 'A.T', to: 'A.2' },
				{ id: 'v', from: 'A.2', to: 'p.tip' }
			]
		});
		const answer = pathBetween(bench, 'p.tip', 'A.TN');
		if (answer.kind !== 'parted') throw new Error(answer.kind);
		expect(answer.steps.map((step) => step.to)).toEqual(['A.2', 'A.T', 'A.TN']);
	});
	it('the way round with fewer gaps, whether the spring moves or stays', () => {
		const gaps = (cut: string[]) => {
			const answer = pathBetween(
				hybrid({
					plugs: ts,
					wires: [
						{ id: 'w', from: 'A.T', to: 'A.2' },
						{ id: 'v', from: 'A.2', to: 'p.tip' },
						{ id: 'x', from: 'p.tip', to: 'A.3' },
						{ id: 'y', from: 'A.3', to: 'A.TN' }
					],
					faults: cut.map((wire) => ({ kind: 'open', wire }))
				}),
				'p.tip',
				'A.TN'
			);
			return answer.kind === 'parted' ? answer.gaps.map((g) => g.reason) : answer.kind;
		};
		expect(gaps(['x', 'y'])).toMatchObject([{ kind: 'lifted', contact: 'TN' }]);
		expect(gaps(['v', 'y'])).toEqual([{ kind: 'cut', wire: 'y' }]);
		expect(gaps(['w', 'x', 'y'])).toHaveLength(2);
	});
	it('a coil or a load inside a device joins nothing', () => {
		const bench = benchOf({ devices: [{ id: 'M', kind: 'mic' }] });
		expect(pathBetween(bench, 'M.hot', 'M.cold')).toEqual({ kind: 'nothing' });
	});
});
