/**
 * Which of the trade's words have been marked on a page already, so that each is marked where it first
 * stands and not again. A page that explains words in place also gives the card to do it in.
 */
import { getContext, setContext } from 'svelte';
import { withTerms, type Stretch, type TermId } from '../../words/glossary';

export class Once {
	readonly #takenBy = new Map<TermId, symbol>();
	/** Whether the word is marked by this text: it was the first to ask. */
	take(id: TermId, by: symbol): boolean {
		const owner = this.#takenBy.get(id) ?? by;
		this.#takenBy.set(id, owner);
		return owner === by;
	}
}
export interface Explaining {
	readonly once: Once;
	/** Shows what the word means beside `anchor`; false where it cannot. */
	show(id: TermId, anchor: HTMLElement): boolean;
}
const KEY = Symbol('terms explained in place');

export const setExplaining = (explaining: Explaining) => setContext(KEY, explaining);
/** Null on a page whose words lead straight to the glossary. */
export const explaining = (): Explaining | null => getContext<Explaining | undefined>(KEY) ?? null;

/** The text in stretches; words that another text of the page has marked are left plain. */
export function stretchesOnce(text: string, once: Once, by: symbol): Stretch[] {
	return withTerms(text).map(({ text: word, id }) =>
		id && once.take(id, by) ? { text: word, id } : { text: word }
	);
}
