/**
 * What an exercise is: plain data of seven kinds. The content is read by `schema.ts`; what a learner
 * may answer and what the judge says of it stand in `judged.ts`; sentences are made in `words/`.
 */
import type {
	Bench,
	Fault,
	NodeName,
	PlugKind,
	Requirement,
	SocketKind,
	When,
	Wire
} from '../engine';
import type { Probe } from '../diagnosis/probes';
import type { Symptom, Told } from '../diagnosis/symptom';
import type { Answer, AnswerOf } from './judged';
import type { Need, Option } from './needs';
import type { Rule, Step } from './procedure';
import type { Block } from './prose';
import type { Verdict } from './verdict';

export const EXERCISE_KINDS = [
	'predict',
	'wire',
	'put-right',
	'find',
	'choose',
	'name',
	'order'
] as const;
export type ExerciseKind = (typeof EXERCISE_KINDS)[number];

/** How well a fact is known: a standard (as reported), an open book, memory, common practice, a sum. */
export const FLAGS = ['STD', 'BOOK', 'MEM', 'PRACTICE', 'CALC'] as const;
export type Flag = (typeof FLAGS)[number];

export interface Source {
	readonly fact: string;
	readonly source: string;
	readonly flag: Flag;
}
/**
 * What in an answer shows a belief, by kind. predict: `[a, b]`, or `[a, b, question]` for one state
 * only. wire and put-right: the pair of a check that fails. choose: `[option]` judged wrongly. name:
 * `[contact, called]`. order: `[consequence]`, or `[earlier, later]` of a rule that is broken.
 */
export type Sign = readonly (string | number)[];

/** A mistaken belief, from the list that all exercises share, and what is true instead. */
export interface Belief {
	readonly id: string;
	readonly says: string;
	readonly truth: string;
	/** Signs of it in this exercise. */
	readonly shownBy: readonly Sign[];
	/** find: faults that show it when they are named. */
	readonly shownByNaming: readonly Fault[];
}
/** An answer that someone might give; `says` is what the judge must say of it at least. */
export interface WrongAnswer<A extends Answer = Answer> {
	readonly name: string;
	readonly answer: A;
	readonly says: readonly Verdict[];
	/** Whether it fails on safety, and so scores 0. */
	readonly unsafe: boolean;
}

interface Common<K extends ExerciseKind> {
	readonly kind: K;
	/** Permanent; the name of its folder. */
	readonly id: string;
	/** 1 to 12, and the place within the unit, from 1. */
	readonly unit: number;
	readonly place: number;
	readonly title: string;
	/** One sentence: what the learner will be able to do. */
	readonly aim: string;
	/** Why it matters on site. */
	readonly why: string;
	/** As it is when the exercise opens. */
	readonly bench: Bench;
	/** What to mind while doing just this: both are required and neither is used twice. */
	readonly cautions: { readonly chassis: string; readonly mains: string };
	readonly sources: readonly Source[];
	readonly beliefs: readonly Belief[];
	/** Written hints; what the search computes comes beside them. */
	readonly hints: readonly string[];
	readonly wrong: readonly WrongAnswer<AnswerOf<K>>[];
	/** The set-up, from text.md. */
	readonly text: readonly Block[];
}
/** One state of the bench, and the pairs to say sounding or silent of. */
export interface Question {
	readonly state: When;
	readonly pairs: readonly (readonly [NodeName, NodeName])[];
}
export interface PredictExercise extends Common<'predict'> {
	readonly questions: readonly Question[];
}
/** What wire and put-right share: a requirement, and wires that may be changed to meet it. */
interface Wiring {
	/** Sockets whose contacts the learner's wires may join. */
	readonly mayWire: readonly string[];
	readonly require: readonly Requirement[];
	/** All wires at the end. */
	readonly solution: readonly Wire[];
}
export interface WireExercise extends Common<'wire'>, Wiring {}
/** The start bench is wired wrongly; mend it with few changes. */
export interface PutRightExercise extends Common<'put-right'>, Wiring {
	/** Changes more than the fewest that still score 1. The fewest is computed. */
	readonly allow: number;
}
/** A symptom, each part of it with the words of the exercise that tell it, as they stand there. */
export interface ToldSymptom extends Symptom {
	readonly told: readonly (Told & { readonly says: string })[];
	/** The words that leave only some kinds of fault in question; '' where all kinds are. */
	readonly kindsSay: string;
	/** The caution that asks to keep the probes off; '' where none does. */
	readonly keepOffSays: string;
}
export interface FindExercise extends Common<'find'> {
	readonly hidden: Fault;
	/** What the exercise tells before the first reading. */
	readonly symptom: ToldSymptom;
	/** The most readings that may be taken. */
	readonly most: number;
	/** Readings that prove the hidden fault. */
	readonly solution: readonly Probe[];
}
export interface ChooseExercise extends Common<'choose'> {
	/** What is wanted, in a sentence or two; `needs` is the same for the engine. */
	readonly need: string;
	readonly needs: readonly Need[];
	/** The right ones are those that meet every need; none is marked. */
	readonly options: readonly Option[];
}
export interface NameExercise extends Common<'name'> {
	/** The unmarked socket. */
	readonly socket: string;
	/** Kinds that it may be, its own among them; one where the kind is known. */
	readonly candidates: readonly SocketKind[];
	/** Letter to true contact, for every lug that bears no mark. */
	readonly lugs: Readonly<Record<string, string>>;
	/** The most readings that may be taken; null where they are only counted against par. */
	readonly most: number | null;
	/** Kinds of bare plug that the learner may put in besides the plugs of the bench. */
	readonly plugs: readonly PlugKind[];
}
export interface OrderExercise extends Common<'order'> {
	readonly steps: readonly Step[];
	/** What must come before what, and why. Any order that keeps them all is right. */
	readonly rules: readonly Rule[];
	/** Where the probes are put for the test. */
	readonly probes: readonly [NodeName, NodeName];
	/** Step ids in one right order. */
	readonly solution: readonly string[];
}
export type Exercise =
	| PredictExercise
	| WireExercise
	| PutRightExercise
	| FindExercise
	| ChooseExercise
	| NameExercise
	| OrderExercise;
/** The exercise of one kind. */
export type ExerciseOf<K extends ExerciseKind> = Extract<Exercise, { readonly kind: K }>;
