/** The outlines of lugs and cups, about their own middle: one place for screen and for figures. */
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
