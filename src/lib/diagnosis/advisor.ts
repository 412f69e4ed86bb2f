/**
 * Advice as plain messages: readings in, answers out in stages, single faults first. It knows no
 * worker and no screen: whoever runs it steps through the generator, and at each rest may look for
 * other work. Dictionaries of the last benches are kept, so that another reading of the same bench
 * costs a filter and one choice of a probe.
 */
import type { Bench, NodeName, When } from '../engine';
import { diagnosisIn, LISTED, type Diagnosis } from './diagnose';
import { makingDictionary, type Dictionary, type Work } from './dictionary';
import { agreeing, extrasOf, type Reading } from './evidence';
import { groupsIn, type Group } from './groups';
import { withoutSound } from './members';
import { makingPar, type Par } from './par';

export interface Ask {
	readonly bench: Bench;
	readonly readings: readonly Reading[];
	/** Faults at once, 1 to 3 (4 for a bench of one socket). */
	readonly most: number;
	/** The plug state that the bench is in; that of the last reading unless said. */
	readonly from?: When;
	/** The nodes that the next probe may touch; all unless said. What remains is not changed by it. */
	readonly within?: readonly NodeName[];
	/** False: something is known to be wrong, so "sound" is no candidate. */
	readonly sound?: boolean;
	/** Candidates listed. */
	readonly listed?: number;
	/** Whether par is wanted too; it comes with the last reply. */
	readonly par?: boolean;
}

export interface Reply extends Diagnosis {
	/** Faults at once that this stage reckons with. */
	readonly most: number;
	/** Whether no further reply follows. */
	readonly last: boolean;
	/** What remains class by class, the heaviest first, at most as many as were asked for. */
	readonly groups: readonly Group[];
	/** Classes that remain, and sets of faults in them. */
	readonly classes: number;
	readonly sets: number;
	/** Whether one class remains: no probe can tell more, and it is an answer. */
	readonly settled: boolean;
	/** What the best plan from here needs on average; null until it is worked out, or if not asked for. */
	readonly par: Par | null;
	readonly work: Work;
}

/** Dictionaries kept. */
const KEPT = 6;

export class Advisor {
	/** The latest last. */
	private readonly kept = new Map<string, Dictionary>();

	private *dictionary({ bench, readings }: Ask, most: number): Generator<null, Dictionary> {
		const extras = extrasOf(bench, readings);
		const key = JSON.stringify([most, bench, extras]);
		const known = this.kept.get(key);
		this.kept.delete(key);
		let dictionary = known;
		for (const making = makingDictionary(bench, most, extras); !dictionary;) {
			const step = making.next();
			if (step.done) dictionary = step.value;
			else yield null;
		}
		this.kept.set(key, dictionary);
		for (const old of this.kept.keys()) if (this.kept.size > KEPT) this.kept.delete(old);
		return dictionary;
	}

	/** A reply for each number of faults up to `most`; null is a rest. Throws if there are too many classes. */
	*advise(ask: Ask): Generator<Reply | null, void> {
		for (let most = 1; most <= ask.most; most++) {
			const whole = yield* this.dictionary(ask, most);
			const dictionary = ask.sound === false ? withoutSound(whole) : whole;
			const last = most === ask.most;
			const reply = replyIn(dictionary, ask);
			yield { ...reply, last: last && !ask.par };
			if (!last || !ask.par) continue;
			const ids = agreeing(dictionary, ask.readings);
			const making = makingPar(dictionary, ids, fromOf(ask));
			let step = making.next();
			for (; !step.done; step = making.next()) yield null;
			yield { ...reply, par: step.value, last: true };
		}
	}
}

const fromOf = ({ from, readings }: Ask): When => from ?? readings.at(-1)?.when ?? {};

function replyIn(dictionary: Dictionary, ask: Ask): Reply {
	const { readings, listed = LISTED } = ask;
	const ids = agreeing(dictionary, readings);
	return {
		...diagnosisIn(dictionary, readings, listed, fromOf(ask), ask.within),
		most: dictionary.most,
		last: false,
		groups: groupsIn(dictionary, ids, listed),
		classes: ids.length,
		sets: ids.reduce((sum, id) => sum + dictionary.count[id]!, 0),
		settled: ids.length === 1,
		par: null,
		work: dictionary.work
	};
}
