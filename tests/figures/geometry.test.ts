/**
 * What a lie would look like, measured on the figures themselves: a spring that touches a plug which
 * the engine says it does not touch, a gap where the contact is closed, words on top of each other,
 * a mark off the paper. Random kinds, plugs, travels and faults.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure, Stroke } from '../../src/lib/diagram/figure';
import { isClosed } from '../../src/lib/diagram/lit';
import { sectionOf } from '../../src/lib/diagram/section';
import { UNIT } from '../../src/lib/diagram/sectionFrame';
import { PIN_UNIT } from '../../src/lib/diagram/sectionPinFrame';
import { pinSectionOf } from '../../src/lib/diagram/sectionPins';
import { symbolOf } from '../../src/lib/diagram/symbol';
import {
	PLUGS,
	PLUG_KINDS,
	SOCKETS,
	SOCKET_KINDS,
	SPRING_DEPTH,
	circuit,
	fits,
	seenBySpring,
	splitNode,
	type Bench,
	type PlugKind,
	type SocketKind,
	type SpringName
} from '../../src/lib/engine';
import { SEATED_STATES, SOCKET, benchIn, hasJack, hasPins, nameOf, type State } from './benches';
import {
	boxOfLines,
	boxOfWord,
	distance,
	linesOf,
	overlap,
	strokesOf,
	wordsOf,
	type Line
} from './measure';

/** Half of a spring's line: its ink reaches so far from its middle line. */
const HALF = 1.4;
/** Drawn ink may miss or overlap by so much and still be seen to touch, units. */
const SLACK = 0.3;
/** The least gap that a person sees as open, units. */
const GAP = 3;
/**
 * Just before metal arrives, the slanted flank of a nose is over its rim: the last stretch, about as
 * long as a spring's line is wide, is too short for the figure to tell apart and touching. In mm, for
 * the jack's section and for the pins'.
 */
const RIM = 3.4 / UNIT;
const PIN_RIM = 3.4 / PIN_UNIT;

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

const travels = fc.oneof(
	fc.double({ min: 0, max: 30.5, noNaN: true }),
	fc.integer({ min: 0, max: 61 }).map((half) => half / 2)
);

interface Sample {
	readonly state: State;
	readonly bench: Bench;
}
const samplesOf = (kinds: readonly SocketKind[], plugs: readonly PlugKind[]) =>
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

const JACK_KINDS = SOCKET_KINDS.filter(hasJack);
const PIN_KINDS = SOCKET_KINDS.filter(hasPins);
const JACK_PLUGS = PLUG_KINDS.filter((plug) => PLUGS[plug].fits === 'jack');
const RUNS = { numRuns: 300 };

const spring = (figure: Figure, contact: string): Line[] =>
	strokesOf(figure, (s) => s.role === 'spring' && s.of === `${SOCKET}.${contact}`);
/** The bead or arrowhead of a break contact; terminals and lugs stand farther right. */
const seat = (figure: Figure, contact: string): Line[] =>
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
const plugPart = (figure: Figure, node: string | null): Line[] =>
	strokesOf(figure, (s) =>
		node ? s.role === 'metal' && s.of === node : s.role === 'collar' && inBore(s)
	);
const wholePlug = (figure: Figure, plug: string): Line[] =>
	strokesOf(
		figure,
		(s) =>
			(s.role === 'metal' && s.of !== undefined && splitNode(s.of)[0] === plug) ||
			(s.role === 'collar' && inBore(s))
	);

const touchOf = (bench: Bench, name: SpringName): string | null =>
	circuit(bench).conductors.find(({ reason: r }) => r.kind === 'touch' && r.spring === name)?.b ??
	null;
const isBent = (bench: Bench, name: SpringName): boolean =>
	bench.faults.some((f) => f.kind === 'spring-bent' && f.contact === `${SOCKET}.${name}`);

/** Ink between a spring and something else, units: negative where they run into each other. */
const inkBetween = (one: readonly Line[], other: readonly Line[]): number =>
	distance(one, other) - HALF;

function expectClosedOrOpen(figure: Figure, bench: Bench, contact: string, on: string) {
	const gap = inkBetween(spring(figure, on), seat(figure, contact));
	if (isClosed(bench, SOCKET, contact)) {
		expect(Math.abs(gap), `${contact} rests on ${on}`).toBeLessThan(SLACK);
		return;
	}
	expect(gap, `${contact} stands off ${on}`).toBeGreaterThanOrEqual(GAP);
}

function expectBreaksTrue(figure: Figure, bench: Bench, kind: SocketKind, match: RegExp) {
	for (const [contact, on] of Object.entries(SOCKETS[kind].breaks))
		if (match.test(contact)) expectClosedOrOpen(figure, bench, contact, on);
	if (!SOCKETS[kind].changeover) return;
	for (const contact of ['NC', 'NO']) expectClosedOrOpen(figure, bench, contact, 'C');
}

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
					} else if (isBent(bench, name) || travel < SPRING_DEPTH[name] - RIM)
						expect(inkBetween(line, wholePlug(figure, id)), name).toBeGreaterThan(0);
				}
			}),
			RUNS
		);
	});

	it('a gap is drawn exactly where a break contact is open', () => {
		fc.assert(
			fc.property(samplesOf(JACK_KINDS, JACK_PLUGS), ({ state, bench }) => {
				expectBreaksTrue(sectionOf(bench, SOCKET), bench, state.kind, /^[TRS]N$/);
			}),
			RUNS
		);
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
			fc.property(
				fc.constantFrom<SpringName>('T', 'R', 'S'),
				fc.double({ min: 0, max: 1, noNaN: true }),
				(name, part) => {
					const first = SPRING_DEPTH[name] + 0.3;
					const travel = first + part * (30.45 - first);
					const top = (at: number): number => {
						const bench = benchIn({ kind: 'jack-trs', plug: 'trs', travel: at });
						const box = boxOfLines(spring(sectionOf(bench, SOCKET), name));
						return name === 'T' ? box.bottom : box.top;
					};
					expect(Math.abs(top(travel) - top(travel + 0.05))).toBeLessThan(1.2);
				}
			),
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

describe('the section of the three-pin half', () => {
	it('joins metal with metal exactly where the engine says that it has mated', () => {
		fc.assert(
			fc.property(samplesOf(PIN_KINDS, ['three-pin']), ({ state, bench }) => {
				const figure = pinSectionOf(bench, SOCKET);
				const { id, travel } = bench.plugs[0]!;
				const mated = circuit(bench).conductors.flatMap(({ reason: r }) =>
					r.kind === 'mate' ? [r.contact] : []
				);
				for (const contact of ['1', '2', '3', 'G']) {
					const part = contact === 'G' ? 'shell' : contact;
					const pin = strokesOf(figure, (s) => s.role === 'metal' && s.of === `${id}.${part}`);
					const male = SOCKETS[state.kind].threePin === 'male' && contact !== 'G';
					const own = male
						? strokesOf(figure, (s) => s.role === 'metal' && s.of === `${SOCKET}.${contact}`)
						: spring(figure, contact);
					const ink = male ? distance(own, pin) : inkBetween(own, pin);
					const makes = contact === '1' || contact === 'G' ? 8 : 10;
					if (mated.includes(contact)) expect(Math.abs(ink), contact).toBeLessThan(SLACK);
					else if (travel < makes - PIN_RIM) expect(ink, contact).toBeGreaterThan(0);
				}
			}),
			RUNS
		);
	});

	it('opens 1N with pin 1, and draws the gap', () => {
		fc.assert(
			fc.property(
				travels,
				fc.constantFrom([], ['break-stuck-open'], ['break-stuck-closed']),
				(travel, kinds) => {
					const faults = kinds.map((kind) => ({ kind, contact: `${SOCKET}.1N` }));
					const bench = benchIn({ kind: 'hybrid-10', plug: 'three-pin', travel }, { faults });
					expectBreaksTrue(pinSectionOf(bench, SOCKET), bench, 'hybrid-10', /^1N$/);
				}
			),
			RUNS
		);
	});

	it('refuses a socket that has no three-pin half', () => {
		const bench = benchIn({ kind: 'jack-ts', plug: null, travel: 0 });
		expect(() => pinSectionOf(bench, SOCKET)).toThrow('no three-pin half');
	});
});

describe('the symbol tells the engine’s truth', () => {
	it('draws arrowheads touching exactly where contacts are closed', () => {
		fc.assert(
			fc.property(samplesOf(SOCKET_KINDS, PLUG_KINDS), ({ state, bench }) => {
				expectBreaksTrue(symbolOf(bench, SOCKET), bench, state.kind, /./);
			}),
			RUNS
		);
	});

	it('puts under every spring what it touches', () => {
		fc.assert(
			fc.property(samplesOf(JACK_KINDS, JACK_PLUGS), ({ state, bench }) => {
				const figure = symbolOf(bench, SOCKET);
				for (const name of SOCKETS[state.kind].springs) {
					const node = touchOf(bench, name);
					const own = strokesOf(
						figure,
						(s) => (s.role === 'spring' || s.role === 'metal') && s.of === `${SOCKET}.${name}`
					);
					const pads = strokesOf(figure, (s) => s.role === 'metal' && s.of === node);
					const all = strokesOf(
						figure,
						(s) =>
							s.role === 'collar' ||
							(s.role === 'metal' && s.of !== undefined && splitNode(s.of)[0] !== SOCKET)
					);
					if (node) expect(distance(own, pads), `${name} on ${node}`).toBeLessThan(HALF + SLACK);
					if (isBent(bench, name)) expect(distance(own, all)).toBeGreaterThan(GAP);
				}
			}),
			RUNS
		);
	});

	it('brings the plug’s pins to the circles exactly when they have mated', () => {
		fc.assert(
			fc.property(samplesOf(PIN_KINDS, ['three-pin']), ({ bench }) => {
				const figure = symbolOf(bench, SOCKET);
				const { id, travel } = bench.plugs[0]!;
				for (const name of ['1', '2', '3']) {
					const pin = strokesOf(figure, (s) => s.role === 'spring' && s.of === `${id}.${name}`);
					const own = strokesOf(figure, (s) => s.role !== 'spring' && s.of === `${SOCKET}.${name}`);
					const gap = distance(pin, own) - HALF;
					if (travel >= (name === '1' ? 8 : 10)) expect(Math.abs(gap)).toBeLessThan(SLACK);
					else expect(gap).toBeGreaterThanOrEqual(GAP);
				}
			}),
			RUNS
		);
	});
});

/** Every view of the sample's socket. */
const viewsOf = ({ state, bench }: Sample): Figure[] => [
	...(hasJack(state.kind) ? [sectionOf(bench, SOCKET)] : []),
	...(hasPins(state.kind) ? [pinSectionOf(bench, SOCKET)] : []),
	symbolOf(bench, SOCKET)
];

function expectOrderly(figure: Figure) {
	const words = wordsOf(figure).map((word) => ({ word, box: boxOfWord(word) }));
	for (const [i, one] of words.entries()) {
		for (const other of words.slice(i + 1))
			expect(overlap(one.box, other.box), `${one.word.text} and ${other.word.text}`).toBe(false);
		expect(one.box.left, one.word.text).toBeGreaterThanOrEqual(0);
		expect(one.box.right, one.word.text).toBeLessThanOrEqual(figure.width);
		expect(one.box.bottom, one.word.text).toBeLessThanOrEqual(figure.height);
		expect(one.box.top, one.word.text).toBeGreaterThanOrEqual(0);
	}
	const { left, right, top, bottom } = boxOfLines(strokesOf(figure, () => true));
	expect(left).toBeGreaterThanOrEqual(0);
	expect(top).toBeGreaterThanOrEqual(0);
	expect(right).toBeLessThanOrEqual(figure.width);
	expect(bottom).toBeLessThanOrEqual(figure.height);
	for (const { x, y } of figure.points.values()) {
		expect(x).toBeGreaterThanOrEqual(0);
		expect(x).toBeLessThanOrEqual(figure.width);
		expect(y).toBeGreaterThanOrEqual(0);
		expect(y).toBeLessThanOrEqual(figure.height);
	}
}

describe('every figure is orderly', () => {
	it('no two words overlap, and no mark leaves the paper, whatever stands in the socket', () => {
		fc.assert(
			fc.property(samplesOf(SOCKET_KINDS, PLUG_KINDS), (sample) => {
				for (const figure of viewsOf(sample)) expectOrderly(figure);
			}),
			RUNS
		);
	});

	it.each(SEATED_STATES.map((s) => [nameOf(s), s] as const))('%s is orderly', (_, state) => {
		const panel = { metal: true };
		for (const figure of viewsOf({ state, bench: benchIn(state, { panel }) }))
			expectOrderly(figure);
	});

	it('has a point for every contact that its socket has in that view', () => {
		for (const kind of SOCKET_KINDS) {
			const bench = benchIn({ kind, plug: null, travel: 0 });
			const points = new Set(
				viewsOf({ state: { kind, plug: null, travel: 0 }, bench }).flatMap((f) => [
					...f.points.keys()
				])
			);
			for (const contact of SOCKETS[kind].contacts)
				expect(points, `${kind} ${contact}`).toContain(`${SOCKET}.${contact}`);
		}
	});

	it('lights in every view what is lit, and only that', () => {
		const bench = benchIn({ kind: 'hybrid-10', plug: 'trs', travel: 26.5 });
		const nodes = new Set(['A.T', 'A.R', `${bench.plugs[0]!.id}.tip`]);
		const lit = { nodes, wires: new Set<string>(), breaks: new Set<string>() };
		for (const view of [sectionOf, symbolOf]) {
			const marks = view(bench, SOCKET, lit).marks.filter((m) => m.lit);
			expect(new Set(marks.map((m) => m.of))).toEqual(nodes);
		}
	});

	it('keeps the height of words at fifteen units or more', () => {
		for (const state of SEATED_STATES)
			for (const figure of viewsOf({ state, bench: benchIn(state) }))
				for (const word of wordsOf(figure)) {
					const { top, bottom } = boxOfWord(word);
					expect((bottom - top) / 0.96).toBeGreaterThanOrEqual(15);
				}
	});
});
