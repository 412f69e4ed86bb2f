/** The rows of a panel's table by the names of their columns, which may stand in any order. */
import { oneOf } from '../engine';
import type { CsvRow, LineProblem } from './csv';

export const COLUMNS = ['socket', 'kind', 'from', 'to', 'gauge', 'length'] as const;
/** Columns that may be there as well. */
export const MORE_COLUMNS = ['label', 'bush', 'wire'] as const;
export type Column = (typeof COLUMNS)[number] | (typeof MORE_COLUMNS)[number];
/** The kind of the panel's own row. */
export const METAL = 'metal';

/** One row by the names of its columns; '' where the column is not there. */
export interface Row {
	readonly line: number;
	readonly of: (column: Column) => string;
}

/** A problem on a line, in a column where one is at fault. */
export const bad = (line: number, message: string, column?: Column): LineProblem => ({
	line,
	...(column && { column }),
	message
});
const isColumn = (name: string): name is Column =>
	([...COLUMNS, ...MORE_COLUMNS] as readonly string[]).includes(name);

/** What is wrong with the header as a whole; null if it can be read by names. */
export function headerProblem({ line, fields }: CsvRow): LineProblem | null {
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
export function namedRows(rows: readonly CsvRow[], problems: LineProblem[]): Row[] {
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
