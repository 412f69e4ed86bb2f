/**
 * Storing takes its turn: a drag makes a bench a frame, and writing each of them down would hold the
 * hand that drags. The last one is written when things have been quiet for a moment, and at once when
 * the page is left or hidden, so that nothing is lost.
 */

/** Where `wait` and the page's leaving come from: the browser, or a test. */
export interface Clock {
	wait(run: () => void, ms: number): () => void;
	/** Calls `run` when the page is hidden or left; gives back how to stop that. */
	leaving(run: () => void): () => void;
}

export const browserClock: Clock = {
	wait(run, ms) {
		const timer = setTimeout(run, ms);
		return () => clearTimeout(timer);
	},
	leaving(run) {
		const hidden = () => document.visibilityState === 'hidden' && run();
		addEventListener('pagehide', run);
		document.addEventListener('visibilitychange', hidden);
		return () => {
			removeEventListener('pagehide', run);
			document.removeEventListener('visibilitychange', hidden);
		};
	}
};

/** How long the bench must have been left alone, ms. */
const QUIET = 250;

export interface Saver<T> {
	/** Remembers the value; the last one is saved soon, or at once where nobody is under way. */
	keep(value: T, atOnce?: boolean): void;
	/** Saves what is still to be saved, and stops. */
	close(): void;
}

/** Saves the last value given, once there is a pause or the page is left. */
export function saver<T>(save: (value: T) => void, clock: Clock = browserClock): Saver<T> {
	let waiting: { value: T } | null = null;
	let restless = false;
	let stop: (() => void) | null = null;
	const flush = () => {
		stop?.();
		stop = null;
		if (waiting) save(waiting.value);
		waiting = null;
	};
	// One timer at a time: setting one anew at every frame of a drag would cost more than saving.
	const look = () => {
		stop = null;
		if (!restless) return flush();
		restless = false;
		stop = clock.wait(look, QUIET);
	};
	const forget = clock.leaving(flush);
	return {
		keep(value, atOnce = false) {
			waiting = { value };
			if (atOnce) return flush();
			restless = stop !== null;
			stop ??= clock.wait(look, QUIET);
		},
		close() {
			flush();
			forget();
		}
	};
}
