/**
 * What happens as a plug goes in and out, told event by event. The tables follow from the depths of
 * the springs and the plugs' profiles, worked out by hand; the properties ask the circuit itself.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	PLUG_KINDS,
	SOCKET_KINDS,
	circuit,
	fits,
	type Bench,
	type PlugKind,
	type SocketKind
} from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { standingWords } from './standing';
import { travelWords } from './travel';

const at = (
	kind: SocketKind,
	plug: PlugKind,
	travel: number | null,
	more: Record<string, unknown> = {}
): Bench =>
	benchOf({
		sockets: [{ id: 'A', kind }],
		plugs: [{ id: 'p', kind: plug, ...(travel === null ? {} : { socket: 'A', travel }) }],
		...more
	});
const moved = (kind: SocketKind, plug: PlugKind, from: number, to: number, more = {}) =>
	travelWords(at(kind, plug, from, more), at(kind, plug, to, more), 'A');

describe('a TRS plug into a hybrid of nine', () => {
	it('makes and ends joints on its way that are gone once it is home', () =>
		expect(moved('hybrid-9', 'trs', 0, 30.5)).toEqual([
			'At 3 mm the tip reaches S’s spring and lifts it: S leaves SN and touches the tip.',
			'At 12 mm an insulator comes under S’s spring: S lets go of the tip and touches nothing.',
			'At 13 mm the ring comes under S’s spring: S touches the ring.',
			'At 17 mm an insulator comes under S’s spring: S lets go of the ring and touches nothing.',
			'At 18 mm the sleeve comes under S’s spring: S touches the sleeve.',
			'At 18.5 mm the tip reaches R’s spring and lifts it: R leaves RN and touches the tip.',
			'At 26 mm the tip reaches T’s spring and lifts it: T leaves TN and touches the tip; the tip now joins T and R.',
			'At 27.5 mm an insulator comes under R’s spring: R lets go of the tip and touches nothing; T and R, bridged by the tip, part again.',
			'At 28.5 mm the ring comes under R’s spring: R touches the ring.',
			'Plug p is home in the socket: the tip is on T, the ring on R and the sleeve on S; TN, RN and SN stand open.'
		]));
	it('undoes them in turn on its way out', () =>
		expect(moved('hybrid-9', 'trs', 29, 18)).toEqual([
			'Below 28.5 mm an insulator comes back under R’s spring: R lets go of the ring and touches nothing.',
			'Below 27.5 mm the tip comes back under R’s spring: R touches the tip; the tip now joins T and R.',
			'Below 26 mm the nose leaves T’s spring: T falls back on TN; T and R, bridged by the tip, part again.',
			'Below 18.5 mm the nose leaves R’s spring: R falls back on RN.'
		]));
	it('stands at 22 mm with its tip on R while T still rests', () =>
		expect(standingWords(at('hybrid-9', 'trs', 22), 'A')).toBe(
			'Plug p stands 22 mm deep in the socket: the tip is on R, the sleeve on S and the ring touches no spring; T rests on TN; RN and SN stand open.'
		));
	it('says that T and R do not part where another conductor joins them', () =>
		expect(
			moved('hybrid-9', 'trs', 27, 28, { wires: [{ id: 'w', from: 'A.T', to: 'A.R' }] })
		).toEqual([
			'At 27.5 mm an insulator comes under R’s spring: R lets go of the tip and touches nothing; T and R are bridged by the tip no more, though other conductors still join them.'
		]));
});

describe('other plugs', () => {
	it('a TS plug ends with its sleeve on R and S', () =>
		expect(moved('hybrid-9', 'ts', 28, 30.5)).toEqual([
			'At 29 mm the sleeve comes under R’s spring: R touches the sleeve; the sleeve now joins R and S.',
			'Plug p is home in the socket: the tip is on T and the sleeve on R and S; R and S are joined through the sleeve; TN, RN and SN stand open.'
		]));
	it('a dummy lifts and touches nothing', () =>
		expect(moved('jack-ts-break', 'dummy', 25, 30.5)).toEqual([
			'At 26 mm insulation reaches T’s spring and lifts it: T leaves TN and touches nothing.',
			'Plug p is home in the socket: T and S lie on insulation; TN stands open.'
		]));
	it('a TRS plug in a jack without a ring spring leaves its ring idle', () =>
		expect(moved('hybrid-5', 'trs', 26, 30.5)).toEqual([
			'Plug p is home in the socket: the tip is on T, the sleeve on S and the ring touches no spring.'
		]));
	it('a shorting plug joins all three', () =>
		expect(standingWords(at('jack-trs', 'shorting', 30.5), 'A')).toBe(
			'Plug p is home in the socket: the tip is on T, the ring on R and the sleeve on S; T, R and S are joined through the plug’s inside.'
		));
	it('a three-pin plug makes pin 1 first and breaks it last, and opens 1N with it', () => {
		expect(moved('hybrid-10', 'three-pin', 7, 11)).toEqual([
			'At 8 mm pin 1 and the shell make, before the others, and 1N opens from pin 1.',
			'At 10 mm pins 2 and 3 make: the plug has mated.'
		]);
		expect(moved('hybrid-10', 'three-pin', 10, 0)).toEqual([
			'Below 10 mm pins 2 and 3 part; pin 1 and the shell still hold.',
			'Below 8 mm pin 1 and the shell part, after the others, and 1N rests on pin 1 again.'
		]);
		expect(moved('three-pin-male', 'three-pin', 0, 9)).toEqual([
			'At 8 mm pin 1 and the shell make, before the others.'
		]);
	});
	it('a plug moves the changeover with the tip spring', () =>
		expect(moved('jack-ts-changeover', 'ts', 25.5, 26)).toEqual([
			'At 26 mm the tip reaches T’s spring and lifts it: T touches the tip; the changeover moves: C leaves NC and closes on NO.'
		]));
});

describe('a fault', () => {
	const told = (fault: Record<string, unknown>, from: number, to: number) =>
		moved('hybrid-9', 'trs', from, to, { faults: [fault] });
	it('bent spring is passed by', () =>
		expect(told({ kind: 'spring-bent', contact: 'A.R' }, 18, 29)).toEqual([
			'At 18.5 mm the plug passes R’s spring, which is bent: R stays on RN and touches nothing.',
			'At 26 mm the tip reaches T’s spring and lifts it: T leaves TN and touches the tip.'
		]));
	it('break stuck closed stays on its spring', () => {
		const stuck = { kind: 'break-stuck-closed', contact: 'A.TN' };
		expect(told(stuck, 25, 26)[0]).toContain(
			'lifts it: T touches the tip, but TN is stuck to it; the tip now joins T and R.'
		);
		expect(told(stuck, 26, 25)[0]).toContain('T falls back on TN, which was stuck to it all along');
	});
	it('break stuck open was open already', () => {
		const stuck = { kind: 'break-stuck-open', contact: 'A.TN' };
		expect(told(stuck, 25, 26)[0]).toContain('T touches the tip; TN was open already');
		expect(told(stuck, 26, 25)[0]).toContain('T falls back, but TN stays open');
	});
});

describe('putting in and taking out', () => {
	it('tells the state the socket is in now', () => {
		const [out, home] = [at('hybrid-9', 'ts', null), at('hybrid-9', 'ts', 30.5)];
		expect(travelWords(out, home, 'A')[0]).toMatch(
			/^Plug p is home in the socket: the tip is on T/
		);
		expect(travelWords(home, out, 'A')).toEqual([
			'Plug p comes out of the socket.',
			'Nothing is in the socket: T rests on TN, R on RN and S on SN.'
		]);
	});
	it('tells of nothing where nothing moved, or there is no such socket', () => {
		expect(moved('hybrid-9', 'ts', 20, 20)).toEqual([]);
		expect(travelWords(at('jack-ts', 'ts', null), at('jack-ts', 'ts', null), 'A')).toEqual([]);
		expect(travelWords(at('jack-ts', 'ts', 0), at('jack-ts', 'ts', 9), 'Z')).toEqual([]);
	});
});

const places = SOCKET_KINDS.flatMap((socket) =>
	PLUG_KINDS.filter((plug) => fits(plug, socket)).map((plug) => [socket, plug] as const)
);
/** Half-millimetre stops: every change of the real tables falls on one. */
const STOPS = Array.from({ length: 62 }, (_, i) => i / 2);
const conductorsOf = (bench: Bench) =>
	circuit(bench)
		.conductors.map((c) => `${c.a} ${c.b}`)
		.join(', ');
const mmOf = (sentences: readonly string[]) =>
	sentences.flatMap((s) => /^(?:At|Below) ([\d.]+) mm /.exec(s)?.[1] ?? []).map(Number);

describe('every event', () => {
	it.each(places)(
		'of a %s with a %s plug is told where the circuit changes, and no other',
		(s, p) => {
			const changes = STOPS.filter(
				(x, i) => i > 0 && conductorsOf(at(s, p, x)) !== conductorsOf(at(s, p, STOPS[i - 1]!))
			);
			// A dummy that lifts a spring without a break contact changes no conductor, and is told all the same.
			const lifts = p === 'dummy' ? [3, 18.5, 26] : [];
			const told = mmOf(moved(s, p, 0, 30.5));
			expect(changes.filter((x) => !told.includes(x))).toEqual([]);
			expect(told.filter((x) => !changes.includes(x) && !lifts.includes(x))).toEqual([]);
			expect(mmOf(moved(s, p, 30.5, 0))).toEqual([...told].reverse());
		}
	);
	it('is the same in one long move as in two short ones', () => {
		const stop = fc.constantFrom(...STOPS.filter((x) => x < 30.5));
		const place = fc.constantFrom(...places);
		fc.assert(
			fc.property(place, stop, stop, stop, ([s, p], a, b, c) => {
				const [x, y, z] = [a, b, c].sort((m, n) => m - n) as [number, number, number];
				const inward = [...moved(s, p, x, y), ...moved(s, p, y, z)];
				const outward = [...moved(s, p, z, y), ...moved(s, p, y, x)];
				expect(moved(s, p, x, z)).toEqual(inward);
				expect(moved(s, p, z, x)).toEqual(outward);
			}),
			{ numRuns: 1000 }
		);
	});
});
