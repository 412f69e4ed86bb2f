/**
 * How the nodes stand with wires that make some blocks, for the walk, which asks it of every set of
 * blocks. What is fixed in a plug state makes few classes, so a net is a word of bits, one for each
 * class; a whole continuity table asks few pairs of classes. `task.ts` answers the same in plain
 * union-find: it is the oracle, and the way for more classes than a word has bits.
 */
import type { Partition } from './partition';
import { plainStanding, type Cut, type Ready, type Standing, type State } from './task';

/** Classes that one word can hold. */
const BITS = 31;

/** A plug state with its nodes counted in classes. */
interface Packed {
	readonly classes: number;
	/** The class of every contact. */
	readonly of: readonly number[];
	/** Pairs of classes that must be joined, each once, in the order in which they were asked. */
	readonly joined: readonly (readonly [number, number])[];
	/** For every class, those that must be apart from it. */
	readonly apart: readonly number[];
}
interface PackedTask {
	readonly states: readonly Packed[];
	readonly overlaid: Packed;
}

function packed({ fixed, joined, apart }: State, contacts: number): Packed {
	const known = [...new Set(fixed)];
	const of = fixed.map((label) => known.indexOf(label));
	const seen = new Set<string>();
	const links = joined
		.map(([a, b]) => [of[a]!, of[b]!] as const)
		.filter(([a, b]) => {
			const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
			return a !== b && !seen.has(key) && seen.add(key);
		});
	const parted = known.map(() => 0);
	for (const [a, b] of apart) {
		parted[of[a]!]! |= 1 << of[b]!;
		parted[of[b]!]! |= 1 << of[a]!;
	}
	return { classes: known.length, of: of.slice(0, contacts), joined: links, apart: parted };
}

/** The task in words of bits; null if some state has too many classes. */
function packOf(ready: Ready): PackedTask | null {
	const contacts = ready.contacts.length;
	const states = ready.states.map((state) => packed(state, contacts));
	const overlaid = packed(ready.overlaid, contacts);
	const fits = [...states, overlaid].every(({ classes }) => classes <= BITS);
	return fits ? { states, overlaid } : null;
}

/** The classes on every block. */
function classesOn({ of }: Packed, p: Partition): number[] {
	const on: number[] = [];
	for (let i = 0; i < of.length; i++) on[p[i]!] = (on[p[i]!] ?? 0) | (1 << of[i]!);
	return on;
}

/** Makes one net of all classes of the word; nets that it touches come along. */
function unite(net: number[], word: number): void {
	let all = word;
	for (let rest = word; rest !== 0; rest &= rest - 1) all |= net[31 - Math.clz32(rest & -rest)]!;
	for (let rest = all; rest !== 0; rest &= rest - 1) net[31 - Math.clz32(rest & -rest)] = all;
}

/** For every class the word of its net, with wires that make these blocks. */
function netsWith({ classes }: Packed, on: readonly number[]): number[] {
	const net = Array.from({ length: classes }, (_, c) => 1 << c);
	for (const word of on) if ((word & (word - 1)) !== 0) unite(net, word);
	return net;
}

/** Joins every pair that must be; the number of pairs that were apart. */
function linked(net: number[], { joined }: Packed): number {
	let links = 0;
	for (const [a, b] of joined) {
		if ((net[a]! & (1 << b)) !== 0) continue;
		links += 1;
		unite(net, (1 << a) | (1 << b));
	}
	return links;
}

const isDead = (net: readonly number[], { apart }: Packed): boolean =>
	apart.some((word, c) => (word & net[c]!) !== 0);

const blocksWith = (on: readonly number[], word: number): number[] => {
	const blocks: number[] = [];
	for (let b = 0; b < on.length; b++) if ((on[b]! & word) !== 0) blocks.push(b);
	return blocks;
};

/** The smallest cut round a net of a pair that is not joined yet, if it is smaller than `best`; null if one can never be crossed. */
function smallerCut(
	net: readonly number[],
	on: readonly number[],
	{ joined }: Packed,
	best: Cut | null
): { readonly cut: Cut | null } | null {
	const partners = new Map<number, number>();
	for (const [a, b] of joined) {
		const [x, y] = [net[a]!, net[b]!];
		if (x === y) continue;
		partners.set(x, (partners.get(x) ?? 0) | y);
		partners.set(y, (partners.get(y) ?? 0) | x);
	}
	let cut = best;
	for (const [word, others] of partners) {
		const inside = blocksWith(on, word);
		if (inside.length === 0) return null;
		const size = inside.length * (on.length - inside.length);
		if (cut && size >= cut.inside.length * cut.outside.length) continue;
		const first = blocksWith(on, others & ~word).filter((b) => !inside.includes(b));
		const rest = blocksWith(on, ~0).filter((b) => !inside.includes(b) && !first.includes(b));
		cut = { inside, outside: [...first, ...rest] };
	}
	return { cut };
}

const DEAD: Standing = { dead: true, missing: 0, cut: null };

/** Judges blocks against every pair that must be joined or apart; the task is made ready for it once. */
export function judgeOf(ready: Ready): (p: Partition) => Standing {
	const task = packOf(ready);
	return task ? (p) => standingIn(task, p) : (p) => plainStanding(ready, p);
}

function standingIn(task: PackedTask, p: Partition): Standing {
	const { overlaid } = task;
	let missing = linked(netsWith(overlaid, classesOn(overlaid, p)), overlaid);
	let best: Cut | null = null;
	for (const state of task.states) {
		const on = classesOn(state, p);
		const net = netsWith(state, on);
		const all = net.slice();
		missing = Math.max(missing, linked(all, state));
		if (isDead(all, state)) return DEAD;
		const found = smallerCut(net, on, state, best);
		if (!found) return DEAD;
		best = found.cut;
	}
	return { dead: false, missing, cut: best };
}
