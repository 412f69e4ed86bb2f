/** The glossary has an entry for every word of the trade that people read here, and one anchor each. */
import { describe, expect, it } from 'vitest';
import { GLOSSARY, namesOf, termFor, termOf, withTerms } from './glossary';

/** Words that the screens, the exercises and the reference use. Whoever adds one adds its entry. */
const USED = `
	contact lug cup spring pin shell latch bush jack hybrid jumper core cable shield screen leg
	tip ring sleeve hot cold balanced unbalanced polarity insert divert override isolated parallel
	changeover NC NO T R S TN RN SN 1N normal travel seated home lifted net continuity open short
	bridge swap stuck bond prove probe reading ohm decibel source input clash conductor gauge AWG
	joined apart dead live male female chassis phantom termination zeroed
	`
	.trim()
	.split(/\s+/)
	.concat(
		'break contact',
		'chassis lug',
		'chassis ground',
		'signal ground',
		'protective earth',
		'phantom power',
		'pin-1 break',
		'pin-1 problem',
		'ground loop',
		'half-normal',
		'full-normal',
		'normal link',
		'patch field',
		'patch jack',
		'patch cord',
		'over range',
		'leads zeroed',
		'TS plug',
		'TRS plug',
		'dummy plug',
		'shorting plug',
		'phone plug',
		'three-pin plug',
		'solder cup',
		'solder bridge',
		'passing joint',
		'plug state',
		'truth table',
		'continuity table',
		'break before make',
		'make before break',
		'dirty break contact',
		'bent spring',
		'resistive joint',
		'isolated changeover',
		'metal bush',
		'mating face',
		'solder side'
	);

/** A full stop that ends a sentence: one before a space and a capital letter, or at the end. */
const sentences = (text: string): number => text.match(/\.(?=\s+\p{Lu}|$)/gu)?.length ?? 0;

describe('the glossary', () => {
	it.each(USED)('has an entry for “%s”', (word) => expect(termFor(word)).not.toBeNull());

	it('gives no two entries one anchor', () => {
		expect(new Set(GLOSSARY.map((t) => t.id)).size).toBe(GLOSSARY.length);
		for (const { id } of GLOSSARY) expect(id).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
	});

	it('leads every word to one entry only', () => {
		const names = GLOSSARY.flatMap(namesOf).map((name) => name.toLowerCase());
		expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
		for (const term of GLOSSARY)
			for (const name of namesOf(term)) expect(termFor(name), name).toBe(term.id);
	});

	it('says what a word means in one plain sentence or two', () => {
		for (const { term, meaning } of GLOSSARY) {
			expect([1, 2], `${term}: ${meaning}`).toContain(sentences(meaning));
			expect(meaning, term).toMatch(/^[\p{Lu}\d][^!]*\.$/u);
		}
	});

	it('stands in the order of the alphabet', () => {
		const terms = GLOSSARY.map((t) => t.term.toLowerCase());
		expect(terms).toEqual([...terms].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })));
	});

	it('finds an entry by its id', () => expect(termOf('bush').term).toBe('bush'));
	it('knows no word that is not of the trade', () => expect(termFor('soup')).toBeNull());
});

describe('a text with its terms', () => {
	const marked = (text: string) => withTerms(text).flatMap((s) => (s.id ? [[s.text, s.id]] : []));

	it('marks the longest word, once, whatever its capitals', () =>
		expect(marked('Break contacts rest; a break contact opens with its spring.')).toEqual([
			['Break contacts', 'break-contact'],
			['spring', 'spring']
		]));

	it('marks no part of a longer word', () =>
		expect(marked('The ringing bushel of a non-hybrid.')).toEqual([]));

	it('loses nothing of the text', () => {
		for (const { meaning } of GLOSSARY)
			expect(
				withTerms(meaning)
					.map((s) => s.text)
					.join('')
			).toBe(meaning);
	});
});
