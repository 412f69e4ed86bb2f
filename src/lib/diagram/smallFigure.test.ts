import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, PLUG_KINDS, fits, type Bench } from '../engine';
import { sectionOf, withPlugAt } from './section';
import { smallFigure } from './smallFigure';

const alone: Bench = {
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind: 'patch-jack', bush: 'metal', label: '' }]
};

describe('a small figure', () => {
	it.each(PLUG_KINDS.filter((kind) => fits(kind, 'patch-jack')))(
		'draws what can be made out of a %s plug, in the same order, in fewer marks',
		(kind) => {
			for (const travel of [0, 9, 20, 30.5]) {
				const whole = sectionOf(withPlugAt(alone, 'A', kind, travel), 'A');
				const small = smallFigure(whole);
				const roles = new Set(small.marks.map((m) => m.role));
				for (const role of ['metal', 'spring', 'insulator'] as const) expect(roles).toContain(role);
				const kept = whole.marks.filter(
					(m) => m.kind === 'stroke' && !m.note && roles.has(m.role as 'metal')
				);
				expect(small.marks.map((m) => 'd' in m && m.d).join('')).toBe(
					kept.map((m) => 'd' in m && m.d).join('')
				);
				expect(small.marks.length).toBeLessThan(whole.marks.length / 2);
				expect(small.points.size).toBe(0);
			}
		}
	);
});
