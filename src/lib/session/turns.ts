/**
 * Work that may follow some frames behind, one piece a frame. What is asked for again before its turn
 * has come is done once; every piece has its turn, however often all are asked for. On a slow computer
 * the turns are fewer.
 */

const waiting: (() => void)[] = [];
let channel: MessageChannel | undefined;

/** A task of its own at once: browsers let timers wait until many can wake together, half a frame. */
function soon(run: () => void) {
	if (!channel) {
		channel = new MessageChannel();
		channel.port1.onmessage = () => waiting.shift()?.();
	}
	waiting.push(run);
	channel.port2.postMessage(null);
}

/** When the next frame has been drawn, with most of the time until the one after it. `at`: of that frame, ms. */
export const afterFrame = (run: (at: number) => void) =>
	requestAnimationFrame((at) => soon(() => run(at)));

/** A frame that took so many times the pace came late. */
const LATE = 1.5;
/** The pace is that of the shortest frame, but none quicker than this, ms, and it is forgotten by so much a frame. */
const QUICKEST = 6;
const FORGOTTEN = 1.02;
/** So many frames then pass without a piece: what the hand moves goes before what tells of it. */
const RESTS = 2;
/** However late all frames come, no more than so many pass in a row without a piece. */
const MOST_RESTS = 4;
/** For so many frames after it a piece has two frames: one to be worked out, one to be drawn. */
const WARY = 120;

/** What comes often has its turn in every so many frames, before all pieces. */
const OFTEN = 4;

/** A piece of work; false where nothing is drawn for it. */
export type Piece = () => unknown;

export class Turns {
	readonly #pieces: readonly Piece[];
	readonly #often: Piece;
	#isOften = false;
	#since = OFTEN;
	readonly #due = new Set<number>();
	#next = 0;
	#running = false;
	#last = 0;
	#pace = Infinity;
	#rests = 0;
	#rested = 0;
	#wary = 0;

	/** `pieces` in the order of their turns; `often` never shares a frame with one. */
	constructor(pieces: readonly Piece[], often: Piece = () => {}) {
		this.#pieces = pieces;
		this.#often = often;
	}

	/** Asks for what comes often; where there are no frames it comes at once. */
	often(): void {
		if (typeof requestAnimationFrame !== 'function') this.#often();
		else {
			this.#isOften = true;
			if (!this.#running) this.#run();
		}
	}

	/** Asks for every piece; where there are no frames, all are done at once. */
	all(): void {
		this.#pieces.forEach((_, i) => this.#due.add(i));
		if (typeof requestAnimationFrame !== 'function') while (this.#due.size > 0) this.#step();
		else if (!this.#running) this.#run();
	}

	#run(): void {
		this.#running = this.#isOften || this.#due.size > 0;
		if (!this.#running) this.#last = 0;
		else
			afterFrame((at) => {
				this.#wary -= 1;
				this.#since += 1;
				if (this.#isLate(at)) [this.#rests, this.#wary] = [RESTS, WARY];
				this.#running = false;
				try {
					if (this.#rests > 0 && this.#rested < MOST_RESTS) this.#rest();
					else this.#work();
				} finally {
					// A piece that fails must not keep the others from their turns.
					if (!this.#running) this.#run();
				}
			});
	}

	#rest(): void {
		this.#rests -= 1;
		this.#rested += 1;
	}

	#work(): void {
		this.#rested = this.#rests = 0;
		if (this.#isOften && this.#since >= OFTEN) this.#stepOften();
		else if (this.#due.size > 0) {
			const isDrawn = this.#step() !== false;
			if (isDrawn && this.#wary > 0) this.#rests = 1;
		}
	}

	#stepOften(): void {
		this.#isOften = false;
		this.#since = 0;
		this.#often();
	}

	/** Whether the frame that began then came late; the first of a run never did. */
	#isLate(at: number): boolean {
		const took = this.#last > 0 ? at - this.#last : 0;
		this.#last = at;
		// After a long frame one may come at once; it says nothing of how fast frames come.
		if (took > 0) this.#pace = Math.max(QUICKEST, Math.min(this.#pace * FORGOTTEN, took));
		return took > LATE * this.#pace;
	}

	#step(): unknown {
		while (!this.#due.has(this.#next)) this.#next = (this.#next + 1) % this.#pieces.length;
		this.#due.delete(this.#next);
		const piece = this.#pieces[this.#next]!;
		this.#next = (this.#next + 1) % this.#pieces.length;
		return piece();
	}
}
