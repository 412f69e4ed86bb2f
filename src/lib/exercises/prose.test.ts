/** Set-up text becomes a tree that can hold nothing that executes or loads; the rest is refused. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_PROSE, parseProse, type Block, type Inline } from './prose';

const blocksOf = (markdown: string): Block[] => {
	const parsed = parseProse(markdown);
	if (!parsed.ok) throw new Error(parsed.problem.message);
	return parsed.value;
};
const text = (words: string): Inline => ({ kind: 'text', text: words });

describe('a text', () => {
	it('has paragraphs, with strong, emphasis and code inside', () =>
		expect(blocksOf('Seat the **TS _plug_**.\nRead `TN`.')).toEqual([
			{
				kind: 'paragraph',
				inline: [
					text('Seat the '),
					{ kind: 'strong', inline: [text('TS '), { kind: 'em', inline: [text('plug')] }] },
					text('. Read '),
					{ kind: 'code', text: 'TN' },
					text('.')
				]
			}
		]));
	it('has lists, nested too, and blocks of code', () =>
		expect(blocksOf('1. one\n   - two\n\n```js\nalert(1)\n```')).toEqual([
			{
				kind: 'list',
				ordered: true,
				items: [
					[
						{ kind: 'paragraph', inline: [text('one')] },
						{
							kind: 'list',
							ordered: false,
							items: [[{ kind: 'paragraph', inline: [text('two')] }]]
						}
					]
				]
			},
			{ kind: 'code', text: 'alert(1)' }
		]));
	it('keeps what looks like markup inside code as plain characters', () =>
		expect(blocksOf('`<b>`')).toEqual([
			{ kind: 'paragraph', inline: [{ kind: 'code', text: '<b>' }] }
		]));
	it.each([
		['raw HTML in a line', 'a <b>bold</b> word', 'html'],
		['a raw HTML block', '<script>alert(1)</script>', 'html'],
		['a comment', '<!-- x -->', 'html'],
		['a link', '[here](https://example.org)', 'link'],
		['a script link', '[here](javascript:alert(1))', 'link'],
		['a bare address', 'see https://example.org', 'link'],
		['an address in brackets', '<https://example.org>', 'link'],
		['an image', '![x](x.png)', 'image'],
		['a definition', 'word\n\n[x]: https://example.org', 'definition'],
		['a link in a list', '- a\n- **[b](c)**', 'link'],
		['HTML in a nested list', '- a\n  - <img src=x onerror=alert(1)>', 'html'],
		['a heading', '# Title', 'heading'],
		['a table', '| a |\n| - |\n| b |', 'table'],
		['a quotation', '> a', 'blockquote'],
		['a rule', 'a\n\n---', 'hr'],
		['a hard break', 'a  \nb', 'br'],
		['struck text', '~~a~~', 'del'],
		['a task', '- [ ] a', 'list_item'],
		['nothing', ' \n', 'empty']
	])('with %s is refused', (_, markdown, word) => {
		const parsed = parseProse(markdown);
		expect(parsed.ok).toBe(false);
		if (!parsed.ok) expect(parsed.problem.message).toContain(word);
	});
	it('that is too long is refused', () =>
		expect(parseProse('x'.repeat(MOST_PROSE + 1)).ok).toBe(false));

	it('of any kind is refused or holds nothing but the known kinds', () => {
		const piece = fc.oneof(
			fc.string(),
			fc.constantFrom(
				'<a href=x>',
				'</a>',
				'[',
				'](',
				')',
				'![',
				'\n- ',
				'\n\n',
				'`',
				'**',
				'_',
				'<!--'
			)
		);
		const isTree = (value: unknown): boolean =>
			Array.isArray(value)
				? value.every(isTree)
				: typeof value !== 'object' ||
					value === null ||
					(['paragraph', 'list', 'code', 'text', 'strong', 'em'].includes(
						(value as { kind: string }).kind
					) &&
						Object.entries(value).every(
							([key, inner]) =>
								['kind', 'text', 'inline', 'ordered', 'items'].includes(key) && isTree(inner)
						));
		fc.assert(
			fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
				const parsed = parseProse(pieces.join(''));
				expect(!parsed.ok || isTree(parsed.value)).toBe(true);
			}),
			{ numRuns: 1000 }
		);
	});
});
