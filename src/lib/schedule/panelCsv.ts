/**
 * A panel as a plain table: socket, kind, from, to, gauge, length. A row with only socket and kind
 * is a socket; one with from and to is a wire of it as well. A bare contact (`TN`) belongs to the row's
 * own socket, `B.2` to another, `panel` is the metal panel; the row `panel,metal` makes it metal.
 * Gauge is AWG, length millimetres; left empty they are what a bench file means by leaving them out.
 * The kind stands at least once for each socket. Optional columns: label, bush, wire (its name).
 * Nothing is loaded unless every row is right, and a row that repeats another is not: two wires side
 * by side on the same contacts are told apart by their names. Plugs, devices and cables have no place here.
 */
import {
	BUSHES,
	DEFAULTS,
	EMPTY_BENCH,
	MOST_BYTES,
	PANEL,
	RANGES,
	RESERVED_IDS,
	SOCKETS,
	SOCKET_KINDS,
	checkBench,
	fileOf,
	oneOf,
	splitNode,
	type Bench,
	type Bush,
	type NodeName,
	type Socket,
	type SocketKind,
	type Wire
} from '../engine';
import { parseCsv, type LineProblem } from './csv';
import { grouped } from './grouped';
import {
	COLUMNS,
	METAL,
	MORE_COLUMNS,
	bad,
	headerProblem,
	namedRows,
	type Column,
	type Row
} from './panelRows';

export type PanelRead =
	| { readonly ok: true; readonly bench: Bench }
	| { readonly ok: false; readonly problems: readonly LineProblem[] };

const ID = /^[A-Za-z0-9_-]{1,32}$/;
const ID_RIGHT = '1 to 32 letters, digits, - or _';
const kindOf = (text: string): SocketKind | undefined => SOCKET_KINDS.find((k) => k === text);

/** What one socket's rows say of it in a column: one text at most. */
function agreed(rows: readonly Row[], column: Column, problems: LineProblem[]): string {
	const [first, ...more] = rows.filter((r) => r.of(column) !== '');
	for (const other of more)
		if (other.of(column) !== first!.of(column))
			problems.push(
				bad(
					other.line,
					`"${other.of(column)}" stands here and "${first!.of(column)}" on line ${first!.line}; a socket has one ${column}`,
					column
				)
			);
	return first?.of(column) ?? '';
}

function idProblem(id: string): string | null {
	if (id === '') return 'the socket is missing; name it in every row';
	if ((RESERVED_IDS as readonly string[]).includes(id))
		return `"${id}" has a meaning of its own; choose another name`;
	return ID.test(id) ? null : `"${id}" cannot be a name; use ${ID_RIGHT}`;
}

function kindProblem(rows: readonly Row[]): LineProblem | null {
	const given = rows.find((r) => r.of('kind') !== '');
	if (!given) return bad(rows[0]!.line, `the kind is missing; say ${oneOf(SOCKET_KINDS)}`, 'kind');
	const text = given.of('kind');
	if (kindOf(text)) return null;
	return bad(given.line, `there is no kind "${text}"; say ${oneOf(SOCKET_KINDS)}`, 'kind');
}

function bushOf(rows: readonly Row[], kind: SocketKind, problems: LineProblem[]): Bush {
	const text = agreed(rows, 'bush', problems);
	const bush = text === '' ? DEFAULTS.bush : BUSHES.find((b) => b === text);
	const line = rows.find((r) => r.of('bush') !== '')?.line ?? rows[0]!.line;
	if (!bush) problems.push(bad(line, `the bush is "${text}"; say ${oneOf(BUSHES)}`, 'bush'));
	else if (bush === METAL && !SOCKETS[kind].hasBush)
		problems.push(bad(line, `a ${kind} has no bush; leave it empty`, 'bush'));
	return bush ?? DEFAULTS.bush;
}

/** The socket that the rows of one name describe; null where it cannot be told. */
function socketFrom(id: string, rows: readonly Row[], problems: LineProblem[]): Socket | null {
	const wrongId = idProblem(id);
	if (wrongId) {
		for (const { line } of rows) problems.push(bad(line, wrongId, 'socket'));
		return null;
	}
	const wrongKind = kindProblem(rows);
	agreed(rows, 'kind', problems);
	if (wrongKind) {
		problems.push(wrongKind);
		return null;
	}
	const kind = kindOf(rows.find((r) => r.of('kind') !== '')!.of('kind'))!;
	const label = agreed(rows, 'label', problems);
	return { id, kind, bush: bushOf(rows, kind, problems), label };
}

/** `TN`, `B.2` or `panel` as a node; a text says what is wrong. */
function nodeFrom(
	text: string,
	own: string,
	sockets: ReadonlyMap<string, Socket | null>
): { node: NodeName } | string {
	if (text === PANEL) return { node: PANEL };
	const [id, contact] = text.includes('.') ? splitNode(text) : [own, text];
	const socket = sockets.get(id);
	if (socket === undefined)
		return `there is no socket "${id}" in the table; name one that has a row of its own`;
	// Its kind is a problem already; what its contacts are cannot be said.
	if (socket === null) return { node: `${id}.${contact}` };
	const { contacts } = SOCKETS[socket.kind];
	if (contacts.includes(contact)) return { node: `${id}.${contact}` };
	return `a ${socket.kind} has no contact "${contact}"; it has ${oneOf(contacts)}`;
}

const NUMBER = /^-?\d+(?:\.\d*)?(?:e[+-]?\d+)?$/i;

/** The number in a field; undefined where it is empty, a text that says what is wrong. */
function numberFrom(text: string, what: 'gauge' | 'length'): number | undefined | string {
	if (text === '') return undefined;
	const right =
		what === 'gauge'
			? `a whole number of AWG, ${RANGES.awg.from} to ${RANGES.awg.to}`
			: `millimetres, over 0 and at most ${RANGES.mm.to}`;
	if (/^\d+,\d+$/.test(text))
		return `"${text}" has a comma; write a full stop, ${text.replace(',', '.')}`;
	if (!NUMBER.test(text)) return `"${text}" is not a number; write ${right}, without a unit`;
	const value = Number(text);
	const fits =
		what === 'gauge'
			? Number.isInteger(value) && value >= RANGES.awg.from && value <= RANGES.awg.to
			: value > RANGES.mm.above && value <= RANGES.mm.to;
	if (fits) return value;
	const isPart = what === 'gauge' && value > 0 && !Number.isInteger(value);
	return `"${text}" is ${isPart ? 'not a whole number' : 'out of range'}; write ${right}`;
}

/** A row with none of these is a socket alone. */
const WIRE_COLUMNS = ['from', 'to', 'gauge', 'length', 'wire'] as const;

type Known = ReadonlyMap<string, Socket | null>;

/** The wire of a row; null for a row without one, or with a problem. */
function wireFrom(row: Row, sockets: Known, problems: LineProblem[]): Omit<Wire, 'id'> | null {
	const own = row.of('socket');
	if (WIRE_COLUMNS.every((c) => row.of(c) === '')) return null;
	const wrong: LineProblem[] = [];
	const note = (column: Column, message: string) => wrong.push(bad(row.line, message, column));
	const ends = (['from', 'to'] as const).map((column) => {
		const text = row.of(column);
		const read =
			text === '' ? `${column} is missing; a wire has two ends` : nodeFrom(text, own, sockets);
		if (typeof read === 'object') return read.node;
		note(column, read);
		return null;
	});
	const [awg, mm] = (['gauge', 'length'] as const).map((column) => {
		const read = numberFrom(row.of(column), column);
		if (typeof read === 'string') note(column, read);
		return typeof read === 'number' ? read : undefined;
	});
	const [from, to] = ends;
	if (from && from === to)
		note('to', `both ends are ${to}; a wire goes from one contact to another`);
	if (from && to && ![from, to].some((n) => splitNode(n)[0] === own))
		note('socket', `neither end is on ${own}; name the socket of one of them here`);
	problems.push(...wrong);
	if (wrong.length > 0 || !from || !to) return null;
	return { from, to, awg: awg ?? DEFAULTS.wireAwg, mm: mm ?? DEFAULTS.mm };
}

/** Names for the wires: those given, and `w1`, `w2` … for the rest, passing over names that are taken. */
function namedWires(
	wires: readonly { row: Row; wire: Omit<Wire, 'id'> }[],
	sockets: Known,
	problems: LineProblem[]
): Wire[] {
	const taken = new Map<string, string>([...sockets.keys()].map((id) => [id, 'a socket']));
	for (const { row } of wires) {
		const name = row.of('wire');
		if (name === '') continue;
		const wrong = idProblem(name);
		const by = taken.get(name);
		if (wrong) problems.push(bad(row.line, wrong, 'wire'));
		else if (by) problems.push(bad(row.line, `"${name}" is the name of ${by} already`, 'wire'));
		taken.set(name, `the wire on line ${row.line}`);
	}
	let n = 0;
	return wires.map(({ row, wire }): Wire => {
		let id = row.of('wire');
		while (id === '' || (row.of('wire') === '' && taken.has(id))) id = `w${++n}`;
		return { id, ...wire };
	});
}

const NOT_OF_PANEL = [...COLUMNS, ...MORE_COLUMNS].filter((c) => c !== 'socket' && c !== 'kind');
const METAL_RIGHT = `write ${PANEL},${METAL} where the panel is metal, and no such row where it is not`;

/** The row `panel,metal`, read and taken away; other rows of that name are problems. */
function metalFrom(rows: readonly Row[], problems: LineProblem[]): boolean {
	const about = rows.filter((r) => r.of('socket') === PANEL);
	for (const row of about) {
		const kind = row.of('kind');
		if (kind === '')
			problems.push(bad(row.line, `the row of the panel has no kind; ${METAL_RIGHT}`, 'kind'));
		else if (kind !== METAL)
			problems.push(bad(row.line, `"${kind}" is no kind of panel; ${METAL_RIGHT}`, 'kind'));
		for (const column of NOT_OF_PANEL)
			if (row.of(column) !== '')
				problems.push(
					bad(
						row.line,
						`"${row.of(column)}" stands in the row of the panel, which says ${PANEL},${METAL} and no more; a wire to the panel goes into the row of its socket, with ${PANEL} as one end`,
						column
					)
				);
	}
	const [first, ...again] = about;
	for (const row of again) problems.push(repeats(row, first!));
	return about.length > 0;
}

const repeats = (row: Row, first: Row, right = 'take one of the two away'): LineProblem =>
	bad(row.line, `the row repeats the one on line ${first.line}; ${right}`);

const BOTH_RIGHT = `take one of the two away, or, if two wires lie side by side, give each a name in a column wire`;

/** Rows that say what an earlier one says: a wire on the same two contacts, alike and without a name of its own, or a socket once more. */
function repeated(
	own: readonly Row[],
	wired: readonly { row: Row; wire: Omit<Wire, 'id'> }[],
	problems: LineProblem[]
) {
	const firsts = new Map<string, Row>();
	const note = (key: string, row: Row, right?: string) => {
		const first = firsts.get(key);
		if (first) problems.push(repeats(row, first, right));
		else firsts.set(key, row);
	};
	for (const { row, wire } of wired) {
		const ends = [wire.from, wire.to].sort();
		note(JSON.stringify([...ends, wire.awg, wire.mm, row.of('wire')]), row, BOTH_RIGHT);
	}
	for (const row of own)
		if (WIRE_COLUMNS.every((c) => row.of(c) === '') && row.of('socket') !== '')
			note(JSON.stringify([...COLUMNS, ...MORE_COLUMNS].map(row.of)), row);
}

const byLine = (a: LineProblem, b: LineProblem): number => a.line - b.line;

/** A panel's CSV to a bench, or everything that is wrong with it, by line. Never throws. */
export function parsePanelCsv(source: string, title = ''): PanelRead {
	if (source.length > MOST_BYTES)
		return {
			ok: false,
			problems: [bad(1, `the file is too long; at most ${MOST_BYTES} bytes fit`)]
		};
	const csv = parseCsv(source);
	if (!csv.ok) return csv;
	if (csv.rows.length === 0)
		return {
			ok: false,
			problems: [bad(1, `the table is empty; the first line should be ${COLUMNS.join(',')}`)]
		};
	const header = headerProblem(csv.rows[0]!);
	if (header) return { ok: false, problems: [header] };

	const problems: LineProblem[] = [];
	const rows = namedRows(csv.rows, problems);
	const isMetal = metalFrom(rows, problems);
	const own = rows.filter((r) => r.of('socket') !== PANEL);
	const sockets = new Map(
		[...grouped(own, (r) => r.of('socket'))].map(([id, of]) => [id, socketFrom(id, of, problems)])
	);
	const wired = own.flatMap((row) => {
		const wire = sockets.has(row.of('socket')) ? wireFrom(row, sockets, problems) : null;
		return wire ? [{ row, wire }] : [];
	});
	repeated(own, wired, problems);
	const wires = namedWires(wired, sockets, problems);
	if (problems.length > 0) return { ok: false, problems: [...problems].sort(byLine) };

	const metal = isMetal || wires.some((w) => w.from === PANEL || w.to === PANEL);
	const all = [...sockets.values()].filter((s) => s !== null);
	return checked({ ...EMPTY_BENCH, title, panel: { metal }, sockets: all, wires });
}

/** The bench once more through the one gate of all benches. */
function checked(bench: Bench): PanelRead {
	const read = checkBench(fileOf(bench));
	if (read.ok) return { ok: true, bench: read.value };
	const { path, message } = read.problem;
	return { ok: false, problems: [bad(1, `${path}: ${message}`)] };
}
