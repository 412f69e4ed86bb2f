/**
 * For tests: benches of several make-ups, and the plain engine's answers to every probe, by
 * `withFaults`, `inState` and `netsOf` and nothing else of diagnosis but the list and the probes.
 */
import { byCodePoint, inState, netsOf, withFaults, type Bench, type Fault } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { probeNodes, statesOfBench } from './probes';

export const BENCHES: Readonly<Record<string, Bench>> = {
	'a hybrid of nine with two jumpers on a metal panel, cabled to a desk': benchOf({
		panel: { metal: true },
		sockets: [{ id: 'A', kind: 'hybrid-9' }],
		wires: [
			{ id: 'w1', from: 'A.TN', to: 'A.2' },
			{ id: 'w2', from: 'A.RN', to: 'A.3' }
		],
		devices: [{ id: 'D', kind: 'mic-input' }],
		cables: [
			{
				id: 'c',
				m: 3,
				cores: [
					['A.T', 'D.hot'],
					['A.R', 'D.cold'],
					['A.1', 'D.shield']
				]
			}
		]
	}),
	'a hybrid of ten with a plug in it, and faults of its own': benchOf({
		sockets: [{ id: 'A', kind: 'hybrid-10' }],
		wires: [
			{ id: 'w1', from: 'A.2', to: 'A.T' },
			{ id: 'w2', from: 'A.3', to: 'A.R' },
			{ id: 'w3', from: 'A.1N', to: 'A.S' },
			{ id: 'w4', from: 'p.tip', to: 'q.tip' },
			{ id: 'w5', from: 'A.TN', to: 'A.RN' }
		],
		plugs: [
			{ id: 'p', kind: 'trs', socket: 'A' },
			{ id: 'q', kind: 'ts' }
		],
		faults: [
			{ kind: 'swap', contacts: ['A.2', 'A.3'] },
			{ kind: 'break-stuck-closed', contact: 'A.TN' },
			{ kind: 'bridge', between: ['A.S', 'A.G'] },
			{ kind: 'open', wire: 'w5' }
		]
	}),
	'two patch jacks, a plug half way in one': benchOf({
		sockets: [
			{ id: 'U', kind: 'patch-jack' },
			{ id: 'L', kind: 'patch-jack', bush: 'metal' }
		],
		panel: { metal: true },
		wires: [
			{ id: 't', from: 'U.TN', to: 'L.TN' },
			{ id: 'r', from: 'U.RN', to: 'L.RN' },
			{ id: 's', from: 'U.S', to: 'L.S' }
		],
		plugs: [
			{ id: 'p', kind: 'trs', socket: 'U', travel: 22 },
			{ id: 'k', kind: 'shorting', socket: 'L' }
		]
	}),
	'a changeover, a male outlet and a jack, wired together': benchOf({
		sockets: [
			{ id: 'C', kind: 'jack-ts-changeover' },
			{ id: 'M', kind: 'three-pin-male' },
			{ id: 'J', kind: 'jack-trs-break' }
		],
		wires: [
			{ id: 'w1', from: 'C.C', to: 'J.T' },
			{ id: 'w2', from: 'C.NC', to: 'M.2' },
			{ id: 'w3', from: 'M.3', to: 'J.R' },
			{ id: 'w4', from: 'M.1', to: 'J.S' }
		]
	}),
	'nothing at all': benchOf({})
};

/** The net of every probe node in every state, numbered as they first appear. */
export function plainAnswers(bench: Bench, faults: readonly Fault[]): number[][] {
	const nodes = [...probeNodes(bench)].sort(byCodePoint);
	const there = withFaults(bench, faults);
	return statesOfBench(bench).map((when) => {
		const { indexOf } = netsOf(inState(there, when));
		const nets = nodes.map((node) => indexOf.get(node)!);
		const order = [...new Set(nets)];
		return nets.map((net) => order.indexOf(net));
	});
}

/** Whole numbers under `n` from a stated seed (mulberry32, public domain). */
export function drawing(seed: number): (n: number) => number {
	let state = seed;
	return (n) => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * n);
	};
}
