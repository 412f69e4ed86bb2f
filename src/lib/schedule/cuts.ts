/**
 * The cut list: what to cut, from which reel, and how much to buy. A length in a bench file runs from lug to
 * lug; what is stripped at both ends comes on top, and a margin on the sum. Both are common
 * practice, stated with the list and free to be changed.
 */
import type { Bench, Millimetres } from '../engine';
import { grouped } from './grouped';
import type { Colour } from './roles';
import { rounded, runsOf, squareMm, type Run } from './runs';

export interface Allowance {
	/** Stripped at each end of a wire, mm. */
	readonly strip: Millimetres;
	/** Of a cable's jacket, taken off at each end, mm. */
	readonly jacket: Millimetres;
	/** Bought on top of the sum, per cent. */
	readonly margin: number;
}
/** Common practice. */
export const ALLOWANCE: Allowance = { strip: 5, jacket: 30, margin: 10 };
/** What an allowance may be. */
export const ALLOWANCE_RANGES: Readonly<Record<keyof Allowance, { from: number; to: number }>> = {
	strip: { from: 0, to: 100 },
	jacket: { from: 0, to: 500 },
	margin: { from: 0, to: 100 }
};

export interface Piece {
	readonly name: string;
	/** Length to cut, mm. */
	readonly mm: Millimetres;
}
interface Sums {
	/** Longest first, so that what is left of the reel still serves the short ones. */
	readonly pieces: readonly Piece[];
	/** Of all pieces, mm. */
	readonly mm: Millimetres;
	/** With the margin, in whole millimetres, mm. */
	readonly buy: Millimetres;
}
/** Wire of one gauge and colour. */
export interface WireCut extends Sums {
	readonly awg: number;
	readonly mm2: number;
	readonly colour: Colour;
}
/** Cable of one gauge and number of cores. */
export interface CableCut extends Sums {
	readonly awg: number;
	readonly mm2: number;
	readonly cores: number;
}
export interface Cuts {
	readonly allowance: Allowance;
	/** The thickest first, then by the letters of the colour. */
	readonly wires: readonly WireCut[];
	readonly cables: readonly CableCut[];
}

function sumsOf(pieces: readonly Piece[], { margin }: Allowance): Sums {
	const sorted = [...pieces].sort((a, b) => b.mm - a.mm);
	const mm = rounded(pieces.reduce((sum, p) => sum + p.mm, 0));
	return { pieces: sorted, mm, buy: Math.ceil(rounded(mm * (1 + margin / 100))) };
}

function wireCuts(runs: readonly Run[], allowance: Allowance): WireCut[] {
	const wires = runs.filter((r) => r.kind !== 'core');
	return [...grouped(wires, (r) => `${r.awg} ${r.colour}`).values()]
		.map((group): WireCut => {
			const { awg, mm2, colour } = group[0]!;
			const pieces = group.map(({ name, mm }) => ({ name, mm: rounded(mm + 2 * allowance.strip) }));
			return { awg, mm2, colour, ...sumsOf(pieces, allowance) };
		})
		.sort((a, b) => a.awg - b.awg || (a.colour < b.colour ? -1 : 1));
}

function cableCuts(bench: Bench, allowance: Allowance): CableCut[] {
	const cables = bench.cables.filter((c) => c.cores.length > 0);
	return [...grouped(cables, (c) => `${c.awg} ${c.cores.length}`).values()]
		.map((group): CableCut => {
			const { awg, cores } = group[0]!;
			const pieces = group.map(({ id, m }) => ({
				name: id,
				mm: rounded(m * 1000 + 2 * allowance.jacket)
			}));
			const mm2 = squareMm(awg);
			return { awg, mm2, cores: cores.length, ...sumsOf(pieces, allowance) };
		})
		.sort((a, b) => a.awg - b.awg || a.cores - b.cores);
}

/** Everything to cut and to buy for the bench. */
export const cutsOf = (
	bench: Bench,
	allowance: Allowance = ALLOWANCE,
	runs: readonly Run[] = runsOf(bench)
): Cuts => ({
	allowance,
	wires: wireCuts(runs, allowance),
	cables: cableCuts(bench, allowance)
});
