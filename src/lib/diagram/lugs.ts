/** The outlines of lugs and cups, about their own middle: one place for screen and for figures. */
import type { NodeName } from '../engine';
import type { LugPlace } from './socket';

export type NodeForm = LugPlace['form'] | 'terminal' | 'stud';
export interface LugShape {
	/** The metal. */
	readonly metal: string;
	/** What is let into it: the bowl of a cup, the eye of a lug, the slot of a stud. */
	readonly mark: string;
	/** Whether the mark is a hole, filled with paper. */
	readonly isHole: boolean;
}

/** A circle about the origin. */
export const roundPath = (r: number): string =>
	`M${r} 0 A${r} ${r} 0 1 1 ${-r} 0 A${r} ${r} 0 1 1 ${r} 0 Z`;

export const LUG_SHAPES: Readonly<Record<NodeForm, LugShape>> = {
	cup: { metal: roundPath(13), mark: 'M-7.5 -3 A7.5 7.5 0 1 0 7.5 -3', isHole: false },
	lug: {
		metal: 'M-9 -15 H9 V10 A9 9 0 0 1 -9 10 Z',
		mark: 'M4 0 A4 7 0 1 1 -4 0 A4 7 0 1 1 4 0 Z',
		isHole: true
	},
	chassis: { metal: 'M-12 -9 H12 V9 H-12 Z', mark: roundPath(4.5), isHole: true },
	stud: { metal: roundPath(10), mark: 'M-6 0 H6 M0 -6 V6', isHole: false },
	terminal: { metal: roundPath(7), mark: '', isHole: false }
};

/** So many conductors in one place are drawn one by one; of more their number stands in it. */
const MOST_SHOWN = 4;
/** Middles of the ends: in a row along the place, two by two where four would not fit in a row. */
function endPlaces(form: NodeForm, count: number): (readonly [number, number])[] {
	const isRound = form === 'cup' || form === 'stud';
	const [step, low] = form === 'cup' ? [6.4, 3] : [5.4, 0];
	if (isRound && count === 4)
		return [-1, 1].flatMap((y) => [-1, 1].map((x) => [x * 3.1, low / 2 + y * 3.1] as const));
	return Array.from({ length: count }, (_, i) => {
		const off = (i - (count - 1) / 2) * step;
		return form === 'lug' ? [0, off] : [off, low];
	});
}
/** The ends of conductors soldered to a place, side by side: in the bowl of a cup, the eye of a lug. */
export function solderedEnds(form: NodeForm, count: number): string {
	if (form === 'terminal' || count > MOST_SHOWN) return '';
	return endPlaces(form, count)
		.map(
			([x, y]) => `M${x + 2.5} ${y} A2.5 2.5 0 1 1 ${x - 2.5} ${y} A2.5 2.5 0 1 1 ${x + 2.5} ${y} Z`
		)
		.join(' ');
}
/** The number of conductors soldered to a place, where they are too many to be drawn; else nothing. */
export const solderedCount = (form: NodeForm, count: number): string =>
	form === 'terminal' || count <= MOST_SHOWN ? '' : String(count);

/** How many wires and cores end at each node. */
export function landingsOf(
	wires: readonly { readonly from: NodeName; readonly to: NodeName }[]
): ReadonlyMap<NodeName, number> {
	const count = new Map<NodeName, number>();
	for (const { from, to } of wires)
		for (const node of [from, to]) count.set(node, (count.get(node) ?? 0) + 1);
	return count;
}
