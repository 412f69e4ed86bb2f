/**
 * Runs the advisor in slices, so that whoever hosts it, a worker or the page itself, can hear the
 * next question between them. A newer question ends an older one: a learner who has typed another
 * reading no longer wants the old answer. Clock and pause come from outside.
 */
import { Advisor, type Ask, type Reply } from '../diagnosis';

export interface Question {
	readonly turn: number;
	readonly ask: Ask;
}
export type Answer =
	| { readonly turn: number; readonly reply: Reply }
	/** The question cannot be answered, and why. */
	| { readonly turn: number; readonly error: string };

export interface Hosting {
	readonly post: (answer: Answer) => void;
	/** Calls back soon, after other work has had its turn. */
	readonly later: (run: () => void) => void;
	/** Milliseconds from any start. */
	readonly now: () => number;
	/** Longest stretch of work between two pauses, milliseconds. */
	readonly slice: number;
}

export class AdviceHost {
	private readonly advisor = new Advisor();
	private turn = -1;
	private steps: Generator<Reply | null, void> | null = null;
	private isWaiting = false;

	constructor(private readonly hosting: Hosting) {}

	/** Takes a question in place of the one before it. */
	take({ turn, ask }: Question) {
		this.turn = turn;
		this.steps = this.advisor.advise(ask);
		if (!this.isWaiting) this.pause();
	}

	private pause() {
		this.isWaiting = true;
		this.hosting.later(() => {
			this.isWaiting = false;
			this.run();
		});
	}

	private run() {
		const { now, slice } = this.hosting;
		const until = now() + slice;
		while (this.steps) {
			this.step(this.steps);
			if (this.steps && now() >= until) return this.pause();
		}
	}

	private step(steps: Generator<Reply | null, void>) {
		const { turn } = this;
		try {
			const { done, value } = steps.next();
			if (done) this.steps = null;
			else if (value) this.hosting.post({ turn, reply: value });
		} catch (error) {
			this.steps = null;
			this.hosting.post({ turn, error: error instanceof Error ? error.message : String(error) });
		}
	}
}
