/**
 * What the headless program needs of the world: reading a file up to a limit, and two places to
 * write to. Node's side of it stands here; tests bring their own. Relative names count from where
 * the person stands: npm starts a script in the project's folder and keeps the person's own in
 * INIT_CWD (npm documentation, "npm run").
 */
import { createReadStream } from 'node:fs';
import { resolve } from 'node:path';

export interface Io {
	/** The file's bytes, `-` being standard input; stops after `most` + 1 bytes. Rejects as Node does. */
	readonly read: (file: string, most: number) => Promise<Uint8Array>;
	/** Writes to standard output; false once nobody reads it any more. Rejects if it cannot be written. */
	readonly out: (text: string) => Promise<boolean>;
	/** Writes to standard error; never fails. */
	readonly err: (text: string) => Promise<void>;
}

/** The folder that relative file names count from. */
const standingIn = (env: NodeJS.ProcessEnv): string =>
	(env.npm_lifecycle_event === 'solderside' && env.INIT_CWD) || process.cwd();

async function read(file: string, most: number): Promise<Uint8Array> {
	if (file === '') throw Object.assign(new Error('no such file'), { code: 'ENOENT' });
	const path = resolve(standingIn(process.env), file);
	const stream = file === '-' ? process.stdin : createReadStream(path, { end: most });
	const chunks: Buffer[] = [];
	let bytes = 0;
	for await (const chunk of stream as AsyncIterable<Buffer>) {
		chunks.push(chunk);
		bytes += chunk.length;
		if (bytes > most) break;
	}
	return Buffer.concat(chunks).subarray(0, most + 1);
}

/** Writes all of the text before it settles, so that a pipe gets every byte. */
const written = (stream: NodeJS.WriteStream, text: string): Promise<void> =>
	new Promise((settle, refuse) => {
		stream.write(text, (error) => (error ? refuse(error) : settle()));
	});

/** Codes that say the reader has gone: `… | head -1` is no error. */
const GONE = ['EPIPE', 'ERR_STREAM_DESTROYED', 'ECONNRESET'];

/** The real thing, on this process's streams. */
export function nodeIo(): Io {
	// Errors reach the caller of `written`; without a listener they would end the program as well.
	for (const stream of [process.stdout, process.stderr]) stream.on('error', () => {});
	return {
		read,
		async out(text) {
			try {
				await written(process.stdout, text);
				return true;
			} catch (error) {
				if (GONE.includes((error as NodeJS.ErrnoException).code ?? '')) return false;
				throw error;
			}
		},
		err: (text) => written(process.stderr, text).catch(() => {})
	};
}
