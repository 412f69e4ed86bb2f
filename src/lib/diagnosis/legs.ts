/**
 * Ways to the panel, two by two. A contact that is joined with the panel in a way that may break is
 * one end of a leg; two legs of different islands make one probe, from contact to contact, that
 * catches what either would, as long as one of the two sockets at most has its plug changed. So a
 * leg costs between half a probe and a whole one. Every island is solved apart at a price for its
 * legs; when no two legs that may be paired cost more than a probe together, what the islands cost is
 * a bound for the whole card (the dual of a pairing), and a card that comes down to it is proven.
 */

/** Parts that a probe is reckoned in, so that prices stay whole. */
export const PARTS = 12;

/** What a leg costs, in parts of a probe: one in the file's own state, and one in another. */
export interface Price {
	readonly atRest: number;
	readonly changed: number;
}
const HALF: Price = { atRest: 6, changed: 6 };
const CHANGED_DEARER: readonly Price[] = [
	{ atRest: 3, changed: 9 },
	{ atRest: 1, changed: 11 }
];
const DEAR: Price = { atRest: 11, changed: 11 };
const CHEAP: Price = { atRest: 1, changed: 1 };
/** Where no leg finds another: each is a probe by itself. */
export const WHOLE: Price = { atRest: PARTS, changed: PARTS };

/**
 * Prices to try, one for each island. `hasLegs`: which islands have any. No two legs that may be paired
 * cost more than a probe in any of them.
 */
export function pricesFor(hasLegs: readonly boolean[]): Price[][] {
	if (hasLegs.filter(Boolean).length < 2) return [hasLegs.map(() => WHOLE)];
	const alike = [HALF, ...CHANGED_DEARER].map((price) => hasLegs.map(() => price));
	// One island may have more legs than all the others together.
	const first = hasLegs.indexOf(true);
	return [...alike, hasLegs.map((_, i) => (i === first ? DEAR : CHEAP))];
}

/** A leg that was chosen. */
export interface Leg {
	readonly island: number;
	/** Whether it stands in the file's own state. */
	readonly isAtRest: boolean;
}

/**
 * Pairs of legs, as many as are found: those with a changed plug first, each with one at rest, and
 * always from the islands that have most left. Positions in `legs`; a leg by itself has no partner.
 */
export function pairLegs(legs: readonly Leg[]): [number, number | null][] {
	const rest = new Map<number, number[]>();
	const changed: number[] = [];
	legs.forEach(({ island, isAtRest }, i) => {
		if (!isAtRest) changed.push(i);
		else if (rest.has(island)) rest.get(island)!.push(i);
		else rest.set(island, [i]);
	});
	const fullest = (not: number): number | null => {
		let best: number | null = null;
		for (const [island, list] of rest)
			if (island !== not && list.length > (best === null ? 0 : rest.get(best)!.length))
				best = island;
		return best;
	};
	const pairs: [number, number | null][] = changed.map((leg) => {
		const island = fullest(legs[leg]!.island);
		return [leg, island === null ? null : rest.get(island)!.pop()!];
	});
	for (let island = fullest(-1); island !== null; island = fullest(-1)) {
		const leg = rest.get(island)!.pop()!;
		const other = fullest(island);
		pairs.push([leg, other === null ? null : rest.get(other)!.pop()!]);
	}
	return pairs;
}
