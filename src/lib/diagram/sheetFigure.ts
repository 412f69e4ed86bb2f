/** One still picture of the moment: the panel, and below it the socket in hand in its other views. */
import { SOCKETS, type Bench } from '../engine';
import type { Figure, Lettering, Mark } from './figure';
import { NOTHING_LIT, type Lit } from './lit';
import { placedPath, sceneFigure, type SceneOptions } from './sceneFigure';
import { sectionOf } from './section';
import { pinSectionOf } from './sectionPins';
import { symbolOf } from './symbol';

interface Placement {
	readonly figure: Figure;
	readonly x: number;
	readonly y: number;
}

const moved = (mark: Mark, x: number, y: number): Mark =>
	mark.kind === 'stroke'
		? { ...mark, d: placedPath(mark.d, { x, y }) }
		: { ...mark, x: mark.x + x, y: mark.y + y };

/** Views of one socket, as far as the socket has them. */
export function viewsOf(
	bench: Bench,
	socketId: string,
	lit: Lit = NOTHING_LIT,
	lettering: Lettering = 'plain'
): Figure[] {
	const socket = bench.sockets.find((s) => s.id === socketId);
	if (!socket) return [];
	const { springs, threePin } = SOCKETS[socket.kind];
	return [
		...(springs.length > 0 ? [sectionOf(bench, socketId, lit, lettering)] : []),
		...(threePin ? [pinSectionOf(bench, socketId, lit)] : []),
		symbolOf(bench, socketId, lit)
	];
}

/** Room for the title over the panel. */
const HEAD = 34;
const titleOf = ({ title }: Bench): Mark => ({
	kind: 'word',
	role: 'title',
	x: 28,
	y: 36,
	text: title || 'Bench',
	anchor: 'start'
});

/** Views in rows under the panel, as many a row as fit its width. */
function placed(panel: Figure, views: readonly Figure[]): Placement[] {
	const out: Placement[] = [{ figure: panel, x: 0, y: HEAD }];
	const width = Math.max(panel.width, ...views.map((v) => v.width));
	let [x, y, row] = [0, HEAD + panel.height + 20, 0];
	for (const figure of views) {
		if (x > 0 && x + figure.width > width) [x, y, row] = [0, y + row + 20, 0];
		out.push({ figure, x, y });
		x += figure.width + 20;
		row = Math.max(row, figure.height);
	}
	return out;
}

/** From line to line of what stands at the foot. */
const FOOT_LINE = 22;
const footOf = (lines: readonly string[], y: number): Mark[] =>
	lines.map((text, i) => ({
		kind: 'word',
		role: 'caption',
		x: 28,
		y: y + (i + 0.5) * FOOT_LINE,
		text,
		anchor: 'start'
	}));

/**
 * The whole sheet as one figure, its title on top. `socketId` null: the panel alone; `foot`: lines that
 * say what its signs mean; the rest as in `sceneFigure`.
 */
export function sheetFigure(
	bench: Bench,
	view: 'rear' | 'front',
	socketId: string | null,
	lit: Lit = NOTHING_LIT,
	{ foot = [], ...options }: SceneOptions & { readonly foot?: readonly string[] } = {}
): Figure {
	const panel = sceneFigure(bench, view, lit, options);
	const parts = placed(panel, socketId === null ? [] : viewsOf(bench, socketId, lit));
	const below = Math.max(...parts.map((p) => p.y + p.figure.height));
	return {
		width: Math.max(...parts.map((p) => p.x + p.figure.width)),
		height: below + (foot.length > 0 ? (foot.length + 0.5) * FOOT_LINE : 0),
		title: panel.title,
		rimmed: true,
		marks: [
			titleOf(bench),
			...parts.flatMap((p) => p.figure.marks.map((m) => moved(m, p.x, p.y))),
			...footOf(foot, below)
		],
		points: new Map([...panel.points].map(([node, p]) => [node, { x: p.x, y: p.y + HEAD }]))
	};
}
