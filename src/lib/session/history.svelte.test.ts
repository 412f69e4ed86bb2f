import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { History, MOST_STEPS } from './history.svelte';

const undoAll = <T>(history: History<T>): T[] => {
	const seen = [history.present];
	while (history.canUndo) {
		history.undo();
		seen.push(history.present);
	}
	return seen;
};

describe('a history', () => {
	test('begins with one value and no steps', () => {
		const history = new History('a');
		expect(history.present).toBe('a');
		expect([history.canUndo, history.canRedo]).toEqual([false, false]);
		history.undo();
		history.redo();
		expect(history.present).toBe('a');
	});

	test('undoes and redoes step by step', () => {
		const history = new History('a');
		history.commit('b');
		history.commit('c');
		expect(undoAll(history)).toEqual(['c', 'b', 'a']);
		history.redo();
		history.redo();
		expect([history.present, history.canRedo]).toEqual(['c', false]);
	});

	test('forgets what was undone once something new is done', () => {
		const history = new History('a');
		history.commit('b');
		history.undo();
		history.commit('c');
		expect(history.canRedo).toBe(false);
		expect(undoAll(history)).toEqual(['c', 'a']);
	});

	test('takes the same value for no step', () => {
		const bench = { wires: [] };
		const history = new History(bench);
		history.commit(bench);
		expect(history.canUndo).toBe(false);
		history.commit({ wires: [] });
		history.undo();
		history.commit(bench);
		expect(history.canRedo).toBe(true);
	});

	test('keeps the very value, not a copy or a proxy', () => {
		const next = { wires: [] };
		const history = new History<object>({});
		history.commit(next);
		expect(history.present).toBe(next);
	});

	test('keeps 200 steps, the newest', () => {
		const history = new History(0);
		for (let n = 1; n <= 250; n++) history.commit(n);
		const seen = undoAll(history);
		expect(seen).toHaveLength(MOST_STEPS + 1);
		expect([seen[0], seen.at(-1)]).toEqual([250, 50]);
	});

	test('may hold undefined like any other value', () => {
		const history = new History<string | undefined>('a');
		history.commit(undefined);
		history.commit('b');
		expect(undoAll(history)).toEqual(['b', undefined, 'a']);
	});
});

describe('a group of commits', () => {
	test('is one step', () => {
		const history = new History(0);
		for (const travel of [1, 2, 3]) history.commit(travel, 'travel p');
		expect(undoAll(history)).toEqual([3, 0]);
		history.redo();
		expect(history.present).toBe(3);
	});

	test('ends with another group, a commit without one, undo, redo, or when it is said', () => {
		const history = new History(0);
		history.commit(1, 'a');
		history.commit(2, 'b');
		history.commit(3);
		history.commit(4, 'b');
		history.endGroup();
		history.commit(5, 'b');
		history.undo();
		history.commit(6, 'b');
		expect(undoAll(history)).toEqual([6, 4, 3, 2, 1, 0]);
	});

	test('begins with a change: a commit that changes nothing leaves the step before alone', () => {
		const history = new History(0);
		history.commit(1, 'a');
		history.commit(1, 'b');
		history.commit(2, 'b');
		expect(undoAll(history)).toEqual([2, 1, 0]);
	});
});

describe('a replaced value', () => {
	test('is no step', () => {
		const history = new History('a');
		history.commit('b');
		history.replace('B');
		expect(undoAll(history)).toEqual(['B', 'a']);
	});
	test('leaves nothing to redo', () => {
		const history = new History('a');
		history.commit('b');
		history.undo();
		history.replace('A');
		expect([history.present, history.canRedo, history.canUndo]).toEqual(['A', false, false]);
	});
});

test('a history agrees with a list and a place in it, whatever is done', () => {
	const deed = fc.oneof(
		fc.record({ do: fc.constant('commit' as const), to: fc.nat(9) }),
		fc.record({ do: fc.constantFrom('undo' as const, 'redo' as const) })
	);
	fc.assert(
		fc.property(fc.array(deed, { maxLength: 60 }), (deeds) => {
			const history = new History(0);
			let list = [0];
			let at = 0;
			for (const d of deeds) {
				if (d.do === 'commit') {
					history.commit(d.to);
					if (d.to !== list[at]) list = [...list.slice(0, ++at), d.to];
				} else {
					history[d.do]();
					at = d.do === 'undo' ? Math.max(0, at - 1) : Math.min(list.length - 1, at + 1);
				}
				expect(history.present).toBe(list[at]);
				expect([history.canUndo, history.canRedo]).toEqual([at > 0, at < list.length - 1]);
			}
		}),
		{ numRuns: 1000 }
	);
});
