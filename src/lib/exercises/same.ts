/** When two pairs, states or readings are the same, whichever way round they are written. */
import type { Probe } from '../diagnosis/probes';
import type { When } from '../engine';

export const samePair = (x: readonly [string, string], y: readonly [string, string]): boolean =>
	(x[0] === y[0] && x[1] === y[1]) || (x[0] === y[1] && x[1] === y[0]);

const stateKey = (when: When): string =>
	JSON.stringify(Object.entries(when).sort(([a], [b]) => (a < b ? -1 : 1)));

export const sameWhen = (x: When, y: When): boolean => stateKey(x) === stateKey(y);

/** Readings taken, each once: the same pair in the same plug state costs one however often it is read. */
export const probesTaken = (probes: readonly Probe[]): Probe[] =>
	probes.filter(
		(p, i) => probes.findIndex((q) => samePair(p.pair, q.pair) && sameWhen(p.when, q.when)) === i
	);

/** One text per fault, the same whichever way round a pair is written. */
export { faultKeyOf as faultKey } from '../diagnosis/faults';
