/**
 * What the engine says about one socket, gathered for drawing: which springs are lifted, what they
 * touch, which contacts stand closed. No rule of contact of its own: everything is read from
 * `circuit`, and what a plug shows to a spring from the same function that `circuit` asks.
 */
import {
	PINS_MAKE,
	PIN_1_MAKES,
	PLUGS,
	SEATED,
	SOCKETS,
	SPRING_DEPTH,
	circuit,
	freeId,
	matedPins,
	netsOf,
	plugIn,
	seenBySpring,
	splitNode,
	withBarePlug,
	type Bench,
	type Fault,
	type Millimetres,
	type NodeName,
	type Plug,
	type PlugKind,
	type Socket,
	type SocketKind,
	type SpringName
} from '../engine';
import { isClosed } from './lit';

/** One jack spring with its break contact. */
export interface SpringState {
	readonly name: SpringName;
	/** A plug holds it off its rest. */
	readonly lifted: boolean;
	/** The plug's conductor that it touches, as a node; null on insulation, at rest, or bent. */
	readonly touches: NodeName | null;
	readonly bent: boolean;
	/** Its break contact, if the socket has one. */
	readonly breakContact: string | null;
	readonly closed: boolean;
	/** A fault keeps the break contact away from the spring, plug or none. */
	readonly stuckOpen: boolean;
}

export interface SocketState {
	readonly socket: Socket;
	/** The plug that stands in it. */
	readonly plug: Plug | null;
	readonly springs: readonly SpringState[];
	/** Contact on which `C` stands; null for a socket without changeover. */
	readonly changeover: 'NC' | 'NO' | null;
	/** Conductors of a three-pin plug that have mated: contact of the socket → node of the plug. */
	readonly mated: ReadonlyMap<string, NodeName>;
}

/** The socket with that id. Throws if the bench has none. */
export function socketOf(bench: Bench, socket: string): Socket {
	const found = bench.sockets.find((s) => s.id === socket);
	if (!found) throw new Error(`No socket ${socket} on the bench`);
	return found;
}

const isFaulty = (bench: Bench, kind: Fault['kind'], contact: NodeName): boolean =>
	bench.faults.some((f) => f.kind === kind && 'contact' in f && f.contact === contact);

/** Whether a fault keeps that break contact of the socket open, plug or none. */
export const isStuckOpen = (bench: Bench, socket: string, contact: string): boolean =>
	circuit(bench).gaps.some(
		({ reason: r }) => r.kind === 'stuck-open' && r.socket === socket && r.contact === contact
	);

function springState(bench: Bench, socket: Socket, plug: Plug | null, name: SpringName) {
	const bent = isFaulty(bench, 'spring-bent', `${socket.id}.${name}`);
	const touch = circuit(bench).conductors.find(
		({ reason: r }) => r.kind === 'touch' && r.socket === socket.id && r.spring === name
	);
	const found = Object.entries(SOCKETS[socket.kind].breaks).find(([, on]) => on === name);
	const breakContact = found?.[0] ?? null;
	const seen = plug ? seenBySpring(plug.kind, plug.travel, name) : null;
	return {
		name,
		lifted: !bent && seen !== null && seen.lifted,
		touches: touch?.b ?? null,
		bent,
		breakContact,
		closed: breakContact !== null && isClosed(bench, socket.id, breakContact),
		stuckOpen: breakContact !== null && isStuckOpen(bench, socket.id, breakContact)
	};
}

/** The state of one socket as the engine sees it. Throws if the bench has no such socket. */
export function socketState(bench: Bench, id: string): SocketState {
	const socket = socketOf(bench, id);
	const plug = plugIn(bench, id);
	const part = SOCKETS[socket.kind];
	const mated = new Map<string, NodeName>();
	for (const { b, reason: r } of circuit(bench).conductors)
		if (r.kind === 'mate' && r.socket === id) mated.set(r.contact, b);
	return {
		socket,
		plug,
		springs: part.springs.map((name) => springState(bench, socket, plug, name)),
		changeover: part.changeover ? (isClosed(bench, id, 'NC') ? 'NC' : 'NO') : null,
		mated
	};
}

/** What the springs or pins of a socket see of a plug: equal texts, equal states. */
function seenText(plug: PlugKind, socket: SocketKind, travel: Millimetres): string {
	if (PLUGS[plug].fits === 'three-pin') return matedPins(travel).join();
	return SOCKETS[socket].springs
		.map((s) => {
			const { lifted, touches } = seenBySpring(plug, travel, s);
			return `${lifted ? 'lifted' : 'rests'} ${touches}`;
		})
		.join();
}

/**
 * Every travel, in mm, at which a plug of that kind going in changes what a spring, pin or break
 * contact of that kind of socket does, shallowest first. Empty where the plug does not fit.
 */
export function sectionEvents(plug: PlugKind, socket: SocketKind): readonly Millimetres[] {
	const key = `${plug} ${socket}`;
	const made = known.get(key) ?? countEvents(plug, socket);
	known.set(key, made);
	return made;
}
const known = new Map<string, readonly Millimetres[]>();

function countEvents(plug: PlugKind, socket: SocketKind): Millimetres[] {
	const part = SOCKETS[socket];
	if (PLUGS[plug].fits === 'three-pin') return part.threePin ? [PIN_1_MAKES, PINS_MAKE] : [];
	const places = part.springs.flatMap((s) =>
		PLUGS[plug].segments.map(({ from }) => SPRING_DEPTH[s] + from)
	);
	const inOrder = [...new Set(places)].filter((t) => t <= SEATED).sort((a, b) => a - b);
	const before = (i: number): Millimetres => (i === 0 ? 0 : (inOrder[i - 1]! + inOrder[i]!) / 2);
	return inOrder.filter((t, i) => seenText(plug, socket, t) !== seenText(plug, socket, before(i)));
}

/** A stretch of the travel in which the socket joins the same contacts. */
export interface TravelState {
	/** Travel at which it begins, mm. */
	readonly from: Millimetres;
	/** Travel at which the next one begins; the last one ends with the seated plug, included. */
	readonly to: Millimetres;
	/** Nets of two nodes or more: contacts of the socket and conductors of the plug, by bare name. */
	readonly nets: readonly (readonly string[])[];
	/** The nets in one line: `T TN · R tip · S sleeve`; empty where nothing is joined. */
	readonly label: string;
}

/** The bench with a bare plug of that kind in the socket, that far in; what it held lies loose. */
export function withPlugAt(
	bench: Bench,
	socket: string,
	kind: PlugKind,
	travel: Millimetres
): Bench {
	const id = freeId(bench, 'bare');
	const plugged = withBarePlug(bench, socket, kind);
	return { ...plugged, plugs: plugged.plugs.map((p) => (p.id === id ? { ...p, travel } : p)) };
}

const namesSocket = (fault: Fault, id: string): boolean =>
	'contact' in fault
		? splitNode(fault.contact)[0] === id
		: fault.kind === 'bridge' && fault.between.every((node) => splitNode(node)[0] === id);

/** Bench of that socket alone with a bare plug: no wire, no device, the faults inside the socket. */
function aloneWith(bench: Bench, id: string, kind: PlugKind, travel: Millimetres): Bench {
	const socket = socketOf(bench, id);
	const empty: Bench = {
		...bench,
		panel: { metal: false },
		sockets: [socket],
		wires: [],
		plugs: [],
		devices: [],
		cables: [],
		faults: bench.faults.filter((f) => namesSocket(f, id))
	};
	return withPlugAt(empty, id, kind, travel);
}

/** Nets of the one socket on the bench by bare names, in the order in which the trade names contacts. */
function bareNets(bench: Bench, socket: Socket): string[][] {
	const order = (node: NodeName): number => {
		const [owner, contact] = splitNode(node);
		const at = owner === socket.id ? SOCKETS[socket.kind].contacts.indexOf(contact) : -1;
		return at < 0 ? Infinity : at;
	};
	const inOrder = (x: NodeName, y: NodeName): number =>
		order(x) === order(y) ? 0 : order(x) - order(y);
	return netsOf(bench)
		.list.map((net) => [...net].sort(inOrder))
		.filter((net) => net.length > 1 && order(net[0]!) < Infinity)
		.sort((x, y) => inOrder(x[0]!, y[0]!))
		.map((net) => net.map((node) => splitNode(node)[1]));
}

/**
 * The states a plug of that kind goes through in the socket, each different from the one before, in
 * the order of the travel. The socket is taken by itself, with its own faults and without wires.
 */
export function distinctStates(bench: Bench, socket: string, kind: PlugKind): TravelState[] {
	const place = socketOf(bench, socket);
	const starts = [0, ...sectionEvents(kind, place.kind)];
	const states: TravelState[] = [];
	starts.forEach((from, i) => {
		const nets = bareNets(aloneWith(bench, socket, kind, from), place);
		const label = nets.map((net) => net.join(' ')).join(' · ');
		const to = starts[i + 1] ?? SEATED;
		const last = states.at(-1);
		if (last?.label === label) states[states.length - 1] = { ...last, to };
		else states.push({ from, to, nets, label });
	});
	return states;
}
