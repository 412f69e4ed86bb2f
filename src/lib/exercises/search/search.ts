/**
 * The fewest changes from a wiring to any that meets a requirement in every plug state, hazards
 * included. A change puts one conductor in or takes one out. First which wires go, in order of their
 * number; then which blocks of contacts are made one, depth first with a growing limit.
 *
 * Why this is exact. Whether pairs are joined depends on the blocks alone (`task.ts`). More wires never
 * part anything, so a pair that is joined and must not be ends a branch. A pair that must be joined
 * and is not stands on two nets; every wiring that joins it has a wire that leaves the one net, so it
 * is enough to try the wires across one such cut, and the cut with the fewest is taken. From the kept
 * wires' blocks to others takes as many wires as blocks disappear. What an input hears also depends on
 * ohms: it is asked of one wiring for each set of blocks, and the wiring that is handed out is scored
 * again; other wirings of the same blocks differ by milliohms.
 */
import {
	DEFAULTS,
	freeId,
	scoreOf,
	splitNode,
	type Bench,
	type Check,
	type NodeName,
	type Wire
} from '../../engine';
import { blocksOf, discrete, joinedBy, keyOf, merged, type Partition } from './partition';
import {
	allChecks,
	earsHold,
	readyFor,
	standingOf,
	type Ready,
	type Standing,
	type Task
} from './task';

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
	/** No wiring whatever meets the requirement; these checks cannot hold together, though all but one could. */
	| { readonly kind: 'impossible'; readonly conflict: readonly Check[]; readonly nodes: number }
	/** It was not found within the limits; fewer changes than this are proven not to do. */
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

class OutOfNodes extends Error {}

/** What was found below a partition: nothing, some goal, or a goal after which the caller had enough. */
type Below = 'none' | 'some' | 'stopped';

/** Looks at each partition once and counts. */
class Walk {
	readonly #seen = new Map<string, Standing>();
	readonly #ears = new Map<string, boolean>();
	/** Wires that were tried from these blocks in vain. */
	readonly #vain = new Map<string, number>();
	nodes = 0;

	constructor(
		readonly ready: Ready,
		readonly most: number
	) {}

	standing(p: Partition, key: string): Standing {
		const known = this.#seen.get(key);
		if (known) return known;
		if (this.nodes >= this.most) throw new OutOfNodes();
		this.nodes += 1;
		const made = standingOf(this.ready, p);
		this.#seen.set(key, made);
		return made;
	}
	#heard(p: Partition, key: string): boolean {
		const known = this.#ears.get(key);
		if (known !== undefined) return known;
		const made = earsHold(this.ready, p);
		this.#ears.set(key, made);
		return made;
	}

	/** Hands every right partition that at most `wires` more wires make of `p` to `take`, until it says stop. */
	goals(p: Partition, wires: number, take: (goal: Partition) => boolean): Below {
		return this.#descend(p, wires, take, new Map());
	}
	#descend(
		p: Partition,
		wires: number,
		take: (goal: Partition) => boolean,
		passed: Map<string, Below>
	): Below {
		const key = keyOf(p);
		const before = passed.get(key);
		if (before) return before;
		if ((this.#vain.get(key) ?? -1) >= wires) return 'none';
		const below = this.#look(p, key, wires, take, passed);
		passed.set(key, below);
		if (below === 'none') this.#vain.set(key, wires);
		return below;
	}
	#look(
		p: Partition,
		key: string,
		wires: number,
		take: (goal: Partition) => boolean,
		passed: Map<string, Below>
	): Below {
		const { dead, missing, cut } = this.standing(p, key);
		if (dead || missing > wires) return 'none';
		if (!cut && this.#heard(p, key)) return take(p) ? 'stopped' : 'some';
		if (wires === 0) return 'none';
		let found: Below = 'none';
		for (const [x, y] of cut ? across(cut) : allPairs(p)) {
			const below = this.#descend(merged(p, x, y), wires - 1, take, passed);
			if (below === 'stopped') return 'stopped';
			if (below === 'some') found = 'some';
		}
		return found;
	}
}

const across = ({ inside, outside }: NonNullable<Standing['cut']>): (readonly [number, number])[] =>
	inside.flatMap((x) => outside.map((y) => [x, y] as const));

function allPairs(p: Partition): (readonly [number, number])[] {
	const blocks = blocksOf(p);
	return Array.from({ length: blocks }, (_, x) =>
		Array.from({ length: blocks - x - 1 }, (_, k) => [x, x + k + 1] as const)
	).flat();
}

/** Wires between the same two contacts: taking one of them out alone changes no net. */
interface Bundle {
	readonly ends: readonly [number, number];
	readonly wires: readonly Wire[];
}
function bundlesOf(contacts: readonly NodeName[], wires: readonly Wire[]): Bundle[] {
	const bundles = new Map<string, { ends: readonly [number, number]; wires: Wire[] }>();
	for (const wire of wires) {
		const [a, b] = [contacts.indexOf(wire.from), contacts.indexOf(wire.to)];
		const ends = a < b ? ([a, b] as const) : ([b, a] as const);
		const key = ends.join(' ');
		const bundle = bundles.get(key);
		if (bundle) bundle.wires.push(wire);
		else bundles.set(key, { ends, wires: [wire] });
	}
	return [...bundles.values()];
}

/** Every choice of bundles that hold `wires` wires in all, as the rest that is kept. */
function* choices(bundles: readonly Bundle[], wires: number, from = 0): Generator<Set<Bundle>> {
	if (wires === 0) yield new Set();
	if (wires <= 0) return;
	for (let i = from; i < bundles.length; i++) {
		const bundle = bundles[i]!;
		for (const rest of choices(bundles, wires - bundle.wires.length, i + 1)) yield rest.add(bundle);
	}
}

/** How readily one would lay a wire between two contacts: pairs that the requirement names come first. */
function pricesOf(task: Task, contacts: readonly NodeName[]): (x: number, y: number) => number {
	const asked = new Set(
		allChecks(task)
			.filter((c) => c.wanted === 'joined')
			.map((c) => [...c.pair].sort().join(' '))
	);
	return (x, y) => (asked.has([contacts[x]!, contacts[y]!].sort().join(' ')) ? 0 : 1);
}

/** Wires that make the goal's blocks of the kept ones, the readiest first. */
function laidFor(
	kept: Partition,
	goal: Partition,
	price: (x: number, y: number) => number
): [number, number][] {
	const pairs = goal.flatMap((block, x) =>
		goal.flatMap((other, y) => (y > x && other === block ? [[x, y] as [number, number]] : []))
	);
	pairs.sort(([a, b], [c, d]) => price(a, b) - price(c, d));
	let p = kept;
	return pairs.filter(([x, y]) => {
		if (p[x] === p[y]) return false;
		p = merged(p, p[x]!, p[y]!);
		return true;
	});
}

interface Start {
	readonly task: Task;
	readonly walk: Walk;
	readonly bundles: readonly Bundle[];
	readonly price: (x: number, y: number) => number;
}

/** The wires with a choice of bundles taken out and the goal's joints put in; null if that scores less than 1. */
function changeSet(
	{ task, walk, price }: Start,
	gone: ReadonlySet<Bundle>,
	kept: Partition,
	goal: Partition
): ChangeSet | null {
	const { contacts } = walk.ready;
	const out = [...gone].flatMap((b) => b.wires);
	const put = laidFor(kept, goal, price).map(([x, y]) => [contacts[x]!, contacts[y]!] as const);
	const stay = task.bench.wires.filter((w) => !out.includes(w));
	const wires = [...stay, ...put.map((ends, i) => wireBetween(task.bench, ends, i))];
	const { failed } = scoreOf({ ...task.bench, wires }, task.require);
	return failed.length === 0 ? { out, in: put, wires } : null;
}

/** A new wire with an id that nothing on the bench has. */
function wireBetween(bench: Bench, [from, to]: readonly [NodeName, NodeName], i: number): Wire {
	return {
		id: freeId(bench, 'new', i * 100 + 1),
		from,
		to,
		awg: DEFAULTS.wireAwg,
		mm: DEFAULTS.mm
	};
}

/** Ways that need just so many changes, up to the limit. */
function setsOf(start: Start, changes: number, most: number): ChangeSet[] {
	const { walk, bundles } = start;
	const { contacts } = walk.ready;
	const sets: ChangeSet[] = [];
	for (let out = 0; out <= changes; out++)
		for (const gone of choices(bundles, out)) {
			const kept = joinedBy(
				contacts.length,
				bundles.filter((b) => !gone.has(b)).map((b) => b.ends)
			);
			walk.goals(kept, changes - out, (goal) => {
				const set = changeSet(start, gone, kept, goal);
				if (set) sets.push(set);
				return sets.length >= most;
			});
			if (sets.length >= most) return sets;
		}
	return sets;
}

/** Whether any wiring at all meets these checks. Throws when the nodes run out. */
function isPossible(task: Task, checks: readonly Check[], most: number): boolean {
	const ready = readyFor(task, checks);
	const walk = new Walk(ready, most);
	const n = ready.contacts.length;
	return walk.goals(discrete(n), n, () => true) === 'stopped';
}

/** Checks that cannot hold together, none of which could be left out. */
function conflictIn(task: Task, most: number): Check[] {
	let checks = allChecks(task);
	for (const check of [...checks]) {
		const rest = checks.filter((c) => c !== check);
		try {
			if (!isPossible(task, rest, most)) checks = rest;
		} catch (error) {
			if (!(error instanceof OutOfNodes)) throw error;
		}
	}
	return checks;
}

/** Most changes that any wiring could need: all wires out, and one wire less than contacts in. */
const mostChanges = ({ bench }: Task, contacts: number): number =>
	bench.wires.length + contacts - 1;

/**
 * The fewest changes from the bench's wires to a wiring that meets the requirement. Wires may only
 * be those between contacts of `mayWire`.
 */
export function fewestChanges(task: Task, limits: Partial<Limits> = {}): Search {
	const { nodes, changes: most, sets: mostSets } = { ...LIMITS, ...limits };
	const ready = readyFor(task, allChecks(task));
	const { contacts } = ready;
	const strange = task.bench.wires.find((w) =>
		[w.from, w.to].some((end) => !task.mayWire.includes(splitNode(end)[0]))
	);
	if (strange) throw new Error(`wire ${strange.id} leaves the sockets that may be wired`);
	const walk = new Walk(ready, nodes);
	const bundles = bundlesOf(contacts, task.bench.wires);
	const start = { task, walk, bundles, price: pricesOf(task, contacts) };
	let changes = 0;
	try {
		if (walk.goals(discrete(contacts.length), contacts.length, () => true) !== 'stopped')
			return { kind: 'impossible', conflict: conflictIn(task, nodes), nodes: walk.nodes };
		for (; changes <= Math.min(most, mostChanges(task, contacts.length)); changes++) {
			const sets = setsOf(start, changes, mostSets);
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
