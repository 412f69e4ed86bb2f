/** Comma-separated text: RFC 4180 row by row, and nothing that a spreadsheet would work out. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guardField, makeCsv, parseCsv, unguardField } from '.';

const rows = (text: string) => {
	const read = parseCsv(text);
	if (!read.ok) throw new Error(JSON.stringify(read.problems));
	return read.rows.map((r) => r.fields);
};
const problems = (text: string) => {
	const read = parseCsv(text);
	return read.ok ? [] : read.problems.map((p) => `${p.line}: ${p.message}`);
};

describe('reading', () => {
	// RFC 4180, section 2, the numbered definitions.
	const TABLE: [what: string, text: string, right: string[][]][] = [
		[
			'2.1 each record on a line',
			'aaa,bbb\r\nzzz,yyy\r\n',
			[
				['aaa', 'bbb'],
				['zzz', 'yyy']
			]
		],
		[
			'2.2 the last line end may be missing',
			'aaa,bbb\r\nzzz,yyy',
			[
				['aaa', 'bbb'],
				['zzz', 'yyy']
			]
		],
		['2.4 spaces are part of a field', 'a , b', [['a ', ' b']]],
		['2.5 quotation marks may stand round a field', '"aaa","bbb"', [['aaa', 'bbb']]],
		[
			'2.6 line ends and commas in quotation marks',
			'"aaa","b \r\nbb","c,c"',
			[['aaa', 'b \r\nbb', 'c,c']]
		],
		['2.7 a doubled quotation mark is one', '"aaa","b""bb","c"', [['aaa', 'b"bb', 'c']]],
		[
			'LF alone',
			'a,b\nc,d\n',
			[
				['a', 'b'],
				['c', 'd']
			]
		],
		['a byte order mark', '\uFEFFa,b', [['a', 'b']]],
		['empty fields', ',a,\n"",,', [['', 'a', '']]],
		['empty lines are passed over', 'a\n\n,,\r\n \nb', [['a'], ['b']]],
		['nothing at all', '', []]
	];
	it.each(TABLE)('%s', (_, text, right) => expect(rows(text)).toEqual(right));

	it('a row knows the line on which it begins', () => {
		const read = parseCsv('a\n"b\nb\nb"\nc\r\n\r\nd');
		expect(read.ok && read.rows.map((r) => r.line)).toEqual([1, 2, 5, 7]);
	});
	it.each([
		['a\n"b\nc', '2: a quotation mark is opened here and never closed'],
		['a\nb"c"', '2: a quotation mark stands inside a field'],
		['"a"b,c', '1: text stands after a closing quotation mark'],
		['a,b\rc,d', '1: the line ends with CR alone']
	])('%j is wrong', (text, right) => expect(problems(text)[0]!.startsWith(right)).toBe(true));
	it('every fault is told, not the first alone', () => {
		expect(problems('a"\nb\nc"\n"d"e').map((p) => p[0])).toEqual(['1', '3', '4']);
	});
});

describe('writing', () => {
	it('quotes what needs it, and ends every line with CRLF', () => {
		expect(
			makeCsv([
				['a', 'b,c', 'd"e', 1],
				['f\ng', '', ' h', 'i;j']
			])
		).toBe('a,"b,c","d""e",1\r\n"f\ng",," h","i;j"\r\n');
	});
	it.each(['=1+1', '+1', '-1', '@x', '\t=1', '\r1', ' =1', '=cmd|x', "'=1", '＝1', '－1'])(
		'%j is no formula any more',
		(field) => {
			expect(guardField(field)[0]).toBe("'");
			expect(unguardField(guardField(field))).toBe(field);
		}
	);
	it.each(['A', "don't", "'quoted'", '1N', 'a=b', '40', ''])('%j stays as it is', (field) => {
		expect(guardField(field)).toBe(field);
		expect(unguardField(field)).toBe(field);
	});
});

describe('any table', () => {
	const field = fc.oneof(
		fc.string({ unit: 'binary', maxLength: 6 }),
		fc.string({ unit: fc.constantFrom(...'=+-@\'",;\r\n\t ab1'), maxLength: 6 })
	);
	const table = fc.array(fc.array(field, { minLength: 1, maxLength: 5 }), { maxLength: 6 });
	it('comes back as it went out, but for rows with nothing in them', () => {
		fc.assert(
			fc.property(table, (all) => {
				const filled = all.filter((row) => row.some((f) => f.trim() !== ''));
				expect(rows(makeCsv(all))).toEqual(filled);
			}),
			{ numRuns: 2000 }
		);
	});
	it('has no cell that begins like a formula', () => {
		fc.assert(
			fc.property(field, (f) => {
				expect(guardField(f)).not.toMatch(/^[=+\-@\t\r]/);
			}),
			{ numRuns: 2000 }
		);
	});
	it('any text is read or refused, never thrown', () => {
		fc.assert(
			fc.property(fc.string({ unit: fc.constantFrom(...'",\r\na'), maxLength: 20 }), (text) => {
				const read = parseCsv(text);
				if (!read.ok) expect(read.problems.length).toBeGreaterThan(0);
			}),
			{ numRuns: 2000 }
		);
	});
});
