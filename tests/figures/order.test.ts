/** Order on paper: no word on another, nothing off the paper, every contact to be pointed at. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../src/lib/diagram/figure';
import { NOTHING_LIT } from '../../src/lib/diagram/lit';
import { sectionOf } from '../../src/lib/diagram/section';
import { pinSectionOf } from '../../src/lib/diagram/sectionPins';
import { symbolOf } from '../../src/lib/diagram/symbol';
import { PLUG_KINDS, SOCKETS, SOCKET_KINDS } from '../../src/lib/engine';
import { SEATED_STATES, SOCKET, benchIn, hasJack, hasPins, nameOf } from './benches';
import { boxOfLines, boxOfWord, overlap, strokesOf, wordsOf } from './measure';
import { RUNS, samplesOf, type Sample } from './samples';

/** Every view of the sample's socket. */
const viewsOf = ({ state, bench }: Sample): Figure[] => [
	...(hasJack(state.kind)
		? [sectionOf(bench, SOCKET), sectionOf(bench, SOCKET, NOTHING_LIT, 'large')]
		: []),
	...(hasPins(state.kind) ? [pinSectionOf(bench, SOCKET)] : []),
	symbolOf(bench, SOCKET)
];

function expectOrderly(figure: Figure) {
	const words = wordsOf(figure).map((word) => ({ word, box: boxOfWord(word, figure.lettering) }));
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
					const { top, bottom } = boxOfWord(word, figure.lettering);
					expect((bottom - top) / 0.96).toBeGreaterThan(15 - 1e-9);
				}
	});
});
