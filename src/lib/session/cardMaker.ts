/**
 * Asks for a test card without holding up the page. Where no worker can be had, the card is worked
 * out on the page after it has been drawn.
 */
import { cardOf, type Card } from '../diagnosis';
import type { Bench } from '../engine';
import address from './card.worker?worker&url';
import { startWorker } from './trustedWorker';

export type CardAnswer =
	{ readonly ok: true; readonly card: Card } | { readonly ok: false; readonly message: string };

function onThePage(bench: Bench, answer: (answer: CardAnswer) => void): () => void {
	const timer = setTimeout(() => {
		try {
			answer({ ok: true, card: cardOf(bench) });
		} catch (error) {
			answer({ ok: false, message: String(error) });
		}
	}, 50);
	return () => clearTimeout(timer);
}

/** Works out the card of a bench and hands it to `answer`, once. Gives a function that stops it. */
export function makeCard(bench: Bench, answer: (answer: CardAnswer) => void): () => void {
	let worker: Worker;
	try {
		worker = startWorker(address);
	} catch {
		return onThePage(bench, answer);
	}
	let stop = () => worker.terminate();
	worker.onmessage = ({ data }: MessageEvent<CardAnswer>) => {
		worker.terminate();
		answer(data);
	};
	// The worker's file could not be loaded, or broke before it could answer.
	worker.onerror = (event) => {
		event.preventDefault();
		worker.terminate();
		stop = onThePage(bench, answer);
	};
	worker.postMessage(bench);
	return () => stop();
}
