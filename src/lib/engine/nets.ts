/**
 * Nets: sets of nodes that conductors make one. Union-find with path halving; the order of the
 * answer is the one that the headless program prints (plain code-point order).
 */
import type { Bench, NodeName } from './bench';
import { circuit, type Circuit } from './circuit';

/** Plain code-point order, the same on every machine and in every language. */
export const byCodePoint = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

export interface Nets {
	/** All nets, nodes sorted in each, nets sorted by their first node. */
	readonly list: readonly (readonly NodeName[])[];
	/** Index into `list` of the node's net; undefined for a node that is not on the bench. */
	readonly indexOf: ReadonlyMap<NodeName, number>;
}

const cache = new WeakMap<Circuit, Nets>();

/** Nets of the bench as it stands. Every node is in exactly one. */
export function netsOf(bench: Bench): Nets {
	const made = circuit(bench);
	const known = cache.get(made);
	if (known) return known;
	const nets = netsOfCircuit(made);
	cache.set(made, nets);
	return nets;
}

function netsOfCircuit({ nodes, conductors }: Circuit): Nets {
	const index = new Map(nodes.map((node, i) => [node, i]));
	const parent = nodes.map((_, i) => i);
	const root = (start: number): number => {
		let i = start;
		while (parent[i] !== i) i = parent[i] = parent[parent[i]!]!;
		return i;
	};
	for (const c of conductors) if (c.joins) parent[root(index.get(c.a)!)] = root(index.get(c.b)!);
	const groups = new Map<number, NodeName[]>();
	nodes.forEach((node, i) => {
		const at = root(i);
		const group = groups.get(at);
		if (group) group.push(node);
		else groups.set(at, [node]);
	});
	const list = [...groups.values()].map((g) => g.sort(byCodePoint));
	list.sort((a, b) => byCodePoint(a[0]!, b[0]!));
	const indexOf = new Map(list.flatMap((net, i) => net.map((node) => [node, i] as const)));
	return { list, indexOf };
}

/** Whether the two nodes are on one net. False for a node that is not on the bench. */
export function isJoined(bench: Bench, a: NodeName, b: NodeName): boolean {
	const { indexOf } = netsOf(bench);
	const at = indexOf.get(a);
	return at !== undefined && at === indexOf.get(b);
}
