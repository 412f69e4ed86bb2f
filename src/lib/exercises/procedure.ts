/**
 * The steps of a safe test, and what an order of them would have done: a small state machine. It
 * knows a mains lead that is in or out, phantom power that is on, off or still held in the
 * capacitors, a meter that has been proven or not, and a line that has been proven dead or not.
 * Nothing here is work on mains beyond pulling the plug. Sources: prove the tester, test, prove it
 * again (HSE GS38, as digested); disconnect, secure, verify dead (EN 50110-1, as reported); never
 * measure ohms on a live circuit (Kuphaldt, Lessons in Electric Circuits, DC ch. 3 and 8, as digested).
 */
import { readMeter, type Bench, type NodeName } from '../engine';

/** What a step does, as the machine knows it. */
export const ACTIONS = [
	/** Talk, write down, look: nothing that the machine follows. */
	'nothing',
	'mute',
	'unmute',
	'phantom-off',
	'phantom-on',
	'unplug-mains',
	'plug-in-mains',
	/** Wait until what the capacitors hold has gone. */
	'wait',
	/** The meter on a known source. */
	'prove-meter',
	/** The meter on volts, on the line. */
	'test-volts',
	/** The meter on continuity or ohms, on the line. */
	'probe',
	/** Unscrew the plate or the box and reach in. */
	'open',
	'solder',
	/** A plug goes into the line's jack, or comes out of it. */
	'move-plug',
	/** Change a part. */
	'swap-part',
	/** Never right; here so that it can be refused. */
	'lift-earth'
] as const;
export type Action = (typeof ACTIONS)[number];

export interface Step {
	readonly id: string;
	readonly text: string;
	readonly does: Action;
	/** False: a step that should be left out. */
	readonly needed: boolean;
}
/** `first` comes before `then`, because of `why`. */
export interface Rule {
	readonly first: string;
	readonly then: string;
	readonly why: string;
}

export const CONSEQUENCES = [
	'live-probe',
	'mains-probe',
	'not-proven-dead',
	'unproven-meter',
	'not-proven-again',
	'still-live',
	'opened-powered',
	'soldered-live',
	'plug-meets-phantom',
	'thump',
	'swapped-blind',
	'lost-earth'
] as const;
export type ConsequenceKind = (typeof CONSEQUENCES)[number];

/** What came of one step. */
export interface Consequence {
	readonly kind: ConsequenceKind;
	/** The step's id, and its place in the learner's order from 0. */
	readonly step: string;
	readonly at: number;
	readonly hazard: boolean;
	/** What stood between the probes, volts, where that is the point. */
	readonly volts?: number;
}
/** Where things stand before a step. */
export interface Situation {
	readonly mains: boolean;
	/** The switch of the supply. */
	readonly phantom: boolean;
	/** The line carries phantom voltage: the supply is on, or its capacitors still hold it. */
	readonly charged: boolean;
	readonly muted: boolean;
	/** The meter was proven on a known source, and nothing was tested since. */
	readonly proven: boolean;
	/** Tested with a proven meter and found dead; the meter has not been proven again yet. */
	readonly foundDead: boolean;
	/** Found dead, and the meter proven again. */
	readonly provenDead: boolean;
	readonly probed: boolean;
}

const HAZARDS: readonly ConsequenceKind[] = [
	'live-probe',
	'mains-probe',
	'opened-powered',
	'soldered-live',
	'plug-meets-phantom',
	'lost-earth'
];

/** As it is before the first step: everything is plugged in, and phantom is as the bench has it. */
export function startOf(bench: Bench): Situation {
	const phantom = bench.devices.some((d) => d.phantom);
	return {
		mains: true,
		phantom,
		charged: phantom,
		muted: false,
		proven: false,
		foundDead: false,
		provenDead: false,
		probed: false
	};
}

/** The bench as a meter finds it in that situation: phantom power only while the line is charged. */
export const benchIn = (bench: Bench, { charged }: Situation): Bench =>
	charged
		? bench
		: { ...bench, devices: bench.devices.map((d) => (d.phantom ? { ...d, phantom: false } : d)) };

const ALIVE = { foundDead: false, provenDead: false } as const;

/** Where things stand after the step. */
function after(s: Situation, does: Action, volts: number): Situation {
	switch (does) {
		case 'mute':
			return { ...s, muted: true };
		case 'unmute':
			return { ...s, muted: false };
		case 'phantom-off':
			return { ...s, phantom: false };
		case 'phantom-on':
			return { ...s, phantom: true, charged: s.charged || s.mains, ...ALIVE };
		case 'unplug-mains':
			return { ...s, mains: false };
		case 'plug-in-mains':
			return { ...s, mains: true, charged: s.charged || s.phantom, ...ALIVE };
		case 'wait':
			return { ...s, charged: s.phantom && s.mains };
		case 'prove-meter':
			return { ...s, proven: true, foundDead: false, provenDead: s.provenDead || s.foundDead };
		case 'test-volts':
			return { ...s, proven: false, foundDead: s.proven && volts === 0, provenDead: false };
		case 'probe':
			return { ...s, probed: true };
		default:
			return s;
	}
}

type Found = readonly [ConsequenceKind, number?];

/** A hand on the line: what comes of it if the line is live, or was never proven dead. */
function touching(s: Situation, live: ConsequenceKind, volts: number): Found[] {
	const unproven: Found = s.foundDead ? ['not-proven-again'] : ['not-proven-dead'];
	return [...(volts > 0 ? [[live, volts] as Found] : []), ...(s.provenDead ? [] : [unproven])];
}

/** What comes of a step in that situation. */
function findings(s: Situation, does: Action, volts: number): Found[] {
	switch (does) {
		case 'test-volts':
			return [
				...(s.proven ? [] : [['unproven-meter'] as Found]),
				...(volts > 0 ? [['still-live', volts] as Found] : [])
			];
		case 'probe':
			return [...(s.mains ? [['mains-probe'] as Found] : []), ...touching(s, 'live-probe', volts)];
		case 'solder':
			return touching(s, 'soldered-live', volts);
		case 'open':
			return s.mains ? [['opened-powered']] : [];
		case 'move-plug':
			return [
				...(volts > 0 ? [['plug-meets-phantom', volts] as Found] : []),
				...(s.muted || !s.mains ? [] : [['thump'] as Found])
			];
		case 'swap-part':
			return s.probed ? [] : [['swapped-blind']];
		case 'phantom-off':
		case 'phantom-on':
			return s.muted || !s.mains ? [] : [['thump']];
		case 'lift-earth':
			return [['lost-earth']];
		default:
			return [];
	}
}

/** Less than this between the probes counts as nothing, volts: a meter shows it as 0. */
const NOTHING = 0.05;

/** What stands between the probes, volts, and 0 for next to nothing. */
function voltsAt(bench: Bench, s: Situation, [a, b]: readonly [NodeName, NodeName]): number {
	const volts = Math.abs(readMeter(benchIn(bench, s), 'volts', a, b).volts ?? 0);
	return volts < NOTHING ? 0 : volts;
}

export interface Played {
	readonly consequences: readonly Consequence[];
	/** The situation before each step, and after the last. */
	readonly situations: readonly Situation[];
}

/** Plays an order of steps from the start. */
export function play(
	bench: Bench,
	probes: readonly [NodeName, NodeName],
	order: readonly Step[]
): Played {
	const situations = [startOf(bench)];
	const consequences: Consequence[] = [];
	for (const [at, { id: step, does }] of order.entries()) {
		const now = situations[at]!;
		const volts = voltsAt(bench, now, probes);
		for (const [kind, seen] of findings(now, does, volts))
			consequences.push({
				kind,
				step,
				at,
				hazard: HAZARDS.includes(kind),
				...(seen !== undefined && { volts: seen })
			});
		situations.push(after(now, does, volts));
	}
	return { consequences, situations };
}
