/** Many small files in one start of the headless program, against one file in one start. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { median, type Row } from './measure';
import { panelFile } from './panels';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const PROGRAM = ['node_modules/tsx/dist/cli.mjs', 'src/cli/main.ts', 'nets'];

function answersOf(files: readonly string[]): { lines: string[]; seconds: number } {
	const start = performance.now();
	const out = execFileSync(process.execPath, [...PROGRAM, ...files], {
		cwd: ROOT,
		encoding: 'utf8',
		maxBuffer: 1e9
	});
	return { lines: out.trimEnd().split('\n'), seconds: (performance.now() - start) / 1000 };
}

export function headlessRows(files: number, rounds: number): Row[] {
	const folder = mkdtempSync(join(tmpdir(), 'solderside-benchmark-'));
	try {
		const names = Array.from({ length: files }, (_, i) => join(folder, `${i}.json`));
		names.forEach((name, i) => writeFileSync(name, JSON.stringify(panelFile(1 + (i % 3)))));
		const runs = Array.from({ length: rounds }, () => ({
			many: answersOf(names),
			one: answersOf(names.slice(0, 1))
		}));
		const { lines } = runs[0]!.many;
		const right = names.filter((_, i) => {
			const answer = JSON.parse(lines[i] ?? 'null') as { nets: string[][] } | null;
			return answer?.nets.length === 2 * (1 + (i % 3)) + 1;
		});
		return [
			{ what: `${files} files in one start: lines`, count: lines.length, right: files },
			{ what: `${files} files in one start: right answers`, count: right.length, right: files },
			{
				what: `${files} files / 1 file, one start each`,
				ratio: median(runs.map(({ many, one }) => many.seconds / one.seconds))
			},
			{
				what: `${files} files in one start, seconds (for information)`,
				ratio: median(runs.map(({ many }) => many.seconds))
			}
		];
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}
