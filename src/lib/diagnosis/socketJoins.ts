/**
 * What one socket joins with what it holds, under any set of its own faults. The rule of contact is
 * the engine's. It is asked for each spring or pin apart, under that one's faults alone, since no
 * spring knows of another, and the answers are laid together; so three faults on three springs need
 * no circuit that three single ones have not made. What a spring joins is the same for every socket of
 * the kind with the same plug as far in, so it is kept for all benches. A bare plug's own conductors are nobody's nodes:
 * what contacts share through one is joined directly.
 */
import {
	EMPTY_BENCH,
	SOCKETS,
	circuit,
	splitNode,
	type Conductor,
	type Fault,
	type NodeName,
	type Plug,
	type Socket
} from '../engine';

/** The spring or pin that the conductor hangs on; empty for the plug's own inside. */
function springOf({ reason }: Conductor): string {
	if (reason.kind === 'rest' || reason.kind === 'touch') return reason.spring;
	if (reason.kind === 'mate') return reason.contact;
	return reason.kind === 'changeover' ? 'T' : '';
}

/** A fault of a socket: its number in the list, the spring that it spoils, and one text for all like it. */
export interface Spoiled {
	readonly number: number;
	readonly spring: string;
	readonly fault: Fault;
	readonly text: string;
}

/** What the fault spoils of the socket that it is on; nothing if it is on none. */
export function spoiled(socket: Socket | undefined, fault: Fault, number: number): Spoiled {
	const contact = 'contact' in fault ? splitNode(fault.contact)[1] : '';
	const spring = socket ? (SOCKETS[socket.kind].breaks[contact] ?? contact) : '';
	return { number, spring, fault, text: `${fault.kind} ${contact}` };
}

/** What hangs on one spring: pairs of local numbers, one after the other. Equal ones are one, and have one number. */
interface Part {
	readonly number: number;
	readonly ends: readonly number[];
}

/** The fault with its contact on the socket `S`. */
const onS = (fault: Fault): Fault =>
	'contact' in fault ? { ...fault, contact: `S.${splitNode(fault.contact)[1]}` } : fault;

/** The springs of a socket `S` with a plug `P` or none, whatever bench they stand on. */
class Springs {
	readonly names: readonly string[];
	/** Nodes of the two, in the order of their local numbers. */
	readonly nodes: readonly NodeName[];
	private readonly local: ReadonlyMap<NodeName, number>;
	/** What hangs on a spring, by the spring and its faults, and the same by what it is. */
	private readonly parts = new Map<string, Part>();
	private readonly partsByText = new Map<string, Part>();

	constructor(
		private readonly socket: Socket,
		private readonly plug: Plug | null,
		/** Faults of the file on this socket's contacts. */
		private readonly file: readonly Fault[]
	) {
		const { nodes, conductors } = this.alone([]);
		this.nodes = nodes;
		this.local = new Map(nodes.map((name, i) => [name, i]));
		const all = conductors.map(springOf);
		this.names = [...new Set(['', ...all, ...SOCKETS[socket.kind].springs])];
	}

	private alone(faults: readonly Fault[]) {
		return circuit({
			...EMPTY_BENCH,
			sockets: [this.socket],
			plugs: this.plug ? [this.plug] : [],
			faults: [...this.file, ...faults]
		});
	}

	/** What hangs on one spring, under those of the faults that spoil it. */
	partOf(spring: string, faults: readonly Spoiled[]): Part {
		let key = '';
		for (const f of faults) if (f.spring === spring) key = key === '' ? f.text : `${key} ${f.text}`;
		if (key === '') key = spring;
		const known = this.parts.get(key);
		if (known) return known;
		const own = faults.filter((f) => f.spring === spring).map((f) => onS(f.fault));
		const ends = this.alone(own)
			.conductors.filter((c) => springOf(c) === spring)
			.flatMap((c) => [this.local.get(c.a)!, this.local.get(c.b)!]);
		const part = this.partsByText.get(ends.join()) ?? { number: this.partsByText.size, ends };
		this.partsByText.set(ends.join(), part);
		this.parts.set(key, part);
		return part;
	}
}

/** Kinds of socket with what they hold that are kept; a plug may stand anywhere, so there is no end of them. */
const MOST_KEPT = 500;
const kept = new Map<string, Springs>();

function springsOf(socket: Socket, plug: Plug | null, file: readonly Fault[]): Springs {
	const own = file.map(onS);
	const key = JSON.stringify([socket.kind, plug && [plug.kind, plug.travel], own]);
	const known = kept.get(key);
	if (known) return known;
	if (kept.size === MOST_KEPT) kept.clear();
	const held = plug && { ...plug, id: 'P', socket: 'S' };
	const made = new Springs({ ...socket, id: 'S' }, held, own);
	kept.set(key, made);
	return made;
}

export class SocketJoins {
	private readonly springs: Springs;
	/** The bench's number of each of the springs' nodes; −1 for a bare plug's. */
	private readonly node: readonly number[];
	/** What hangs on each spring under no fault but the file's. */
	private readonly sound: readonly Part[];
	/** The ends by set of faults, and by the parts that it leaves: few sets differ in one plug state. */
	private readonly ends = new Map<string, Int32Array>();
	private readonly endsByParts = new Map<string, Int32Array>();

	/** `file`: faults of the file on this socket's contacts. */
	constructor(
		socket: Socket,
		plug: Plug | null,
		index: ReadonlyMap<NodeName, number>,
		file: readonly Fault[]
	) {
		this.springs = springsOf(socket, plug, file);
		this.sound = this.springs.names.map((spring) => this.springs.partOf(spring, []));
		this.node = this.springs.nodes.map((name) => {
			const [owner, contact] = splitNode(name);
			return index.get(`${owner === 'S' ? socket.id : plug!.id}.${contact}`) ?? -1;
		});
	}

	/** The ends, two by two, of what is joined among the bench's nodes. `key`: one text for each set. */
	endsUnder(faults: readonly Spoiled[], key: string): Int32Array {
		const known = this.ends.get(key);
		if (known) return known;
		const { names } = this.springs;
		const parts = this.sound.slice();
		for (const { spring } of faults)
			parts[names.indexOf(spring)] = this.springs.partOf(spring, faults);
		const numbers = parts.map((part) => part.number).join();
		const ends = this.endsByParts.get(numbers) ?? this.laidTogether(parts);
		this.endsByParts.set(numbers, ends);
		this.ends.set(key, ends);
		return ends;
	}

	private laidTogether(parts: readonly Part[]): Int32Array {
		const net = this.node.map((_, i) => i);
		const root = (i: number): number => (net[i] === i ? i : root(net[i]!));
		for (const { ends } of parts)
			for (let k = 0; k < ends.length; k += 2) net[root(ends[k]!)] = root(ends[k + 1]!);
		return Int32Array.from(this.chained(root));
	}

	/** The bench's nodes that have one root, each joined to the one before it. */
	private chained(root: (i: number) => number): number[] {
		const last: number[] = [];
		const ends: number[] = [];
		this.node.forEach((node, i) => {
			if (node < 0) return;
			const before = last[root(i)];
			if (before !== undefined) ends.push(before, node);
			last[root(i)] = node;
		});
		return ends;
	}
}
