/**
 * The fewest wires that meet a requirement, against logic-solver: the wiring exercises of the course
 * that ask for nothing but pairs joined or apart, and whole continuity tables in all six plug states,
 * drawn from a stated seed, whose wires are to be found. With logic-solver each possible wire is a variable. Apart: wires that touch
 * make one equivalence for each plug state, and a pair must not be in it. Joined: within as many steps
 * as there are wires in the answer (which it is told, in its favour) one end must reach the other. Then
 * the sum of the wires is made least.
 */
import Logic from 'logic-solver';
import { checkBench, checkRequirements, contactsOf, matrixOf, pairsOf } from '../../src/lib/engine';
import { randomNumbers } from '../../src/lib/engine/random.fixture';
import { readExercises } from '../../src/lib/exercises/content.node.js';
import { fewestWires } from '../../src/lib/exercises/search';
import {
	allChecks,
	readyFor,
	type Ready,
	type State,
	type Task
} from '../../src/lib/exercises/search/task';
import { discrete } from '../../src/lib/exercises/search/partition';
import { Walk } from '../../src/lib/exercises/search/walk';
import { median, mustAgree, ratioOf, type Row } from './measure';

type Solver = InstanceType<typeof Logic.Solver>;

const wire = (a: number, b: number) => `w ${Math.min(a, b)} ${Math.max(a, b)}`;

/** One plug state in numbers: what is fixed is one place. */
class Places {
	readonly of: readonly number[];
	readonly many: number;
	/** Wires between two places, by `a * many + b`; empty where there are none. */
	readonly wires: readonly string[][];

	constructor(
		readonly solver: Solver,
		readonly name: string,
		{ fixed }: State,
		contacts: number
	) {
		const known = [...new Set(fixed)];
		this.of = fixed.map((f) => known.indexOf(f));
		this.many = known.length;
		const wires: string[][] = Array.from({ length: this.many ** 2 }, () => []);
		for (let i = 0; i < contacts; i++)
			for (let j = 0; j < contacts; j++)
				if (this.of[i] !== this.of[j])
					wires[this.of[i]! * this.many + this.of[j]!]!.push(wire(i, j));
		this.wires = wires;
	}

	private net(a: number, b: number): string {
		return `${this.name} net ${Math.min(a, b)} ${Math.max(a, b)}`;
	}

	/** Every wire joins its places, and joined places are one net. */
	equivalence() {
		const { many, solver } = this;
		for (let a = 0; a < many; a++)
			for (let b = 0; b < many; b++) {
				if (a === b) continue;
				if (a < b)
					for (const w of this.wires[a * many + b]!)
						solver.require(Logic.implies(w, this.net(a, b)));
				for (let c = b + 1; c < many; c++)
					if (c !== a)
						solver.require(
							Logic.implies(Logic.and(this.net(a, b), this.net(a, c)), this.net(b, c))
						);
			}
	}

	apart(x: number, y: number) {
		const [a, b] = [this.of[x]!, this.of[y]!];
		if (a === b) this.solver.require(Logic.or([]));
		else this.solver.forbid(this.net(a, b));
	}

	/** From one node, all that must be joined to it, in at most so many steps. */
	joined(x: number, others: readonly number[], steps: number) {
		const { many, solver } = this;
		const start = this.of[x]!;
		const at = (step: number, place: number) => `${this.name} from ${start} ${step} ${place}`;
		for (let place = 0; place < many; place++)
			if (place === start) solver.require(at(0, place));
			else solver.forbid(at(0, place));
		for (let step = 1; step <= steps; step++)
			for (let place = 0; place < many; place++) {
				const ways = Array.from({ length: many }, (_, from) => {
					const wires = this.wires[from * many + place]!;
					return wires.length > 0 ? [Logic.and(at(step - 1, from), Logic.or(wires))] : [];
				});
				solver.require(
					Logic.equiv(at(step, place), Logic.or([at(step - 1, place), ...ways.flat()]))
				);
			}
		for (const other of others) solver.require(at(steps, this.of[other]!));
	}
}

/** The number of wires in the least solution; null if there is none. */
function bySolver({ states, contacts }: Ready, steps: number): number | null {
	const solver = new Logic.Solver();
	// A wire between places that are fixed together in every state is of no use and no variable.
	const used = new Set<string>();
	states.forEach((state, s) => {
		const places = new Places(solver, `s${s}`, state, contacts.length);
		for (const w of places.wires.flat()) used.add(w);
		if (state.apart.length > 0) places.equivalence();
		for (const [x, y] of state.apart) places.apart(x, y);
		const froms = new Map<number, number[]>();
		for (const [x, y] of state.joined) froms.set(x, [...(froms.get(x) ?? []), y]);
		for (const [x, others] of froms) places.joined(x, others, steps);
	});
	// Every wire is a variable, even where no clause names it.
	for (const w of used) solver.getVarNum(w);
	const start = solver.solve();
	if (!start) return null;
	const wires = [...used];
	const least = solver.minimizeWeightedSum(start, wires, 1);
	return least.getTrueVars().filter((name) => name.startsWith('w ')).length;
}

/** A hybrid of ten with so many jumpers drawn at random, and that what it joins is asked for in full. */
function drawn(jumpers: number, below: (n: number) => number): Task {
	const names = '1 2 3 T R S TN RN SN 1N G'.split(' ');
	const wires = Array.from({ length: jumpers }, (_, i) => {
		const a = below(names.length);
		const b = (a + 1 + below(names.length - 1)) % names.length;
		return { id: `w${i}`, from: `A.${names[a]}`, to: `A.${names[b]}` };
	});
	const parsed = checkBench({
		format: 'solderside-bench',
		version: 1,
		sockets: [{ id: 'A', kind: 'hybrid-10' }],
		wires
	});
	if (!parsed.ok) throw new Error(parsed.problem.message);
	const bench = parsed.value;
	const pairs = pairsOf(contactsOf(bench, 'A'));
	const require = Object.entries(matrixOf(bench, 'A')).map(([state, joined]) => {
		const sounds = new Set(joined.map((pair) => pair.join()));
		const apart = pairs.filter((pair) => !sounds.has(pair.join()));
		return { when: { A: state }, joined, apart };
	});
	const checked = checkRequirements({ require });
	if (!checked.ok) throw new Error(checked.problem.message);
	return { bench: { ...bench, wires: [] }, mayWire: ['A'], require: checked.value };
}

/** Wiring exercises that ask for nothing that has to be heard, and drawn tables to be wired. */
function tasks(): { id: string; task: Task }[] {
	const course = readExercises().flatMap((exercise) => {
		if (exercise.kind !== 'wire') return [];
		const { mayWire, require } = exercise;
		const task = { bench: { ...exercise.bench, wires: [] }, mayWire, require };
		const pairsOnly = allChecks(task).every((c) => c.wanted === 'joined' || c.wanted === 'apart');
		return pairsOnly ? [{ id: exercise.id, task }] : [];
	});
	const below = randomNumbers(1000);
	const tables = [2, 3, 4, 5].map((jumpers) => ({
		id: `a table of ${jumpers} drawn jumpers`,
		task: drawn(jumpers, below)
	}));
	return [...course, ...tables];
}

/** The search alone, from the same numbered states as logic-solver is given. */
function byWalk(ready: Ready): number {
	const walk = new Walk(ready, Infinity);
	const none = discrete(ready.contacts.length);
	for (let wires = 0; ; wires++)
		if (walk.goals(none, wires, () => 'enough') === 'stopped') return wires;
}

export function fewestRows(): Row[] {
	const alone: number[] = [];
	const whole: number[] = [];
	const rows = tasks().flatMap(({ id, task }): Row[] => {
		const found = fewestWires(task, { sets: 1 });
		if (found.kind !== 'found') throw new Error(`${id}: ${found.kind}`);
		const ready = readyFor(task, allChecks(task));
		mustAgree(`${id}: fewest wires`, found.changes, bySolver(ready, found.changes));
		mustAgree(`${id}: fewest wires by the walk`, found.changes, byWalk(ready));
		const solver = { run: () => bySolver(ready, found.changes) };
		const search = { run: () => fewestWires(task, { sets: 1 }) };
		const walk = { run: () => byWalk(ready) };
		alone.push(ratioOf(solver, walk, 3, 5));
		whole.push(ratioOf(solver, search, 3, 5));
		return [
			{ what: `${id}: sets of blocks looked at, for ${found.changes} wires`, count: found.nodes },
			{ what: `${id}: logic-solver / search`, ratio: alone.at(-1)! },
			{ what: `${id}: logic-solver / search, circuits and score`, ratio: whole.at(-1)! }
		];
	});
	return [
		...rows,
		{ what: 'median: logic-solver / search', ratio: median(alone), target: 1000 },
		{ what: 'median: logic-solver / search, circuits and score', ratio: median(whole) }
	];
}
