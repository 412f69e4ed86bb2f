/**
 * The set-up text of an exercise: Markdown read into a small tree of our own, which has no place for
 * anything that executes or loads. What the tree does not know (raw HTML, links, images, headings,
 * tables, …) is refused rather than dropped, so that an author hears of it.
 */
import { Marked, type Token, type Tokens } from 'marked';
import type { Parsed } from '../engine';

export type Inline =
	| { readonly kind: 'text'; readonly text: string }
	| { readonly kind: 'code'; readonly text: string }
	| { readonly kind: 'strong' | 'em'; readonly inline: readonly Inline[] };
export type Block =
	| { readonly kind: 'paragraph'; readonly inline: readonly Inline[] }
	| {
			readonly kind: 'list';
			readonly ordered: boolean;
			readonly items: readonly (readonly Block[])[];
	  }
	| { readonly kind: 'code'; readonly text: string };

/** Longest text of one exercise, in characters. */
export const MOST_PROSE = 20_000;

// An instance of our own: nobody else's `marked.use` can add a kind of token to it.
const reader = new Marked({ gfm: true });

class Refused extends Error {}

function refuse(token: Token): never {
	const start = token.raw.replace(/\s+/g, ' ').trim().slice(0, 40);
	throw new Refused(
		`${token.type} is not taken ("${start}"); write paragraphs, lists, strong, em and code only`
	);
}

function inlineOf(token: Token): Inline {
	const inside = () => inlinesOf((token as Tokens.Strong).tokens);
	switch (token.type) {
		case 'text':
			if ('tokens' in token && token.tokens) refuse(token);
			return { kind: 'text', text: token.text.replace(/\s+/g, ' ') };
		case 'escape':
			return { kind: 'text', text: token.text };
		case 'codespan':
			return { kind: 'code', text: token.text };
		case 'strong':
			return { kind: 'strong', inline: inside() };
		case 'em':
			return { kind: 'em', inline: inside() };
		default:
			return refuse(token);
	}
}
const inlinesOf = (tokens: readonly Token[]): Inline[] => tokens.map(inlineOf);

function listOf(token: Tokens.List): Block {
	const items = token.items.map((item) => {
		if (item.task) refuse(item);
		return blocksOf(item.tokens);
	});
	return { kind: 'list', ordered: token.ordered, items };
}

function blockOf(token: Token): Block[] {
	switch (token.type) {
		case 'space':
			return [];
		case 'paragraph':
			return [{ kind: 'paragraph', inline: inlinesOf(token.tokens ?? refuse(token)) }];
		// The text of a tight list item stands without a paragraph around it.
		case 'text':
			return [{ kind: 'paragraph', inline: inlinesOf(token.tokens ?? refuse(token)) }];
		case 'list':
			return [listOf(token as Tokens.List)];
		case 'code':
			return [{ kind: 'code', text: token.text }];
		default:
			return refuse(token);
	}
}
const blocksOf = (tokens: readonly Token[]): Block[] => tokens.flatMap(blockOf);

/** Markdown to blocks, or what in it is refused. Never throws. */
export function parseProse(markdown: string): Parsed<Block[]> {
	const bad = (message: string): Parsed<never> => ({
		ok: false,
		problem: { path: 'text.md', message }
	});
	if (markdown.length > MOST_PROSE)
		return bad(`the text is too long; at most ${MOST_PROSE} characters fit`);
	try {
		const tokens = reader.lexer(markdown);
		const definition = Object.keys(tokens.links)[0];
		if (definition !== undefined) return bad(`a link definition ("${definition}") is not taken`);
		const blocks = blocksOf(tokens);
		return blocks.length > 0 ? { ok: true, value: blocks } : bad('the text is empty');
	} catch (error) {
		if (error instanceof Refused) return bad(error.message);
		return bad('the text cannot be read as Markdown');
	}
}
