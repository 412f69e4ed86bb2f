/**
 * The test card: as few probes as can be found that together catch every single fault that any
 * probe catches. A probe catches the faults whose answer differs from the sound bench's. Fewest
 * probes come first; then plug states are left out one after another for as long as no more probes
 * are needed without them, and the probes stand state by state, so that plugs change seldom.
 */
import type { Bench, Fault } from '../engine';
import { classesIn } from './classes';
import { fewestColumns } from './cover';
import { dictionaryOf, type Dictionary } from './dictionary';
import type { Probe, ProbeAnswer } from './probes';
import { plugChanges } from './setting';

export interface CardProbe extends Probe {
	/** What a sound bench answers. */
	readonly expect: ProbeAnswer;
}
export interface Card {
	readonly probes: readonly CardProbe[];
	readonly silent: readonly Fault[];
	/** Plugs to change on the way through the card, from the file's own state on. */
	readonly changes: number;
	/** Whether it is certain that no card has fewer probes. */
	readonly exact: boolean;
}

/** A probe by its place, and the classes that it catches. */
interface Catcher {
	readonly column: number;
	readonly a: number;
	readonly b: number;
	readonly caught: readonly number[];
	/** One text for each set of caught classes. */
	readonly key: string;
}

/** Probes of one column; of those that catch the same classes only the first. */
function catchersIn(dictionary: Dictionary, column: number, sound: number): Catcher[] {
	const { rows, seen, size, nodes } = dictionary;
	const classes = [...Array(size).keys()].filter((id) => id !== sound);
	const found = new Map<string, Catcher>();
	const net = (id: number, node: number) => seen.at(rows.at(id, column), node);
	for (let a = 0; a < nodes.length; a++)
		for (let b = a + 1; b < nodes.length; b++) {
			const joined = net(sound, a) === net(sound, b);
			const caught = classes.filter((id) => (net(id, a) === net(id, b)) !== joined);
			const key = caught.join();
			if (caught.length > 0 && !found.has(key)) found.set(key, { column, a, b, caught, key });
		}
	return [...found.values()];
}

/** Branches of one search before it settles for what it has. */
const STEPS = 4000;

interface Chosen {
	readonly catchers: readonly Catcher[];
	readonly exact: boolean;
}

/** The fewest of them that catch all that any of them catches; of those that catch alike the first. */
function fewest(catchers: readonly Catcher[]): Chosen {
	const first = new Map<string, Catcher>();
	for (const catcher of catchers) if (!first.has(catcher.key)) first.set(catcher.key, catcher);
	const kept = [...first.values()];
	const { chosen, exact } = fewestColumns(
		kept.map((c) => c.caught),
		STEPS
	);
	return { catchers: chosen.map((i) => kept[i]!), exact };
}

function caughtBy(catchers: readonly Catcher[]): number {
	const caught = new Set<number>();
	for (const catcher of catchers) for (const id of catcher.caught) caught.add(id);
	return caught.size;
}

/** The same number of probes in fewer plug states, the last states tried first. */
function inFewerStates(all: readonly Catcher[], first: Chosen): Chosen {
	const wanted = caughtBy(all);
	const used = new Set(first.catchers.map((c) => c.column));
	let best = first;
	let kept = all.filter((c) => used.has(c.column));
	for (const column of [...used].sort((a, b) => b - a)) {
		const rest = kept.filter((c) => c.column !== column);
		if (caughtBy(rest) < wanted) continue;
		const chosen = fewest(rest);
		if (chosen.catchers.length > best.catchers.length) continue;
		kept = rest;
		best = { ...chosen, exact: best.exact };
	}
	return best;
}

/** The card from a dictionary of single faults. */
export function cardIn(dictionary: Dictionary): Card {
	const { bench, rows, seen, nodes, columnStates, columns, classOfSet } = dictionary;
	const sound = classOfSet([]);
	const numbers = [...Array(columns).keys()];
	const all = numbers.flatMap((column) => catchersIn(dictionary, column, sound));
	const { catchers, exact } = inFewerStates(all, fewest(all));
	const inOrder = [...catchers].sort((x, y) => x.column - y.column || x.a - y.a || x.b - y.b);
	const probes = inOrder.map(({ column, a, b }): CardProbe => {
		const partition = rows.at(sound, column);
		const joined = seen.at(partition, a) === seen.at(partition, b);
		return {
			when: columnStates[column]!,
			pair: [nodes[a]!, nodes[b]!],
			expect: joined ? 'joined' : 'apart'
		};
	});
	const states = [{}, ...probes.map((p) => p.when)];
	const changes = states.slice(1).reduce((n, to, i) => n + plugChanges(bench, states[i]!, to), 0);
	return { probes, silent: classesIn(dictionary).silent, changes, exact };
}

/** The test card of a bench. */
export const cardOf = (bench: Bench): Card => cardIn(dictionaryOf(bench, 1));
