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
	holds,
	inState,
	netsOf,
	type Bench,
	type Check,
	type NodeName,
	type Requirement,
	type When
} from '../../engine';
import { sameWhen } from '../same';
import { blocksOf, type Partition } from './partition';

/** A bench whose wires may be changed between contacts of these sockets, to meet a requirement. */
export interface Task {
	readonly bench: Bench;
	readonly mayWire: readonly string[];
	readonly require: readonly Requirement[];
}
interface PairCheck {
	/** Class of each node of the pair, or the contact's own where it has one. */
	readonly a: number;
	readonly b: number;
	readonly check: Check;
}
/** One plug state. Items are the contacts, then other nodes that a check names. */
interface State {
	readonly when: When;
	/** Fixed class of every item. */
	readonly fixed: readonly number[];
	readonly classes: number;
	readonly joined: readonly PairCheck[];
	readonly apart: readonly PairCheck[];
	/** Checks on what is heard, which need the whole circuit. */
	readonly ears: readonly Check[];
}
export interface Ready {
	readonly bench: Bench;
	readonly contacts: readonly NodeName[];
	readonly states: readonly State[];
}

const isEar = ({ wanted }: Check): boolean => wanted !== 'joined' && wanted !== 'apart';

function stateOf(bare: Bench, contacts: readonly NodeName[], checks: readonly Check[]): State {
	const { when } = checks[0]!;
	const { indexOf } = netsOf(inState(bare, when));
	const pairs = checks.filter((c) => !isEar(c));
	const items = [...new Set([...contacts, ...pairs.flatMap((c) => c.pair)])];
	const numbers = new Map<number, number>();
	const fixed = items.map((node) => {
		const net = indexOf.get(node)!;
		if (!numbers.has(net)) numbers.set(net, numbers.size);
		return numbers.get(net)!;
	});
	const of = (wanted: Check['wanted']) =>
		pairs
			.filter((c) => c.wanted === wanted)
			.map((check): PairCheck => {
				const [a, b] = check.pair.map((node) => items.indexOf(node));
				return { a: a!, b: b!, check };
			});
	const ears = checks.filter(isEar);
	return { when, fixed, classes: numbers.size, joined: of('joined'), apart: of('apart'), ears };
}

/** The task with these checks only. */
export function readyFor({ bench, mayWire }: Task, checks: readonly Check[]): Ready {
	const bare = { ...bench, wires: [] };
	const contacts = mayWire.flatMap((id) => contactsOf(bench, id));
	const groups: Check[][] = [];
	for (const check of checks) {
		const group = groups.find((g) => sameWhen(g[0]!.when, check.when));
		if (group) group.push(check);
		else groups.push([check]);
	}
	return { bench: bare, contacts, states: groups.map((g) => stateOf(bare, contacts, g)) };
}

export const allChecks = ({ require }: Task): Check[] => require.flatMap(checksOf);

/** How the nodes stand with wires that make these blocks. */
export interface Standing {
	/** Pairs that are joined and must not be: no wire more can mend that. */
	readonly dead: boolean;
	/** Wires that are missing at least. */
	readonly missing: number;
	/** The cut that the fewest wires could cross: blocks on one side, blocks on the other. */
	readonly cut: { readonly inside: readonly number[]; readonly outside: readonly number[] } | null;
}
const DEAD: Standing = { dead: true, missing: 0, cut: null };

/** Net of every item in a state, given the blocks of the contacts. */
function netsIn({ fixed, classes }: State, p: Partition): number[] {
	const root = Array.from({ length: classes }, (_, i) => i);
	const find = (i: number): number => (root[i] === i ? i : (root[i] = find(root[i]!)));
	const first: number[] = [];
	for (const [contact, block] of p.entries()) {
		const other = first[block];
		if (other === undefined) first[block] = fixed[contact]!;
		else root[find(fixed[contact]!)] = find(other);
	}
	return fixed.map((c) => find(c));
}

/** Links that nets would need so that every pair asked for is joined: nodes less components of their graph. */
function linksFor(pairs: readonly (readonly [number, number])[]): number {
	const root = new Map<number, number>();
	const find = (i: number): number => {
		const up = root.get(i) ?? i;
		if (up === i) return i;
		const top = find(up);
		root.set(i, top);
		return top;
	};
	let links = 0;
	for (const [x, y] of pairs) {
		const [a, b] = [find(x), find(y)];
		if (a === b) continue;
		root.set(a, b);
		links += 1;
	}
	return links;
}

/** Judges blocks against every pair that must be joined or apart. */
export function standingOf({ states }: Ready, p: Partition): Standing {
	let missing = 0;
	let cut: Standing['cut'] = null;
	let fewest = Infinity;
	const blocks = blocksOf(p);
	for (const state of states) {
		const nets = netsIn(state, p);
		if (state.apart.some(({ a, b }) => nets[a] === nets[b])) return DEAD;
		const open = state.joined.filter(({ a, b }) => nets[a] !== nets[b]);
		if (open.length === 0) continue;
		missing = Math.max(missing, linksFor(open.map(({ a, b }) => [nets[a]!, nets[b]!] as const)));
		for (const net of new Set(open.flatMap(({ a, b }) => [nets[a]!, nets[b]!]))) {
			const inside = new Set(p.filter((_, contact) => nets[contact] === net));
			// A net that holds no contact of the learner's can never be reached.
			if (inside.size === 0) return DEAD;
			const options = inside.size * (blocks - inside.size);
			if (options >= fewest) continue;
			fewest = options;
			const outside = Array.from({ length: blocks }, (_, b) => b).filter((b) => !inside.has(b));
			cut = { inside: [...inside], outside };
		}
	}
	return { dead: false, missing, cut };
}

/** A wiring that makes these blocks: each a chain, as the search's stand-in for all that make them. */
export function chainedBench({ bench, contacts }: Ready, p: Partition): Bench {
	const last: number[] = [];
	const wires: Bench['wires'][number][] = [];
	for (const [i, block] of p.entries()) {
		const before = last[block];
		last[block] = i;
		if (before === undefined) continue;
		const [from, to] = [contacts[before]!, contacts[i]!];
		wires.push({ id: `chain${wires.length}`, from, to, awg: 26, mm: 40 });
	}
	return { ...bench, wires };
}

/** Whether every check on what is heard holds of such a wiring. */
export function earsHold(ready: Ready, p: Partition): boolean {
	if (ready.states.every((s) => s.ears.length === 0)) return true;
	const bench = chainedBench(ready, p);
	return ready.states.every((s) => {
		if (s.ears.length === 0) return true;
		const there = inState(bench, s.when);
		return s.ears.every((check) => holds(there, check));
	});
}
