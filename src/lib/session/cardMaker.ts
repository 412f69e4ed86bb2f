/**
 * Asks for the test cards of a bench without holding up the page. Where no worker can be had, they
 * are worked out on the page in short slices.
 */
import { makingCards, type Cards } from '../diagnosis';
import type { Bench } from '../engine';
import type { CardMessage } from './card.worker';
import address from './card.worker?worker&url';
import { startWorker } from './trustedWorker';

/** A slice of work on the page, ms. */
const SLICE = 8;

function onThePage(bench: Bench, hear: (message: CardMessage) => void): () => void {
	const making = makingCards(bench);
	let timer: ReturnType<typeof setTimeout>;
	const slice = () => {
		try {
			const end = performance.now() + SLICE;
			let step = making.next();
			while (!step.done && performance.now() < end) step = making.next();
			if (step.done) return hear({ kind: 'cards', cards: step.value as Cards });
			hear({ kind: 'progress', progress: step.value });
			timer = setTimeout(slice, 0);
		} catch (error) {
			hear({ kind: 'failed', message: String(error) });
		}
	};
	timer = setTimeout(slice, 50);
	return () => clearTimeout(timer);
}

/**
 * Works out both cards of a bench: `hear` is told how far it is and, last and once, what came of it.
 * Gives a function that stops it.
 */
export function makeCards(bench: Bench, hear: (message: CardMessage) => void): () => void {
	let worker: Worker;
	try {
		worker = startWorker(address);
	} catch {
		return onThePage(bench, hear);
	}
	let stop = () => worker.terminate();
	worker.onmessage = ({ data }: MessageEvent<CardMessage>) => {
		if (data.kind !== 'progress') worker.terminate();
		hear(data);
	};
	// The worker's file could not be loaded, or broke before it could answer.
	worker.onerror = (event) => {
		event.preventDefault();
		worker.terminate();
		stop = onThePage(bench, hear);
	};
	worker.postMessage(bench);
	return () => stop();
}
