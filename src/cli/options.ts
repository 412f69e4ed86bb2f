/**
 * Every option of the headless program, written once: usage is checked, files are read and help is
 * printed from this table. An option means the same with every command that takes it.
 */
import {
	METER_MODES,
	checkRequirements,
	type MeterMode,
	type NodeName,
	type Parsed,
	type Requirement
} from '../lib/engine';
import { checkReadings, type Reading } from '../lib/diagnosis';

/** What a side file held, with its name for messages about it. */
export interface Held<T> {
	readonly file: string;
	readonly value: T;
}

/** What each option is once it is read; a switch that was given is `true`. */
export interface ValueOf {
	from: NodeName;
	to: NodeName;
	mode: MeterMode;
	red: NodeName;
	black: NodeName;
	zeroed: true;
	socket: string;
	exercise: Held<readonly Requirement[]>;
	readings: Held<readonly Reading[]>;
	most: '1' | '2' | '3';
	pretty: true;
	help: true;
}
export type OptionName = keyof ValueOf;

export interface OptionPart {
	/** Stands for the value in help; null: a switch, which takes none. */
	readonly value: string | null;
	readonly says: string;
	/** The words it may be, where it may not be any text; others are wrong usage. */
	readonly words?: readonly string[];
	/** Set where the value names a JSON file: what that file should be, and the check of it. */
	readonly holds?: {
		readonly what: string;
		readonly check: (value: unknown) => Parsed<unknown>;
	};
}

export const OPTIONS: Readonly<Record<OptionName, OptionPart>> = {
	from: { value: 'NODE', says: 'one end, such as A.T or panel' },
	to: { value: 'NODE', says: 'the other end' },
	mode: { value: 'MODE', says: 'what the meter is set to', words: METER_MODES },
	red: { value: 'NODE', says: 'where the red probe stands' },
	black: { value: 'NODE', says: 'where the black probe stands' },
	zeroed: { value: null, says: 'the meter has been zeroed: its leads are subtracted' },
	socket: { value: 'ID', says: 'the id of a socket of the bench' },
	exercise: {
		value: 'FILE',
		says: 'a JSON file with require, the list of what must be true',
		holds: { what: 'an exercise file', check: checkRequirements }
	},
	readings: {
		value: 'FILE',
		says: 'a JSON file with readings, the list of what the meter said',
		holds: { what: 'a readings file', check: checkReadings }
	},
	most: {
		value: 'N',
		says: 'faults that the bench may have at once, 1 unless said',
		words: ['1', '2', '3']
	},
	pretty: { value: null, says: 'short lines for people in place of JSON' },
	help: { value: null, says: 'this text' }
};

/** Options that every command takes. */
export const COMMON: readonly OptionName[] = ['pretty', 'help'];

export const isOption = (name: string): name is OptionName => Object.hasOwn(OPTIONS, name);
