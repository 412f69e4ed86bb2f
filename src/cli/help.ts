/** Help texts, made from the tables of commands and options so that they cannot fall behind them. */
import type { Command } from './command';
import { COMMANDS } from './commands';
import { OPTIONS, type OptionName } from './options';

export const PROGRAM = 'npm run -s solderside --';

function optionLine(name: OptionName): [string, string] {
	const { value, says, words } = OPTIONS[name];
	const left = value === null ? `--${name}` : `--${name} ${value}`;
	return [left, words ? `${says}: ${words.join(', ')}` : says];
}

/** Two columns, the left one as wide as its widest entry. */
function columns(rows: readonly (readonly [string, string])[]): string[] {
	const width = Math.max(...rows.map(([left]) => left.length));
	return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`);
}

const FILES = [
	'FILE is a bench file (JSON, UTF-8, at most 1 MiB); - reads standard input.',
	'A bad file is one line on standard error; the other files are still answered.',
	'Exit status: 0 every file answered, 1 a file was bad, 2 wrong usage.'
];

/** Help of the whole program. */
export const programHelp = (): string =>
	[
		'Solderside without a screen: what is joined with what on a bench of sockets, plugs and wires.',
		'',
		`  ${PROGRAM} COMMAND FILE… [options]`,
		'',
		'Commands, each with its own --help:',
		...columns([...COMMANDS].map(([name, { says }]) => [name, says])),
		'',
		'Options of every command:',
		...columns([optionLine('pretty'), optionLine('help')]),
		'',
		'The answer is one line of JSON for each file, in the order of the files (netlist: plain text).',
		...FILES,
		'--option VALUE and --option=VALUE are the same. -- ends the options: what follows is a FILE.',
		''
	].join('\n');

/** Help of one command. */
export function commandHelp(name: string, { says, example, needs, takes }: Command): string {
	const needed = needs.map((o) => ` --${o} ${OPTIONS[o].value}`).join('');
	const optional = [...takes, 'pretty' as const].map((o) => ` [${optionLine(o)[0]}]`).join('');
	return [
		`${name}: ${says}.`,
		'',
		`  ${PROGRAM} ${name} FILE…${needed}${optional}`,
		'',
		...columns([...needs, ...takes, 'pretty' as const, 'help' as const].map(optionLine)),
		'',
		...FILES,
		'',
		`Example: ${PROGRAM} ${name} bench.json${example && ` ${example}`}`,
		''
	].join('\n');
}
