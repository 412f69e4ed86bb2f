/** Tries as a file: saved through a download, opened through the browser's file chooser. */
import type { Parsed } from '../engine/parse';
import { MOST_PROGRESS, makeProgress, parseProgress, type Attempt } from './progress';

/** Time for a slow browser to take the file before its address is given back, ms. */
const HAND_OVER = 30_000;

const bad = (message: string): Parsed<never> => ({ ok: false, problem: { path: '$', message } });

/** A file name with the day, local time: `solderside-progress-2031-05-06.json`. */
export function progressFileName(now: Date): string {
	const two = (n: number) => String(n).padStart(2, '0');
	const day = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
	return `solderside-progress-${day}.json`;
}

/** Offers the tries to the person as a file. In a browser only. */
export function downloadProgress(attempts: readonly Attempt[], now: Date): void {
	const blob = new Blob([makeProgress(attempts)], { type: 'application/json' });
	const address = URL.createObjectURL(blob);
	const anchor = document.createElement('a');
	anchor.href = address;
	anchor.download = progressFileName(now);
	document.body.append(anchor);
	anchor.click();
	anchor.remove();
	setTimeout(() => URL.revokeObjectURL(address), HAND_OVER);
}

/** The tries in a file, or what is wrong with it. The size is looked at before anything is read. Never rejects. */
export async function readProgressFile(file: File): Promise<Parsed<Attempt[]>> {
	if (file.size > MOST_PROGRESS)
		return bad(`the file has ${file.size} bytes; at most ${MOST_PROGRESS} (32 MiB) are read`);
	let bytes;
	try {
		bytes = await file.arrayBuffer();
	} catch {
		return bad('the file could not be read; it may have been moved or changed. Choose it again');
	}
	try {
		return parseProgress(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
	} catch {
		return bad('the file is not UTF-8 text; a progress file is one JSON object in UTF-8');
	}
}
