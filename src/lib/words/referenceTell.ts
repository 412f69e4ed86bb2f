/** How two kinds are told apart, in words: what the eye sees, what the meter counts, what to ask. */
import type { PlugConductor, PlugState, SocketKind } from '../engine';
import { isSeenApart, sameFront, sightOf, signBetween, type Sign } from '../diagnosis/tell';
import type { Question } from '../diagnosis/tellPlan';
import { kindWords } from './kinds';
import { partText, sentence } from './names';

const NUMBERS = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** `no lug`, `one lug`, `nine lugs`: small numbers in letters. */
export const countWords = (n: number, what: string): string =>
	`${NUMBERS[n] ?? n} ${what}${n > 1 ? 's' : ''}`;

/** `two`, `twelve`; digits where no word is at hand. */
export const numberWords = (n: number): string => NUMBERS[n] ?? String(n);

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** Unmarked lugs are called a, b, c …; numbered from 0. */
export const lugLetter = (lug: number): string => LETTERS[lug]!;

/** What the front of that kind shows: `a female three-pin opening with a jack in it`. */
export function frontWords(kind: SocketKind): string {
	const { threePin, jack } = sightOf(kind);
	if (!threePin) return 'a jack alone';
	return jack ? `a ${threePin} three-pin opening and a jack` : `a ${threePin} three-pin face`;
}

/** One sentence on what the eye sees of it. */
export function sightWords(kind: SocketKind): string {
	const { contacts, chassisLug } = sightOf(kind);
	const chassis = chassisLug
		? ', and a chassis lug beside them that does not count'
		: ', and no chassis lug';
	return sentence(
		`in front ${frontWords(kind)}; at the rear ${countWords(contacts, 'lug')}${chassis}`
	);
}

/** How the eye tells the other kind from this one. */
export function seenApartWords(here: SocketKind, there: SocketKind): string {
	if (!isSeenApart(here, there)) return 'It looks the same.';
	const front = sameFront(here, there) ? null : frontWords(there);
	const [mine, its] = [sightOf(here).contacts, sightOf(there).contacts];
	const count = mine === its ? null : `${countWords(its, 'lug')}, not ${NUMBERS[mine]}`;
	return sentence([front, count].filter((w) => w !== null).join('; '));
}

const STATE_WORDS: Readonly<Record<PlugState, string>> = {
	none: 'with no plug in',
	ts: 'with a TS plug in',
	trs: 'with a TRS plug in',
	dummy: 'with a dummy plug in',
	shorting: 'with a shorting plug in',
	'three-pin': 'with a three-pin plug in'
};

/** `with a TS plug in`, `with no plug in`. */
export const stateWords = (state: PlugState): string => STATE_WORDS[state];

const thePart = (part: PlugConductor): string =>
	/^\d$/.test(part) ? partText(part) : `the ${part}`;

function signClause({ state, what, here, there }: Sign): string {
	const others = there === 0 ? 'none' : NUMBERS[there];
	if (what === 'pairs')
		return `${STATE_WORDS[state]}, ${countWords(here, 'pair')} of lugs ${here > 1 ? 'sound' : 'sounds'} here and ${others} there`;
	return `${STATE_WORDS[state]}, ${thePart(what)} of the plug sounds on ${countWords(here, 'lug')} here and on ${others} there`;
}

/** How a meter tells the other kind from this one where no lug is marked. */
export function signWords(here: SocketKind, there: SocketKind): string {
	const sign = signBetween(here, there);
	if (sign) return sentence(signClause(sign));
	return sightOf(here).contacts === sightOf(there).contacts
		? 'No reading differs: the meter cannot tell, only the face can.'
		: 'What sounds is the same on both; only the number of lugs differs.';
}

/** What to touch, and in which state: one sentence. */
export function questionWords({ state, a, b }: Question): string {
	const touch =
		typeof a === 'number'
			? `touch lugs ${lugLetter(a)} and ${lugLetter(b)}`
			: `touch ${thePart(a)} of the plug and lug ${lugLetter(b)}`;
	return sentence(`${STATE_WORDS[state]}, ${touch}`);
}

/** The verdict at the end of a plan. */
export const foundWords = (kind: SocketKind): string => `It is a ${plainName(kind)}.`;

/** A kind's name inside a sentence: `hybrid of nine`, `TS jack with break contact`. */
export function plainName(kind: SocketKind): string {
	const { name } = kindWords(kind);
	const [what, ...rest] = name.split(', ');
	const small = what!.replace(/^[A-Z](?=[a-z])/, (c) => c.toLowerCase());
	if (rest.length === 0) return small;
	const [type, more] = /^(\S+)(.*)$/.exec(rest.join(', '))!.slice(1);
	return `${type} ${small}${more}`;
}
