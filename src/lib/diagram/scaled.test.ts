import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, SOCKET_KINDS } from '../engine';
import { sceneFigure } from './sceneFigure';
import { scaledFigure, scaledPath } from './scaled';

describe('a figure at another scale', () => {
	it('moves places and radii, and leaves the flags of an arc alone', () => {
		expect(scaledPath('M10 20 L30 -40 H5 V6 A8 8 0 1 1 2 4 C1 2 3 4 5 6 Q1 2 3 4 Z', 0.5)).toBe(
			'M5 10L15 -20H2.5V3A4 4 0 1 1 1 2C0.5 1 1.5 2 2.5 3Q0.5 1 1.5 2Z'
		);
	});
	it('keeps the mark of a lug off the lug, on its side', () => {
		const socket = { id: 'A', kind: 'hybrid-9', bush: 'insulated', label: '' } as const;
		const figure = sceneFigure({ ...EMPTY_BENCH, sockets: [socket] });
		const small = scaledFigure(figure, 0.5);
		const place = (of: typeof figure) => {
			const lug = of.points.get('A.TN')!;
			const mark = of.marks.find((m) => m.kind === 'word' && m.text === 'TN');
			return mark?.kind === 'word' ? [mark.x - lug.x, mark.y - lug.y] : null;
		};
		const [x, y] = place(figure)!;
		expect(place(small)).toEqual([x! * 0.75, y! * 0.75]);
		expect(small.points.get('A.TN')!.x).toBe(figure.points.get('A.TN')!.x / 2);
	});
	it.each(SOCKET_KINDS)('the strokes of a %s halved and doubled are themselves', (kind) => {
		const socket = { id: 'A', kind, bush: 'insulated', label: '' } as const;
		const figure = sceneFigure({ ...EMPTY_BENCH, sockets: [socket] });
		const back = scaledFigure(scaledFigure(figure, 0.5), 2);
		expect(back.width).toBe(figure.width);
		expect(back.marks).toHaveLength(figure.marks.length);
		for (const [i, mark] of figure.marks.entries()) {
			const again = back.marks[i]!;
			if (mark.kind === 'word') {
				expect(again).toMatchObject({ kind: 'word', text: mark.text });
				continue;
			}
			const numbers = (d: string) => (d.match(/-?\d*\.?\d+/g) ?? []).map(Number);
			const [a, b] = [numbers(mark.d), numbers(again.kind === 'stroke' ? again.d : '')];
			expect(b).toHaveLength(a.length);
			// Halving rounds to a hundredth of a unit.
			a.forEach((n, j) => expect(Math.abs(b[j]! - n)).toBeLessThanOrEqual(0.021));
		}
	});
});
