/**
 * A wiring task made ready for search. In each plug state what is fixed (break contacts, plugs,
 * cables, bonds inside devices, the panel) makes classes of nodes; the learner's wires make blocks of
 * contacts, the same in every state. A state's nets are the join of the two, so whether a pair is
 * joined depends on the blocks alone. The fixed classes are asked of the engine, on the bench with
 * every wire taken out; nothing about contacts is known here.
 */
import {
	checksOf,
	contactsOf,
	inState,
	netsOf,
	type Bench,
	type Check,
	type NodeName,
	type Requirement,
	type When
} from '../../engine';
import { sameWhen } from '../same';
import { Joiner, type Partition } from './partition';

/** A bench whose wires may be changed between contacts of these sockets, to meet a requirement. */
export interface Task {
	readonly bench: Bench;
	readonly mayWire: readonly string[];
	readonly require: readonly Requirement[];
}
type ItemPair = readonly [number, number];
/** One plug state, or all of them laid over each other. */
export interface State {
	readonly when: When;
	/** Fixed class of every item: the contacts first, then other nodes that a check names. */
	readonly fixed: readonly number[];
	readonly joined: readonly ItemPair[];
	readonly apart: readonly ItemPair[];
	/** Checks on what is heard, which need the whole circuit. */
	readonly ears: readonly Check[];
}
export interface Ready {
	/** Without wires. */
	readonly bench: Bench;
	readonly contacts: readonly NodeName[];
	readonly states: readonly State[];
	/** Whatever is fixed in any state and joined in any state, at once: only good for counting links. */
	readonly overlaid: State;
}

const isEar = ({ wanted }: Check): boolean => wanted !== 'joined' && wanted !== 'apart';

function stateOf(bare: Bench, items: readonly NodeName[], checks: readonly Check[]): State {
	const { when } = checks[0]!;
	const { indexOf } = netsOf(inState(bare, when));
	const of = (wanted: Check['wanted']) =>
		checks
			.filter((c) => c.wanted === wanted)
			.map(({ pair: [a, b] }): ItemPair => [items.indexOf(a), items.indexOf(b)]);
	return {
		when,
		// A node that is not there in this state (a bare plug's) is a net of its own.
		fixed: items.map((node, i) => indexOf.get(node) ?? indexOf.size + i),
		joined: of('joined'),
		apart: of('apart'),
		ears: checks.filter(isEar)
	};
}

function overlay(states: readonly State[], items: number): State {
	const all = new Joiner(items);
	for (const { fixed } of states) all.joinLabels(fixed);
	const joined = states.flatMap((s) => s.joined);
	return { when: {}, fixed: all.labels(), joined, apart: [], ears: [] };
}

/** The task with these checks only. */
export function readyFor({ bench, mayWire }: Task, checks: readonly Check[]): Ready {
	const bare = { ...bench, wires: [] };
	const contacts = mayWire.flatMap((id) => contactsOf(bench, id));
	const named = checks.filter((c) => !isEar(c)).flatMap((c) => c.pair);
	const items = [...new Set([...contacts, ...named])];
	const groups: Check[][] = [];
	for (const check of checks) {
		const group = groups.find((g) => sameWhen(g[0]!.when, check.when));
		if (group) group.push(check);
		else groups.push([check]);
	}
	const states = groups.map((g) => stateOf(bare, items, g));
	return { bench: bare, contacts, states, overlaid: overlay(states, items.length) };
}

export const allChecks = ({ require }: Task): Check[] => require.flatMap(checksOf);

/** How the nodes stand with wires that make these blocks. */
export interface Standing {
	/** Some pair is joined, or will have to be, that must be apart: no wire more can mend that. */
	readonly dead: boolean;
	/** Wires that are missing at least. */
	readonly missing: number;
	/** The cut that the fewest wires could cross, blocks on either side; null if every pair is joined. */
	readonly cut: Cut | null;
}
export interface Cut {
	readonly inside: readonly number[];
	/** Those first that hold a node which must be joined to the inside. */
	readonly outside: readonly number[];
}
const DEAD: Standing = { dead: true, missing: 0, cut: null };

/** Nets of the items in a state, given the blocks of the contacts. */
export function netsIn({ fixed }: State, p: Partition): Joiner {
	const nets = new Joiner(fixed.length);
	nets.joinLabels(fixed);
	nets.joinLabels(p);
	return nets;
}

/** Joins every pair; the number of pairs that were apart. */
const linked = (nets: Joiner, pairs: readonly ItemPair[]): number =>
	pairs.reduce((links, [a, b]) => links + (nets.join(a, b) ? 1 : 0), 0);

const isBetween = ([a, b]: ItemPair, [x, y]: ItemPair): boolean =>
	(a === x && b === y) || (a === y && b === x);

/** Cuts round the nets of a pair that must be joined and is not; null if one can never be crossed. */
function cutsOf(state: State, p: Partition, nets: readonly number[]): Cut[] | null {
	const open = state.joined.filter(([a, b]) => nets[a] !== nets[b]);
	if (open.length === 0) return [];
	const blocks = [...new Set(p)];
	const cuts: Cut[] = [];
	for (const net of new Set(open.flatMap(([a, b]) => [nets[a]!, nets[b]!]))) {
		const on = (nodes: (n: number) => boolean) =>
			new Set(p.filter((_, contact) => nodes(nets[contact]!)));
		const inside = on((n) => n === net);
		if (inside.size === 0) return null;
		const partners = on((n) => open.some(([a, b]) => isBetween([nets[a]!, nets[b]!], [n, net])));
		const others = blocks.filter((b) => !inside.has(b) && !partners.has(b));
		cuts.push({ inside: [...inside], outside: [...partners, ...others] });
	}
	return cuts;
}

const sizeOf = ({ inside, outside }: Cut): number => inside.length * outside.length;

/** Judges blocks against every pair that must be joined or apart, in plain union-find: the oracle of `standing.ts`. */
export function plainStanding({ states, overlaid }: Ready, p: Partition): Standing {
	let missing = linked(netsIn(overlaid, p), overlaid.joined);
	let best: Cut | null = null;
	for (const state of states) {
		const nets = netsIn(state, p);
		const now = nets.labels();
		missing = Math.max(missing, linked(nets, state.joined));
		if (state.apart.some(([a, b]) => nets.isJoined(a, b))) return DEAD;
		const cuts = cutsOf(state, p, now);
		if (!cuts) return DEAD;
		for (const cut of cuts) if (!best || sizeOf(cut) < sizeOf(best)) best = cut;
	}
	return { dead: false, missing, cut: best };
}
