import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, SEATED, type Bench, type PlugKind, type SocketKind } from '../engine';
import type { Mark } from './figure';
import { litLive } from './lit';
import {
	eventReached,
	namesOnPlug,
	rideOf,
	ridingPlug,
	sectionBend,
	sectionOf,
	sectionOver,
	sectionUnder,
	withPlugAt
} from './section';

const JACKS: readonly SocketKind[] = [
	'hybrid-9',
	'jack-trs-break',
	'jack-ts-changeover',
	'jack-ts'
];
const PLUGS: readonly PlugKind[] = ['ts', 'trs', 'dummy', 'shorting'];
/** Right of this, units, no part of a plug is broken off by the paper's edge. */
const WHOLE_FROM = 14;

const benchOf = (kind: SocketKind): Bench => ({
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind, bush: 'insulated', label: '' }]
});
const shifted = (mark: Mark, by: number): Mark => {
	if (mark.kind === 'word') return { ...mark, x: mark.x + by };
	let count = 0;
	const move = (n: string): string => (count++ % 2 === 0 ? String(Number(n) + by) : n);
	return { ...mark, d: mark.d.replace(/-?[\d.]+/g, move) };
};
const numbersOf = (mark: Mark): number[] =>
	mark.kind === 'word' ? [mark.x, mark.y] : mark.d.match(/-?[\d.]+/g)!.map(Number);
/** What a mark is, and what of its shape no number tells. */
const told = (mark: Mark): string => {
	const shape = mark.kind === 'word' ? mark.text : mark.d.replace(/-?[\d.]+/g, '').slice(0, 40);
	return `${mark.role} ${mark.of} ${mark.lit ?? false} ${shape} from ${leftOf(mark).toFixed(0)}`;
};
/** As far as numbers on paper are rounded, units. */
const ROUNDED = 0.021;
const alike = (a: Mark, b: Mark): boolean => {
	if (a.kind !== b.kind || a.role !== b.role || a.of !== b.of || a.lit !== b.lit) return false;
	if (a.kind === 'word' && b.kind === 'word' && a.text !== b.text) return false;
	const [m, n] = [numbersOf(a), numbersOf(b)];
	return m.length === n.length && m.every((x, i) => Math.abs(x - n[i]!) < ROUNDED);
};
const leftOf = (mark: Mark): number =>
	mark.kind === 'word' ? mark.x : Math.min(...numbersOf(mark).filter((_, i) => i % 2 === 0));
/** Marks that are clear of the paper's edge and not among the others. */
const missing = (marks: readonly Mark[], among: readonly Mark[], from = WHOLE_FROM): string[] =>
	marks.filter((m) => leftOf(m) > from && !among.some((other) => alike(m, other))).map(told);

function layersAt(kind: SocketKind, plug: PlugKind, travel: number) {
	const bench = withPlugAt(benchOf(kind), 'A', plug, travel);
	const lit = litLive(bench, 'A');
	const standing = bench.plugs[0]!;
	const riding = ridingPlug(standing, lit, 'plain', namesOnPlug(standing, 'plain'))!;
	const ride = rideOf(travel) * riding.width;
	return {
		whole: sectionOf(bench, 'A', lit),
		under: sectionUnder(bench, 'A', lit, 'plain'),
		bend: sectionBend(bench, 'A', lit, 'plain'),
		over: sectionOver(bench, 'A', lit, 'plain', eventReached(plug, kind, travel), travel),
		plug: riding.marks.map((mark) => shifted(mark, ride))
	};
}

describe('the section in layers', () => {
	for (const kind of JACKS)
		for (const plug of PLUGS)
			it(`is what the section is, ${kind} with ${plug}`, () => {
				for (let travel = 0; travel <= SEATED; travel += 1.7) {
					const { whole, under, bend, over, plug: ridden } = layersAt(kind, plug, travel);
					const layers = [...under.marks, ...ridden, ...bend.marks, ...over.marks];
					expect(missing(layers, whole.marks), `in layers only, ${travel} mm`).toEqual([]);
					expect(missing(whole.marks, layers), `whole only, ${travel} mm`).toEqual([]);
				}
			});

	it('draws the plug at home as it is drawn whole, its end at the edge of the paper too', () => {
		const { whole, bend, over, plug } = layersAt('hybrid-9', 'trs', SEATED);
		expect(plug.length).toBeGreaterThan(10);
		expect(missing(plug, whole.marks, -Infinity)).toEqual([]);
		const pointed = [...bend.points.keys(), ...over.points.keys()];
		expect(pointed).toEqual([...whole.points.keys()].filter((n) => n !== 'A.G'));
	});
});
