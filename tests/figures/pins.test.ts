/** The three-pin section, measured: whether pins meet contacts where the engine says so. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pinSectionOf } from '../../src/lib/diagram/sectionPins';
import { SOCKETS, circuit } from '../../src/lib/engine';
import { SOCKET, benchIn } from './benches';
import { distance, isInside, strokesOf, wordsOf } from './measure';
import {
	PIN_KINDS,
	RUNS,
	SLACK,
	expectBreaksTrue,
	inkBetween,
	samplesOf,
	spring,
	travels
} from './samples';

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
					else if (travel < makes) expect(ink, contact).toBeGreaterThan(0);
				}
			}),
			RUNS
		);
	});

	it.each(PIN_KINDS)(
		'no metal runs into other metal, at every tenth of a millimetre: %s',
		(kind) => {
			for (let tenth = 0; tenth <= 305; tenth++) {
				const bench = benchIn({ kind, plug: 'three-pin', travel: tenth / 10 });
				const figure = pinSectionOf(bench, SOCKET);
				const { id } = bench.plugs[0]!;
				for (const [contact, makes] of Object.entries({ '1': 8, '2': 10, '3': 10, G: 8 })) {
					if (SOCKETS[kind].threePin === 'male' && contact !== 'G') continue;
					const part = contact === 'G' ? 'shell' : contact;
					const metal = strokesOf(figure, (s) => s.role === 'metal' && s.of === `${id}.${part}`);
					const own = spring(figure, contact);
					const what = `${contact} at ${tenth / 10} mm`;
					expect(
						own.flat().some((p) => metal.some((m) => isInside(p, m))),
						what
					).toBe(false);
					const gap = inkBetween(own, metal);
					if (tenth / 10 >= makes) expect(Math.abs(gap), what).toBeLessThan(0.25);
					else expect(gap, what).toBeGreaterThan(0.2);
				}
			}
		}
	);

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

	it('keeps the leaf of a sound 1N where it is over the whole travel', () => {
		const own = (travel: number): string[] =>
			pinSectionOf(benchIn({ kind: 'hybrid-10', plug: 'three-pin', travel }), SOCKET).marks.flatMap(
				(m) =>
					m.kind === 'stroke' && /blade|seat/.test(m.role) && m.of === `${SOCKET}.1N` ? [m.d] : []
			);
		expect(own(0)).toHaveLength(2);
		for (let tenth = 1; tenth <= 305; tenth++) expect(own(tenth / 10)).toEqual(own(0));
	});

	it('says in the drawing that the pins stand in one row', () => {
		for (const kind of PIN_KINDS) {
			const figure = pinSectionOf(benchIn({ kind, plug: null, travel: 0 }), SOCKET);
			expect(wordsOf(figure).map((w) => w.text)).toContain('pins drawn in one row');
			expect(figure.title).toContain('its pins drawn in one row');
		}
	});

	it('refuses a socket that has no three-pin half', () => {
		const bench = benchIn({ kind: 'jack-ts', plug: null, travel: 0 });
		expect(() => pinSectionOf(bench, SOCKET)).toThrow('no three-pin half');
	});
});
