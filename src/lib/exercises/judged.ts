/** What a learner may answer, and what the judge says of it. */
import type { Fault, NodeName, SocketKind, When, Wire } from '../engine';
import type { Probe } from '../diagnosis/probes';
import type { ExerciseKind } from './exercise';
import type { NeedFailure } from './needs';
import type { Consequence, Rule } from './procedure';

/** A pair in the state of one question, counted from 0; the first where the number is left out. */
export type Cell = readonly [NodeName, NodeName, number?];

export type Answer =
	| {
			readonly kind: 'predict';
			/** Cells that are said to sound; the others are said to be silent. */
			readonly ticked: readonly Cell[];
			/** Cells of which the learner was not sure, ticked or not. None: sure of all. */
			readonly unsure?: readonly Cell[];
	  }
	/** All wires that are on the bench when the learner is done. Cables are not the learner's. */
	| { readonly kind: 'wire'; readonly wires: readonly Wire[] }
	| { readonly kind: 'put-right'; readonly wires: readonly Wire[] }
	/** `fault` null: "there is none". `probes`: every reading taken, repeats count once. */
	| { readonly kind: 'find'; readonly fault: Fault | null; readonly probes: readonly Probe[] }
	/** Ids of the options that are said to meet the need. */
	| { readonly kind: 'choose'; readonly chosen: readonly string[] }
	| {
			readonly kind: 'name';
			/** Letter to contact. */
			readonly names: Readonly<Record<string, string>>;
			/** What kind of socket it is said to be; its own where only one is in question. */
			readonly socketKind?: SocketKind;
			/** Readings by true node; `nodeOfLug` gives the node of a letter. */
			readonly probes: readonly Probe[];
	  }
	/** Ids of steps in the order in which they would be done; what is left out is not done. */
	| { readonly kind: 'order'; readonly order: readonly string[] };
export type AnswerOf<K extends ExerciseKind> = Extract<Answer, { readonly kind: K }>;

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
	/** predict: which question, from 0. */
	readonly question?: number;
	/** predict: whether the learner was sure. Wrong and sure is a belief, wrong and unsure a guess. */
	readonly sure?: boolean;
}

/** predict: how knowing and being sure went together, in numbers of cells. */
export interface Sureness {
	readonly rightSure: number;
	readonly rightUnsure: number;
	readonly wrongSure: number;
	readonly wrongUnsure: number;
}
export interface Mending {
	/** Wires taken out and put in; one that is moved counts as both. */
	readonly changes: number;
	/** The fewest that meet the requirement, by search; null if the search gave up before it knew. */
	readonly fewest: number | null;
	/** Changes more than the fewest that still score 1. */
	readonly allow: number;
}
export interface Hunt {
	readonly used: number;
	readonly most: number;
	/** The fewest readings that prove the hidden fault; null if that could not be made sure of. */
	readonly fewest: number | null;
	readonly hidden: Fault;
	readonly named: Fault | null;
	/** The named fault is of the hidden one's class (though it may have cost too many probes). */
	readonly found: boolean;
	/** Every fault of the list that no probe can tell from the hidden one. */
	readonly alike: readonly Fault[];
	/** Every fault in question that agrees with the symptom and all readings taken. */
	readonly fitting: readonly Fault[];
	/** Classes of the faults in `fitting`: kinds of fault that no probe can tell apart. */
	readonly classes: number;
	/** The chance that the hidden fault's class is the one, of those left; 1 where it is proven. */
	readonly chance: number;
	/** The readings leave nothing but the hidden fault's class. */
	readonly proven: boolean;
}
export interface OptionJudged {
	readonly id: string;
	readonly chosen: boolean;
	/** It meets every need. */
	readonly fits: boolean;
	/** Chosen exactly if it fits. */
	readonly right: boolean;
	/** Every need that it fails, and by what. */
	readonly fails: readonly NeedFailure[];
}
export interface Naming {
	readonly used: number;
	readonly most: number | null;
	/** No plan can be sure with fewer readings than this. */
	readonly par: number;
	/** Lugs whose names no probe contradicts, the best reading of the answer being taken. */
	readonly lugs: readonly {
		readonly lug: string;
		readonly contact: string;
		readonly called: string | null;
		readonly right: boolean;
	}[];
	/** The kind that it was said to be; null if nothing was said. */
	readonly kindCalled: SocketKind | null;
	/** Whether the kind of socket is right, or cannot be told from the right one. */
	readonly kindRight: boolean;
	/** Sets of lugs, by letter, that no probe can tell apart; single ones left out. */
	readonly alike: readonly (readonly string[])[];
}
export interface Procedure {
	/** A rule about a step that was left out counts as kept; the step is among `missing`. */
	readonly rules: readonly { readonly rule: Rule; readonly kept: boolean }[];
	/** Steps that had to be done and were left out. */
	readonly missing: readonly string[];
	/** Steps that should have been left out. */
	readonly spare: readonly string[];
	/** What the learner's order would have done, in the order in which it happens. */
	readonly consequences: readonly Consequence[];
}

export interface Judged {
	readonly id: string;
	readonly kind: ExerciseKind;
	/** 0 to 1, four decimals. */
	readonly score: number;
	readonly passed: boolean;
	/** Something fails on safety; the score is 0. */
	readonly unsafe: boolean;
	/** Electrical things that were judged; [] for choose and order. */
	readonly items: readonly Item[];
	/** Ids of beliefs that the mistakes show. */
	readonly beliefs: readonly string[];
	/** Why the answer could not be judged at all, with score 0; null otherwise. */
	readonly refused: string | null;
	readonly predict?: Sureness;
	readonly putRight?: Mending;
	readonly find?: Hunt;
	readonly choose?: { readonly options: readonly OptionJudged[] };
	readonly name?: Naming;
	readonly order?: Procedure;
}
