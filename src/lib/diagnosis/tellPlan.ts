/**
 * The fewest touches of a meter that tell kinds apart whose lugs are unmarked. A hypothesis is a
 * kind and a way its contacts may lie under the lugs a, b, c …; a question is two lugs, or a lug and
 * a part of the plug, in one plug state. The search goes deeper only when every plan of fewer
 * questions has failed, so what it returns is the fewest in the worst case. Exchanging lugs that are
 * still alike gives the same question again: those are asked once (the group that leaves the set of
 * hypotheses as it is).
 */
import type { PlugConductor, PlugState, SocketKind } from '../engine';
import { commonStates, countedContacts, viewOf } from './tell';

/** Touch lug `b`, and lug `a` or that part of the plug. Lugs are numbered from 0. */
export interface Question {
	readonly state: PlugState;
	readonly a: number | PlugConductor;
	readonly b: number;
}
export type Plan =
	| { readonly found: SocketKind }
	| { readonly ask: Question; readonly sounds: Plan; readonly silent: Plan };

/** Questions in the worst case. */
export const depthOf = (plan: Plan): number =>
	'found' in plan ? 0 : 1 + Math.max(depthOf(plan.sounds), depthOf(plan.silent));

/** Questions written down in the plan, whether they come to be asked or not. */
export const sizeOf = (plan: Plan): number =>
	'found' in plan ? 0 : 1 + sizeOf(plan.sounds) + sizeOf(plan.silent);

/** Every order of the numbers 0 to n − 1. */
export function ordersOf(n: number): number[][] {
	if (n === 0) return [[]];
	return ordersOf(n - 1).flatMap((order) =>
		[...Array(n).keys()].map((at) => [...order.slice(0, at), n - 1, ...order.slice(at)])
	);
}

/** Every question there is in these states; parts of the plug only where they sound on some lug. */
function questionsOf(kinds: readonly SocketKind[], states: readonly PlugState[]): Question[] {
	const lugs = [...countedContacts(kinds[0]!).keys()];
	return states.flatMap((state) => {
		const views = kinds.map((kind) => viewOf(kind, state));
		const parts = [...views[0]!.parts.keys()].filter((part) =>
			views.some((v) => v.lugs.includes(v.parts.get(part)!))
		);
		return [
			...lugs.flatMap((a) => lugs.slice(a + 1).map((b): Question => ({ state, a, b }))),
			...parts.flatMap((a) => lugs.map((b): Question => ({ state, a, b })))
		];
	});
}

interface Case {
	readonly kinds: readonly SocketKind[];
	readonly questions: readonly Question[];
	/** Hypotheses are numbered kind × number of orders + order. */
	readonly orders: readonly (readonly number[])[];
	/** Per question, whether each hypothesis sounds. */
	readonly sounds: readonly Uint8Array[];
	/** Per exchange of lugs, what becomes of each order, and of each question. */
	readonly exchanges: readonly Exchange[];
}
interface Exchange {
	readonly order: Uint16Array;
	readonly question: Uint16Array;
}

function soundsOf(
	kinds: readonly SocketKind[],
	orders: readonly (readonly number[])[],
	{ state, a, b }: Question
): Uint8Array {
	return Uint8Array.from(
		kinds.flatMap((kind) => {
			const { lugs, parts } = viewOf(kind, state);
			return orders.map((order) => {
				const net = typeof a === 'number' ? lugs[order[a]!] : parts.get(a);
				return net === lugs[order[b]!] ? 1 : 0;
			});
		})
	);
}

const questionKey = ({ state, a, b }: Question): string =>
	typeof a === 'number' && a > b ? `${state} ${b} ${a}` : `${state} ${a} ${b}`;

/** Lug i becomes lug `to[i]`: the order in which the contacts lie moves along. */
function exchangeOf(
	to: readonly number[],
	orders: readonly (readonly number[])[],
	questions: readonly Question[]
): Exchange {
	const at = new Map(orders.map((order, i) => [order.join(), i]));
	const askedAt = new Map(questions.map((q, i) => [questionKey(q), i]));
	const moved = (order: readonly number[]): number[] => {
		const out: number[] = [];
		order.forEach((contact, lug) => (out[to[lug]!] = contact));
		return out;
	};
	return {
		order: Uint16Array.from(orders.map((order) => at.get(moved(order).join())!)),
		question: Uint16Array.from(
			questions.map(({ state, a, b }) => {
				const there = { state, a: typeof a === 'number' ? to[a]! : a, b: to[b]! };
				return askedAt.get(questionKey(there))!;
			})
		)
	};
}

function caseOf(kinds: readonly SocketKind[], states: readonly PlugState[]): Case {
	const orders = ordersOf(countedContacts(kinds[0]!).length);
	const questions = questionsOf(kinds, states);
	return {
		kinds,
		questions,
		orders,
		sounds: questions.map((q) => soundsOf(kinds, orders, q)),
		exchanges: orders.map((to) => exchangeOf(to, orders, questions))
	};
}

class Search {
	private readonly failed = new Map<string, number>();
	constructor(private readonly all: Case) {}

	/** A plan of at most `most` questions, or null. */
	plan(most: number): Plan | null {
		const every = [...Array(this.all.kinds.length * this.all.orders.length).keys()];
		return this.within(every, most, this.all.exchanges);
	}

	private kindOf = (hypothesis: number): number => Math.floor(hypothesis / this.all.orders.length);

	/** Exchanges that leave the set of hypotheses as it is. */
	private leaving(left: readonly number[], exchanges: readonly Exchange[]): Exchange[] {
		const n = this.all.orders.length;
		const has = new Uint8Array(this.all.kinds.length * n);
		for (const h of left) has[h] = 1;
		return exchanges.filter(({ order }) =>
			left.every((h) => has[this.kindOf(h) * n + order[h % n]!])
		);
	}

	/** Questions that split the set, no two of them alike, the most even split first. */
	private splitting(left: readonly number[], exchanges: readonly Exchange[]): number[] {
		const alike = new Uint8Array(this.all.questions.length);
		const found: { q: number; uneven: number }[] = [];
		this.all.sounds.forEach((sounds, q) => {
			if (alike[q]) return;
			for (const { question } of exchanges) alike[question[q]!] = 1;
			let yes = 0;
			for (const h of left) yes += sounds[h]!;
			if (yes > 0 && yes < left.length) found.push({ q, uneven: Math.abs(2 * yes - left.length) });
		});
		return found.sort((x, y) => x.uneven - y.uneven).map(({ q }) => q);
	}

	/** The one question that leaves a single kind on either side, or null. */
	private last(left: readonly number[]): Plan | null {
		const kinds = left.map(this.kindOf);
		const q = this.all.sounds.findIndex((sounds) => {
			const sided = [-1, -1];
			return left.every((h, i) => {
				const side = sounds[h]!;
				if (sided[side] === -1) sided[side] = kinds[i]!;
				return sided[side] === kinds[i];
			});
		});
		if (q < 0) return null;
		const found = (side: number): Plan => {
			const at = left.findIndex((h) => this.all.sounds[q]![h] === side);
			return { found: this.all.kinds[kinds[at]!]! };
		};
		return { ask: this.all.questions[q]!, sounds: found(1), silent: found(0) };
	}

	private within(left: number[], most: number, exchanges: readonly Exchange[]): Plan | null {
		const kind = this.kindOf(left[0]!);
		if (this.kindOf(left.at(-1)!) === kind) return { found: this.all.kinds[kind]! };
		if (most < 2) return most === 0 ? null : this.last(left);
		const key = left.join();
		if ((this.failed.get(key) ?? 0) >= most) return null;
		const still = most > 2 ? this.leaving(left, exchanges) : [];
		for (const q of this.splitting(left, still)) {
			const yes = left.filter((h) => this.all.sounds[q]![h]);
			const no = left.filter((h) => !this.all.sounds[q]![h]);
			const [hard, easy] = yes.length > no.length ? [yes, no] : [no, yes];
			const first = this.within(hard, most - 1, still);
			const second = first && this.within(easy, most - 1, still);
			if (!first || !second) continue;
			const [sounds, silent] = hard === yes ? [first, second] : [second, first];
			return { ask: this.all.questions[q]!, sounds, silent };
		}
		this.failed.set(key, most);
		return null;
	}
}

/** Subsets of the states, by their number. */
const subsetsOf = (states: readonly PlugState[]): PlugState[][] =>
	states
		.reduce<PlugState[][]>((sets, s) => [...sets, ...sets.map((set) => [...set, s])], [[]])
		.filter((set) => set.length > 0)
		.sort((a, b) => a.length - b.length);

/** Of the plans of that depth: fewest plug states first, then fewest questions written down. */
function simplest(kinds: readonly SocketKind[], states: readonly PlugState[], depth: number): Plan {
	const plans: { readonly states: number; readonly plan: Plan }[] = [];
	for (const set of subsetsOf(states)) {
		if (plans.length > 0 && plans[0]!.states < set.length) break;
		const plan = new Search(caseOf(kinds, set)).plan(depth);
		if (plan) plans.push({ states: set.length, plan });
	}
	return plans.map((p) => p.plan).reduce((a, b) => (sizeOf(b) < sizeOf(a) ? b : a));
}

/** More questions than this nobody works through by hand. */
const MOST = 8;

/**
 * A plan with the fewest questions in the worst case; among those, one with the fewest plug states.
 * Null if no plan of at most `most` questions tells the kinds apart in these states. All kinds must
 * have the same number of contacts; states that one of them cannot be in are left out.
 */
export function tellPlan(
	kinds: readonly SocketKind[],
	states?: readonly PlugState[],
	most: number = MOST
): Plan | null {
	const common = commonStates(kinds, states);
	const search = new Search(caseOf(kinds, common));
	for (let depth = 0; depth <= most; depth++)
		if (search.plan(depth)) return simplest(kinds, common, depth);
	return null;
}
