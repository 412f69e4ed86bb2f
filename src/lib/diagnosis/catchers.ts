/**
 * Which single faults each probe of a bench catches: those under which it answers otherwise than on
 * the sound bench. Of all probes with one plug state that catch the same faults one is kept, and
 * none that catches only what the file's own state shows as well. The plain engine is the oracle in
 * the tests.
 */
import {
	PANEL,
	splitNode,
	type Bench,
	type Fault,
	type NodeName,
	type Pair,
	type When
} from '../engine';
import { CatchSets, PairSets } from './catchSets';
import { FaultWork } from './faultWork';
import { faultListOf } from './faults';
import { probeNodes, statesOfBench, type ProbeAnswer } from './probes';
import { columnsOf } from './setting';
import { StateNets } from './stateNets';

export interface Catcher {
	/** Plug state, by its number. */
	readonly state: number;
	readonly pair: Pair;
	/** What a sound bench answers. */
	readonly expect: ProbeAnswer;
	/** Numbers of the faults that it catches, ascending. */
	readonly caught: readonly number[];
	/** Whether it is joined with the panel in a way that may break: the first of the pair is the far end. */
	readonly isLeg: boolean;
}
export interface Catchers {
	readonly faults: readonly Fault[];
	/** Plug states that differ; the first is the file's own. */
	readonly states: readonly When[];
	/** Per state, the socket whose plug it changes, by number; −1 for the file's own state. */
	readonly sockets: readonly number[];
	readonly catchers: readonly Catcher[];
	/** Numbers of the faults that no probe catches. */
	readonly silent: readonly number[];
}

/** What a probe may touch, nodes that nothing can part as one place. */
class Places {
	readonly nodes: Int32Array;
	private readonly groups: readonly (readonly NodeName[])[];
	private readonly owners: readonly (readonly string[])[];

	constructor(bench: Bench, { index, fixed }: FaultWork) {
		const parent = [...index.values()];
		const root = (i: number): number => (parent[i] === i ? i : (parent[i] = root(parent[i]!)));
		for (let k = 0; k < fixed.length; k += 2) parent[root(fixed[k]!)] = root(fixed[k + 1]!);
		const groups = new Map<number, NodeName[]>();
		for (const node of probeNodes(bench)) {
			const at = root(index.get(node)!);
			const group = groups.get(at);
			if (group) group.push(node);
			else groups.set(at, [node]);
		}
		this.groups = [...groups.values()];
		this.owners = this.groups.map((group) => [...new Set(group.map((n) => splitNode(n)[0]))]);
		this.nodes = Int32Array.from(this.groups, ([first]) => index.get(first!)!);
	}

	isPanel = (place: number): boolean => this.owners[place]!.includes(PANEL);
	isNear = (a: number, b: number): boolean =>
		this.owners[a]!.some((o) => this.owners[b]!.includes(o));

	private nearest(a: number, b: number): Pair | null {
		for (const x of this.groups[a]!)
			for (const y of this.groups[b]!) if (splitNode(x)[0] === splitNode(y)[0]) return [x, y];
		return null;
	}

	/** The pair by name, on one socket or device where both places have a node of it. */
	pair = (a: number, b: number): Pair =>
		this.nearest(a, b) ?? [this.groups[a]![0]!, this.groups[b]![0]!];
}

/** A pair that stands for all of a state that catch as it does. */
interface Best {
	readonly a: number;
	readonly b: number;
	readonly isLeg: boolean;
	readonly isNear: boolean;
}
const isBetter = (x: Best, y: Best): boolean =>
	x.isLeg !== y.isLeg ? x.isLeg : x.isNear && !y.isNear;

/** Of the pairs that catch alike: a leg first, then one on a single socket, then the first. */
function bestPairs(of: Int32Array, places: Places, labels: Int32Array): Map<number, Best> {
	const best = new Map<number, Best>();
	const { nodes } = places;
	const n = nodes.length;
	const isPanel = [...nodes.keys()].map(places.isPanel);
	for (let a = 0; a < n; a++)
		for (let b = a + 1; b < n; b++) {
			const set = of[a * n + b]!;
			if (set === 0) continue;
			const known = best.get(set);
			const isLeg = (isPanel[a]! || isPanel[b]!) && labels[nodes[a]!] === labels[nodes[b]!];
			if (known && (known.isLeg || !isLeg) && (known.isNear || known.isLeg !== isLeg)) continue;
			const pair = isPanel[a] && isLeg ? { a: b, b: a } : { a, b };
			const found = { ...pair, isLeg, isNear: places.isNear(a, b) };
			if (!known || isBetter(found, known)) best.set(set, found);
		}
	return best;
}

/** Faults looked at between two rests. */
const REST = 50;

/** What every probe catches; `tell` hears how many plug states it has been through. */
export function* catchersOf(
	bench: Bench,
	tell: (done: number) => void = () => {}
): Generator<void, Catchers> {
	const faults = faultListOf(bench);
	const { states } = columnsOf(bench, statesOfBench(bench));
	const work = new FaultWork(bench, faults);
	const places = new Places(bench, work);
	const sets = new CatchSets(faults.length);
	const pairs = new PairSets(places.nodes.length, sets);
	const isCaught = new Uint8Array(faults.length);
	const atFirst = new Map<number, boolean>();
	const catchers: Catcher[] = [];
	for (const [state, when] of states.entries()) {
		const { ends, changeBy } = work.inState(when);
		const nets = new StateNets(work.index.size, ends, places.nodes);
		pairs.begin();
		for (let f = 0; f < faults.length; f++) {
			if (f % REST === REST - 1) yield;
			const { gone, come } = changeBy(f);
			nets.change(gone, come, (a, b) => {
				isCaught[f] = 1;
				pairs.catch(f, a, b);
			});
		}
		for (const [set, { a, b, isLeg }] of bestPairs(pairs.of, places, nets.labels)) {
			if (state === 0) atFirst.set(set, isLeg);
			else if (atFirst.has(set) && (atFirst.get(set) || !isLeg)) continue;
			const joined = nets.labels[places.nodes[a]!] === nets.labels[places.nodes[b]!];
			catchers.push({
				...{ state, pair: places.pair(a, b), isLeg },
				expect: joined ? 'joined' : 'apart',
				caught: sets.faultsOf(set)
			});
		}
		tell(state + 1);
		yield;
	}
	const ids = bench.sockets.map((s) => s.id);
	const sockets = states.map((when) => ids.indexOf(Object.keys(when)[0] ?? ''));
	const silent = faults.flatMap((_, f) => (isCaught[f] ? [] : [f]));
	return { faults, states, sockets, catchers, silent };
}
