/** What the drawing lights: the path between the probes, a net that is pointed at, letters of nets. */
import {
	circuit,
	netsOf,
	splitNode,
	type Bench,
	type Conductor,
	type Circuit,
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

/** Metal bolted to metal: it touches with a plug and without. */
const BOLTED: ReadonlySet<Conductor['reason']['kind']> = new Set(['chassis', 'bush']);

/**
 * What touches metal now at the contacts of one socket, or of all (`socket` null): every spring that
 * lies on a plug or rests on its break contact, every pin that has mated, what is bolted to the
 * panel, and what a plug joins inside. Solder holds always, so wires keep their own colours.
 */
export function litLive(bench: Bench, socket: string | null = null): Lit {
	const { conductors } = circuit(bench);
	const { indexOf } = netsOf(bench);
	const moving = conductors.filter(
		({ reason: r }) =>
			(r.kind === 'rest' || r.kind === 'changeover' || r.kind === 'touch' || r.kind === 'mate') &&
			(socket === null || r.socket === socket)
	);
	const nets = new Set(moving.map(({ a }) => indexOf.get(a)));
	const pieces = conductors.filter(
		({ a, reason: { kind } }) =>
			BOLTED.has(kind) || (kind === 'inside-plug' && nets.has(indexOf.get(a)))
	);
	const live = [...moving, ...pieces];
	return litBy(
		live,
		live.flatMap(({ a, b }) => [a, b])
	);
}

/**
 * The one rule of copper, for every view: the path between the probes, else the net that is pointed
 * at, else all that touches now (`litLive`). A view that writes no letters of nets asks for neither
 * of the last two.
 */
export function litNow(
	bench: Bench,
	path: Lit,
	at: NodeName | null = null,
	socket: string | null = null
): Lit {
	if (path.nodes.size > 0) return path;
	return at === null ? litLive(bench, socket) : litNet(bench, at);
}

/**
 * A letter for every net of two nodes or more: a, b … z, aa … Letters belong to what is soldered and
 * bolted together, in the order of the bench, and a net is called by the first of those on it. So a
 * letter stays with its contact while plugs come and go, and a joint shows as one letter less.
 */
export function netLetters(bench: Bench): ReadonlyMap<NodeName, string> {
	const made = circuit(bench);
	const known = lettered.get(made) ?? lettersOf(bench, made);
	lettered.set(made, known);
	return known;
}
const lettered = new WeakMap<Circuit, ReadonlyMap<NodeName, string>>();

/** What a plug does not change. */
const FIXED: ReadonlySet<Conductor['reason']['kind']> = new Set([
	'wire',
	'core',
	'chassis',
	'bush',
	'bridge',
	'inside-device'
]);

/** For every node the first node, in the order of the bench, that it is soldered or bolted to. */
function fixedTo({ nodes, conductors }: Circuit): (node: NodeName) => NodeName {
	const order = new Map(nodes.map((node, i) => [node, i]));
	const parent = new Map<NodeName, NodeName>();
	const root = (node: NodeName): NodeName => {
		let at = node;
		for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
		return at;
	};
	for (const { a, b, joins, reason } of conductors) {
		if (!joins || !FIXED.has(reason.kind)) continue;
		const [x, y] = [root(a), root(b)];
		if (x === y) continue;
		const first = order.get(x)! < order.get(y)!;
		parent.set(first ? y : x, first ? x : y);
	}
	return root;
}

function lettersOf(bench: Bench, made: Circuit): ReadonlyMap<NodeName, string> {
	const root = fixedTo(made);
	const plugs = new Set(bench.plugs.map((p) => p.id));
	// A bare plug's parts come after everything that stays.
	const stays = (node: NodeName): boolean => !plugs.has(splitNode(node)[0]);
	const ranked = [...made.nodes.filter(stays), ...made.nodes.filter((n) => !stays(n))];
	const rank = new Map<NodeName, number>();
	for (const node of ranked) if (!rank.has(root(node))) rank.set(root(node), rank.size);
	const letters = new Map<NodeName, string>();
	for (const net of netsOf(bench).list) {
		if (net.length < 2) continue;
		const letter = letterOf(Math.min(...net.map((node) => rank.get(root(node))!)));
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
