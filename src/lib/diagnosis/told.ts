/**
 * A hunt as its hunter is told of it: after each reading what it ruled out and whether the suspicion
 * still stands, and at the end the same hunt beside a best one. Both start from the symptom, and
 * something is known to be wrong, so a sound bench is no candidate. Plain data in and out, so that a
 * worker can do it.
 */
import type { Bench, Fault, When } from '../engine';
import { dictionaryOf, type Dictionary } from './dictionary';
import { agreeing, everyClass, extrasOf, type Reading } from './evidence';
import { faultKeyOf } from './faults';
import { bestHunt, huntOf, setsIn, type HuntStep } from './hunt';
import { withoutSound } from './members';
import type { Par } from './par';
import type { Probe } from './probes';
import { isInQuestion, toldReadings, withSymptom, type Symptom } from './symptom';

/** A reading, and what its hunter suspected before it. */
export interface HuntReading extends Reading {
	readonly suspect: Fault | null;
}
export interface HuntQuestion {
	readonly bench: Bench;
	readonly readings: readonly HuntReading[];
	readonly from: When;
	/** What is known before the first reading. */
	readonly symptom: Symptom;
	/** The hidden fault, once the hunt is over: then the best hunt is wanted too. */
	readonly hidden: Fault | null;
}
export interface ToldStep extends HuntStep {
	/** Whether the suspicion agrees with all readings so far; null where there was none. */
	readonly stands: boolean | null;
	/** Faults that the reading ruled out, at most a few, in list order. */
	readonly gone: readonly Fault[];
}
export interface ToldHunt {
	readonly steps: readonly ToldStep[];
	/** Single faults in question before the first reading. */
	readonly faults: number;
	/** Classes that agree with every reading, and the single faults in them. */
	readonly left: number;
	readonly leftFaults: number;
	readonly settled: boolean;
	readonly par: Par;
	/** Null while the hunt goes on. */
	readonly best: readonly HuntStep[] | null;
}

/** Faults named for one reading. */
const NAMED = 8;

/** The single faults that are in question: sound is none, and the symptom leaves some. */
export const suspectsOf = (
	bench: Bench,
	symptom: Symptom,
	extras: readonly Probe[] = extrasOf(bench, toldReadings(symptom))
): Dictionary => withSymptom(withoutSound(dictionaryOf(bench, 1, extras)), symptom);

const kept = new Map<string, Dictionary>();
/** The dictionary of the last bench and symptom, with the odd probes of its readings. */
function dictionaryFor({ bench, symptom, readings }: HuntQuestion): Dictionary {
	const extras = extrasOf(bench, [...toldReadings(symptom), ...readings]);
	const key = JSON.stringify([bench, symptom, extras]);
	const known = kept.get(key) ?? suspectsOf(bench, symptom, extras);
	kept.clear();
	kept.set(key, known);
	return known;
}

/** Every step judged, what is left, par, and with the hidden fault named the best hunt for its class. */
export function toldHunt(question: HuntQuestion): ToldHunt {
	const { symptom, readings, from, hidden } = question;
	const dictionary = dictionaryFor(question);
	const { faults, classOfSet } = dictionary;
	const numberOf = (fault: Fault) => faults.findIndex((f) => faultKeyOf(f) === faultKeyOf(fault));
	const hunt = huntOf(dictionary, readings, from);
	let before = everyClass(dictionary);
	const steps = hunt.steps.map((step, i): ToldStep => {
		const after = agreeing(dictionary, [step.reading], before);
		const lost = before.filter((id) => !after.includes(id));
		const gone = faults
			.filter((f, k) => isInQuestion(symptom, f) && lost.includes(classOfSet([k])))
			.slice(0, NAMED);
		const suspect = readings[i]!.suspect;
		const number = suspect ? numberOf(suspect) : -1;
		const stands = suspect && number >= 0 && after.includes(classOfSet([number]));
		before = after;
		return { ...step, stands, gone };
	});
	const best = hidden
		? huntOf(dictionary, bestHunt(dictionary, classOfSet([numberOf(hidden)]), from), from).steps
		: null;
	return {
		steps,
		faults: setsIn(dictionary, everyClass(dictionary)),
		left: hunt.left.length,
		leftFaults: setsIn(dictionary, hunt.left),
		settled: hunt.settled,
		par: hunt.par,
		best
	};
}
