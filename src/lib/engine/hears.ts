/** What each input hears of each source: one source at a time, everything else at zero volts. */
import type { Bench, Device, Volts } from './bench';
import { DEVICES } from './parts';
import { branchesOf, voltageIn } from './solve';

export interface Heard {
	/** Level, dB over one volt. */
	readonly db: number;
	readonly polarity: '+' | '-';
}
/** Below this an input hears nothing, dB over one volt. */
export const SILENCE_DB = -80;

export const inputsOf = (bench: Bench): Device[] =>
	bench.devices.filter((d) => DEVICES[d.kind].listens !== null);
export const sourcesOf = (bench: Bench): Device[] =>
	bench.devices.filter((d) => DEVICES[d.kind].isSource);

function heardOf(volts: Volts | null): Heard | null {
	if (volts === null || volts === 0) return null;
	const db = Number((20 * Math.log10(Math.abs(volts))).toFixed(9));
	return db < SILENCE_DB ? null : { db, polarity: volts > 0 ? '+' : '-' };
}

/** What one input hears of one source; null for nothing, or where either is not what it should be. */
export function hearing(bench: Bench, input: string, source: string): Heard | null {
	const device = bench.devices.find((d) => d.id === input);
	const listens = device && DEVICES[device.kind].listens;
	if (!listens) return null;
	const branches = branchesOf(bench, { phantom: false, signal: source });
	return heardOf(voltageIn(branches, `${input}.${listens[0]}`, `${input}.${listens[1]}`));
}

/** Every input of the bench, with the sources it hears; an input that hears two has a clash. */
export function hears(bench: Bench): Record<string, Record<string, Heard>> {
	const sources = sourcesOf(bench);
	return Object.fromEntries(
		inputsOf(bench).map((input) => [
			input.id,
			Object.fromEntries(
				sources.flatMap((source) => {
					const heard = hearing(bench, input.id, source.id);
					return heard ? [[source.id, heard]] : [];
				})
			)
		])
	);
}
