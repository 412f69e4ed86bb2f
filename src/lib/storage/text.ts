/** Plain text in and out: a file that a person chose, and a file that a person is given. */
import { MOST_BYTES } from '../engine/bench';
import type { Parsed } from '../engine/parse';

/** Time for a slow browser to take the file before its address is given back, ms. */
const HAND_OVER = 30_000;
const bad = (message: string): Parsed<never> => ({ ok: false, problem: { path: '$', message } });

/** Offers the blob to the person as a file of that name. In a browser only. */
export function download(blob: Blob, name: string): void {
	const address = URL.createObjectURL(blob);
	const anchor = document.createElement('a');
	anchor.href = address;
	anchor.download = name;
	document.body.append(anchor);
	anchor.click();
	anchor.remove();
	setTimeout(() => URL.revokeObjectURL(address), HAND_OVER);
}

/** Offers the table as a file; the byte order mark tells spreadsheets that it is UTF-8. */
export const downloadCsv = (text: string, name: string): void =>
	download(new Blob(['\uFEFF', text], { type: 'text/csv;charset=utf-8' }), name);

/**
 * The text of a file, or what is wrong with it. The size is looked at before anything is read.
 * `what`: what the file should be, for the message. Never rejects.
 */
export async function readTextFile(file: File, what: string): Promise<Parsed<string>> {
	if (file.size > MOST_BYTES)
		return bad(`the file has ${file.size} bytes; at most ${MOST_BYTES} (1 MiB) fit`);
	let bytes;
	try {
		bytes = await file.arrayBuffer();
	} catch {
		return bad('the file could not be read; it may have been moved or changed. Choose it again');
	}
	try {
		return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
	} catch {
		return bad(`the file is not UTF-8 text; ${what} in UTF-8`);
	}
}
