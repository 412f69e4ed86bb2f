/**
 * Resistance and voltage by star-mesh elimination: every node but the two in question is taken out,
 * and its neighbours are joined by g_i·g_j / Σg. Only additions, products and quotients of positive
 * numbers, so a milliohm beside a gigaohm stays exact; there is no matrix to become singular, and a
 * floating part of the circuit is simply not reached. Sources are turned into currents (Norton) and
 * shared out with the same weights. Source: star-mesh transform, Rosen 1924 (from memory).
 */
import type { Bench, NodeName, Ohms, Volts } from './bench';
import { circuit, type Conductor } from './circuit';

/** A resistor with an optional source in series, + at `a`. */
export interface Branch {
	readonly a: NodeName;
	readonly b: NodeName;
	readonly ohms: Ohms;
	readonly volts?: Volts;
}

/** A wire may be so short that its ohms round to nothing; its conductance must stay a number. */
const LEAST_OHMS: Ohms = 1e-100;

interface Mesh {
	/** Conductance between neighbours, siemens. */
	readonly g: Map<NodeName, Map<NodeName, number>>;
	/** Current pushed into a node by sources, amperes. */
	readonly push: Map<NodeName, number>;
}

function addTo(map: Map<NodeName, number>, key: NodeName, value: number) {
	map.set(key, (map.get(key) ?? 0) + value);
}

/** The part of the circuit that hangs together with `start`, as a mesh of conductances. */
function meshAround(branches: readonly Branch[], start: NodeName): Mesh {
	const touching = new Map<NodeName, Branch[]>();
	for (const branch of branches)
		for (const end of [branch.a, branch.b]) {
			const list = touching.get(end);
			if (list) list.push(branch);
			else touching.set(end, [branch]);
		}
	const mesh: Mesh = { g: new Map([[start, new Map()]]), push: new Map() };
	const seen = new Set<Branch>();
	const waiting = [start];
	for (let node = waiting.pop(); node !== undefined; node = waiting.pop())
		for (const branch of touching.get(node) ?? []) {
			if (seen.has(branch)) continue;
			seen.add(branch);
			for (const end of [branch.a, branch.b])
				if (!mesh.g.has(end)) {
					mesh.g.set(end, new Map());
					waiting.push(end);
				}
			if (branch.a === branch.b) continue;
			const siemens = 1 / Math.max(branch.ohms, LEAST_OHMS);
			addTo(mesh.g.get(branch.a)!, branch.b, siemens);
			addTo(mesh.g.get(branch.b)!, branch.a, siemens);
			if (branch.volts) {
				addTo(mesh.push, branch.a, branch.volts * siemens);
				addTo(mesh.push, branch.b, -branch.volts * siemens);
			}
		}
	return mesh;
}

/** Takes one node out, leaving every voltage between the others as it was. */
function takeOut(mesh: Mesh, node: NodeName) {
	const around = [...mesh.g.get(node)!];
	const total = around.reduce((sum, [, g]) => sum + g, 0);
	const current = mesh.push.get(node) ?? 0;
	for (const [i, [x, gx]] of around.entries()) {
		mesh.g.get(x)!.delete(node);
		if (current !== 0) addTo(mesh.push, x, current * (gx / total));
		for (const [y, gy] of around.slice(i + 1)) {
			const joint = gx * (gy / total);
			addTo(mesh.g.get(x)!, y, joint);
			addTo(mesh.g.get(y)!, x, joint);
		}
	}
	mesh.g.delete(node);
	mesh.push.delete(node);
}

/** Reduces the mesh to the two nodes, fewest neighbours first. */
function reduceTo(mesh: Mesh, a: NodeName, b: NodeName) {
	const rest = new Set([...mesh.g.keys()].filter((n) => n !== a && n !== b));
	while (rest.size > 0) {
		let best: NodeName | null = null;
		let fewest = Infinity;
		for (const node of rest) {
			const degree = mesh.g.get(node)!.size;
			if (degree < fewest) [best, fewest] = [node, degree];
			if (fewest <= 1) break;
		}
		takeOut(mesh, best!);
		rest.delete(best!);
	}
}

/** Float noise of a solve, relative: results are given to twelve significant digits. */
const trim = (value: number): number => (value === 0 ? 0 : Number(value.toPrecision(12)));

/** Resistance between two nodes with every source at zero volts, ohms; Infinity where nothing joins them. */
export function resistanceIn(branches: readonly Branch[], a: NodeName, b: NodeName): Ohms {
	if (a === b) return 0;
	const mesh = meshAround(
		branches.map((r) => ({ a: r.a, b: r.b, ohms: r.ohms })),
		a
	);
	if (!mesh.g.has(b)) return Infinity;
	reduceTo(mesh, a, b);
	return trim(1 / mesh.g.get(a)!.get(b)!);
}

/** Potential of `a` less that of `b`, volts; null where nothing ties the two. Below 1e-10 V is zero. */
export function voltageIn(branches: readonly Branch[], a: NodeName, b: NodeName): Volts | null {
	if (a === b) return 0;
	const mesh = meshAround(branches, a);
	if (!mesh.g.has(b)) return null;
	reduceTo(mesh, a, b);
	const volts = (mesh.push.get(a) ?? 0) / mesh.g.get(a)!.get(b)!;
	return Math.abs(volts) < 1e-10 ? 0 : trim(volts);
}

/** Which supplies are on while a circuit is solved. */
export type Supplies = { readonly phantom: boolean; readonly signal: string | null };
export const PHANTOM_ONLY: Supplies = { phantom: true, signal: null };

const isOn = (c: Conductor, on: Supplies): boolean =>
	c.emf !== undefined && (c.emf.supply === 'phantom' ? on.phantom : c.emf.device === on.signal);

/** The bench as branches, with just the named supplies on; the others are at zero volts. */
export function branchesOf(bench: Bench, on: Supplies): Branch[] {
	return circuit(bench).conductors.map((c) => ({
		a: c.a,
		b: c.b,
		ohms: c.ohms,
		...(isOn(c, on) && { volts: c.emf!.volts })
	}));
}

/** Resistance between two nodes of the whole bench, device insides included, ohms. */
export const resistance = (bench: Bench, a: NodeName, b: NodeName): Ohms =>
	resistanceIn(circuit(bench).conductors, a, b);

/** Voltage from `a` to `b` of the whole bench, phantom on and signals at zero, volts; null if untied. */
export const voltage = (bench: Bench, a: NodeName, b: NodeName): Volts | null =>
	voltageIn(branchesOf(bench, PHANTOM_ONLY), a, b);
