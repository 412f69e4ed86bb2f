/**
 * The dictionary of all sets of up to three faults of a hybrid of ten, against mnemonist's disjoint
 * sets asked set by set; what the springs of a socket join is at hand for both, and both are warm, which
 * the dictionary is after some twenty of its short runs. Beside it, the first run of each. And the choice of the best probe over all of them, against bit sets of
 * typedfastbitset and against one bare pass over as many rows of 32 bytes. Counts are exact.
 */
import { StaticDisjointSet } from 'mnemonist';
import { TypedFastBitSet } from 'typedfastbitset';
import {
	bestNext,
	bitsOf,
	dictionaryOf,
	everyClass,
	type Dictionary
} from '../../src/lib/diagnosis';
import { checkBench, circuit, inState, nodesOfBench, withFaults } from '../../src/lib/engine';
import type { Bench, Fault } from '../../src/lib/engine';
import { clocked, mustAgree, ratioOf, type Row } from './measure';

/** An invented hybrid of ten with five jumpers: 11 nodes with its lug. */
function hybrid(): Bench {
	const jumpers = ['2 T', '3 R', '1 S', 'TN RN', 'SN G'].map((ends, i) => {
		const [from, to] = ends.split(' ').map((c) => `A.${c}`);
		return { id: `w${i}`, from, to };
	});
	const parsed = checkBench({
		format: 'solderside-bench',
		version: 1,
		sockets: [{ id: 'A', kind: 'hybrid-10' }],
		wires: jumpers
	});
	if (!parsed.ok) throw new Error(parsed.problem.message);
	return parsed.value;
}

/** Every set of at most `most` numbers under n. */
function* setsOf(n: number, most: number, from = 0, set: number[] = []): Generator<number[]> {
	yield set;
	if (set.length === most) return;
	for (let i = from; i < n; i++) {
		set.push(i);
		yield* setsOf(n, most, i + 1, set);
		set.pop();
	}
}

/** What the plain way needs at hand: ends of wires, and of contacts for each state and set of faults. */
interface Plain {
	readonly nodes: number;
	readonly faults: readonly Fault[];
	readonly index: ReadonlyMap<string, number>;
	readonly wires: readonly { readonly id: string; readonly ends: readonly [number, number] }[];
	readonly contacts: (set: readonly number[]) => readonly Int32Array[];
}

function plainOf(bench: Bench, { columnStates, faults }: Dictionary): Plain {
	const names = nodesOfBench(bench);
	// A bare plug's conductors come after all else, and are left out of the answers.
	const all = new Map(
		[...names, 'bare1.tip', 'bare1.ring', 'bare1.sleeve', ...'123'].map((n, i) => [n, i])
	);
	for (const pin of ['1', '2', '3', 'shell']) all.set(`bare1.${pin}`, all.size);
	const at = (name: string) => all.get(name)!;
	const known = new Map<string, readonly Int32Array[]>();
	const contactKinds = ['rest', 'touch', 'mate', 'changeover'];
	return {
		nodes: all.size,
		faults,
		index: all,
		wires: bench.wires.map((w) => ({ id: w.id, ends: [at(w.from), at(w.to)] })),
		contacts(set) {
			const own = set.filter((i) => 'contact' in faults[i]!);
			const key = own.join();
			if (!known.has(key)) {
				const spoiled = withFaults(
					bench,
					own.map((i) => faults[i]!)
				);
				const ends = columnStates.map((when) =>
					Int32Array.from(
						circuit(inState(spoiled, when))
							.conductors.filter((c) => contactKinds.includes(c.reason.kind))
							.flatMap((c) => [at(c.a), at(c.b)])
					)
				);
				known.set(key, ends);
			}
			return known.get(key)!;
		}
	};
}

/** Classes found by asking mnemonist about every set in every state. */
function classesByDisjointSets(plain: Plain, seen: number): number {
	const classes = new Map<string, number>();
	for (const set of setsOf(plain.faults.length, 3)) {
		const joins = joinsUnder(plain, set);
		const key = plain
			.contacts(set)
			.map((contacts) => {
				const nets = new StaticDisjointSet(plain.nodes);
				for (const [a, b] of joins) nets.union(a, b);
				for (let k = 0; k < contacts.length; k += 2) nets.union(contacts[k]!, contacts[k + 1]!);
				return String.fromCharCode(...Array.prototype.slice.call(nets.mapping(), 0, seen));
			})
			.join('');
		classes.set(key, (classes.get(key) ?? 0) + 1);
	}
	return classes.size;
}

function joinsUnder({ faults, wires, index }: Plain, set: readonly number[]): [number, number][] {
	const cut = new Set<string>();
	const bridges: [number, number][] = [];
	const swaps: [number, number][] = [];
	for (const i of set) {
		const fault = faults[i]!;
		if (fault.kind === 'open') cut.add(fault.wire);
		if (fault.kind === 'bridge')
			bridges.push([index.get(fault.between[0])!, index.get(fault.between[1])!]);
		if (fault.kind === 'swap')
			swaps.push([index.get(fault.contacts[0])!, index.get(fault.contacts[1])!]);
	}
	const landing = (node: number) =>
		swaps.reduce((at, [x, y]) => (at === x ? y : at === y ? x : at), node);
	const landed = wires
		.filter((w) => !cut.has(w.id))
		.map(({ ends: [a, b] }): [number, number] => [landing(a), landing(b)]);
	return [...landed, ...bridges];
}

/** The set of faults of each row, by class and weight, one bit set for each probe that sounds. */
function bitSetsOf(dictionary: Dictionary) {
	const { faults, rows, seen, columns, nodes } = dictionary;
	const probes: TypedFastBitSet[] = [];
	const all = new TypedFastBitSet();
	const ids: number[] = [];
	for (const set of setsOf(faults.length, 3)) {
		all.add(ids.length);
		ids.push(dictionary.classOfSet(set));
	}
	for (let c = 0; c < columns; c++)
		for (let a = 0; a < nodes.length; a++)
			for (let b = a + 1; b < nodes.length; b++) {
				const sounds = new TypedFastBitSet();
				ids.forEach((id, i) => {
					const partition = rows.at(id, c);
					if (seen.at(partition, a) === seen.at(partition, b)) sounds.add(i);
				});
				probes.push(sounds);
			}
	return { all, probes };
}

/** Bits told by the probe whose number of sounding sets is nearest to half. */
function mostEvenOf(
	probes: readonly TypedFastBitSet[],
	left: TypedFastBitSet,
	sets: number
): number {
	let best = 0;
	for (const probe of probes) {
		const joined = probe.intersection_size(left);
		if (Math.abs(2 * joined - sets) < Math.abs(2 * best - sets)) best = joined;
	}
	return bitsOf(best / sets);
}

const binomial = (n: number, k: number): number => (k === 0 ? 1 : (binomial(n - 1, k - 1) * n) / k);

export function diagnosisRows(): Row[] {
	const bench = hybrid();
	const [dictionary, oursFirst] = clocked(() => dictionaryOf(bench, 3));
	const { work, faults, nodes } = dictionary;
	const n = faults.length;
	const plain = plainOf(bench, dictionary);
	const [classes, theirsFirst] = clocked(() => classesByDisjointSets(plain, nodes.length));
	const ids = everyClass(dictionary);
	const { all, probes } = bitSetsOf(dictionary);
	const table = new Int32Array(8 * work.sets).fill(3);
	const pass = {
		run() {
			let sum = 0;
			for (let i = 0; i < table.length; i++) sum = (sum + table[i]!) | 0;
			return sum;
		}
	};
	const choice = { run: () => bestNext(dictionary, ids) };
	// Bit sets count and do not weigh, so they are asked for the probe that halves the number of sets.
	const counted = { ...dictionary, weight: Float64Array.from(dictionary.count) };
	const even = { run: () => bestNext(counted, ids) };
	const counting = { run: () => mostEvenOf(probes, all, work.sets) };
	mustAgree('best probe: bits of information', bestNext(counted, ids)!.gain, counting.run());
	const of = 'up to three faults of a hybrid of ten';
	return [
		// One set of none, n of one, and so on: Pascal's triangle.
		{ what: `${of}: sets`, count: work.sets, right: 1 + n + binomial(n, 2) + binomial(n, 3) },
		{
			what: `${of}: classes`,
			count: work.classes,
			right: classes
		},
		{ what: `${of}: partitions joined`, count: work.joins },
		{ what: `${of}: pairs of outcomes visited`, count: work.visited },
		{
			what: `${of}: disjoint sets of mnemonist / dictionary`,
			ratio: ratioOf(
				{ run: () => classesByDisjointSets(plain, nodes.length) },
				{ run: () => dictionaryOf(bench, 3) },
				5,
				300
			),
			target: 80
		},
		{ what: `${of}: the same, the first run of each`, ratio: theirsFirst / oursFirst },
		{ what: 'best probe: bit sets of typedfastbitset / classes', ratio: ratioOf(counting, even) },
		{
			what: 'best probe: classes / one pass over 32-byte rows',
			ratio: ratioOf(choice, pass),
			target: 1,
			below: true
		}
	];
}
