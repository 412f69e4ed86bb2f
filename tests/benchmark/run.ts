/**
 * `npm run benchmark`: ratios within one run, and counts that are exact. Counts and differences have
 * a right answer and decide the exit status; times are only shown. Prints a table, then one line of
 * JSON.
 */
import { adviceRows } from './advice';
import { diagnosisRows } from './diagnosis';
import { frameRows } from './frames';
import { headlessRows } from './headless';
import type { Row } from './measure';
import { netRows } from './nets';
import { parseRows } from './parsing';
import { mixedRows, resistanceRows } from './resistance';

const isWrong = (row: Row): boolean =>
	'count' in row
		? row.right !== undefined && row.count !== row.right
		: row.most !== undefined && !(row.ratio <= row.most);

function valueText(row: Row): string {
	if ('count' in row) return String(row.count);
	return row.ratio === 0 || row.ratio >= 0.001
		? row.ratio.toPrecision(3)
		: row.ratio.toExponential(1);
}

function noteText(row: Row): string {
	if ('count' in row) return row.right === undefined ? '' : `by hand ${row.right}`;
	return row.most === undefined ? '' : `at most ${row.most}`;
}

function show(title: string, rows: readonly Row[]): readonly Row[] {
	console.log(`\n${title}`);
	for (const row of rows) {
		const mark = isWrong(row) ? '  WRONG' : '';
		console.log(`  ${row.what.padEnd(58)} ${valueText(row).padStart(10)}  ${noteText(row)}${mark}`);
	}
	return rows;
}

const rows = [
	...show('Nets against graphology', [1, 12, 48].flatMap(netRows)),
	...show('Resistance against a dense LU', [
		...resistanceRows(1, 200, 15),
		...resistanceRows(12, 40, 9),
		...resistanceRows(48, 6, 3),
		...mixedRows()
	]),
	...show('Faults against mnemonist and typedfastbitset', diagnosisRows()),
	...show('Parsing against JSON.parse', [1, 48].flatMap(parseRows)),
	...show('The headless program', headlessRows(400, 3)),
	...show('A plug dragged in the browser', await frameRows([1, 48])),
	...show(
		'A step of advice in the browser',
		await adviceRows([
			[1, 1],
			[1, 3],
			[4, 1]
		])
	)
];
const wrong = rows.filter(isWrong);
console.log(`\n${JSON.stringify({ rows, wrong: wrong.length })}`);
if (wrong.length > 0) process.exitCode = 1;
