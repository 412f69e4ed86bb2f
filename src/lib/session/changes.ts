/** What a person can do to a bench, as pure functions: a changed copy, or a sentence why not. */
import {
	DEFAULTS,
	DEVICES,
	PLUGS,
	RANGES,
	SEATED,
	SOCKETS,
	fits,
	freeId,
	plugIn,
	splitNode,
	withEmpty,
	withPlug,
	type Bench,
	type Cable,
	type DeviceKind,
	type NodeName,
	type PlugKind,
	type SocketKind
} from '../engine';

export type Change = { ok: true; bench: Bench } | { ok: false; why: string };
const done = (bench: Bench): Change => ({ ok: true, bench });
const no = (why: string): Change => ({ ok: false, why });

/** How many wires and cores land on a node. */
export const landingsOn = (bench: Bench, node: NodeName): readonly string[] =>
	landings(bench).get(node) ?? [];

type Landings = ReadonlyMap<NodeName, readonly string[]>;
const known = new WeakMap<Bench['wires'], WeakMap<Bench['cables'], Landings>>();

/** What lands on every node, counted once for as long as wires and cables stay. */
function landings({ wires, cables }: Bench): Landings {
	const beside = known.get(wires) ?? new WeakMap<Bench['cables'], Landings>();
	known.set(wires, beside);
	const made = beside.get(cables) ?? countLandings(wires, cables);
	beside.set(cables, made);
	return made;
}

function countLandings(wires: Bench['wires'], cables: Bench['cables']): Landings {
	const names = new Map<NodeName, string[]>();
	const land = (name: string, ends: readonly NodeName[]): void => {
		for (const node of new Set(ends)) names.set(node, [...(names.get(node) ?? []), name]);
	};
	for (const w of wires) land(w.id, [w.from, w.to]);
	for (const c of cables) c.cores.forEach((ends, i) => land(`${c.id}:${i}`, ends));
	return names;
}

/** A jumper between two nodes; mm and awg within the contract's ranges. */
export function withJumper(
	bench: Bench,
	from: NodeName,
	to: NodeName,
	awg: number,
	mm: number
): Change {
	if (from === to) return no('A jumper needs two different contacts.');
	if (!(mm > 0 && mm <= RANGES.mm.to))
		return no('The length must be over 0 and at most 100 000 mm.');
	const wire = { id: freeId(bench, 'w'), from, to, awg, mm };
	return done({ ...bench, wires: [...bench.wires, wire] });
}

/** Takes out a wire, a core (`c:0`) or a whole cable, with the faults that name it. */
export function withoutWire(bench: Bench, name: string): Bench {
	const [cable, core] = name.split(':');
	const cables = bench.cables.flatMap((c): Cable[] => {
		if (c.id !== cable) return [c];
		if (core === undefined) return [];
		const cores = c.cores.filter((_, i) => i !== Number(core));
		return cores.length > 0 ? [{ ...c, cores }] : [];
	});
	const wires = bench.wires.filter((w) => w.id !== name);
	const faults = bench.faults.filter((f) => !('wire' in f && f.wire.split(':')[0] === cable));
	return { ...bench, wires, cables, faults };
}

/** Drops every wire and core that lands on a node of `owner`, and the faults that name one. */
function withoutLandings(bench: Bench, isGone: (node: NodeName) => boolean): Bench {
	const wires = bench.wires.filter((w) => !isGone(w.from) && !isGone(w.to));
	const cables = bench.cables.flatMap((c): Cable[] => {
		const cores = c.cores.filter(([a, b]) => !isGone(a) && !isGone(b));
		return cores.length > 0 ? [{ ...c, cores }] : [];
	});
	return { ...bench, wires, cables, faults: [] };
}

export function withSocket(bench: Bench, kind: SocketKind): Bench {
	const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('');
	const taken = new Set(bench.sockets.map((s) => s.id));
	const id = letters.find((l) => !taken.has(l)) ?? freeId(bench, 'S');
	const socket = { id, kind, bush: DEFAULTS.bush, label: '' };
	return { ...bench, sockets: [...bench.sockets, socket] };
}

export function withoutSocket(bench: Bench, id: string): Bench {
	const emptied = withEmpty(bench, id);
	const next = withoutLandings(emptied, (node) => splitNode(node)[0] === id);
	return { ...next, sockets: next.sockets.filter((s) => s.id !== id) };
}

/** Another kind in the same place: wires stay on contacts that the new kind has too. */
export function withKind(bench: Bench, id: string, kind: SocketKind): Bench {
	const plug = plugIn(bench, id);
	const emptied = plug && !fits(plug.kind, kind) ? withEmpty(bench, id) : bench;
	const has = new Set(SOCKETS[kind].contacts);
	const next = withoutLandings(emptied, (node) => {
		const [owner, contact] = splitNode(node);
		return owner === id && !has.has(contact);
	});
	const sockets = next.sockets.map((s) =>
		s.id === id ? { ...s, kind, bush: SOCKETS[kind].hasBush ? s.bush : DEFAULTS.bush } : s
	);
	return { ...next, sockets };
}

/** Metal or insulating panel; wires on a panel that goes are dropped. */
export function withMetalPanel(bench: Bench, metal: boolean): Bench {
	const next = metal ? bench : withoutLandings(bench, (node) => node === 'panel');
	return { ...next, panel: { metal } };
}

/** A new plug in the socket, or loose; what the socket held then lies loose if something is wired to it, else it is put away. */
export function withNewPlug(bench: Bench, kind: PlugKind, socket: string | null): Change {
	const plug = { id: freeId(bench, 'p'), kind, socket: null, travel: SEATED };
	const added = { ...bench, plugs: [...bench.plugs, plug] };
	return socket === null ? done(added) : inserted(added, plug.id, socket);
}

/** A plug of the bench put into a socket, seated; what that held before lies loose. */
export function inserted(bench: Bench, id: string, socket: string): Change {
	const plug = bench.plugs.find((p) => p.id === id);
	const place = bench.sockets.find((s) => s.id === socket);
	if (!plug || !place) return no('That plug or socket is no longer there.');
	if (!fits(plug.kind, place.kind))
		return no(`A ${plug.kind} plug does not go into a ${place.kind} socket.`);
	return done(withPlug(bench, socket, id));
}

export function withoutPlug(bench: Bench, id: string): Bench {
	const next = withoutLandings(bench, (node) => splitNode(node)[0] === id);
	return { ...next, plugs: next.plugs.filter((p) => p.id !== id) };
}

const STEMS: Readonly<Record<DeviceKind, string>> = {
	mic: 'MIC',
	'mic-input': 'DESK',
	'line-out': 'LINE',
	'line-out-unbalanced': 'KEYS',
	'line-in': 'AMP',
	'line-in-unbalanced': 'REC'
};

export function withDevice(bench: Bench, kind: DeviceKind): Bench {
	const taken = new Set([...bench.devices, ...bench.sockets, ...bench.plugs].map((d) => d.id));
	const stem = STEMS[kind];
	const id = taken.has(stem) ? freeId(bench, stem, 2) : stem;
	return { ...bench, devices: [...bench.devices, { id, kind, phantom: false }] };
}

export function withoutDevice(bench: Bench, id: string): Bench {
	const next = withoutLandings(bench, (node) => splitNode(node)[0] === id);
	return { ...next, devices: next.devices.filter((d) => d.id !== id) };
}

/** A place a cable can end: one half of a socket, a plug or a device. */
export interface CableEnd {
	readonly key: string;
	readonly hot: NodeName | null;
	readonly cold: NodeName | null;
	readonly shield: NodeName | null;
}

/** Ends a cable can have on this bench: three-pin halves, jack halves, normals, plugs and devices. */
export function cableEnds(bench: Bench): CableEnd[] {
	const end = (
		key: string,
		id: string,
		names: readonly string[],
		all: readonly string[]
	): CableEnd => {
		const node = (name: string | undefined) =>
			name && all.includes(name) ? `${id}.${name}` : null;
		return { key, hot: node(names[0]), cold: node(names[1]), shield: node(names[2]) };
	};
	return [
		...bench.sockets.flatMap((s) => {
			const { contacts } = SOCKETS[s.kind];
			return [
				...(contacts.includes('1') ? [end(`${s.id} 1 2 3`, s.id, ['2', '3', '1'], contacts)] : []),
				...(contacts.includes('T') ? [end(`${s.id} T R S`, s.id, ['T', 'R', 'S'], contacts)] : []),
				...(contacts.includes('TN')
					? [end(`${s.id} TN RN SN`, s.id, ['TN', 'RN', 'SN'], contacts)]
					: [])
			];
		}),
		...bench.plugs.flatMap((p) =>
			p.kind === 'dummy'
				? []
				: [
						p.kind === 'three-pin'
							? end(p.id, p.id, ['2', '3', '1'], PLUGS[p.kind].conductors)
							: end(p.id, p.id, ['tip', 'ring', 'sleeve'], PLUGS[p.kind].conductors)
					]
		),
		...bench.devices.map((d) => {
			const { terminals } = DEVICES[d.kind];
			return end(
				d.id,
				d.id,
				['hot', 'cold', terminals.includes('shield') ? 'shield' : 'shell'],
				terminals
			);
		})
	];
}

/** A cable between two ends, hot to hot, cold to cold, shield to shield, as far as both have them. */
export function withCable(
	bench: Bench,
	from: CableEnd,
	to: CableEnd,
	m: number,
	awg: number
): Change {
	if (from.key === to.key) return no('A cable needs two different ends.');
	if (!(m > 0 && m <= RANGES.m.to)) return no('The length must be over 0 and at most 10 000 m.');
	const cores = (['shield', 'hot', 'cold'] as const).flatMap((role) => {
		const [a, b] = [from[role], to[role]];
		return a && b ? [[a, b] as const] : [];
	});
	if (cores.length === 0) return no('These two ends have no contact in common to join.');
	return done({ ...bench, cables: [...bench.cables, { id: freeId(bench, 'c'), m, awg, cores }] });
}
