/**
 * The fewest changes from a wiring to any that meets a requirement in every plug state, hazards
 * included. A change puts one conductor in or takes one out. First which wires go, in order of their
 * number; then which blocks of contacts are made one, depth first with a growing limit (`walk.ts`).
 *
 * Why this is exact. Whether pairs are joined depends on the blocks alone (`task.ts`), and from the kept
 * wires' blocks to others it takes as many wires as blocks disappear. What an input hears also depends
 * on ohms (`ears.ts`): wirings that meet a requirement only by what leaks past a short are not looked
 * for. Every wiring that is handed out has been scored by the engine.
 */
import { scoreOf, splitNode, type Check, type NodeName, type Wire } from '../../engine';
import { bundlesOf, choices, layings, newWires, type Bundle } from './lay';
import { discrete, joinedBy, type Partition } from './partition';
import { allChecks, readyFor, type Task } from './task';
import { OutOfNodes, Walk } from './walk';

export interface ChangeSet {
	readonly out: readonly Wire[];
	readonly in: readonly (readonly [NodeName, NodeName])[];
	/** All wires when it is done. */
	readonly wires: readonly Wire[];
}
export type Search =
	| {
			readonly kind: 'found';
			readonly changes: number;
			/** The first few ways that need no more. */
			readonly sets: readonly ChangeSet[];
			readonly nodes: number;
	  }
	/** No wiring whatever meets the requirement; these checks cannot hold together, though all but any one could. */
	| { readonly kind: 'impossible'; readonly conflict: readonly Check[]; readonly nodes: number }
	/** Not found within the limits; fewer changes than this are proven not to do. */
	| { readonly kind: 'gave-up'; readonly atLeast: number; readonly nodes: number };

export interface Limits {
	/** Sets of blocks that may be looked at. */
	readonly nodes: number;
	/** Changes that are tried at most. */
	readonly changes: number;
	/** Ways that are handed out at most. */
	readonly sets: number;
}
export const LIMITS: Limits = { nodes: 200_000, changes: Infinity, sets: 5 };

/** Ways to lay the same blocks that are scored at most. */
const MOST_LAYINGS = 200;

interface Start {
	readonly task: Task;
	readonly walk: Walk;
	/** Wires that must go because they leave the sockets that may be wired. */
	readonly strays: readonly Wire[];
	readonly bundles: readonly Bundle[];
	readonly price: (x: number, y: number) => number;
}

/** How readily one would lay a wire between two contacts: pairs that the requirement names come first. */
function pricesOf(task: Task, contacts: readonly NodeName[]): Start['price'] {
	const key = (a: NodeName, b: NodeName) => [a, b].sort().join(' ');
	const joined = allChecks(task).filter((c) => c.wanted === 'joined');
	const asked = new Set(joined.map((c) => key(...c.pair)));
	return (x, y) => (asked.has(key(contacts[x]!, contacts[y]!)) ? 0 : 1);
}

function startOf(task: Task, nodes: number): Start {
	const walk = new Walk(readyFor(task, allChecks(task)), nodes);
	const { contacts } = walk.ready;
	const isFree = (end: NodeName) => task.mayWire.includes(splitNode(end)[0]);
	const own = task.bench.wires.filter((w) => isFree(w.from) && isFree(w.to));
	const strays = task.bench.wires.filter((w) => !own.includes(w));
	return {
		task,
		walk,
		strays,
		bundles: bundlesOf(contacts, own),
		price: pricesOf(task, contacts)
	};
}

/** The bundles out and the goal's joints in, laid so that all is met; null if no way of laying them does. */
function changeSet(
	{ task, walk, strays, price }: Start,
	gone: readonly Bundle[],
	kept: Partition,
	goal: Partition
): ChangeSet | null {
	const { contacts } = walk.ready;
	const out = [...strays, ...gone.flatMap((b) => b.wires)];
	const stay = task.bench.wires.filter((w) => !out.includes(w));
	let tried = 0;
	for (const links of layings(kept, goal, price)) {
		const put = links.map(([x, y]) => [contacts[x]!, contacts[y]!] as const);
		const wires = [...stay, ...newWires(task.bench, put)];
		const { failed } = scoreOf({ ...task.bench, wires }, task.require);
		if (failed.length === 0) return { out, in: put, wires };
		if (++tried >= MOST_LAYINGS) return null;
	}
	return null;
}

/** Ways that need just so many changes besides the strays, up to `most`. */
function setsOf(start: Start, changes: number, most: number): ChangeSet[] {
	const { walk, bundles } = start;
	const sets: ChangeSet[] = [];
	for (let out = 0; out <= changes; out++)
		for (const gone of choices(bundles, out)) {
			const ends = bundles.filter((b) => !gone.includes(b)).map((b) => b.ends);
			const kept = joinedBy(walk.ready.contacts.length, ends);
			walk.goals(kept, changes - out, (goal) => {
				const set = changeSet(start, gone, kept, goal);
				if (!set) return 'refused';
				sets.push(set);
				return sets.length >= most ? 'enough' : 'taken';
			});
			if (sets.length >= most) return sets;
		}
	return sets;
}

/** Whether any wiring at all may meet these checks, and what it took to know. Throws when the nodes run out. */
function isPossible(task: Task, checks: readonly Check[], most: number) {
	const ready = readyFor(task, checks);
	const walk = new Walk(ready, most);
	const n = ready.contacts.length;
	const possible = walk.goals(discrete(n), n, () => 'enough') === 'stopped';
	return { possible, nodes: walk.nodes };
}

/** Checks that cannot hold together, though all but any one could. One that could not be settled stays in. */
function conflictIn(task: Task, most: number): Check[] {
	let checks = allChecks(task);
	for (const check of [...checks]) {
		const rest = checks.filter((c) => c !== check);
		try {
			if (!isPossible(task, rest, most).possible) checks = rest;
		} catch (error) {
			if (!(error instanceof OutOfNodes)) throw error;
		}
	}
	return checks;
}

/**
 * The fewest changes from the bench's wires to a wiring that meets the requirement, wires between
 * contacts of `mayWire` alone. Other wires must go, and count. Never throws on a checked task.
 */
export function fewestChanges(task: Task, limits: Partial<Limits> = {}): Search {
	const { nodes: most, changes: mostChanges, sets: mostSets } = { ...LIMITS, ...limits };
	const start = startOf(task, most);
	const { walk, strays } = start;
	// All wires out, and one wire less than there are contacts in: more is never needed.
	const last = task.bench.wires.length + walk.ready.contacts.length - 1;
	let changes = strays.length;
	try {
		const { possible, nodes } = isPossible(task, allChecks(task), most);
		if (!possible) return { kind: 'impossible', conflict: conflictIn(task, most), nodes };
		for (; changes <= Math.min(mostChanges, last); changes++) {
			const sets = setsOf(start, changes - strays.length, mostSets);
			if (sets.length > 0) return { kind: 'found', changes, sets, nodes: walk.nodes };
		}
	} catch (error) {
		if (!(error instanceof OutOfNodes)) throw error;
	}
	return { kind: 'gave-up', atLeast: changes, nodes: walk.nodes };
}

/** The fewest wires with which the requirement can be met at all: as `fewestChanges` of a bare bench. */
export const fewestWires = (task: Task, limits: Partial<Limits> = {}): Search =>
	fewestChanges({ ...task, bench: { ...task.bench, wires: [] } }, limits);
