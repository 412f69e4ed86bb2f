/** How a hunt went, in words: what a reading told, what was given up, and par. */
import type { Bench, MeterMode, Reading as MeterReading } from '../engine';
import { MOST_EXACT, type HuntStep, type Par, type ToldStep } from '../diagnosis';
import { probeWords } from './real';

/** What the reading did, in one line. */
export function toldWords({ before, after, wasted, stands }: ToldStep): string {
	const did = wasted
		? 'Wasted: whatever the meter said there, nothing would follow from it.'
		: `Ruled out ${before - after} of ${before} classes of faults; ${after} left.`;
	if (stands === null) return did;
	return `${did} ${stands ? 'Your suspicion still stands.' : 'Your suspicion is ruled out.'}`;
}

/** What was given up against the best probe in that very situation. */
export function regretWords(bench: Bench, { regret, wasted, best }: HuntStep): string {
	const better = best ? ` The best there: ${probeWords(bench, best)}` : '';
	if (wasted)
		return best
			? `Wasted, and counted here once.${better}`
			: 'Not needed: one class was left already.';
	if (regret.lost < 0.005) return 'No probe there tells more.';
	const lost =
		regret.unit === 'bits'
			? `Gave up ${regret.lost.toFixed(2)} bit against the best probe there.`
			: `Costs ${regret.lost.toFixed(2)} probes more on average than the best probe there.`;
	return `${lost}${better}`;
}

/** Par, and whether it is the optimum or the greedy plan's figure. */
export function parWords({ probes, exact, bounds }: Par): string {
	if (probes === null) return 'So many classes are possible that no par is worked out.';
	const figure = `Par is ${probes.toFixed(1)} probes on average over all the faults in question`;
	return exact
		? `${figure}: the exact optimum, no plan has fewer.`
		: `${figure}: the figure of the greedy plan, which always takes the most telling probe. The optimum may be a little lower; it is not under ${bounds.huffman.toFixed(1)}.`;
}

/** What the hunt beside the learner's is. */
export const bestWords = ({ exact }: Par): string =>
	exact
		? 'The best hunt knows what you were told, and not the fault. A lucky or a well-aimed hunt can be shorter.'
		: `The best hunt knows what you were told, and not the fault. It takes the most telling probe until ${MOST_EXACT} classes are left, and the optimum from there. A lucky or a well-aimed hunt can be shorter.`;

/** A reading as the list of the hunt says it: sounds or silent, or what the meter shows instead. */
export function saidWords({ warning, ohms, beep, display }: MeterReading, mode: MeterMode): string {
	if (warning !== null) return warning;
	if (mode === 'volts') return display;
	if (mode === 'continuity' && beep) return 'sounds';
	if (ohms === null) return 'silent';
	return mode === 'ohms' ? display : `silent, ${display}`;
}
