/**
 * Judging a hunt. Any fault that no probe can tell from the hidden one is right. Besides, the judge
 * says which faults of the list the symptom and the learner's own readings left standing: a lucky
 * guess is right, but not proven. Something is known to be wrong, so a sound bench explains nothing.
 */
import {
	agreesWith,
	answerTo,
	classOf,
	faultListOf,
	fewestToProve,
	isInQuestion,
	probesOf,
	sameClass,
	suspectsOf,
	type Probe,
	type Reading
} from '../diagnosis';
import { withFaults, type Fault } from '../engine';
import { truthOf } from './answers';
import type { FindExercise } from './exercise';
import type { Item } from './judged';
import { refuse, type Result } from './result';
import { faultKey, probesTaken } from './same';

/** The faults to choose from: those of the bench without the hidden one. */
export const faultsToName = (exercise: FindExercise): Fault[] => faultListOf(exercise.bench);

/** The faults of the list that agree with the symptom and with every reading taken. */
function fittingOf(exercise: FindExercise, probes: readonly Probe[]): Fault[] {
	const { symptom } = exercise;
	const truth = truthOf(exercise);
	const read = probes.map((probe): Reading => ({ ...probe, answer: answerTo(truth, probe) }));
	return faultsToName(exercise).filter((fault) => {
		const bench = withFaults(exercise.bench, [fault]);
		const says = (reading: Reading) => answerTo(bench, reading) === reading.answer;
		return isInQuestion(symptom, fault) && agreesWith(symptom, says) && read.every(says);
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

const proofs = new WeakMap<FindExercise, number | null>();

/** The fewest readings that prove the hidden fault; null if that could not be made sure of. */
export function fewestProofOf(exercise: FindExercise): number | null {
	const known = proofs.get(exercise);
	if (known !== undefined) return known;
	const suspects = suspectsOf(exercise.bench, exercise.symptom);
	const hidden = suspects.faults.findIndex((f) => faultKey(f) === faultKey(exercise.hidden));
	const proof = hidden < 0 ? null : fewestToProve(suspects, suspects.classOfSet([hidden]));
	const fewest = proof?.length ?? null;
	proofs.set(exercise, fewest);
	return fewest;
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
	const fitting = fittingOf(exercise, own);
	const inClass = new Set(alike.map(faultKey));
	const proven = fitting.every((fault) => inClass.has(faultKey(fault)));
	const used = own.length;
	const inTime = used <= most;
	const fewest = fewestProofOf(exercise);
	return {
		score: found ? worthOf(inTime, proven) : 0,
		passed: found && inTime,
		items: itemOf(exercise, named, own),
		find: { used, most, fewest, hidden, named, found, alike, fitting, proven }
	};
}
