/**
 * Work that may follow some frames behind, one piece a frame. What is asked for again before its turn
 * has come is done once; every piece has its turn, however often all are asked for.
 */

/** When the next frame is on the screen. */
export const afterFrame = (run: () => void) => requestAnimationFrame(() => setTimeout(run));

export class Turns {
	readonly #pieces: readonly (() => void)[];
	readonly #due = new Set<number>();
	#next = 0;
	#running = false;

	/** `pieces` in the order of their turns. */
	constructor(pieces: readonly (() => void)[]) {
		this.#pieces = pieces;
	}

	/** Asks for every piece; where there are no frames, all are done at once. */
	all(): void {
		this.#pieces.forEach((_, i) => this.#due.add(i));
		if (typeof requestAnimationFrame !== 'function') while (this.#due.size > 0) this.#step();
		else if (!this.#running) this.#run();
	}

	#run(): void {
		this.#running = this.#due.size > 0;
		if (this.#running)
			afterFrame(() => {
				this.#step();
				this.#run();
			});
	}

	#step(): void {
		while (!this.#due.has(this.#next)) this.#next = (this.#next + 1) % this.#pieces.length;
		this.#due.delete(this.#next);
		this.#pieces[this.#next]!();
		this.#next = (this.#next + 1) % this.#pieces.length;
	}
}
