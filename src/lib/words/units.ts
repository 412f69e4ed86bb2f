/** Numbers for people. The engine's `showOhms` is the meter's display; these are for reasons. */
import type { Millimetres, Ohms } from '../engine';
import { showOhms } from '../engine';

/** Ohms to the milliohm: a good contact is far below what the meter's display shows. */
export function fineOhms(ohms: Ohms): string {
	if (ohms === 0) return '0 Ω';
	if (ohms < 0.0005) return 'under 0.001 Ω';
	return ohms < 99.9995 ? `${ohms.toFixed(3)} Ω` : showOhms(ohms);
}

/** `40 mm`, `2.5 m`. */
export const lengthWords = (mm: Millimetres): string =>
	mm < 1000 ? `${Number(mm.toFixed(1))} mm` : `${Number((mm / 1000).toFixed(3))} m`;

/** `18.5 mm`, `8 mm`. */
export const travelMm = (mm: Millimetres): string => `${Number(mm.toFixed(2))} mm`;

/** Level, dB over one volt, with a true minus sign: `−0.6 dB`. */
export const decibels = (db: number): string => {
	const tenths = Math.round(db * 10) / 10;
	return `${tenths < 0 ? '−' : ''}${Math.abs(tenths).toFixed(1)} dB`;
};
