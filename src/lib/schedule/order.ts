/**
 * The order of soldering. One rule outranks all: each cup is heated once, with all of its conductors
 * in it. So a step is a cup, not a wire; every end that belongs there is bent into place first, and
 * no cup is opened again.
 *
 * Which cup comes next (common practice): jumpers of a socket first, while it still turns in the
 * hand; then wires to other places, once the panel is built; cups with a cable last, because a cable
 * is stiff, pulls at its joints and hides the face; then the cable's far ends. Within a stage, socket by
 * socket, and from the middle of the face outwards: a wire on an outer lug lies over the inner ones.
 */
import { DEVICES, PANEL, PLUGS, SOCKETS, splitNode, type Bench, type NodeName } from '../engine';
import { grouped } from './grouped';
import { runsOf, type Run } from './runs';

/** A cup or lug takes two conductors; a third one does not fit (common practice). */
export const MOST_IN_CUP = 2;

export const STAGES = ['jumpers', 'wires', 'cables', 'far-ends'] as const;
export type Stage = (typeof STAGES)[number];

/** What is soldered: a cup of a pin, a lug with an eye, the lug on the chassis, the panel's stud, a plug's or a device's own terminal. */
export type CupForm = 'cup' | 'lug' | 'chassis-lug' | 'stud' | 'plug' | 'terminal';

/** One conductor's end in a cup. */
export interface End {
	readonly name: string;
	/** Where its other end is. */
	readonly to: NodeName;
	/** Whether the other end has been soldered before: the conductor is done with this step. */
	readonly done: boolean;
}
export interface Step {
	readonly at: NodeName;
	readonly form: CupForm;
	readonly stage: Stage;
	/** Every conductor of the cup, in the order in which the ends go in: the innermost first. */
	readonly ends: readonly End[];
}

/**
 * How far from the middle of the rear a contact stands; lower is further in. It follows the drawing,
 * which is schematic: of a real part, the maker's drawing decides.
 */
const REACH: readonly (readonly string[])[] = [
	['3'],
	['R', 'tip'],
	['1N', 'T', 'S', 'C', 'ring'],
	['1', '2', 'TN', 'RN', 'SN', 'NC', 'NO', 'sleeve'],
	['G', 'shell', '']
];
/** Rank of a contact, 0 in the middle. */
export function reachOf(contact: string): number {
	const rank = REACH.findIndex((ring) => ring.includes(contact));
	return rank < 0 ? REACH.length : rank;
}

const CUPS: readonly string[] = ['1', '2', '3', '1N'];

interface Place {
	readonly form: CupForm;
	/** Its place in the bench file among sockets, panel, devices and plugs. */
	readonly owner: number;
	/** Its place among the contacts of its owner. */
	readonly contact: number;
	readonly reach: number;
	readonly isFar: boolean;
}

function placeOf(bench: Bench, node: NodeName): Place {
	const [id, contact] = splitNode(node);
	const { sockets, devices, plugs } = bench;
	const after = sockets.length + 1;
	if (node === PANEL)
		return { form: 'stud', owner: sockets.length, contact: 0, reach: reachOf(''), isFar: false };
	const s = sockets.findIndex((x) => x.id === id);
	if (s >= 0) {
		const at = SOCKETS[sockets[s]!.kind].contacts.indexOf(contact);
		const form = contact === 'G' ? 'chassis-lug' : CUPS.includes(contact) ? 'cup' : 'lug';
		return { form, owner: s, contact: at, reach: reachOf(contact), isFar: false };
	}
	const d = devices.findIndex((x) => x.id === id);
	if (d >= 0) {
		const at = DEVICES[devices[d]!.kind].terminals.indexOf(contact);
		return { form: 'terminal', owner: after + d, contact: at, reach: 0, isFar: true };
	}
	const p = plugs.findIndex((x) => x.id === id);
	const names: readonly string[] = PLUGS[plugs[p]!.kind].conductors;
	const owner = after + devices.length + p;
	const at = names.indexOf(contact);
	return { form: 'plug', owner, contact: at, reach: reachOf(contact), isFar: true };
}

interface Cup extends Place {
	readonly at: NodeName;
	readonly runs: readonly Run[];
	readonly stage: number;
	/** The longest core in it, mm; 0 without a cable. */
	readonly longest: number;
}

function stageOf(runs: readonly Run[], isFar: boolean): Stage {
	if (isFar) return 'far-ends';
	if (runs.some((r) => r.kind === 'core')) return 'cables';
	return runs.some((r) => r.kind === 'wire') ? 'wires' : 'jumpers';
}

const KINDS: readonly Run['kind'][] = ['jumper', 'wire', 'core'];

/** Into a cup: the shortest and stiffest first, the cable's core last and on top. */
const inwards = (runs: readonly Run[]): Run[] =>
	[...runs].sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || a.mm - b.mm);

function cupsOf(bench: Bench, runs: readonly Run[]): Cup[] {
	const ends = runs.flatMap((run) => [run.from, run.to].map((at) => ({ at, run })));
	return [...grouped(ends, (e) => e.at)].map(([at, here]): Cup => {
		const own = here.map((e) => e.run);
		const place = placeOf(bench, at);
		const stage = STAGES.indexOf(stageOf(own, place.isFar));
		const longest = Math.max(0, ...own.filter((r) => r.kind === 'core').map((r) => r.mm));
		return { ...place, at, runs: inwards(own), stage, longest };
	});
}

const byTurn = (a: Cup, b: Cup): number =>
	a.stage - b.stage ||
	a.owner - b.owner ||
	a.longest - b.longest ||
	a.reach - b.reach ||
	a.contact - b.contact;

/** The steps of soldering: every cup that a conductor lands on exactly once, with all that land there. */
export function orderOf(bench: Bench, runs: readonly Run[] = runsOf(bench)): Step[] {
	const soldered = new Set<NodeName>();
	return cupsOf(bench, runs)
		.sort(byTurn)
		.map((cup): Step => {
			const ends = cup.runs.map(({ name, from, to }): End => {
				const other = from === cup.at ? to : from;
				return { name, to: other, done: soldered.has(other) };
			});
			soldered.add(cup.at);
			return { at: cup.at, form: cup.form, stage: STAGES[cup.stage]!, ends };
		});
}
