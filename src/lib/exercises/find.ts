/**
 * Judging a hunt. Any fault that no probe can tell from the hidden one is right. Besides, the judge
 * says which faults of the list the learner's own readings left standing: a lucky guess is right,
 * but not proven.
 */
import { answerTo, classOf, faultListOf, probesOf, sameClass, type Probe } from '../diagnosis';
import { withFaults, type Fault } from '../engine';
import { truthOf } from './answers';
import type { FindExercise, Item, Judged } from './exercise';
import { samePair } from './predict';

/** One text per fault, the same whichever way round a pair is written. */
export function faultKey(fault: Fault): string {
	if (fault.kind === 'bridge') return `bridge ${[...fault.between].sort().join(' ')}`;
	if (fault.kind === 'swap') return `swap ${[...fault.contacts].sort().join(' ')}`;
	return 'wire' in fault ? `${fault.kind} ${fault.wire}` : `${fault.kind} ${fault.contact}`;
}

const stateKey = ({ when }: Probe): string =>
	JSON.stringify(Object.entries(when).sort(([a], [b]) => (a < b ? -1 : 1)));

/** Readings taken, each once: the same pair in the same plug state costs one however often it is read. */
export const probesTaken = (probes: readonly Probe[]): Probe[] =>
	probes.filter(
		(p, i) => probes.findIndex((q) => samePair(p.pair, q.pair) && stateKey(p) === stateKey(q)) === i
	);

/** The faults to choose from: those of the bench without the hidden one. */
export const faultsToName = (exercise: FindExercise): Fault[] => faultListOf(exercise.bench);

/** Which of these hypotheses, each a list of faults, agree with every reading taken. */
function fittingOf<H extends readonly Fault[]>(
	exercise: FindExercise,
	hypotheses: readonly H[],
	probes: readonly Probe[]
): H[] {
	const truth = truthOf(exercise);
	const read = probes.map((probe) => answerTo(truth, probe));
	return hypotheses.filter((faults) => {
		const bench = withFaults(exercise.bench, faults);
		return probes.every((probe, i) => answerTo(bench, probe) === read[i]);
	});
}

/** A probe that tells the bench with `named` from the one with the hidden fault, the learner's own first. */
function tellingProbe(exercise: FindExercise, named: readonly Fault[], own: readonly Probe[]) {
	const truth = truthOf(exercise);
	const bench = withFaults(exercise.bench, named);
	const tells = (p: Probe) => answerTo(truth, p) !== answerTo(bench, p);
	return own.find(tells) ?? probesOf(exercise.bench).find(tells);
}

function itemOf(exercise: FindExercise, named: Fault | null, own: readonly Probe[]): Item[] {
	const faults = named ? [named] : [];
	const right = sameClass(exercise.bench, faults, [exercise.hidden]);
	const probe = tellingProbe(exercise, right ? [] : faults, own);
	if (!probe) return [];
	const sounds = answerTo(truthOf(exercise), probe) === 'joined';
	const wanted = sounds ? 'sounds' : 'silent';
	const found = right === sounds ? 'sounds' : 'silent';
	return [{ right, ...probe, wanted, found, hazard: false, why: '' }];
}

export function judgeHunt(
	exercise: FindExercise,
	named: Fault | null,
	probes: readonly Probe[]
): Judged {
	const shared = { id: exercise.id, kind: exercise.kind, beliefs: [] };
	const known = new Set(faultsToName(exercise).map(faultKey));
	if (named && !known.has(faultKey(named)))
		return {
			...shared,
			score: 0,
			passed: false,
			items: [],
			refused: 'that fault is not in the list of this bench'
		};
	const own = probesTaken(probes);
	const { hidden, most } = exercise;
	const found = sameClass(exercise.bench, named ? [named] : [], [hidden]);
	const alike = classOf(exercise.bench, [hidden]);
	const singles = faultsToName(exercise).map((fault) => [fault] as const);
	const fitting = fittingOf(exercise, singles, own).map(([fault]) => fault);
	const soundFits = fittingOf(exercise, [[]], own).length > 0;
	const proven = !soundFits && fitting.length === alike.length;
	const inTime = own.length <= most;
	return {
		...shared,
		score: found ? (inTime ? 1 : 0.5) : 0,
		passed: found && inTime,
		items: itemOf(exercise, named, own),
		refused: null,
		find: { used: own.length, most, hidden, named, found, alike, fitting, soundFits, proven }
	};
}
