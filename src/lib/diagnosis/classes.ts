/** Single faults sorted into classes that no probe can tell apart, and those that none can catch. */
import type { Bench, Fault } from '../engine';
import { dictionaryOf, type Dictionary } from './dictionary';

export interface FaultClasses {
	/** The whole list. */
	readonly faults: readonly Fault[];
	/** Every fault of the list in one of them; in list order, classes by their first fault. */
	readonly classes: readonly (readonly Fault[])[];
	/** The faults that answer every probe as a sound bench does. */
	readonly silent: readonly Fault[];
}

/** The faults of the list by class, from a dictionary of single faults or more. */
export function classesIn(dictionary: Dictionary): FaultClasses {
	const { faults, classOfSet } = dictionary;
	const groups = new Map<number, Fault[]>();
	faults.forEach((fault, i) => {
		const id = classOfSet([i]);
		if (!groups.has(id)) groups.set(id, []);
		groups.get(id)!.push(fault);
	});
	return { faults, classes: [...groups.values()], silent: groups.get(classOfSet([])) ?? [] };
}

/** The classes of a bench's single faults. */
export const faultClassesOf = (bench: Bench): FaultClasses => classesIn(dictionaryOf(bench, 1));
