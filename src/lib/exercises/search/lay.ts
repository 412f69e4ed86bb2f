/** From sets of blocks back to wires: which wires to take out, and how to lay new ones. */
import { DEFAULTS, freeId, type Bench, type NodeName, type Wire } from '../../engine';
import { blocksOf, merged, type Partition } from './partition';

/** Two contacts, by number. */
export type Link = readonly [number, number];

/** Wires between the same two contacts. Taking one of them out alone changes no net. */
export interface Bundle {
	readonly ends: Link;
	readonly wires: readonly Wire[];
}

export function bundlesOf(contacts: readonly NodeName[], wires: readonly Wire[]): Bundle[] {
	const bundles = new Map<string, { ends: Link; wires: Wire[] }>();
	for (const wire of wires) {
		const [a, b] = [contacts.indexOf(wire.from), contacts.indexOf(wire.to)];
		const ends: Link = a < b ? [a, b] : [b, a];
		const key = ends.join(' ');
		const bundle = bundles.get(key);
		if (bundle) bundle.wires.push(wire);
		else bundles.set(key, { ends, wires: [wire] });
	}
	return [...bundles.values()];
}

/** Every choice of bundles that hold `wires` wires in all. */
export function* choices(bundles: readonly Bundle[], wires: number, from = 0): Generator<Bundle[]> {
	if (wires === 0) yield [];
	if (wires <= 0) return;
	for (let i = from; i < bundles.length; i++)
		for (const rest of choices(bundles, wires - bundles[i]!.wires.length, i + 1))
			yield [bundles[i]!, ...rest];
}

/**
 * Ways to lay wires that make the goal's blocks of the kept ones, none to spare; `price` says which
 * links are the readiest, low first.
 */
export function* layings(
	kept: Partition,
	goal: Partition,
	price: (x: number, y: number) => number
): Generator<readonly Link[]> {
	const links = goal.flatMap((block, x) =>
		goal.flatMap((other, y): Link[] =>
			y > x && other === block && kept[x] !== kept[y] ? [[x, y]] : []
		)
	);
	links.sort(([a, b], [c, d]) => price(a, b) - price(c, d));
	yield* forests(links, kept, blocksOf(kept) - blocksOf(goal), 0);
}

/** Every choice of so many links of which each makes two blocks one. */
function* forests(
	links: readonly Link[],
	p: Partition,
	wires: number,
	from: number
): Generator<readonly Link[]> {
	if (wires === 0) yield [];
	else
		for (let i = from; i <= links.length - wires; i++) {
			const [x, y] = links[i]!;
			if (p[x] === p[y]) continue;
			for (const rest of forests(links, merged(p, p[x]!, p[y]!), wires - 1, i + 1))
				yield [links[i]!, ...rest];
		}
}

/** New wires with ids that nothing on the bench has. */
export function newWires(bench: Bench, ends: readonly (readonly [NodeName, NodeName])[]): Wire[] {
	let at = bench;
	return ends.map(([from, to]) => {
		const wire = { id: freeId(at, 'w'), from, to, awg: DEFAULTS.wireAwg, mm: DEFAULTS.mm };
		at = { ...at, wires: [...at.wires, wire] };
		return wire;
	});
}
