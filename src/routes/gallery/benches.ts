/** Benches that are harder to draw than one socket: many wires on few contacts, and many sockets. */
import type { Bench, SocketKind, Wire } from '../../lib/engine';

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
const JUMPERS = ['1 S', '2 T', '3 R', '1N SN', 'RN 3', 'T R', 'SN TN', 'G 1', 'TN 2'];

/** Eleven contacts and twelve wires: nine jumpers and the three cores of a cable. */
export const BUSY: Bench = {
	...EMPTY,
	title: 'Eleven contacts, twelve wires',
	sockets: [{ id: 'A', kind: 'hybrid-10', bush: 'insulated', label: '' }],
	devices: [{ id: 'DESK', kind: 'mic-input', phantom: false }],
	wires: JUMPERS.map((pair, i) => {
		const [from, to] = pair.split(' ');
		return wire(`w${i}`, `A.${from}`, `A.${to}`);
	}),
	cables: [
		{
			id: 'c',
			m: 9,
			awg: 24,
			cores: [
				['A.1', 'DESK.shield'],
				['A.2', 'DESK.hot'],
				['A.3', 'DESK.cold']
			]
		}
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
