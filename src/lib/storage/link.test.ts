import fc from 'fast-check';
import { randomBytes } from 'node:crypto';
import { deflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { EMPTY_BENCH, type Bench } from '../engine/bench';
import { checkBench, fileOf, type Parsed } from '../engine/parse';
import { benches } from './benches.testing';
import { LINK_START, MOST_INFLATED, MOST_LINK, makeFragment, parseFragment } from './link';

/** A link made by other hands than `makeFragment`: Node's own deflate and base64url. */
const linkOf = (content: string | Uint8Array): string =>
	LINK_START + deflateRawSync(content).toString('base64url');
const SMALL = '{"format":"solderside-bench","version":1,"title":"Stage"}';

async function problemOf(fragment: string) {
	const parsed = await parseFragment(fragment);
	if (!parsed || parsed.ok) throw new Error('no problem was found');
	return parsed.problem;
}
async function fragmentOf(bench: Bench): Promise<string> {
	const made = await makeFragment(bench);
	if (!made.ok) throw new Error(made.problem.message);
	return made.value;
}
const expectSound = (parsed: Parsed<Bench> | null): void => {
	if (parsed?.ok) expect(checkBench(fileOf(parsed.value)).ok).toBe(true);
	else if (parsed) expect(parsed.problem.path).toMatch(/^[#$]/);
};
const title = (text: string): Bench => ({ ...EMPTY_BENCH, title: text });
const sockets = (many: number): Bench => ({
	...EMPTY_BENCH,
	sockets: Array.from({ length: many }, (_, i) => ({
		id: `A${i}`,
		kind: 'jack-ts',
		bush: 'insulated',
		label: ''
	}))
});

describe('a link that carries a bench', () => {
	test('gives every bench back as it was', async () => {
		await fc.assert(
			fc.asyncProperty(benches, async (bench) => {
				const made = await makeFragment(bench);
				if (!made.ok) return expect(made.problem.message).toContain('file');
				expect(made.value).toMatch(/^#bench=[A-Za-z0-9_-]+$/);
				expect(made.value.length).toBeLessThanOrEqual(MOST_LINK);
				expect(await parseFragment(made.value)).toEqual({ ok: true, value: bench });
			}),
			{ numRuns: 1000 }
		);
	});

	test('is read by the standards, whoever wrote it', async () => {
		expect(await parseFragment(linkOf(SMALL))).toEqual({ ok: true, value: title('Stage') });
		// "stored" blocks (RFC 1951, 3.2.4) are deflate too
		const stored = deflateRawSync(SMALL, { level: 0 }).toString('base64url');
		expect(await parseFragment(LINK_START + stored)).toEqual({ ok: true, value: title('Stage') });
	});

	test.each(['', '#', '#main', '#bench', '#Bench=x', '#main#bench=x', 'bench=x'])(
		'%j is no bench link',
		async (fragment) => {
			expect(await parseFragment(fragment)).toBeNull();
		}
	);
});

describe('a link is refused kindly', () => {
	test.each([
		['a plus sign', '#bench=ab+d', /"\+" stands in the link, 3 places after #bench=/],
		['a slash', '#bench=/bcd', /"\/" stands in the link, 1 places/],
		['padding', `${linkOf(SMALL)}==`, /"=" stands in the link/],
		['a space', `${linkOf(SMALL)} `, /" " stands in the link/],
		['an emoji', '#bench=🎧', /"🎧" stands in the link, 1 /],
		['nothing after the start', '#bench=', /cut short/],
		['a count of characters that base64 cannot have', '#bench=abcde', /cut short/],
		['a byte that is not UTF-8', linkOf(Uint8Array.of(0x22, 0xff, 0x22)), /not UTF-8/],
		['half a character', linkOf(Uint8Array.of(0x22, 0xe2, 0x82)), /not UTF-8/]
	])('for %s', async (_, fragment, message) => {
		const problem = await problemOf(fragment);
		expect(problem.path).toBe('#');
		expect(problem.message).toMatch(message);
	});

	test('wherever it is cut short', async () => {
		const whole = linkOf(SMALL);
		for (let length = LINK_START.length; length < whole.length; length++)
			expect(await problemOf(whole.slice(0, length)), whole.slice(0, length)).toMatchObject({
				path: '#',
				message: expect.stringContaining('cut short')
			});
	});

	test.each([1, 2, 3, 255, 256, 257, 5000])('with %i bytes after its end', async (many) => {
		for (const tail of [Buffer.alloc(many), Buffer.alloc(many, 0xff), randomBytes(many)]) {
			const bytes = Buffer.concat([deflateRawSync(SMALL), tail]);
			const problem = await problemOf(LINK_START + bytes.toString('base64url'));
			expect(problem).toMatchObject({
				path: '#',
				message: expect.stringContaining('after its end')
			});
		}
	});

	test('with a second bench after its end', async () => {
		const twice = Buffer.concat([deflateRawSync(SMALL), deflateRawSync(SMALL)]);
		expect((await problemOf(LINK_START + twice.toString('base64url'))).path).toBe('#');
	});

	test('with bits set that belong to no byte', async () => {
		// 55 bytes: two bits of the last character are spare
		const link = linkOf(SMALL);
		const spare = (link.length - LINK_START.length) % 4;
		expect(spare).toBeGreaterThan(1);
		const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
		const other = alphabet[alphabet.indexOf(link.at(-1)!) + 1]!;
		expect((await problemOf(link.slice(0, -1) + other)).path).toBe('#');
	});

	test('with the path in the bench where the bench is at fault', async () => {
		const file = { format: 'solderside-bench', version: 1, wires: [{ id: 'w', from: 'A.T' }] };
		expect((await problemOf(linkOf(JSON.stringify(file)))).path).toBe('$.wires[0].to');
		expect((await problemOf(linkOf('3'))).path).toBe('$');
		expect((await problemOf(linkOf('not JSON'))).path).toBe('$');
	});
});

describe('the limits of a link', () => {
	test('16,384 characters are read, one more is refused', async () => {
		const sized = (characters: number): string => {
			// one stored block: 5 bytes, then the JSON, filled up with spaces
			const bytes = Math.floor(((characters - LINK_START.length) * 3) / 4);
			const content = SMALL.padEnd(bytes - 5);
			const link = LINK_START + deflateRawSync(content, { level: 0 }).toString('base64url');
			expect(link).toHaveLength(characters);
			return link;
		};
		// base64 has no text of 16,377 characters, so a sound link ends at one less than the limit
		const most = sized(MOST_LINK - 1);
		expect(await parseFragment(most)).toEqual({ ok: true, value: title('Stage') });
		expect((await problemOf(`${most}A`)).message).toMatch(/cut short/);
		expect((await problemOf(sized(MOST_LINK + 1))).message).toMatch(/has 16385 characters.*file/);
	});

	test('exactly 262,144 bytes are inflated, one more is refused', async () => {
		const most = linkOf(SMALL.padEnd(MOST_INFLATED));
		expect(await parseFragment(most)).toEqual({ ok: true, value: title('Stage') });
		const problem = await problemOf(linkOf(SMALL.padEnd(MOST_INFLATED + 1)));
		expect(problem.path).toBe('#');
		expect(problem.message).toMatch(/more than 262144 bytes.*file/);
	});

	test('a bomb is dropped at the limit: twelve megabytes are never held', async () => {
		const bomb = linkOf(new Uint8Array(12_000_000));
		expect(bomb.length).toBeLessThan(MOST_LINK);
		const read: number[] = [];
		const native = ReadableStreamDefaultReader.prototype.read;
		ReadableStreamDefaultReader.prototype.read = async function (
			this: ReadableStreamDefaultReader
		) {
			const result = await native.call(this);
			if (result.value instanceof Uint8Array) read.push(result.value.length);
			return result;
		} as typeof native;
		try {
			expect((await problemOf(bomb)).message).toMatch(/more than 262144 bytes/);
		} finally {
			ReadableStreamDefaultReader.prototype.read = native;
		}
		const total = read.reduce((sum, n) => sum + n, 0);
		expect(total).toBeGreaterThan(MOST_INFLATED);
		expect(total).toBeLessThan(3 * MOST_INFLATED);
	});

	test('a bench too large to inflate again is not made into a link', async () => {
		const made = await makeFragment(sockets(9000));
		expect(made).toMatchObject({ ok: false, problem: { path: '#' } });
		expect(!made.ok && made.problem.message).toMatch(/at most 262144.*Save it as a file/);
	});

	test('a bench whose link would be too long is not made into one', async () => {
		const noise = Array.from({ length: 12 }, (_, i) => ({
			id: `A${i}`,
			kind: 'jack-ts' as const,
			bush: 'insulated' as const,
			label: randomBytes(750).toString('hex')
		}));
		const made = await makeFragment({ ...EMPTY_BENCH, sockets: noise });
		expect(made.ok).toBe(true);
		const more = noise.concat(
			noise.map((s) => ({ ...s, id: `${s.id}b`, label: `${s.label}`.split('').reverse().join('') }))
		);
		const refused = await makeFragment({ ...EMPTY_BENCH, sockets: more });
		expect(refused).toMatchObject({ ok: false, problem: { path: '#' } });
		expect(!refused.ok && refused.problem.message).toMatch(
			/at most 16384 .*Save the bench as a file/
		);
	});
});

describe('whatever comes in, nothing is thrown and only a sound bench comes out', () => {
	test('random text', async () => {
		const characters = fc.string({ unit: 'binary', maxLength: 200 });
		await fc.assert(
			fc.asyncProperty(characters, async (text) =>
				expectSound(await parseFragment(LINK_START + text))
			),
			{ numRuns: 1000 }
		);
	});

	test('random bytes, and random bytes deflated', async () => {
		await fc.assert(
			fc.asyncProperty(fc.uint8Array({ maxLength: 600 }), async (bytes) => {
				const raw = LINK_START + Buffer.from(bytes).toString('base64url');
				expectSound(await parseFragment(raw));
				expectSound(await parseFragment(linkOf(bytes)));
			}),
			{ numRuns: 1000 }
		);
	});

	test('a good link with characters changed, dropped, added', async () => {
		const edit = fc.record({
			at: fc.nat(),
			drop: fc.nat(3),
			add: fc.string({ unit: fc.constantFrom(...'ABCXYZabcxyz0189-_'), maxLength: 3 })
		});
		await fc.assert(
			fc.asyncProperty(
				benches,
				fc.array(edit, { minLength: 1, maxLength: 3 }),
				async (b, edits) => {
					let text = (await fragmentOf(b)).slice(LINK_START.length);
					for (const { at, drop, add } of edits) {
						const place = at % (text.length + 1);
						text = text.slice(0, place) + add + text.slice(place + drop);
					}
					expectSound(await parseFragment(LINK_START + text));
				}
			),
			{ numRuns: 1000 }
		);
	});

	test('a good file with bytes changed', async () => {
		const edit = fc.record({ at: fc.nat(), to: fc.integer({ min: 0, max: 255 }) });
		await fc.assert(
			fc.asyncProperty(
				benches,
				fc.array(edit, { minLength: 1, maxLength: 3 }),
				async (b, edits) => {
					const bytes = Buffer.from(JSON.stringify(fileOf(b)));
					for (const { at, to } of edits) bytes[at % bytes.length] = to;
					expectSound(await parseFragment(linkOf(bytes)));
				}
			),
			{ numRuns: 1000 }
		);
	});
});
