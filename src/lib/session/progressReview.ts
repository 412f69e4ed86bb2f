/**
 * When an exercise comes back. The published scheduler FSRS decides (ts-fsrs, its default
 * parameters, no chance in it); what it is told is decided here, in one table that the page shows.
 * Cards are never stored: they are the tries, played through the scheduler again.
 * FSRS: Ye, Su and Cao, "A Stochastic Shortest Path Algorithm for Optimizing Spaced Repetition
 * Scheduling", KDD 2022 (from memory); as the package ts-fsrs implements it.
 */
import { Rating, State, createEmptyCard, fsrs, type Card, type Grade } from 'ts-fsrs';
import type { Attempt } from '../storage/progress';

const scheduler = fsrs();
const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
export const DAY = 24 * HOUR;
/** What is spaced in days may be done this much early, so that an evening's work fits a morning. */
export const EARLY = 12 * HOUR;

export const RATINGS = ['again', 'hard', 'good', 'easy'] as const;
export type RatingName = (typeof RATINGS)[number];
const GRADES: Readonly<Record<RatingName, Grade>> = {
	again: Rating.Again,
	hard: Rating.Hard,
	good: Rating.Good,
	easy: Rating.Easy
};

interface RatingRule {
	readonly rating: RatingName;
	/** For the page. */
	readonly when: string;
	/** `failedBefore`: a try failed since the exercise last counted as passed. */
	readonly holds: (attempt: Attempt, failedBefore: boolean) => boolean;
}
/** From what happened to the scheduler's four ratings; the first row that holds decides. */
export const RATING_RULES: readonly RatingRule[] = [
	{ rating: 'again', when: 'Not passed, after it was passed before.', holds: (a) => !a.passed },
	{
		rating: 'hard',
		when: 'Passed, with a hint open or with something marked “not sure”.',
		holds: (a) => a.hints > 0 || a.unsure > 0
	},
	{
		rating: 'good',
		when: 'Passed, after a try that failed.',
		holds: (_a, failedBefore) => failedBefore
	},
	{
		rating: 'easy',
		when: 'Passed at the first try, no hint, nothing marked “not sure”.',
		holds: () => true
	}
];

/** What the scheduler is told of a try. */
export const ratingOf = (attempt: Attempt, failedBefore: boolean): RatingName =>
	RATING_RULES.find((rule) => rule.holds(attempt, failedBefore))!.rating;

/**
 * After how many milliseconds an exercise comes back: for "again" one that was passed at the first
 * try, for the others one that is passed for the first time.
 */
export function usualWait(rating: RatingName): number {
	const start = new Date(0);
	const first = (name: RatingName): Card =>
		scheduler.next(createEmptyCard(start), start, GRADES[name]).card;
	if (rating !== 'again') return first(rating).due.getTime();
	const card = first('easy');
	const { due } = scheduler.next(card, card.due, GRADES.again).card;
	return due.getTime() - card.due.getTime();
}

/** From when on it may be done again. */
const dueFrom = (card: Card): number => card.due.getTime() - (card.scheduled_days >= 1 ? EARLY : 0);

/** What the tries at one exercise have come to. */
export interface Past {
	/** Null until the first pass. */
	readonly card: Card | null;
	/** The last try that moved the card failed. */
	readonly lapsed: boolean;
	/** A try failed since the last pass that moved the card. */
	readonly failed: boolean;
	readonly tries: number;
	readonly passes: number;
	readonly last: Attempt | null;
}
const NOTHING: Past = {
	card: null,
	lapsed: false,
	failed: false,
	tries: 0,
	passes: 0,
	last: null
};

/**
 * Whether a try moves the card: the first pass makes it; a pass before it is due is practice and
 * moves nothing; a failure always counts, but a row of them counts once.
 */
function counts({ card, lapsed }: Past, { passed }: Attempt, time: number): boolean {
	if (!card) return passed;
	const isDue = dueFrom(card) <= time;
	return passed ? isDue : isDue || !lapsed;
}

function after(past: Past, attempt: Attempt): Past {
	const at = new Date(attempt.at);
	const moves = counts(past, attempt, at.getTime());
	const failed = !attempt.passed || (past.failed && !moves);
	const tries = past.tries + 1;
	const passes = past.passes + (attempt.passed ? 1 : 0);
	const kept = { ...past, failed, tries, passes, last: attempt };
	if (!moves) return kept;
	const grade = GRADES[ratingOf(attempt, past.failed)];
	const { card } = scheduler.next(past.card ?? createEmptyCard(at), at, grade);
	return { ...kept, card, lapsed: !attempt.passed };
}

/** The past of each exercise that was tried, from tries in order, oldest first. */
export function pastsOf(attempts: readonly Attempt[]): Map<string, Past> {
	const pasts = new Map<string, Past>();
	for (const attempt of attempts)
		pasts.set(attempt.exercise, after(pasts.get(attempt.exercise) ?? NOTHING, attempt));
	return pasts;
}

/** Not begun; tried and not yet passed; passed and soon back; due; passed and not due for a day or more. */
export const STATES = ['new', 'tried', 'learning', 'due', 'solid'] as const;
export type ReviewState = (typeof STATES)[number];

export interface Standing extends Past {
	readonly state: ReviewState;
	/** When the scheduler wants it back; null without a card. */
	readonly due: Date | null;
}

function stateOf({ card, tries }: Past, now: Date): ReviewState {
	if (tries === 0) return 'new';
	if (!card) return 'tried';
	if (dueFrom(card) <= now.getTime()) return 'due';
	return card.state === State.Review ? 'solid' : 'learning';
}

/** How an exercise stands at an instant. */
export const standingOf = (past: Past | undefined, now: Date): Standing => ({
	...(past ?? NOTHING),
	state: stateOf(past ?? NOTHING, now),
	due: past?.card?.due ?? null
});

/** Ids of the exercises that are due, the longest due first; equals in the order of the course. */
export const dueOf = (course: readonly string[], pasts: Map<string, Past>, now: Date): string[] =>
	course
		.map((id) => ({ id, standing: standingOf(pasts.get(id), now) }))
		.filter(({ standing }) => standing.state === 'due')
		.sort((a, b) => dueFrom(a.standing.card!) - dueFrom(b.standing.card!))
		.map(({ id }) => id);
