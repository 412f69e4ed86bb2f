/**
 * The test card as one figure, for SVG: as wide as a page and as high as it needs to be. Words are not
 * measured here, so lines are broken by their number of letters, on the safe side.
 */
import { WORD_SIZES, type Figure, type Mark, type WordRole } from '../../diagram';
import type { Card } from '../../diagnosis';
import type { Bench } from '../../engine';
import {
	BOND_WORDS,
	CARD_CAUTIONS,
	CARD_STEPS,
	countWords,
	silentGroups,
	silentLine
} from '../../words/card';
import { PAGE_WIDTH, panelRear, bondsOf, groupsOf, type Bond, type CardGroup } from './cardParts';

const EDGE = 40;
const LINE = 21;
const COLUMNS = 2;
const GAP = 30;
/** Mean width of a letter, of its height. */
const LETTER = 0.54;

/** The text in lines of at most so many units. */
export function linesOf(text: string, width: number, role: WordRole = 'caption'): string[] {
	const most = Math.max(8, Math.floor(width / (WORD_SIZES.plain[role] * LETTER)));
	const lines: string[] = [];
	let line = '';
	for (const word of text.split(' ')) {
		if (line !== '' && line.length + 1 + word.length > most) {
			lines.push(line);
			line = word;
		} else line = line === '' ? word : `${line} ${word}`;
	}
	return line === '' ? lines : [...lines, line];
}

class Pen {
	readonly marks: Mark[] = [];
	word(role: WordRole, text: string, x: number, y: number, anchor: 'start' | 'end' = 'start') {
		this.marks.push({ kind: 'word', role, text, x, y, anchor });
	}
	stroke(role: 'fine' | 'outline' | 'spring', d: string) {
		this.marks.push({ kind: 'stroke', role, d });
	}
	/** A paragraph; gives the height below it. */
	text(text: string, x: number, y: number, width: number, role: WordRole = 'caption'): number {
		let at = y;
		for (const line of linesOf(text, width, role)) {
			this.word(role, line, x, at);
			at += LINE;
		}
		return at;
	}
	/** A figure set down at a place: its marks keep their roles. */
	set(figure: Figure, x: number, y: number) {
		for (const mark of figure.marks)
			this.marks.push(
				mark.kind === 'word'
					? { ...mark, x: mark.x + x, y: mark.y + y }
					: { ...mark, d: movedPath(mark.d, x, y) }
			);
	}
}

/** A scaled path (absolute M, L, H, V, A, C, Q, Z) moved. */
function movedPath(d: string, x: number, y: number): string {
	return d.replace(/([MLHVAQCZ])([^MLHVAQCZ]*)/g, (_, letter: string, rest: string) => {
		const n = (rest.match(/-?\d*\.?\d+/g) ?? []).map(Number);
		if (letter === 'H') return `H${n[0]! + x}`;
		if (letter === 'V') return `V${n[0]! + y}`;
		if (letter === 'A') return `A${n[0]} ${n[1]} ${n[2]} ${n[3]} ${n[4]} ${n[5]! + x} ${n[6]! + y}`;
		return letter + n.map((v, i) => v + (i % 2 === 0 ? x : y)).join(' ');
	});
}

/** Title, panel, and lines for what is written in by hand; gives the height below. */
function drawHead(pen: Pen, bench: Bench): number {
	pen.word('name', `Test card · ${bench.title || 'Panel without a title'}`, EDGE, EDGE + 12);
	pen.stroke('spring', `M${EDGE} ${EDGE + 24} H${PAGE_WIDTH - EDGE}`);
	const step = (PAGE_WIDTH - 2 * EDGE) / 4;
	['Date', 'Who', 'Meter', 'Panel no.'].forEach((name, i) => {
		const x = EDGE + i * step;
		pen.word('caption', name, x, EDGE + 56);
		pen.stroke('fine', `M${x + 12 + name.length * 8} ${EDGE + 58} H${x + step - 14}`);
	});
	return EDGE + 88;
}

function drawHow(pen: Pen, x: number, y: number, width: number): number {
	let at = y;
	CARD_STEPS.forEach((step, i) => {
		pen.word('dimension', `${i + 1}`, x, at);
		at = pen.text(step, x + 20, at, width - 20) + 4;
	});
	for (const caution of [
		`Chassis and signal ground. ${CARD_CAUTIONS.chassis}`,
		`Mains. ${CARD_CAUTIONS.mains}`
	])
		at = pen.text(caution, x, at + 8, width);
	return at;
}

const box = (x: number, y: number): string => `M${x} ${y - 12} H${x + 13} V${y + 1} H${x} Z`;

function drawGroup(pen: Pen, group: CardGroup, x: number, y: number, width: number): number {
	let at = pen.text(group.state, x, y, width, 'name');
	pen.stroke('fine', `M${x} ${at - 15} H${x + width}`);
	at += 6;
	for (const row of group.rows) {
		pen.stroke('fine', box(x, at));
		pen.word('dimension', `${row.number}.`, x + 42, at, 'end');
		pen.word('mark', `${row.red} – ${row.black}`, x + 52, at);
		pen.word('caption', row.expect, x + width, at, 'end');
		at += LINE + 3;
	}
	return at + 14;
}

/** How high a group stands, in units. */
const heightOf = (group: CardGroup, width: number): number =>
	linesOf(group.state, width, 'name').length * LINE + 20 + group.rows.length * (LINE + 3);

/** Groups in two columns, each group whole, in the shorter column. */
function drawGroups(pen: Pen, groups: readonly CardGroup[], y: number): number {
	const width = (PAGE_WIDTH - 2 * EDGE - GAP) / COLUMNS;
	const heights = Array<number>(COLUMNS).fill(y);
	const total = groups.reduce((sum, g) => sum + heightOf(g, width), 0);
	let column = 0;
	for (const group of groups) {
		// In reading order: on to the next column once this one holds its share.
		const reached = heights[column]! - y + heightOf(group, width) / 2;
		if (column + 1 < COLUMNS && reached > total / COLUMNS) column++;
		const x = EDGE + column * (width + GAP);
		heights[column] = drawGroup(pen, group, x, heights[column]!, width);
	}
	return Math.max(...heights);
}

/** The bonds of the chassis lugs, two columns of boxes under what they are; gives the height below. */
function drawBonds(pen: Pen, bonds: readonly Bond[], y: number): number {
	if (bonds.length === 0) return y;
	const width = (PAGE_WIDTH - 2 * EDGE - GAP) / COLUMNS;
	pen.word('name', BOND_WORDS.title, EDGE, y);
	const top = pen.text(BOND_WORDS.note, EDGE, y + LINE + 4, PAGE_WIDTH - 2 * EDGE) + 6;
	bonds.forEach(({ lug }, i) => {
		const x = EDGE + (i % COLUMNS) * (width + GAP);
		const at = top + Math.floor(i / COLUMNS) * (LINE + 3);
		pen.stroke('fine', box(x, at));
		pen.word('mark', `${lug} – ${BOND_WORDS.panel}`, x + 52, at);
		pen.word('caption', 'sounds', x + width, at, 'end');
	});
	return top + Math.ceil(bonds.length / COLUMNS) * (LINE + 3) + 14;
}

/** The whole card. */
export function cardFigure(bench: Bench, card: Card): Figure {
	const pen = new Pen();
	const top = drawHead(pen, bench);
	const rear = panelRear(bench);
	const isBeside = rear !== null && rear.width < PAGE_WIDTH / 2;
	if (rear) pen.set(rear, EDGE - 10, top - 18);
	const left = isBeside ? EDGE + rear.width + 10 : EDGE;
	const under = rear && !isBeside ? top + rear.height + 10 : top;
	const how = drawHow(pen, left, under, PAGE_WIDTH - EDGE - left);
	const below = Math.max(how, isBeside ? top + rear.height - 18 : 0) + 24;
	const start = pen.text(countWords(card), EDGE, below, PAGE_WIDTH - 2 * EDGE) + 8;
	let y = drawBonds(pen, bondsOf(bench), drawGroups(pen, groupsOf(bench, card), start));
	pen.word('name', 'What no probe with bare plugs can catch', EDGE, y);
	y += LINE + 4;
	const groups = silentGroups(bench, card.silent);
	const width = PAGE_WIDTH - 2 * EDGE;
	if (groups.length === 0)
		y = pen.text('Nothing: every single fault on the list shows.', EDGE, y, width);
	for (const group of groups) y = pen.text(silentLine(group), EDGE, y, width) + 4;
	return {
		width: PAGE_WIDTH,
		height: y + EDGE - LINE,
		title: `Test card, ${bench.title || 'panel without a title'}`,
		marks: pen.marks,
		points: new Map()
	};
}
