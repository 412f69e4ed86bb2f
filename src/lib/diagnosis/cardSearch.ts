/**
 * The search for a test card: what each probe catches, island by island (those alike once), then the
 * cheapest probes of each island at a price for its ways to the panel, and the whole put together.
 * A plug state costs a change, and each socket one more to be left as it was; the socket that comes
 * last is left with its plug, so a card has one change fewer than that sum.
 */
import type { Bench, When } from '../engine';
import { cheapestCover, usefulColumns } from './cover';
import type { Opening } from './coverTable';
import { catchersOf, type Catcher, type Catchers } from './catchers';
import { islandsOf, type Island } from './islands';
import { PARTS, pairLegs, pricesFor, type Leg, type Price } from './legs';
import { statesOfBench, type Probe, type ProbeAnswer } from './probes';
import { columnsOf } from './setting';

/**
 * How far the search is. `looking`: plug states looked at. `sorting`: probes that are left, of those that
 * catch something, once needless ones go. `choosing`: probes among which it chooses (`of`), for how many
 * of the islands that differ it has (`done`).
 */
export interface CardProgress {
	readonly stage: 'looking' | 'sorting' | 'choosing';
	readonly done: number;
	readonly of: number;
}

/** Probes of which some that no card needs are gone: all that the rules find, where it is the whole of it. */
interface Narrowed extends Catchers {
	readonly isWhole: boolean;
}

/** An island and what its probes catch; islands that are alike share the latter. */
export interface Surveyed {
	readonly island: Island;
	readonly catchers: Narrowed;
}

/** A generator's end, its rests passed on as this progress. */
function* resting<T>(
	work: Generator<unknown, T>,
	progress: (said: number) => CardProgress
): Generator<CardProgress, T> {
	for (let step = work.next(); ; step = work.next()) {
		if (step.done) return step.value;
		yield progress(typeof step.value === 'number' ? step.value : 0);
	}
}

/** Owners of the groups, and what each costs: one change for a plug state, one to leave the socket. */
const openingOf = ({ states, sockets }: Catchers, change: number, leave: number): Opening => ({
	groups: states.slice(1).map(() => change),
	ownerOf: sockets.slice(1),
	owners: Array<number>(sockets.reduce((most, s) => Math.max(most, s + 1), 0)).fill(leave)
});

/**
 * The same without probes that no card needs, whatever a change weighs and a leg costs: a leg never
 * costs more than a probe, nor one at rest more than one with a plug changed.
 */
function* narrowed(found: Catchers): Generator<number, Narrowed> {
	const { catchers } = found;
	const rank = ({ isLeg, state }: Catcher): number => (!isLeg ? 3 : state === 0 ? 1 : 2);
	const columns = catchers.map((c) => ({
		covers: c.caught,
		cost: rank(c),
		group: c.state - 1
	}));
	const kept = yield* usefulColumns(columns, openingOf(found, 1, 1), LOOKS);
	const { positions, isWhole } = kept;
	return { ...found, catchers: positions.map((c) => catchers[c]!), isWhole };
}

/** Looks at every probe of the bench. */
export function* survey(bench: Bench): Generator<CardProgress, Surveyed[]> {
	const islands = islandsOf(bench);
	const alike = new Map(islands.map((island) => [island.key, island]));
	const states = [...alike.values()].map(
		(i) => columnsOf(i.bench, statesOfBench(i.bench)).states.length
	);
	const of = states.reduce((sum, n) => sum + n, 0);
	const known = new Map<string, Narrowed>();
	let before = 0;
	let done = 0;
	const progress = (): CardProgress => ({ stage: 'looking', done: before + done, of });
	for (const [i, [key, island]] of [...alike].entries()) {
		done = 0;
		const looking = catchersOf(island.bench, (state) => (done = state));
		const found = yield* resting(looking, progress);
		const of = found.catchers.length;
		const sorting = (done: number): CardProgress => ({ stage: 'sorting', done, of });
		known.set(key, yield* resting(narrowed(found), sorting));
		before += states[i]!;
	}
	return islands.map((island) => ({ island, catchers: known.get(island.key)! }));
}

/** What a probe and a plug change weigh. */
export interface Weights {
	readonly probe: number;
	readonly change: number;
}

/** Most elements of columns that the search of one island looks at: some seconds. */
const STEPS = 3_000_000;

/**
 * Most members and words that the rules look at on one island: some ten seconds. Where that does not do,
 * no search could go through what is left, and the best card that is found at once has to do.
 */
const LOOKS = 2_000_000_000;

interface Solved {
	readonly chosen: readonly Catcher[];
	readonly cost: number;
	readonly exact: boolean;
}

/** The cheapest probes of an island, in parts of a probe. `leave`: what it weighs to leave a socket. */
function* solve(
	found: Narrowed,
	price: Price,
	weights: Weights,
	leave: number
): Generator<void, Solved> {
	const { catchers } = found;
	const costOf = ({ isLeg, state }: Catcher): number => {
		const parts = !isLeg ? PARTS : state === 0 ? price.atRest : price.changed;
		return parts * weights.probe;
	};
	const columns = catchers.map((c) => ({
		covers: c.caught,
		cost: costOf(c),
		group: c.state - 1
	}));
	const opening = openingOf(found, PARTS * weights.change, PARTS * leave);
	const { chosen, cost, exact } = yield* cheapestCover(
		columns,
		opening,
		STEPS,
		found.isWhole ? LOOKS : 0
	);
	return { chosen: chosen.map((c) => catchers[c]!), cost, exact };
}

/** A probe that was chosen, by the bench's own names. */
export interface Chosen extends Probe {
	readonly expect: ProbeAnswer;
}
export interface Plan {
	readonly probes: readonly Chosen[];
	/** Whether it is certain that no card weighs less. */
	readonly exact: boolean;
	/** What no card can weigh less than; 0 where nothing is certain. */
	readonly bound: number;
}

/** The probes of all islands, legs put together two by two. */
function laidTogether(surveyed: readonly Surveyed[], solved: readonly Solved[]): Chosen[] {
	const chosen = solved.flatMap(({ chosen }, at) => chosen.map((c) => ({ ...c, at })));
	const named = ({ at, state, pair, expect }: (typeof chosen)[number]) => {
		const { island, catchers } = surveyed[at]!;
		const [a, b] = pair.map(island.node) as [string, string];
		return { when: island.when(catchers.states[state]!), pair: [a, b] as const, expect };
	};
	const legs = chosen.filter((c) => c.isLeg);
	const ends = legs.map(({ at, state }): Leg => ({ island: at, isAtRest: state === 0 }));
	const paired = pairLegs(ends).map(([first, second]): Chosen => {
		const one = named(legs[first]!);
		if (second === null) return one;
		return { ...one, pair: [one.pair[0], named(legs[second]!).pair[0]] };
	});
	return [...chosen.filter((c) => !c.isLeg).map(named), ...paired];
}

/** What the plug states of these probes come to in changes, by the sum above. */
function changesIn(probes: readonly Probe[]): number {
	const states = new Set(probes.map(({ when }) => JSON.stringify(when)));
	const sockets = new Set([...states].flatMap((s) => Object.keys(JSON.parse(s) as When)));
	states.delete('{}');
	return states.size + Math.max(0, sockets.size - 1);
}

/** The card that weighs least, or the least that was found. */
export function* cheapestPlan(
	surveyed: readonly Surveyed[],
	weights: Weights
): Generator<CardProgress, Plan> {
	const known = new Map<string, Solved>();
	const kinds = new Map(surveyed.map((s) => [s.island.key, s.catchers.catchers.length]));
	const of = [...kinds.values()].reduce((sum, n) => sum + n, 0);
	const progress = (): CardProgress => ({
		stage: 'choosing',
		done: Math.min(known.size, kinds.size),
		of
	});
	function* solvedAt(prices: readonly Price[], leave: number): Generator<CardProgress, Solved[]> {
		const solved: Solved[] = [];
		for (const [i, { island, catchers }] of surveyed.entries()) {
			const key = `${JSON.stringify([prices[i], leave])} ${island.key}`;
			if (!known.has(key)) {
				const solving = solve(catchers, prices[i]!, weights, leave);
				known.set(key, yield* resting(solving, progress));
			}
			solved.push(known.get(key)!);
		}
		return solved;
	}
	let best: readonly Chosen[] = [];
	let least = Infinity;
	// What no card can weigh less than, in parts of a probe.
	let bound = 0;
	const hasLegs = surveyed.map(({ catchers }) => catchers.catchers.some((c) => c.isLeg));
	for (const prices of pricesFor(hasLegs)) {
		const solved = yield* solvedAt(prices, weights.change);
		const probes = laidTogether(surveyed, solved);
		const changes = changesIn(probes);
		const weight = probes.length * weights.probe + changes * weights.change;
		if (weight < least) [best, least] = [probes, weight];
		let lower = costOf(solved) - PARTS * weights.change;
		// With no plug changed, none is left in place: the sum is then reckoned without leaving.
		if (changes === 0) lower = Math.max(lower, costOf(yield* solvedAt(prices, 0)));
		bound = Math.max(bound, lower);
		if (bound > PARTS * (least - 1)) break;
	}
	return { probes: best, exact: bound > PARTS * (least - 1), bound: Math.ceil(bound / PARTS) };
}

/** What the islands come to together; nothing is certain when one was not searched through. */
const costOf = (solved: readonly Solved[]): number =>
	solved.every((s) => s.exact) ? solved.reduce((sum, s) => sum + s.cost, 0) : 0;
