/** Benches that are harder to draw than one socket: many wires on few contacts, and many sockets. */
import type { Bench, Cable, SocketKind, Wire } from '../../lib/engine';

const wire = (id: string, from: string, to: string): Wire => ({ id, from, to, awg: 26, mm: 40 });
const EMPTY: Bench = {
	title: '',
	panel: { metal: true },
	sockets: [],
	wires: [],
	plugs: [],
	devices: [],
	cables: [],
	faults: []
};
/** A cable of one pair and its shield, core by core: contacts of `A` to terminals of the device. */
const cable = (id: string, m: number, device: string, pairs: string): Cable => ({
	id,
	m,
	awg: 24,
	cores: pairs.split(', ').map((pair): [string, string] => {
		const [contact, terminal] = pair.split(' ');
		return [`A.${contact}`, `${device}.${terminal}`];
	})
});

/**
 * Eleven contacts and twelve wires, as they are met with: microphones go on to a desk; a player feeds
 * a recorder through the break contacts until a plug takes its place. Nine cores and three jumpers:
 * the chassis lug to the panel, pin 1 to the chassis while nothing is in the three-pin half, and the
 * shields of player and recorder joined whether a plug is in or not. Six nets stay apart.
 */
export const BUSY: Bench = {
	...EMPTY,
	title: 'Eleven contacts, twelve wires',
	sockets: [{ id: 'A', kind: 'hybrid-10', bush: 'insulated', label: '' }],
	devices: [
		{ id: 'DESK', kind: 'mic-input', phantom: false },
		{ id: 'REC', kind: 'line-in', phantom: false },
		{ id: 'PLAY', kind: 'line-out', phantom: false }
	],
	wires: [wire('w1', 'A.S', 'A.SN'), wire('w2', 'A.1N', 'A.G'), wire('w3', 'A.G', 'panel')],
	cables: [
		cable('c1', 12, 'DESK', '1 shield, 2 hot, 3 cold'),
		cable('c2', 4, 'REC', 'T hot, R cold, S shield'),
		cable('c3', 4, 'PLAY', 'TN hot, RN cold, SN shield')
	]
};

/** A patch strip of two rows, sources over destinations, half-normal, with a few long wires. */
export function panelOf(count: number): Bench {
	const half = count / 2;
	const socket = (i: number) => {
		const kind: SocketKind = i < half ? 'jack-trs' : 'patch-jack';
		const label = `${i < half ? 'Out' : 'In'} ${(i % half) + 1}`;
		return { id: `S${i + 1}`, kind, bush: 'insulated' as const, label };
	};
	const links = Array.from({ length: half }, (_, i) => [
		wire(`t${i}`, `S${i + 1}.T`, `S${i + half + 1}.TN`),
		wire(`r${i}`, `S${i + 1}.R`, `S${i + half + 1}.RN`)
	]);
	return {
		...EMPTY,
		title: `A panel of ${count}`,
		sockets: Array.from({ length: count }, (_, i) => socket(i)),
		plugs: [{ id: 'p', kind: 'trs', socket: `S${half + 2}`, travel: 30.5 }],
		devices: [{ id: 'SRC', kind: 'line-out', phantom: false }],
		wires: [
			...links.flat(),
			wire('far', 'S1.S', `S${half - 1}.S`),
			wire('across', 'S2.S', `S${count}.S`)
		],
		cables: [
			{
				id: 'c',
				m: 9,
				awg: 24,
				cores: [
					['S1.T', 'SRC.hot'],
					['S1.R', 'SRC.cold'],
					['S1.S', 'SRC.shield']
				]
			}
		]
	};
}
