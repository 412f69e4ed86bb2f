/** A bench as a file: saved through a download, opened through the browser's file chooser. */
import { MOST_BYTES, type Bench } from '../engine/bench';
import { makeBench, parseBench, type Parsed } from '../engine/parse';

/** Ends the name of every bench file. */
export const FILE_END = '.bench.json';
const LONGEST_NAME = 60;
/** Time for a slow browser to take the file before its address is given back, ms. */
const HAND_OVER = 30_000;
/** Names that Windows keeps for devices, whatever their ending. */
const DEVICE_NAME = /^(con|prn|aux|nul|com\d|lpt\d)$/;

const bad = (message: string): Parsed<never> => ({ ok: false, problem: { path: '$', message } });

/** A file name from the title: letters and digits of any script, joined by `-`; `bench` if there are none. */
export function fileNameOf(bench: Bench): string {
	const words = bench.title.normalize('NFC').toLowerCase();
	const slug = words.replace(/[^\p{L}\p{M}\p{N}]+/gu, '-').replace(/^-/, '');
	const short = [...slug].slice(0, LONGEST_NAME).join('').replace(/-$/, '');
	const safe = DEVICE_NAME.test(short) ? `bench-${short}` : short;
	return `${safe || 'bench'}${FILE_END}`;
}

/** Offers the bench to the person as a file. In a browser only. */
export function downloadBench(bench: Bench): void {
	const address = URL.createObjectURL(new Blob([makeBench(bench)], { type: 'application/json' }));
	const anchor = document.createElement('a');
	anchor.href = address;
	anchor.download = fileNameOf(bench);
	document.body.append(anchor);
	anchor.click();
	anchor.remove();
	setTimeout(() => URL.revokeObjectURL(address), HAND_OVER);
}

/** The bench in a file, or what is wrong with it. The size is looked at before anything is read. Never rejects. */
export async function readBenchFile(file: File): Promise<Parsed<Bench>> {
	if (file.size > MOST_BYTES)
		return bad(`the file has ${file.size} bytes; at most ${MOST_BYTES} (1 MiB) fit`);
	let bytes;
	try {
		bytes = await file.arrayBuffer();
	} catch {
		return bad('the file could not be read; it may have been moved or changed. Choose it again');
	}
	let text;
	try {
		text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
	} catch {
		return bad('the file is not UTF-8 text; a bench file is one JSON object in UTF-8');
	}
	return parseBench(text);
}
