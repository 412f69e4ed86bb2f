/**
 * `npm run benchmark`: ratios within one run, and counts that are exact. Counts and differences have
 * a right answer and decide the exit status; times are only shown, beside the target where there is
 * one. Prints a table, then one line of JSON. `-- --only matrix,nets` runs those parts, `-- --skip
 * frames` all but those.
 */
import { cpus, loadavg } from 'node:os';
import { adviceRows } from './advice';
import { allPairsRows } from './allPairs';
import { continuityRows } from './continuity';
import { diagnosisRows } from './diagnosis';
import { fewestRows } from './fewest';
import { frameRows } from './frames';
import { headlessRows } from './headless';
import type { Row } from './measure';
import { moveRows } from './moves';
import { netRows } from './nets';
import { parseRows } from './parsing';
import { mixedRows, resistanceRows } from './resistance';

interface Part {
	readonly title: string;
	readonly rows: () => readonly Row[] | Promise<readonly Row[]>;
}

const PARTS: Readonly<Record<string, Part>> = {
	matrix: { title: 'Continuity matrices of a hybrid of ten', rows: continuityRows },
	nets: { title: 'Nets of a panel', rows: () => [1, 12, 48, 96, 1000].flatMap(netRows) },
	moves: {
		title: 'Conductors looked at when a plug moves',
		rows: () => moveRows([1, 12, 48, 96, 1000, 10_000])
	},
	pairs: { title: 'Resistances of all pairs against ml-matrix', rows: allPairsRows },
	resistance: {
		title: 'Resistance of one pair against a dense LU',
		rows: () => [
			...resistanceRows(1, 200, 15),
			...resistanceRows(12, 40, 9),
			...resistanceRows(48, 6, 3),
			...mixedRows()
		]
	},
	faults: { title: 'Faults against mnemonist and typedfastbitset', rows: diagnosisRows },
	fewest: { title: 'The fewest wires against logic-solver', rows: fewestRows },
	parsing: { title: 'Parsing against JSON.parse', rows: () => [1, 48].flatMap(parseRows) },
	headless: { title: 'The headless program', rows: () => headlessRows(400, 3) },
	frames: { title: 'A plug dragged in the browser', rows: () => frameRows([1, 48]) },
	advice: {
		title: 'A step of advice in the browser',
		rows: () =>
			adviceRows([
				[1, 1],
				[1, 3],
				[4, 1]
			])
	}
};

const isWrong = (row: Row): boolean =>
	'count' in row
		? row.right !== undefined && row.count !== row.right
		: row.most !== undefined && !(row.ratio <= row.most);

function valueText(row: Row): string {
	if ('count' in row) return String(row.count);
	if (row.ratio >= 1000) return String(Math.round(row.ratio));
	return row.ratio === 0 || row.ratio >= 0.001
		? row.ratio.toPrecision(3)
		: row.ratio.toExponential(1);
}

const meets = ({ ratio, target, below }: Extract<Row, { ratio: number }>): boolean =>
	below ? ratio <= target! : ratio >= target!;

function noteText(row: Row): string {
	if ('count' in row) return row.right === undefined ? '' : `by hand ${row.right}`;
	if (row.target !== undefined)
		return `target ${row.below ? '≤ ' : ''}${row.target}, ${meets(row) ? 'met' : 'not met'}`;
	return row.most === undefined ? '' : `at most ${row.most}`;
}

function show({ title }: Part, rows: readonly Row[]): readonly Row[] {
	console.log(`\n${title}`);
	for (const row of rows) {
		const mark = isWrong(row) ? '  WRONG' : '';
		console.log(`  ${row.what.padEnd(62)} ${valueText(row).padStart(10)}  ${noteText(row)}${mark}`);
	}
	return rows;
}

/** The names after an option, such as `--only a,b`; null without it. Throws on a name that is none. */
function namesAfter(option: string): readonly string[] | null {
	const at = process.argv.indexOf(option);
	if (at < 0) return null;
	const names = (process.argv[at + 1] ?? '').split(',');
	for (const name of names)
		if (!(name in PARTS)) throw new Error(`${option} ${name}: one of ${Object.keys(PARTS).join()}`);
	return names;
}

const only = namesAfter('--only') ?? Object.keys(PARTS);
const skipped = namesAfter('--skip') ?? [];
const machine = {
	processor: cpus()[0]?.model ?? 'unknown',
	cores: cpus().length,
	node: process.version,
	load: loadavg()[0]
};
console.log(
	`${machine.processor}, ${machine.cores} cores, Node ${machine.node}, load ${machine.load}`
);
const rows: Row[] = [];
for (const [name, part] of Object.entries(PARTS))
	if (only.includes(name) && !skipped.includes(name)) rows.push(...show(part, await part.rows()));
const wrong = rows.filter(isWrong);
console.log(`\n${JSON.stringify({ machine, rows, wrong: wrong.length })}`);
if (wrong.length > 0) process.exitCode = 1;
