/** What a requirement asks, in a clause: what must be joined, apart or heard, and with which plug in. */
import type { Bench, Check } from '../engine';
import { textName, whenWords } from './names';

/** `T and TN`, `hot of DESK and pin 2`. */
export const bothText = (bench: Bench, [a, b]: readonly [string, string]): string =>
	`${textName(bench, a)} and ${textName(bench, b)}`;

/** What an input should do with a source; null for a check on two nodes. */
export function earShould(wanted: string, source: string): string | null {
	if (wanted === 'hears') return `hear ${source}`;
	if (wanted === 'deaf') return `hear nothing of ${source}`;
	if (wanted === 'polarity +') return `hear ${source} with its polarity kept`;
	return wanted === 'polarity -' ? `hear ${source} with its polarity reversed` : null;
}

/** `with a TS plug in the socket, T and TN must be apart`. */
export function pairWords(bench: Bench, { when, pair, wanted }: Check): string {
	const ear = earShould(wanted, pair[1]);
	const must = ear
		? `${pair[0]} must ${ear}`
		: `${bothText(bench, pair)} must be ${wanted === 'joined' ? 'joined' : 'apart'}`;
	return `${whenWords(bench, when)}, ${must}`;
}
