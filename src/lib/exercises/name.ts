/**
 * Judging names for unmarked lugs. A naming is right when no probe can tell it from the true one:
 * for every plug state the same lugs sound together. So lugs that nothing tells apart may be named
 * either way round, and nothing about which they are is written down anywhere.
 */
import type { Probe } from '../diagnosis/probes';
import {
	SEATED,
	SOCKETS,
	contactsOf,
	conductorsOf,
	fits,
	inState,
	netsOf,
	nodesOf,
	DEVICES,
	PANEL,
	type Bench,
	type NodeName,
	type SocketKind,
	type When
} from '../engine';
import type { NameExercise } from './exercise';
import type { Item, Naming } from './judged';
import { refuse, type Result } from './result';
import { probesTaken, samePair, sameWhen } from './same';

/** The true node of a lug, by its letter. */
export const nodeOfLug = (exercise: NameExercise, lug: string): NodeName =>
	`${exercise.socket}.${exercise.lugs[lug]!}`;

/** The letter of a node; null where it is no unmarked lug. */
export const lugOfNode = (exercise: NameExercise, node: NodeName): string | null =>
	lettersOf(exercise).find((lug) => nodeOfLug(exercise, lug) === node) ?? null;

/** Letters of the unmarked lugs, in order. */
export const lettersOf = (exercise: NameExercise): string[] => Object.keys(exercise.lugs).sort();

/** Contacts of that kind which the marks leave over: what a lug can be. */
export function contactsToName(exercise: NameExercise, kind: SocketKind): string[] {
	const own = exercise.bench.sockets.find((s) => s.id === exercise.socket)!;
	const unmarked = Object.values(exercise.lugs);
	const marked = SOCKETS[own.kind].contacts.filter((c) => !unmarked.includes(c));
	return SOCKETS[kind].contacts.filter((c) => !marked.includes(c));
}

/**
 * Plug states in which the lugs may be probed: empty, with each plug that there is, and as it stands
 * where a plug stands in it that is not home. No state is there twice.
 */
export function statesToName({ bench, socket, plugs }: NameExercise): When[] {
	const { kind } = bench.sockets.find((s) => s.id === socket)!;
	const own = bench.plugs.filter((p) => fits(p.kind, kind)).map((p) => p.id);
	const half = bench.plugs.some((p) => p.socket === socket && p.travel !== SEATED);
	const states = ['none', ...own, ...plugs].map((state): When => ({ [socket]: state }));
	return half ? [{}, ...states] : states;
}

/** Nodes that bear their names: marked contacts, other sockets, plugs, devices, the panel. */
function knownNodes(exercise: NameExercise): NodeName[] {
	const { bench, lugs } = exercise;
	const hidden = new Set(Object.keys(lugs).map((lug) => nodeOfLug(exercise, lug)));
	return [
		...bench.sockets.flatMap((s) => contactsOf(bench, s.id)),
		...bench.plugs.flatMap(conductorsOf),
		...bench.devices.flatMap((d) => nodesOf(d.id, DEVICES[d.kind].terminals)),
		...(bench.panel.metal ? [PANEL] : [])
	].filter((node) => !hidden.has(node));
}

/** Nodes that may be probed, lugs first. */
export const nodesToProbe = (exercise: NameExercise): NodeName[] => [
	...lettersOf(exercise).map((lug) => nodeOfLug(exercise, lug)),
	...knownNodes(exercise)
];

/** What sounds with what, per state: a net's number for each contact to be named and each known node. */
interface View {
	readonly contacts: readonly string[];
	readonly states: readonly {
		readonly lug: readonly number[];
		readonly known: readonly number[];
	}[];
}

const ofKind = ({ bench, socket }: NameExercise, kind: SocketKind): Bench => ({
	...bench,
	sockets: bench.sockets.map((s) => (s.id === socket ? { ...s, kind } : s))
});

/** The view of the socket as if it were of that kind; null if a plug would not even go in. */
function viewOf(
	exercise: NameExercise,
	kind: SocketKind,
	contacts: readonly string[]
): View | null {
	const bench = ofKind(exercise, kind);
	const kinds = [...exercise.plugs, ...bench.plugs.map((p) => p.kind)];
	const own = exercise.bench.sockets.find((s) => s.id === exercise.socket)!.kind;
	if (kinds.some((k) => fits(k, kind) !== fits(k, own))) return null;
	const known = knownNodes(exercise);
	const states = statesToName(exercise).map((when) => {
		const { indexOf } = netsOf(inState(bench, when));
		const net = (node: NodeName): number => indexOf.get(node) ?? -1;
		return {
			lug: contacts.map((c) => net(`${exercise.socket}.${c}`)),
			known: known.map(net)
		};
	});
	return { contacts, states };
}

/** Whether lugs i and j of one view sound as contacts x and y of the other do, and with all known nodes. */
function agree(a: View, i: number, j: number, b: View, x: number, y: number): boolean {
	return a.states.every((s, k) => {
		const t = b.states[k]!;
		return (s.lug[i] === s.lug[j]) === (t.lug[x] === t.lug[y]);
	});
}
const agreeKnown = (a: View, i: number, b: View, x: number): boolean =>
	a.states.every((s, k) => {
		const t = b.states[k]!;
		return s.known.every((net, n) => (net === s.lug[i]) === (t.known[n] === t.lug[x]));
	});

/** Every way to lay the lugs of `a` on the contacts of `b` that no probe contradicts. */
function* layings(a: View, b: View, laid: number[] = []): Generator<readonly number[]> {
	const i = laid.length;
	if (i === a.contacts.length) {
		yield laid;
		return;
	}
	for (let x = 0; x < b.contacts.length; x++) {
		if (laid.includes(x) || !agreeKnown(a, i, b, x)) continue;
		if (laid.every((y, j) => agree(a, i, j, b, x, y))) yield* layings(a, b, [...laid, x]);
	}
}

interface Known {
	/** Contacts in the order of the letters. */
	readonly truth: readonly string[];
	readonly view: View;
	/** Names that no probe can tell from the true ones, in the order of the letters. */
	readonly same: readonly (readonly string[])[];
	readonly par: number;
}
const remembered = new WeakMap<NameExercise, Known>();

export const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));

/** Namings that a probe could tell apart, over all kinds in question. */
function namingsOf(exercise: NameExercise, own: SocketKind, same: number): number {
	const n = lettersOf(exercise).length;
	return exercise.candidates.reduce((sum, kind) => {
		const contacts = contactsToName(exercise, kind);
		if (contacts.length !== n) return sum;
		if (kind === own) return sum + factorial(n) / same;
		const view = viewOf(exercise, kind, contacts);
		return view ? sum + factorial(n) / [...layings(view, view)].length : sum;
	}, 0);
}

function knownOf(exercise: NameExercise): Known {
	const before = remembered.get(exercise);
	if (before) return before;
	const own = exercise.bench.sockets.find((s) => s.id === exercise.socket)!.kind;
	const truth = lettersOf(exercise).map((lug) => exercise.lugs[lug]!);
	const view = viewOf(exercise, own, truth)!;
	const same = [...layings(view, view)].map((laid) => laid.map((x) => truth[x]!));
	const par = Math.ceil(Math.log2(namingsOf(exercise, own, same.length)));
	const made = { truth, view, same, par };
	remembered.set(exercise, made);
	return made;
}

/** How many namings are as right as the true one, itself included. */
export const sameNamings = (exercise: NameExercise): number => knownOf(exercise).same.length;

/** Sets of letters that no probe can tell apart. */
function alikeLugs({ truth, same }: Known, letters: readonly string[]): string[][] {
	const sets = truth.map((contact) =>
		letters.filter((_, i) => same.some((names) => names[i] === contact))
	);
	const keys = sets.map((set) => set.join());
	return sets.filter((set, i) => set.length > 1 && keys.indexOf(keys[i]!) === i);
}

/** A reading that speaks against a lug's name, as an item; null if none does. */
function itemFor(
	exercise: NameExercise,
	{ view }: Known,
	claim: View | null,
	called: readonly (string | undefined)[],
	i: number
): Item | null {
	if (!claim) return null;
	const letters = lettersOf(exercise);
	const known = knownNodes(exercise);
	const at = (lug: number) => claim.contacts.indexOf(called[lug] ?? '');
	if (at(i) < 0) return null;
	const item = (k: number, other: NodeName, sounds: boolean): Item => ({
		right: false,
		when: statesToName(exercise)[k]!,
		pair: [nodeOfLug(exercise, letters[i]!), other],
		wanted: sounds ? 'sounds' : 'silent',
		found: sounds ? 'silent' : 'sounds',
		hazard: false,
		why: ''
	});
	for (const [k, s] of view.states.entries()) {
		const t = claim.states[k]!;
		for (const j of letters.keys()) {
			if (j === i || at(j) < 0) continue;
			const sounds = s.lug[i] === s.lug[j];
			if (sounds !== (t.lug[at(i)] === t.lug[at(j)]))
				return item(k, nodeOfLug(exercise, letters[j]!), sounds);
		}
		for (const [n, net] of s.known.entries()) {
			const sounds = net === s.lug[i];
			if (sounds !== (t.known[n] === t.lug[at(i)])) return item(k, known[n]!, sounds);
		}
	}
	return null;
}

const isSameReading = (x: Item, y: Item): boolean =>
	samePair(x.pair, y.pair) && sameWhen(x.when, y.when);

/** The naming among the equally right ones that the answer comes nearest to. */
function nearest({ same }: Known, called: readonly (string | undefined)[]): readonly string[] {
	const hits = (names: readonly string[]) => names.filter((c, i) => c === called[i]).length;
	return same.reduce((best, names) => (hits(names) > hits(best) ? names : best));
}

function strangeName(
	exercise: NameExercise,
	names: Readonly<Record<string, string>>,
	kind: SocketKind
): string | null {
	if (!exercise.candidates.includes(kind)) return `a ${kind} is not among the kinds in question`;
	const offered = contactsToName(exercise, kind);
	for (const [lug, contact] of Object.entries(names)) {
		if (!(lug in exercise.lugs)) return `there is no unmarked lug "${lug}"`;
		if (!offered.includes(contact)) return `"${contact}" is no name for an unmarked lug here`;
	}
	return null;
}

export function judgeNames(
	exercise: NameExercise,
	names: Readonly<Record<string, string>>,
	claimed: SocketKind | undefined,
	probes: readonly Probe[]
): Result {
	const own = exercise.bench.sockets.find((s) => s.id === exercise.socket)!.kind;
	const kind = claimed ?? (exercise.candidates.length === 1 ? own : undefined);
	if (kind !== undefined) {
		const strange = strangeName(exercise, names, kind);
		if (strange) return refuse(strange);
	}
	const known = knownOf(exercise);
	const letters = lettersOf(exercise);
	const called = letters.map((lug) => names[lug]);
	const claim = kind ? viewOf(exercise, kind, contactsToName(exercise, kind)) : null;
	const likeIt = claim !== null && (kind === own || !layings(known.view, claim).next().done);
	const best = nearest(known, called);
	const whole = kind !== own && likeIt && isLaying(known.view, claim, called);
	const lugs = letters.map((lug, i) => ({
		lug,
		contact: known.truth[i]!,
		called: called[i] ?? null,
		right: whole || called[i] === best[i]
	}));
	const used = probesTaken(probes).length;
	const { most } = exercise;
	const naming: Naming = {
		used,
		most,
		par: known.par,
		lugs,
		kindCalled: kind ?? null,
		kindRight: likeIt,
		alike: alikeLugs(known, letters)
	};
	const items = lugs
		.flatMap((l, i) => (l.right ? [] : (itemFor(exercise, known, claim, called, i) ?? [])))
		.filter((item, i, all) => all.findIndex((x) => isSameReading(x, item)) === i);
	const parts = [...lugs.map((l) => l.right), ...(exercise.candidates.length > 1 ? [likeIt] : [])];
	const right = parts.filter((p) => p).length;
	const inTime = most === null || used <= most;
	const all = right === parts.length;
	const score = all ? (inTime ? 1 : 0.5) : right / parts.length;
	return { score, passed: all && inTime, items, name: naming };
}

/** Whether these names, for a socket of another kind, are contradicted by no probe. */
function isLaying(
	view: View,
	claim: View | null,
	called: readonly (string | undefined)[]
): boolean {
	if (!claim) return false;
	const at = called.map((c) => claim.contacts.indexOf(c ?? ''));
	if (at.includes(-1) || new Set(at).size < at.length) return false;
	return at.every(
		(x, i) => agreeKnown(view, i, claim, x) && at.every((y, j) => agree(view, i, j, claim, x, y))
	);
}
