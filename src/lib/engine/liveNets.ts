/**
 * Nets that follow plugs. Wires, cores, bonds and what is joined inside plugs never move with a plug,
 * so they are laid together once, into blocks; only the contacts of sockets join blocks, and a plug
 * that moves changes those of the socket it leaves and of the one it enters. A joint that opens is
 * searched round from both ends in turn, one joint at a time, until the two meet or one side is
 * used up: the smaller side bounds the work, however large the panel's ground is. Blocks in series count
 * as one (spans.ts): a block below is one of no chain, or the first of a span. `steps` counts every
 * conductor and every place of a chain that is looked at. `netsOf` is the oracle in the tests.
 */
import { EMPTY_BENCH, type Bench, type Fault, type Millimetres, type NodeName } from './bench';
import { circuit, nodesOfBench, type Conductor } from './circuit';
import { labelsOf } from './fastNets';
import { SEATED } from './parts';
import { Spans } from './spans';

/** Conductors that depend on what a socket holds. */
const isContact = ({ reason: { kind } }: Conductor): boolean =>
	kind === 'rest' || kind === 'changeover' || kind === 'touch' || kind === 'mate';

const nameOf = ({ a, b }: Conductor): string => `${a} ${b}`;

/** Two blocks joined by a contact of a socket. */
interface Joint {
	readonly ends: readonly [number, number];
	/** Its place in the list of each end; in none if it is of a chain. */
	readonly at: [number, number];
	readonly nodes: string;
}

/** One side of a search: blocks reached, in order, and how far their joints have been looked at. */
interface Side {
	readonly blocks: number[];
	/** How many of them are done with. */
	done: number;
	/** The block of the span at hand whose joints are looked at; −1 before the first. */
	member: number;
	joint: number;
}

const sideFrom = (block: number): Side => ({ blocks: [block], done: 0, member: -1, joint: 0 });

export class LiveNets {
	private looked = 0;
	private readonly spans: Spans;
	private readonly index: ReadonlyMap<NodeName, number>;
	private readonly blockOf: Int32Array;
	private readonly joints: Joint[][];
	/** Net of each block, and the number of blocks on each net. */
	private readonly net: number[];
	private readonly size: number[];
	private readonly free: number[] = [];
	private readonly sockets: ReadonlyMap<string, Bench['sockets'][number]>;
	private readonly faults = new Map<string, Fault[]>();
	private readonly plugs: Map<string, Bench['plugs'][number]>;
	private readonly plugIn = new Map<string, string>();
	private readonly held = new Map<string, Map<string, Joint>>();
	/** Per block, the number of the search that reached it, and from which end. */
	private readonly reached: Int32Array;
	private search = 0;

	constructor(bench: Bench) {
		const nodes = nodesOfBench(bench);
		this.index = new Map(nodes.map((node, i) => [node, i]));
		const fixed = circuit(bench).conductors.filter((c) => c.joins && !isContact(c));
		const at = (node: NodeName) => this.index.get(node)!;
		const ends = Int32Array.from(fixed.flatMap((c) => [at(c.a), at(c.b)]));
		this.blockOf = labelsOf(nodes.length, ends);
		const blocks = this.blockOf.reduce((most, b) => Math.max(most, b + 1), 0);
		this.joints = Array.from({ length: blocks }, () => []);
		this.net = Array.from({ length: blocks }, (_, i) => i);
		this.size = new Array<number>(blocks).fill(1);
		this.reached = new Int32Array(blocks);
		this.sockets = new Map(bench.sockets.map((s) => [s.id, s]));
		this.plugs = new Map(bench.plugs.map((p) => [p.id, p]));
		for (const { id, socket } of bench.plugs) if (socket !== null) this.plugIn.set(socket, id);
		for (const fault of bench.faults) {
			if (!('contact' in fault)) continue;
			const socket = fault.contact.slice(0, fault.contact.indexOf('.'));
			this.faults.set(socket, [...(this.faults.get(socket) ?? []), fault]);
		}
		this.spans = new Spans(
			blocks,
			bench.sockets.flatMap(({ id }) =>
				this.conductorsOf(id, undefined).map((c) => ({ name: nameOf(c), ends: this.blocksOf(c) }))
			)
		);
		for (const { id } of bench.sockets) this.settle(id);
		this.looked = -this.spans.steps;
	}

	/** Conductors and places of chains looked at so far, laying the wires together not counted. */
	get steps(): number {
		return this.looked + this.spans.steps;
	}

	/** Puts a plug of the bench into an empty socket, or takes it out (null). Throws if there is no such plug. */
	move(plug: string, socket: string | null, travel: Millimetres = SEATED) {
		const before = this.plugs.get(plug);
		if (!before) throw new Error(`no plug ${plug}`);
		this.plugs.set(plug, { ...before, socket, travel });
		if (before.socket !== null && before.socket !== socket) {
			this.plugIn.delete(before.socket);
			this.settle(before.socket);
		}
		if (socket === null) return;
		this.plugIn.set(socket, plug);
		this.settle(socket);
	}

	/** A number for the net of a node: equal for nodes of one net until the next move. */
	netOf(node: NodeName): number | undefined {
		const at = this.index.get(node);
		return at === undefined ? undefined : this.net[this.spans.first(this.blockOf[at]!)];
	}

	isJoined(a: NodeName, b: NodeName): boolean {
		const net = this.netOf(a);
		return net !== undefined && net === this.netOf(b);
	}

	private blocksOf({ a, b }: Conductor): [number, number] {
		return [this.blockOf[this.index.get(a)!]!, this.blockOf[this.index.get(b)!]!];
	}

	/** The joints of one socket with what it holds: the engine's own answer for it alone. */
	private conductorsOf(id: string, plug: Bench['plugs'][number] | undefined): Conductor[] {
		const alone: Bench = {
			...EMPTY_BENCH,
			sockets: [this.sockets.get(id)!],
			plugs: plug ? [plug] : [],
			faults: this.faults.get(id) ?? []
		};
		return circuit(alone).conductors.filter((c) => c.joins && isContact(c));
	}

	/** Opens and closes what differs between the joints that the socket has and those it should have. */
	private settle(id: string) {
		const before = this.held.get(id) ?? new Map<string, Joint>();
		const after = new Map<string, Joint>();
		const made: (readonly [string, Conductor])[] = [];
		const plug = this.plugs.get(this.plugIn.get(id) ?? '');
		for (const c of this.conductorsOf(id, plug)) {
			this.looked++;
			const nodes = nameOf(c);
			const kept = before.get(nodes);
			if (kept) after.set(nodes, kept);
			else made.push([nodes, c]);
		}
		for (const [nodes, joint] of before) {
			this.looked++;
			if (!after.has(nodes)) this.open(joint);
		}
		for (const [nodes, c] of made) after.set(nodes, this.close(nodes, this.blocksOf(c)));
		this.held.set(id, after);
	}

	private close(nodes: string, ends: [number, number]): Joint {
		const { spans, net, size } = this;
		const [x, y] = [spans.first(ends[0]), spans.first(ends[1])];
		if (net[x] !== net[y]) {
			const less = size[net[x]!]! < size[net[y]!]! ? x : y;
			this.rename(less, net[less === x ? y : x]!);
		}
		const joint: Joint = { ends, at: [-1, -1], nodes };
		if (spans.isOfChain(nodes)) {
			spans.close(nodes);
			size[net[x]!]!--;
		} else {
			this.list(joint, 0);
			this.list(joint, 1);
		}
		return joint;
	}

	private list(joint: Joint, end: 0 | 1) {
		const block = joint.ends[end];
		const list = this.joints[block]!;
		if (list.length === 0) this.spans.setBusy(block, true);
		joint.at[end] = list.push(joint) - 1;
	}

	/** Gives every block of a net another net's number. */
	private rename(start: number, to: number) {
		const { net, size } = this;
		const from = net[start]!;
		net[start] = to;
		const side = sideFrom(start);
		for (let other = this.nextOf(side); other !== null; other = this.nextOf(side)) {
			if (net[other] === to) continue;
			net[other] = to;
			side.blocks.push(other);
		}
		size[to]! += side.blocks.length;
		size[from] = 0;
		this.free.push(from);
	}

	private open(joint: Joint) {
		const { spans, net, size } = this;
		if (spans.isOfChain(joint.nodes)) {
			const first = spans.first(joint.ends[0]);
			const next = spans.open(joint.nodes);
			net[next] = net[first]!;
			size[net[first]!]!++;
		} else {
			this.drop(joint, 0);
			this.drop(joint, 1);
		}
		const [x, y] = [spans.first(joint.ends[0]), spans.first(joint.ends[1])];
		if (x === y) return;
		const apart = this.smallerSide(x, y);
		if (!apart) return;
		const from = net[x]!;
		const to = this.free.pop() ?? size.push(0) - 1;
		for (const block of apart) net[block] = to;
		size[to] = apart.length;
		size[from]! -= apart.length;
	}

	/** Takes the joint out of the list of one of its ends; the last one there takes its place. */
	private drop(joint: Joint, end: 0 | 1) {
		const block = joint.ends[end];
		const list = this.joints[block]!;
		const last = list.pop()!;
		if (list.length === 0) this.spans.setBusy(block, false);
		const place = joint.at[end];
		if (last === joint && place === list.length) return;
		list[place] = last;
		const isFirst = last.ends[0] === block && last.at[0] === list.length;
		last.at[isFirst ? 0 : 1] = place;
	}

	/** Searches from both blocks in turn. The blocks of the side that ends first; null if they meet. */
	private smallerSide(x: number, y: number): readonly number[] | null {
		const marks = [++this.search, ++this.search] as const;
		const sides = [sideFrom(x), sideFrom(y)] as const;
		this.reached[x] = marks[0];
		this.reached[y] = marks[1];
		for (let turn: 0 | 1 = 0; ; turn = turn === 0 ? 1 : 0) {
			const side = sides[turn];
			const other = this.nextOf(side);
			if (other === null) return side.blocks;
			if (this.reached[other] === marks[turn === 0 ? 1 : 0]) return null;
			if (this.reached[other] === marks[turn]) continue;
			this.reached[other] = marks[turn];
			side.blocks.push(other);
		}
	}

	/** The block at the other end of the next joint of a side; null if all have been looked at. */
	private nextOf(side: Side): number | null {
		while (side.done < side.blocks.length) {
			const isFirst = side.member < 0;
			if (isFirst) side.member = this.spans.busyFrom(side.blocks[side.done]!, false);
			const joint = side.member < 0 ? undefined : this.joints[side.member]![side.joint++];
			if (joint) {
				this.looked++;
				const { ends } = joint;
				return this.spans.first(ends[0] === side.member ? ends[1] : ends[0]);
			}
			if (side.member >= 0) side.member = this.spans.busyFrom(side.member, true);
			side.joint = 0;
			if (side.member < 0) side.done++;
		}
		return null;
	}
}
