/**
 * Ohms and volts of a bench from ngspice, through the exported netlist. One batch process answers
 * many pairs of many benches: every node gets an idle current source; a pair of them is turned to +1 A and −1 A, the
 * operating point is taken, and the difference of the two potentials is the resistance. `numdgt` 12
 * makes it print enough digits. A missing ngspice is an error, never a skipped test.
 *
 * The leaks of `rshunt` are written out as resistors: ngspice 39 corrupts its memory when that option
 * meets a node that nothing but a current source touches.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { LEAK } from '../../src/lib/engine/netlist';

export interface Asked {
	/** Pairs whose resistance is asked, supplies at zero volts. */
	readonly ohms: readonly (readonly [string, string])[];
	/** Pairs whose voltage is asked, supplies on. */
	readonly volts: readonly (readonly [string, string])[];
}
export interface Answered {
	readonly ohms: readonly number[];
	readonly volts: readonly number[];
}

/** The netlist of a bench with the questions put into it as a control section. */
function deckOf({ netlist, ...asked }: Asked & { netlist: string }): string {
	const lines = netlist.split('\n').filter((line) => line && !/^\.(op|end|options)/.test(line));
	const named = lines.flatMap((line) => /^\* node (\d+) = (\S+)$/.exec(line)?.slice(1, 3) ?? []);
	const number = new Map(named.flatMap((n, i) => (i % 2 ? [[n, named[i - 1]!] as const] : [])));
	const supplies = lines.flatMap((line) => /^(V\d+) .* DC 48$/.exec(line)?.[1] ?? []);
	const idle = [...number.values()].flatMap((n) => [
		`Rleak${n} ${n} 0 ${LEAK}`,
		`Iprobe${n} 0 ${n} DC 0`
	]);
	const difference = ([a, b]: readonly [string, string]) =>
		`print v(${number.get(a)})-v(${number.get(b)})`;
	const drive = ([a, b]: readonly [string, string], amps: number) => [
		`alter Iprobe${number.get(a)} = ${amps}`,
		`alter Iprobe${number.get(b)} = ${-amps}`
	];
	return [
		...lines,
		...idle,
		...['.control', 'set numdgt=12', 'op'],
		...asked.volts.map(difference),
		...supplies.map((v) => `alter ${v} = 0`),
		...asked.ohms.flatMap((pair) => [...drive(pair, 1), 'op', difference(pair), ...drive(pair, 0)]),
		...['.endc', '.end', '']
	].join('\n');
}

/** Runs ngspice in batch mode on a deck; files beside it may be sourced by their names. */
export function runSpice(deck: string, beside: readonly string[] = []): string {
	const folder = mkdtempSync(join(tmpdir(), 'bench-'));
	try {
		beside.forEach((text, i) => writeFileSync(join(folder, `deck${i}.cir`), text));
		writeFileSync(join(folder, 'main.cir'), deck);
		return execFileSync('ngspice', ['-b', 'main.cir'], {
			cwd: folder,
			encoding: 'utf8',
			stdio: ['ignore', 'pipe', 'pipe']
		});
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code === 'ENOENT')
			throw new Error('ngspice is not installed; these checks need it (apt-get install ngspice)', {
				cause: error
			});
		throw error;
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

/** Asks about many netlists in one process. Throws if ngspice fails or answers less than was asked. */
export function askSpice(questions: readonly (Asked & { netlist: string })[]): Answered[] {
	const main = [
		...['* questions', '.control'],
		...questions.flatMap((_, i) => [`source deck${i}.cir`, 'remcirc']),
		...['quit 0', '.endc', '.end', '']
	].join('\n');
	const output = runSpice(main, questions.map(deckOf));
	const numbers = [...output.matchAll(/^v\(\d+\)-v\(\d+\) = (\S+)/gm)].map((m) => Number(m[1]));
	const count = questions.reduce((n, q) => n + q.volts.length + q.ohms.length, 0);
	if (numbers.length !== count || numbers.some(Number.isNaN))
		throw new Error(`ngspice answered ${numbers.length} of ${count}:\n${output.slice(-2000)}`);
	return questions.map((q) => ({
		volts: numbers.splice(0, q.volts.length),
		ohms: numbers.splice(0, q.ohms.length)
	}));
}
