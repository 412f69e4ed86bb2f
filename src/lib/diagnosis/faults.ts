/**
 * The faults that a bench may have, one at a time, in a fixed order: opens, bridges, swaps, break
 * contacts stuck open, stuck closed, bent springs. Within a kind, sockets stand in file order and
 * pairs in sorted order. `resistive` and `break-dirty` are no hypotheses: they leave the nets alone.
 */
import {
	breakContactsOf,
	circuit,
	contactsOf,
	pairsOf,
	wireNames,
	SOCKETS,
	type Bench,
	type Fault,
	type Pair
} from '../engine';

const pairsOfSockets = (bench: Bench): Pair[] =>
	bench.sockets.flatMap((s) => pairsOf(contactsOf(bench, s.id)));

const breaksOf = (bench: Bench): string[] =>
	bench.sockets.flatMap((s) => breakContactsOf(s.kind).map((c) => `${s.id}.${c}`));

/**
 * Pairs whose leads could have been exchanged: something lands on one of the two at least, and no
 * wire joins them directly (then both are one net, and an exchange would change nothing). Where the
 * bench has swaps of its own, what counts is where the wires really land.
 */
function swappable(bench: Bench): Pair[] {
	const { conductors, gaps } = circuit(bench);
	const wires = conductors.filter((c) => c.reason.kind === 'wire' || c.reason.kind === 'core');
	const cut = gaps.filter((g) => g.reason.kind === 'cut');
	const landed = new Set([...wires, ...cut].flatMap((w) => [w.a, w.b]));
	const joins = ([x, y]: Pair): boolean =>
		wires.some((w) => (w.a === x && w.b === y) || (w.a === y && w.b === x));
	return pairsOfSockets(bench).filter(
		(pair) => pair.some((contact) => landed.has(contact)) && !joins(pair)
	);
}

/** Every single fault of the list, "sound" not included. */
export const faultListOf = (bench: Bench): Fault[] => [
	...wireNames(bench).map((wire): Fault => ({ kind: 'open', wire })),
	...pairsOfSockets(bench).map((between): Fault => ({ kind: 'bridge', between })),
	...swappable(bench).map((contacts): Fault => ({ kind: 'swap', contacts })),
	...breaksOf(bench).map((contact): Fault => ({ kind: 'break-stuck-open', contact })),
	...breaksOf(bench).map((contact): Fault => ({ kind: 'break-stuck-closed', contact })),
	...bench.sockets.flatMap((s) =>
		SOCKETS[s.kind].springs.map((t): Fault => ({ kind: 'spring-bent', contact: `${s.id}.${t}` }))
	)
];

/** One text per fault, the same whichever way round its pair is written. */
export function faultKeyOf(fault: Fault): string {
	if (fault.kind === 'bridge') return `bridge ${[...fault.between].sort().join(' ')}`;
	if (fault.kind === 'swap') return `swap ${[...fault.contacts].sort().join(' ')}`;
	return 'wire' in fault ? `${fault.kind} ${fault.wire}` : `${fault.kind} ${fault.contact}`;
}
