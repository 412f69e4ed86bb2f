/** For tests: repeatable random numbers, and random benches that use every kind of part and fault. */
import { SOCKET_KINDS, PLUG_KINDS, DEVICE_KINDS, type Bench } from './bench';
import { benchOf } from './bench.fixture';
import { DEVICES, PLUGS, SOCKETS, breakContactsOf, fits, nodesOf } from './parts';

export type Below = (n: number) => number;

/** Whole numbers under `n` from a stated seed (mulberry32, public domain). */
export function randomNumbers(seed: number): Below {
	let state = seed;
	return (n) => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return Math.floor((((t ^ (t >>> 14)) >>> 0) / 4294967296) * n);
	};
}

const times = <T>(n: number, make: (i: number) => T): T[] =>
	Array.from({ length: n }, (_, i) => make(i));

function randomFault(
	below: Below,
	nodes: readonly string[],
	sockets: Bench['sockets'],
	wires: number
) {
	const socket = sockets[below(sockets.length)]!;
	const { contacts, springs } = SOCKETS[socket.kind];
	const two = () => {
		const a = below(contacts.length);
		const b = (a + 1 + below(contacts.length - 1)) % contacts.length;
		return [`${socket.id}.${contacts[a]}`, `${socket.id}.${contacts[b]}`];
	};
	const contact = (names: readonly string[]) => `${socket.id}.${names[below(names.length)]}`;
	const breaks = breakContactsOf(socket.kind);
	const choices: (() => object | null)[] = [
		() => (wires > 0 ? { kind: 'open', wire: `w${below(wires)}` } : null),
		() => ({ kind: 'bridge', between: [nodes[0], nodes[1 + below(nodes.length - 1)]] }),
		() => ({ kind: 'swap', contacts: two() }),
		() => (breaks.length > 0 ? { kind: 'break-stuck-open', contact: contact(breaks) } : null),
		() => (breaks.length > 0 ? { kind: 'break-stuck-closed', contact: contact(breaks) } : null),
		() => (springs.length > 0 ? { kind: 'spring-bent', contact: contact(springs) } : null)
	];
	return choices[below(choices.length)]!();
}

/** One to four sockets of any kind with wires, plugs at any travel, devices and up to three faults. */
export function randomBench(below: Below, sockets = 1 + below(4)): Bench {
	const made = times(sockets, (i) => {
		const kind = SOCKET_KINDS[below(SOCKET_KINDS.length)]!;
		const bush = SOCKETS[kind].hasBush && below(2) ? 'metal' : 'insulated';
		return { id: `S${i}`, kind, bush, label: '' } as const;
	});
	const plugs = times(below(sockets + 2), (i) => {
		const kind = PLUG_KINDS[below(PLUG_KINDS.length)]!;
		const home = made[i];
		const socket = home && below(4) && fits(kind, home.kind) ? home.id : undefined;
		return { id: `p${i}`, kind, socket, travel: below(3) ? 30.5 : below(62) / 2 };
	});
	const devices = times(below(3), (i) => ({
		id: `D${i}`,
		kind: DEVICE_KINDS[below(DEVICE_KINDS.length)]!
	}));
	const metal = below(2) === 1;
	const nodes = [
		...made.flatMap((s) => nodesOf(s.id, SOCKETS[s.kind].contacts)),
		...plugs.flatMap((p) => nodesOf(p.id, PLUGS[p.kind].conductors)),
		...devices.flatMap((d) => nodesOf(d.id, DEVICES[d.kind].terminals)),
		...(metal ? ['panel'] : [])
	];
	const wires = times(below(2 * sockets + 4), (i) => {
		const a = below(nodes.length);
		const b = (a + 1 + below(nodes.length - 1)) % nodes.length;
		return { id: `w${i}`, from: nodes[a], to: nodes[b] };
	});
	const faults = times(below(4), () => randomFault(below, nodes, made, wires.length));
	return benchOf({
		panel: { metal },
		sockets: made,
		plugs,
		devices,
		wires,
		faults: faults.filter((f) => f !== null)
	});
}
