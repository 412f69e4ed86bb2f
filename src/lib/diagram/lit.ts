/** What the drawing lights: the path between the probes, a net that is pointed at, letters of nets. */
import {
	circuit,
	netsOf,
	type Bench,
	type Conductor,
	type Circuit,
	type Nets,
	type NodeName,
	type PathAnswer
} from '../engine';

export interface Lit {
	readonly nodes: ReadonlySet<NodeName>;
	/** Wire ids and `cable:core` names. */
	readonly wires: ReadonlySet<string>;
	/** `socket.contact` of every break contact the lit part runs through. */
	readonly breaks: ReadonlySet<string>;
}
export const NOTHING_LIT: Lit = { nodes: new Set(), wires: new Set(), breaks: new Set() };

/** Name of the wire a conductor is, or null. */
export function wireOf({ reason }: Conductor): string | null {
	if (reason.kind === 'wire') return reason.wire;
	return reason.kind === 'core' ? `${reason.cable}:${reason.core}` : null;
}

function litBy(conductors: readonly Conductor[], nodes: Iterable<NodeName>): Lit {
	const wires = conductors.map(wireOf).filter((w) => w !== null);
	const breaks = conductors.flatMap(({ reason: r }) =>
		r.kind === 'rest' || r.kind === 'changeover' ? [`${r.socket}.${r.contact}`] : []
	);
	return { nodes: new Set(nodes), wires: new Set(wires), breaks: new Set(breaks) };
}

/** The way the meter's current takes; nothing where the two are apart. */
export function litPath(path: PathAnswer | null): Lit {
	if (path?.kind !== 'joined') return NOTHING_LIT;
	return litBy(
		path.steps.map((s) => s.through),
		path.steps.flatMap((s) => [s.from, s.to])
	);
}

/** Everything on the node's net. */
export function litNet(bench: Bench, node: NodeName | null): Lit {
	const { list, indexOf } = netsOf(bench);
	const at = node === null ? undefined : indexOf.get(node);
	if (at === undefined) return NOTHING_LIT;
	const on = circuit(bench).conductors.filter((c) => c.joins && indexOf.get(c.a) === at);
	return litBy(on, list[at]!);
}

/** A letter for every net of two nodes or more, in the order of the nets: a, b … z, aa … */
export function netLetters(bench: Bench): ReadonlyMap<NodeName, string> {
	const nets = netsOf(bench);
	const known = lettered.get(nets) ?? lettersOf(nets);
	lettered.set(nets, known);
	return known;
}
const lettered = new WeakMap<Nets, ReadonlyMap<NodeName, string>>();

function lettersOf({ list }: Nets): ReadonlyMap<NodeName, string> {
	const letters = new Map<NodeName, string>();
	let count = 0;
	for (const net of list) {
		if (net.length < 2) continue;
		const letter = letterOf(count++);
		for (const node of net) letters.set(node, letter);
	}
	return letters;
}
const letterOf = (n: number): string =>
	n < 26 ? String.fromCharCode(97 + n) : letterOf(Math.floor(n / 26) - 1) + letterOf(n % 26);

/** Whether a break contact (or a side of the changeover) stands closed. */
export function isClosed(bench: Bench, socket: string, contact: string): boolean {
	const made = circuit(bench);
	const known = shut.get(made) ?? closedIn(made);
	shut.set(made, known);
	return known.has(`${socket}.${contact}`);
}
const shut = new WeakMap<Circuit, ReadonlySet<NodeName>>();

const closedIn = ({ conductors }: Circuit): ReadonlySet<NodeName> =>
	new Set(
		conductors.flatMap(({ reason: r }) =>
			r.kind === 'rest' || r.kind === 'changeover' ? [`${r.socket}.${r.contact}`] : []
		)
	);
