import { describe, expect, it } from 'vitest';
import { saver, type Clock } from './later';

function bed() {
	const saved: number[] = [];
	let timer: (() => void) | null = null;
	let leave: (() => void) | null = null;
	const clock: Clock = {
		wait: (run) => {
			timer = run;
			return () => (timer = null);
		},
		leaving: (run) => {
			leave = run;
			return () => (leave = null);
		}
	};
	const keeper = saver<number>((n) => saved.push(n), clock);
	return {
		saved,
		keeper,
		pause: () => timer?.(),
		leave: () => leave?.(),
		left: () => leave === null
	};
}

describe('a saver', () => {
	it('saves the last of many once there is a pause', () => {
		const { saved, keeper, pause } = bed();
		for (const n of [1, 2, 3]) keeper.keep(n);
		expect(saved).toEqual([]);
		pause();
		expect(saved, 'it was not quiet yet').toEqual([]);
		pause();
		expect(saved).toEqual([3]);
		keeper.keep(4);
		pause();
		expect(saved, 'a single value waits once').toEqual([3, 4]);
	});
	it('saves at once when the page is left, and only once', () => {
		const { saved, keeper, pause, leave } = bed();
		keeper.keep(7);
		leave();
		expect(saved).toEqual([7]);
		pause();
		leave();
		expect(saved).toEqual([7]);
	});
	it('saves at once where it is asked to, and forgets the timer', () => {
		const { saved, keeper, pause } = bed();
		keeper.keep(1);
		keeper.keep(2, true);
		expect(saved).toEqual([2]);
		pause();
		expect(saved).toEqual([2]);
	});
	it('saves what is left over when it is closed, and listens no more', () => {
		const { saved, keeper, left } = bed();
		keeper.keep(4);
		keeper.close();
		expect(saved).toEqual([4]);
		expect(left()).toBe(true);
	});
});
