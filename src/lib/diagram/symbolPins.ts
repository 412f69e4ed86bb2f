/** The connector's part of the symbol: numbered circles in a row, the shell, its chassis sign, `1N`. */
import { SOCKETS, type NodeName, type PinName } from '../engine';
import { isClosed } from './lit';
import { box, closed, disc, straight, type Place } from './sectionPen';
import { isStuckOpen } from './sectionStates';
import { COLUMN, TERMINAL, drawTerminal, nodeIn, type SymbolDrawing } from './symbolFrame';

const PINS: readonly PinName[] = ['1', '2', '3'];
const CIRCLE = { x: 92, r: 10 } as const;
/** How far pin 1 moves off its break contact, units. */
const LIFT = 8;
const SHELL_LEFT = CIRCLE.x - 30;
const ARROW = 122;
const HEAD = 8;
const LEAD = COLUMN.terminal - TERMINAL;

/** Where a contact's sign begins, seen from the plug: at its circle, or at the pin before it. */
const contactEdge = ({ state }: SymbolDrawing): number =>
	CIRCLE.x - CIRCLE.r - (SOCKETS[state.socket.kind].threePin === 'male' ? 12 : 0);

/** The plug's conductor that reaches the circle, or ends short of it. */
function drawPlugPin(drawing: SymbolDrawing, name: PinName, y: number): void {
	const { sheet, state } = drawing;
	const { plug, mated } = state;
	if (plug?.kind !== 'three-pin') return;
	const node: NodeName = `${plug.id}.${name}`;
	const end = mated.has(name) ? contactEdge(drawing) - 1.4 : SHELL_LEFT - 10;
	sheet.stroke('spring', straight([10, y], [end, y]), node);
	sheet.stroke('seat-closed', disc(10, y, 2.4), node);
	sheet.point(node, [(10 + end) / 2, y]);
}

function drawPin(drawing: SymbolDrawing, name: PinName, lift: number): void {
	const { sheet, rows, state } = drawing;
	const node = nodeIn(drawing, name);
	const y = rows.of[name]!;
	drawPlugPin(drawing, name, y - lift);
	const way: Place[] = [
		[LEAD, y],
		[COLUMN.hinge, y],
		[CIRCLE.x + CIRCLE.r, y - lift]
	];
	sheet.stroke('spring', straight(...way), node);
	sheet.stroke('seat', disc(CIRCLE.x, y - lift, CIRCLE.r), node);
	if (SOCKETS[state.socket.kind].threePin === 'male')
		sheet.stroke('seat-closed', box(contactEdge(drawing), y - 2.6, 12, 5.2, 1), node);
	sheet.word('mark', [CIRCLE.x, y - lift + 5.6], name, 'middle', node);
	drawTerminal(drawing, name, false);
}

function drawPinBreak(drawing: SymbolDrawing, lift: number): void {
	const { sheet, bench, state, rows } = drawing;
	const node = nodeIn(drawing, '1N');
	const row = rows.of['1N']!;
	const shut = isClosed(bench, state.socket.id, '1N');
	const isStuck = isStuckOpen(bench, state.socket.id, '1N');
	const run = (COLUMN.hinge - ARROW) / (COLUMN.hinge - CIRCLE.x - CIRCLE.r);
	const touch = rows.of['1']! + 1.4 - (shut ? lift * run : 0) + (isStuck ? 5 : 0);
	sheet.stroke('blade', straight([LEAD, row], [ARROW, row], [ARROW, touch + HEAD]), node);
	const head = closed([
		[ARROW, touch],
		[ARROW - 4.6, touch + HEAD],
		[ARROW + 4.6, touch + HEAD]
	]);
	const isLit = shut && sheet.lit.breaks.has(node);
	sheet.stroke(shut ? 'seat-closed' : 'seat', head, node, isLit);
	drawTerminal(drawing, '1N');
}

/** The chassis sign: a bar with three strokes, on a stem under the lead. */
function drawChassis(drawing: SymbolDrawing, x: number, lead: number): void {
	const y = lead + 7;
	const stem = straight([x, lead], [x, y]);
	const bar = straight([x - 12, y], [x + 12, y]);
	const strokes = [-11, 0, 11].map((dx) => straight([x + dx, y], [x + dx - 5, y + 8]));
	drawing.sheet.stroke('symbol', stem + bar + strokes.join(''), nodeIn(drawing, 'G'));
}

/** The shell round the circles, its lead to `G`, and what the plug's shell does. */
function drawShell(drawing: SymbolDrawing): void {
	const { sheet, rows, state } = drawing;
	const node = nodeIn(drawing, 'G');
	const { plug, mated } = state;
	const [top, bottom] = [rows.of['1']! - 24, rows.of['3']! + 15];
	const g = rows.of['G']!;
	const left = SHELL_LEFT;
	sheet.stroke('symbol', box(left, top, CIRCLE.x + 20 - left, bottom - top, 10), node);
	sheet.stroke('symbol', straight([CIRCLE.x, bottom], [CIRCLE.x, g], [LEAD, g]), node);
	drawChassis(drawing, 190, g);
	drawTerminal(drawing, 'G');
	if (plug?.kind !== 'three-pin') return;
	const of: NodeName = `${plug.id}.shell`;
	const y = (rows.of['2']! + rows.of['3']!) / 2;
	const end = mated.has('G') ? left : left - 10;
	sheet.stroke('blade', straight([10, y], [end, y]), of);
	sheet.stroke('seat-closed', disc(10, y, 2.4), of);
	sheet.point(of, [(10 + end) / 2, y]);
}

export function drawPinsSymbol(drawing: SymbolDrawing): void {
	drawShell(drawing);
	const hasBreak = '1N' in SOCKETS[drawing.state.socket.kind].breaks;
	const lift = hasBreak && drawing.state.mated.has('1') ? LIFT : 0;
	if (hasBreak) drawPinBreak(drawing, lift);
	for (const name of PINS) drawPin(drawing, name, name === '1' ? lift : 0);
}
