/**
 * Exact resistances of a network of whole siemens, as fractions of whole numbers: fraction-free
 * elimination (Bareiss 1968, from memory) of the conductance matrix with one node as reference. Rows
 * that an elimination step does not touch are scaled only when they are next needed.
 */

/** A network with numbered nodes and whole conductances, siemens. It must hang together. */
export interface Network {
	readonly nodes: number;
	readonly ends: Int32Array;
	readonly siemens: Float64Array;
}

/** A fraction; `under` is over zero. */
export interface Fraction {
	readonly over: bigint;
	readonly under: bigint;
}

/** Nodes with the fewest neighbours first, as they would be taken out; the last is the reference. */
function orderOf({ nodes, ends }: Network): number[] {
	const near = Array.from({ length: nodes }, () => new Set<number>());
	for (let k = 0; k < ends.length; k += 2) {
		near[ends[k]!]!.add(ends[k + 1]!);
		near[ends[k + 1]!]!.add(ends[k]!);
	}
	const left = new Set(near.keys());
	const order: number[] = [];
	while (left.size > 0) {
		const node = [...left].reduce((a, b) => (near[b]!.size < near[a]!.size ? b : a));
		const around = [...near[node]!];
		for (const a of around) {
			near[a]!.delete(node);
			for (const b of around) if (a !== b) near[a]!.add(b);
		}
		left.delete(node);
		order.push(node);
	}
	return order;
}

type Rows = Map<number, bigint>[];

/** The conductance matrix without the reference, and a 1 in a column of its own for each wanted node. */
function rowsOf({ ends, siemens }: Network, place: ReadonlyMap<number, number>, wanted: number[]) {
	const many = place.size - 1;
	const rows: Rows = Array.from({ length: many }, () => new Map());
	const add = (i: number, j: number, x: bigint) => rows[i]!.set(j, (rows[i]!.get(j) ?? 0n) + x);
	siemens.forEach((g, k) => {
		const [a, b] = [place.get(ends[2 * k]!)!, place.get(ends[2 * k + 1]!)!];
		const whole = BigInt(g);
		if (a < many) add(a, a, whole);
		if (b < many) add(b, b, whole);
		if (a >= many || b >= many) return;
		add(a, b, -whole);
		add(b, a, -whole);
	});
	wanted.forEach((node, c) => {
		if (place.get(node)! < many) rows[place.get(node)!]!.set(many + c, 1n);
	});
	return rows;
}

/** Eliminates in place, above and below; every row's own figure is then the determinant, which it returns. */
function eliminate(rows: Rows): bigint {
	const made = rows.map(() => 1n);
	let before = 1n;
	const upToDate = (i: number) => {
		if (made[i] !== before) for (const [j, x] of rows[i]!) rows[i]!.set(j, (x * before) / made[i]!);
		made[i] = before;
	};
	rows.forEach((pivotRow, k) => {
		upToDate(k);
		const pivot = pivotRow.get(k)!;
		rows.forEach((row, i) => {
			if (i === k || !row.has(k)) return;
			upToDate(i);
			const factor = row.get(k)!;
			row.delete(k);
			const columns = new Set([...row.keys(), ...pivotRow.keys()]);
			columns.delete(k);
			for (const j of columns) {
				const x = (row.get(j) ?? 0n) * pivot - factor * (pivotRow.get(j) ?? 0n);
				if (x === 0n) row.delete(j);
				else row.set(j, x / before);
			}
			made[i] = pivot;
		});
		made[k] = pivot;
		before = pivot;
	});
	rows.forEach((_, i) => upToDate(i));
	return before;
}

/** Resistance between any two of the wanted nodes, ohms. */
export function exactOhms(network: Network, wanted: number[]): (a: number, b: number) => Fraction {
	const order = orderOf(network);
	const place = new Map(order.map((node, i) => [node, i]));
	const rows = rowsOf(network, place, wanted);
	const under = eliminate(rows);
	const at = (a: number, b: number): bigint =>
		rows[place.get(a)!]?.get(rows.length + wanted.indexOf(b)) ?? 0n;
	return (a, b) => ({ over: at(a, a) + at(b, b) - at(a, b) - at(b, a), under });
}

/** How far a number is from a fraction, as part of it. */
export function errorOf(x: number, { over, under }: Fraction): number {
	const bits = new BigUint64Array(new Float64Array([x]).buffer)[0]!;
	const power = Number((bits >> 52n) & 0x7ffn) - 1075;
	const figures = (bits & ((1n << 52n) - 1n)) | (1n << 52n);
	const [up, down] = [BigInt(Math.max(power, 0)), BigInt(Math.max(-power, 0))];
	const [mine, right] = [(figures * under) << up, over << down];
	const apart = mine > right ? mine - right : right - mine;
	return Number((apart * 10n ** 24n) / right) / 1e24;
}
