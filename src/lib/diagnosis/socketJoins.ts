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

type Ends = readonly [NodeName, NodeName];

/** The spring or pin that the conductor hangs on; empty for the plug's own inside. */
function springOf({ reason }: Conductor): string {
	if (reason.kind === 'rest' || reason.kind === 'touch') return reason.spring;
	if (reason.kind === 'mate') return reason.contact;
	return reason.kind === 'changeover' ? 'T' : '';
}

/** The spring or pin whose contact a fault of contacts spoils. */
function spoiledBy({ kind }: Socket, fault: Fault): string {
	const contact = 'contact' in fault ? splitNode(fault.contact)[1] : '';
	return SOCKETS[kind].breaks[contact] ?? contact;
}

/** The pairs with names that `index` does not know taken out, what they join staying joined. */
function knownEnds(pairs: readonly Ends[], index: ReadonlyMap<NodeName, number>): number[] {
	const leader = new Map<NodeName, NodeName>();
	const lead = (name: NodeName): NodeName => {
		const next = leader.get(name);
		return next === undefined || next === name ? name : lead(next);
	};
	for (const [a, b] of pairs) leader.set(lead(a), lead(b));
	const last = new Map<NodeName, number>();
	return [...new Set(pairs.flat())].flatMap((name) => {
		const node = index.get(name);
		if (node === undefined) return [];
		const before = last.get(lead(name));
		last.set(lead(name), node);
		return before === undefined ? [] : [before, node];
	});
}

export class SocketJoins {
	private readonly springs: readonly string[];
	private readonly parts = new Map<string, readonly Ends[]>();
	private readonly ends = new Map<string, readonly number[]>();

	constructor(
		private readonly socket: Socket,
		private readonly plug: Plug | null,
		private readonly index: ReadonlyMap<NodeName, number>,
		/** Faults of the file on this socket's contacts. */
		private readonly file: readonly Fault[]
	) {
		const all = this.conductors([]).map(springOf);
		this.springs = [...new Set(['', ...all, ...SOCKETS[socket.kind].springs])];
	}

	private conductors(faults: readonly Fault[]): readonly Conductor[] {
		const alone = {
			...EMPTY_BENCH,
			sockets: [this.socket],
			plugs: this.plug ? [this.plug] : [],
			faults: [...this.file, ...faults]
		};
		return circuit(alone).conductors;
	}

	/** What hangs on one spring, under its own faults. */
	private partOf(spring: string, faults: readonly Fault[]): readonly Ends[] {
		const key = JSON.stringify([spring, faults]);
		const known = this.parts.get(key);
		if (known) return known;
		const own = this.conductors(faults).filter((c) => springOf(c) === spring);
		const part = own.map((c): Ends => [c.a, c.b]);
		this.parts.set(key, part);
		return part;
	}

	/** The ends, two by two, of what is joined among known nodes. `key`: one text for each set of faults. */
	endsUnder(faults: readonly Fault[], key: string): readonly number[] {
		const known = this.ends.get(key);
		if (known) return known;
		const pairs = this.springs.flatMap((spring) =>
			this.partOf(
				spring,
				faults.filter((f) => spoiledBy(this.socket, f) === spring)
			)
		);
		const ends = knownEnds(pairs, this.index);
		this.ends.set(key, ends);
		return ends;
	}
}
