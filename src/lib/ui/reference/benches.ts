/** Benches that the reference opens: one socket, the plugs that go into it, perhaps some jumpers. */
import {
	PLUG_KINDS,
	SOCKETS,
	fits,
	type Bench,
	type PlugKind,
	type SocketKind
} from '../../engine';
import { wiredBench, type Claim } from '../../words/reference';
import { kindWords } from '../../words';

const loosePlugs = (kinds: readonly PlugKind[]) =>
	kinds.map((kind, i) => ({ id: `p${i + 1}`, kind, socket: null, travel: 30.5 }));

/** Plugs that somebody at a bench has: no dummy and no shorting plug, those can be fetched. */
const COMMON: readonly PlugKind[] = ['ts', 'trs', 'three-pin'];

/** The socket, with the common plugs that fit it lying beside; a metal panel where it has a lug for one. */
export const benchWith = (kind: SocketKind): Bench => ({
	...wiredBench(kind, {}),
	title: kindWords(kind).name,
	panel: { metal: SOCKETS[kind].contacts.includes('G') },
	plugs: loosePlugs(COMMON.filter((plug) => fits(plug, kind)))
});

/** The jumpers of a claim, with the plugs that it speaks of lying beside; null where it has none. */
export function benchOfClaim(kind: SocketKind, { proof = [] }: Claim): Bench | null {
	const wired = proof.find((p) => p.wires);
	if (!wired) return null;
	const named = PLUG_KINDS.filter((plug) => proof.some((p) => p.with === plug));
	return {
		...wiredBench(kind, wired),
		title: kindWords(kind).name,
		plugs: loosePlugs(named.length > 0 ? named : COMMON.filter((plug) => fits(plug, kind)))
	};
}
