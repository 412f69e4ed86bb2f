/**
 * Walks over sets of blocks, from few wires to many, and looks at each once. Two rules keep it short.
 * More wires never part anything, so a set with a joint that must not be is left at once. And where a
 * pair must be joined, every wiring that does it has a wire across the cut round one of its nets, so it
 * is enough to try the wires across one such cut.
 */
import { Ears } from './ears';
import { blocksOf, keyOf, merged, type Partition } from './partition';
import { judgeOf } from './standing';
import type { Cut, Ready, Standing } from './task';

/** The nodes that may be looked at are used up. */
export class OutOfNodes extends Error {}

/** What the caller makes of a goal: no wiring of it will do after all, it will, or it will and that is enough. */
export type Taken = 'refused' | 'taken' | 'enough';
type Take = (goal: Partition) => Taken;
/**
 * What was found below a set of blocks: nothing; nothing, but goals were refused that another caller
 * might take; some goal; or a goal after which the caller had enough.
 */
export type Below = 'none' | 'refused' | 'some' | 'stopped';
type Link = readonly [number, number];

const across = ({ inside, outside }: Cut): Link[] =>
	inside.flatMap((x) => outside.map((y): Link => [x, y]));

function allPairs(p: Partition): Link[] {
	const blocks = blocksOf(p);
	return Array.from({ length: blocks }, (_, x) =>
		Array.from({ length: blocks - x - 1 }, (_, k): Link => [x, x + k + 1])
	).flat();
}

export class Walk {
	readonly #seen = new Map<string, Standing>();
	/** Wires with which it was tried from these blocks in vain. */
	readonly #vain = new Map<string, number>();
	readonly #ears: Ears;
	readonly #judge: (p: Partition) => Standing;
	/** Sets of blocks that were looked at. */
	nodes = 0;

	constructor(
		readonly ready: Ready,
		readonly most: number
	) {
		this.#ears = new Ears(ready);
		this.#judge = judgeOf(ready);
	}

	#standing(p: Partition, key: string): Standing {
		const known = this.#seen.get(key);
		if (known) return known;
		if (this.nodes >= this.most) throw new OutOfNodes();
		this.nodes += 1;
		const made = this.#judge(p);
		this.#seen.set(key, made);
		return made;
	}

	/** Hands every set that may be right and that at most `wires` more wires make of `p` to `take`, until it says stop. */
	goals(p: Partition, wires: number, take: Take): Below {
		return this.#descend(p, wires, take, new Map());
	}
	#descend(p: Partition, wires: number, take: Take, passed: Map<string, Below>): Below {
		const key = keyOf(p);
		const before = passed.get(key);
		if (before) return before;
		if ((this.#vain.get(key) ?? -1) >= wires) return 'none';
		const below = this.#look(p, key, wires, take, passed);
		passed.set(key, below);
		if (below === 'none') this.#vain.set(key, wires);
		return below;
	}
	#look(p: Partition, key: string, wires: number, take: Take, passed: Map<string, Below>): Below {
		const { dead, missing, cut } = this.#standing(p, key);
		if (dead || missing > wires) return 'none';
		let found: Below = 'none';
		if (!cut && this.#ears.mayHold(p)) {
			const taken = take(p);
			if (taken === 'enough') return 'stopped';
			if (taken === 'taken') return 'some';
			found = 'refused';
		}
		if (wires === 0) return found;
		for (const [x, y] of cut ? across(cut) : allPairs(p)) {
			const below = this.#descend(merged(p, x, y), wires - 1, take, passed);
			if (below === 'stopped') return 'stopped';
			if (below === 'some' || (below === 'refused' && found === 'none')) found = below;
		}
		return found;
	}
}
