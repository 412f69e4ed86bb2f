/**
 * What a person reads off a real meter, as evidence. A beep and over-range are plain; a number is
 * held against the tone's limit and the meter's range, with the leads in it as the display has them.
 * What lies between is neither: who holds the meter decides what it is.
 */
import { BEEPS_UNDER, MOST_OHMS, type Ohms, type Parsed } from '../engine';

export const OHM_UNITS = { Ω: 1, kΩ: 1e3, MΩ: 1e6 } as const;
export type OhmUnit = keyof typeof OHM_UNITS;

/** `4.7`, `4,7`, `0L`: a number of that unit, or over range as meters show it (Infinity). */
export function parseOhms(text: string, unit: OhmUnit): Parsed<Ohms> {
	const plain = text.trim().replace(',', '.');
	if (/^([o0]\.?l\.?|∞|over.*)$/i.test(plain)) return ok(Infinity);
	const isNumber = /^\d+(\.\d*)?$|^\.\d+$/.test(plain);
	if (!isNumber)
		return {
			ok: false,
			problem: { path: '$', message: 'type the number on the display, such as 0.3, or OL' }
		};
	return ok(Number(plain) * OHM_UNITS[unit]);
}
const ok = (value: Ohms): Parsed<Ohms> => ({ ok: true, value });

/** `between`: too much for a plain joint, too little for none. */
export const heardOf = (ohms: Ohms): 'joined' | 'between' | 'apart' =>
	ohms < BEEPS_UNDER ? 'joined' : ohms > MOST_OHMS ? 'apart' : 'between';
