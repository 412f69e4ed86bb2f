/**
 * The reference, by kind, with what kinds of one sort share: what each contact is for, what to look
 * up on a maker's drawing, and the sources. Uses and checks are common practice where they carry no
 * other flag.
 */
import { SOCKETS, type SocketKind } from '../engine';
import type { Flag, Source } from '../exercises/exercise';
import type { Reference } from './reference';
import { HYBRIDS } from './referenceHybrids';
import { JACKS } from './referenceJacks';
import { THREE_PINS } from './referencePins';

const ALL: Readonly<Record<SocketKind, Reference>> = { ...HYBRIDS, ...THREE_PINS, ...JACKS };

/** What the reference says of this kind alone. */
export const referenceOf = (kind: SocketKind): Reference => ALL[kind];

const CONTACTS: Readonly<Record<string, string>> = {
	'1': 'Shield. It makes first and parts last, so the screen is there before the signal.',
	'2': 'Hot, the signal conductor with the plus sign.',
	'3': 'Cold, the signal conductor with the minus sign.',
	T: 'Tip spring, the deepest. Hot of a balanced line, or all of an unbalanced one.',
	R: 'Ring spring. Cold of a balanced line; right of a stereo lead; return of most inserts.',
	S: 'Sleeve spring, nearest the front. Shield, and the way back of an unbalanced line.',
	TN: 'Break contact of T: T rests on it until a phone plug lifts T.',
	RN: 'Break contact of R: R rests on it until a phone plug lifts R.',
	SN: 'Break contact of S: S rests on it until a phone plug lifts S, first of all.',
	'1N': 'Break contact of pin 1: pin 1 rests on it until a three-pin plug goes in.',
	G: 'Chassis lug: the metal of the panel, and the shell of a three-pin plug. It is not counted.',
	C: 'Changeover, the contact that moves. It touches no signal.',
	NC: 'Joined to C at rest, and let go when a plug lifts the tip spring.',
	NO: 'Open at rest, and joined to C while a plug lifts the tip spring.'
};

/** Where a kind gives a contact a duty of its own. */
const DUTIES: Readonly<Partial<Record<SocketKind, Readonly<Record<string, string>>>>> = {
	'hybrid-5': { T: 'Tip spring. All of an unbalanced line, since there is no ring contact.' },
	'jack-ts': { T: 'Tip spring. All of an unbalanced line, since there is no ring contact.' },
	'jack-ts-break': { T: 'Tip spring. All of an unbalanced line, since there is no ring contact.' },
	'jack-ts-changeover': {
		T: 'Tip spring. All of an unbalanced line; lifting it moves the changeover.'
	},
	'patch-jack': {
		TN: 'Break contact of T, for the normal link of hot: T rests on it until a plug lifts T.',
		RN: 'Break contact of R, for the normal link of cold: R rests on it until a plug lifts R.'
	}
};

/** What a contact of that kind is for, one sentence or two. Throws for a contact that it has not. */
export function contactUse(kind: SocketKind, contact: string): string {
	const words = DUTIES[kind]?.[contact] ?? CONTACTS[contact];
	if (!words || !SOCKETS[kind].contacts.includes(contact))
		throw new Error(`No words for ${contact} of ${kind}`);
	return words;
}

interface Sort {
	readonly pins: boolean;
	readonly jack: boolean;
	readonly ring: boolean;
	readonly breaks: boolean;
	readonly hybrid: boolean;
	readonly bush: boolean;
	readonly changeover: boolean;
	readonly latches: boolean;
}
function sortOf(kind: SocketKind): Sort {
	const { threePin, springs, breaks, hasBush, changeover } = SOCKETS[kind];
	return {
		pins: threePin !== null,
		jack: springs.length > 0,
		ring: springs.includes('R'),
		breaks: Object.keys(breaks).length > 0,
		hybrid: threePin !== null && springs.length > 0,
		bush: hasBush,
		changeover,
		latches: threePin === 'female'
	};
}

interface DrawingCheck {
	readonly look: string;
	readonly why: string;
	readonly flag: Flag;
}
const CHECKS: readonly (DrawingCheck & { readonly when: (sort: Sort) => boolean })[] = [
	{
		look: 'From which side the pins are numbered',
		why: 'Rear and front are mirror images. Look for the words rear, solder side or mating face, and trust the number moulded beside the contact.',
		flag: 'PRACTICE',
		when: (s) => s.pins
	},
	{
		look: 'Which lug is which spring',
		why: 'Makers lay lugs out in their own order. Find T, R and S by what a plug touches, not by where a lug stands.',
		flag: 'PRACTICE',
		when: (s) => s.jack
	},
	{
		look: 'Which break contact belongs to which spring, and when it opens',
		why: 'The drawing shows each pair at rest. See that the contact opens by the lift of its own spring, and before the plug can touch what hangs on it.',
		flag: 'PRACTICE',
		when: (s) => s.breaks
	},
	{
		look: 'Whether the changeover breaks before it makes, and what it may carry',
		why: 'A form C has a moment with neither contact closed; a form D a moment with both. The voltage and current allowed are far below those of a mains switch.',
		flag: 'PRACTICE',
		when: (s) => s.changeover
	},
	{
		look: 'An insulated or a metal bush',
		why: 'A metal bush joins the sleeve to a metal panel as soon as the nut is tight. The name of the kind does not tell; the drawing does.',
		flag: 'PRACTICE',
		when: (s) => s.bush
	},
	{
		look: 'Where the shell and the chassis lug go',
		why: 'On some parts the lug is a separate contact, on others it is one with the flange. Ask the meter: G against the panel, and G against pin 1.',
		flag: 'PRACTICE',
		when: (s) => s.pins
	},
	{
		look: 'A latch, or none',
		why: 'A latch holds the three-pin plug, friction holds the phone plug. Some sockets leave the latch out.',
		flag: 'PRACTICE',
		when: (s) => s.latches
	},
	{
		look: 'The termination',
		why: 'Solder cups, board pins that lie or stand, crimp, or insulation displacement. Crimps want stranded wire; a cup takes a cable and one jumper.',
		flag: 'BOOK',
		when: () => true
	},
	{
		look: 'The family of plug',
		why: 'Plugs of the telephone type have another shape. In this jack they stretch the springs, and break contacts are unreliable afterwards.',
		flag: 'BOOK',
		when: (s) => s.jack
	},
	{
		look: 'That pin 1 makes first',
		why: 'It does in the common form. Where it matters to you, see that the drawing shows it.',
		flag: 'MEM',
		when: (s) => s.pins
	},
	{
		look: 'The depth behind the panel',
		why: 'Lugs, jumpers and a bent cable need room behind the flange, a hybrid more than a single socket.',
		flag: 'PRACTICE',
		when: () => true
	}
];

/** What to look up on a maker's drawing before ordering or soldering this kind. */
export const drawingChecks = (kind: SocketKind): DrawingCheck[] =>
	CHECKS.filter(({ when }) => when(sortOf(kind))).map(({ look, why, flag }) => ({
		look,
		why,
		flag
	}));

const UNNAMED_BOOK = 'an open textbook, read in a digest that does not name it';
const SHARED: readonly (Source & { readonly when: (sort: Sort) => boolean })[] = [
	{
		fact: 'Pin 1 shield, pin 2 hot, pin 3 cold.',
		source: 'AES14-1992 and IEC 60268-12, as reported',
		flag: 'STD',
		when: (s) => s.pins
	},
	{
		fact: 'Outputs have male contacts and inputs female ones.',
		source: 'AES14-1992, as reported',
		flag: 'STD',
		when: (s) => s.pins
	},
	{
		fact: 'Pin 1 makes first and parts last; how the pins stand on the face.',
		source: 'the common form of the connector, from memory',
		flag: 'MEM',
		when: (s) => s.pins
	},
	{
		fact: 'In equipment the shield and the shell go straight to the metal enclosure.',
		source: 'AES48-2019, as reported',
		flag: 'STD',
		when: (s) => s.pins
	},
	{
		fact: 'A 6.35 mm shank; two conductors on a TS plug and three on a TRS plug.',
		source: 'IEC 60603-11 and IEC 60268-11, as reported',
		flag: 'STD',
		when: (s) => s.jack
	},
	{
		fact: 'Sleeve spring first, then the ring spring, the tip spring deepest; each break contact behind its spring.',
		source: 'common practice',
		flag: 'PRACTICE',
		when: (s) => s.jack
	},
	{
		fact: 'The lengths along the plug and the depths of the springs are schematic.',
		source: 'from memory, for the order of events only',
		flag: 'MEM',
		when: (s) => s.jack
	},
	{
		fact: 'Balanced on a TRS plug: tip hot, ring cold, sleeve shield.',
		source: 'IEC 60268-11, from memory',
		flag: 'MEM',
		when: (s) => s.ring
	},
	{
		fact: 'The sleeve of a TS plug covers the place of the ring, so it joins R to S.',
		source: UNNAMED_BOOK,
		flag: 'BOOK',
		when: (s) => s.ring
	},
	{
		fact: 'A spring rests on its break contact with no plug in, and a plug lifts it off.',
		source: UNNAMED_BOOK,
		flag: 'BOOK',
		when: (s) => s.breaks
	},
	{
		fact: 'Nothing inside a hybrid joins its two halves; a jumper does. The chassis lug is never counted.',
		source: 'common practice',
		flag: 'PRACTICE',
		when: (s) => s.hybrid
	},
	{
		fact: 'Which pairs are joined, at which travel, and what tells two kinds apart.',
		source: 'worked out on this page from the contacts above',
		flag: 'CALC',
		when: () => true
	}
];

/** Every source of what the page says of this kind. */
export const sourcesOf = (kind: SocketKind): Source[] => [
	...SHARED.filter(({ when }) => when(sortOf(kind))).map(({ fact, source, flag }) => ({
		fact,
		source,
		flag
	})),
	...ALL[kind].sources
];

/** What a flag means, for people. */
export const FLAG_WORDS: Readonly<Record<Flag, string>> = {
	STD: 'a published standard, as reported',
	BOOK: 'an open book or document',
	MEM: 'from memory',
	PRACTICE: 'common practice',
	CALC: 'worked out'
};
