/** The jack's section, measured: whether springs, beads and plug are drawn as the engine has them. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../src/lib/diagram/figure';
import { isClosed } from '../../src/lib/diagram/lit';
import { sectionOf } from '../../src/lib/diagram/section';
import { SECTION } from '../../src/lib/diagram/sectionFrame';
import {
	SOCKETS,
	SPRING_DEPTH,
	seenBySpring,
	type SocketKind,
	type SpringName
} from '../../src/lib/engine';
import { SOCKET, benchIn } from './benches';
import { boxOfLines, isInside, type Line, type Point } from './measure';
import {
	GAP,
	JACK_KINDS,
	JACK_PLUGS,
	RUNS,
	SLACK,
	expectBreaksTrue,
	inkBetween,
	isBent,
	plugPart,
	samplesOf,
	spring,
	thousandths,
	touchOf,
	wholePlug
} from './samples';

/** What a spring and a plug could meet with: the parts of lines about the bore, for speed. */
const inTheWay = (lines: readonly Line[]): Line[] =>
	lines.flatMap((line) => {
		const parts: Point[][] = [[]];
		for (const point of line)
			if (Math.abs(point[1] - SECTION.axis) < 52) parts.at(-1)!.push(point);
			else if (parts.at(-1)!.length > 0) parts.push([]);
		return parts.filter((part) => part.length > 0);
	});

/** The points of a spring that lie in the plug: none, whatever the distance of the outlines. */
const insideOf = (spring: readonly Line[], plug: readonly Line[]): Point[] =>
	spring.flat().filter((p) => plug.some((outline) => isInside(p, outline)));

/** Springs and plug as text: another kind of jack may draw the very same. */
const strokesText = ({ marks }: Figure): string =>
	marks
		.flatMap((m) => (m.kind === 'stroke' && /spring|metal|collar/.test(m.role) ? [m.d] : []))
		.join();
/** Contacts that stand still while springs move. */
const fixedOf = (kind: SocketKind): string[] => [
	...Object.keys(SOCKETS[kind].breaks).filter((name) => name !== '1N'),
	...(SOCKETS[kind].changeover ? ['NC', 'NO'] : [])
];
/** What a contact's leaf and bead look like, as paths; lugs stand farther right. */
const leafAndBead = ({ marks }: Figure, contact: string): string[] =>
	marks.flatMap((m) =>
		m.kind === 'stroke' && /blade|seat/.test(m.role) && m.of === `${SOCKET}.${contact}` ? [m.d] : []
	);
const measured = new Set<string>();

describe('the section tells the engine’s truth', () => {
	it('a spring touches what the engine says it touches, and nothing where it touches nothing', () => {
		fc.assert(
			fc.property(samplesOf(JACK_KINDS, JACK_PLUGS), ({ state, bench }) => {
				const figure = sectionOf(bench, SOCKET);
				const { id, kind, travel } = bench.plugs[0]!;
				for (const name of SOCKETS[state.kind].springs) {
					const line = spring(figure, name);
					const node = touchOf(bench, name);
					const { lifted } = seenBySpring(kind, travel, name);
					if (lifted && !isBent(bench, name)) {
						const ink = inkBetween(line, plugPart(figure, node));
						expect(Math.abs(ink), `${name} on ${node ?? 'insulation'}`).toBeLessThan(SLACK);
						expect(inkBetween(line, wholePlug(figure, id)), name).toBeGreaterThan(-SLACK);
					} else if (isBent(bench, name) || travel < SPRING_DEPTH[name])
						expect(inkBetween(line, wholePlug(figure, id)), name).toBeGreaterThan(0);
				}
			}),
			RUNS
		);
	});

	it.each(JACK_KINDS)(
		'no metal runs into other metal, at every tenth of a millimetre: %s',
		(kind) => {
			for (const plug of JACK_PLUGS)
				for (let tenth = 0; tenth <= 305; tenth++) {
					const bench = benchIn({ kind, plug, travel: tenth / 10 });
					const figure = sectionOf(bench, SOCKET);
					const drawn = strokesText(figure);
					if (measured.has(drawn)) continue;
					measured.add(drawn);
					const whole = inTheWay(wholePlug(figure, bench.plugs[0]!.id));
					for (const name of SOCKETS[kind].springs) {
						const line = inTheWay(spring(figure, name));
						const gap = inkBetween(line, whole);
						const { lifted } = seenBySpring(plug, tenth / 10, name);
						const what = `${name} and the ${plug} plug at ${tenth / 10} mm`;
						expect(insideOf(line, whole), what).toEqual([]);
						if (lifted) expect(Math.abs(gap), what).toBeLessThan(SLACK);
						else expect(gap, what).toBeGreaterThan(0.2);
					}
				}
		}
	);

	it.each([
		['any jack', JACK_KINDS],
		['the changeover', ['jack-ts-changeover'] as const]
	] as const)('a gap is drawn exactly where a contact is open: %s', (_, kinds) => {
		fc.assert(
			fc.property(samplesOf(kinds, JACK_PLUGS), ({ state, bench }) => {
				expectBreaksTrue(sectionOf(bench, SOCKET), bench, state.kind, /^[TRS]N$/);
			}),
			RUNS
		);
	});

	it.each(JACK_KINDS.filter((kind) => fixedOf(kind).length > 0))(
		'the leaf of a sound break contact stands still over the whole travel of every plug: %s',
		(kind) => {
			const empty = sectionOf(benchIn({ kind, plug: null, travel: 0 }), SOCKET);
			for (const plug of JACK_PLUGS)
				for (let tenth = 0; tenth <= 305; tenth++) {
					const figure = sectionOf(benchIn({ kind, plug, travel: tenth / 10 }), SOCKET);
					for (const name of fixedOf(kind))
						expect(leafAndBead(figure, name), `${name} at ${tenth / 10} mm`).toEqual(
							leafAndBead(empty, name)
						);
				}
		}
	);

	it('a spring rises in the very instant in which the plug is as deep, and not before', () => {
		for (const plug of JACK_PLUGS)
			for (const name of SOCKETS['jack-trs-break'].springs) {
				const at = (travel: number): readonly Line[] =>
					spring(sectionOf(benchIn({ kind: 'jack-trs-break', plug, travel }), SOCKET), name);
				const reach = (travel: number): number => {
					const nose = at(travel).map((line) => line.slice(-40));
					const { top, bottom } = boxOfLines(nose);
					return name === 'T' ? -bottom : top;
				};
				const depth = SPRING_DEPTH[name];
				expect(at(depth - 0.001), `${name} before`).toEqual(at(0));
				expect(reach(depth) - reach(0), `${name} of a ${plug} plug`).toBeGreaterThan(GAP);
			}
	});

	it('the bead is filled exactly while the contact is closed', () => {
		fc.assert(
			fc.property(samplesOf(JACK_KINDS, JACK_PLUGS), ({ state, bench }) => {
				for (const contact of Object.keys(SOCKETS[state.kind].breaks)) {
					const node = `${SOCKET}.${contact}`;
					const { marks } = sectionOf(bench, SOCKET);
					const filled = marks.some((m) => m.role === 'seat-closed' && m.of === node);
					if (contact !== '1N') expect(filled).toBe(isClosed(bench, SOCKET, contact));
				}
			}),
			RUNS
		);
	});

	it('a spring follows the plug without a jump once it rides on it', () => {
		fc.assert(
			fc.property(fc.constantFrom<SpringName>('T', 'R', 'S'), thousandths(0, 1), (name, part) => {
				const first = SPRING_DEPTH[name] + 0.3;
				const travel = first + part * (30.45 - first);
				const top = (at: number): number => {
					const bench = benchIn({ kind: 'jack-trs', plug: 'trs', travel: at });
					const box = boxOfLines(spring(sectionOf(bench, SOCKET), name));
					return name === 'T' ? box.bottom : box.top;
				};
				expect(Math.abs(top(travel) - top(travel + 0.05))).toBeLessThan(1.2);
			}),
			RUNS
		);
	});

	it('the tip spring lies deepest in the groove when the plug is home', () => {
		const height = (travel: number): number => {
			const bench = benchIn({ kind: 'jack-trs', plug: 'trs', travel });
			return boxOfLines(spring(sectionOf(bench, SOCKET), 'T').map((l) => l.slice(-40))).bottom;
		};
		expect(height(30.5)).toBeGreaterThan(height(29) + 5);
	});

	it('draws a plug that lies loose, or a three-pin plug, as no phone plug at all', () => {
		const empty = sectionOf(benchIn({ kind: 'hybrid-9', plug: null, travel: 0 }), SOCKET);
		const other = benchIn({ kind: 'hybrid-9', plug: 'three-pin', travel: 30.5 });
		const loose = { ...other, plugs: other.plugs.map((p) => ({ ...p, socket: null })) };
		const strokes = (f: Figure): string[] =>
			f.marks.flatMap((m) => (m.kind === 'stroke' ? [m.d] : []));
		expect(strokes(sectionOf(other, SOCKET))).toEqual(strokes(empty));
		expect(strokes(sectionOf(loose, SOCKET))).toEqual(strokes(empty));
	});

	it('refuses a socket that has no jack', () => {
		const bench = benchIn({ kind: 'three-pin-male', plug: null, travel: 0 });
		expect(() => sectionOf(bench, SOCKET)).toThrow('no jack');
		expect(() => sectionOf(bench, 'B')).toThrow('No socket B');
	});
});
