/** The connector's part of the symbol: numbered circles in a row, the shell, its chassis sign, `1N`. */
import { SOCKETS, type NodeName, type PinName } from '../engine';
import { isClosed } from './lit';
import { bent, box, closed, disc, straight, type Place } from './sectionPen';
import { isStuckOpen } from './sectionStates';
import { COLUMN, TERMINAL, drawTerminal, nodeIn, type SymbolDrawing } from './symbolFrame';

const PINS: readonly PinName[] = ['1', '2', '3'];
const CIRCLE = { x: 92, r: 10 } as const;
/** How far pin 1 moves off its break contact, units. */
const LIFT = 8;
const SHELL = { half: 25, over: 19 } as const;
const SHELL_LEFT = CIRCLE.x - SHELL.half;
/** x of the back of the plug's shell and of the plug's pins, and how far its edges stand inside the socket's. */
const PLUG = { back: 10, pins: 24, inside: 6 } as const;
const ARROW = 131;
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
	sheet.stroke('spring', straight([PLUG.pins, y], [end, y]), node);
	sheet.stroke('seat-closed', disc(PLUG.pins, y, 2.4), node);
	sheet.point(node, [(PLUG.pins + end) / 2, y]);
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
	drawTerminal(drawing, name);
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

/** The chassis sign: a bar with three strokes, on a stem under the shell. */
function drawChassis(drawing: SymbolDrawing, x: number, lead: number): void {
	const y = lead + 7;
	const stem = straight([x, lead], [x, y]);
	const bar = straight([x - 12, y], [x + 12, y]);
	const strokes = [-11, 0, 11].map((dx) => straight([x + dx, y], [x + dx - 5, y + 8]));
	drawing.sheet.stroke('symbol', stem + bar + strokes.join(''), nodeIn(drawing, 'G'));
}

/** The plug's shell about its pins: an open outline whose edges meet the socket's, or end short of it. */
function drawPlugShell({ sheet, state }: SymbolDrawing, top: number, bottom: number): void {
	const { plug, mated } = state;
	if (plug?.kind !== 'three-pin') return;
	const of: NodeName = `${plug.id}.shell`;
	const end = mated.has('G') ? SHELL_LEFT + 0.5 : SHELL_LEFT - 10;
	const [over, below] = [top + PLUG.inside, bottom - PLUG.inside];
	const way: Place[] = [
		[end, over],
		[PLUG.back, over],
		[PLUG.back, below],
		[end, below]
	];
	sheet.stroke('symbol', bent(way, 8), of);
	sheet.point(of, [PLUG.back, (over + below) / 2]);
}

/** The shell round the circles, the chassis under it, its lead to `G`, and the plug's shell. */
function drawShell(drawing: SymbolDrawing): void {
	const { sheet, rows } = drawing;
	const node = nodeIn(drawing, 'G');
	// A pin that rises from its break contact needs a little more room.
	const room = '1N' in rows.of ? 3 : 0;
	const [top, bottom] = [rows.of['1']! - SHELL.over - room, rows.of['3']! + SHELL.over];
	const g = rows.of['G']!;
	const left = SHELL_LEFT;
	sheet.stroke('symbol', box(left, top, 2 * SHELL.half, bottom - top, 10), node);
	sheet.stroke('symbol', straight([CIRCLE.x, bottom], [CIRCLE.x, g], [LEAD, g]), node);
	drawChassis(drawing, CIRCLE.x, g);
	drawTerminal(drawing, 'G');
	drawPlugShell(drawing, top, bottom);
}

export function drawPinsSymbol(drawing: SymbolDrawing): void {
	drawShell(drawing);
	const hasBreak = '1N' in SOCKETS[drawing.state.socket.kind].breaks;
	const lift = hasBreak && drawing.state.mated.has('1') ? LIFT : 0;
	if (hasBreak) drawPinBreak(drawing, lift);
	for (const name of PINS) drawPin(drawing, name, name === '1' ? lift : 0);
}
