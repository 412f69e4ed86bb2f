/**
 * The test card: probes that together catch every single fault that any probe catches. A probe
 * catches the faults under which it answers otherwise than on the sound bench. Two aims: as few
 * probes as can be found, and among those as few plug changes; or least effort, where a plug change
 * counts as several probes. Probes stand state by state, the file's own first, so that no socket is
 * come to twice.
 */
import { byCodePoint, type Bench, type Fault, type When } from '../engine';
import { cheapestPlan, survey, type CardProgress, type Chosen, type Plan } from './cardSearch';
import type { Surveyed, Weights } from './cardSearch';
import { PARTS } from './legs';
import { faultKeyOf, faultListOf } from './faults';
import { probeNodes, statesOfBench, type Probe, type ProbeAnswer } from './probes';
import { columnsOf, plugChanges } from './setting';

export type { CardProgress } from './cardSearch';

/**
 * So many probes are as much effort as one plug change. Judgement: a probe is two touches and a tick,
 * a few seconds; for a change one lays both probes down, finds the socket, pulls or pushes a plug home
 * and takes the probes up again.
 */
export const PROBES_PER_CHANGE = 4;

export type CardAim = 'fewest-probes' | 'least-effort';

export interface CardProbe extends Probe {
	/** What a sound bench answers. */
	readonly expect: ProbeAnswer;
}
export interface Card {
	readonly aim: CardAim;
	readonly probes: readonly CardProbe[];
	readonly silent: readonly Fault[];
	/** Plugs to change on the way through the card, from the file's own state on. */
	readonly changes: number;
	/** Whether it is certain that no card is better by its aim: has fewer probes, or takes less effort. */
	readonly exact: boolean;
}
export type Cards = Readonly<Record<CardAim, Card>>;

/** Probes and plug changes as one number, in probes. */
export const effortOf = ({ probes, changes }: Pick<Card, 'probes' | 'changes'>): number =>
	probes.length + PROBES_PER_CHANGE * changes;

/** State by state in the order of the bench, and along the sockets in each. */
function inOrder(bench: Bench, probes: readonly Chosen[]): CardProbe[] {
	const states = statesOfBench(bench);
	const { of } = columnsOf(bench, states);
	const columnAt = new Map(states.map((when, i) => [JSON.stringify(when), of[i]!]));
	const placeOf = new Map(probeNodes(bench).map((node, i) => [node, i]));
	const keyed = probes.map(({ when, pair, expect }) => {
		const places = pair.map((node) => placeOf.get(node)!).sort((a, b) => a - b);
		const [a, b] = [...pair].sort(byCodePoint) as [string, string];
		const key = [columnAt.get(JSON.stringify(when))!, ...places];
		return { key, probe: { when, pair: [a, b] as const, expect } };
	});
	const compared = (x: readonly number[], y: readonly number[]) =>
		x.reduce((found, n, i) => found || n - y[i]!, 0);
	return keyed.sort((x, y) => compared(x.key, y.key)).map(({ probe }) => probe);
}

function changesOver(bench: Bench, probes: readonly Probe[]): number {
	let at: When = {};
	let changes = 0;
	for (const { when } of probes) {
		if (JSON.stringify(when) !== JSON.stringify(at)) changes += plugChanges(bench, at, when);
		at = when;
	}
	return changes;
}

function silentIn(bench: Bench, surveyed: readonly Surveyed[]): Fault[] {
	const silent = new Set(
		surveyed.flatMap(({ island, catchers }) =>
			catchers.silent.map((f) => faultKeyOf(island.fault(catchers.faults[f]!)))
		)
	);
	return faultListOf(bench).filter((fault) => silent.has(faultKeyOf(fault)));
}

/**
 * The weights of an aim. Where fewest probes are wanted, no number of changes outweighs a probe, nor
 * the smallest part of one that a bound may come to.
 */
function weightsFor(aim: CardAim, mostChanges: number): Weights {
	return aim === 'least-effort'
		? { probe: 1, change: PROBES_PER_CHANGE }
		: { probe: 2 * PARTS * (1 + mostChanges), change: 1 };
}

/** Whether no card can do with a probe less, however many changes it takes. */
const hasFewest = ({ bound, probes }: Plan, { probe, change }: Weights, mostChanges: number) =>
	bound > probe * (probes.length - 1) + change * mostChanges;

/** The cards for these aims. Rests at each `yield`, and says there how far it is. */
export function* makingCards(
	bench: Bench,
	aims: readonly CardAim[] = ['fewest-probes', 'least-effort']
): Generator<CardProgress, Partial<Cards>> {
	const surveyed = yield* survey(bench);
	const silent = silentIn(bench, surveyed);
	const mostChanges = 2 * statesOfBench(bench).length;
	const cards: Partial<Record<CardAim, Card>> = {};
	for (const aim of aims) {
		const weights = weightsFor(aim, mostChanges);
		const plan = yield* cheapestPlan(surveyed, weights);
		const probes = inOrder(bench, plan.probes);
		const isExact = aim === 'least-effort' ? plan.exact : hasFewest(plan, weights, mostChanges);
		const exact = probes.length === 0 || isExact;
		cards[aim] = { aim, probes, silent, changes: changesOver(bench, probes), exact };
	}
	return withTheBetter(cards);
}

/** Where a search was cut short, the other aim's card may take less effort. */
function withTheBetter(cards: Partial<Cards>): Partial<Cards> {
	const { 'fewest-probes': fewest, 'least-effort': least } = cards;
	if (!fewest || !least || effortOf(least) <= effortOf(fewest)) return cards;
	return { ...cards, 'least-effort': { ...fewest, aim: 'least-effort', exact: false } };
}

/** Both cards of a bench in one go. */
export function cardsOf(bench: Bench): Cards {
	const making = makingCards(bench);
	for (;;) {
		const step = making.next();
		if (step.done) return step.value as Cards;
	}
}

/** The test card of a bench. */
export function cardOf(bench: Bench, aim: CardAim = 'fewest-probes'): Card {
	if (aim === 'least-effort') return cardsOf(bench)[aim];
	const making = makingCards(bench, [aim]);
	for (;;) {
		const step = making.next();
		if (step.done) return step.value[aim]!;
	}
}
