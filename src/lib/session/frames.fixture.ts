import { vi } from 'vitest';

/** What follows a frame is a task of its own in a browser; here it comes at once. */
class Channel {
	port1 = { onmessage: () => {} };
	port2 = { postMessage: () => this.port1.onmessage() };
}

/** Frames that come when the test says so, some milliseconds after the last; gives how many had waited. */
export function framesByHand(): (took?: number) => number {
	let waiting: ((at: number) => void)[] = [];
	let at = 0;
	vi.stubGlobal('requestAnimationFrame', (run: (at: number) => void) => waiting.push(run));
	vi.stubGlobal('MessageChannel', Channel);
	return (took = 16) => {
		at += took;
		const now = waiting;
		waiting = [];
		now.forEach((run) => run(at));
		return now.length;
	};
}
