/** Works out the test cards away from the page: one bench in, word of how far it is, both cards out. */
import { makingCards, type CardProgress, type Cards } from '../diagnosis';
import type { Bench } from '../engine';

/** Time between two words of how far it is, ms. */
const PAUSE = 300;

addEventListener('message', ({ data }: MessageEvent<Bench>) => {
	const send = (message: CardMessage) => postMessage(message);
	try {
		const making = makingCards(data);
		let told = performance.now();
		for (let step = making.next(); ; step = making.next()) {
			if (step.done) return send({ kind: 'cards', cards: step.value as Cards });
			if (performance.now() - told < PAUSE) continue;
			told = performance.now();
			send({ kind: 'progress', progress: step.value });
		}
	} catch (error) {
		send({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
	}
});

export type CardMessage =
	| { readonly kind: 'progress'; readonly progress: CardProgress }
	| { readonly kind: 'cards'; readonly cards: Cards }
	| { readonly kind: 'failed'; readonly message: string };
