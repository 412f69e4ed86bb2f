/**
 * Resistances between all pairs at once. Nodes are taken out by star-mesh as in solve.ts, fewest
 * neighbours first, and then put back one by one: what a node v with shares p (g_j over their sum s)
 * reads to any other node x is 1/s + Σ p_j R(j,x) − Σ p_j p_k R(j,k). The last sum is one number for each
 * node, so a pair costs one product for each neighbour, and there are few of those on a bench. It does
 * subtract, which nothing bounds where a loop of megohms stands over milliohms; the plain
 * `resistanceIn` does not, and is what the meter reads.
 */

/** What a node was joined to when it was taken out. */
interface Star {
	readonly node: number;
	readonly around: readonly number[];
	readonly shares: readonly number[];
	/** All its conductances, siemens. */
	readonly sum: number;
}

class Taking {
	/** Conductance between two nodes, siemens. */
	private readonly g: Float64Array;
	private readonly degree: Int32Array;
	private readonly left: Int32Array;

	constructor(
		private readonly nodes: number,
		ends: Int32Array,
		siemens: Float64Array
	) {
		const n = nodes;
		this.g = new Float64Array(n * n);
		this.degree = new Int32Array(n);
		this.left = Int32Array.from({ length: n }, (_, i) => i);
		for (let k = 0; k < siemens.length; k++) {
			const a = ends[2 * k]!;
			const b = ends[2 * k + 1]!;
			if (a !== b) this.join(a, b, siemens[k]!);
		}
	}

	private join(a: number, b: number, siemens: number) {
		const { g, nodes, degree } = this;
		const before = g[a * nodes + b]!;
		if (before === 0) {
			degree[a]!++;
			degree[b]!++;
		}
		g[a * nodes + b] = g[b * nodes + a] = before + siemens;
	}

	/** Takes out the node with the fewest neighbours; `many` nodes are left. */
	next(many: number): Star {
		const { g, nodes, degree, left } = this;
		let at = 0;
		let fewest = degree[left[0]!]!;
		for (let i = 1; i < many && fewest > 1; i++) {
			if (degree[left[i]!]! >= fewest) continue;
			at = i;
			fewest = degree[left[i]!]!;
		}
		const node = left[at]!;
		left[at] = left[many - 1]!;
		const around: number[] = [];
		let sum = 0;
		for (let i = 0; i < many - 1 && around.length < degree[node]!; i++) {
			const siemens = g[node * nodes + left[i]!]!;
			if (siemens === 0) continue;
			around.push(left[i]!);
			sum += siemens;
		}
		const shares = around.map((j) => g[node * nodes + j]! / sum);
		for (let x = 0; x < around.length; x++) {
			degree[around[x]!]!--;
			const siemens = g[node * nodes + around[x]!]!;
			for (let y = 0; y < x; y++) this.join(around[x]!, around[y]!, siemens * shares[y]!);
		}
		return { node, around, shares, sum };
	}
}

/**
 * Resistance between every two nodes, ohms, at `a * nodes + b`; Infinity where nothing joins them.
 * `ends`: the two nodes of each branch one after the other; `siemens`: its conductance, over zero.
 */
export function allPairsOhms(nodes: number, ends: Int32Array, siemens: Float64Array): Float64Array {
	const taking = new Taking(nodes, ends, siemens);
	const stars: Star[] = [];
	for (let many = nodes; many > 0; many--) stars.push(taking.next(many));
	stars.reverse();
	const place = new Int32Array(nodes);
	stars.forEach(({ node }, i) => (place[node] = i));
	const ohms = new Float64Array(nodes * nodes);
	for (let v = 0; v < nodes; v++) putBack(ohms, nodes, v, stars[v]!, place);
	return inOrder(ohms, nodes, place);
}

/** The row of a node that is put back in place `v`, behind all those that are back already. */
function putBack(ohms: Float64Array, nodes: number, v: number, star: Star, place: Int32Array) {
	const { around, shares, sum } = star;
	const row = ohms.subarray(v * nodes, v * nodes + v);
	let own = 1 / sum;
	for (let x = 0; x < around.length; x++)
		for (let y = 0; y < x; y++)
			own -= shares[x]! * shares[y]! * ohms[place[around[x]!]! * nodes + place[around[y]!]!]!;
	row.fill(own);
	for (let x = 0; x < around.length; x++) {
		const share = shares[x]!;
		const from = place[around[x]!]! * nodes;
		for (let i = 0; i < v; i++) row[i]! += share * ohms[from + i]!;
	}
	for (let i = 0; i < v; i++) ohms[i * nodes + v] = row[i]!;
}

function inOrder(ohms: Float64Array, nodes: number, place: Int32Array): Float64Array {
	const out = new Float64Array(nodes * nodes);
	for (let a = 0; a < nodes; a++) {
		const from = place[a]! * nodes;
		for (let b = 0; b < nodes; b++) out[a * nodes + b] = ohms[from + place[b]!]!;
	}
	return out;
}
