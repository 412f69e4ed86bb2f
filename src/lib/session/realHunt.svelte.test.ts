/** A hunt on real hardware, without a screen: what is kept, what is taken back, where advice may go. */
import { describe, expect, it } from 'vitest';
import { Advisor, nodesAtPanel, type Ask, type Reply } from '../diagnosis';
import type { KeptReadings } from '../storage/readings';
import type { Adviser } from './advice';
import { RealHunt } from './realHunt.svelte';
import { benchOf } from '../engine/bench.fixture';
import { startBench } from './start';

const TWO = benchOf({
	sockets: [
		{ id: 'A', kind: 'jack-trs' },
		{ id: 'B', kind: 'jack-trs' }
	]
});

/** Answers at once, and remembers what it was asked. */
function asked() {
	const asks: Ask[] = [];
	const advisor = new Advisor();
	const advise = (ask: Ask, onReply: (reply: Reply) => void) => {
		asks.push(ask);
		for (const reply of advisor.advise(ask)) if (reply) onReply(reply);
		return () => {};
	};
	return { asks, adviser: { advise } as unknown as Adviser };
}
function begun() {
	const kept: KeptReadings[] = [];
	const hunt = new RealHunt(startBench(), (k) => kept.push(k));
	const { asks, adviser } = asked();
	hunt.begin(adviser);
	return { hunt, kept, asks };
}

describe('a hunt on real hardware', () => {
	it('keeps what is set up and what was noted, so that another one goes on from there', () => {
		const { hunt, kept } = begun();
		hunt.setPlug('A', 'trs');
		hunt.touch('A.T');
		hunt.touch('A.TN');
		hunt.note('apart', 'no beep');
		hunt.touch('A.R');
		const last = kept.at(-1)!;
		const other = new RealHunt(startBench());
		other.open(last.bench, last.noted, last.most, last.near, last.at);
		expect(other.noted).toEqual(hunt.noted);
		expect([other.when, other.first, other.second]).toEqual([{ A: 'trs' }, 'A.R', '']);
	});
	it('has advice that touches the panel alone, as long as that is all that can be reached', () => {
		const { hunt, asks } = begun();
		const near = nodesAtPanel(hunt.bench);
		expect(asks.at(-1)!.within).toBeUndefined();
		hunt.put('first', 'DESK.hot');
		hunt.setNear(true);
		expect(hunt.first, 'a probe at a far end comes off').toBe('');
		expect(asks.at(-1)!.within).toEqual(near);
		for (let n = 0; n < 30 && hunt.next; n++) {
			expect(hunt.next.pair.every((node) => near.includes(node))).toBe(true);
			hunt.take(hunt.next);
			const isJoined = hunt.pair!.every((node) => ['A.2', 'A.TN', 'A.T'].includes(node));
			hunt.note(isJoined ? 'joined' : 'apart', '');
		}
		expect(hunt.next).toBeNull();
		expect(hunt.isStuck || hunt.answer !== null || hunt.reply?.conflict !== undefined).toBe(true);
		hunt.setNear(false);
		expect(hunt.isStuck).toBe(false);
	});
	it('takes a reading back, and strikes an older one of the same probe', () => {
		const { hunt } = begun();
		for (const answer of ['joined', 'apart'] as const) {
			hunt.touch('A.R');
			hunt.touch('A.RN');
			hunt.note(answer, answer);
		}
		expect(hunt.noted.map((n) => n.struck)).toEqual([true, false]);
		hunt.undo();
		expect(hunt.noted.map((n) => n.struck)).toEqual([false]);
		expect(hunt.said).toBe('The last step is taken back.');
	});
	it('draws both sockets of a pair that lies on two, and else the one that is looked at', () => {
		const { hunt } = begun();
		hunt.open(TWO);
		expect(hunt.drawn).toEqual(['A']);
		hunt.touch('A.T');
		hunt.show('B');
		expect(hunt.drawn).toEqual(['A', 'B']);
		hunt.touch('B.T');
		expect(hunt.drawn).toEqual(['A', 'B']);
		hunt.note('apart', 'no beep');
		expect(hunt.drawn).toEqual(['B']);
		hunt.take({ when: {}, pair: ['A.S', 'B.S'] });
		expect(hunt.drawn).toEqual(['A', 'B']);
	});
	it('brings another panel back as it was, readings and all', () => {
		const { hunt } = begun();
		hunt.touch('A.R');
		hunt.touch('A.RN');
		hunt.note('joined', 'beep');
		const before = hunt.kept();
		hunt.open(TWO, hunt.noted);
		expect(hunt.noted).toEqual([]);
		const { bench, noted, most, near, at } = before;
		hunt.open(bench, noted, most, near, at);
		expect(hunt.kept()).toEqual(before);
	});
});
