/**
 * Random benches with one socket, and how to find springs, beads and plugs among a figure's marks.
 * What is true comes from the engine's circuit, what is drawn from the marks, and nothing else.
 */
import fc from 'fast-check';
import { expect } from 'vitest';
import type { Figure, Stroke } from '../../src/lib/diagram/figure';
import { isClosed } from '../../src/lib/diagram/lit';
import { sectionEvents } from '../../src/lib/diagram/section';
import {
	PLUGS,
	PLUG_KINDS,
	SOCKETS,
	SOCKET_KINDS,
	circuit,
	fits,
	splitNode,
	type Bench,
	type PlugKind,
	type SocketKind,
	type SpringName
} from '../../src/lib/engine';
import { SOCKET, benchIn, hasJack, hasPins, type State } from './benches';
import { boxOfLines, distance, linesOf, strokesOf, type Line } from './measure';

/** Half of a spring's line: its ink reaches so far from its middle line. */
export const HALF = 1.4;
/** Drawn ink may miss or overlap by so much and still be seen to touch, units. */
export const SLACK = 0.3;
/** The least gap that a person sees as open, units. */
export const GAP = 3;
const fault = (kind: SocketKind) =>
	fc.oneof(
		fc.constantFrom(...SOCKETS[kind].springs.map((s) => ['spring-bent', s] as const)),
		...(Object.keys(SOCKETS[kind].breaks).length > 0
			? [
					fc.tuple(
						fc.constantFrom('break-stuck-open' as const, 'break-stuck-closed' as const),
						fc.constantFrom(...Object.keys(SOCKETS[kind].breaks))
					)
				]
			: [])
	);
const faultsOf = (kind: SocketKind) =>
	fc
		.array(fault(kind), { maxLength: 2 })
		.map((list) => list.map(([what, c]) => ({ kind: what, contact: `${SOCKET}.${c}` })));

/** Every travel at which anything changes, in any socket, for any plug. */
const EVENTS = [
	...new Set(
		SOCKET_KINDS.flatMap((kind) => PLUG_KINDS.flatMap((plug) => sectionEvents(plug, kind)))
	)
];
/** Thousandths of a millimetre: `fc.double` would try next to nothing but tiny numbers. */
export const thousandths = (from: number, to: number) =>
	fc.integer({ min: Math.ceil(from * 1000), max: Math.floor(to * 1000) }).map((n) => n / 1000);
/** Anywhere, at half millimetres, and close to events. */
export const travels = fc.oneof(
	thousandths(0, 30.5),
	fc.integer({ min: 0, max: 61 }).map((half) => half / 2),
	fc
		.tuple(fc.constantFrom(...EVENTS), fc.constantFrom(-0.4, -0.05, -0.001, 0, 0.001, 0.05, 0.4))
		.map(([event, off]) => event + off)
);

export interface Sample {
	readonly state: State;
	readonly bench: Bench;
}
export const samplesOf = (kinds: readonly SocketKind[], plugs: readonly PlugKind[]) =>
	fc.constantFrom(...kinds).chain((kind) =>
		fc
			.tuple(
				fc.constantFrom(...plugs.filter((plug) => fits(plug, kind))),
				travels,
				SOCKETS[kind].springs.length > 0 ? faultsOf(kind) : fc.constant([])
			)
			.map(([plug, travel, faults]): Sample => {
				const state = { kind, plug, travel };
				return { state, bench: benchIn(state, { faults }) };
			})
	);

export const JACK_KINDS = SOCKET_KINDS.filter(hasJack);
export const PIN_KINDS = SOCKET_KINDS.filter(hasPins);
export const JACK_PLUGS = PLUG_KINDS.filter((plug) => PLUGS[plug].fits === 'jack');
export const RUNS = { numRuns: 300 };

export const spring = (figure: Figure, contact: string): Line[] =>
	strokesOf(figure, (s) => s.role === 'spring' && s.of === `${SOCKET}.${contact}`);
/** The bead or arrowhead of a break contact; terminals and lugs stand farther right. */
export const seat = (figure: Figure, contact: string): Line[] =>
	strokesOf(
		figure,
		(s) =>
			(s.role === 'seat' || s.role === 'seat-closed') &&
			s.of === `${SOCKET}.${contact}` &&
			boxOfLines(linesOf(s.d)).right < figure.width * 0.8
	);

/** In the section the plug is what lies within the bore: metal with a node, or a collar. */
const inBore = (s: Stroke): boolean => {
	const { top, bottom } = boxOfLines(linesOf(s.d));
	return top > 138 - 38 && bottom < 138 + 38;
};
export const plugPart = (figure: Figure, node: string | null): Line[] =>
	strokesOf(figure, (s) =>
		node ? s.role === 'metal' && s.of === node : s.role === 'collar' && inBore(s)
	);
export const wholePlug = (figure: Figure, plug: string): Line[] =>
	strokesOf(
		figure,
		(s) =>
			(s.role === 'metal' && s.of !== undefined && splitNode(s.of)[0] === plug) ||
			(s.role === 'collar' && inBore(s))
	);

export const touchOf = (bench: Bench, name: SpringName): string | null =>
	circuit(bench).conductors.find(({ reason: r }) => r.kind === 'touch' && r.spring === name)?.b ??
	null;
export const isBent = (bench: Bench, name: SpringName): boolean =>
	bench.faults.some((f) => f.kind === 'spring-bent' && f.contact === `${SOCKET}.${name}`);

/** Ink between a spring and something else, units: negative where they run into each other. */
export const inkBetween = (one: readonly Line[], other: readonly Line[]): number =>
	distance(one, other) - HALF;

function expectClosedOrOpen(figure: Figure, bench: Bench, contact: string, on: string) {
	const gap = inkBetween(spring(figure, on), seat(figure, contact));
	if (isClosed(bench, SOCKET, contact)) {
		expect(Math.abs(gap), `${contact} rests on ${on}`).toBeLessThan(SLACK);
		return;
	}
	expect(gap, `${contact} stands off ${on}`).toBeGreaterThanOrEqual(GAP);
}

export function expectBreaksTrue(figure: Figure, bench: Bench, kind: SocketKind, match: RegExp) {
	for (const [contact, on] of Object.entries(SOCKETS[kind].breaks))
		if (match.test(contact)) expectClosedOrOpen(figure, bench, contact, on);
	if (!SOCKETS[kind].changeover) return;
	for (const contact of ['NC', 'NO']) expectClosedOrOpen(figure, bench, contact, 'C');
}
