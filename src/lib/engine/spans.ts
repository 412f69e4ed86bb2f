/**
 * Blocks that hang in series through contacts at rest, as jacks do that are wired break to tip: a
 * chain. A run of them whose contacts are closed is a span, and stands for its blocks as one, so that a
 * plug that cuts a chain costs a look for the place and not the chain's length. Only the places where a
 * chain is open are listed, and those where something else joins it.
 */

/** A contact at rest: a name of its own, and the blocks that it joins. */
export interface Rest {
	readonly name: string;
	readonly ends: readonly [number, number];
}

interface Chain {
	readonly blocks: readonly number[];
	/** Places after which the chain is open, ascending. */
	readonly open: number[];
	/** Places that something joins which is not of the chain, ascending. */
	readonly busy: number[];
}

export class Spans {
	/** Places looked at so far in the lists of chains; that a list makes room for one is not counted. */
	steps = 0;
	private readonly chains: Chain[] = [];
	private readonly chainOf: Int32Array;
	private readonly placeOf: Int32Array;
	/** Contacts of the chains, by name: the block before each. */
	private readonly before = new Map<string, number>();

	/** All contacts are open at first. */
	constructor(blocks: number, rests: readonly Rest[]) {
		this.chainOf = new Int32Array(blocks).fill(-1);
		this.placeOf = new Int32Array(blocks);
		const around: Rest[][] = Array.from({ length: blocks }, () => []);
		for (const rest of rests)
			if (rest.ends[0] !== rest.ends[1]) for (const end of rest.ends) around[end]!.push(rest);
		for (let block = 0; block < blocks; block++)
			if (around[block]!.length === 2 && this.chainOf[block]! < 0) this.lay(block, around);
	}

	/** Lays the chain that a block is in, from the end that is found first; a ring is cut at the block. */
	private lay(block: number, around: readonly Rest[][]) {
		const seen = new Set([block]);
		const back = this.follow(block, around[block]![0]!, around, seen);
		const ahead = this.follow(block, around[block]![1]!, around, seen);
		const blocks = [...back.map(([b]) => b).reverse(), block, ...ahead.map(([b]) => b)];
		const names = [...back.map(([, name]) => name).reverse(), ...ahead.map(([, name]) => name)];
		names.forEach((name, place) => this.before.set(name, blocks[place]!));
		blocks.forEach((b, place) => {
			this.chainOf[b] = this.chains.length;
			this.placeOf[b] = place;
		});
		this.chains.push({ blocks, open: [...names.keys()], busy: [] });
	}

	/** The blocks in series from one on by way of a contact, each with the name of the contact before it. */
	private follow(from: number, way: Rest, around: readonly Rest[][], seen: Set<number>) {
		const found: [number, string][] = [];
		for (let block = from, rest = way; ;) {
			const next = rest.ends[rest.ends[0] === block ? 1 : 0];
			const onward = around[next]!.find((r) => r !== rest);
			if (around[next]!.length !== 2 || seen.has(next) || !onward) return found;
			seen.add(next);
			found.push([next, rest.name]);
			[block, rest] = [next, onward];
		}
	}

	/** How many of the places are less. */
	private below(places: readonly number[], place: number): number {
		let [from, to] = [0, places.length];
		while (from < to) {
			this.steps++;
			const middle = (from + to) >> 1;
			if (places[middle]! < place) from = middle + 1;
			else to = middle;
		}
		return from;
	}

	/** The first block of the span that a block is in: the one that stands for all. Of no chain: itself. */
	first(block: number): number {
		const chain = this.chains[this.chainOf[block]!];
		if (!chain) return block;
		const at = this.below(chain.open, this.placeOf[block]!);
		return chain.blocks[at === 0 ? 0 : chain.open[at - 1]! + 1]!;
	}

	isOfChain(name: string): boolean {
		return this.before.has(name);
	}

	/** Closes a contact of a chain that is open. The block that no longer stands for a span. */
	close(name: string): number {
		const [{ blocks, open }, place] = this.placeIn(this.before.get(name)!);
		open.splice(this.below(open, place), 1);
		return blocks[place + 1]!;
	}

	/** Opens one that is closed. The block that stands for a span of its own now. */
	open(name: string): number {
		const [{ blocks, open }, place] = this.placeIn(this.before.get(name)!);
		open.splice(this.below(open, place), 0, place);
		return blocks[place + 1]!;
	}

	private placeIn(block: number): [Chain, number] {
		return [this.chains[this.chainOf[block]!]!, this.placeOf[block]!];
	}

	/** Says whether anything joins the block that is not of its chain. It must have been otherwise. */
	setBusy(block: number, isBusy: boolean) {
		if (this.chainOf[block]! < 0) return;
		const [{ busy }, place] = this.placeIn(block);
		const at = this.below(busy, place);
		if (isBusy) busy.splice(at, 0, place);
		else busy.splice(at, 1);
	}

	/** The first block of a span that something else joins, from `block` on or behind it; −1 if there is none. */
	busyFrom(block: number, isBehind: boolean): number {
		if (this.chainOf[block]! < 0) return isBehind ? -1 : block;
		const [{ blocks, open, busy }, place] = this.placeIn(block);
		const next = busy[this.below(busy, isBehind ? place + 1 : place)];
		const end = open[this.below(open, place)] ?? blocks.length - 1;
		return next === undefined || next > end ? -1 : blocks[next]!;
	}
}
