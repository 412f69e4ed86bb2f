/**
 * What inputs hear, asked of the engine for one wiring that stands for all with the same nets: each
 * block's contacts in a chain. Wirings with the same nets differ by milliohms only, so a source that is
 * wired up is heard well in all of them. What a source leaks past a short does differ; a leak is not
 * taken for hearing here, and whether it is faint enough to count as silence is left to the score of the
 * very wiring that is handed out.
 */
import { DEFAULTS, hearing, holds, inState, type Bench, type Check, type Wire } from '../../engine';
import { canonical, keyOf, type Partition } from './partition';
import { netsIn, type Ready, type State } from './task';

/** Fainter than this, what is heard is a leak, dB over one volt; a source that is wired up is far louder. */
export const FAINT_DB = -30;

function chained({ bench, contacts }: Ready, p: Partition): Bench {
	const last: number[] = [];
	const wires: Wire[] = [];
	for (const [i, block] of p.entries()) {
		const before = last[block];
		last[block] = i;
		if (before === undefined) continue;
		const [from, to] = [contacts[before]!, contacts[i]!];
		wires.push({ id: `chain${wires.length}`, from, to, awg: DEFAULTS.wireAwg, mm: DEFAULTS.mm });
	}
	return { ...bench, wires };
}

/** Whether the check holds clearly, or may hold of some wiring with these nets. */
function mayHold(there: Bench, check: Check): boolean {
	const [input, source] = check.pair;
	const isClear = (hearing(there, input, source)?.db ?? -Infinity) >= FAINT_DB;
	return check.wanted === 'deaf' ? !isClear : isClear && holds(there, check);
}

/** Remembers, per state and set of nets, whether its checks on hearing may hold. */
export class Ears {
	readonly #known = new Map<State, Map<string, boolean>>();

	constructor(readonly ready: Ready) {}

	#mayHold(state: State, p: Partition): boolean {
		if (state.ears.length === 0) return true;
		const known = this.#known.get(state) ?? new Map<string, boolean>();
		this.#known.set(state, known);
		const key = keyOf(canonical(netsIn(state, p).labels()));
		const before = known.get(key);
		if (before !== undefined) return before;
		const there = inState(chained(this.ready, p), state.when);
		const made = state.ears.every((check) => mayHold(there, check));
		known.set(key, made);
		return made;
	}
	/** Whether every check on hearing may hold in every state, with wires that make these blocks. */
	mayHold = (p: Partition): boolean => this.ready.states.every((s) => this.#mayHold(s, p));
}
