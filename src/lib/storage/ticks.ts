/**
 * What was ticked on the test card of a panel, kept per panel: a tick says nothing of another one, nor of
 * this one after a wire has moved. Plugs and faults that stand on the bench are not part of the panel.
 * The panel is known by a check sum of its file, so that a large one is not stored a second time.
 */
import type { Bench } from '../engine/bench';
import { makeBench } from '../engine/parse';
import { browserStore, guarded, readText, writeText, type TextStore } from './store';

export const TICKS_KEY = 'solderside-ticks-1';
/** Panels whose ticks are kept. */
const MOST_PANELS = 24;

interface PanelTicks {
	readonly panel: string;
	readonly ticks: readonly string[];
}

/** A check sum of a text and its length: FNV-1a twice, from two starts. */
function sumOf(text: string): string {
	const sums = [0x811c9dc5, 0x01000193].map((start) => {
		let sum = start;
		for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
		return (sum >>> 0).toString(36);
	});
	return [...sums, text.length].join('-');
}
const panelOf = (bench: Bench): string => sumOf(makeBench({ ...bench, plugs: [], faults: [] }));

const isTicks = (value: unknown): value is PanelTicks => {
	const { panel, ticks } = (value ?? {}) as Partial<PanelTicks>;
	return (
		typeof panel === 'string' && Array.isArray(ticks) && ticks.every((t) => typeof t === 'string')
	);
};
/** Every panel with ticks, the latest last; what cannot be read is left out. */
function allIn(store: TextStore | null): PanelTicks[] {
	const text = readText(store, TICKS_KEY);
	return guarded(() => {
		const stored = JSON.parse(text ?? '[]') as unknown;
		return Array.isArray(stored) ? stored.filter(isTicks) : [];
	}, []);
}

/** The ticks of that panel's card, by name; none where none are kept. Never throws. */
export function loadTicks(bench: Bench, store: TextStore | null = browserStore()): string[] {
	const panel = panelOf(bench);
	return [...(allIn(store).find((p) => p.panel === panel)?.ticks ?? [])];
}

/** Keeps the ticks of that panel's card; false where there is no store or no room in it. */
export function saveTicks(
	bench: Bench,
	ticks: readonly string[],
	store: TextStore | null = browserStore()
): boolean {
	const panel = panelOf(bench);
	const others = allIn(store).filter((p) => p.panel !== panel);
	const all = ticks.length > 0 ? [...others, { panel, ticks }] : others;
	return writeText(store, TICKS_KEY, JSON.stringify(all.slice(-MOST_PANELS)));
}
