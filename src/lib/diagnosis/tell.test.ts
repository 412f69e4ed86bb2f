/**
 * Telling kinds apart. What the eye sees and what sounds is written out by hand from the way the
 * parts are built; plans are walked for every way the lugs may lie, and their length is measured
 * against a bound that knows nothing of the search.
 */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS, type PlugState, type SocketKind } from '../engine';
import {
	BAG,
	commonStates,
	countedContacts,
	isSeenApart,
	lookAlikes,
	sightOf,
	signBetween,
	viewOf
} from './tell';
import { lookAlikeGroups, planFor } from './tellKept';
import { depthOf, ordersOf, sizeOf, tellPlan, type Plan, type Question } from './tellPlan';

describe('what the eye sees', () => {
	it('leaves two pairs of kinds alike, whose plugs and number of lugs are the same', () =>
		expect(lookAlikeGroups()).toEqual([
			['jack-trs', 'jack-ts-break'],
			['jack-ts-changeover', 'patch-jack']
		]));

	it('tells a female three-pin socket from a male one by its face', () => {
		expect(isSeenApart('three-pin-female', 'three-pin-male')).toBe(true);
		expect(sightOf('three-pin-female').contacts).toBe(sightOf('three-pin-male').contacts);
	});

	it('counts no chassis lug', () => {
		expect(sightOf('hybrid-9')).toEqual({
			contacts: 9,
			chassisLug: true,
			threePin: 'female',
			jack: true
		});
		expect(sightOf('patch-jack')).toMatchObject({ contacts: 5, chassisLug: false });
	});
});

/** [here, there, state, what is counted, here, there]: by hand from springs, breaks and profiles. */
const SIGNS: [SocketKind, SocketKind, PlugState, string, number, number][] = [
	['hybrid-9', 'hybrid-6', 'none', 'pairs', 3, 0],
	['hybrid-10', 'hybrid-9', 'none', 'pairs', 4, 3],
	['hybrid-6', 'hybrid-5', 'ts', 'pairs', 1, 0],
	['jack-ts-break', 'jack-trs', 'none', 'pairs', 1, 0],
	['patch-jack', 'jack-ts-changeover', 'none', 'pairs', 2, 1],
	['jack-trs-break', 'patch-jack', 'none', 'pairs', 3, 2],
	['jack-ts-changeover', 'jack-ts-break', 'ts', 'pairs', 1, 0],
	['jack-trs', 'jack-ts', 'ts', 'pairs', 1, 0]
];

describe('what the meter finds at unmarked lugs', () => {
	it.each(SIGNS)('tells %s from %s: state %s, %s, %i against %i', (a, b, state, what, x, y) => {
		expect(signBetween(a, b)).toEqual({ state, what, here: x, there: y });
		expect(signBetween(b, a)).toEqual({ state, what, here: y, there: x });
	});

	it('finds nothing between the two three-pin sockets: only the face tells', () =>
		expect(signBetween('three-pin-female', 'three-pin-male')).toBeNull());

	it('tells every two kinds apart that the eye leaves alike', () => {
		for (const kind of SOCKET_KINDS)
			for (const other of lookAlikes(kind)) expect(signBetween(kind, other)).not.toBeNull();
	});
});

/** Whether the question sounds on that kind with its contacts lying in that order. */
function sounds(kind: SocketKind, order: readonly number[], { state, a, b }: Question): boolean {
	const { lugs, parts } = viewOf(kind, state);
	const net = typeof a === 'number' ? lugs[order[a]!] : parts.get(a);
	return net === lugs[order[b]!];
}

function walked(plan: Plan, kind: SocketKind, order: readonly number[]): SocketKind {
	if ('found' in plan) return plan.found;
	return walked(sounds(kind, order, plan.ask) ? plan.sounds : plan.silent, kind, order);
}

const ordersOn = (kind: SocketKind) => ordersOf(countedContacts(kind).length);

/** Every question in these states, as a person could think of them. */
const everyQuestion = (kinds: readonly SocketKind[], states: readonly PlugState[]): Question[] =>
	commonStates(kinds, states).flatMap((state) => {
		const lugs = [...countedContacts(kinds[0]!).keys()];
		return [...lugs, ...viewOf(kinds[0]!, state).parts.keys()].flatMap((a) =>
			lugs.filter((b) => a !== b).map((b): Question => ({ state, a, b }))
		);
	});

/**
 * The fewest questions in the worst case, worked out the plain way: every question, every answer, no
 * use made of lugs that are alike. Infinity where more than `most` are needed.
 */
function plainDepth(kinds: readonly SocketKind[], states: readonly PlugState[], most: number) {
	const ways = kinds.flatMap((kind) => ordersOn(kind).map((order) => ({ kind, order })));
	const rows = everyQuestion(kinds, states).map((q) =>
		ways.map(({ kind, order }) => sounds(kind, order, q))
	);
	const answers = [...new Map(rows.map((row) => [row.join(), row])).values()];
	const failed = new Map<string, number>();
	const within = (left: readonly number[], depth: number): boolean => {
		if (left.every((i) => ways[i]!.kind === ways[left[0]!]!.kind)) return true;
		const key = left.join();
		if (depth === 0 || (failed.get(key) ?? 0) >= depth) return false;
		const splits = answers.some((row) => {
			const [yes, no] = [left.filter((i) => row[i]), left.filter((i) => !row[i])];
			return yes.length && no.length && within(yes, depth - 1) && within(no, depth - 1);
		});
		if (!splits) failed.set(key, depth);
		return splits;
	};
	for (let depth = 0; depth <= most; depth++) if (within([...ways.keys()], depth)) return depth;
	return Infinity;
}

/** Kinds, states and how deep the plain search can be let go in a second or so. */
const PLAIN: [SocketKind[], PlugState[], number][] = [
	[['jack-ts-break', 'jack-trs'], ['none'], 6],
	[['jack-ts-break', 'jack-trs'], ['ts'], 6],
	[['jack-ts-break', 'jack-trs'], ['trs'], 6],
	[['jack-ts-break', 'jack-trs'], ['none', 'ts'], 6],
	[['jack-ts-break', 'jack-trs'], ['shorting'], 6],
	[['jack-ts-break', 'jack-trs'], [...BAG, 'dummy', 'shorting'], 6],
	[['three-pin-female', 'jack-ts-break'], ['none'], 6],
	[['patch-jack', 'jack-ts-changeover'], ['none'], 4],
	[['patch-jack', 'jack-ts-changeover'], ['ts'], 3],
	[['patch-jack', 'jack-ts-changeover'], ['trs'], 3],
	[['patch-jack', 'jack-ts-changeover'], ['none', 'ts', 'trs'], 2],
	[['hybrid-5', 'patch-jack'], ['none'], 4]
];

describe('the fewest questions', () => {
	it.each(PLAIN)('for %j in %j are those of a plain search', (kinds, states, most) => {
		const plan = tellPlan(kinds, states, most);
		expect(plan ? depthOf(plan) : Infinity).toBe(plainDepth(kinds, states, most));
	});
});

describe.each(lookAlikeGroups())('a plan for %s and %s', (...kinds) => {
	const plan = tellPlan(kinds)!;

	it('names the kind, whichever lug is which', () => {
		for (const kind of kinds)
			for (const order of ordersOn(kind)) expect(walked(plan, kind, order)).toBe(kind);
	});

	it('would not be shorter with a dummy and a shorting plug', () => {
		const states: PlugState[] = [...BAG, 'dummy', 'shorting'];
		expect(tellPlan(kinds, states, depthOf(plan) - 1)).toBeNull();
	});

	it('is the plan that is kept', () => {
		for (const kind of kinds) expect(planFor(kind)).toEqual(plan);
	});
});

describe('plans', () => {
	it('are kept as the search finds them', async () => {
		const plans = lookAlikeGroups().map((kinds) => [kinds.join(' '), tellPlan(kinds)]);
		const text = `${JSON.stringify(Object.fromEntries(plans), null, '\t')}\n`;
		await expect(text).toMatchFileSnapshot('./tellPlans.json');
	});

	it('tell a patch jack from a changeover by the plug’s ring: five touches, no lug twice', () => {
		const plan = planFor('patch-jack')!;
		expect([depthOf(plan), sizeOf(plan)]).toEqual([5, 5]);
		for (let at = plan, lug = 0; 'ask' in at; at = at.silent, lug++) {
			expect(at.ask).toEqual({ state: 'trs', a: 'ring', b: lug });
			expect(at.sounds).toEqual({ found: 'patch-jack' });
		}
	});

	it('are not made where the eye is enough', () => {
		expect(planFor('hybrid-9')).toBeNull();
		expect(planFor('three-pin-male')).toBeNull();
	});

	it('do not exist for the two three-pin sockets, whatever one asks', () =>
		expect(tellPlan(['three-pin-female', 'three-pin-male'])).toBeNull());

	it('touch one lug with each other one to tell a hybrid of six from a jack with breaks', () => {
		const plan = tellPlan(['hybrid-6', 'jack-trs-break'], ['none'])!;
		expect([depthOf(plan), sizeOf(plan)]).toEqual([5, 5]);
	});
});
