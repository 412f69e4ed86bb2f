/**
 * Two ways of doing one thing, timed in turn within one run, so that a slow or busy machine slows
 * both. Only the ratio is kept; no clock decides whether anything passes.
 */

/** One line of the table. */
export type Row =
	/** `right`: the count by hand. */
	| { readonly what: string; readonly count: number; readonly right?: number }
	/**
	 * `most`: set for a difference or a count per move, which must not be more; never for a time.
	 * `target`: what a ratio of times should come to at least (at most, where `below` is set); shown
	 * beside it as met or not met, and never decides anything.
	 */
	| {
			readonly what: string;
			readonly ratio: number;
			readonly most?: number;
			readonly target?: number;
			readonly below?: boolean;
	  };

export interface Way {
	/** Makes what one run needs; not timed. */
	readonly prepare?: () => unknown;
	readonly run: (prepared: never) => unknown;
}

export const median = (values: readonly number[]): number =>
	[...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Milliseconds of `runs` runs, preparation left out. */
function timed(way: Way, runs: number): number {
	const prepared = Array.from({ length: runs }, () => way.prepare?.());
	const start = performance.now();
	for (const one of prepared) way.run(one as never);
	return performance.now() - start;
}

/** What a run gives, and its milliseconds: for the first run, when nothing is warm. */
export function clocked<T>(run: () => T): [T, number] {
	const start = performance.now();
	const value = run();
	return [value, performance.now() - start];
}

/** How many runs of the way take about `ms` milliseconds. */
function runsFor(way: Way, ms: number): number {
	let runs = 1;
	while (runs < 65_536 && timed(way, runs) < ms) runs *= 2;
	return runs;
}

/** Median over the rounds of (time of one run of `a`) / (time of one run of `b`), warm. */
export function ratioOf(a: Way, b: Way, rounds = 15, ms = 10): number {
	const runs = [runsFor(a, ms), runsFor(b, ms)] as const;
	const ratios = Array.from({ length: rounds }, (_, i) => {
		const one = (way: Way, n: number) => timed(way, n) / n;
		// Which goes first changes from round to round.
		if (i % 2) return one(a, runs[0]) / one(b, runs[1]);
		const below = one(b, runs[1]);
		return one(a, runs[0]) / below;
	});
	return median(ratios);
}

/** Throws unless the two ways have given one answer: nothing is timed that does not agree. */
export function mustAgree(what: string, ours: unknown, theirs: unknown) {
	const [a, b] = [ours, theirs].map((x) => JSON.stringify(x));
	if (a !== b) throw new Error(`${what}: ${a!.slice(0, 200)} against ${b!.slice(0, 200)}`);
}
