/** Words of the page that names the lugs of an unmarked socket. */
import type { SocketKind } from '../engine';
import type { LugKnowledge, LugReading } from '../diagnosis/lugs';
import { andOf, contactText, sentence } from './names';
import { lugLetter, plainName, questionWords } from './referenceTell';

/** What one lug is, or can still be. */
export function lugNameWords(names: readonly string[]): string {
	if (names.length === 1) return contactText(names[0]!);
	return names.length > 5 ? `one of ${names.length}` : names.join(', ');
}

/** A reading in words: `With a TS plug in, touch the tip of the plug and lug b: sounds`. */
export const lugReadingWords = (reading: LugReading): string =>
	`${questionWords(reading).slice(0, -1)}: ${reading.sounds ? 'beep' : 'no beep'}.`;

/** Kinds in a sentence: `a hybrid of nine`. */
export const kindsWords = (kinds: readonly SocketKind[]): string =>
	kinds.map((kind) => `a ${plainName(kind)}`).join(' or ');

/** Said while a plug has given silence alone. */
const UNPROVED = 'Nothing has beeped with this in the socket yet, so none of it is proved.';

/** What a reading told: how much is left, for the eye and the ear. `proved`: something has beeped in that state. */
export function lugsToldWords(before: LugKnowledge, after: LugKnowledge, proved: boolean): string {
	if (before.ways === after.ways) return 'It beeps as it should.';
	const fresh = after.names.flatMap((names, lug) =>
		names.length === 1 && before.names[lug]!.length > 1
			? [`lug ${lugLetter(lug)} ${proved ? 'is' : 'should be'} ${contactText(names[0]!)}`]
			: []
	);
	const out = before.ways - after.ways;
	const count = `That ruled out ${Math.round((100 * out) / before.ways)} % of the ways the contacts can lie; ${after.ways.toLocaleString('en-GB')} ${after.ways === 1 ? 'is' : 'are'} left.`;
	const named = fresh.length > 0 ? `${sentence(andOf(fresh))} ` : '';
	return `${named}${count}${named && !proved ? ` ${UNPROVED}` : ''}`;
}

/** Lugs that no reading with these plugs can tell apart, in groups. */
export function alikeLugWords({ names }: LugKnowledge): string[] {
	const keys = names.map((n) => n.join());
	const groups = [...new Set(keys.filter((_, i) => names[i]!.length > 1))];
	return groups.map((key) => {
		const lugs = keys.flatMap((k, lug) => (k === key ? [`lug ${lugLetter(lug)}`] : []));
		return sentence(
			`no reading with these plugs can tell ${andOf(lugs)} apart: they are ${andOf(key.split(',').map(contactText))} in some order`
		);
	});
}

/** How to tell by other means what the meter cannot; each with how well it is known. */
export const OTHER_MEANS = [
	'Look with a glass for a number or letter moulded beside the lug (common practice; it outranks everything below).',
	'Depth: from the front the sleeve spring stands first, then the ring spring, the tip spring deepest; each break contact stands behind its spring (common practice).',
	'Solder side of a female three-pin socket, key at the top: 1 left, 2 right, 3 at the bottom; on a male one 2 left, 1 right (from memory: check against a mark).',
	'With one more plug of the right kind the meter can tell it. Tick it above when you have one.'
] as const;

/** Cautions of the page. */
export const LUGS_CAUTIONS = {
	chassis:
		'The chassis lug, on the flange or shell, is no contact: it is known by sight and gets no letter. Until a lug is proved to be no part of the shell, solder no signal to it. On a socket that is screwed to metal, unscrew it first.',
	mains:
		'Only for a loose, unwired socket of an audio panel. A connector that may belong to a mains or loudspeaker lead is not to be guessed at with a meter: stop, and ask whoever is licensed. Local codes decide.'
} as const;

/** The same two for whoever has read them in full. */
export const LUGS_CAUTIONS_BRIEF = {
	chassis:
		'The chassis lug is known by sight and gets no letter. Unscrew the socket from metal first.',
	mains:
		'Only a loose, unwired audio socket. One that may belong to a mains or loudspeaker lead: stop, and ask whoever is licensed. Local codes decide.'
} as const;

/** How many readings are still to come: `about 24 more readings`. */
export const leftWords = (left: number): string =>
	`about ${left <= 1 ? 'one more reading' : `${left} more readings`}`;
