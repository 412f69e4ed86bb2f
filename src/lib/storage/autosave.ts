/**
 * The present bench and a few settings, kept in the browser. The keys carry a version: a later form
 * gets a key of its own. What is stored is a stranger's text like any other (another tab, an older
 * release or a person may have written it), so it passes the gate of `parseBench`. A bench that does
 * not pass is put aside, never thrown away. Between two tabs, the last to save wins.
 */
import * as v from 'valibot';
import type { Bench } from '../engine/bench';
import { METER_MODES } from '../engine/meter';
import { makeBench, parseBench, type Parsed } from '../engine/parse';
import { browserStore, keysOf, readText, removeText, writeText, type TextStore } from './store';

export { browserStore, memoryStore, type TextStore } from './store';

export const BENCH_KEY = 'solderside-bench-1';
export const SETTINGS_KEY = 'solderside-settings-1';
const BROKEN_KEY = `${BENCH_KEY}-broken-`;

/** A bench text that could not be read, put aside. */
export interface BrokenBench {
	readonly key: string;
	/** When it was put aside, ISO 8601. */
	readonly date: string;
	readonly text: string;
}

/** The texts put aside, oldest first. */
export function brokenBenches(store: TextStore | null = browserStore()): BrokenBench[] {
	return keysOf(store, BROKEN_KEY)
		.sort()
		.map((key) => ({
			key,
			date: key.slice(BROKEN_KEY.length),
			text: readText(store, key) ?? ''
		}));
}

/** Moves the text to a key with the date. Where there is no room for two, it goes from one to the other. */
function putAside(store: TextStore | null, text: string): void {
	const key = BROKEN_KEY + new Date().toISOString();
	const kept = brokenBenches(store).some((b) => b.text === text) || writeText(store, key, text);
	removeText(store, BENCH_KEY);
	if (!kept && !writeText(store, key, text)) writeText(store, BENCH_KEY, text);
}

/** The stored bench, or what is wrong with it (the text is then put aside); null if there is none. */
export function loadBench(store: TextStore | null = browserStore()): Parsed<Bench> | null {
	const text = readText(store, BENCH_KEY);
	if (text === null) return null;
	const parsed = parseBench(text);
	if (!parsed.ok) putAside(store, text);
	return parsed;
}

/** Stores the bench; false where there is no store or no room in it. */
export const saveBench = (bench: Bench, store: TextStore | null = browserStore()): boolean =>
	writeText(store, BENCH_KEY, makeBench(bench));

/** Forgets the stored bench; false where that is not possible. */
export const forgetBench = (store: TextStore | null = browserStore()): boolean =>
	removeText(store, BENCH_KEY);

export const THEMES = ['light', 'dark', 'auto'] as const;
export type Theme = (typeof THEMES)[number];
export const VIEWS = ['rear', 'front'] as const;
export type View = (typeof VIEWS)[number];

/** Strange values fall back one by one, so that one bad entry costs no other setting. */
const settingsShape = v.object({
	theme: v.fallback(v.picklist(THEMES), 'auto'),
	/** The meter's tone. */
	sound: v.fallback(v.boolean(), false),
	/** 0 to 1. */
	volume: v.fallback(v.pipe(v.number(), v.minValue(0), v.maxValue(1)), 0.5),
	meterMode: v.fallback(v.picklist(METER_MODES), 'continuity'),
	view: v.fallback(v.picklist(VIEWS), 'rear')
});
export type Settings = Readonly<v.InferOutput<typeof settingsShape>>;

const settingsOf = (value: unknown): Settings =>
	v.parse(settingsShape, typeof value === 'object' && value !== null ? value : {});

/** Quiet, and as the machine is set. */
export const DEFAULT_SETTINGS: Settings = settingsOf({});

/** The stored settings, defaults where something is missing or strange. Never throws. */
export function loadSettings(store: TextStore | null = browserStore()): Settings {
	try {
		return settingsOf(JSON.parse(readText(store, SETTINGS_KEY) ?? '{}'));
	} catch {
		return DEFAULT_SETTINGS;
	}
}

/** Changes the named settings and leaves the others as they are stored now. False where that is not possible. */
export function saveSettings(
	change: Partial<Settings>,
	store: TextStore | null = browserStore()
): boolean {
	const next = settingsOf({ ...loadSettings(store), ...change });
	return writeText(store, SETTINGS_KEY, JSON.stringify(next));
}
