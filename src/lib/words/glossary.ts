/**
 * The trade's words, each in one or two plain sentences, and where in a text they stand. `TermId` is
 * a closed list, so that a link to an entry that is not there does not compile.
 */
import { PART_TERMS } from './referenceTerms';
import { SIGNAL_TERMS } from './referenceTermsSignal';

const ALL = [...PART_TERMS, ...SIGNAL_TERMS] as const;
export type TermId = (typeof ALL)[number]['id'];

export interface Term {
	/** Anchor of its entry on the page; permanent. */
	readonly id: TermId;
	readonly term: string;
	/** Other words that lead to this entry. */
	readonly also?: readonly string[];
	readonly meaning: string;
}

const inOrder = new Intl.Collator('en', { sensitivity: 'base', numeric: true });

/** Every entry, in the order of the alphabet. */
export const GLOSSARY: readonly Term[] = [...(ALL as readonly Term[])].sort((a, b) =>
	inOrder.compare(a.term, b.term)
);

const byId = new Map(GLOSSARY.map((t) => [t.id, t]));

/** The entry with that id. */
export const termOf = (id: TermId): Term => byId.get(id)!;

/** Everything an entry is called, the term itself first. */
export const namesOf = ({ term, also = [] }: Term): string[] => [term, ...also];

const byName = new Map(
	GLOSSARY.flatMap((t) => namesOf(t).map((name) => [name.toLowerCase(), t.id] as const))
);

/** The entry for a word, whatever its capitals; null where there is none. */
export const termFor = (word: string): TermId | null => byName.get(word.toLowerCase()) ?? null;

/** A stretch of text; with `id` it is one of the trade's words. */
export interface Stretch {
	readonly text: string;
	readonly id?: TermId;
}

/** Single letters and other words that mostly stand for something else in a sentence. */
const TOO_COMMON: ReadonlySet<string> = new Set(
	'T R S TN RN SN 1N NC NO open home normal short screen parallel insert reading readings input inputs source sources contact contacts pin pins apart joined live dead lift lifts lifted cable cables lug lugs'
		.split(' ')
		.map((w) => w.toLowerCase())
);

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

const FINDER = new RegExp(
	`(?<![\\p{L}\\p{N}-])(?:${[...byName.keys()]
		.filter((name) => !TOO_COMMON.has(name) && !name.includes(','))
		.sort((a, b) => b.length - a.length)
		.map(escaped)
		.join('|')})(?![\\p{L}\\p{N}-])`,
	'giu'
);

/** The text in stretches, each of the trade's words marked where it first stands. */
export function withTerms(text: string): Stretch[] {
	const seen = new Set<TermId>();
	const out: Stretch[] = [];
	let from = 0;
	for (const { 0: word, index } of text.matchAll(FINDER)) {
		const id = termFor(word)!;
		if (seen.has(id)) continue;
		seen.add(id);
		if (index > from) out.push({ text: text.slice(from, index) });
		out.push({ text: word, id });
		from = index + word.length;
	}
	if (from < text.length) out.push({ text: text.slice(from) });
	return out;
}
