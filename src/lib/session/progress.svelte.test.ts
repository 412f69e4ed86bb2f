import { describe, expect, it } from 'vitest';
import type { Attempt } from '../storage/progress';
import { memoryProgress, type ProgressStore } from '../storage/progressStore';
import { tried } from '../storage/progress.testing';
import { Progress } from './progress.svelte';
import { attemptOf, exercisesIn, newIn, type Verdict } from './progressAttempt';
import { DAY } from './progressReview';

const START = Date.UTC(2031, 4, 6, 18);
const judged: Verdict = {
	id: 'wire-one',
	kind: 'wire',
	score: 1,
	passed: true,
	beliefs: [],
	refused: null
};
const failing = { ...judged, passed: false, score: 0.5 };

/** A learner's progress with a store and a clock of its own. */
function learner(store: ProgressStore = memoryProgress()) {
	let time = START;
	const open = () => Promise.resolve(store);
	const progress = new Progress(open, () => new Date(time));
	const wait = (ms: number) => {
		time += ms;
		progress.tick();
	};
	return { progress, store, wait, again: () => new Progress(open, () => new Date(time)) };
}
const refusing = (how: Partial<ProgressStore>): ProgressStore => ({ ...memoryProgress(), ...how });
const refuse = () => Promise.reject(new Error('no room'));

describe('a judged answer', () => {
	it('becomes a try', () => {
		const at = new Date(START);
		expect(attemptOf({ ...failing, beliefs: ['a', 'b', 'a'] }, 2, at)).toEqual(
			tried({ at: at.toISOString(), passed: false, score: 0.5, hints: 2, beliefs: ['a', 'b'] })
		);
	});
	it('counts doubts, right or wrong, and readings, where there are any', () => {
		const at = new Date(START);
		const predict = { rightUnsure: 2, wrongUnsure: 1 };
		expect(attemptOf({ ...judged, predict }, 0, at).unsure).toBe(3);
		expect(attemptOf({ ...judged, find: { used: 6 } }, 0, at).probes).toBe(6);
		expect(attemptOf({ ...judged, name: { used: 4 } }, 0, at).probes).toBe(4);
	});
	it('is kept, and is there on the next page', async () => {
		const { progress, again } = learner();
		await progress.record(judged, 1);
		expect(progress.attempts).toEqual([tried({ at: new Date(START).toISOString(), hints: 1 })]);
		const next = again();
		expect(next.attempts).toEqual([]);
		await next.load();
		expect(next.attempts).toEqual(progress.attempts);
	});
	it('is not kept when it was refused', async () => {
		const { progress, store } = learner();
		await progress.record({ ...failing, refused: 'wires leave the socket' });
		expect(progress.attempts).toEqual([]);
		expect((await store.read()).attempts).toEqual([]);
	});
	it('stays until the page is left where the store takes nothing, and that is said', async () => {
		const { progress } = learner(refusing({ add: refuse }));
		await progress.record(judged);
		await progress.reload();
		expect([progress.trouble, progress.attempts.length]).toEqual(['not kept', 1]);
	});
	it('goes to the store with the next one when it was not taken at first', async () => {
		const kept = memoryProgress();
		let full = true;
		const add = (all: readonly Attempt[]) => (full ? refuse() : kept.add(all));
		const { progress, wait } = learner({ ...kept, add });
		await progress.record(judged);
		wait(1000);
		full = false;
		await progress.record(judged);
		expect([progress.trouble, (await kept.read()).attempts]).toEqual([null, progress.attempts]);
		expect(progress.attempts).toHaveLength(2);
	});
	it('that was not taken goes when the record is cleared', async () => {
		const { progress } = learner(refusing({ add: refuse }));
		await progress.record(judged);
		expect(await progress.replace([])).toBe(true);
		expect([progress.trouble, progress.attempts]).toEqual([null, []]);
	});
	it('is not lost while the store is still being opened', async () => {
		const { progress } = learner();
		await Promise.all([
			progress.record(judged),
			progress.load(),
			progress.record({ ...judged, id: 'x' })
		]);
		expect(exercisesIn(progress.attempts)).toBe(2);
	});
});

describe('opening', () => {
	it('says why nothing outlasts the page', async () => {
		const { progress } = learner(memoryProgress('blocked'));
		await progress.load();
		expect([progress.ready, progress.memoryOnly]).toEqual([true, 'blocked']);
	});
	it('goes on without what cannot be read, and says so', async () => {
		const { progress } = learner(refusing({ read: refuse }));
		await progress.load();
		expect([progress.ready, progress.trouble]).toEqual([true, 'not read']);
	});
});

describe('tries from a file', () => {
	const mine = tried();
	const theirs = [tried({ score: 0 }), tried({ exercise: 'other' })];
	async function withMine(how: Partial<ProgressStore> = {}) {
		const made = learner(refusing(how));
		await made.store.replace([mine]).catch(() => {});
		await made.progress.load();
		return made;
	}
	it('are counted before they are let in', () => {
		expect([newIn(theirs, [mine]), newIn([mine], theirs), newIn(theirs, [])]).toEqual([1, 0, 2]);
	});
	it('merge with those that are here, and these stay as they are', async () => {
		const { progress, store } = await withMine();
		expect(await progress.merge(theirs)).toBe(true);
		expect(progress.attempts).toEqual([theirs[1], mine]);
		expect((await store.read()).attempts).toEqual(progress.attempts);
	});
	it('take the place of those that are here', async () => {
		const { progress, store } = await withMine();
		expect(await progress.replace(theirs)).toBe(true);
		expect(progress.attempts).toEqual([theirs[1], theirs[0]]);
		expect((await store.read()).attempts).toEqual(progress.attempts);
	});
	it('change nothing when the store refuses them', async () => {
		for (const change of ['merge', 'replace'] as const) {
			const kept: readonly Attempt[] = [mine];
			const read = () => Promise.resolve({ attempts: kept, unread: 0 });
			const { progress } = await withMine({ add: refuse, replace: refuse, read });
			expect(await progress[change](theirs)).toBe(false);
			expect([progress.attempts, progress.trouble]).toEqual([[mine], 'not changed']);
		}
	});
});

describe('today’s set', () => {
	const course = ['a', 'b', 'c'];
	async function allPassed() {
		const made = learner();
		for (const id of ['b', 'a', 'c']) {
			await made.progress.record({ ...judged, id });
			made.wait(1000);
		}
		return made;
	}
	it('is empty where nothing is due', async () => {
		const { progress } = await allPassed();
		expect([progress.beginSet(course), progress.due(course)]).toEqual([null, []]);
	});
	it('goes through what is due, one after another', async () => {
		const { progress, wait } = await allPassed();
		wait(9 * DAY);
		expect(progress.beginSet(course)).toBe('b');
		expect(progress.restOfSet(course, 'b')).toEqual(['a', 'c']);
		await progress.record({ ...judged, id: 'b' });
		expect(progress.restOfSet(course, 'b')).toEqual(['a', 'c']);
		expect(progress.restOfSet(course, 'a')).toEqual(['c']);
		expect(progress.restOfSet(course, 'c')).toEqual([]);
	});
	it('does not turn in a circle when an exercise is left out', async () => {
		const { progress, wait } = await allPassed();
		wait(9 * DAY);
		progress.beginSet(course);
		expect(progress.restOfSet(course, 'c')).toEqual([]);
	});
	it('is what is still due after a reload', async () => {
		const { progress, wait, again } = await allPassed();
		wait(9 * DAY);
		progress.beginSet(course);
		await progress.record({ ...judged, id: 'b' });
		const next = again();
		await next.load();
		expect(next.restOfSet(course, 'b')).toEqual(['a', 'c']);
		expect(next.restOfSet(course, 'a')).toEqual(['c']);
		expect(next.restOfSet(course, 'c')).toEqual([]);
	});
	it('holds what was failed again once it is due again', async () => {
		const { progress, wait } = await allPassed();
		wait(9 * DAY);
		await progress.record({ ...failing, id: 'b' });
		expect(progress.due(course)).toEqual(['a', 'c']);
		wait(600_000);
		expect(progress.due(course)).toEqual(['a', 'c', 'b']);
	});
});
