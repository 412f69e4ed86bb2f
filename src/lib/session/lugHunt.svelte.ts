/**
 * Which lug is which: what is seen of an unmarked socket, the plugs at hand, the readings, and what they
 * leave. A step back is an older sheet of all of that. How many readings are left is counted in slices
 * beside the page, for it plays the rest of the questions through.
 */
import {
	lugConflict,
	lugKnowledge,
	lugToProve,
	silentStates,
	type LugReading
} from '../diagnosis/lugs';
import { countingLeft } from '../diagnosis/lugsLeft';
import { countedContacts } from '../diagnosis/tell';
import { PLUG_KINDS, SOCKET_KINDS, fits, type PlugKind, type PlugState } from '../engine';
import type { KeptLugs } from '../storage';
import { lugsToldWords } from '../words/lugs';
import { frontWords } from '../words/referenceTell';

/** Plugs of a tester's bag. */
const BAG = PLUG_KINDS.filter((k) => k === 'ts' || k === 'trs' || k === 'three-pin');
function once<T>(all: readonly T[]): T[] {
	return all.filter((x, i) => all.indexOf(x) === i);
}
/** Fronts that sockets have, in words. */
export const FRONTS = once(SOCKET_KINDS.map(frontWords));

interface Sheet {
	readonly front: string;
	/** Lugs, the chassis lug not counted. */
	readonly count: number;
	readonly readings: readonly LugReading[];
}
const lugsOf = (kind: (typeof SOCKET_KINDS)[number]): number => countedContacts(kind).length;

export class LugHunt {
	private sheet = $state.raw<Sheet>({ front: frontWords('hybrid-9'), count: 9, readings: [] });
	private olds = $state.raw<readonly Sheet[]>([]);
	bag = $state.raw<readonly PlugKind[]>(BAG);
	/** What the last step did, for the live region. */
	told = $state.raw('');
	/** About how many more readings; null while that is counted. */
	left = $state.raw<number | null>(null);
	private stop: () => void = () => {};

	constructor(private readonly keep: (kept: KeptLugs) => void = () => {}) {}

	readonly front = $derived(this.sheet.front);
	readonly count = $derived(this.sheet.count);
	readonly readings = $derived(this.sheet.readings);
	private readonly ofFront = $derived(SOCKET_KINDS.filter((k) => frontWords(k) === this.front));
	readonly counts = $derived(once(this.ofFront.map(lugsOf)).sort((a, b) => a - b));
	/** Kinds that look like this. */
	readonly kinds = $derived(this.ofFront.filter((k) => lugsOf(k) === this.count));
	/** Plugs that would help, if they were at hand. */
	readonly fitting = $derived(BAG.filter((k) => this.kinds.some((kind) => fits(k, kind))));
	readonly plugs = $derived<PlugState[]>(['none', ...this.bag]);
	readonly known = $derived(lugKnowledge(this.kinds, this.readings, this.plugs));
	/** Readings, by their place, that cannot all be true. */
	readonly clash = $derived(
		this.known.ways === 0 ? lugConflict(this.kinds, this.readings, this.plugs) : []
	);
	/** What must sound before silence is believed; asked when nothing else is left to ask. */
	readonly proof = $derived(
		this.known.next || this.known.ways === 0 ? null : lugToProve(this.kinds, this.readings)
	);
	readonly next = $derived(this.known.next ?? this.proof);
	/** Plugs with which nothing has beeped: what was read with them is not proved. */
	readonly silent = $derived(silentStates(this.readings));
	readonly canUndo = $derived(this.olds.length > 0);

	/** Takes up what was kept. */
	open({ kind, bag, readings }: KeptLugs) {
		this.sheet = { front: frontWords(kind), count: lugsOf(kind), readings };
		this.bag = BAG.filter((k) => bag.includes(k));
		this.olds = [];
		this.countLeft();
	}

	answer(sounds: boolean) {
		const { next, known: before } = this;
		if (!next) return;
		const { state, a, b } = next;
		this.change({ readings: [...this.readings, { state, a, b, sounds }] });
		this.told =
			this.known.ways > 0 ? lugsToldWords(before, this.known, !this.silent.includes(state)) : '';
	}
	/** Takes one reading away, the last unless said. */
	takeAway(at = this.readings.length - 1) {
		this.change({ readings: this.readings.filter((_, i) => i !== at) });
		this.told = 'The reading is taken away.';
	}
	clear() {
		this.change({ readings: [] });
		this.told = 'Begun anew. Undo brings the readings back.';
	}
	/** Another socket: readings say nothing of it. */
	see(front: string, count = this.count) {
		const counts = SOCKET_KINDS.filter((k) => frontWords(k) === front).map(lugsOf);
		const had = this.readings.length > 0;
		this.change({ front, count: counts.includes(count) ? count : counts.at(-1)!, readings: [] });
		this.told = had
			? 'Another socket, so its readings begin anew. Undo brings the others back.'
			: '';
	}
	carry(plug: PlugKind, isThere: boolean) {
		this.bag = BAG.filter((k) => (k === plug ? isThere : this.bag.includes(k)));
		this.save();
	}
	undo() {
		const last = this.olds.at(-1);
		if (!last) return;
		this.sheet = last;
		this.olds = this.olds.slice(0, -1);
		this.told = 'The last step is taken back.';
		this.save();
	}

	private change(to: Partial<Sheet>) {
		this.olds = [...this.olds.slice(-99), this.sheet];
		this.sheet = { ...this.sheet, ...to };
		this.save();
	}
	private save() {
		this.keep({ kind: this.kinds[0]!, bag: this.bag, readings: this.readings });
		this.countLeft();
	}

	/** Counts what is left, a reading at a time, with rests for the page. */
	countLeft() {
		this.stop();
		this.left = null;
		const counting = countingLeft(this.kinds, this.readings, this.plugs);
		let timer = 0;
		const step = () => {
			const { done, value } = counting.next();
			if (done) this.left = value;
			else timer = setTimeout(step, 0) as unknown as number;
		};
		timer = setTimeout(step, 0) as unknown as number;
		this.stop = () => clearTimeout(timer);
	}
	end() {
		this.stop();
	}
}
