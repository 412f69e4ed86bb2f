/** The meter in words: every tone also has a word and a sign, so that nobody needs to hear it. */
import { BEEPS_UNDER, showOhms, type MeterMode, type Reading } from '../engine';
import { sentence } from './names';

export interface ReadingWords {
	readonly word: 'sounds' | 'silent' | 'over range' | 'live circuit' | 'reads';
	/** One character to stand beside the word. */
	readonly sign: string;
	readonly sentence: string;
}

const OVER: ReadingWords = {
	word: 'over range',
	sign: '∞',
	sentence: 'Over range: nothing the meter can find joins the probes.'
};

function voltsWords(reading: Reading): ReadingWords {
	const volts = reading.volts ?? 0;
	const size = reading.display.replace('-', '');
	const which = `the red probe is ${volts > 0 ? 'above' : 'below'} the black one`;
	// What shows as zero is zero for whoever reads it, whatever lies below the last digit.
	const isNothing = Number.parseFloat(size) === 0;
	return {
		word: 'reads',
		sign: 'V',
		sentence: isNothing ? 'Reads no voltage between the probes.' : `Reads ${size}: ${which}.`
	};
}

function continuityWords(ohms: number, beep: boolean): ReadingWords {
	return beep
		? { word: 'sounds', sign: '●', sentence: `Sounds: ${showOhms(ohms)} between the probes.` }
		: {
				word: 'silent',
				sign: '○',
				sentence: `Silent: ${showOhms(ohms)} between the probes, and the tone wants less than ${BEEPS_UNDER} Ω.`
			};
}

/** Word, sign and one sentence for what the meter shows. */
export function readingWords(reading: Reading, mode: MeterMode): ReadingWords {
	if (reading.warning !== null)
		return { word: 'live circuit', sign: '⚠', sentence: sentence(reading.warning) };
	if (mode === 'volts') return voltsWords(reading);
	if (reading.ohms === null)
		return mode === 'ohms'
			? OVER
			: { ...OVER, sentence: 'Silent, over range: nothing the meter can find joins the probes.' };
	if (mode === 'continuity') return continuityWords(reading.ohms, reading.beep);
	return { word: 'reads', sign: 'Ω', sentence: `Reads ${reading.display}.` };
}
