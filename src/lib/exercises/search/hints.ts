/**
 * Hints for whoever wires: computed from the very wiring on the bench, never written down. First how
 * many changes, then at which contacts, then which. And after success, whether fewer wires would do.
 */
import { splitNode, type NodeName, type Wire } from '../../engine';
import type { PutRightExercise, WireExercise } from '../exercise';
import { fewestChanges, fewestWires, type ChangeSet, type Limits, type Search } from './search';

type Wiring = WireExercise | PutRightExercise;

const withWires = (exercise: Wiring, wires: readonly Wire[]) => ({
	...exercise,
	bench: { ...exercise.bench, wires }
});

/** The fewest changes from these wires to a right wiring of the exercise. */
export const hintFor = (
	exercise: Wiring,
	wires: readonly Wire[],
	limits: Partial<Limits> = {}
): Search => fewestChanges(withWires(exercise, wires), limits);

/** Contacts at which a way of mending works, each once; wires out first. */
export const placesOf = ({ out, in: put }: ChangeSet): NodeName[] => [
	...new Set([...out.flatMap((w) => [w.from, w.to]), ...put.flat()])
];

/** Sockets that those contacts are of, each once. */
export const socketsAt = (set: ChangeSet): string[] => [
	...new Set(placesOf(set).map((node) => splitNode(node)[0]))
];

/** How many wires there are, and how few would do. */
export interface Spare {
	readonly used: number;
	readonly fewest: number;
}
/** What a right wiring has to spare; null if it has nothing, or if the search gave up. */
export function spareOf(exercise: Wiring, wires: readonly Wire[]): Spare | null {
	const found = fewestWires(exercise, { sets: 1 });
	if (found.kind !== 'found' || found.changes >= wires.length) return null;
	return { used: wires.length, fewest: found.changes };
}
