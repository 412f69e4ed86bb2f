/** Arrow keys on a drawing: the nearest node that lies in that direction. */
import type { NodeName } from '../engine';
import type { Point } from './socket';

const WAYS: Readonly<Record<string, Point>> = {
	ArrowLeft: { x: -1, y: 0 },
	ArrowRight: { x: 1, y: 0 },
	ArrowUp: { x: 0, y: -1 },
	ArrowDown: { x: 0, y: 1 }
};

/** The next node from `at` for an arrow key; null for another key or where nothing lies that way. */
export function neighbour(
	points: ReadonlyMap<NodeName, Point>,
	at: NodeName,
	key: string
): NodeName | null {
	const way = WAYS[key];
	const from = points.get(at);
	if (!way || !from) return null;
	let best: NodeName | null = null;
	let least = Infinity;
	for (const [node, p] of points) {
		const ahead = (p.x - from.x) * way.x + (p.y - from.y) * way.y;
		const aside = Math.abs((p.x - from.x) * way.y) + Math.abs((p.y - from.y) * way.x);
		if (node === at || ahead <= 0.5 || aside > ahead * 2.5 + 4) continue;
		const cost = ahead + 2 * aside;
		if (cost < least) [best, least] = [node, cost];
	}
	return best;
}
