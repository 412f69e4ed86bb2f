/**
 * Which lug is which on an unmarked socket. A hypothesis is a kind and a way its contacts lie under the
 * lugs; on ten lugs that is 10! ways, so they are counted and never listed. Contacts that sound with
 * each other are a block, and blocks take lugs apart from each other: a sum over sets of lugs (one bit
 * a lug), forwards and backwards, gives the exact number of ways that put a block on given lugs, and
 * with it what every question would tell. On up to six lugs all contacts are one block.
 */
import type { PlugConductor, PlugState, SocketKind } from '../engine';
import { commonStates, countedContacts, viewOf, type View } from './tell';
import type { Question } from './tellPlan';

/** A question and whether the meter sounded. */
export interface LugReading extends Question {
	readonly sounds: boolean;
}

/** Sockets of more lugs than this are asked lug against lug only without a plug. */
const ONE_BLOCK = 6;

interface Shape {
	readonly kind: SocketKind;
	readonly n: number;
	readonly views: ReadonlyMap<PlugState, View>;
	/** States in which lugs are touched against each other. */
	readonly pairStates: readonly PlugState[];
	/** Contacts by number; no two of different blocks sound in a pair state. */
	readonly blocks: readonly (readonly number[])[];
}

function blocksIn(n: number, views: readonly View[]): number[][] {
	const of = Array.from({ length: n }, (_, i) => i);
	for (const { lugs } of views)
		lugs.forEach((net, i) => {
			const first = lugs.indexOf(net);
			const [from, to] = [of[i]!, of[first]!];
			of.forEach((block, k) => block === from && (of[k] = to));
		});
	const by = [...new Set(of)].map((block) => [...of.keys()].filter((k) => of[k] === block));
	return n <= ONE_BLOCK ? [by.flat()] : by;
}

const shapes = new Map<string, Shape>();
function shapeOf(kind: SocketKind, states: readonly PlugState[]): Shape {
	const key = `${kind} ${states.join(' ')}`;
	const known = shapes.get(key);
	if (known) return known;
	const n = countedContacts(kind).length;
	const views = new Map(states.map((s) => [s, viewOf(kind, s)]));
	const pairStates = n <= ONE_BLOCK ? states : states.filter((s) => s === 'none');
	const blocks = blocksIn(
		n,
		pairStates.map((s) => views.get(s)!)
	);
	const made = { kind, n, views, pairStates, blocks };
	shapes.set(key, made);
	return made;
}

/** What is left of one kind. */
interface Left {
	readonly shape: Shape;
	/** Ways that agree with the readings. */
	readonly ways: number;
	/** Ways that put contact c under lug x, at `x * n + c`. */
	readonly at: Float64Array;
	/** By pair state: ways in which lugs x and y sound, at `x * n + y`, x before y. */
	readonly together: ReadonlyMap<PlugState, Float64Array>;
}

type Pairing = { readonly lugs: readonly number[]; readonly x: number; readonly y: number } & Pick<
	LugReading,
	'sounds'
>;

/** Contacts that each lug may be, as bits, by the readings against parts of the plug. */
function domainsOf({ n, views }: Shape, readings: readonly LugReading[]): number[] {
	const domains = Array.from({ length: n }, () => (1 << n) - 1);
	for (const { state, a, b, sounds } of readings) {
		if (typeof a === 'number') continue;
		const { lugs, parts } = views.get(state)!;
		const net = parts.get(a);
		lugs.forEach((of, c) => {
			if ((of === net) !== sounds) domains[b]! &= ~(1 << c);
		});
	}
	return domains;
}

/** Every way to put the block's contacts on lugs that no reading forbids; lugs in the block's order. */
function tuplesOf(
	block: readonly number[],
	{ n }: Shape,
	domains: readonly number[],
	pairings: readonly Pairing[]
): number[][] {
	const found: number[][] = [];
	const put: number[] = [];
	const contactAt = new Int8Array(n).fill(-1);
	const agrees = (lug: number): boolean =>
		pairings.every(({ lugs, x, y, sounds }) => {
			if (x !== lug && y !== lug) return true;
			const [c, d] = [contactAt[x]!, contactAt[y]!];
			return c < 0 || d < 0 || (lugs[c] === lugs[d]) === sounds;
		});
	/** A lug that sounds with another has it in the same block. */
	const isWhole = (): boolean =>
		pairings.every(({ x, y, sounds }) => !sounds || contactAt[x]! < 0 === contactAt[y]! < 0);
	const go = (i: number) => {
		if (i === block.length) {
			if (isWhole()) found.push([...put]);
			return;
		}
		const c = block[i]!;
		for (let lug = 0; lug < n; lug++) {
			if (contactAt[lug]! >= 0 || !(domains[lug]! & (1 << c))) continue;
			contactAt[lug] = c;
			if (agrees(lug)) {
				put.push(lug);
				go(i + 1);
				put.pop();
			}
			contactAt[lug] = -1;
		}
	};
	go(0);
	return found;
}

const maskOf = (lugs: readonly number[]): number =>
	lugs.reduce((mask, lug) => mask | (1 << lug), 0);

function countIn(shape: Shape, readings: readonly LugReading[]): Left {
	const { n, blocks, views, pairStates } = shape;
	const domains = domainsOf(shape, readings);
	const pairings = readings.flatMap(({ state, a, b, sounds }): Pairing[] =>
		typeof a === 'number' ? [{ lugs: views.get(state)!.lugs, x: a, y: b, sounds }] : []
	);
	const laid = blocks.map((block) =>
		tuplesOf(block, shape, domains, pairings).map((lugs) => ({ lugs, mask: maskOf(lugs) }))
	);
	// before[i]: ways to lay the blocks before i on just these lugs; after[i]: those from i on, on the rest.
	const before = blocks.map(() => new Float64Array(1 << n));
	const after = [...blocks, null].map(() => new Float64Array(1 << n));
	const full = (1 << n) - 1;
	const sizes = blocks.map((b) => b.length);
	const bitsOf = (mask: number): number => {
		let bits = 0;
		for (let m = mask; m; m &= m - 1) bits++;
		return bits;
	};
	before[0]![0] = 1;
	after[blocks.length]![full] = 1;
	let taken = 0;
	for (let i = 0; i + 1 < blocks.length; i++) {
		for (let used = 0; used <= full; used++) {
			const ways = before[i]![used]!;
			if (ways === 0 || bitsOf(used) !== taken) continue;
			for (const { mask } of laid[i]!) if (!(used & mask)) before[i + 1]![used | mask]! += ways;
		}
		taken += sizes[i]!;
	}
	const at = new Float64Array(n * n);
	const together = new Map(pairStates.map((s) => [s, new Float64Array(n * n)]));
	for (let i = blocks.length - 1; i >= 0; i--) {
		const block = blocks[i]!;
		for (const { lugs, mask } of laid[i]!) {
			let ways = 0;
			for (let used = 0; used <= full; used++) {
				if (used & mask || after[i + 1]![used | mask] === 0) continue;
				after[i]![used]! += after[i + 1]![used | mask]!;
				ways += before[i]![used]! * after[i + 1]![used | mask]!;
			}
			if (ways > 0) addUp(block, lugs, ways);
		}
	}
	function addUp(block: readonly number[], lugs: readonly number[], ways: number) {
		lugs.forEach((x, k) => {
			at[x * n + block[k]!]! += ways;
			for (let l = k + 1; l < lugs.length; l++)
				for (const [state, sums] of together) {
					const nets = views.get(state)!.lugs;
					const [low, high] = [Math.min(x, lugs[l]!), Math.max(x, lugs[l]!)];
					if (nets[block[k]!] === nets[block[l]!]) sums[low * n + high]! += ways;
				}
		});
	}
	return { shape, ways: after[0]![0]!, at, together };
}

/** A question with the chance that the meter sounds. */
export interface LugAdvice extends Question {
	readonly chance: number;
}
export interface LugKnowledge {
	readonly lugs: number;
	/** Kinds that agree with the readings, and their part of the belief; each began alike. */
	readonly kinds: readonly { readonly kind: SocketKind; readonly share: number }[];
	/** Kinds and ways together that agree. */
	readonly ways: number;
	/** Per lug, the contacts that it can still be. */
	readonly names: readonly (readonly string[])[];
	/** The question that tells most; null when none can tell more. */
	readonly next: LugAdvice | null;
}

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));

/** Every question there is: lug against lug, and each part of the plug that sounds anywhere. */
function questionsOf(shapes: readonly Shape[], states: readonly PlugState[]): Question[] {
	const { n, pairStates } = shapes[0]!;
	const lugs = Array.from({ length: n }, (_, i) => i);
	return states.flatMap((state) => {
		const views = shapes.map((s) => s.views.get(state)!);
		const parts = [...views[0]!.parts.keys()].filter((part: PlugConductor) =>
			views.some((v) => v.lugs.includes(v.parts.get(part)!))
		);
		const pairs = pairStates.includes(state)
			? lugs.flatMap((a) => lugs.slice(a + 1).map((b): Question => ({ state, a, b })))
			: [];
		return [...pairs, ...parts.flatMap((a) => lugs.map((b): Question => ({ state, a, b })))];
	});
}

function soundsIn({ shape, at, together }: Left, { state, a, b }: Question): number {
	const { n, views } = shape;
	if (typeof a === 'number') return together.get(state)![Math.min(a, b) * n + Math.max(a, b)]!;
	const { lugs, parts } = views.get(state)!;
	const net = parts.get(a);
	return lugs.reduce((sum, of, c) => sum + (of === net ? at[b * n + c]! : 0), 0);
}

/** Chances that differ by less are the same; the rest is rounding. */
const HAIR = 1e-9;

function bestOf(left: readonly Left[], states: readonly PlugState[], now: PlugState) {
	const weigh = (l: Left, ways: number) => ways / factorial(l.shape.n);
	const all = left.reduce((sum, l) => sum + l.ways, 0);
	const total = left.reduce((sum, l) => sum + weigh(l, l.ways), 0);
	let best: LugAdvice | null = null;
	const isBetter = (q: LugAdvice) => {
		if (!best) return true;
		const gain = Math.abs(best.chance - 0.5) - Math.abs(q.chance - 0.5);
		return gain > HAIR || (gain > -HAIR && q.state === now && best.state !== now);
	};
	for (const question of questionsOf(
		left.map((l) => l.shape),
		states
	)) {
		const sounds = left.map((l) => soundsIn(l, question));
		const yes = sounds.reduce((sum, ways) => sum + ways, 0);
		if (yes === 0 || yes === all) continue;
		const chance = sounds.reduce((sum, ways, i) => sum + weigh(left[i]!, ways), 0) / total;
		const asked = { ...question, chance };
		if (isBetter(asked)) best = asked;
	}
	return best;
}

/**
 * What the readings leave of the kinds, all of one number of lugs, and what to ask next. `states`: the
 * plugs at hand; `now`: what is in the socket, which is kept where another question tells no more.
 */
export function lugKnowledge(
	kinds: readonly SocketKind[],
	readings: readonly LugReading[],
	plugs?: readonly PlugState[],
	now: PlugState = readings.at(-1)?.state ?? 'none'
): LugKnowledge {
	const states = commonStates(kinds, plugs);
	const used = [...new Set([...states, ...readings.map((r) => r.state)])];
	const left = kinds
		.map((kind) => countIn(shapeOf(kind, used), readings))
		.filter((l) => l.ways > 0);
	const lugs = countedContacts(kinds[0]!).length;
	const ways = left.reduce((sum, l) => sum + l.ways, 0);
	const names = Array.from({ length: lugs }, (_, x) => [
		...new Set(
			left.flatMap(({ shape, at }) =>
				countedContacts(shape.kind).filter((_, c) => at[x * lugs + c]! > 0)
			)
		)
	]);
	return {
		lugs,
		kinds: left.map((l) => ({ kind: l.shape.kind, share: l.ways / ways })),
		ways,
		names,
		next: left.length > 0 ? bestOf(left, states, now) : null
	};
}

/**
 * A reading that must sound if what the silent ones say is so: a plug that is not home and a probe that
 * does not touch give silence too. Null where nothing rests on silence alone, or no reading would prove it.
 */
export function lugToProve(
	kinds: readonly SocketKind[],
	readings: readonly LugReading[]
): LugAdvice | null {
	const states = [...new Set<PlugState>([...commonStates(kinds), ...readings.map((r) => r.state)])];
	const left = kinds
		.map((kind) => countIn(shapeOf(kind, states), readings))
		.filter((l) => l.ways > 0);
	if (left.length === 0) return null;
	const ways = left.reduce((sum, l) => sum + l.ways, 0);
	for (const state of silentStates(readings)) {
		const sure = questionsOf(
			left.map((l) => l.shape),
			[state]
		).find((q) => left.reduce((sum, l) => sum + soundsIn(l, q), 0) === ways);
		if (sure) return { ...sure, chance: 1 };
	}
	return null;
}

/** Plugs with which nothing has beeped, the last one first; the bare socket too where nothing has at all. */
export function silentStates(readings: readonly LugReading[]): PlugState[] {
	const used = [...new Set(readings.map((r) => r.state).reverse())];
	const none = readings.every((r) => !r.sounds);
	return used.filter(
		(state) => (none || state !== 'none') && !readings.some((r) => r.state === state && r.sounds)
	);
}

/** Readings, by their place, that no kind satisfies together: none can be left out. Empty where all agree. */
export function lugConflict(
	kinds: readonly SocketKind[],
	readings: readonly LugReading[],
	plugs?: readonly PlugState[]
): number[] {
	const states = [...new Set([...commonStates(kinds, plugs), ...readings.map((r) => r.state)])];
	const fails = (at: readonly number[]): boolean =>
		kinds.every(
			(kind) =>
				countIn(
					shapeOf(kind, states),
					at.map((i) => readings[i]!)
				).ways === 0
		);
	const every = [...readings.keys()];
	if (!fails(every)) return [];
	for (const i of every) if (fails([i])) return [i];
	for (const i of every) for (const j of every) if (i < j && fails([i, j])) return [i, j];
	return every.reduceRight((kept, i) => {
		const without = kept.filter((k) => k !== i);
		return fails(without) ? without : kept;
	}, every);
}
