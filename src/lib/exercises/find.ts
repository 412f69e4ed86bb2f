/**
 * Judging a hunt. Any fault that no probe can tell from the hidden one is right. Besides, the judge
 * says which faults of the list the learner's own readings left standing: a lucky guess is right,
 * but not proven.
 */
import {
	answerTo,
	classOf,
	faultListOf,
	probesOf,
	sameClass,
	signature,
	type Probe
} from '../diagnosis';
import { withFaults, type Fault } from '../engine';
import { truthOf } from './answers';
import type { FindExercise } from './exercise';
import type { Item } from './judged';
import { refuse, type Result } from './result';
import { faultKey, probesTaken } from './same';

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

const pars = new WeakMap<FindExercise, number>();

/**
 * Readings without which no plan can be sure: each says joined or apart, so n of them tell at most
 * 2ⁿ classes of hypotheses apart, the sound bench among them.
 */
export function parOf(exercise: FindExercise): number {
	const known = pars.get(exercise);
	if (known !== undefined) return known;
	const hypotheses = [[], ...faultsToName(exercise).map((f) => [f])];
	const classes = new Set(hypotheses.map((h) => signature(withFaults(exercise.bench, h))));
	const par = Math.ceil(Math.log2(classes.size));
	pars.set(exercise, par);
	return par;
}

/** What a right name is worth: less where the readings do not prove it, half where they were too many. */
const worthOf = (inTime: boolean, proven: boolean): number => (inTime ? (proven ? 1 : 0.75) : 0.5);

export function judgeHunt(
	exercise: FindExercise,
	named: Fault | null,
	probes: readonly Probe[]
): Result {
	const known = new Set(faultsToName(exercise).map(faultKey));
	if (named && !known.has(faultKey(named)))
		return refuse('that fault is not in the list of this bench');
	const own = probesTaken(probes);
	const { hidden, most } = exercise;
	const found = sameClass(exercise.bench, named ? [named] : [], [hidden]);
	const alike = classOf(exercise.bench, [hidden]);
	const singles = faultsToName(exercise).map((fault) => [fault] as const);
	const fitting = fittingOf(exercise, singles, own).map(([fault]) => fault);
	const soundFits = fittingOf(exercise, [[]], own).length > 0;
	const proven = !soundFits && fitting.length === alike.length;
	const used = own.length;
	const inTime = used <= most;
	const par = parOf(exercise);
	return {
		score: found ? worthOf(inTime, proven) : 0,
		passed: found && inTime,
		items: itemOf(exercise, named, own),
		find: { used, most, par, hidden, named, found, alike, fitting, soundFits, proven }
	};
}
