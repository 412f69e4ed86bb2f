/**
 * A large panel in parts, as a map is cut into sheets: so many columns of sockets a part that its words
 * can be read on paper. Parts are cut between columns, and the wires that run there stand in both.
 */
import { PITCH } from './socket';
import type { Scene } from './scene';
import type { Box } from './view';

/** Columns of a part, at the most. */
const COLUMNS = 4;
/** How far a part reaches over the middle between two columns, units: to the plates of the next one. */
const OVER = 22;
/** A part with boxes beside its sockets is no wider, units; boxes that need more are a part of their own. */
const WIDEST = 1760;

export interface PanelPart {
	/** What of the scene it shows, in the scene's units. */
	readonly box: Box;
	/** Ids of its sockets, row by row as they are seen; none where it shows boxes alone. */
	readonly sockets: readonly string[];
}

/**
 * The parts of a scene from left to right, as it is seen: every socket whole in one of them, every box
 * whole in one. A panel that is read whole is one part.
 */
export function panelParts({ sockets, panel, boxes, width, height }: Scene): PanelPart[] {
	const seen = [...sockets].sort((a, b) => a.y - b.y || a.x - b.x);
	const columns = [...new Set(sockets.map((s) => s.x))].sort((a, b) => a - b);
	const many = Math.max(1, Math.ceil(columns.length / COLUMNS));
	const each = Math.ceil(columns.length / many);
	const foot = Math.min(height, panel.h + 2 * panel.y);
	const parts = Array.from({ length: many }, (_, i): PanelPart => {
		const mine = columns.slice(i * each, (i + 1) * each);
		const left = i === 0 ? 0 : mine[0]! - PITCH.x / 2 - OVER;
		const isLast = i === many - 1;
		const right = isLast ? panel.x * 2 + panel.w : mine.at(-1)! + PITCH.x / 2 + OVER;
		return {
			box: { x: left, y: 0, w: right - left, h: foot },
			sockets: seen.filter((s) => mine.includes(s.x)).map((s) => s.socket.id)
		};
	});
	if (boxes.length === 0) return parts;
	const last = parts.pop()!;
	const beside = { ...last.box, w: width - last.box.x, h: height };
	if (beside.w <= WIDEST) return [...parts, { ...last, box: beside }];
	const edge = panel.x + panel.w;
	return [...parts, last, { box: { x: edge, y: 0, w: width - edge, h: height }, sockets: [] }];
}
