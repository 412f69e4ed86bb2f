/**
 * Telling one kind of socket from another when no mark says which it is. First what the eye sees:
 * the openings in front and how many lugs there are. Then what a meter and a bare plug find where
 * nobody knows which lug is which: not "T and TN sound" but "one pair of lugs sounds". All of it is
 * asked of the engine; the chassis lug stands on the flange, is known by sight and left out.
 */
import {
	EMPTY_BENCH,
	PLUGS,
	SOCKETS,
	SOCKET_KINDS,
	fits,
	inState,
	netsOf,
	nodesOf,
	plugIn,
	type Bench,
	type PlugConductor,
	type PlugState,
	type SocketKind
} from '../engine';

/** One socket of that kind, by itself, as `A`. */
export const aloneBench = (kind: SocketKind): Bench => ({
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind, bush: 'insulated', label: '' }]
});

/** Its contacts without the chassis lug, which the trade does not count. */
export const countedContacts = (kind: SocketKind): string[] =>
	SOCKETS[kind].contacts.filter((c) => c !== 'G');

/** What the eye sees of a socket without any mark. */
export interface Sight {
	readonly contacts: number;
	readonly chassisLug: boolean;
	readonly threePin: 'female' | 'male' | null;
	readonly jack: boolean;
}
export const sightOf = (kind: SocketKind): Sight => ({
	contacts: countedContacts(kind).length,
	chassisLug: SOCKETS[kind].contacts.includes('G'),
	threePin: SOCKETS[kind].threePin,
	jack: SOCKETS[kind].springs.length > 0
});

/** Whether both have the same openings in front. */
export const sameFront = (a: SocketKind, b: SocketKind): boolean =>
	sightOf(a).threePin === sightOf(b).threePin && sightOf(a).jack === sightOf(b).jack;

/** Whether the eye tells them apart: by the openings, or by the number of lugs. */
export const isSeenApart = (a: SocketKind, b: SocketKind): boolean =>
	!sameFront(a, b) || sightOf(a).contacts !== sightOf(b).contacts;

/** The other kinds that look the same. */
export const lookAlikes = (kind: SocketKind): SocketKind[] =>
	SOCKET_KINDS.filter((other) => other !== kind && !isSeenApart(kind, other));

/** States with the plugs of a tester's bag; a dummy or a shorting plug is not among them. */
export const BAG: readonly PlugState[] = ['none', 'ts', 'trs', 'three-pin'];

/** The states of the list that every one of the kinds can be in. */
export const commonStates = (
	kinds: readonly SocketKind[],
	states: readonly PlugState[] = BAG
): PlugState[] => states.filter((s) => s === 'none' || kinds.every((kind) => fits(s, kind)));

/** Nets, by number, in one plug state: of each counted contact, and of each part of the plug. */
export interface View {
	readonly lugs: readonly number[];
	readonly parts: ReadonlyMap<PlugConductor, number>;
}

/** What conducts where in that state, with a bare plug. The plug must fit. */
export function viewOf(kind: SocketKind, state: PlugState): View {
	const bench = inState(aloneBench(kind), { A: state });
	const { indexOf } = netsOf(bench);
	const plug = plugIn(bench, 'A');
	return {
		lugs: nodesOf('A', countedContacts(kind)).map((node) => indexOf.get(node)!),
		parts: new Map(
			plug ? PLUGS[plug.kind].conductors.map((c) => [c, indexOf.get(`${plug.id}.${c}`)!]) : []
		)
	};
}

/** Something to count: pairs of lugs that sound, or lugs that sound with this part of the plug. */
export type Counted = 'pairs' | PlugConductor;

/** A count that differs: so many on the one kind, so many on the other. */
export interface Sign {
	readonly state: PlugState;
	readonly what: Counted;
	readonly here: number;
	readonly there: number;
}

const countIn = ({ lugs, parts }: View, what: Counted): number =>
	what === 'pairs'
		? lugs.reduce((sum, net, i) => sum + lugs.slice(i + 1).filter((n) => n === net).length, 0)
		: lugs.filter((net) => net === parts.get(what)).length;

/**
 * The first count that differs between the two kinds, whatever their lugs are called; null if none
 * does. States come in the order of `BAG`, pairs of lugs before parts of the plug.
 */
export function signBetween(here: SocketKind, there: SocketKind): Sign | null {
	for (const state of commonStates([here, there])) {
		const [a, b] = [viewOf(here, state), viewOf(there, state)];
		for (const what of ['pairs', ...a.parts.keys()] as const) {
			const sign = { state, what, here: countIn(a, what), there: countIn(b, what) };
			if (sign.here !== sign.there) return sign;
		}
	}
	return null;
}
