/**
 * The nets of one plug state, ready to be changed: which nodes and which joints each net has. A
 * change names joints that are gone and joints that have come; only the nets of their ends are
 * laid out again, and what it did is told as pairs of cells: two sets of nodes of which every pair
 * answers otherwise than before.
 */

/** Numbers grouped by their label, one group after another. */
class Groups {
	private readonly starts: Int32Array;
	private readonly members: Int32Array;

	constructor(labels: Int32Array, count: number) {
		const starts = (this.starts = new Int32Array(count + 1));
		for (const label of labels) if (label >= 0) starts[label + 1]!++;
		for (let i = 0; i < count; i++) starts[i + 1]! += starts[i]!;
		this.members = new Int32Array(starts[count]!);
		const next = starts.slice();
		labels.forEach((label, i) => {
			if (label >= 0) this.members[next[label]!++] = i;
		});
	}

	of(label: number): Int32Array {
		return this.members.subarray(this.starts[label]!, this.starts[label + 1]!);
	}
}

export type Cells = (a: Int32Array, b: Int32Array) => void;

export class StateNets {
	/** The net of each node. */
	readonly labels: Int32Array;
	private readonly parent: Int32Array;
	private readonly nodes: Groups;
	private readonly joints: Groups;
	private readonly seen: Groups;
	private readonly mark: Int32Array;
	private readonly out: Uint8Array;

	/** `places`: the node of each place that a probe touches. */
	constructor(
		count: number,
		private readonly ends: readonly number[],
		private readonly places: Int32Array
	) {
		this.parent = Int32Array.from({ length: count }, (_, i) => i);
		for (let k = 0; k < ends.length; k += 2) this.unite(ends[k]!, ends[k + 1]!);
		const roots = new Map<number, number>();
		this.labels = Int32Array.from({ length: count }, (_, i) => {
			const root = this.root(i);
			if (!roots.has(root)) roots.set(root, roots.size);
			return roots.get(root)!;
		});
		const nets = roots.size;
		const { labels } = this;
		this.nodes = new Groups(labels, nets);
		this.seen = new Groups(
			places.map((node) => labels[node]!),
			nets
		);
		this.joints = new Groups(
			Int32Array.from({ length: ends.length / 2 }, (_, k) => labels[ends[2 * k]!]!),
			nets
		);
		this.mark = new Int32Array(nets);
		this.out = new Uint8Array(ends.length / 2);
	}

	private root(start: number): number {
		const { parent } = this;
		let i = start;
		while (parent[i] !== i) i = parent[i] = parent[parent[i]!]!;
		return i;
	}

	private unite(a: number, b: number) {
		this.parent[this.root(a)] = this.root(b);
	}

	/** The nets that lose or gain a joint. */
	private touched(gone: readonly number[], come: readonly number[]): number[] {
		const { labels, ends, mark } = this;
		const nets: number[] = [];
		const touch = (node: number) => {
			const net = labels[node]!;
			if (mark[net] === 0) nets.push(net);
			mark[net] = 1;
		};
		for (const k of gone) touch(ends[2 * k]!);
		for (const node of come) touch(node);
		for (const net of nets) mark[net] = 0;
		return nets;
	}

	private layOut(nets: readonly number[], gone: readonly number[], come: readonly number[]) {
		const { parent, ends, out } = this;
		for (const net of nets) for (const node of this.nodes.of(net)) parent[node] = node;
		for (const k of gone) out[k] = 1;
		for (const net of nets)
			for (const k of this.joints.of(net))
				if (out[k] === 0) this.unite(ends[2 * k]!, ends[2 * k + 1]!);
		for (const k of gone) out[k] = 0;
		for (let k = 0; k < come.length; k += 2) this.unite(come[k]!, come[k + 1]!);
	}

	/** The places of a net by where they are now. */
	private piecesOf(net: number): Map<number, number[]> {
		const pieces = new Map<number, number[]>();
		for (const place of this.seen.of(net)) {
			const root = this.root(this.places[place]!);
			const piece = pieces.get(root);
			if (piece) piece.push(place);
			else pieces.set(root, [place]);
		}
		return pieces;
	}

	/** Tells every two cells of places whose pairs are changed: parted, or joined. */
	change(gone: readonly number[], come: readonly number[], tell: Cells) {
		if (gone.length === 0 && come.length === 0) return;
		const nets = this.touched(gone, come);
		if (nets.length === 1 && gone.length === 0) return;
		this.layOut(nets, gone, come);
		const cells = nets.flatMap((net) =>
			[...this.piecesOf(net)].map(([root, places]) => ({
				...{ net, root },
				places: Int32Array.from(places)
			}))
		);
		for (let i = 0; i < cells.length; i++)
			for (let j = i + 1; j < cells.length; j++) {
				const [x, y] = [cells[i]!, cells[j]!];
				if ((x.net === y.net) !== (x.root === y.root)) tell(x.places, y.places);
			}
	}
}
