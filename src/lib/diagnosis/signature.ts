/**
 * What a bench answers to every probe, in one string. Instead of a bit for each pair it writes, per
 * plug state, the number of the net that each node is on, numbered as they first appear: two benches
 * with the same nodes have the same string exactly when every pair has the same answer.
 */
import {
	inState,
	netsOf,
	withFaults,
	type Bench,
	type Fault,
	type NodeName,
	type When
} from '../engine';
import { faultListOf } from './faults';
import { probeNodes, statesOfBench } from './probes';

function partition(bench: Bench, when: When, nodes: readonly NodeName[]): string {
	const { indexOf } = netsOf(inState(bench, when));
	const numbers = new Map<number, number>();
	return nodes
		.map((node) => {
			const net = indexOf.get(node)!;
			if (!numbers.has(net)) numbers.set(net, numbers.size);
			return numbers.get(net)!;
		})
		.join(' ');
}

/** The answers to all probes; compare it only with that of the same bench under other faults. */
export function signature(bench: Bench): string {
	const nodes = probeNodes(bench);
	return statesOfBench(bench)
		.map((when) => partition(bench, when, nodes))
		.join('|');
}

/** Whether no probe can tell the two sets of faults apart on this bench. Empty means sound. */
export const sameClass = (bench: Bench, a: readonly Fault[], b: readonly Fault[]): boolean =>
	signature(withFaults(bench, a)) === signature(withFaults(bench, b));

/** The single faults of the list that no probe can tell from these. */
export function classOf(bench: Bench, faults: readonly Fault[]): Fault[] {
	const wanted = signature(withFaults(bench, faults));
	return faultListOf(bench).filter((f) => signature(withFaults(bench, [f])) === wanted);
}
