/**
 * What every set of at most N faults would answer to every probe. A plug state's nets are the join
 * of two partitions, wires (the same in all states) and contacts, so the sets of the two layers are
 * counted apart and only the distinct pairs of outcomes are joined, each once. Sets that answer
 * alike are one class: a row with the partition of each column, a weight, a count, and its heaviest
 * set by name; the others are listed only when somebody asks (members.ts). The plain engine,
 * `withFaults` and `netsOf`, is the oracle of all this in the tests.
 */
import type { Bench, Fault, NodeName, When } from '../engine';
import { ClassTally } from './classTally';
import { Layers } from './layers';
import type { Probe } from './probes';
import type { Labels } from './partitions';
import type { Rows } from './rows';
import type { Tally } from './tally';

/** Exact counts of the work done, for benchmarks. */
export interface Work {
	/** Sets of faults, the empty one among them. */
	readonly sets: number;
	readonly classes: number;
	/** Partitions made by joining. */
	readonly joins: number;
	/** Distinct partitions as probes see them. */
	readonly partitions: number;
	/** Pairs of an outcome of wires and one of contacts that were laid together. */
	readonly visited: number;
}

export interface Dictionary {
	readonly bench: Bench;
	/** Faults at once. */
	readonly most: number;
	readonly faults: readonly Fault[];
	/** Plug states of the bench in file order, and the column of each. */
	readonly states: readonly When[];
	readonly columnOf: readonly number[];
	readonly columns: number;
	/** Column by state key (setting.ts), and the first state of each column. */
	readonly columnAt: ReadonlyMap<string, number>;
	readonly columnStates: readonly When[];
	/** What a probe may touch, sorted. */
	readonly nodes: readonly NodeName[];
	readonly nodeAt: ReadonlyMap<NodeName, number>;
	/** Partitions of `nodes` as labels. */
	readonly seen: Labels;
	/** Per class: a number in `seen` for each column, then 1 (joined) or 0 for each extra probe. */
	readonly rows: Rows;
	/** Probes outside the bench's own states or nodes that were asked for besides. */
	readonly extras: readonly Probe[];
	/** Number of classes. */
	readonly size: number;
	/** Per class: weight of all its sets (not yet shared out to sum to 1), and how many they are. */
	readonly weight: Float64Array;
	readonly count: Float64Array;
	/** Whether the sound bench is a candidate. */
	readonly hasSound: boolean;
	/** The heaviest set of a class, as sorted numbers in `faults`. */
	readonly heaviest: (id: number) => number[];
	/** The class of a set given by sorted numbers; −1 if none of at most `most` faults answers so. */
	readonly classOfSet: (set: readonly number[]) => number;
	/** Pairs that no plan touches: 1 at position `a * nodes + b`; left out where all may be. */
	readonly off?: Uint8Array;
	readonly work: Work;
}

/** More classes than this are too many to hold. */
const MOST_CLASSES = 12_000_000;
/** Pairs of outcomes between two rests. */
const STRETCH = 4096;

/** The outcomes of a tally, those with fewest faults first, and how many have at most that many. */
function byFewest({ most, ids, fewest }: Tally): { ids: Int32Array; within: Int32Array } {
	const within = new Int32Array(most + 2);
	for (let id = 0; id < ids; id++) within[fewest[id]!]!++;
	for (let size = 1; size <= most + 1; size++) within[size]! += within[size - 1]!;
	const next = Int32Array.from(within, (_, size) => (size === 0 ? 0 : within[size - 1]!));
	const sorted = new Int32Array(ids);
	for (let id = 0; id < ids; id++) sorted[next[fewest[id]!]!++] = id;
	return { ids: sorted.subarray(0, within[most]), within };
}

/** Makes the dictionary, resting at each `yield`: a worker looks for other work there. */
export function* makingDictionary(
	bench: Bench,
	most: number,
	extras: readonly Probe[] = []
): Generator<void, Dictionary> {
	const layers = new Layers(bench, extras);
	const wires = yield* layers.wires.tally(most);
	const contacts = yield* layers.contacts.tally(most);
	const classes = new ClassTally(most, wires, contacts);
	const { ids, within } = byFewest(wires);
	const found = new Int32Array(STRETCH);
	let visited = 0;
	for (const outcome of byFewest(contacts).ids) {
		const wired = ids.subarray(0, within[most - contacts.fewest[outcome]!]);
		for (let from = 0; from < wired.length; from += STRETCH) {
			const to = Math.min(from + STRETCH, wired.length);
			layers.beside(outcome, wired, from, to, found);
			classes.addEach(found, layers.rows.size, wired, from, to, outcome);
			visited += to - from;
			if (layers.rows.size > MOST_CLASSES) throw new Error('it has too many sets of faults');
			if (to - from === STRETCH) yield;
		}
	}
	return {
		...layers.face(),
		bench,
		most,
		extras,
		hasSound: true,
		...figuresOf(layers, classes, visited)
	};
}

function figuresOf(layers: Layers, classes: ClassTally, visited: number) {
	const { size } = layers.rows;
	const count = classes.count.subarray(0, size);
	let sets = 0;
	for (let id = 0; id < size; id++) sets += count[id]!;
	const work: Work = {
		sets,
		classes: size,
		joins: layers.joins,
		partitions: layers.seen.size,
		visited
	};
	const weight = classes.weight.subarray(0, size);
	return { size, weight, count, heaviest: classes.heaviest, work };
}

/** The dictionary in one go. Throws if it would have more classes than fit. */
export function dictionaryOf(
	bench: Bench,
	most: number,
	extras: readonly Probe[] = []
): Dictionary {
	const making = makingDictionary(bench, most, extras);
	for (;;) {
		const step = making.next();
		if (step.done) return step.value;
	}
}
