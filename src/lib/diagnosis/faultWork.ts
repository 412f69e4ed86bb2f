/**
 * What each single fault takes away from a bench and what it adds, plug state by plug state, as
 * joints of numbered nodes: the plain engine's conductors and nothing else. From the nets of the
 * sound bench only those that lose or gain a joint are laid out again, so a fault costs what its own
 * nets hold and not what the panel holds.
 */
import { FIXED, wireNameOf } from './wireLayer';
import {
	circuit,
	inState,
	nodesOfBench,
	plugIn,
	splitNode,
	type Bench,
	type Conductor,
	type Fault,
	type NodeName,
	type When
} from '../engine';
import { SocketJoins, spoiled, type Spoiled } from './socketJoins';

/** Joints that a fault takes away, by their number in the state, and the ends of those it adds, two by two. */
interface Change {
	readonly gone: readonly number[];
	readonly come: readonly number[];
}
const NOTHING: Change = { gone: [], come: [] };

export class FaultWork {
	readonly index: ReadonlyMap<NodeName, number>;
	/** Ends of all that no fault takes away, two by two. */
	readonly fixed: readonly number[];
	private readonly wires: readonly string[];
	/** Where the wires land, two by two. */
	private readonly ends: readonly number[];
	private readonly known = new Map<string, SocketJoins>();
	private readonly wireChanges: readonly Change[];
	/** Per fault, the socket whose contact it spoils; −1 for faults of wires. */
	private readonly place: readonly number[];
	private readonly spoiled: readonly Spoiled[];

	constructor(
		private readonly bench: Bench,
		private readonly faults: readonly Fault[]
	) {
		this.index = new Map(nodesOfBench(bench).map((node, i) => [node, i]));
		const joining = circuit(bench).conductors.filter((c) => c.joins);
		const endsOf = (list: readonly Conductor[]) =>
			list.flatMap((c) => [this.index.get(c.a)!, this.index.get(c.b)!]);
		const wires = joining.filter((c) => wireNameOf(c) !== null);
		this.wires = wires.map((c) => wireNameOf(c)!);
		this.ends = endsOf(wires);
		this.fixed = endsOf(joining.filter((c) => FIXED.includes(c.reason.kind)));
		const sockets = new Map(bench.sockets.map((s, i) => [s.id, i]));
		this.place = faults.map((f) => ('contact' in f ? sockets.get(splitNode(f.contact)[0])! : -1));
		this.spoiled = faults.map((f, i) => spoiled(bench.sockets[this.place[i]!], f, i));
		this.wireChanges = faults.map((f) => this.wireChange(f));
	}

	private wireChange(fault: Fault): Change {
		if (fault.kind === 'open')
			return { gone: this.wires.flatMap((w, i) => (w === fault.wire ? [i] : [])), come: [] };
		if (fault.kind === 'bridge') return { gone: [], come: this.numbers(fault.between) };
		return fault.kind === 'swap' ? this.exchange(fault.contacts) : NOTHING;
	}

	private numbers = (nodes: readonly NodeName[]): number[] => nodes.map((n) => this.index.get(n)!);

	/** Every wire that lands on one of the two lands on the other. */
	private exchange(contacts: readonly NodeName[]): Change {
		const [x, y] = this.numbers(contacts);
		const gone = this.wires.flatMap((_, i) => {
			const ends = [this.ends[2 * i], this.ends[2 * i + 1]];
			return ends.includes(x) || ends.includes(y) ? [i] : [];
		});
		const other = (at: number) => (at === x ? y! : at === y ? x! : at);
		const come = gone.flatMap((i) => [other(this.ends[2 * i]!), other(this.ends[2 * i + 1]!)]);
		return { gone, come };
	}

	private joinsOf(at: number, there: Bench): SocketJoins {
		const { bench, known } = this;
		const socket = bench.sockets[at]!;
		const plug = plugIn(there, socket.id);
		const key = JSON.stringify([socket.id, plug]);
		const made = known.get(key);
		if (made) return made;
		const own = (f: Fault) => 'contact' in f && splitNode(f.contact)[0] === socket.id;
		const joins = new SocketJoins(socket, plug, this.index, bench.faults.filter(own));
		known.set(key, joins);
		return joins;
	}

	/** All joints of the sound bench in that plug state, and what each fault changes of them. */
	inState(when: When) {
		const there = inState(this.bench, when);
		const joins = this.bench.sockets.map((_, i) => this.joinsOf(i, there));
		const ends = [...this.ends, ...this.fixed];
		const from = joins.map((socket) => {
			const first = ends.length / 2;
			for (const end of socket.endsUnder([], '')) ends.push(end);
			return first;
		});
		const changeBy = (fault: number): Change => {
			const at = this.place[fault]!;
			if (at < 0) return this.wireChanges[fault]!;
			const socket = joins[at]!;
			const under = socket.endsUnder([this.spoiled[fault]!], String(fault));
			return changed(socket.endsUnder([], ''), under, from[at]!);
		};
		return { ends, changeBy };
	}
}

/** What is only before is gone, what is only after has come. */
function changed(before: ArrayLike<number>, after: ArrayLike<number>, first: number): Change {
	const left = new Map<string, number[]>();
	for (let k = 0; k < before.length; k += 2) {
		const key = `${before[k]} ${before[k + 1]}`;
		left.set(key, [...(left.get(key) ?? []), first + k / 2]);
	}
	const come: number[] = [];
	for (let k = 0; k < after.length; k += 2)
		if (left.get(`${after[k]} ${after[k + 1]}`)?.pop() === undefined)
			come.push(after[k]!, after[k + 1]!);
	return { gone: [...left.values()].flat(), come };
}
