/**
 * A panel as a plain table: socket, kind, from, to, gauge, length. A row with only socket and kind
 * is a socket; one with from and to is a wire of it as well. A bare contact (`TN`) belongs to the row's
 * own socket, `B.2` to another, `panel` is the metal panel; the row `panel,metal` makes it metal.
 * Gauge is AWG, length millimetres; left empty they are what a bench file means by leaving them out.
 * The kind stands at least once for each socket. Optional columns: label, bush, wire (its name).
 * Nothing is loaded unless every row is right. Plugs, devices and cables have no place in the table.
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
import { makeCsv, parseCsv, type CsvRow, type LineProblem } from './csv';
import { grouped } from './grouped';

export const COLUMNS = ['socket', 'kind', 'from', 'to', 'gauge', 'length'] as const;
/** Columns that may be there as well. */
export const MORE_COLUMNS = ['label', 'bush', 'wire'] as const;
type Column = (typeof COLUMNS)[number] | (typeof MORE_COLUMNS)[number];
const METAL = 'metal';

export type PanelRead =
	| { readonly ok: true; readonly bench: Bench }
	| { readonly ok: false; readonly problems: readonly LineProblem[] };

/** One row by the names of its columns; '' where the column is not there. */
interface Row {
	readonly line: number;
	readonly of: (column: Column) => string;
}

const bad = (line: number, message: string, column?: Column): LineProblem => ({
	line,
	...(column && { column }),
	message
});
const isColumn = (name: string): name is Column =>
	([...COLUMNS, ...MORE_COLUMNS] as readonly string[]).includes(name);

/** What is wrong with the header as a whole; null if it can be read by names. */
function headerProblem({ line, fields }: CsvRow): LineProblem | null {
	const right = `the first line should be ${COLUMNS.join(',')}`;
	for (const [mark, name] of [
		[';', 'semicolons'],
		['\t', 'tabs']
	] as const)
		if (fields.length === 1 && fields[0]!.split(mark).length >= COLUMNS.length)
			return bad(
				line,
				`the columns are parted by ${name}; save the table with commas between them`
			);
	const names = fields.map((f) => f.trim().toLowerCase());
	const strange = names.find((n) => !isColumn(n));
	if (strange !== undefined)
		return bad(
			line,
			`there is no column "${strange}"; ${right}, and may have ${oneOf(MORE_COLUMNS)} as well`
		);
	const twice = names.find((n, i) => names.indexOf(n) !== i);
	if (twice) return bad(line, `the column ${twice} stands twice; ${right}`);
	const missing = COLUMNS.find((c) => !names.includes(c));
	return missing ? bad(line, `the column ${missing} is missing; ${right}`) : null;
}

/** The rows below the header, by name; a row of another width is a problem. */
function namedRows(rows: readonly CsvRow[], problems: LineProblem[]): Row[] {
	const [header, ...rest] = rows;
	const names = header!.fields.map((f) => f.trim().toLowerCase());
	return rest.flatMap(({ line, fields }): Row[] => {
		if (fields.length !== names.length) {
			const has = `the row has ${fields.length} ${fields.length === 1 ? 'field' : 'fields'}`;
			problems.push(bad(line, `${has}; the first line has ${names.length}`));
			return [];
		}
		return [{ line, of: (column) => (fields[names.indexOf(column)] ?? '').trim() }];
	});
}

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
	return fits ? value : `"${text}" is out of range; write ${right}`;
}

type Known = ReadonlyMap<string, Socket | null>;

/** The wire of a row; null for a row without one, or with a problem. */
function wireFrom(row: Row, sockets: Known, problems: LineProblem[]): Omit<Wire, 'id'> | null {
	const own = row.of('socket');
	const given = (['from', 'to', 'gauge', 'length', 'wire'] as const).filter(
		(c) => row.of(c) !== ''
	);
	if (given.length === 0) return null;
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

/** The row `panel,metal`, read and taken away; other rows of that name are problems. */
function metalFrom(rows: readonly Row[], problems: LineProblem[]): boolean {
	const about = rows.filter((r) => r.of('socket') === PANEL);
	for (const row of about)
		if (row.of('kind') !== METAL || NOT_OF_PANEL.some((c) => row.of(c) !== ''))
			problems.push(
				bad(
					row.line,
					'a row of the panel says panel,metal and no more; a wire to it stands in the row of its socket',
					'socket'
				)
			);
	return about.length > 0;
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

/** The socket in whose rows a wire stands; null for one that touches no socket. */
function homeOf(bench: Bench, wire: Wire): string | null {
	const isSocket = (id: string) => bench.sockets.some((s) => s.id === id);
	return [wire.from, wire.to].map((n) => splitNode(n)[0]).find(isSocket) ?? null;
}

/** Whether the table has a place for the node: a contact of a socket, or the panel. */
const isOnPanel = (bench: Bench, node: NodeName): boolean =>
	node === PANEL || bench.sockets.some((s) => s.id === splitNode(node)[0]);

/** Wires that the table can hold: between contacts of sockets, and to the panel. */
export const panelWires = (bench: Bench): Wire[] =>
	bench.wires.filter(
		(w) => isOnPanel(bench, w.from) && isOnPanel(bench, w.to) && homeOf(bench, w) !== null
	);

/** What of the bench has no place in the table: ids of wires, cables, devices and plugs. */
export function leftOutOfCsv(bench: Bench): string[] {
	const held = new Set(panelWires(bench).map((w) => w.id));
	return [
		...bench.wires.filter((w) => !held.has(w.id)).map((w) => w.id),
		...[...bench.cables, ...bench.devices, ...bench.plugs].map((x) => x.id)
	];
}

/**
 * The panel of a bench as CSV: sockets in their order, each with its wires. Reading it gives the
 * same sockets and wires; wires come in the order of their sockets.
 */
export function makePanelCsv(bench: Bench): string {
	const homes = grouped(panelWires(bench), (w) => homeOf(bench, w));
	const wires = bench.sockets.flatMap((s) => homes.get(s.id) ?? []);
	const more = MORE_COLUMNS.filter((column) => {
		if (column === 'label') return bench.sockets.some((s) => s.label.trim() !== '');
		if (column === 'bush') return bench.sockets.some((s) => s.bush !== DEFAULTS.bush);
		return wires.some((w, i) => w.id !== `w${i + 1}`);
	});
	const local = (node: NodeName, own: string): string => {
		const [id, contact] = splitNode(node);
		return id === own ? contact : node;
	};
	const rowOf = (socket: Socket, wire: Wire | null, isFirst: boolean): (string | number)[] => [
		socket.id,
		socket.kind,
		...(wire
			? [local(wire.from, socket.id), local(wire.to, socket.id), wire.awg, wire.mm]
			: ['', '', '', '']),
		...more.map((column) => {
			if (column === 'wire') return wire?.id ?? '';
			return isFirst ? socket[column].trim() : '';
		})
	];
	const blank = more.map(() => '');
	return makeCsv([
		[...COLUMNS, ...more],
		...(bench.panel.metal ? [[PANEL, METAL, '', '', '', '', ...blank]] : []),
		...bench.sockets.flatMap((s) => {
			const own = homes.get(s.id) ?? [];
			return own.length > 0 ? own.map((w, i) => rowOf(s, w, i === 0)) : [rowOf(s, null, true)];
		})
	]);
}
