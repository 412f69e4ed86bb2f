/** Random tries for the properties of this folder: every one of them passes the gate. */
import fc from 'fast-check';
import { EXERCISE_KINDS } from '../exercises/exercise';
import { withoutDoubles, type Attempt } from './progress';

const id = fc.stringMatching(/^[a-z0-9]{1,5}(-[a-z0-9]{1,5}){0,3}$/);
const time = fc.oneof(
	fc.integer({ min: 0, max: Date.UTC(10_000, 0) - 1 }),
	// Few instants, so that doubles and equal instants are met.
	fc.integer({ min: 0, max: 3 })
);

export const attempt: fc.Arbitrary<Attempt> = fc.record({
	exercise: fc.oneof(id, fc.constantFrom('one', 'two')),
	kind: fc.constantFrom(...EXERCISE_KINDS),
	at: time.map((t) => new Date(t).toISOString()),
	score: fc.oneof(
		fc.constantFrom(0, 1),
		fc.integer({ min: 0, max: 10_000 }).map((n) => n / 10_000)
	),
	passed: fc.boolean(),
	unsure: fc.nat(1000),
	probes: fc.option(fc.nat(100_000)),
	hints: fc.nat(1000),
	beliefs: fc.array(id, { maxLength: 4 })
});

/** Tries as a store holds them: no doubles, oldest first. */
export const attempts: fc.Arbitrary<Attempt[]> = fc
	.array(attempt, { maxLength: 25 })
	.map(withoutDoubles);

/** One good try, the given things changed. */
export const tried = (change: Partial<Attempt> = {}): Attempt => ({
	exercise: 'wire-one',
	kind: 'wire',
	at: '2031-05-06T07:08:09.000Z',
	score: 1,
	passed: true,
	unsure: 0,
	probes: null,
	hints: 0,
	beliefs: [],
	...change
});
