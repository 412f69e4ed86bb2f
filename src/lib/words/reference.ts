/**
 * What the reference says of a kind of socket. A claim that the engine can check carries its proof:
 * a plug state, perhaps some jumpers, and pairs that must be joined or apart in it. The tests run
 * every proof; the page offers those with jumpers to be tried on the bench.
 */
import {
	EMPTY_BENCH,
	PANEL,
	SEATED,
	SOCKETS,
	inState,
	isJoined,
	plugIn,
	type Bench,
	type Millimetres,
	type NodeName,
	type PlugState,
	type SocketKind
} from '../engine';
import type { Source } from '../exercises/exercise';

/** A contact of the socket, `plug.tip` for a part of the plug that is in it, or `panel`. */
export type ProofNode = string;
export interface Proof {
	readonly with: PlugState;
	/** How far the plug is in, mm; seated where it is left out. */
	readonly travel?: Millimetres;
	/** Jumpers between contacts. */
	readonly wires?: readonly (readonly [string, string])[];
	/** The panel and the bush are of metal. */
	readonly metal?: boolean;
	readonly joined?: readonly (readonly [ProofNode, ProofNode])[];
	readonly apart?: readonly (readonly [ProofNode, ProofNode])[];
	/** Contacts that the kind does not have. */
	readonly lacks?: readonly string[];
}
export interface Claim {
	readonly text: string;
	readonly proof?: readonly Proof[];
}
export interface Reference {
	readonly uses: readonly Claim[];
	readonly notFor: readonly Claim[];
	/** What to mind when this kind is handled: both belong to this kind alone. */
	readonly cautions: { readonly chassis: string; readonly mains: string };
	/** Sources of this kind's own claims, beside those that all of its sort share. */
	readonly sources: readonly Source[];
}

/** The socket by itself as `A`, with the proof's jumpers. */
export function wiredBench(kind: SocketKind, proof: Pick<Proof, 'wires' | 'metal'>): Bench {
	const isMetal = proof.metal === true;
	return {
		...EMPTY_BENCH,
		panel: { metal: isMetal },
		sockets: [{ id: 'A', kind, bush: isMetal ? 'metal' : 'insulated', label: '' }],
		wires: (proof.wires ?? []).map(([from, to], i) => ({
			id: `w${i + 1}`,
			from: `A.${from}`,
			to: `A.${to}`,
			awg: 26,
			mm: 40
		}))
	};
}

/** What of the proof the engine does not bear out, one line each; empty where all of it is true. */
export function gainsaid(kind: SocketKind, proof: Proof): string[] {
	const seated = inState(wiredBench(kind, proof), { A: proof.with });
	const plug = plugIn(seated, 'A')?.id;
	const travel = proof.travel ?? SEATED;
	const bench = { ...seated, plugs: seated.plugs.map((p) => ({ ...p, travel })) };
	const nodeOf = (name: ProofNode): NodeName =>
		name === PANEL ? PANEL : name.startsWith('plug.') ? `${plug}${name.slice(4)}` : `A.${name}`;
	const is = ([a, b]: readonly [ProofNode, ProofNode]) => isJoined(bench, nodeOf(a), nodeOf(b));
	const where = `${kind}, ${proof.with}`;
	return [
		...(proof.joined ?? []).filter((p) => !is(p)).map((p) => `${where}: ${p.join('–')} apart`),
		...(proof.apart ?? []).filter(is).map((p) => `${where}: ${p.join('–')} joined`),
		...(proof.lacks ?? [])
			.filter((c) => SOCKETS[kind].contacts.includes(c))
			.map((c) => `${where}: there is ${c}`)
	];
}
