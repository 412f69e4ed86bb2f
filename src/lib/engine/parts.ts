/**
 * Every part as data: which contacts a socket has, where springs stand, what a plug's profile is,
 * what a device has inside. Lengths in millimetres behind the front face, resistances in ohms.
 * The millimetres are schematic: they keep the order of events of the real 6.35 mm family and are
 * no maker's drawing. Contact names: the trade's (common practice). Counts never include the
 * chassis lug G (common practice).
 */
import type { DeviceKind, Millimetres, NodeName, Ohms, PlugKind, SocketKind, Volts } from './bench';

export type SpringName = 'T' | 'R' | 'S';
export type PinName = '1' | '2' | '3';

export interface SocketPart {
	/** All contacts, chassis lug last. */
	readonly contacts: readonly string[];
	readonly threePin: 'female' | 'male' | null;
	readonly springs: readonly SpringName[];
	/** Break contact → the spring or pin that it rests on. */
	readonly breaks: Readonly<Record<string, string>>;
	readonly changeover: boolean;
	/** Whether it has a bush that may be metal. */
	readonly hasBush: boolean;
}

const JACK_BREAKS = { TN: 'T', RN: 'R', SN: 'S' } as const;
const hybrid = (
	jack: readonly string[],
	breaks: Readonly<Record<string, string>> = {}
): SocketPart => ({
	contacts: ['1', '2', '3', ...jack, 'G'],
	threePin: 'female',
	springs: jack.filter((c): c is SpringName => c === 'T' || c === 'R' || c === 'S'),
	breaks,
	changeover: false,
	hasBush: false
});
const jack = (
	contacts: readonly string[],
	breaks: Readonly<Record<string, string>> = {},
	changeover = false
): SocketPart => ({
	contacts,
	threePin: null,
	springs: contacts.filter((c): c is SpringName => c === 'T' || c === 'R' || c === 'S'),
	breaks,
	changeover,
	hasBush: true
});
const threePin = (gender: 'female' | 'male'): SocketPart => ({
	contacts: ['1', '2', '3', 'G'],
	threePin: gender,
	springs: [],
	breaks: {},
	changeover: false,
	hasBush: false
});

export const SOCKETS: Readonly<Record<SocketKind, SocketPart>> = {
	'hybrid-5': hybrid(['T', 'S']),
	'hybrid-6': hybrid(['T', 'R', 'S']),
	'hybrid-9': hybrid(['T', 'R', 'S', 'TN', 'RN', 'SN'], JACK_BREAKS),
	'hybrid-10': hybrid(['T', 'R', 'S', 'TN', 'RN', 'SN', '1N'], { ...JACK_BREAKS, '1N': '1' }),
	'three-pin-female': threePin('female'),
	'three-pin-male': threePin('male'),
	'jack-ts': jack(['T', 'S']),
	'jack-ts-break': jack(['T', 'S', 'TN'], { TN: 'T' }),
	'jack-trs': jack(['T', 'R', 'S']),
	'jack-trs-break': jack(['T', 'R', 'S', 'TN', 'RN', 'SN'], JACK_BREAKS),
	'patch-jack': jack(['T', 'R', 'S', 'TN', 'RN'], { TN: 'T', RN: 'R' }),
	'jack-ts-changeover': jack(['T', 'S', 'C', 'NC', 'NO'], {}, true)
};

/** Depth of each spring behind the front face, mm. */
export const SPRING_DEPTH: Readonly<Record<SpringName, Millimetres>> = { S: 3, R: 18.5, T: 26 };
/** Travel of a seated plug, mm. */
export const SEATED: Millimetres = 30.5;
/** Travel at which pin 1 and the shell make, mm (and the pin-1 break opens). */
export const PIN_1_MAKES: Millimetres = 8;
/** Travel at which pins 2 and 3 make, mm. */
export const PINS_MAKE: Millimetres = 10;

export type PlugConductor = 'tip' | 'ring' | 'sleeve' | '1' | '2' | '3' | 'shell';
/** A stretch of the plug, measured from its nose; null is an insulator. */
export interface Segment {
	readonly from: Millimetres;
	readonly to: Millimetres;
	readonly conductor: PlugConductor | null;
}
export interface PlugPart {
	readonly conductors: readonly PlugConductor[];
	/** Profile of a phone plug, nose first; empty for the three-pin plug. */
	readonly segments: readonly Segment[];
	readonly fits: 'jack' | 'three-pin';
	/** Conductors joined inside the plug. */
	readonly inside: readonly (readonly [PlugConductor, PlugConductor])[];
}

const TRS_PROFILE: readonly Segment[] = [
	{ from: 0, to: 9, conductor: 'tip' },
	{ from: 9, to: 10, conductor: null },
	{ from: 10, to: 14, conductor: 'ring' },
	{ from: 14, to: 15, conductor: null },
	{ from: 15, to: 30.5, conductor: 'sleeve' }
];

export const PLUGS: Readonly<Record<PlugKind, PlugPart>> = {
	ts: {
		conductors: ['tip', 'sleeve'],
		segments: [
			{ from: 0, to: 9, conductor: 'tip' },
			{ from: 9, to: 10.5, conductor: null },
			{ from: 10.5, to: 30.5, conductor: 'sleeve' }
		],
		fits: 'jack',
		inside: []
	},
	trs: { conductors: ['tip', 'ring', 'sleeve'], segments: TRS_PROFILE, fits: 'jack', inside: [] },
	dummy: {
		conductors: [],
		segments: [{ from: 0, to: 30.5, conductor: null }],
		fits: 'jack',
		inside: []
	},
	shorting: {
		conductors: ['tip', 'ring', 'sleeve'],
		segments: TRS_PROFILE,
		fits: 'jack',
		inside: [
			['tip', 'ring'],
			['ring', 'sleeve']
		]
	},
	'three-pin': {
		conductors: ['1', '2', '3', 'shell'],
		segments: [],
		fits: 'three-pin',
		inside: []
	}
};

/** Resistances of good parts, ohms (schematic values of the same order as common practice). */
export const GOOD: Readonly<Record<'touch' | 'break' | 'bond' | 'short' | 'bridge', Ohms>> = {
	touch: 0.01,
	break: 0.015,
	bond: 0.01,
	short: 0.01,
	bridge: 0.01
};

/** Feed resistor of 48 V phantom supply, each leg: 6.8 kΩ nominal (IEC 61938, as reported); 6810 Ω is the E96 part. */
export const PHANTOM_FEED: Ohms = 6810;
/** Phantom supply, volts (IEC 61938 P48, as reported). */
export const PHANTOM: Volts = 48;

/** A resistor inside a device; `source` is the electromotive force in series, + at `a`. */
export interface Inside {
	readonly a: string;
	readonly b: string;
	readonly ohms: Ohms;
	/** Signal of the source at a level of one volt, volts; absent for a plain load. */
	readonly signal?: Volts;
	readonly role: 'coil' | 'load' | 'output' | 'bond';
}
export interface DevicePart {
	readonly terminals: readonly string[];
	readonly inside: readonly Inside[];
	/** The two terminals an input listens between, + first. */
	readonly listens: readonly [string, string] | null;
	readonly isSource: boolean;
	readonly mayHavePhantom: boolean;
}

const BOND: Inside = { a: 'shield', b: 'chassis', ohms: GOOD.bond, role: 'bond' };
const BALANCED = ['hot', 'cold', 'shield', 'chassis'] as const;
const UNBALANCED = ['hot', 'shield', 'chassis'] as const;

export const DEVICES: Readonly<Record<DeviceKind, DevicePart>> = {
	mic: {
		terminals: ['hot', 'cold', 'shell'],
		inside: [{ a: 'hot', b: 'cold', ohms: 200, signal: 1, role: 'coil' }],
		listens: null,
		isSource: true,
		mayHavePhantom: false
	},
	'mic-input': {
		terminals: BALANCED,
		inside: [{ a: 'hot', b: 'cold', ohms: 3000, role: 'load' }, BOND],
		listens: ['hot', 'cold'],
		isSource: false,
		mayHavePhantom: true
	},
	'line-out': {
		terminals: BALANCED,
		inside: [
			{ a: 'hot', b: 'shield', ohms: 50, signal: 0.5, role: 'output' },
			{ a: 'cold', b: 'shield', ohms: 50, signal: -0.5, role: 'output' },
			BOND
		],
		listens: null,
		isSource: true,
		mayHavePhantom: false
	},
	'line-out-unbalanced': {
		terminals: UNBALANCED,
		inside: [{ a: 'hot', b: 'shield', ohms: 100, signal: 1, role: 'output' }, BOND],
		listens: null,
		isSource: true,
		mayHavePhantom: false
	},
	'line-in': {
		terminals: BALANCED,
		inside: [
			{ a: 'hot', b: 'shield', ohms: 10_000, role: 'load' },
			{ a: 'cold', b: 'shield', ohms: 10_000, role: 'load' },
			BOND
		],
		listens: ['hot', 'cold'],
		isSource: false,
		mayHavePhantom: false
	},
	'line-in-unbalanced': {
		terminals: UNBALANCED,
		inside: [{ a: 'hot', b: 'shield', ohms: 10_000, role: 'load' }, BOND],
		listens: ['hot', 'shield'],
		isSource: false,
		mayHavePhantom: false
	}
};

/** Whether a plug of this kind goes into a socket of that kind. */
export function fits(plug: PlugKind, socket: SocketKind): boolean {
	const part = SOCKETS[socket];
	return PLUGS[plug].fits === 'jack' ? part.springs.length > 0 : part.threePin !== null;
}

/** Contacts that a break-contact fault may name: `TN RN SN 1N` as far as the socket has them. */
export const breakContactsOf = (kind: SocketKind): string[] => Object.keys(SOCKETS[kind].breaks);

/** Copper cross-section of a solid wire, m²: diameter 0.127 mm × 92^((36−AWG)/39), the definition of the gauge. */
export function crossSection(awg: number): number {
	const diameter = 0.127e-3 * 92 ** ((36 - awg) / 39);
	return (Math.PI / 4) * diameter * diameter;
}

/**
 * Resistance of solid copper wire at 20 °C, ohms per metre: ρ = 1.7241e-8 Ω·m (IEC 60028, from
 * memory) over the cross-section of the gauge.
 */
export const ohmsPerMetre = (awg: number): Ohms => 1.7241e-8 / crossSection(awg);

/** What a spring at `depth` sees of a plug at `travel`: nothing yet, an insulator, or a conductor. */
export function seenBySpring(
	plug: PlugKind,
	travel: Millimetres,
	spring: SpringName
): { lifted: boolean; touches: PlugConductor | null } {
	const at = travel - SPRING_DEPTH[spring];
	const { segments } = PLUGS[plug];
	const last = segments.at(-1);
	if (at < 0 || !last) return { lifted: false, touches: null };
	const segment = segments.find((s) => s.from <= at && (at < s.to || (s === last && at <= s.to)));
	return { lifted: true, touches: segment?.conductor ?? null };
}

/** Which conductors of a three-pin plug have mated at `travel`. */
export function matedPins(travel: Millimetres): PlugConductor[] {
	if (travel < PIN_1_MAKES) return [];
	return travel < PINS_MAKE ? ['1', 'shell'] : ['1', '2', '3', 'shell'];
}

/** Terminals or conductors of the owner, as node names. */
export const nodesOf = (id: string, names: readonly string[]): NodeName[] =>
	names.map((n) => `${id}.${n}`);
