import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, SOCKET_KINDS } from '../engine';
import { compactPath } from './compactPath';
import { sceneFigure } from './sceneFigure';
import { viewsOf } from './sheetFigure';
import { withPlugAt } from './sectionStates';

const numbersOf = (text: string): number[] =>
	(text.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
const COUNT: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, Q: 4, C: 6, A: 7, Z: 0 };

/** Every place of a path, absolute, whatever way it is written. */
function placesOf(d: string): string[] {
	const out: string[] = [];
	let [x, y, x0, y0] = [0, 0, 0, 0];
	for (const [, letter, rest] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
		const name = letter!.toUpperCase();
		const isFrom = letter !== name;
		const count = COUNT[name]!;
		const all = numbersOf(rest!);
		if (name === 'Z') [x, y] = [x0, y0];
		for (let i = 0; i < all.length; i += count) {
			const n = all.slice(i, i + count);
			const [fx, fy] = isFrom ? [x, y] : [0, 0];
			if (name === 'A') out.push(`A ${n.slice(0, 5).join(' ')}`);
			const pairs = name === 'H' ? [[n[0]! + fx, y]] : name === 'V' ? [[x, n[0]! + fy]] : [];
			const plain = name === 'A' ? n.slice(5) : n;
			if (pairs.length === 0)
				for (let j = 0; j < plain.length; j += 2) pairs.push([plain[j]! + fx, plain[j + 1]! + fy]);
			for (const [px, py] of pairs) out.push(`${px!.toFixed(2)} ${py!.toFixed(2)}`);
			[x, y] = pairs.at(-1) as [number, number];
			if (name === 'M') [x0, y0] = [x, y];
		}
	}
	return out.map((place) => place.replaceAll('-0.00', '0.00'));
}

describe('a path in fewer letters', () => {
	it('goes from place to place', () => {
		expect(compactPath('M10 20 L30 -40 L30.5 -40 H5 V6 Q1 2 3 4 Z M7 8 L9 9')).toBe(
			'M10 20l20-60h.5-25.5v46q-4-4-2-2zM7 8l2 1'
		);
	});
	it('leaves the radii and flags of an arc as they were', () => {
		expect(compactPath('M10 0 A10 10 0 1 1 -10 0 Z')).toBe('M10 0a10 10 0 1 1-20 0z');
	});
	it.each(SOCKET_KINDS)('is the same line: every stroke of a %s', (kind) => {
		const socket = { id: 'A', kind, bush: 'insulated', label: '' } as const;
		const empty = { ...EMPTY_BENCH, panel: { metal: true }, sockets: [socket] };
		const bench = withPlugAt(empty, 'A', kind.startsWith('three') ? 'three-pin' : 'trs', 21.4);
		const figures = [sceneFigure(bench), sceneFigure(bench, 'front'), ...viewsOf(bench, 'A')];
		const marks = figures.flatMap((f) => f.marks);
		expect(marks.length).toBeGreaterThan(50);
		for (const mark of marks)
			if (mark.kind === 'stroke') {
				const rounded = mark.d.replace(/-?\d*\.\d+/g, (n) => String(Math.round(+n * 100) / 100));
				expect(placesOf(compactPath(mark.d))).toEqual(placesOf(rounded));
			}
	});
});
