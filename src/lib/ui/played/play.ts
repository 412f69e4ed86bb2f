/**
 * What is played back of a wrong answer: a bench in the state that shows it, and two nodes on it. The
 * way between them comes from the engine, one conductor after another, and stops where a gap is open.
 */
import { litPath, NOTHING_LIT, type Lit } from '../../diagram';
import {
	EMPTY_BENCH,
	fits,
	inState,
	isJoined,
	nodesOfBench,
	PANEL,
	pathBetween,
	splitNode,
	type Bench,
	type Conductor,
	type Gap,
	type NodeName,
	type PathAnswer,
	type PlugKind
} from '../../engine';
import {
	nodeOfLug,
	replayBench,
	type Answer,
	type ChooseExercise,
	type Exercise,
	type Item,
	type NeedFailure,
	type Option
} from '../../exercises';
import type { Line } from '../../words';

export interface Play {
	readonly bench: Bench;
	/** Where the probes stand; null where there is only the state to see. */
	readonly pair: readonly [NodeName, NodeName] | null;
}

/** Terminals of two devices that answer each other, the telling ones first. */
const LEGS = [
	['hot', 'hot'],
	['cold', 'cold'],
	['hot', 'cold'],
	['cold', 'hot'],
	['hot', 'shield'],
	['shield', 'hot'],
	['cold', 'shield'],
	['shield', 'shield'],
	['shell', 'shield']
] as const;

/** Two nodes that show why an input hears a source so: where its way is cut, or the way it has. */
function legOf(bench: Bench, { pair: [input, source], found, wanted }: Item) {
	const nodes = new Set(nodesOfBench(bench));
	const legs = LEGS.map(([s, i]) => [`${source}.${s}`, `${input}.${i}`] as const).filter((leg) =>
		leg.every((node) => nodes.has(node))
	);
	const isOn = ([a, b]: readonly [NodeName, NodeName]) => isJoined(bench, a, b);
	const straight = legs.filter(([a, b]) => splitNode(a)[1] === splitNode(b)[1]);
	const crossed = legs.filter((leg) => !straight.includes(leg));
	// Nothing is cut and nothing is heard: then the source is shorted.
	const shorts = [source, input].flatMap((d) =>
		['cold', 'shield', 'shell'].map((leg) => [`${d}.hot`, `${d}.${leg}`] as const)
	);
	const short = shorts.find((pair) => pair.every((node) => nodes.has(node)) && isOn(pair));
	if (found === 'deaf' || wanted === 'hears')
		return straight.find((l) => !isOn(l)) ?? short ?? legs[0];
	if (found === 'polarity -') return crossed.find(isOn) ?? legs.find(isOn);
	return legs.find(isOn) ?? legs[0];
}

/** A judged thing as it stood: its bench, and its two nodes. */
export function playOfItem(exercise: Exercise, answer: Answer, item: Item): Play {
	const bench = replayBench(exercise, answer, item);
	const isEar = item.pair.every((name) => !name.includes('.') && name !== PANEL);
	return { bench, pair: isEar ? (legOf(bench, item) ?? null) : item.pair };
}

/** The plug that a need speaks of, and `none` for a need about the empty socket. */
function plugOf({ need }: NeedFailure): 'none' | PlugKind {
	if (need.need === 'behaves') return need.with;
	return need.need === 'meets' || need.need === 'takes' ? need.plug : 'none';
}

/** A variant alone, with the plug in it that shows what it fails. */
export function playOfOption(exercise: ChooseExercise, option: Option, fail?: NeedFailure): Play {
	const sockets = exercise.bench.sockets.filter((s) => option.sockets.includes(s.id));
	const bench: Bench = { ...EMPTY_BENCH, panel: exercise.bench.panel, sockets };
	if (!fail) return { bench, pair: null };
	const plug = plugOf(fail);
	const socket = sockets.find((s) => plug === 'none' || fits(plug, s.kind));
	if (!socket) return { bench, pair: null };
	const there = inState(bench, { [socket.id]: plug });
	const pair: Play['pair'] =
		fail.need.need === 'sleeve-off-panel'
			? [`${sockets.find((s) => isJoined(bench, `${s.id}.S`, PANEL))?.id}.S`, PANEL]
			: fail.pair
				? [`${socket.id}.${fail.pair[0]}`, `${socket.id}.${fail.pair[1]}`]
				: null;
	return { bench: there, pair };
}

/** What can be played of one wrong line; null where there is nothing but words. */
export function playOfLine(
	exercise: Exercise,
	answer: Answer,
	line: Line,
	items: readonly Item[],
	failsOf: (option: string) => readonly NeedFailure[]
): Play | null {
	if (line.item) return playOfItem(exercise, answer, line.item);
	if (exercise.kind === 'choose' && line.option) {
		const option = exercise.options.find((o) => o.id === line.option)!;
		const fails = failsOf(option.id);
		const told = fails.find((f) => f.pair ?? f.need.need === 'sleeve-off-panel');
		return playOfOption(exercise, option, told ?? fails[0]);
	}
	if (exercise.kind === 'name' && line.lug) {
		const node = nodeOfLug(exercise, line.lug);
		const item = items.find((i) => i.pair.includes(node)) ?? items[0];
		return item ? playOfItem(exercise, answer, item) : null;
	}
	return null;
}

const isGap = (x: Conductor | Gap): x is Gap => !('ohms' in x);

export interface Shown {
	readonly lit: Lit;
	/** Ends of every gap that stands open. */
	readonly gaps: readonly (readonly [NodeName, NodeName])[];
	/** Ends of what is lit and drawn by no wire: bridges, and a plug's parts on their contacts. */
	readonly joints: readonly (readonly [NodeName, NodeName])[];
}
/** How many conductors of the way can be lit: all, or those before the first gap. */
export function reachOf(answer: PathAnswer): number {
	if (answer.kind === 'joined') return answer.steps.length;
	if (answer.kind !== 'parted') return 0;
	return answer.steps.findIndex((s) => isGap(s.through));
}
/** The way with its first `upTo` conductors lit; its gaps are marked once it is lit as far as it goes. */
export function shownOf(
	answer: PathAnswer,
	upTo: number,
	pair: readonly [NodeName, NodeName]
): Shown {
	if (answer.kind === 'same') return { lit: NOTHING_LIT, gaps: [], joints: [] };
	if (answer.kind === 'nothing') return { lit: NOTHING_LIT, gaps: [pair], joints: [] };
	const isAll = upTo >= reachOf(answer);
	const steps = answer.steps
		.slice(0, Math.min(upTo, reachOf(answer)))
		.flatMap(({ through, ...ends }) => (isGap(through) ? [] : [{ ...ends, through }]));
	const lit = litPath({ kind: 'joined', steps, ohms: 0 });
	const gaps =
		answer.kind === 'parted' && isAll
			? answer.gaps.map((g): [NodeName, NodeName] => [g.a, g.b])
			: [];
	const joints = steps
		.filter((s) => ['bridge', 'touch', 'mate'].includes(s.through.reason.kind))
		.map((s): [NodeName, NodeName] => [s.from, s.to]);
	return { lit, gaps, joints };
}

/** The way between the two, by the engine. */
export const wayOf = ({ bench, pair }: Play): PathAnswer | null =>
	pair ? pathBetween(bench, pair[0], pair[1]) : null;

/** Sockets to look at from the side: those on the way in which a spring, pin or break contact has a part. */
export function socketsOnWay(
	bench: Bench,
	answer: PathAnswer | null,
	pair: Play['pair']
): string[] {
	const parts =
		answer?.kind === 'joined' || answer?.kind === 'parted'
			? answer.steps.flatMap(({ through: { reason: r } }) => ('socket' in r ? [r.socket] : []))
			: [];
	const own = (pair ?? []).map((node) => splitNode(node)[0]);
	const plugged = bench.plugs.flatMap((p) => (p.socket ? [p.socket] : []));
	const ids = [...new Set([...parts, ...own.filter((id) => plugged.includes(id))])];
	return ids.filter((id) => bench.sockets.some((s) => s.id === id));
}
