/**
 * Readings that were taken on real hardware, kept with the panel that they were taken on: a reading
 * says nothing of another panel. What is stored passes the gates again, for another release or a
 * person may have written it; what does not pass is left alone and not shown.
 */
import { checkReadings, probeNodes, strangeReading, type Reading } from '../diagnosis';
import type { NodeName, When } from '../engine';
import type { Bench } from '../engine/bench';
import { makeBench, parseBench } from '../engine/parse';
import { browserStore, guarded, readText, removeText, writeText, type TextStore } from './store';

export const READINGS_KEY = 'solderside-readings-1';

/** A reading as it was noted. */
export interface Noted extends Reading {
	/** What the meter showed, in the person's words. */
	readonly meter: string;
	/** No longer believed: kept in the list, and left out of the reckoning. */
	readonly struck: boolean;
}
/** What stands at the panel just now: what sockets hold, which one is looked at, where the probes are. */
export interface AtPanel {
	readonly when: When;
	/** '' where there is none. */
	readonly socket: string;
	/** '' where the probe is off. */
	readonly first: NodeName | '';
	readonly second: NodeName | '';
}
export interface KeptReadings {
	readonly bench: Bench;
	readonly noted: readonly Noted[];
	/** Faults at once that are reckoned with, 1 to 3. */
	readonly most: number;
	/** Whether only the panel itself can be reached, not the far ends of its lines. */
	readonly near: boolean;
	readonly at: AtPanel;
}

/** Nothing set up yet: the first socket, as it is drawn. */
export const freshAt = (bench: Bench): AtPanel => ({
	when: {},
	socket: bench.sockets[0]?.id ?? '',
	first: '',
	second: ''
});

const asReading = ({ when, pair, answer }: Noted) => ({ when, pair, answer });

/** Stores the readings; false where there is no store or no room in it. */
export const saveReadings = (
	{ bench, noted, most, near, at }: KeptReadings,
	store: TextStore | null = browserStore()
): boolean =>
	writeText(
		store,
		READINGS_KEY,
		JSON.stringify({
			bench: makeBench(bench),
			most,
			near,
			at,
			readings: noted.map(asReading),
			notes: noted.map(({ meter, struck }) => ({ meter, struck }))
		})
	);

/** The plug state, if the bench can be in it; else as it is drawn. */
function whenIn(bench: Bench, when: unknown): When {
	const [a, b] = probeNodes(bench);
	const read = checkReadings({ readings: [{ when, pair: [a, b], answer: 'joined' }] });
	return read.ok && !strangeReading(bench, read.value) ? read.value[0]!.when : {};
}
/** Part by part: what cannot be read is as if nothing had been set up. */
function atIn(bench: Bench, stored: unknown): AtPanel {
	const { when, socket, first, second } = (stored ?? {}) as Partial<AtPanel>;
	const nodes = probeNodes(bench);
	const place = (node: unknown) => nodes.find((n) => n === node) ?? '';
	return {
		when: whenIn(bench, when ?? {}),
		socket: bench.sockets.find((s) => s.id === socket)?.id ?? freshAt(bench).socket,
		first: place(first),
		second: place(second)
	};
}

function keptIn(text: string): KeptReadings | null {
	const stored = JSON.parse(text) as Record<string, unknown> | null;
	if (typeof stored?.bench !== 'string') return null;
	const bench = parseBench(stored.bench);
	const readings = checkReadings({ readings: stored.readings });
	if (!bench.ok || !readings.ok || strangeReading(bench.value, readings.value)) return null;
	const notes = Array.isArray(stored.notes) ? (stored.notes as unknown[]) : [];
	const noted = readings.value.map((reading, i): Noted => {
		const note = (notes[i] ?? {}) as Partial<Noted>;
		const meter = typeof note.meter === 'string' ? note.meter.slice(0, 40) : '';
		return { ...reading, meter, struck: note.struck === true };
	});
	const most = [1, 2, 3].find((n) => n === stored.most) ?? 1;
	const at = atIn(bench.value, stored.at);
	return { bench: bench.value, noted, most, near: stored.near === true, at };
}

/** The stored readings with their panel; null if there are none, or they cannot be read. Never throws. */
export function loadReadings(store: TextStore | null = browserStore()): KeptReadings | null {
	const text = readText(store, READINGS_KEY);
	return text === null ? null : guarded(() => keptIn(text), null);
}

/** Forgets the readings; false where that is not possible. */
export const forgetReadings = (store: TextStore | null = browserStore()): boolean =>
	removeText(store, READINGS_KEY);
