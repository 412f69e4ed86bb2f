/**
 * What was found of an unmarked socket: how it looks, the plugs at hand and the readings, kept so that a
 * reload loses nothing. It passes the gate again on the way in, whole or not at all.
 */
import { isLugReading } from '../diagnosis/lugReadings';
import type { LugReading } from '../diagnosis/lugs';
import { lookAlikes } from '../diagnosis/tell';
import { PLUG_KINDS, SOCKET_KINDS, type PlugKind, type SocketKind } from '../engine';
import { browserStore, guarded, readText, writeText, type TextStore } from './store';

export const LUGS_KEY = 'solderside-lugs-1';

export interface KeptLugs {
	/** One of the kinds that look like it. */
	readonly kind: SocketKind;
	/** Bare plugs at hand. */
	readonly bag: readonly PlugKind[];
	readonly readings: readonly LugReading[];
}

/** Stores it; false where there is no store or no room in it. */
export const saveLugs = (kept: KeptLugs, store: TextStore | null = browserStore()): boolean =>
	writeText(store, LUGS_KEY, JSON.stringify(kept));

function keptIn(text: string): KeptLugs | null {
	const stored = JSON.parse(text) as Partial<Record<keyof KeptLugs, unknown>> | null;
	const kind = SOCKET_KINDS.find((k) => k === stored?.kind);
	if (!kind || !Array.isArray(stored?.readings) || !Array.isArray(stored.bag)) return null;
	const kinds = [kind, ...lookAlikes(kind)];
	const readings = stored.readings as unknown[];
	if (!readings.every((r): r is LugReading => isLugReading(kinds, r))) return null;
	const bag = stored.bag as unknown[];
	return {
		kind,
		bag: PLUG_KINDS.filter((k) => bag.includes(k)),
		readings: readings.map(({ state, a, b, sounds }) => ({ state, a, b, sounds }))
	};
}

/** What is stored; null if there is nothing, or it cannot be read. Never throws. */
export function loadLugs(store: TextStore | null = browserStore()): KeptLugs | null {
	const text = readText(store, LUGS_KEY);
	return text === null ? null : guarded(() => keptIn(text), null);
}
