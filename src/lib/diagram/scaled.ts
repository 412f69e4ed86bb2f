/**
 * A figure made smaller or larger. Strokes keep their weight and words their size, as on any drawing
 * at another scale; so the mark of a lug comes only half as much nearer to it, else it would lie on it.
 */
import type { Figure, Mark, Word } from './figure';

const round = (n: number): string => String(Math.round(n * 100) / 100 + 0);

/** A path of absolute M, L, H, V, A, C, Q and Z, with every length times `k`; the flags of an arc are none. */
export function scaledPath(d: string, k: number): string {
	const out: string[] = [];
	for (const [, letter, rest] of d.matchAll(/([MLHVAQCZ])([^MLHVAQCZ]*)/g)) {
		const numbers = (rest!.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number);
		const isFlag = (i: number) => letter === 'A' && i % 7 > 1 && i % 7 < 5;
		out.push(letter + numbers.map((n, i) => (isFlag(i) ? String(n) : round(n * k))).join(' '));
	}
	return out.join('');
}

function scaledWord(word: Word, k: number, { points }: Figure): Word {
	const lug = word.of === undefined ? undefined : points.get(word.of);
	if (!lug) return { ...word, x: word.x * k, y: word.y * k };
	const off = (1 + k) / 2;
	return { ...word, x: lug.x * k + (word.x - lug.x) * off, y: lug.y * k + (word.y - lug.y) * off };
}

const scaledMark = (mark: Mark, k: number, figure: Figure): Mark =>
	mark.kind === 'stroke' ? { ...mark, d: scaledPath(mark.d, k) } : scaledWord(mark, k, figure);

/** The figure `k` times as large. */
export const scaledFigure = (figure: Figure, k: number): Figure => ({
	...figure,
	width: figure.width * k,
	height: figure.height * k,
	marks: figure.marks.map((mark) => scaledMark(mark, k, figure)),
	points: new Map([...figure.points].map(([node, p]) => [node, { x: p.x * k, y: p.y * k }]))
});
