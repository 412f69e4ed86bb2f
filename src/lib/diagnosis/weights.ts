/**
 * How likely each fault is before anything has been measured. No printed count of the faults of
 * hand-wired panels is known to us: these figures are judgement and common practice, and stand here
 * alone so that they can be read, shown and changed. What is behind them: of what fails on a rear
 * panel, broken and dry joints come first; contacts that a tired spring or dirt keeps open come
 * next; leads on the wrong lug and splashes of solder are rarer at any one place, but there are many
 * pairs of lugs.
 */
import type { Fault } from '../engine';

export type Suspect = 'sound' | Exclude<Fault['kind'], 'resistive' | 'break-dirty'>;

/** For one place (one wire, one pair of lugs, one contact): cases of each fault against cases of none. */
export const WEIGHTS: Readonly<Record<Suspect, number>> = {
	sound: 1000,
	open: 20,
	'break-stuck-open': 12,
	'spring-bent': 8,
	swap: 6,
	'break-stuck-closed': 6,
	bridge: 4
};

/** The odds of one fault. The two kinds that leave the nets alone are no suspects and weigh nothing. */
export const weightOf = ({ kind }: Fault): number =>
	kind === 'resistive' || kind === 'break-dirty' ? 0 : WEIGHTS[kind] / WEIGHTS.sound;

/**
 * The weight of a set before any reading: faults come independently of each other, so it is the
 * product of their odds, and a sound bench weighs 1. Not yet shared out to sum to 1.
 */
export const weightOfSet = (faults: readonly Fault[]): number =>
	faults.reduce((weight, fault) => weight * weightOf(fault), 1);
