/**
 * The fewest readings that prove a fault to somebody who already suspects it: every other suspect
 * must fail one of them, so they are a cover of the other classes. Nobody who hunts knows which they
 * are; it says how short a proof can be.
 */
import { fewestColumns } from './cover';
import type { Dictionary } from './dictionary';
import { everyClass } from './evidence';
import { dividing, probeOf } from './next';
import { outcomesAt } from './par';
import type { Probe } from './probes';

/** Branches of the search before it gives up. */
const STEPS = 200_000;

/** Readings that leave only that class, as few as do it; null if that could not be made sure of. */
export function fewestToProve(dictionary: Dictionary, hidden: number): Probe[] | null {
	const others = everyClass(dictionary).filter((id) => id !== hidden);
	if (others.length === 0) return [];
	const kept = new Map<string, { readonly caught: number[]; readonly probe: Probe }>();
	for (const found of dividing(dictionary, Int32Array.of(hidden, ...others))) {
		const [own, ...rest] = outcomesAt(dictionary, Int32Array.of(hidden, ...others), found);
		const caught = rest.flatMap((answer, i) => (answer === own ? [] : [i]));
		const key = caught.join();
		if (caught.length > 0 && !kept.has(key))
			kept.set(key, { caught, probe: probeOf(dictionary, found) });
	}
	const columns = [...kept.values()];
	const { chosen, exact } = fewestColumns(
		columns.map(({ caught }) => caught),
		STEPS
	);
	const proven = new Set(chosen.flatMap((i) => columns[i]!.caught));
	return exact && proven.size === others.length ? chosen.map((i) => columns[i]!.probe) : null;
}
