/**
 * The words after the program's name become a call, a wish for help, or a misuse with one line that
 * says what would be right. Pure: no file is touched here. The rules are the usual ones: options
 * stand anywhere, `--option value` and `--option=value` are the same, `--` ends the options, and
 * `-` is standard input.
 */
import { oneOf } from '../lib/engine';
import type { Command } from './command';
import { COMMANDS } from './commands';
import { COMMON, OPTIONS, isOption, type OptionName } from './options';

export type Call =
	| { readonly kind: 'help'; readonly command: string | null }
	| { readonly kind: 'misuse'; readonly command: string | null; readonly message: string }
	| {
			readonly kind: 'call';
			readonly command: Command;
			readonly files: readonly string[];
			/** Text of each option given; empty for a switch. */
			readonly texts: ReadonlyMap<OptionName, string>;
	  };

interface Words {
	readonly plain: string[];
	readonly texts: Map<OptionName, string>;
	/** What is wrong with the options by themselves, the first first. */
	readonly wrong: string[];
}

/** The option's value: after `=`, or the next word unless that is an option; null if there is none. */
function valueOf(rest: string[], joined: string | undefined): string | null {
	if (joined !== undefined) return joined || null;
	const next = rest[0];
	if (next === undefined || next === '' || next.startsWith('--')) return null;
	return rest.shift()!;
}

function takeOption(words: Words, word: string, rest: string[]) {
	const [, name = '', joined] =
		/^--([^=]*)(?:=(.*))?$/s.exec(word === '-h' ? '--help' : word) ?? [];
	if (!isOption(name)) {
		words.wrong.push(`unknown option ${word}`);
		return;
	}
	const { value } = OPTIONS[name];
	const text = value === null ? (joined === undefined ? '' : null) : valueOf(rest, joined);
	if (text === null)
		words.wrong.push(
			value === null ? `--${name} takes no value` : `--${name} needs a value: --${name} ${value}`
		);
	else if (words.texts.has(name) && name !== 'help')
		words.wrong.push(`--${name} is given twice; give it once`);
	else words.texts.set(name, text);
}

function wordsOf(argv: readonly string[]): Words {
	const words: Words = { plain: [], texts: new Map(), wrong: [] };
	const rest = [...argv];
	for (let word = rest.shift(); word !== undefined; word = rest.shift()) {
		if (word === '--') {
			words.plain.push(...rest);
			break;
		}
		if (word.startsWith('-') && word !== '-') takeOption(words, word, rest);
		else words.plain.push(word);
	}
	return words;
}

/** Why the command cannot work with these options and files; null if it can. */
function misuseOf(name: string, command: Command, words: Words, files: string[]): string | null {
	if (words.wrong.length > 0) return words.wrong[0]!;
	const takes = [...command.needs, ...command.takes, ...COMMON];
	for (const option of words.texts.keys())
		if (!takes.includes(option))
			return `${name} does not take --${option}; it takes ${oneOf(takes.map((o) => `--${o}`))}`;
	for (const option of command.needs)
		if (!words.texts.has(option)) return `${name} needs --${option} ${OPTIONS[option].value}`;
	for (const [option, text] of words.texts) {
		const { words: right } = OPTIONS[option];
		if (right && !right.includes(text)) return `--${option} ${text}: say ${oneOf(right)}`;
	}
	if (files.length === 0) return `${name} needs at least one FILE; - reads standard input`;
	const read = [...files, ...[...words.texts].flatMap(([o, t]) => (OPTIONS[o].holds ? [t] : []))];
	return read.filter((file) => file === '-').length > 1
		? 'standard input (-) can be read only once; name it once'
		: null;
}

/** Reads the command line. Help wins over everything but an unknown command. */
export function callOf(argv: readonly string[]): Call {
	const words = wordsOf(argv);
	const [name, ...files] = words.plain;
	const wantsHelp = words.texts.has('help');
	if (name === undefined) {
		if (wantsHelp) return { kind: 'help', command: null };
		const message = words.wrong[0] ?? `no command given; say ${oneOf([...COMMANDS.keys()])}`;
		return { kind: 'misuse', command: null, message };
	}
	const command = COMMANDS.get(name);
	if (!command) {
		const message = `unknown command "${name}"; say ${oneOf([...COMMANDS.keys()])}`;
		return { kind: 'misuse', command: null, message };
	}
	if (wantsHelp) return { kind: 'help', command: name };
	const message = misuseOf(name, command, words, files);
	if (message) return { kind: 'misuse', command: name, message };
	return { kind: 'call', command, files, texts: words.texts };
}
