/**
 * Comma-separated text as RFC 4180 has it: fields in quotation marks may hold commas, line ends and
 * doubled quotation marks; lines end with CRLF or LF. Written here because strictness is the point:
 * the usual libraries guess, and a guess in a wiring list is a wire on the wrong lug.
 *
 * A field that a spreadsheet would take for a formula gets an apostrophe in front on the way out and
 * loses one on the way in (CWE-1236; OWASP, "CSV injection").
 */

/** What is wrong, the line it stands on (counted from 1, as editors do), and what would be right. */
export interface LineProblem {
	readonly line: number;
	/** The column's name, where one is at fault. */
	readonly column?: string;
	readonly message: string;
}
export interface CsvRow {
	/** The line on which the row begins. */
	readonly line: number;
	readonly fields: readonly string[];
}
export type CsvRead =
	| { readonly ok: true; readonly rows: readonly CsvRow[] }
	| { readonly ok: false; readonly problems: readonly LineProblem[] };

/** Where a formula may begin: = + - @ and their wide forms, whatever blanks stand before; tab and carriage return. */
const FORMULA = /^['\s]*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;
const GUARDED = /^'['\s]*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;

/** A field as it is safe in a spreadsheet. */
export const guardField = (field: string): string => (FORMULA.test(field) ? `'${field}` : field);
/** The field that `guardField` was given. */
export const unguardField = (field: string): string =>
	GUARDED.test(field) ? field.slice(1) : field;

const quoted = (field: string): string =>
	/[",;\r\n]|^\s|\s$/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;

/** Rows as CSV text, guarded against formulas, lines ended by CRLF (RFC 4180). */
export const makeCsv = (rows: readonly (readonly (string | number)[])[]): string =>
	rows.map((row) => `${row.map((f) => quoted(guardField(String(f)))).join(',')}\r\n`).join('');

/** Reads one field at a time; every method moves on and never back. */
class Reader {
	at = 0;
	line = 1;
	readonly text: string;
	readonly problems: LineProblem[] = [];
	constructor(text: string) {
		this.text = text;
	}
	get isOver(): boolean {
		return this.at >= this.text.length;
	}
	wrong(message: string, line = this.line) {
		this.problems.push({ line, message });
	}

	/** A field without quotation marks: up to a comma or the end of its line. */
	plain(): string {
		const end = /[,\r\n]/g;
		end.lastIndex = this.at;
		const to = end.exec(this.text)?.index ?? this.text.length;
		const field = this.text.slice(this.at, to);
		this.at = to;
		if (field.includes('"'))
			this.wrong(
				'a quotation mark stands inside a field; put the whole field in quotation marks and double those inside'
			);
		return field;
	}

	/** A field in quotation marks, the opening one under `at`. */
	inQuotes(): string {
		const begun = this.line;
		let from = this.at + 1;
		let field = '';
		for (;;) {
			const to = this.text.indexOf('"', from);
			if (to < 0) {
				this.wrong('a quotation mark is opened here and never closed', begun);
				this.at = this.text.length;
				return field;
			}
			const piece = this.text.slice(from, to);
			this.line += piece.split('\n').length - 1;
			field += piece;
			from = to + 1;
			if (this.text[from] !== '"') break;
			field += '"';
			from++;
		}
		this.at = from;
		if (!this.isOver && !',\r\n'.includes(this.text[from]!)) {
			this.wrong('text stands after a closing quotation mark; put a comma there');
			this.plain();
		}
		return field;
	}

	/** Steps over a line end; a carriage return by itself is none. */
	lineEnd() {
		if (this.text[this.at] === '\r') {
			this.at++;
			if (this.text[this.at] !== '\n') {
				this.wrong('the line ends with CR alone; save the file with CRLF or LF');
				this.line++;
				return;
			}
		}
		this.at++;
		this.line++;
	}

	row(): CsvRow {
		const { line } = this;
		const fields: string[] = [];
		for (;;) {
			fields.push(unguardField(this.text[this.at] === '"' ? this.inQuotes() : this.plain()));
			if (this.isOver || this.text[this.at] !== ',') break;
			this.at++;
		}
		if (!this.isOver) this.lineEnd();
		return { line, fields };
	}
}

/** CSV text to rows; a byte order mark is dropped, and so are lines without anything in them. */
export function parseCsv(source: string): CsvRead {
	const reader = new Reader(source.replace(/^\uFEFF/, ''));
	const rows: CsvRow[] = [];
	while (!reader.isOver) {
		const row = reader.row();
		if (row.fields.some((f) => f.trim() !== '')) rows.push(row);
	}
	return reader.problems.length > 0 ? { ok: false, problems: reader.problems } : { ok: true, rows };
}
