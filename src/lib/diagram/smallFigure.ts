/**
 * A figure for a small multiple: without words and fine detail, and strokes that follow each other
 * and are drawn alike are one. A strip of them is on the page while a plug moves, and every mark less
 * is one that the browser need not look at in each frame.
 */
import type { Figure, Mark, Stroke, StrokeRole } from './figure';

/** What cannot be made out in a figure some 120 pixels wide. */
const TOO_FINE: ReadonlySet<StrokeRole> = new Set([
	'hole',
	'fine',
	'centre',
	'dimension',
	'pointer',
	'outline'
]);

const isSmall = (mark: Mark): mark is Stroke =>
	mark.kind === 'stroke' && !mark.note && !TOO_FINE.has(mark.role);

/** The same figure as far as it can be made out when it is small. Nothing in it can be pointed at. */
export function smallFigure(figure: Figure): Figure {
	const marks: Stroke[] = [];
	for (const { role, ink, lit, d } of figure.marks.filter(isSmall)) {
		const last = marks.at(-1);
		const joins = last && last.role === role && last.ink === ink && last.lit === lit;
		if (joins) marks[marks.length - 1] = { ...last, d: last.d + d };
		else marks.push({ kind: 'stroke', role, ink, lit, d });
	}
	return { ...figure, marks, points: new Map() };
}
