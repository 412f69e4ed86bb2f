/**
 * What each part is called and what it is for. Names are the trade's (common practice); contact
 * counts leave the chassis lug out.
 */
import type { DeviceKind, FaultKind, PlugKind, SocketKind } from '../engine';

export interface KindWords {
	readonly name: string;
	/** One sentence: what it is and what it is for. */
	readonly gloss: string;
}

const SOCKET_WORDS: Readonly<Record<SocketKind, KindWords>> = {
	'hybrid-5': {
		name: 'Hybrid of five',
		gloss:
			'A three-pin socket and a two-contact jack behind one opening: takes a microphone plug or a TS plug, one at a time.'
	},
	'hybrid-6': {
		name: 'Hybrid of six',
		gloss:
			'A three-pin socket and a three-contact jack behind one opening: balanced lines on either kind of plug.'
	},
	'hybrid-9': {
		name: 'Hybrid of nine',
		gloss:
			'A hybrid of six with a break contact behind each jack spring, so that a phone plug can switch what is wired behind it.'
	},
	'hybrid-10': {
		name: 'Hybrid of ten',
		gloss:
			'A hybrid of nine with one more break contact, 1N on pin 1, which opens when a three-pin plug goes in.'
	},
	'three-pin-female': {
		name: 'Three-pin socket, female',
		gloss: 'Takes the male plug of a microphone cable: an input, since signal runs male to female.'
	},
	'three-pin-male': {
		name: 'Three-pin socket, male',
		gloss: 'Takes the female plug of a cable: an output, since signal runs male to female.'
	},
	'jack-ts': {
		name: 'Jack, TS',
		gloss: 'Two contacts, tip and sleeve: an unbalanced line or an instrument.'
	},
	'jack-ts-break': {
		name: 'Jack, TS with break contact',
		gloss: 'Tip and sleeve, with a break contact on the tip that opens when a plug goes in.'
	},
	'jack-trs': {
		name: 'Jack, TRS',
		gloss: 'Three contacts, tip, ring and sleeve: a balanced line, or a stereo or insert lead.'
	},
	'jack-trs-break': {
		name: 'Jack, TRS with break contacts',
		gloss: 'Tip, ring and sleeve, each with a break contact that opens when a plug goes in.'
	},
	'patch-jack': {
		name: 'Patch jack',
		gloss:
			'One jack of a patch field: tip, ring and sleeve, with break contacts on tip and ring for the normal link.'
	},
	'jack-ts-changeover': {
		name: 'Jack, TS with changeover',
		gloss:
			'Tip and sleeve, with a changeover of its own that the plug moves and that touches no signal: it can switch a lamp or a relay.'
	}
};

const PLUG_WORDS: Readonly<Record<PlugKind, KindWords>> = {
	ts: {
		name: 'TS plug',
		gloss:
			'A phone plug with two conductors, tip and sleeve; its sleeve also covers the place of the ring.'
	},
	trs: { name: 'TRS plug', gloss: 'A phone plug with three conductors: tip, ring and sleeve.' },
	dummy: {
		name: 'dummy plug',
		gloss: 'A phone plug of insulating stuff: it lifts the springs and connects nothing.'
	},
	shorting: {
		name: 'shorting plug',
		gloss: 'A phone plug with tip, ring and sleeve joined inside.'
	},
	'three-pin': {
		name: 'three-pin plug',
		gloss: 'The circular plug of microphone cables: pins 1, 2 and 3 and a metal shell.'
	}
};

const DEVICE_WORDS: Readonly<Record<DeviceKind, KindWords>> = {
	mic: {
		name: 'Microphone',
		gloss: 'A source: a 200 Ω coil between hot and cold, and a shell for the shield.'
	},
	'mic-input': {
		name: 'Microphone input',
		gloss: 'Listens between hot and cold with 3 kΩ, and can give 48 V phantom power.'
	},
	'line-out': {
		name: 'Line output, balanced',
		gloss: 'A source: half the level on each leg, 50 Ω each, about its shield.'
	},
	'line-out-unbalanced': {
		name: 'Line output, unbalanced',
		gloss: 'A source: the whole level on hot, 100 Ω, about its shield.'
	},
	'line-in': {
		name: 'Line input, balanced',
		gloss: 'Listens between hot and cold, with 10 kΩ from each to its shield.'
	},
	'line-in-unbalanced': {
		name: 'Line input, unbalanced',
		gloss: 'Listens between hot and its shield, with 10 kΩ.'
	}
};

const FAULT_WORDS: Readonly<Record<FaultKind, KindWords>> = {
	open: { name: 'Open', gloss: 'A wire or core that conducts nothing: broken, or never soldered.' },
	resistive: {
		name: 'Resistive joint',
		gloss: 'A wire or core with more resistance than it should.'
	},
	bridge: { name: 'Bridge', gloss: 'Solder or a stray strand that joins two contacts.' },
	swap: {
		name: 'Swap',
		gloss: 'What should land on one contact lands on another, and the other way.'
	},
	'break-dirty': { name: 'Dirty break contact', gloss: 'A break contact with added resistance.' },
	'break-stuck-open': { name: 'Break stuck open', gloss: 'A break contact that never closes.' },
	'break-stuck-closed': { name: 'Break stuck closed', gloss: 'A break contact that never opens.' },
	'spring-bent': {
		name: 'Bent spring',
		gloss: 'A spring that never touches a plug, and never lifts off its break contact.'
	}
};

const ALL = { ...SOCKET_WORDS, ...PLUG_WORDS, ...DEVICE_WORDS, ...FAULT_WORDS };

/** Name and one-sentence gloss of a kind of socket, plug, device or fault. */
export const kindWords = (kind: SocketKind | PlugKind | DeviceKind | FaultKind): KindWords =>
	ALL[kind];
