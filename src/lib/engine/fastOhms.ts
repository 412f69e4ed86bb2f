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
	/** Conductance between two nodes, siemens; zero where they are not neighbours. */
	readonly table: Float64Array;
	/** Neighbours of each node, those that are taken out already among them. */
	private readonly near: number[][];
	private readonly degree: Int32Array;
	private readonly isOut: Uint8Array;
	private readonly left: Int32Array;

	constructor(
		private readonly nodes: number,
		ends: Int32Array,
		siemens: Float64Array
	) {
		const n = nodes;
		this.table = new Float64Array(n * n);
		this.near = Array.from({ length: n }, () => []);
		this.degree = new Int32Array(n);
		this.isOut = new Uint8Array(n);
		this.left = Int32Array.from({ length: n }, (_, i) => i);
		for (let k = 0; k < siemens.length; k++) {
			const a = ends[2 * k]!;
			const b = ends[2 * k + 1]!;
			if (a !== b) this.join(a, b, siemens[k]!);
		}
	}

	private join(a: number, b: number, siemens: number) {
		const { table, nodes, degree, near } = this;
		const before = table[a * nodes + b]!;
		if (before === 0) {
			degree[a]!++;
			degree[b]!++;
			near[a]!.push(b);
			near[b]!.push(a);
		}
		table[a * nodes + b] = table[b * nodes + a] = before + siemens;
	}

	/** The node with the fewest neighbours of `many` that are left, taken from the list. */
	private fewest(many: number): number {
		const { degree, left } = this;
		let at = 0;
		let fewest = degree[left[0]!]!;
		for (let i = 1; i < many && fewest > 1; i++) {
			if (degree[left[i]!]! >= fewest) continue;
			at = i;
			fewest = degree[left[i]!]!;
		}
		const node = left[at]!;
		left[at] = left[many - 1]!;
		return node;
	}

	/** Takes out the node with the fewest neighbours; `many` nodes are left. */
	next(many: number): Star {
		const { table, nodes, degree, isOut } = this;
		const node = this.fewest(many);
		isOut[node] = 1;
		const row = node * nodes;
		const around: number[] = [];
		let sum = 0;
		for (const other of this.near[node]!) {
			if (isOut[other] === 1) continue;
			around.push(other);
			sum += table[row + other]!;
		}
		const shares = around.map((j) => table[row + j]! / sum);
		for (let x = 0; x < around.length; x++) {
			degree[around[x]!]!--;
			const siemens = table[row + around[x]!]!;
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
	// All conductances are in the stars now, so their table takes the ohms: new memory costs more than they do.
	const back = new Back(nodes, taking.table);
	for (let v = nodes - 1; v >= 0; v--) back.put(stars[v]!);
	return back.ohms;
}

/** Nodes that are put back one by one. */
class Back {
	private readonly nodes: Int32Array;
	private readonly row: Float64Array;
	private many = 0;

	/** `ohms`: the table to write, in which no node must read anything to itself. */
	constructor(
		private readonly size: number,
		readonly ohms: Float64Array
	) {
		this.nodes = new Int32Array(size);
		this.row = new Float64Array(size);
	}

	/** Writes row and column of a node, as far as others are back. */
	put({ node, around, shares, sum }: Star) {
		const { ohms, size, many } = this;
		let own = 1 / sum;
		for (let x = 0; x < around.length; x++)
			for (let y = 0; y < x; y++)
				own -= shares[x]! * shares[y]! * ohms[around[x]! * size + around[y]!]!;
		this.row.fill(own, 0, many);
		// Most nodes of a bench have two neighbours at most when their turn comes: two are taken at once.
		let x = 0;
		for (; x + 1 < around.length; x += 2)
			this.addTwo(around[x]! * size, shares[x]!, around[x + 1]! * size, shares[x + 1]!);
		if (x < around.length) this.addOne(around[x]! * size, shares[x]!);
		this.write(node);
		this.nodes[this.many++] = node;
	}

	private addOne(from: number, share: number) {
		const { ohms, nodes, row, many } = this;
		for (let i = 0; i < many; i++) row[i]! += share * ohms[from + nodes[i]!]!;
	}

	private addTwo(from: number, share: number, other: number, rest: number) {
		const { ohms, nodes, row, many } = this;
		for (let i = 0; i < many; i++) {
			const at = nodes[i]!;
			row[i]! += share * ohms[from + at]! + rest * ohms[other + at]!;
		}
	}

	private write(node: number) {
		const { ohms, nodes, row, size, many } = this;
		for (let i = 0; i < many; i++) {
			const at = nodes[i]!;
			ohms[node * size + at] = ohms[at * size + node] = row[i]!;
		}
	}
}
