import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { EMPTY_BENCH, MOST_BYTES, type Bench } from '../engine/bench';
import { makeBench, parseBench } from '../engine/parse';
import { benches } from './benches.testing';
import { downloadBench, fileNameOf, readBenchFile } from './file';

const title = (text: string): Bench => ({ ...EMPTY_BENCH, title: text });
const fileOfBytes = (content: BlobPart): File => new File([content], 'any.bench.json');
const SMALL = '{"format":"solderside-bench","version":1,"title":"Stage"}';

describe('the name of a bench file', () => {
	test.each([
		['Stage box, left', 'stage-box-left.bench.json'],
		['', 'bench.bench.json'],
		['  --  ', 'bench.bench.json'],
		['../../etc/passwd', 'etc-passwd.bench.json'],
		['C:\\a*b?"c"<d>|e', 'c-a-b-c-d-e.bench.json'],
		['.hidden', 'hidden.bench.json'],
		['Bühne links', 'bühne-links.bench.json'],
		['舞台', '舞台.bench.json'],
		['CON', 'bench-con.bench.json'],
		['lpt1', 'bench-lpt1.bench.json'],
		['left\u202Egnp.exe', 'left-gnp-exe.bench.json'],
		['a'.repeat(500), `${'a'.repeat(60)}.bench.json`],
		[`${'a'.repeat(59)} b`, `${'a'.repeat(59)}.bench.json`]
	])('of %j is %j', (words, name) => {
		expect(fileNameOf(title(words))).toBe(name);
	});

	test('is safe on every system, whatever the title', () => {
		const any = fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }));
		fc.assert(
			fc.property(any, (words) => {
				const name = fileNameOf(title(words));
				expect(name).toMatch(/^[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N}-]*\.bench\.json$/u);
				expect(Buffer.byteLength(name)).toBeLessThanOrEqual(255);
			}),
			{ numRuns: 1000 }
		);
	});
});

describe('a bench file that is opened', () => {
	test('gives back every bench that was saved', async () => {
		await fc.assert(
			fc.asyncProperty(benches, async (bench) => {
				const parsed = await readBenchFile(fileOfBytes(makeBench(bench)));
				expect(parsed).toEqual({ ok: true, value: bench });
			}),
			{ numRuns: 300 }
		);
	});

	test('may begin with a byte order mark', async () => {
		expect(await readBenchFile(fileOfBytes(`\uFEFF${SMALL}`))).toMatchObject({ ok: true });
	});

	test('is not read at all when it is over 1 MiB', async () => {
		const file = fileOfBytes(' '.repeat(MOST_BYTES + 1));
		const reading = vi.spyOn(file, 'arrayBuffer');
		const parsed = await readBenchFile(file);
		expect(parsed).toMatchObject({ ok: false, problem: { path: '$' } });
		expect(!parsed.ok && parsed.problem.message).toMatch(/1048577 bytes; at most 1048576/);
		expect(reading).not.toHaveBeenCalled();
		expect(await readBenchFile(fileOfBytes(SMALL.padEnd(MOST_BYTES)))).toMatchObject({ ok: true });
	});

	test.each([
		['bytes that are not UTF-8', Uint8Array.of(0x7b, 0xff, 0x7d), /not UTF-8/],
		['UTF-16', Uint8Array.of(0xff, 0xfe, 0x7b, 0, 0x7d, 0), /not UTF-8/],
		['nothing', '', /not JSON/],
		['a number', '3', /should be a bench/]
	])('is refused for %s', async (_, content, message) => {
		const parsed = await readBenchFile(fileOfBytes(content));
		expect(parsed).toMatchObject({ ok: false, problem: { path: '$' } });
		expect(!parsed.ok && parsed.problem.message).toMatch(message);
	});

	test('that is gone is a problem, not an exception', async () => {
		const file = fileOfBytes(SMALL);
		vi.spyOn(file, 'arrayBuffer').mockRejectedValue(new DOMException('gone', 'NotFoundError'));
		const parsed = await readBenchFile(file);
		expect(!parsed.ok && parsed.problem.message).toMatch(/could not be read.*again/);
	});
});

describe('a bench that is saved as a file', () => {
	afterEach(() => {
		vi.unstubAllGlobals();
		vi.restoreAllMocks();
		vi.useRealTimers();
	});

	test('is offered once under its name, and its address is given back later', async () => {
		vi.useFakeTimers();
		const anchor = { href: '', download: '', click: vi.fn(), remove: vi.fn() };
		vi.stubGlobal('document', { createElement: () => anchor, body: { append: vi.fn() } });
		const blobs: Blob[] = [];
		vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
			blobs.push(blob as Blob);
			return 'blob:one';
		});
		const revoked = vi.spyOn(URL, 'revokeObjectURL').mockReturnValue();
		downloadBench(title('Stage box'));
		expect(anchor).toMatchObject({ href: 'blob:one', download: 'stage-box.bench.json' });
		expect(anchor.click).toHaveBeenCalledOnce();
		expect(anchor.remove).toHaveBeenCalledOnce();
		expect(blobs).toHaveLength(1);
		expect(parseBench(await blobs[0]!.text())).toEqual({ ok: true, value: title('Stage box') });
		expect(revoked).not.toHaveBeenCalled();
		vi.runAllTimers();
		expect(revoked).toHaveBeenCalledExactlyOnceWith('blob:one');
	});
});
