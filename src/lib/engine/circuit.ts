/**
 * A bench becomes nodes and conductors, and every conductor knows why it is there. This is the only
 * place with a rule of contact: nets, resistances, paths, the meter and the judge all read its
 * result. Reasons are data; `words/` makes sentences of them.
 */
import {
	PANEL,
	type Bench,
	type Device,
	type Fault,
	type NodeName,
	type Ohms,
	type Plug,
	type Socket,
	type Volts
} from './bench';
import {
	DEVICES,
	GOOD,
	PHANTOM,
	PHANTOM_FEED,
	PLUGS,
	SOCKETS,
	matedPins,
	nodesOf,
	ohmsPerMetre,
	seenBySpring,
	type PlugConductor,
	type SpringName
} from './parts';

/** Why a conductor is there. */
export type Reason =
	/** The spring or pin rests on its break contact. `stuck`: a fault holds it there. */
	| { kind: 'rest'; socket: string; spring: string; contact: string; stuck: boolean }
	/** The changeover stands on NC or NO. */
	| { kind: 'changeover'; socket: string; contact: 'NC' | 'NO' }
	/** A spring of the socket touches this part of a plug. */
	| { kind: 'touch'; socket: string; spring: SpringName; plug: string; part: PlugConductor }
	/** A pin or the shell of a three-pin plug has mated. */
	| { kind: 'mate'; socket: string; contact: string; plug: string; part: PlugConductor }
	| { kind: 'wire'; wire: string }
	| { kind: 'core'; cable: string; core: number }
	/** Joined inside the plug. */
	| { kind: 'inside-plug'; plug: string }
	/** The chassis lug on the metal panel. */
	| { kind: 'chassis'; socket: string }
	/** The metal bush on the metal panel. */
	| { kind: 'bush'; socket: string }
	| { kind: 'bridge'; fault: number }
	/** Inside a device: its shield bonded to its chassis, or a load, coil, output or feed resistor. */
	| { kind: 'inside-device'; device: string; role: 'bond' | 'coil' | 'load' | 'output' | 'feed' };

/** Why two contacts are apart that could be joined. */
export type GapReason =
	/** A plug lifts the spring off its break contact (or pushes pin 1 off 1N). */
	| { kind: 'lifted'; socket: string; spring: string; contact: string; plug: string }
	/** The changeover stands on the other side; `plug` is what moved it, null when it rests. */
	| { kind: 'changeover'; socket: string; contact: 'NC' | 'NO'; plug: string | null }
	| { kind: 'stuck-open'; socket: string; spring: string; contact: string }
	| { kind: 'cut'; wire: string };

export interface Electromotive {
	/** Open-circuit volts, + at the conductor's `a`. */
	readonly volts: Volts;
	readonly supply: 'phantom' | 'signal';
	readonly device: string;
}
export interface Conductor {
	readonly a: NodeName;
	readonly b: NodeName;
	readonly ohms: Ohms;
	/** Whether it makes one net of its ends. False inside devices, except the shield bond. */
	readonly joins: boolean;
	readonly reason: Reason;
	readonly emf?: Electromotive;
}
export interface Gap {
	readonly a: NodeName;
	readonly b: NodeName;
	readonly reason: GapReason;
}
export interface Circuit {
	readonly nodes: readonly NodeName[];
	readonly conductors: readonly Conductor[];
	readonly gaps: readonly Gap[];
}

/** Every node of the bench, in file order: sockets, plugs, devices, panel. */
export function nodesOfBench(bench: Bench): NodeName[] {
	return [
		...bench.sockets.flatMap((s) => nodesOf(s.id, SOCKETS[s.kind].contacts)),
		...bench.plugs.flatMap((p) => nodesOf(p.id, PLUGS[p.kind].conductors)),
		...bench.devices.flatMap((d) => nodesOf(d.id, DEVICES[d.kind].terminals)),
		...(bench.panel.metal ? [PANEL] : [])
	];
}

/** Where a wire that should land on `node` really lands: swaps act one after another, in file order. */
function landing(node: NodeName, faults: readonly Fault[]): NodeName {
	let at = node;
	for (const fault of faults) {
		if (fault.kind !== 'swap') continue;
		const [x, y] = fault.contacts;
		if (at === x) at = y;
		else if (at === y) at = x;
	}
	return at;
}

interface Builder {
	readonly bench: Bench;
	readonly conductors: Conductor[];
	readonly gaps: Gap[];
}

const hasFault = (bench: Bench, kind: Fault['kind'], contact: NodeName): boolean =>
	bench.faults.some((f) => f.kind === kind && 'contact' in f && f.contact === contact);

const sumOhms = (faults: readonly Fault[], match: (f: Fault) => boolean): Ohms =>
	faults.reduce((sum, f) => (match(f) && 'ohms' in f ? sum + f.ohms : sum), 0);

/**
 * The break contact of a spring or pin: closed exactly while that spring rests. A contact that is
 * stuck both open and closed counts as open: metal that never meets cannot conduct.
 */
function addBreak(
	to: Builder,
	socket: Socket,
	contact: string,
	spring: string,
	lifter: Plug | null
) {
	const { bench } = to;
	const a: NodeName = `${socket.id}.${spring}`;
	const b: NodeName = `${socket.id}.${contact}`;
	const at = { socket: socket.id, spring, contact };
	if (hasFault(bench, 'break-stuck-open', b)) {
		to.gaps.push({ a, b, reason: { kind: 'stuck-open', ...at } });
		return;
	}
	const stuck = hasFault(bench, 'break-stuck-closed', b) || hasFault(bench, 'spring-bent', a);
	if (lifter && !stuck) {
		to.gaps.push({ a, b, reason: { kind: 'lifted', ...at, plug: lifter.id } });
		return;
	}
	const dirt = sumOhms(bench.faults, (f) => f.kind === 'break-dirty' && f.contact === b);
	const reason: Reason = { kind: 'rest', ...at, stuck: lifter !== null };
	to.conductors.push({ a, b, ohms: GOOD.break + dirt, joins: true, reason });
}

function addChangeover(to: Builder, socket: Socket, lifter: Plug | null) {
	const bent = hasFault(to.bench, 'spring-bent', `${socket.id}.T`);
	const on = lifter && !bent ? 'NO' : 'NC';
	for (const contact of ['NC', 'NO'] as const) {
		const ends = { a: `${socket.id}.C`, b: `${socket.id}.${contact}` };
		const at = { socket: socket.id, contact };
		if (contact === on) {
			const reason: Reason = { kind: 'changeover', ...at };
			to.conductors.push({ ...ends, ohms: GOOD.break, joins: true, reason });
		} else {
			const plug = on === 'NO' && lifter ? lifter.id : null;
			to.gaps.push({ ...ends, reason: { kind: 'changeover', ...at, plug } });
		}
	}
}

/** Springs of a jack against the phone plug that stands in it, and which of them it lifts. */
function addSprings(to: Builder, socket: Socket, plug: Plug | null): Map<string, Plug> {
	const lifted = new Map<string, Plug>();
	if (!plug) return lifted;
	for (const spring of SOCKETS[socket.kind].springs) {
		const seen = seenBySpring(plug.kind, plug.travel, spring);
		if (seen.lifted) lifted.set(spring, plug);
		const a: NodeName = `${socket.id}.${spring}`;
		if (seen.touches === null || hasFault(to.bench, 'spring-bent', a)) continue;
		to.conductors.push({
			a,
			b: `${plug.id}.${seen.touches}`,
			ohms: GOOD.touch,
			joins: true,
			reason: { kind: 'touch', socket: socket.id, spring, plug: plug.id, part: seen.touches }
		});
	}
	return lifted;
}

/** Pins and shell against the three-pin plug; pin 1 counts as lifted off its break once it mates. */
function addPins(to: Builder, socket: Socket, plug: Plug): Map<string, Plug> {
	const lifted = new Map<string, Plug>();
	for (const part of matedPins(plug.travel)) {
		const contact = part === 'shell' ? 'G' : part;
		if (contact === '1') lifted.set(contact, plug);
		to.conductors.push({
			a: `${socket.id}.${contact}`,
			b: `${plug.id}.${part}`,
			ohms: GOOD.touch,
			joins: true,
			reason: { kind: 'mate', socket: socket.id, contact, plug: plug.id, part }
		});
	}
	return lifted;
}

function addSocket(to: Builder, socket: Socket) {
	const part = SOCKETS[socket.kind];
	const plug = to.bench.plugs.find((p) => p.socket === socket.id) ?? null;
	const lifted =
		plug && PLUGS[plug.kind].fits === 'three-pin'
			? addPins(to, socket, plug)
			: addSprings(to, socket, plug);
	for (const [contact, spring] of Object.entries(part.breaks))
		addBreak(to, socket, contact, spring, lifted.get(spring) ?? null);
	if (part.changeover) addChangeover(to, socket, lifted.get('T') ?? null);
	if (!to.bench.panel.metal) return;
	const bond = { b: PANEL, ohms: GOOD.bond, joins: true };
	if (part.contacts.includes('G'))
		to.conductors.push({
			a: `${socket.id}.G`,
			...bond,
			reason: { kind: 'chassis', socket: socket.id }
		});
	if (socket.bush === 'metal')
		to.conductors.push({
			a: `${socket.id}.S`,
			...bond,
			reason: { kind: 'bush', socket: socket.id }
		});
}

/** A wire or a core: cut, with added resistance, or landing elsewhere, as the faults say. */
function addWire(
	to: Builder,
	name: string,
	ends: readonly [NodeName, NodeName],
	ohms: Ohms,
	reason: Reason
) {
	const { faults } = to.bench;
	const a = landing(ends[0], faults);
	const b = landing(ends[1], faults);
	if (faults.some((f) => f.kind === 'open' && f.wire === name)) {
		to.gaps.push({ a, b, reason: { kind: 'cut', wire: name } });
		return;
	}
	const added = sumOhms(faults, (f) => f.kind === 'resistive' && f.wire === name);
	to.conductors.push({ a, b, ohms: ohms + added, joins: true, reason });
}

function addDevice(to: Builder, device: Device) {
	const node = (terminal: string): NodeName => `${device.id}.${terminal}`;
	for (const r of DEVICES[device.kind].inside) {
		to.conductors.push({
			a: node(r.a),
			b: node(r.b),
			ohms: r.ohms,
			joins: r.role === 'bond',
			reason: { kind: 'inside-device', device: device.id, role: r.role },
			...(r.signal !== undefined && {
				emf: { volts: r.signal, supply: 'signal', device: device.id }
			})
		});
	}
	if (!device.phantom) return;
	for (const leg of ['hot', 'cold']) {
		// The perfect supply stands between shield and the joint of both resistors, so each leg is
		// 48 V behind its own 6810 Ω.
		to.conductors.push({
			a: node(leg),
			b: node('shield'),
			ohms: PHANTOM_FEED,
			joins: false,
			reason: { kind: 'inside-device', device: device.id, role: 'feed' },
			emf: { volts: PHANTOM, supply: 'phantom', device: device.id }
		});
	}
}

const cache = new WeakMap<Bench, Circuit>();

/**
 * Says that the bench has the circuit of another: the two differ only in how far a plug is in, and no
 * event lies between. It is not checked; it spares every step of a drag the same work.
 */
export const shareCircuit = (bench: Bench, from: Bench): void => {
	cache.set(bench, circuit(from));
};

/** The circuit of a bench as it stands, plugs at their travel and faults in force. Pure; remembered per bench. */
export function circuit(bench: Bench): Circuit {
	const known = cache.get(bench);
	if (known) return known;
	const to: Builder = { bench, conductors: [], gaps: [] };
	for (const socket of bench.sockets) addSocket(to, socket);
	for (const plug of bench.plugs)
		for (const [x, y] of PLUGS[plug.kind].inside)
			to.conductors.push({
				a: `${plug.id}.${x}`,
				b: `${plug.id}.${y}`,
				ohms: GOOD.short,
				joins: true,
				reason: { kind: 'inside-plug', plug: plug.id }
			});
	for (const wire of bench.wires)
		addWire(to, wire.id, [wire.from, wire.to], (ohmsPerMetre(wire.awg) * wire.mm) / 1000, {
			kind: 'wire',
			wire: wire.id
		});
	for (const cable of bench.cables)
		cable.cores.forEach((ends, core) =>
			addWire(to, `${cable.id}:${core}`, ends, ohmsPerMetre(cable.awg) * cable.m, {
				kind: 'core',
				cable: cable.id,
				core
			})
		);
	for (const device of bench.devices) addDevice(to, device);
	bench.faults.forEach((fault, index) => {
		if (fault.kind !== 'bridge') return;
		const [a, b] = fault.between;
		const reason: Reason = { kind: 'bridge', fault: index };
		to.conductors.push({ a, b, ohms: GOOD.bridge, joins: true, reason });
	});
	const made: Circuit = { nodes: nodesOfBench(bench), conductors: to.conductors, gaps: to.gaps };
	cache.set(bench, made);
	return made;
}
