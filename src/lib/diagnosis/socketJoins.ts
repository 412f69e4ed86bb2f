/**
 * What one socket joins with what it holds, under any set of its own faults. The rule of contact is
 * the engine's. It is asked for each spring or pin apart, under that one's faults alone, since no
 * spring knows of another, and the answers are laid together; so three faults on three springs need
 * no circuit that three single ones have not made. A bare plug's own conductors are nobody's nodes:
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

/** The spring or pin whose contact a fault of contacts spoils. */
export function spoiledBy({ kind }: Socket, fault: Fault): string {
	const contact = 'contact' in fault ? splitNode(fault.contact)[1] : '';
	return SOCKETS[kind].breaks[contact] ?? contact;
}

/** A fault of this socket: its number in the list, and the spring that it spoils. */
export interface Spoiled {
	readonly number: number;
	readonly spring: string;
	readonly fault: Fault;
}

/** What hangs on one spring: pairs of local numbers, one after the other. Equal ones are one, and have one number. */
interface Part {
	readonly number: number;
	readonly ends: readonly number[];
}

export class SocketJoins {
	private readonly springs: readonly string[];
	/** Numbers of their own for this socket's nodes and its plug's. */
	private readonly local = new Map<NodeName, number>();
	/** The bench's number of each; −1 for a bare plug's. */
	private readonly node: number[] = [];
	/** What hangs on a spring, by the spring and its faults, and the same by what it is. */
	private readonly parts = new Map<string, Part>();
	private readonly partsByText = new Map<string, Part>();
	/** The ends by set of faults, and by the parts that it leaves: few sets differ in one plug state. */
	private readonly ends = new Map<string, Int32Array>();
	private readonly endsByParts = new Map<string, Int32Array>();

	constructor(
		private readonly socket: Socket,
		private readonly plug: Plug | null,
		index: ReadonlyMap<NodeName, number>,
		/** Faults of the file on this socket's contacts. */
		private readonly file: readonly Fault[]
	) {
		const { nodes, conductors } = this.alone([]);
		for (const name of nodes) {
			this.local.set(name, this.local.size);
			this.node.push(index.get(name) ?? -1);
		}
		const all = conductors.map(springOf);
		this.springs = [...new Set(['', ...all, ...SOCKETS[socket.kind].springs])];
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
	private partOf(spring: string, faults: readonly Spoiled[]): Part {
		let key = spring;
		for (const f of faults) if (f.spring === spring) key += ` ${f.number}`;
		const known = this.parts.get(key);
		if (known) return known;
		const own = faults.filter((f) => f.spring === spring).map((f) => f.fault);
		const ends = this.alone(own)
			.conductors.filter((c) => springOf(c) === spring)
			.flatMap((c) => [this.local.get(c.a)!, this.local.get(c.b)!]);
		const part = this.partsByText.get(ends.join()) ?? { number: this.partsByText.size, ends };
		this.partsByText.set(ends.join(), part);
		this.parts.set(key, part);
		return part;
	}

	/** The ends, two by two, of what is joined among the bench's nodes. `key`: one text for each set. */
	endsUnder(faults: readonly Spoiled[], key: string): Int32Array {
		const known = this.ends.get(key);
		if (known) return known;
		const parts = this.springs.map((spring) => this.partOf(spring, faults));
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
