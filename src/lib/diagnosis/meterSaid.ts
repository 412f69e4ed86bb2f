/**
 * What a person reads off a real meter, as evidence. A beep and over-range are plain; a number is
 * held against the tone's limit and the meter's range, with the leads in it as the display has them.
 * What lies between is neither: who holds the meter decides what it is.
 */
import { BEEPS_UNDER, MOST_OHMS, type Ohms, type Parsed } from '../engine';

export const OHM_UNITS = { Ω: 1, kΩ: 1e3, MΩ: 1e6 } as const;
export type OhmUnit = keyof typeof OHM_UNITS;

/** A unit typed with the number, as displays write it; without one it is the unit beside the field. */
const SUFFIXES: Readonly<Record<string, OhmUnit>> = {
	...{ ω: 'Ω', ohm: 'Ω', ohms: 'Ω', r: 'Ω' },
	...{ k: 'kΩ', kω: 'kΩ', kohm: 'kΩ', m: 'MΩ', mω: 'MΩ', mohm: 'MΩ' }
};

/** `4.7`, `4,7`, `4.7k`, `.OL`: a number of that unit or its own, or over range as meters show it (Infinity). */
export function parseOhms(text: string, unit: OhmUnit): Parsed<Ohms> {
	const plain = text.trim().replace(',', '.').replace('\u2126', 'Ω');
	if (/^(\.?[o0]\.?l\.?|∞|over.*)$/i.test(plain)) return ok(Infinity);
	if (/^[-−]/.test(plain)) return bad(minusWords(Number(plain.slice(1)), unit));
	const [, number, suffix = ''] = /^(\d+\.?\d*|\.\d+)\s*([a-zω]*)$/i.exec(plain) ?? [];
	const own = suffix === '' ? unit : SUFFIXES[suffix.toLowerCase()];
	// A small m would be milliohms, which no hand meter shows; nobody is to be guessed at.
	if (number === undefined || own === undefined || suffix.startsWith('m'))
		return bad('type the number on the display, such as 0.3 or 4.7k, or OL');
	return ok(Number(number) * OHM_UNITS[own]);
}
/** A meter that was zeroed on its leads may show so much too little. */
const ZEROED: Ohms = 0.5;
function minusWords(under: number, unit: OhmUnit): string {
	const look = 'the line may not be dead: stop, set the meter to volts and look';
	return unit === 'Ω' && under <= ZEROED
		? `ohms are never under 0. A meter zeroed on its leads may show -0.1 or so on a good joint: touch its tips together, and if they show the same, type 0. If not, ${look}`
		: `ohms are never under 0, and a minus says that ${look}`;
}
const bad = (message: string): Parsed<never> => ({ ok: false, problem: { path: '$', message } });
const ok = (value: Ohms): Parsed<Ohms> => ({ ok: true, value });

/** `between`: too much for a plain joint, too little for none. */
export const heardOf = (ohms: Ohms): 'joined' | 'between' | 'apart' =>
	ohms < BEEPS_UNDER ? 'joined' : ohms > MOST_OHMS ? 'apart' : 'between';
