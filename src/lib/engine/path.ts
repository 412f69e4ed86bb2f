/**
 * Why two nodes are joined, or what keeps them apart. The path is Dijkstra's over conductors with
 * their ohms; the separation is a search in which conductors are free and gaps cost one each, so
 * that it names as few open contacts as would have to close.
 */
import type { Bench, NodeName, Ohms } from './bench';
import { circuit, type Conductor, type Gap } from './circuit';

export interface Step<Through> {
	readonly from: NodeName;
	readonly to: NodeName;
	readonly through: Through;
}
export type PathAnswer =
	| { readonly kind: 'same' }
	/** Joined: the least-resistance path, in order from `a` to `b`. */
	| { readonly kind: 'joined'; readonly steps: readonly Step<Conductor>[]; readonly ohms: Ohms }
	/** Apart, but closing these gaps would join them; `steps` is the whole way. */
	| {
			readonly kind: 'parted';
			readonly gaps: readonly Gap[];
			readonly steps: readonly Step<Conductor | Gap>[];
	  }
	/** Apart, and no contact that could close would join them. */
	| { readonly kind: 'nothing' };

interface Edge<Through> {
	readonly a: NodeName;
	readonly b: NodeName;
	readonly cost: number;
	readonly through: Through;
}

/** The cheapest way from `a` to `b`, or null. Costs are not negative. */
function cheapest<Through>(
	edges: readonly Edge<Through>[],
	a: NodeName,
	b: NodeName
): Step<Through>[] | null {
	const around = new Map<NodeName, Edge<Through>[]>();
	for (const edge of edges)
		for (const end of [edge.a, edge.b]) {
			const list = around.get(end);
			if (list) list.push(edge);
			else around.set(end, [edge]);
		}
	const cost = new Map<NodeName, number>([[a, 0]]);
	const cameBy = new Map<NodeName, Step<Through>>();
	const open = new Set<NodeName>([a]);
	while (open.size > 0) {
		const node = [...open].reduce((x, y) => (cost.get(y)! < cost.get(x)! ? y : x));
		if (node === b) break;
		open.delete(node);
		for (const edge of around.get(node) ?? []) {
			const to = edge.a === node ? edge.b : edge.a;
			const total = cost.get(node)! + edge.cost;
			if (total >= (cost.get(to) ?? Infinity)) continue;
			cost.set(to, total);
			cameBy.set(to, { from: node, to, through: edge.through });
			open.add(to);
		}
	}
	if (!cost.has(b)) return null;
	const steps: Step<Through>[] = [];
	for (let at = b; at !== a; at = steps[0]!.from) steps.unshift(cameBy.get(at)!);
	return steps;
}

const isGap = (x: Conductor | Gap): x is Gap => !('ohms' in x);

/** The spring, pin or changeover that would have to move for the gap to close; null for a cut wire. */
const movedBy = (x: Conductor | Gap): NodeName | null =>
	isGap(x) && x.reason.kind !== 'cut' ? x.a : null;
/** The spring, pin or changeover that would have to stay for the conductor to be there. */
const heldBy = (x: Conductor | Gap): NodeName | null =>
	!isGap(x) && ['touch', 'mate', 'changeover'].includes(x.reason.kind) ? x.a : null;

/**
 * The way with the fewest gaps, or null. It does not ask one moving part to be in two places: a
 * spring on a plug and on its break contact, or a changeover on both of its sides.
 */
function wayThrough(
	edges: readonly Edge<Conductor | Gap>[],
	a: NodeName,
	b: NodeName
): Step<Conductor | Gap>[] | null {
	const way = cheapest(edges, a, b);
	const moved = new Set(way?.map((s) => movedBy(s.through)));
	const held = way?.find((s) => heldBy(s.through) !== null && moved.has(heldBy(s.through)));
	if (!held) return way;
	const part = heldBy(held.through);
	const ways = [movedBy, heldBy].map((asks) =>
		wayThrough(
			edges.filter((e) => asks(e.through) !== part),
			a,
			b
		)
	);
	const gapsIn = (w: Step<Conductor | Gap>[]) => w.filter((s) => isGap(s.through)).length;
	const [stays, moves] = ways as [typeof way, typeof way];
	return stays && moves ? (gapsIn(moves) < gapsIn(stays) ? moves : stays) : (stays ?? moves);
}

/** Why `a` and `b` are on one net, conductor by conductor, or what stands open between them. */
export function pathBetween(bench: Bench, a: NodeName, b: NodeName): PathAnswer {
	if (a === b) return { kind: 'same' };
	const { conductors, gaps } = circuit(bench);
	const joining = conductors.filter((c) => c.joins);
	const path = cheapest(
		joining.map((c) => ({ a: c.a, b: c.b, cost: c.ohms, through: c })),
		a,
		b
	);
	if (path)
		return { kind: 'joined', steps: path, ohms: path.reduce((r, s) => r + s.through.ohms, 0) };
	const way = wayThrough(
		[
			...joining.map((c) => ({ a: c.a, b: c.b, cost: c.ohms * 1e-15, through: c })),
			...gaps.map((g) => ({ a: g.a, b: g.b, cost: 1, through: g }))
		],
		a,
		b
	);
	if (!way) return { kind: 'nothing' };
	return { kind: 'parted', steps: way, gaps: way.map((s) => s.through).filter(isGap) };
}
