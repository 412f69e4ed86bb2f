/**
 * The continuity matrix without a circuit for each plug state. What is wired outside a socket's own
 * contacts is the same in all of its states; what a state joins inside is the socket's own, and is
 * asked of the engine once for each kind and set of faults. Joints that states share are made once
 * for all of them. `plainMatrixOf` is the oracle of this in the tests.
 */
import { EMPTY_BENCH, type Bench, type Fault, type NodeName, type Socket } from './bench';
import { circuit } from './circuit';
import { contactsOf, inState, plugIn, statesOf, withEmpty } from './edit';
import { labelsOf } from './fastNets';
import { pairsOf, type Pair, type PlugState } from './matrix';
import { Matrices, Packed } from './packed';

type Joint = readonly [number, number];

/** Pairs that make of `count` nodes the nets that `labels` says, none to spare. */
function jointsOf(labels: Int32Array, nodes: readonly number[]): Joint[] {
	const last = new Map<number, number>();
	return nodes.flatMap((node, i): Joint[] => {
		const before = last.get(labels[node]!);
		last.set(labels[node]!, i);
		return before === undefined ? [] : [[before, i]];
	});
}

/** Nets of a bench as joints of these nodes, given by their place in the list. */
function jointsIn(
	bench: Bench,
	nodes: readonly NodeName[],
	counts: (conductor: ReturnType<typeof circuit>['conductors'][number]) => boolean
): Joint[] {
	const { nodes: all, conductors } = circuit(bench);
	const at = new Map(all.map((node, i) => [node, i]));
	const joining = conductors.filter((c) => c.joins && counts(c));
	const ends = Int32Array.from(joining.flatMap((c) => [at.get(c.a)!, at.get(c.b)!]));
	return jointsOf(
		labelsOf(all.length, ends),
		nodes.map((node) => at.get(node)!)
	);
}

const same = (x: Joint, y: Joint): boolean => x[0] === y[0] && x[1] === y[1];
const has = (list: readonly Joint[], joint: Joint): boolean => list.some((j) => same(j, joint));

/** Joints one after another, each from what an earlier one has made, so that lists share what they can. */
class StepTree {
	/** Three figures each: the step that it starts from (0: nothing), and two contacts. */
	readonly steps: number[] = [];
	/** All joints that each step has made; those of 0 first. */
	private readonly made: (readonly Joint[])[] = [[]];

	constructor(private readonly lists: readonly (readonly Joint[])[]) {}

	/** The step after which the list is complete. */
	complete(list: readonly Joint[]): number {
		const within = this.made.map((made) => (made.every((j) => has(list, j)) ? made.length : -1));
		const from = within.indexOf(Math.max(...within));
		const shared = (joint: Joint) => this.lists.filter((other) => has(other, joint)).length;
		const left = list.filter((joint) => !has(this.made[from]!, joint));
		left.sort((x, y) => shared(y) - shared(x) || x[0] - y[0]);
		return left.reduce((step, joint) => {
			this.steps.push(step, ...joint);
			return this.made.push([...this.made[step]!, joint]) - 1;
		}, from);
	}
}

/** What a socket with these faults of its own contacts joins in each state, as one list of joints. */
export class SocketStates {
	readonly states: readonly PlugState[];
	/** Joints three figures each: what they start from (0: what is wired), and two contacts. */
	private readonly steps: Int32Array;
	/** Per state, the place of its partition. */
	private readonly places: Int32Array;
	private readonly packed: Packed;

	constructor(socket: Socket, faults: readonly Fault[]) {
		const alone = { ...EMPTY_BENCH, sockets: [socket], faults };
		const contacts = contactsOf(alone, socket.id);
		this.states = statesOf(alone, socket.id);
		const joints = this.states.map((state) =>
			jointsIn(inState(alone, { [socket.id]: state }), contacts, () => true)
		);
		const tree = new StepTree(joints);
		// Shorter lists first, so that longer ones can begin where they are complete.
		const inOrder = joints.map((_, s) => s).sort((x, y) => joints[x]!.length - joints[y]!.length);
		this.places = new Int32Array(joints.length);
		// Place 0 is nothing joined; then what is wired; then the steps.
		for (const s of inOrder) this.places[s] = 1 + tree.complete(joints[s]!);
		const { steps } = tree;
		this.steps = Int32Array.from(steps);
		this.packed = new Packed(2 + steps.length / 3);
	}

	/** The matrix in each state with these joints outside, as numbers in `matrices`. */
	matricesWith(outside: Int32Array, matrices: Matrices, into: Int32Array) {
		const { packed, steps, places } = this;
		packed.joinAll(0, outside, 1);
		packed.joinEach(1, steps, 2);
		matrices.internEach(packed, places, into);
	}
}

const known = new Map<string, SocketStates>();

/** What the socket of the bench joins in each state, its own faults in force. */
export function socketStatesOf(bench: Bench, socket: Socket): SocketStates {
	const own = bench.faults.filter((f) => 'contact' in f && f.contact.startsWith(`${socket.id}.`));
	const key = own.length === 0 ? socket.kind : null;
	const made = (key && known.get(key)) || new SocketStates({ ...socket, bush: 'insulated' }, own);
	if (key) known.set(key, made);
	return made;
}

/** The joints that wires and all else outside the socket make of its contacts, two ends by two. */
export function outsideOf(bench: Bench, socket: string): Int32Array {
	const empty = plugIn(bench, socket) ? withEmpty(bench, socket) : bench;
	const joints = jointsIn(
		empty,
		contactsOf(bench, socket),
		({ reason }) =>
			!((reason.kind === 'rest' || reason.kind === 'changeover') && reason.socket === socket)
	);
	return Int32Array.from(joints.flat());
}

/** Joined pairs of the socket's own contacts, in every plug state; all else of the bench stays. */
export function matrixOf(bench: Bench, socket: string): Partial<Record<PlugState, Pair[]>> {
	const found = bench.sockets.find((s) => s.id === socket);
	if (!found) return {};
	const plan = socketStatesOf(bench, found);
	const matrices = new Matrices();
	const numbers = new Int32Array(plan.states.length);
	plan.matricesWith(outsideOf(bench, socket), matrices, numbers);
	const contacts = contactsOf(bench, socket);
	const at = new Map(contacts.map((contact, i) => [contact, i]));
	const pairs = pairsOf(contacts);
	return Object.fromEntries(
		plan.states.map((state, s) => [
			state,
			pairs.filter(([a, b]) => matrices.isJoined(numbers[s]!, at.get(a)!, at.get(b)!))
		])
	);
}
