/**
 * Paper of the symbol: one row a contact, its terminal at the right, so that lines never cross. The
 * jack's axis lies between the rows of `TN` and `RN`; whatever a spring leaves stands on the axis'
 * side of it, as in the part itself.
 */
import { SOCKETS, type Bench, type NodeName, type SocketKind } from '../engine';
import { disc, type Sheet } from './sectionPen';
import type { SocketState } from './sectionStates';

export const SYMBOL = { width: 320, height: 300 } as const;
/** x of terminals, of their names, of the letters of nets; and of the hinges of springs. */
export const COLUMN = { terminal: 266, name: 274, letter: 311, hinge: 254 } as const;
export const TERMINAL = 3.2;

/** y of every contact's row, and of the jack's axis. */
export interface Rows {
	readonly of: Readonly<Record<string, number>>;
	readonly axis: number;
	/** Height of the paper: a jack by itself needs less of it. */
	readonly height: number;
}
export interface SymbolDrawing {
	readonly sheet: Sheet;
	readonly bench: Bench;
	readonly state: SocketState;
	readonly letters: ReadonlyMap<NodeName, string>;
	readonly rows: Rows;
}

/** Room under the last row of a jack, for the lead of its bush. */
const BELOW = 24;
/** Rows of the jack's contacts, measured from its axis. */
const JACK = { T: -40, TN: -19, RN: 19, R: 40, SN: 61, S: 82 } as const;
const CHANGEOVER = { T: -36, NC: -68, C: -91, NO: -114 } as const;

/** Where the rows of a socket kind stand. */
export function symbolRows(kind: SocketKind): Rows {
	const part = SOCKETS[kind];
	const of: Record<string, number> = {};
	const hasJack = part.springs.length > 0;
	if (part.threePin) {
		const names = ['1', ...('1N' in part.breaks ? ['1N'] : []), '2', '3', 'G'];
		const [first, step] = hasJack ? [30, 25] : [72, 46];
		names.forEach((name, i) => (of[name] = first + i * step));
	}
	const axis = part.threePin ? 203 : part.changeover ? 138 : 60;
	const places: Record<string, number> = part.changeover ? { ...JACK, ...CHANGEOVER } : JACK;
	for (const [name, from] of Object.entries(places))
		if (part.contacts.includes(name)) of[name] = axis + from;
	const last = Math.max(...Object.values(of));
	return { of, axis, height: part.threePin ? SYMBOL.height : last + BELOW };
}

export const nodeIn = ({ state }: SymbolDrawing, contact: string): NodeName =>
	`${state.socket.id}.${contact}`;

/** A terminal at the right end of a row: a small ring, its name, the letter of its net. */
export function drawTerminal(drawing: SymbolDrawing, contact: string): void {
	const { sheet, letters, rows } = drawing;
	const node = nodeIn(drawing, contact);
	const y = rows.of[contact]!;
	sheet.stroke('seat', disc(COLUMN.terminal, y, TERMINAL), node);
	sheet.word('mark', [COLUMN.name, y + 5.5], contact, 'start', node);
	const letter = letters.get(node);
	if (letter) sheet.word('letter', [COLUMN.letter, y + 5.5], letter, 'middle', node);
	sheet.point(node, [COLUMN.terminal, y]);
}
