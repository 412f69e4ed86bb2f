/**
 * What is known before the first reading: the note that came with the panel, put into readings, the
 * kinds of fault that it leaves in question, and where a hunter is asked to keep the probes off. A
 * dictionary narrowed to it holds only the suspects; hunts, par and best hunts start from there.
 */
import type { Fault, FaultKind, NodeName, Pair } from '../engine';
import type { Dictionary } from './dictionary';
import { isJoinedAt, placeOf, type Reading } from './evidence';
import { weightOf } from './weights';

/** Readings that hold together, or with `any` of which one at least holds. */
export interface Told {
	readonly readings: readonly Reading[];
	readonly any: boolean;
}
export interface Symptom {
	readonly told: readonly Told[];
	/** Kinds of fault in question; null: all of them. */
	readonly kinds: readonly FaultKind[] | null;
	/** Nodes, and pairs of nodes, that no plan touches. */
	readonly keepOff: readonly (NodeName | Pair)[];
}
export const NO_SYMPTOM: Symptom = { told: [], kinds: null, keepOff: [] };

/** All that is told, as readings: those that hold and those that may. */
export const toldReadings = ({ told }: Pick<Symptom, 'told'>): Reading[] =>
	told.flatMap(({ readings }) => [...readings]);

/** Whether what answers so agrees with all that is told. */
export const agreesWith = (
	{ told }: Pick<Symptom, 'told'>,
	says: (reading: Reading) => boolean
): boolean => told.every(({ readings, any }) => (any ? readings.some(says) : readings.every(says)));

/** Whether a fault of this kind is in question. */
export const isInQuestion = ({ kinds }: Pick<Symptom, 'kinds'>, { kind }: Fault): boolean =>
	kinds === null || kinds.includes(kind);

/** Whether the plan is asked to keep off this pair. */
export const isKeptOff = ({ keepOff }: Pick<Symptom, 'keepOff'>, pair: Pair): boolean =>
	keepOff.some((off) =>
		typeof off === 'string' ? pair.includes(off) : off.every((node) => pair.includes(node))
	);

/** Position `a * nodes + b` of every pair to keep off: 1. */
function offPairs({ nodes }: Dictionary, symptom: Symptom): Uint8Array {
	const off = new Uint8Array(nodes.length ** 2);
	nodes.forEach((a, i) =>
		nodes.forEach((b, j) => {
			if (isKeptOff(symptom, [a, b])) off[i * nodes.length + j] = 1;
		})
	);
	return off;
}

/** The single faults in question that are in the class, the heaviest first. */
function membersIn({ faults, classOfSet }: Dictionary, symptom: Symptom, id: number): number[] {
	const inClass = faults.flatMap((fault, i) =>
		isInQuestion(symptom, fault) && classOfSet([i]) === id ? [i] : []
	);
	return inClass.sort((x, y) => weightOf(faults[y]!) - weightOf(faults[x]!));
}

/** Weights and counts of the kinds in question alone. */
function ofKinds(dictionary: Dictionary, symptom: Symptom): Dictionary {
	const weight = new Float64Array(dictionary.size);
	const count = new Float64Array(dictionary.size);
	dictionary.faults.forEach((fault, i) => {
		if (!isInQuestion(symptom, fault)) return;
		const id = dictionary.classOfSet([i]);
		weight[id]! += weightOf(fault);
		count[id]! += 1;
	});
	const heaviest = (id: number) => membersIn(dictionary, symptom, id).slice(0, 1);
	return { ...dictionary, weight, count, heaviest, hasSound: false };
}

/**
 * The dictionary narrowed to what the symptom leaves. Kinds are for dictionaries of single faults.
 * Throws if the dictionary was made without a probe that is told of.
 */
export function withSymptom(dictionary: Dictionary, symptom: Symptom): Dictionary {
	const known = symptom.kinds ? ofKinds(dictionary, symptom) : dictionary;
	const weight = known.weight.slice();
	const count = known.count.slice();
	const says = (id: number) => (reading: Reading) =>
		isJoinedAt(known, id, placeOf(known, reading)) === (reading.answer === 'joined');
	for (let id = 0; id < known.size; id++)
		if (count[id]! > 0 && !agreesWith(symptom, says(id))) weight[id] = count[id] = 0;
	return { ...known, weight, count, off: offPairs(known, symptom) };
}
