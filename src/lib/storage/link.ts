/**
 * A bench in a link: `#bench=` and the bench file without spaces, deflated (RFC 1951) and written
 * in base64url (RFC 4648, section 5) without padding. A fragment never leaves the reader's machine:
 * no server sees it. What comes in is a stranger's text, so it is inflated a little at a time and
 * dropped as soon as it grows over the limit, and the result goes through `checkBench` like any file.
 */
import type { Bench } from '../engine/bench';
import { fileOf, parseBench, quote, type Parsed } from '../engine/parse';

export const LINK_START = '#bench=';
/** Longest fragment, in characters, `#bench=` included (16 kB). */
export const MOST_LINK = 16_384;
/** Longest bench inside a link, in bytes of JSON (256 kB). */
export const MOST_INFLATED = 262_144;
/** Deflate grows at most about 1032-fold, so a slice of 256 bytes overshoots by one limit at most. */
const SLICE = 256;

type Bytes = Uint8Array<ArrayBuffer>;

const bad = (message: string): Parsed<never> => ({ ok: false, problem: { path: '#', message } });

/** Whether the fragment (with its `#`) claims to carry a bench. */
export const isBenchLink = (fragment: string): boolean => fragment.startsWith(LINK_START);

/** The bytes in slices, the next one only when it is asked for. */
function sliced(bytes: Bytes): ReadableStream<Bytes> {
	let at = 0;
	return new ReadableStream<Bytes>(
		{
			pull(controller) {
				if (at >= bytes.length) return controller.close();
				controller.enqueue(bytes.subarray(at, at + SLICE));
				at += SLICE;
			}
		},
		{ highWaterMark: 0 }
	);
}

/** Reads to the end; null, and no further reading, once there are more than `most` bytes. */
async function collect(stream: ReadableStream<Uint8Array>, most: number): Promise<Bytes | null> {
	const reader = stream.getReader();
	const parts: Uint8Array[] = [];
	let length = 0;
	for (;;) {
		const { done, value } = await reader.read();
		if (done) break;
		length += value.length;
		if (length > most) {
			reader.cancel().catch(() => {});
			return null;
		}
		parts.push(value);
	}
	const all = new Uint8Array(length);
	let at = 0;
	for (const part of parts) {
		all.set(part, at);
		at += part.length;
	}
	return all;
}

const deflate = async (bytes: Bytes): Promise<Bytes> =>
	(await collect(sliced(bytes).pipeThrough(new CompressionStream('deflate-raw')), Infinity))!;

/** Inflated bytes; null if there are more than `MOST_INFLATED`. Rejects where the data is no whole stream. */
const inflate = (bytes: Bytes): Promise<Bytes | null> =>
	collect(sliced(bytes).pipeThrough(new DecompressionStream('deflate-raw')), MOST_INFLATED);

/**
 * Whether something follows the end of a stream that inflates. Browsers refuse that by themselves,
 * Node 20 does not; but there the same stream less one byte is still whole.
 */
const hasMore = (bytes: Bytes): Promise<boolean> =>
	inflate(bytes.subarray(0, -1)).then(
		() => true,
		() => false
	);

function makeBase64url(bytes: Bytes): string {
	const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
	return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** Throws where base64 has no text of that length. */
function parseBase64url(text: string): Parsed<Bytes> {
	const strange = /[^A-Za-z0-9_-]/u.exec(text);
	if (strange)
		return bad(
			`${quote(strange[0])} stands in the link, ${strange.index + 1} places after ${LINK_START}; only letters, digits, - and _ belong there`
		);
	const whole = text.replaceAll('-', '+').replaceAll('_', '/');
	const bytes = Uint8Array.from(atob(whole), (character) => character.charCodeAt(0));
	// Spare bits in the last character must be zero, so that a bench has one spelling only.
	return makeBase64url(bytes) === text ? { ok: true, value: bytes } : bad(DAMAGED);
}

const DAMAGED = `the bench in this link is cut short, was changed, or has something after its end; copy the whole link again, from ${LINK_START} to its last character`;

/** A bench as a fragment for a link, `#` first; refused where it would be too long. Never rejects. */
export async function makeFragment(bench: Bench): Promise<Parsed<string>> {
	const json = new TextEncoder().encode(JSON.stringify(fileOf(bench)));
	if (json.length > MOST_INFLATED)
		return bad(
			`this bench has ${json.length} bytes; a link carries at most ${MOST_INFLATED} (256 kB). Save it as a file instead`
		);
	const fragment = LINK_START + makeBase64url(await deflate(json));
	if (fragment.length > MOST_LINK)
		return bad(
			`the link would have ${fragment.length} characters; at most ${MOST_LINK} (16 kB) travel safely. Save the bench as a file instead`
		);
	return { ok: true, value: fragment };
}

async function parseLink(fragment: string): Promise<Parsed<Bench>> {
	if (fragment.length > MOST_LINK)
		return bad(
			`the link has ${fragment.length} characters; at most ${MOST_LINK} (16 kB) are read. A bench of that size comes as a file`
		);
	const packed = parseBase64url(fragment.slice(LINK_START.length));
	if (!packed.ok) return packed;
	const json = await inflate(packed.value);
	if (!json)
		return bad(
			`the bench in this link has more than ${MOST_INFLATED} bytes (256 kB); a bench of that size comes as a file`
		);
	if (await hasMore(packed.value)) return bad(DAMAGED);
	let text;
	try {
		text = new TextDecoder('utf-8', { fatal: true }).decode(json);
	} catch {
		return bad('the bench in this link is not UTF-8 text; make the link again from the bench');
	}
	return parseBench(text);
}

/**
 * The bench in `location.hash`, or what is wrong with it: path `#` for the link itself, otherwise
 * the path in the bench. Null for a fragment that is no bench link (`''`, `#main`). Never rejects.
 */
export async function parseFragment(fragment: string): Promise<Parsed<Bench> | null> {
	if (!isBenchLink(fragment)) return null;
	return parseLink(fragment).catch(() => bad(DAMAGED));
}
