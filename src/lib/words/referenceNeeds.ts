/**
 * What somebody needs of a socket, as data, and why a kind does not meet it, in words. A need is
 * asked of the engine by the same function that judges a choice in an exercise; each one is met when
 * every single need of one of its ways is met.
 */
import { SOCKETS, type SocketKind } from '../engine';
import type { Need } from '../exercises/needs';
import { contactText, andOf } from './names';

export const ARRIVALS = ['male', 'female', 'phone'] as const;
/** What is to be plugged in: a three-pin plug, male or female, or a phone plug. */
export type Arrival = (typeof ARRIVALS)[number];
export const LINES = ['either', 'balanced', 'unbalanced'] as const;
export type Line = (typeof LINES)[number];
export const SWITCHED = ['T', 'R', 'S'] as const;
export type Switched = (typeof SWITCHED)[number];

/** The answers to the chooser's questions. */
export interface Asked {
	readonly arrivals: readonly Arrival[];
	/** A three-pin plug and a phone plug in at the same time. */
	readonly together: boolean;
	readonly line: Line;
	readonly cables: 1 | 2;
	/** Springs that need a break contact. */
	readonly switched: readonly Switched[];
	readonly pin1: boolean;
	readonly changeover: boolean;
	readonly patch: boolean;
	readonly lug: boolean;
}
export const NOTHING_ASKED: Asked = {
	arrivals: [],
	together: false,
	line: 'either',
	cables: 1,
	switched: [],
	pin1: false,
	changeover: false,
	patch: false,
	lug: false
};

export const ARRIVAL_WORDS: Readonly<Record<Arrival, string>> = {
	male: 'A male three-pin plug, from a microphone',
	female: 'A female three-pin plug, on the way to a device',
	phone: 'A phone plug'
};
export const LINE_WORDS: Readonly<Record<Line, string>> = {
	either: 'No matter',
	balanced: 'Balanced',
	unbalanced: 'Unbalanced'
};
export const SWITCHED_WORDS: Readonly<Record<Switched, string>> = {
	T: 'The tip, hot',
	R: 'The ring, cold',
	S: 'The sleeve, shield'
};

/** One need: the ways in which it can be met, and what to say where none is. */
export interface Want {
	readonly id: string;
	readonly ways: readonly (readonly Need[])[];
	/** Null where another need that is not met says it already: there is no such opening at all. */
	readonly missing: (kind: SocketKind) => string | null;
}

const hasJack = (kind: SocketKind): boolean => SOCKETS[kind].springs.length > 0;
const hasPins = (kind: SocketKind): boolean => SOCKETS[kind].threePin !== null;
const sprung = (kind: SocketKind): string[] => Object.values(SOCKETS[kind].breaks);

const unbroken = (kind: SocketKind, on: readonly string[]): string => {
	const missing = on.filter((c) => !sprung(kind).includes(c));
	return `no break contact on ${andOf(missing.map(contactText))}`;
};

const ARRIVES: Readonly<Record<Arrival, Want>> = {
	male: {
		id: 'male',
		ways: [[{ need: 'gender', is: 'female' }]],
		missing: (kind) =>
			hasPins(kind)
				? 'its contacts are male, so a male plug does not go in'
				: 'no three-pin opening'
	},
	female: {
		id: 'female',
		ways: [[{ need: 'gender', is: 'male' }]],
		missing: (kind) =>
			hasPins(kind)
				? 'its contacts are female, so a female plug does not go in'
				: 'no three-pin opening'
	},
	phone: {
		id: 'phone',
		ways: [[{ need: 'takes', plug: 'trs' }]],
		missing: () => 'no jack, so a phone plug does not go in'
	}
};

const TOGETHER: Want = {
	id: 'together',
	ways: [[{ need: 'both-at-once', plugs: ['three-pin', 'trs'] }]],
	missing: (kind) =>
		hasJack(kind) && hasPins(kind)
			? 'it takes one plug at a time; two at once need two sockets'
			: 'it takes one sort of plug only'
};

/** The signal conductors of a phone plug on that line, and a plug that carries them. */
const phoneOf = (line: Line) =>
	line === 'balanced'
		? ({ plug: 'trs', signals: ['T', 'R'] } as const)
		: ({ plug: 'ts', signals: ['T'] } as const);

/** A balanced line must land on every opening that is asked for; with none asked for, on one. */
function lineWant({ line, arrivals }: Asked): Want[] {
	if (line === 'either') return [];
	const jack: Need = { need: 'meets', plug: phoneOf(line).plug };
	const pins: Need = { need: 'meets', plug: 'three-pin' };
	const asked = [
		...(arrivals.includes('phone') ? [jack] : []),
		...(arrivals.some((a) => a !== 'phone') ? [pins] : [])
	];
	return [
		{
			id: 'line',
			ways: asked.length > 0 ? [asked] : [[pins], [jack]],
			missing: (kind) =>
				hasJack(kind) && !SOCKETS[kind].springs.includes('R')
					? 'no ring contact, so a balanced line loses its cold leg on the jack'
					: null
		}
	];
}

/** Two cables: one on each half, or one on the springs and one on their break contacts. */
function cablesWant({ cables, line }: Asked): Want[] {
	if (cables === 1) return [];
	const { plug, signals } = phoneOf(line);
	const jack: Need = { need: 'meets', plug };
	return [
		{
			id: 'cables',
			ways: [
				[{ need: 'meets', plug: 'three-pin' }, jack],
				[jack, { need: 'breaks', on: signals }]
			],
			missing: () => 'contacts for one cable only'
		}
	];
}

function patchWant({ patch, line }: Asked): Want[] {
	if (!patch) return [];
	const { plug, signals } = phoneOf(line === 'unbalanced' ? 'unbalanced' : 'balanced');
	return [
		{
			id: 'patch',
			ways: [
				[
					{ need: 'meets', plug },
					{ need: 'breaks', on: signals }
				]
			],
			missing: (kind) =>
				hasJack(kind)
					? `${unbroken(kind, signals)} for the normal link`
					: 'no jack for the patch cord'
		}
	];
}

const CHANGEOVER: Want = {
	id: 'changeover',
	ways: [[{ need: 'changeover' }]],
	missing: () => 'no changeover that touches no signal'
};
const PIN_1: Want = {
	id: 'pin1',
	ways: [[{ need: 'breaks', on: ['1'] }]],
	missing: (kind) =>
		hasPins(kind) ? unbroken(kind, ['1']) : 'no pin 1, and so no break contact on it'
};
/** A lug of its own: it is there, and no contact of pin 1. */
const LUG: Want = {
	id: 'lug',
	ways: [[{ need: 'behaves', with: 'none', joined: [], apart: [['G', '1']] }]],
	missing: () => 'no chassis lug'
};

const breakWant = (on: Switched): Want => ({
	id: `break ${on}`,
	ways: [[{ need: 'breaks', on: [on] }]],
	missing: (kind) =>
		SOCKETS[kind].springs.includes(on)
			? unbroken(kind, [on])
			: `no contact ${on} at all, and so no break contact on it`
});

/** What was asked, as needs. */
export const wantsOf = (asked: Asked): Want[] => [
	...asked.arrivals.map((a) => ARRIVES[a]),
	...(asked.together ? [TOGETHER] : []),
	...lineWant(asked),
	...cablesWant(asked),
	...asked.switched.map(breakWant),
	...(asked.pin1 ? [PIN_1] : []),
	...(asked.changeover ? [CHANGEOVER] : []),
	...patchWant(asked),
	...(asked.lug ? [LUG] : [])
];

/** Contacts that the asked-for uses need, as far as a kind has them. */
export function neededContacts(asked: Asked): ReadonlySet<string> {
	const { arrivals, line, switched } = asked;
	const twoCables = asked.cables === 2 ? ['1', '2', '3', 'T', 'S'] : [];
	const jack = arrivals.includes('phone') || asked.patch ? ['T', 'S'] : twoCables;
	const ring = line === 'balanced' || (asked.patch && line !== 'unbalanced') ? ['R'] : [];
	return new Set([
		...(arrivals.some((a) => a !== 'phone') ? ['1', '2', '3'] : twoCables),
		...jack,
		...(line === 'balanced' && jack.length === 0 ? ['1', '2', '3', 'T', 'S'] : []),
		...ring,
		...switched.flatMap((s) => [s, `${s}N`]),
		...(asked.pin1 ? ['1', '1N'] : []),
		...(asked.changeover ? ['C', 'NC', 'NO'] : []),
		...(asked.patch ? ['TN', ...ring.map((r) => `${r}N`)] : [])
	]);
}
