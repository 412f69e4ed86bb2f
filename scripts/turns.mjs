/**
 * What steps that run side by side say, in the steps' order: each speaks at its turn, and what it
 * said before that is kept until then. Nothing is lost, and no two are mixed.
 */

/** @param {(text: string | Uint8Array) => void} write where it is said */
export function makeTurns(write) {
	/** @type {Map<number, (string | Uint8Array)[]>} */
	const kept = new Map();
	/** @type {Set<number>} */
	const ended = new Set();
	let now = 0;
	return {
		/** Whether it is this step's turn, counted from 0. @param {number} step */
		isTurnOf: (step) => step === now,
		/**
		 * Says something for a step, now or at its turn.
		 * @param {number} step
		 * @param {string | Uint8Array} text
		 */
		say(step, text) {
			if (step === now) write(text);
			else kept.set(step, [...(kept.get(step) ?? []), text]);
		},
		/** A step has said all; the next one speaks. @param {number} step */
		end(step) {
			ended.add(step);
			while (ended.has(now)) for (const text of kept.get(++now) ?? []) write(text);
		}
	};
}
