/**
 * Judging a hunt. Any fault that no probe can tell from the hidden one is right. Besides, the judge
 * says which faults of the list the symptom and the learner's own readings left standing: a right
 * guess is worth the chance it had and is no pass, since only what readings leave alone is found.
 * Something is known to be wrong, so a sound bench explains nothing.
 */
import {
	agreeing,
	agreesWith,
	answerTo,
	classOf,
	extrasOf,
	faultListOf,
	fewestToProve,
	isInQuestion,
	probesOf,
	sameClass,
	suspectsOf,
	toldReadings,
	weightIn,
	type Dictionary,
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

/** The readings that these probes give on the bench with the hidden fault. */
function readingsOf(exercise: FindExercise, probes: readonly Probe[]): Reading[] {
	const truth = truthOf(exercise);
	return probes.map((probe): Reading => ({ ...probe, answer: answerTo(truth, probe) }));
}

/** The faults of the list that agree with the symptom and with every reading taken. */
function fittingOf(exercise: FindExercise, read: readonly Reading[]): Fault[] {
	const { symptom } = exercise;
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

const plain = new WeakMap<FindExercise, Dictionary>();

/** The faults in question, with the odd probes among these; without any the same ones each time. */
function suspectsFor(exercise: FindExercise, readings: readonly Reading[] = []): Dictionary {
	const { bench, symptom } = exercise;
	if (extrasOf(bench, readings).length > 0)
		return suspectsOf(bench, symptom, extrasOf(bench, [...toldReadings(symptom), ...readings]));
	const known = plain.get(exercise) ?? suspectsOf(bench, symptom);
	plain.set(exercise, known);
	return known;
}

/** The class of the hidden fault among the suspects; −1 if nobody could name it. */
export function hiddenClassOf(
	{ faults, classOfSet }: Dictionary,
	{ hidden }: FindExercise
): number {
	const number = faults.findIndex((f) => faultKey(f) === faultKey(hidden));
	return number < 0 ? -1 : classOfSet([number]);
}

/** How many classes the readings left, and the chance that the hidden one had among them. */
function leftBy(exercise: FindExercise, readings: readonly Reading[]) {
	const suspects = suspectsFor(exercise, readings);
	const ids = agreeing(suspects, readings);
	const hidden = hiddenClassOf(suspects, exercise);
	const own = ids.filter((id) => id === hidden);
	const total = weightIn(suspects, ids);
	return { classes: ids.length, chance: total > 0 ? weightIn(suspects, own) / total : 0 };
}

const proofs = new WeakMap<FindExercise, number | null>();

/** The fewest readings that prove the hidden fault; null if that could not be made sure of. */
export function fewestProofOf(exercise: FindExercise): number | null {
	const known = proofs.get(exercise);
	if (known !== undefined) return known;
	const suspects = suspectsFor(exercise);
	const hidden = hiddenClassOf(suspects, exercise);
	const fewest = hidden < 0 ? null : (fewestToProve(suspects, hidden)?.length ?? null);
	proofs.set(exercise, fewest);
	return fewest;
}

/** What a right name is worth: unproven no more than the chance it had, and half at most where readings were too many. */
const worthOf = (inTime: boolean, proven: boolean, chance: number): number =>
	Math.min(inTime ? 1 : 0.5, proven ? 1 : chance);

export function judgeHunt(
	exercise: FindExercise,
	named: Fault | null,
	probes: readonly Probe[]
): Result {
	const known = new Set(faultsToName(exercise).map(faultKey));
	if (named && !known.has(faultKey(named)))
		return refuse('that fault is not in the list of this bench');
	const own = probesTaken(probes);
	const read = readingsOf(exercise, own);
	const { hidden, most } = exercise;
	const found = sameClass(exercise.bench, named ? [named] : [], [hidden]);
	const alike = classOf(exercise.bench, [hidden]);
	const fitting = fittingOf(exercise, read);
	const inClass = new Set(alike.map(faultKey));
	const proven = fitting.every((fault) => inClass.has(faultKey(fault)));
	const left = leftBy(exercise, read);
	const used = own.length;
	const inTime = used <= most;
	const fewest = fewestProofOf(exercise);
	return {
		score: found ? worthOf(inTime, proven, left.chance) : 0,
		passed: found && proven && inTime,
		items: itemOf(exercise, named, own),
		find: { used, most, fewest, hidden, named, found, alike, fitting, ...left, proven }
	};
}
