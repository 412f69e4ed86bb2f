/**
 * Nets of numbered nodes, for panels of thousands of contacts. Rem's algorithm (Dijkstra 1976, from
 * memory): both ends climb together and the way is shortened as they climb, so a joint costs little
 * more than reading its two ends. Every root is the least number of its net, so one pass in order
 * turns roots into net numbers with no search at all.
 */

/**
 * The net of each node, nets numbered as they first appear. `ends` holds the two nodes of each joint
 * one after the other.
 */
export function labelsOf(nodes: number, ends: Int32Array): Int32Array {
	const up = new Int32Array(nodes);
	for (let i = 0; i < nodes; i++) up[i] = i;
	for (let k = 0; k < ends.length; k += 2) {
		let a = ends[k]!;
		let b = ends[k + 1]!;
		let overA = up[a]!;
		let overB = up[b]!;
		while (overA !== overB)
			if (overA > overB) {
				up[a] = overB;
				if (a === overA) break;
				a = overA;
				overA = up[a]!;
			} else {
				up[b] = overA;
				if (b === overB) break;
				b = overB;
				overB = up[b]!;
			}
	}
	let nets = 0;
	for (let i = 0; i < nodes; i++) {
		const over = up[i]!;
		up[i] = over === i ? nets++ : up[over]!;
	}
	return up;
}
