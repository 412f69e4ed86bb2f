/** Works out a test card away from the page: a large panel takes its time. One bench in, one answer out. */
import { cardOf } from '../diagnosis';
import type { Bench } from '../engine';

addEventListener('message', ({ data }: MessageEvent<Bench>) => {
	try {
		postMessage({ ok: true, card: cardOf(data) });
	} catch (error) {
		postMessage({ ok: false, message: error instanceof Error ? error.message : String(error) });
	}
});
