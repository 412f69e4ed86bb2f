/**
 * The socket in the trade's schematic signs, in the state it is in now. From memory of IEC 60617 and
 * of common drawings: a jack's springs as lines that end in a V, a metal bush as a bar, a break contact
 * as an arrowhead on its spring, a changeover with a broken line for what works it, a connector as
 * circles with numbers, the chassis as a bar with three strokes. No conformity is claimed.
 */
import { SOCKETS, type Bench, type NodeName } from '../engine';
import type { Figure } from './figure';
import { NOTHING_LIT, isClosed, netLetters, type Lit } from './lit';
import { Sheet } from './sectionPen';
import { socketState } from './sectionStates';
import { drawJackSymbol } from './symbolJack';
import { drawPinsSymbol } from './symbolPins';
import { SYMBOL, symbolRows, type SymbolDrawing } from './symbolFrame';

function titleOf(bench: Bench, drawing: SymbolDrawing): string {
	const { socket, plug } = drawing.state;
	const part = SOCKETS[socket.kind];
	// A sign shows a state and no millimetre.
	const what = plug ? `${plug.kind} plug in it` : 'no plug';
	const contacts = [...Object.keys(part.breaks), ...(part.changeover ? ['NC', 'NO'] : [])];
	const stand = contacts.map((c) => `${c} ${isClosed(bench, socket.id, c) ? 'closed' : 'open'}`);
	const clauses = stand.length > 0 ? `: ${stand.join(', ')}` : '';
	return `Schematic symbol of ${socket.id}, ${socket.kind}, ${what}${clauses}.`;
}

/**
 * The schematic symbol of a socket of the bench as it stands. `lit`: what carries the copper accent.
 * Throws if the bench has no such socket.
 */
export function symbolOf(bench: Bench, socketId: string, lit: Lit = NOTHING_LIT): Figure {
	const state = socketState(bench, socketId);
	const sheet = new Sheet(lit);
	const letters: ReadonlyMap<NodeName, string> = netLetters(bench);
	const rows = symbolRows(state.socket.kind);
	const drawing: SymbolDrawing = { sheet, bench, state, letters, rows };
	if (SOCKETS[state.socket.kind].threePin) drawPinsSymbol(drawing);
	if (state.springs.length > 0) drawJackSymbol(drawing);
	const { width } = SYMBOL;
	const { height } = rows;
	const title = titleOf(bench, drawing);
	return { width, height, title, marks: sheet.marks, points: sheet.points };
}
