/** How a hunt went, in words: what a reading told, what was given up, and par. */
import { BEEPS_UNDER, type Bench, type MeterMode, type Reading as MeterReading } from '../engine';
import { MOST_EXACT, type HuntStep, type Loss, type Par, type ToldStep } from '../diagnosis';
import { classesText, inFaults } from './classes';
import { andOf } from './names';
import { numberWords } from './numbers';
import { probeWords } from './real';

/** Nothing could follow from the reading: said at once, and why. */
export const WASTED = 'Wasted:';

/** What the reading did, in one line. */
export function toldWords({ before, after, sets, ruledOut, wasted, stands }: ToldStep): string {
	const left = `${after} left ${inFaults(after, sets - ruledOut)}`.trim();
	const did = wasted
		? `${WASTED} whatever the meter said there, nothing would follow from it. ${left}.`
		: `Ruled out ${before - after} of ${classesText(before)}; ${left}.`;
	if (stands === null) return did;
	return `${did} ${stands ? 'Your suspicion still stands.' : 'Your suspicion is ruled out.'}`;
}

/** `0.85 bit`, `1.00 probe`, `2.30 probes`. */
function lostText({ unit, lost }: Loss): string {
	const figure = lost.toFixed(2);
	const one = unit === 'bits' ? 'bit' : 'probe';
	return `${figure} ${Number(figure) <= 1 ? one : `${one}s`}`;
}

/** Less than this is rounding. */
const NOTHING = 0.005;

/** What was given up against the best probe in that very situation. */
export function regretWords(bench: Bench, { regret, wasted, best }: HuntStep): string {
	const better = best ? ` The best there: ${probeWords(bench, best)}` : '';
	if (wasted)
		return best
			? `Wasted, and counted here once: it gave up ${lostText(regret)}.${better}`
			: 'Wasted: one class was left already.';
	if (regret.lost < NOTHING) return 'No probe there tells more.';
	const lost =
		regret.unit === 'bits'
			? `Gave up ${lostText(regret)} against the best probe there.`
			: `Costs ${lostText(regret)} more on average than the best probe there.`;
	return `${lost}${better}`;
}

type Judged = Pick<HuntStep, 'wasted' | 'regret'>;

/** How many were wasted, and which. */
function wastedLine(steps: readonly Judged[]): string {
	const at = steps.flatMap(({ wasted }, i) => (wasted ? [`${i + 1}`] : []));
	if (at.length === 0)
		return steps.length === 1 ? 'It was not wasted.' : 'None of your probes was wasted.';
	if (steps.length === 1) return 'It was wasted.';
	return `${numberWords(at.length)} of your ${numberWords(steps.length)} probes ${at.length === 1 ? 'was' : 'were'} wasted: number ${andOf(at)}.`;
}

/** What all of them gave up together, and where most of it went. */
function lostLines(steps: readonly Judged[]): string[] {
	const sum = (unit: Loss['unit']): Loss => ({
		unit,
		lost: steps.reduce((n, { regret }) => n + (regret.unit === unit ? regret.lost : 0), 0)
	});
	const sums = [sum('bits'), sum('probes')].filter(({ lost }) => lost >= NOTHING);
	if (sums.length === 0)
		return [`${steps.length === 1 ? 'It' : 'Each'} was as good as the best probe there.`];
	const all = sums.map(lostText).join(' and ');
	const most = steps.reduce((at, s, i) => (s.regret.lost > steps[at]!.regret.lost ? i : at), 0);
	const where = `Most was lost with number ${most + 1}: ${lostText(steps[most]!.regret)}.`;
	return [
		`Given up against the best probe each time, together: ${all}.`,
		...(steps.length > 1 ? [where] : []),
		...(sums.length > 1
			? [
					`While more than ${MOST_EXACT} classes are left it is reckoned in bits, from there in probes; a probe tells at most one bit.`
				]
			: [])
	];
}

/**
 * The sum of a hunt: how many probes were wasted, what was given up, and where most.
 * `beside`: probes that said neither joined nor apart (volts, a live line).
 */
export function sumWords(steps: readonly Judged[], beside: number): string {
	const others =
		beside > 0
			? [
					`${numberWords(beside)} more told neither joined nor apart, and ${beside === 1 ? 'counts' : 'count'} as used all the same.`
				]
			: [];
	const own = steps.length > 0 ? [wastedLine(steps), ...lostLines(steps)] : [];
	return [...own, ...others].map((s) => s[0]!.toUpperCase() + s.slice(1)).join(' ');
}

/** Said where an answer is given: what it would be worth now. */
export function worthWords(used: number, left: number, settled: boolean): string {
	if (settled)
		return 'One class of faults is left, so your readings prove it. Any fault in it is accepted as the answer.';
	const still = `${classesText(left)} are still possible`;
	return used === 0
		? `Nothing is measured yet and ${still}: a name given now is a guess. Even a right guess proves nothing, and does not pass.`
		: `${still}: a name given now is a guess, and does not pass even if it is right.`;
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

/** A reading as the list of the hunt says it: what it counts as first, then the number; or what stands in the way. */
export function saidWords({ warning, ohms, beep, display }: MeterReading, mode: MeterMode): string {
	if (warning !== null) return warning;
	if (mode === 'volts') return display;
	const sounds = mode === 'continuity' ? beep : ohms !== null && ohms < BEEPS_UNDER;
	if (sounds) return mode === 'ohms' ? `sounds, ${display}` : 'sounds';
	return ohms === null ? 'silent' : `silent, ${display}`;
}
