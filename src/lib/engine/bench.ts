/**
 * What a bench is: plain, immutable data. The lists are written once and the types derived from
 * them. A value of type `Bench` is made by `parseBench` (text) or by the functions of `edit.ts`;
 * everything downstream trusts it.
 */

declare const unit: unique symbol;
type Quantity<Unit extends string> = number & { readonly [unit]?: Unit };
/** Electrical resistance in ohms. */
export type Ohms = Quantity<'ohm'>;
/** Electric potential difference in volts. */
export type Volts = Quantity<'volt'>;
/** A length in millimetres. */
export type Millimetres = Quantity<'mm'>;

export const FORMAT = 'solderside-bench';
export const VERSION = 1;

export const SOCKET_KINDS = [
	'hybrid-5',
	'hybrid-6',
	'hybrid-9',
	'hybrid-10',
	'three-pin-female',
	'three-pin-male',
	'jack-ts',
	'jack-ts-break',
	'jack-trs',
	'jack-trs-break',
	'patch-jack',
	'jack-ts-changeover'
] as const;
export type SocketKind = (typeof SOCKET_KINDS)[number];

export const PLUG_KINDS = ['ts', 'trs', 'dummy', 'shorting', 'three-pin'] as const;
export type PlugKind = (typeof PLUG_KINDS)[number];

export const DEVICE_KINDS = [
	'mic',
	'mic-input',
	'line-out',
	'line-out-unbalanced',
	'line-in',
	'line-in-unbalanced'
] as const;
export type DeviceKind = (typeof DEVICE_KINDS)[number];

export const FAULT_KINDS = [
	'open',
	'resistive',
	'bridge',
	'swap',
	'break-dirty',
	'break-stuck-open',
	'break-stuck-closed',
	'spring-bent'
] as const;
export type FaultKind = (typeof FAULT_KINDS)[number];

export const BUSHES = ['insulated', 'metal'] as const;
export type Bush = (typeof BUSHES)[number];

/** Words that no id may be: a requirement's `when` and the panel need them. */
export const RESERVED_IDS = ['panel', 'none', ...PLUG_KINDS] as const;

/** `ID.CONTACT`, or the bare word `panel`. */
export type NodeName = string;
export const PANEL: NodeName = 'panel';

export interface Socket {
	readonly id: string;
	readonly kind: SocketKind;
	readonly bush: Bush;
	readonly label: string;
}
export interface Wire {
	readonly id: string;
	readonly from: NodeName;
	readonly to: NodeName;
	readonly awg: number;
	readonly mm: Millimetres;
}
export interface Plug {
	readonly id: string;
	readonly kind: PlugKind;
	/** The socket it sits in; null: it lies loose on the bench. */
	readonly socket: string | null;
	/** 0 is out, 30.5 seated. */
	readonly travel: Millimetres;
}
export interface Device {
	readonly id: string;
	readonly kind: DeviceKind;
	readonly phantom: boolean;
}
export interface Cable {
	readonly id: string;
	readonly m: number;
	readonly awg: number;
	readonly cores: readonly (readonly [NodeName, NodeName])[];
}
export type Fault =
	| { readonly kind: 'open'; readonly wire: string }
	| { readonly kind: 'resistive'; readonly wire: string; readonly ohms: Ohms }
	| { readonly kind: 'bridge'; readonly between: readonly [NodeName, NodeName] }
	| { readonly kind: 'swap'; readonly contacts: readonly [NodeName, NodeName] }
	| { readonly kind: 'break-dirty'; readonly contact: NodeName; readonly ohms: Ohms }
	| { readonly kind: 'break-stuck-open'; readonly contact: NodeName }
	| { readonly kind: 'break-stuck-closed'; readonly contact: NodeName }
	| { readonly kind: 'spring-bent'; readonly contact: NodeName };

export interface Bench {
	readonly title: string;
	readonly panel: { readonly metal: boolean };
	readonly sockets: readonly Socket[];
	readonly wires: readonly Wire[];
	readonly plugs: readonly Plug[];
	readonly devices: readonly Device[];
	readonly cables: readonly Cable[];
	readonly faults: readonly Fault[];
}

/** A bench with nothing on it. */
export const EMPTY_BENCH: Bench = {
	title: '',
	panel: { metal: false },
	sockets: [],
	wires: [],
	plugs: [],
	devices: [],
	cables: [],
	faults: []
};

/** What the file may say, and what it means when it says nothing. */
export const DEFAULTS = {
	bush: 'insulated',
	travel: 30.5,
	wireAwg: 26,
	cableAwg: 24,
	mm: 40
} as const;

/** Permitted ranges, both ends included unless `above` is set (then the low end is not). */
export const RANGES = {
	travel: { from: 0, to: 30.5, unit: 'mm' },
	awg: { from: 10, to: 40, unit: 'AWG' },
	mm: { above: 0, to: 100_000, unit: 'mm' },
	m: { above: 0, to: 10_000, unit: 'm' },
	ohms: { from: 0, to: 1e9, unit: 'Ω' }
} as const;

/** Longest text accepted as a bench file, in bytes (1 MiB). */
export const MOST_BYTES = 1_048_576;

/** The node's owner and contact, `['A', 'TN']`; the panel is `['panel', '']`. */
export function splitNode(node: NodeName): [string, string] {
	const dot = node.indexOf('.');
	return dot < 0 ? [node, ''] : [node.slice(0, dot), node.slice(dot + 1)];
}
