import { afterEach, expect, it, vi } from 'vitest';
import { framesByHand } from './frames.fixture';
import { Turns } from './turns';

afterEach(() => vi.unstubAllGlobals());

it('does one piece a frame, in order, and then rests', () => {
	const frame = framesByHand();
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
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns([() => done.push('a'), () => done.push('b'), () => done.push('c')]);
	for (let i = 0; i < 6; i++) {
		turns.all();
		frame();
	}
	expect(done).toEqual(['a', 'b', 'c', 'a', 'b', 'c']);
});

it('rests for two frames where one came late, and then works every other frame', () => {
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns(['a', 'b', 'c', 'd'].map((name) => () => done.push(name)));
	const after = (took?: number) => {
		frame(took);
		return done.join('');
	};
	turns.all();
	expect([after(), after()]).toEqual(['a', 'ab']);
	expect([after(33), after(), after()]).toEqual(['ab', 'ab', 'abc']);
	expect([after(), after()]).toEqual(['abc', 'abcd']);
	expect(frame()).toBe(0);
	// Two seconds without a late frame, and every frame has its piece again.
	for (let i = 0; i < 16; i++) {
		turns.all();
		while (frame() > 0);
	}
	done.length = 0;
	turns.all();
	[16, 16, 16, 16].forEach((took) => frame(took));
	expect(done.join('')).toBe('abcd');
});

it('needs no second frame for a piece that draws nothing', () => {
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns([
		() => done.push('a'),
		() => (done.push('b'), false),
		() => done.push('c')
	]);
	turns.all();
	// The second frame comes late: two of rest, and every piece that draws has two from then on.
	[16, 33, 16, 16, 16].forEach((took) => frame(took));
	expect(done.join('')).toBe('abc');
});

it('takes no frame for late where all are as slow, nor the first after a pause', () => {
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns(['a', 'b', 'c'].map((name) => () => done.push(name)));
	turns.all();
	[33, 33, 33].forEach((took) => frame(took));
	expect(done).toEqual(['a', 'b', 'c']);
	frame(33);
	turns.all();
	[900, 33, 33].forEach((took) => frame(took));
	expect(done).toEqual(['a', 'b', 'c', 'a', 'b', 'c']);
});

it('has what comes often in every fourth frame, and no piece beside it', () => {
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns(
		['a', 'b', 'c'].map((name) => () => done.push(name)),
		() => done.push('#')
	);
	for (let i = 0; i < 9; i++) {
		turns.all();
		turns.often();
		frame();
		expect(done).toHaveLength(i + 1);
	}
	expect(done.join('')).toBe('#abc#abc#');
	// Asked for once more it still comes, and then there is rest.
	done.length = 0;
	turns.often();
	while (frame() > 0);
	expect(done.filter((one) => one === '#')).toHaveLength(1);
});

it('starves nothing where every frame comes later than the one before', () => {
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns(
		['a', 'b'].map((name) => () => done.push(name)),
		() => done.push('#')
	);
	turns.all();
	turns.often();
	for (let took = 16, i = 0; i < 20; i++, took *= 1.6) frame(took);
	expect([...done].sort()).toEqual(['#', 'a', 'b']);
});

it('does not take all frames for late after one that came at once', () => {
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns(['a', 'b', 'c'].map((name) => () => done.push(name)));
	turns.all();
	// A long frame, and the next right behind it, as after a task that took too long.
	[16, 90, 1].forEach((took) => frame(took));
	for (let i = 0; i < 40; i++) {
		turns.all();
		frame(16);
	}
	const before = done.length;
	for (let i = 0; i < 240; i++) {
		turns.all();
		frame(16);
	}
	// A piece every other frame for the two seconds after the last late one, then one in every frame.
	expect(done.length - before).toBeGreaterThan(180);
});

it('goes on after a piece that fails', () => {
	const frame = framesByHand();
	const done: string[] = [];
	const turns = new Turns([
		() => {
			throw new Error('cannot be drawn');
		},
		() => done.push('b')
	]);
	turns.all();
	expect(() => frame()).toThrow('cannot be drawn');
	frame();
	expect(done).toEqual(['b']);
	turns.all();
	expect(() => frame()).toThrow('cannot be drawn');
	frame();
	expect(done).toEqual(['b', 'b']);
});

it('does all at once where there are no frames', () => {
	vi.stubGlobal('requestAnimationFrame', undefined);
	const done: number[] = [];
	const turns = new Turns([() => done.push(1), () => done.push(2)], () => done.push(3));
	turns.all();
	turns.often();
	expect(done).toEqual([1, 2, 3]);
});
