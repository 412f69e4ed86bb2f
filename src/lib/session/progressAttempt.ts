/** From a judge's word to the try that is kept. */
import type { ExerciseKind } from '../exercises';
import { keyOf, type Attempt } from '../storage/progress';

/** What is looked at of a judge's word: the same for every kind of exercise. */
export interface Verdict {
	readonly id: string;
	readonly kind: ExerciseKind;
	readonly score: number;
	readonly passed: boolean;
	readonly beliefs: readonly string[];
	/** Why the answer could not be judged; null if it was. */
	readonly refused: string | null;
	readonly predict?: { readonly rightUnsure: number; readonly wrongUnsure: number };
	readonly find?: { readonly used: number };
	readonly name?: { readonly used: number };
}

/** A judged answer as a try. `hints`: how many stood open. */
export const attemptOf = (judged: Verdict, hints: number, at: Date): Attempt => ({
	exercise: judged.id,
	kind: judged.kind,
	at: at.toISOString(),
	score: judged.score,
	passed: judged.passed,
	unsure: judged.predict ? judged.predict.rightUnsure + judged.predict.wrongUnsure : 0,
	probes: (judged.find ?? judged.name)?.used ?? null,
	hints,
	beliefs: [...new Set(judged.beliefs)]
});

/** How many of `theirs` are not among `mine`. */
export function newIn(theirs: readonly Attempt[], mine: readonly Attempt[]): number {
	const here = new Set(mine.map(keyOf));
	return theirs.filter((one) => !here.has(keyOf(one))).length;
}

/** How many exercises were tried. */
export const exercisesIn = (attempts: readonly Attempt[]): number =>
	new Set(attempts.map(({ exercise }) => exercise)).size;

/** Now, by the machine's clock. */
export const machineClock = (): Date => new Date();
/** Before the clock was looked at. */
export const NO_TIME = new Date(0);
