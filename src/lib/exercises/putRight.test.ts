/** Mending: changes are counted by ends, and the fewest are searched for. Worked out by hand. */
import { describe, expect, it } from 'vitest';
import type { Wire } from '../engine';
import { readExercises } from './content.node';
import type { PutRightExercise } from './exercise';
import { judge } from './judge';
import { changesBetween, fewestToMend } from './putRight';

const mend = readExercises().find((e) => e.id === 'put-right-sleeve-cup') as PutRightExercise;
const w = (id: string, from: string, to: string, mm = 40): Wire => ({ id, from, to, awg: 26, mm });
const judged = (wires: readonly Wire[]) => judge(mend, { kind: 'put-right', wires });
const [hot, , shield, lug] = mend.bench.wires as [Wire, Wire, Wire, Wire];
const cold = w('new', 'A.R', 'A.3');

describe('changes between two wirings', () => {
	it('are none where the ends are the same, whichever way round, however long, whatever the name', () =>
		expect(changesBetween([w('a', 'A.1', 'A.S')], [w('b', 'A.S', 'A.1', 90)])).toBe(0));
	it('are one for a wire in, one for a wire out, two for a wire moved', () => {
		const one = [w('a', 'A.1', 'A.S')];
		expect(changesBetween([], one)).toBe(1);
		expect(changesBetween(one, [])).toBe(1);
		expect(changesBetween(one, [w('a', 'A.1', 'A.T')])).toBe(2);
	});
	it('count each of two wires between the same contacts', () => {
		const twice = [w('a', 'A.1', 'A.S'), w('b', 'A.1', 'A.S')];
		expect(changesBetween(twice, [w('c', 'A.1', 'A.S')])).toBe(1);
		expect(changesBetween([], twice)).toBe(2);
	});
});

describe('a mending', () => {
	it('needs three changes here: two jumpers out, one in', () => expect(fewestToMend(mend)).toBe(3));
	it('with the fewest changes scores 1', () =>
		expect(judged([hot, shield, cold])).toMatchObject({
			score: 1,
			passed: true,
			putRight: { changes: 3, fewest: 3, allow: 0 }
		}));
	it('that works with more changes scores what the fewest are of them, and does not pass', () => {
		const spare = [hot, shield, cold, w('again', 'A.2', 'A.T')];
		expect(judged(spare)).toMatchObject({ score: 0.75, passed: false, putRight: { changes: 4 } });
		expect(judged(spare).items.every((i) => i.right)).toBe(true);
	});
	it('with as many more as are allowed scores 1', () => {
		const kind = { ...mend, allow: 1 };
		const wires = [hot, shield, cold, w('again', 'A.2', 'A.T')];
		expect(judge(kind, { kind: 'put-right', wires })).toMatchObject({ score: 1, passed: true });
	});
	it('that leaves the lug on the shield is unsafe, however few its changes', () =>
		expect(judged([hot, shield, lug, cold])).toMatchObject({ score: 0, unsafe: true }));
	it('that does not work is judged by what it fails, not by its changes', () => {
		const { score, passed } = judged([hot, shield]);
		expect(passed).toBe(false);
		expect(score).toBeGreaterThan(0.5);
		expect(score).toBeLessThan(1);
	});
	it('whose wires leave the socket is refused', () =>
		expect(judged([w('x', 'A.1', 'DESK.hot')]).refused).toContain('leaves the socket'));
});
