import { describe, expect, it } from 'vitest';
import { MOST_PROGRESS, makeProgress } from './progress';
import { progressFileName, readProgressFile } from './progressFile';
import { tried } from './progress.testing';

const fileOf = (...parts: BlobPart[]) => new File(parts, 'x.json');

describe('a progress file on disk', () => {
	it('is named after the day', () => {
		expect(progressFileName(new Date(2031, 4, 6, 23, 59))).toBe(
			'solderside-progress-2031-05-06.json'
		);
	});
	it('is read back', async () => {
		const all = [tried(), tried({ exercise: 'zwei' })];
		expect(await readProgressFile(fileOf(makeProgress(all)))).toEqual({ ok: true, value: all });
	});
	it('is refused when it is not UTF-8, too large, or cannot be read', async () => {
		const messages = [];
		const huge = { size: MOST_PROGRESS + 1 } as File;
		const gone = { size: 1, arrayBuffer: () => Promise.reject(new Error('gone')) } as File;
		for (const file of [fileOf(new Uint8Array([0xff])), huge, gone]) {
			const read = await readProgressFile(file);
			messages.push(read.ok ? 'read' : read.problem.message);
		}
		expect(messages).toEqual([
			expect.stringContaining('not UTF-8'),
			expect.stringContaining('32 MiB'),
			expect.stringContaining('could not be read')
		]);
	});
});
