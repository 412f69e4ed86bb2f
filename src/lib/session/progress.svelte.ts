/**
 * One learner's tries in this browser: read once, written at each judged answer. The pages of the
 * progress and of the exercises share one `progress`. The store and the clock are given, so that tests
 * have their own.
 */
import { merged, withoutDoubles, type Attempt } from '../storage/progress';
import { memoryProgress, openProgressStore, type ProgressStore } from '../storage/progressStore';
import { NO_TIME, attemptOf, machineClock, type Verdict } from './progressAttempt';
import { dueOf, pastsOf, standingOf, type Standing } from './progressReview';

/** What could not be done, in the page's words. */
export type Trouble = 'not kept' | 'not read' | 'not changed' | null;

export class Progress {
	readonly #open: () => Promise<ProgressStore>;
	readonly #clock: () => Date;
	#store = $state.raw<ProgressStore>(memoryProgress());
	#loading: Promise<void> | null = null;
	/** Today's set, as it stood when it was begun; null outside one and after a reload. */
	#set = $state.raw<readonly string[] | null>(null);
	/** Tries that the store did not take yet: they go with the next one. */
	#unkept: readonly Attempt[] = [];

	/** Oldest first. */
	attempts = $state.raw<readonly Attempt[]>([]);
	/** Entries of the store that cannot be read. */
	unread = $state(0);
	/** Whether the store was read. */
	ready = $state(false);
	trouble = $state<Trouble>(null);
	/** Moves when it is told to, so that what is shown holds still in between. */
	now = $state.raw(NO_TIME);
	/** Why nothing outlasts the page; null if it does. */
	memoryOnly = $derived(this.#store.memoryOnly);
	readonly #pasts = $derived(pastsOf(this.attempts));

	constructor(open = (): Promise<ProgressStore> => openProgressStore(), clock = machineClock) {
		this.#open = open;
		this.#clock = clock;
	}

	/** Looks at the clock. */
	tick(): void {
		this.now = this.#clock();
	}

	/** Opens the store and reads it, once. Never rejects. */
	load(): Promise<void> {
		this.#loading ??= this.#open().then(async (store) => {
			this.#store = store;
			await this.reload();
			this.ready = true;
		});
		return this.#loading;
	}

	/** Reads the store again: another tab may have written. Never rejects. */
	async reload(): Promise<void> {
		this.tick();
		try {
			const { attempts, unread } = await this.#store.read();
			this.attempts = merged(attempts, this.#unkept);
			this.unread = unread;
		} catch {
			this.trouble = 'not read';
		}
	}

	/** Keeps a judged answer. One that was refused was not judged. Never rejects. */
	async record(judged: Verdict, hints = 0): Promise<void> {
		const made = attemptOf(judged, hints, this.#clock());
		await this.load();
		if (judged.refused !== null) return;
		this.tick();
		this.attempts = merged(this.attempts, [made]);
		this.#unkept = [...this.#unkept, made];
		const batch = this.#unkept;
		try {
			await this.#store.add(batch);
			this.#unkept = this.#unkept.filter((one) => !batch.includes(one));
			if (this.trouble === 'not kept') this.trouble = null;
		} catch {
			this.trouble = 'not kept';
		}
	}

	/** Adds tries to those that are here. False, and nothing is changed, if that fails. */
	merge(attempts: readonly Attempt[]): Promise<boolean> {
		return this.#change(
			() => this.#store.add(attempts),
			() => merged(this.attempts, attempts)
		);
	}

	/** Puts tries in place of those that are here. False, and nothing is changed, if that fails. */
	replace(attempts: readonly Attempt[]): Promise<boolean> {
		return this.#change(
			() => this.#store.replace(attempts),
			() => {
				this.#unkept = [];
				return withoutDoubles(attempts);
			}
		);
	}

	async #change(write: () => Promise<void>, then: () => readonly Attempt[]): Promise<boolean> {
		await this.load();
		this.tick();
		try {
			await write();
		} catch {
			this.trouble = 'not changed';
			return false;
		}
		this.attempts = then();
		this.trouble = this.#unkept.length > 0 ? 'not kept' : null;
		await this.reload();
		return true;
	}

	/** How an exercise stands now. */
	standing = (exercise: string): Standing => standingOf(this.#pasts.get(exercise), this.now);

	/** The exercises of the course that are due now, the longest due first. */
	due = (course: readonly string[]): string[] => dueOf(course, this.#pasts, this.now);

	/** Begins today's set with what is due now; gives the first exercise, or null if nothing is due. */
	beginSet(course: readonly string[]): string | null {
		this.tick();
		this.#set = this.due(course);
		return this.#set[0] ?? null;
	}

	/**
	 * What is left of today's set after this exercise. A reload forgets the set; then it is what is
	 * due now, and, where this exercise still is, what comes after it.
	 */
	restOfSet(course: readonly string[], exercise: string): readonly string[] {
		const set = this.#set?.includes(exercise) ? this.#set : this.due(course);
		return set.slice(set.indexOf(exercise) + 1);
	}
}

/** The tries of this browser. */
export const progress = new Progress();
