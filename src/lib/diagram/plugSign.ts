import type { PlugKind } from '../engine';

/** A plug's kind in one short word. */
export const plugSign = (kind: PlugKind): string => (kind === 'three-pin' ? '3-pin' : kind);

/** A text of so many letters at most, the last of them … where it was cut. */
export const shortTo = (text: string, most: number): string =>
	text.length > most ? `${text.slice(0, most - 1)}…` : text;
/** An id as a box has room for it. */
export const shortId = (id: string): string => shortTo(id, 12);
