/** What each input of the bench hears: level, which way up, and whether two sources meet. */
import { hears, inputsOf, type Bench, type Heard } from '../engine';
import { andOf } from './names';
import { decibels } from './units';

export interface HeardWords {
	readonly input: string;
	readonly lines: readonly { readonly source: string; readonly words: string }[];
	/** Two sources or more reach this input. */
	readonly clash: boolean;
	readonly sentence: string;
}

/** `at −0.6 dB, polarity kept (+)`. */
export const levelWords = (heard: Heard): string =>
	`at ${decibels(heard.db)}, ${heard.polarity === '+' ? 'polarity kept (+)' : 'polarity reversed (−)'}`;

function wordsOf(input: string, heard: Readonly<Record<string, Heard>>): HeardWords {
	const lines = Object.entries(heard).map(([source, h]) => ({
		source,
		words: `${source} ${levelWords(h)}`
	}));
	const clash = lines.length > 1;
	if (lines.length === 0) return { input, lines, clash, sentence: `${input} hears nothing.` };
	const what = andOf(lines.map((l) => l.words));
	const warning = clash ? ' Two sources at one input are a clash: each loads the other.' : '';
	return { input, lines, clash, sentence: `${input} hears ${what}.${warning}` };
}

/** Every input of the bench, in file order. Levels are over one volt at the source. */
export function heardWords(bench: Bench): HeardWords[] {
	const heard = hears(bench);
	return inputsOf(bench).map(({ id }) => wordsOf(id, heard[id] ?? {}));
}
