/**
 * The headless program, apart from the process it runs in: arguments and an `Io` in, exit status
 * out. 0: every file answered. 1: a file was bad, one line each on standard error, the others
 * answered all the same. 2: wrong usage.
 */
import { MOST_BYTES, checkBench, parseJson, type Parsed, type Problem } from '../lib/engine';
import type { Command, Reply } from './command';
import { COMMANDS } from './commands';
import { PROGRAM, commandHelp, programHelp } from './help';
import type { Io } from './io';
import { OPTIONS, type OptionName } from './options';
import { callOf, type Call } from './usage';

export type Status = 0 | 1 | 2;
type Given = Parameters<Command['answer']>[1];

/** One line: line ends and control characters, which a terminal might obey, become spaces. */
export const oneLine = (text: string): string =>
	// eslint-disable-next-line no-control-regex
	text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, ' ');

const UNREADABLE: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such file; check the name',
	ENOTDIR: 'there is no such file; check the name',
	EISDIR: 'this is a folder; name a file in it',
	EACCES: 'this file may not be read; check its permissions',
	EPERM: 'this file may not be read; check its permissions'
};

const bad = (message: string): { ok: false; problem: Problem } => ({
	ok: false,
	problem: { path: '$', message }
});

const reasonOf = (error: unknown): string =>
	error instanceof Error ? error.message : String(error);

/** The JSON value of a file, or why there is none. Never rejects. */
async function jsonOf(io: Io, file: string, what: string): Promise<Parsed<unknown>> {
	let bytes: Uint8Array;
	try {
		bytes = await io.read(file, MOST_BYTES);
	} catch (error) {
		const code = (error as NodeJS.ErrnoException | null)?.code ?? reasonOf(error);
		return bad(UNREADABLE[code] ?? `the file cannot be read (${code}); name one that can`);
	}
	if (bytes.length > MOST_BYTES)
		return bad(`the file is too long; at most ${MOST_BYTES} bytes (1 MiB) fit`);
	try {
		// The byte order mark is left to the parser, which takes one away and no more.
		const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
		return parseJson(text, what);
	} catch {
		return bad('the file is not UTF-8 text; save it as UTF-8');
	}
}

const problemLine = (file: string, { path, message }: Problem): string =>
	`${oneLine(`${file || '""'}: ${path}: ${message}`)}\n`;

/** Reads the files that options name; the first bad one is the answer instead. */
async function givenOf(io: Io, texts: ReadonlyMap<OptionName, string>): Promise<Given | string> {
	const given: Record<string, unknown> = {};
	for (const [name, text] of texts) {
		const { value, holds } = OPTIONS[name];
		if (!holds) {
			given[name] = value === null ? true : text;
			continue;
		}
		const json = await jsonOf(io, text, holds.what);
		const held = json.ok ? holds.check(json.value) : json;
		if (!held.ok) return problemLine(text, held.problem);
		given[name] = { file: text, value: held.value };
	}
	return given;
}

async function replyOf(io: Io, command: Command, file: string, given: Given): Promise<Reply> {
	const json = await jsonOf(io, file, 'a bench file');
	const bench = json.ok ? checkBench(json.value) : json;
	if (!bench.ok) return { kind: 'refused', ...bench.problem };
	return command.answer(bench.value, given);
}

/** The reply as text for standard output. */
function textOf(reply: Exclude<Reply, { kind: 'refused' }>, file: string, pretty: boolean): string {
	if (reply.kind === 'text') return reply.text;
	if (!pretty) return `${JSON.stringify(reply.data)}\n`;
	const [headline = '', ...lines] = reply.lines().map(oneLine);
	return [oneLine(`${file}: ${headline}`), ...lines.map((l) => `  ${l}`), ''].join('\n');
}

/** Answers one file; false once nobody reads the output, else whether the file was good. */
async function answer(
	io: Io,
	command: Command,
	file: string,
	given: Given
): Promise<'good' | 'bad' | 'gone'> {
	let text: string;
	try {
		const reply = await replyOf(io, command, file, given);
		if (reply.kind === 'refused') {
			const of = reply.of === undefined ? '' : ` (bench ${file})`;
			const message = `${reply.message}${of}`;
			await io.err(problemLine(reply.of ?? file, { path: reply.path, message }));
			return 'bad';
		}
		text = textOf(reply, file, given.pretty === true);
	} catch (error) {
		const message = `this bench cannot be worked out (${reasonOf(error)}); try a smaller one`;
		await io.err(problemLine(file, { path: '$', message }));
		return 'bad';
	}
	return (await io.out(text)) ? 'good' : 'gone';
}

async function answerAll(io: Io, call: Call & { kind: 'call' }): Promise<Status> {
	const given = await givenOf(io, call.texts);
	if (typeof given === 'string') {
		await io.err(given);
		return 1;
	}
	let status: Status = 0;
	for (const file of call.files) {
		const outcome = await answer(io, call.command, file, given);
		if (outcome === 'gone') break;
		if (outcome === 'bad') status = 1;
	}
	return status;
}

/** Runs one command line; `argv` is what stands after the program's name. */
export async function run(argv: readonly string[], io: Io): Promise<Status> {
	const call = callOf(argv);
	if (call.kind === 'call') return answerAll(io, call);
	if (call.kind === 'help') {
		const command = call.command === null ? undefined : COMMANDS.get(call.command);
		await io.out(command ? commandHelp(call.command!, command) : programHelp());
		return 0;
	}
	const about = call.command === null ? '' : `${call.command} `;
	await io.err(`solderside: ${oneLine(call.message)}\nHelp: ${PROGRAM} ${about}--help\n`);
	return 2;
}
