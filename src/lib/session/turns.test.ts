import { afterEach, expect, it, vi } from 'vitest';
import { Turns } from './turns';

afterEach(() => vi.unstubAllGlobals());

/** Frames that come when the test says so. */
function frames() {
	let waiting: (() => void)[] = [];
	vi.stubGlobal('requestAnimationFrame', (run: () => void) => waiting.push(run));
	vi.stubGlobal('setTimeout', (run: () => void) => run());
	return () => {
		const now = waiting;
		waiting = [];
		now.forEach((run) => run());
		return now.length;
	};
}

it('does one piece a frame, in order, and then rests', () => {
	const frame = frames();
	const done: string[] = [];
	const turns = new Turns([() => done.push('a'), () => done.push('b')]);
	turns.all();
	expect(done).toEqual([]);
	frame();
	expect(done).toEqual(['a']);
	frame();
	expect(done).toEqual(['a', 'b']);
	expect(frame()).toBe(0);
});

it('gives every piece its turn, however often all are asked for', () => {
	const frame = frames();
	const done: string[] = [];
	const turns = new Turns([() => done.push('a'), () => done.push('b'), () => done.push('c')]);
	for (let i = 0; i < 6; i++) {
		turns.all();
		frame();
	}
	expect(done).toEqual(['a', 'b', 'c', 'a', 'b', 'c']);
});

it('does all at once where there are no frames', () => {
	vi.stubGlobal('requestAnimationFrame', undefined);
	const done: number[] = [];
	const turns = new Turns([() => done.push(1), () => done.push(2)]);
	turns.all();
	expect(done).toEqual([1, 2]);
});
