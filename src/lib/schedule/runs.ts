/**
 * Runs: every conductor that somebody cuts and solders, from lug to lug. A wire is one run, and so is
 * every core of a cable. Plugs that happen to be in and faults of the file are no part of the plan.
 */
import {
	crossSection,
	netsOf,
	splitNode,
	type Bench,
	type Millimetres,
	type NodeName
} from '../engine';
import { colourOf, functionOf, type Colour, type RunFunction } from './roles';

export interface Run {
	/** A wire's id, or `cable:core`, counted from 0 as in the bench file. */
	readonly name: string;
	/** `jumper`: both ends on one socket. `wire`: between two places. `core`: one conductor of a cable. */
	readonly kind: 'jumper' | 'wire' | 'core';
	readonly from: NodeName;
	readonly to: NodeName;
	readonly awg: number;
	/** Copper cross-section, mm². */
	readonly mm2: number;
	/** From lug to lug, without what is stripped. */
	readonly mm: Millimetres;
	readonly colour: Colour;
	readonly function: RunFunction;
	/** The net that it belongs to at rest (no plug in any socket): the net's first node by name. */
	readonly net: NodeName;
	/** Text for a sleeve at the `from` end and at the `to` end. No two of a bench are the same. */
	readonly labels: readonly [string, string];
}

/** Twelve figures: what a sum of millimetres means, without what it leaves behind in binary. */
export const rounded = (value: number): number => Number(value.toPrecision(12));

/** Copper of a gauge in mm², to four figures. */
export const squareMm = (awg: number): number => Number((crossSection(awg) * 1e6).toPrecision(4));

/** The bench as it is planned: nothing in the sockets, nothing broken. */
export const atRest = (bench: Bench): Bench => ({
	...bench,
	plugs: bench.plugs.map((p) => ({ ...p, socket: null })),
	faults: []
});

/** The bench at rest with nothing on it that bears no conductor: no plug without a tail, no device without a cable. */
export function solderedBench(bench: Bench): Bench {
	const ends = [
		...bench.wires.flatMap((w) => [w.from, w.to]),
		...bench.cables.flatMap((c) => c.cores.flat())
	].map((node) => splitNode(node)[0]);
	const bears = ({ id }: { readonly id: string }) => ends.includes(id);
	const rest = atRest(bench);
	return { ...rest, plugs: rest.plugs.filter(bears), devices: rest.devices.filter(bears) };
}

/** A run's name on a label: people count cores from one, `c1/1`. */
export const labelName = (name: string): string =>
	name.replace(/:(\d+)$/, (_, core: string) => `/${Number(core) + 1}`);

/** `w1 A.TN > A.2`, and the same from the other end: the end that the sleeve sits on stands first. */
const labelsOf = (name: string, from: NodeName, to: NodeName): readonly [string, string] => [
	`${labelName(name)} ${from} > ${to}`,
	`${labelName(name)} ${to} > ${from}`
];

/** Whether both nodes are contacts of one socket. */
function isOnOneSocket(bench: Bench, from: NodeName, to: NodeName): boolean {
	const [a] = splitNode(from);
	return a === splitNode(to)[0] && bench.sockets.some((s) => s.id === a);
}

/** Every conductor of the bench: wires in file order, then cables core by core. */
export function runsOf(bench: Bench): Run[] {
	const { list, indexOf } = netsOf(atRest(bench));
	const run = (
		name: string,
		kind: Run['kind'],
		[from, to]: readonly [NodeName, NodeName],
		awg: number,
		mm: Millimetres
	): Run => {
		const what = functionOf(bench, from, to);
		return {
			...{ name, kind, from, to, awg, mm2: squareMm(awg), mm },
			...{ colour: colourOf(what), function: what },
			net: list[indexOf.get(from)!]![0]!,
			labels: labelsOf(name, from, to)
		};
	};
	return [
		...bench.wires.map((w) => {
			const kind = isOnOneSocket(bench, w.from, w.to) ? 'jumper' : 'wire';
			return run(w.id, kind, [w.from, w.to], w.awg, w.mm);
		}),
		...bench.cables.flatMap((c) =>
			c.cores.map((ends, i) => run(`${c.id}:${i}`, 'core', ends, c.awg, rounded(c.m * 1000)))
		)
	];
}
