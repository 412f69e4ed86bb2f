/** A bench as a file: saved through a download, opened through the browser's file chooser. */
import type { Bench } from '../engine/bench';
import { makeBench, parseBench, type Parsed } from '../engine/parse';
import { download, readTextFile } from './text';

/** Ends the name of every bench file. */
export const FILE_END = '.bench.json';
const LONGEST_NAME = 60;
/** Names that Windows keeps for devices, whatever their ending. */
const DEVICE_NAME = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** A file name from the title: letters and digits of any script, joined by `-`; `bench` if there are none. */
export function fileNameOf(bench: Bench): string {
	const words = bench.title.normalize('NFC').toLowerCase();
	const slug = words.replace(/[^\p{L}\p{M}\p{N}]+/gu, '-').replace(/^-/, '');
	const short = [...slug].slice(0, LONGEST_NAME).join('').replace(/-$/, '');
	const safe = DEVICE_NAME.test(short) ? `bench-${short}` : short;
	return `${safe || 'bench'}${FILE_END}`;
}

/** Offers the bench to the person as a file. In a browser only. */
export const downloadBench = (bench: Bench): void =>
	download(new Blob([makeBench(bench)], { type: 'application/json' }), fileNameOf(bench));

/** The bench in a file, or what is wrong with it. The size is looked at before anything is read. Never rejects. */
export async function readBenchFile(file: File): Promise<Parsed<Bench>> {
	const text = await readTextFile(file, 'a bench file is one JSON object');
	return text.ok ? parseBench(text.value) : text;
}
