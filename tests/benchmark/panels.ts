/**
 * Invented panels of hybrids, all alike, so that their counts are known by hand: n hybrids of ten on
 * a metal panel, each jumpered 1–S, 2–T, 3–R and cabled to a line input of its own whose chassis is
 * wired to the panel. Every node hangs together with every other through the inputs and the panel.
 */
import { checkBench, type Bench } from '../../src/lib/engine';

const JUMPERS = [
	['1', 'S'],
	['2', 'T'],
	['3', 'R']
] as const;
const CORES = [
	['1', 'shield'],
	['2', 'hot'],
	['3', 'cold']
] as const;

/** The panel as the JSON value of a bench file. */
export function panelFile(hybrids: number): object {
	const each = <T>(make: (i: number) => T): T[] =>
		Array.from({ length: hybrids }, (_, i) => make(i));
	return {
		format: 'solderside-bench',
		version: 1,
		panel: { metal: true },
		sockets: each((i) => ({ id: `H${i}`, kind: 'hybrid-10' })),
		wires: each((i) => [
			...JUMPERS.map(([a, b], k) => ({ id: `j${i}-${k}`, from: `H${i}.${a}`, to: `H${i}.${b}` })),
			{ id: `e${i}`, from: `D${i}.chassis`, to: 'panel', awg: 18, mm: 300 }
		]).flat(),
		devices: each((i) => ({ id: `D${i}`, kind: 'line-in' })),
		cables: each((i) => ({
			id: `c${i}`,
			m: 10 + (i % 1000),
			cores: CORES.map(([a, b]) => [`H${i}.${a}`, `D${i}.${b}`])
		}))
	};
}

export function panel(hybrids: number): Bench {
	const parsed = checkBench(panelFile(hybrids));
	if (!parsed.ok) throw new Error(`${parsed.problem.path}: ${parsed.problem.message}`);
	return parsed.value;
}

/**
 * What a panel must have, counted by hand. A hybrid: 11 nodes with its lug, 4 closed breaks, the lug
 * on the panel, 3 jumpers, 3 cores. An input: 4 nodes, two loads, its bond, the wire to the panel.
 * Nets: the panel with every shield, and a hot and a cold one for each hybrid.
 */
export const countsOf = (hybrids: number) => ({
	nodes: 15 * hybrids + 1,
	conductors: 15 * hybrids,
	nets: 2 * hybrids + 1
});
