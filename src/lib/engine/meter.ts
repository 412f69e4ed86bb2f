/**
 * The hand meter. Leads of 0.2 Ω in total and an input of about 10 MΩ: Kuphaldt, Lessons in
 * Electric Circuits, DC ch. 8 (as digested). The 30 Ω threshold of the beeper is a stated setting;
 * no standard fixes one (common practice: 10 to 50 Ω).
 */
import type { Bench, NodeName, Ohms, Volts } from './bench';
import { PHANTOM_ONLY, branchesOf, resistance, voltageIn } from './solve';

export const METER_MODES = ['continuity', 'ohms', 'volts'] as const;
export type MeterMode = (typeof METER_MODES)[number];

export const LEADS: Ohms = 0.2;
export const BEEPS_UNDER: Ohms = 30;
export const MOST_OHMS: Ohms = 40e6;
export const INPUT: Ohms = 10e6;
/** More than this between the probes makes the circuit live for continuity and ohms. */
export const LIVE: Volts = 0.05;

export interface Reading {
	/** What the display shows, unit included. */
	readonly display: string;
	/** The resistance shown; null for over-range, no reading, or in volts. */
	readonly ohms: Ohms | null;
	/** The voltage shown; present only in volts. */
	readonly volts?: Volts;
	readonly beep: boolean;
	readonly warning: string | null;
}

/** Four figures for people: `0.2 Ω`, `3.000 kΩ`, `1.250 MΩ`. Below a kilohm, tenths. */
export function showOhms(ohms: Ohms): string {
	if (ohms < 999.95) return `${ohms.toFixed(1)} Ω`;
	const [value, unit] = ohms < 999_950 ? [ohms / 1e3, 'kΩ'] : [ohms / 1e6, 'MΩ'];
	return `${value.toFixed(value < 10 ? 3 : value < 100 ? 2 : 1)} ${unit}`;
}

/** Volts for people: millivolts below a volt in size, hundredths above. */
export function showVolts(volts: Volts): string {
	return Math.abs(volts) < 0.9995 ? `${(volts * 1000).toFixed(1)} mV` : `${volts.toFixed(2)} V`;
}

/** The voltage as the meter shows it: its own 10 MΩ stands across the probes. */
export function measuredVolts(bench: Bench, red: NodeName, black: NodeName): Volts {
	const loaded = [...branchesOf(bench, PHANTOM_ONLY), { a: red, b: black, ohms: INPUT }];
	return voltageIn(loaded, red, black) ?? 0;
}

/** What the meter shows between two nodes of the bench. `zeroed`: its leads are subtracted. */
export function readMeter(
	bench: Bench,
	mode: MeterMode,
	red: NodeName,
	black: NodeName,
	zeroed = false
): Reading {
	const volts = measuredVolts(bench, red, black);
	if (mode === 'volts')
		return { display: showVolts(volts), ohms: null, volts, beep: false, warning: null };
	if (Math.abs(volts) > LIVE)
		return {
			display: 'no reading',
			ohms: null,
			beep: false,
			warning: `live circuit: ${showVolts(volts)} stands between the probes; switch phantom power off before you measure ${mode === 'ohms' ? 'ohms' : 'continuity'}`
		};
	const ohms = Number((resistance(bench, red, black) + (zeroed ? 0 : LEADS)).toPrecision(12));
	if (ohms > MOST_OHMS) return { display: 'over range', ohms: null, beep: false, warning: null };
	const beep = mode === 'continuity' && ohms < BEEPS_UNDER;
	return { display: showOhms(ohms), ohms, beep, warning: null };
}
