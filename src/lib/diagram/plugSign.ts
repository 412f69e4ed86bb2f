import type { PlugKind } from '../engine';

const SHORT: Partial<Record<PlugKind, string>> = { 'three-pin': '3-pin', shorting: 'short' };

/** A plug's kind in a word short enough for the opening it stands in. */
export const plugSign = (kind: PlugKind): string => SHORT[kind] ?? kind;
