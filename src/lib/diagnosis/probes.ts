/**
 * Probes from outside: a plug state and a pair of nodes. What can be reached with a meter are the
 * contacts of sockets, the terminals of devices and the panel; a plug's own conductors are not
 * among them, because a bare plug stands in for whatever is on the learner's cable.
 */
import {
	DEVICES,
	PANEL,
	SOCKETS,
	inState,
	isJoined,
	nodesOf,
	pairsOf,
	statesOf,
	type Bench,
	type NodeName,
	type Pair,
	type When
} from '../engine';

export interface Probe {
	readonly when: When;
	readonly pair: Pair;
}
export type ProbeAnswer = 'joined' | 'apart';

/** Kinds of bare plug that a tester carries; a dummy or a shorting plug is not among them. */
const TEST_STATES: readonly string[] = ['none', 'ts', 'trs', 'three-pin'];

/** Plug states: as in the file, then each socket in turn empty or with a bare plug that fits. */
export const statesOfBench = (bench: Bench): When[] => [
	{},
	...bench.sockets.flatMap((s) =>
		statesOf(bench, s.id)
			.filter((state) => TEST_STATES.includes(state))
			.map((state): When => ({ [s.id]: state }))
	)
];

const contactsOf = (bench: Bench): NodeName[] =>
	bench.sockets.flatMap((s) => nodesOf(s.id, SOCKETS[s.kind].contacts));
const panelOf = (bench: Bench): NodeName[] => (bench.panel.metal ? [PANEL] : []);

/** Every node that a probe may touch, in file order. */
export const probeNodes = (bench: Bench): NodeName[] => [
	...contactsOf(bench),
	...bench.devices.flatMap((d) => nodesOf(d.id, DEVICES[d.kind].terminals)),
	...panelOf(bench)
];

/** Those that can be reached at the panel itself: contacts of its sockets, and the panel. */
export const nodesAtPanel = (bench: Bench): NodeName[] => [...contactsOf(bench), ...panelOf(bench)];

/** Every probe of the bench: each state with each unordered pair, pairs in sorted order. */
export function probesOf(bench: Bench): Probe[] {
	const pairs = pairsOf(probeNodes(bench));
	return statesOfBench(bench).flatMap((when) => pairs.map((pair): Probe => ({ when, pair })));
}

/** Whether the pair is one net in that plug state. */
export const answerTo = (bench: Bench, probe: Probe): ProbeAnswer =>
	isJoined(inState(bench, probe.when), ...probe.pair) ? 'joined' : 'apart';
