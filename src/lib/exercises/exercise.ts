/**
 * What an exercise is, what a learner may answer, and what the judge says of it. Plain data: the
 * content is read by `schema.ts`, the judge is `judge.ts`, sentences are made in `words/`.
 */
import type { Bench, Fault, Requirement, When, Wire } from '../engine';
import type { Probe } from '../diagnosis/probes';
import type { Block } from './prose';

export const EXERCISE_KINDS = ['predict', 'wire', 'find'] as const;
export type ExerciseKind = (typeof EXERCISE_KINDS)[number];

/** How well a fact is known: a standard (as reported), an open book, memory, common practice, a sum. */
export const FLAGS = ['STD', 'BOOK', 'MEM', 'PRACTICE', 'CALC'] as const;
export type Flag = (typeof FLAGS)[number];

export interface Source {
	readonly fact: string;
	readonly source: string;
	readonly flag: Flag;
}
/** A mistaken belief that the exercise brings to light, and what is true instead. */
export interface Belief {
	readonly id: string;
	readonly says: string;
	readonly truth: string;
	/** Pairs that show it when they are got wrong. */
	readonly shownBy: readonly (readonly [string, string])[];
	/** find: faults that show it when they are named. */
	readonly shownByNaming: readonly Fault[];
}
/** Wires that someone might solder; `says` is what the judge must find wrong at least. */
export interface WrongAnswer {
	readonly name: string;
	readonly wires: readonly Wire[];
	readonly says: readonly { readonly pair: readonly [string, string]; readonly wanted: string }[];
	readonly unsafe: boolean;
}

interface Common {
	/** Permanent; the name of its folder. */
	readonly id: string;
	readonly title: string;
	/** One sentence: what the learner will be able to do. */
	readonly aim: string;
	/** Why it matters on site. */
	readonly why: string;
	readonly bench: Bench;
	/** What to mind while doing just this: both are required and neither is used twice. */
	readonly cautions: { readonly chassis: string; readonly mains: string };
	readonly sources: readonly Source[];
	readonly beliefs: readonly Belief[];
	readonly hints: readonly string[];
	/** The set-up, from text.md. */
	readonly text: readonly Block[];
}
export interface PredictExercise extends Common {
	readonly kind: 'predict';
	readonly state: When;
	readonly pairs: readonly (readonly [string, string])[];
}
export interface WireExercise extends Common {
	readonly kind: 'wire';
	/** Sockets whose contacts the learner's wires may join. */
	readonly mayWire: readonly string[];
	readonly require: readonly Requirement[];
	readonly solution: readonly Wire[];
	readonly wrong: readonly WrongAnswer[];
}
export interface FindExercise extends Common {
	readonly kind: 'find';
	readonly hidden: Fault;
	/** The most readings that may be taken. */
	readonly most: number;
}
export type Exercise = PredictExercise | WireExercise | FindExercise;

export type Answer =
	| { readonly kind: 'predict'; readonly ticked: readonly (readonly [string, string])[] }
	/** All wires that are on the bench when the learner is done. Cables are not the learner's. */
	| { readonly kind: 'wire'; readonly wires: readonly Wire[] }
	/** `fault` null: "there is none". `probes`: every reading taken, repeats count once. */
	| { readonly kind: 'find'; readonly fault: Fault | null; readonly probes: readonly Probe[] };

export type Outcome =
	'sounds' | 'silent' | 'joined' | 'apart' | 'hears' | 'deaf' | 'polarity +' | 'polarity -';

/** One thing that was judged. To replay it: `replayBench(exercise, answer, item)`, probes on `pair`. */
export interface Item {
	readonly right: boolean;
	readonly when: When;
	/** Two nodes; or [input, source] where `wanted` is about hearing. */
	readonly pair: readonly [string, string];
	/** How it is, or must be. */
	readonly wanted: Outcome;
	/** How the answer has it. Equal to `wanted` exactly when `right`. */
	readonly found: Outcome;
	readonly hazard: boolean;
	/** The requirement's own sentence, or ''. */
	readonly why: string;
}
export interface Judged {
	readonly id: string;
	readonly kind: ExerciseKind;
	/** 0 to 1, four decimals. */
	readonly score: number;
	readonly passed: boolean;
	readonly items: readonly Item[];
	/** Ids of beliefs that the mistakes show. */
	readonly beliefs: readonly string[];
	/** Why the answer could not be judged at all, with score 0; null otherwise. */
	readonly refused: string | null;
	/** find only. */
	readonly find?: {
		readonly used: number;
		readonly most: number;
		readonly hidden: Fault;
		readonly named: Fault | null;
		/** The named fault is of the hidden one's class (though it may have cost too many probes). */
		readonly found: boolean;
		/** Every fault of the list that no probe can tell from the hidden one. */
		readonly alike: readonly Fault[];
		/** Every fault of the list that agrees with all readings taken; `alike` is among them. */
		readonly fitting: readonly Fault[];
		/** The readings would fit a sound bench too. */
		readonly soundFits: boolean;
		/** The readings leave nothing but the hidden fault's class. */
		readonly proven: boolean;
	};
}
