/** What the judge must say of a wrong answer, as data, and whether a result says it. */
import type { When } from '../engine';
import type { Judged } from './judged';
import type { NeedKind } from './needs';
import { samePair, sameWhen } from './same';

export type Verdict =
	/** This thing is wrong. predict, wire, put-right, find, name. */
	| {
			readonly pair: readonly [string, string];
			readonly wanted: string;
			readonly when?: When;
	  }
	/** The mistake shows this belief. */
	| { readonly belief: string }
	/** choose: this option is judged wrongly; `need`: and that is what it fails. */
	| { readonly option: string; readonly need?: NeedKind }
	/** name: this lug is not what it was called. */
	| { readonly lug: string }
	/** order: this comes of it, at that step where one is named. */
	| { readonly consequence: string; readonly step?: string }
	/** order: this rule is broken. */
	| { readonly first: string; readonly then: string }
	/** order: this step is left out though it is needed. */
	| { readonly missing: string }
	/** order: this step is done though it should not be. */
	| { readonly spare: string }
	/** put-right: it works, with so many changes more than the fewest. */
	| { readonly extraChanges: number }
	/** find, name: so many readings more than allowed. */
	| { readonly extraReadings: number }
	/** find: right, but the readings do not prove it. */
	| { readonly unproven: true };

function saysPair(judged: Judged, v: Extract<Verdict, { pair: unknown }>): boolean {
	return judged.items.some(
		(i) =>
			!i.right &&
			samePair(i.pair, v.pair) &&
			i.wanted === v.wanted &&
			(v.when === undefined || sameWhen(i.when, v.when))
	);
}

function saysOption({ choose }: Judged, v: Extract<Verdict, { option: unknown }>): boolean {
	const option = choose?.options.find((o) => o.id === v.option);
	if (!option || option.right) return false;
	return v.need === undefined || option.fails.some((f) => f.need.need === v.need);
}

const isOver = (x: { used: number; most: number | null } | undefined, by: number): boolean =>
	x !== undefined && x.most !== null && x.used - x.most === by;

/** Whether the result says this of the answer. */
export function isSaid(judged: Judged, v: Verdict): boolean {
	if ('pair' in v) return saysPair(judged, v);
	if ('belief' in v) return judged.beliefs.includes(v.belief);
	if ('option' in v) return saysOption(judged, v);
	if ('lug' in v) return judged.name?.lugs.some((l) => l.lug === v.lug && !l.right) ?? false;
	if ('extraChanges' in v) {
		const m = judged.putRight;
		return m !== undefined && m.fewest !== null && m.changes - m.fewest === v.extraChanges;
	}
	if ('extraReadings' in v)
		return isOver(judged.find, v.extraReadings) || isOver(judged.name, v.extraReadings);
	if ('unproven' in v) return judged.find !== undefined && judged.find.found && !judged.find.proven;
	const { order } = judged;
	if (!order) return false;
	if ('missing' in v) return order.missing.includes(v.missing);
	if ('spare' in v) return order.spare.includes(v.spare);
	if ('first' in v)
		return order.rules.some(
			({ rule, kept }) => !kept && rule.first === v.first && rule.then === v.then
		);
	return order.consequences.some(
		(c) => c.kind === v.consequence && (v.step === undefined || c.step === v.step)
	);
}
