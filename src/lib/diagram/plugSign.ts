import type { PlugKind } from '../engine';

const SHORT: Partial<Record<PlugKind, string>> = {
	'three-pin': '3-pin',
	shorting: 'short',
	dummy: 'dum.'
};

/** A plug's kind in a word short enough for the opening it stands in. */
export const plugSign = (kind: PlugKind): string => SHORT[kind] ?? kind;

/** An id as a box has room for it. */
export const shortId = (id: string): string => (id.length > 12 ? `${id.slice(0, 11)}…` : id);
