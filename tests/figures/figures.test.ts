/**
 * Figures as files: every socket kind with every plug that fits, at home and at every event of its
 * travel. A change of the drawing shows as a change of these files; `npx vitest run tests/figures -u`
 * writes them anew, and a person looks at what has changed.
 */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { NOTHING_LIT, litNet, type Lit } from '../../src/lib/diagram/lit';
import type { Figure } from '../../src/lib/diagram/figure';
import { sectionOf } from '../../src/lib/diagram/section';
import { pinSectionOf } from '../../src/lib/diagram/sectionPins';
import { sheetFigure } from '../../src/lib/diagram/sheetFigure';
import { svgOf, type PaletteName } from '../../src/lib/diagram/svg';
import { symbolOf } from '../../src/lib/diagram/symbol';
import type { Bench, SocketKind } from '../../src/lib/engine';
import { legendLines } from '../../src/lib/words';
import { BUSY } from '../../src/routes/gallery/benches';
import {
	EVENT_STATES,
	SEATED_STATES,
	SOCKET,
	benchIn,
	hasJack,
	hasPins,
	nameOf,
	type State
} from './benches';
import { boxOfWord, wordsOf } from './measure';

type View = (bench: Bench, socket: string, lit?: Lit) => Figure;
const VIEWS: Record<string, [view: View, shows: (kind: SocketKind) => boolean]> = {
	section: [sectionOf, hasJack],
	pins: [pinSectionOf, hasPins],
	symbol: [symbolOf, () => true]
};

/** What is pointed at, so that the copper accent is in the figures too. */
const pointedAt = ({ kind, plug }: State): string =>
	`${SOCKET}.${plug === 'three-pin' || !hasJack(kind) ? '1' : 'T'}`;

/** A plug of the other half changes nothing in a section, so it is not drawn there again. */
const isShownIn = (view: string, { plug }: State): boolean =>
	view === 'symbol' || plug === null || (plug === 'three-pin') === (view === 'pins');

async function expectFigure(view: string, state: State, palette: PaletteName = 'light') {
	const bench = benchIn(state);
	const figure = VIEWS[view]![0](bench, SOCKET, litNet(bench, pointedAt(state)));
	const end = palette === 'light' ? '' : `.${palette}`;
	const file = `./svg/${view}.${nameOf(state)}${end}.svg`;
	await expect(svgOf(figure, { palette })).toMatchFileSnapshot(file);
}

describe.each(Object.keys(VIEWS))('%s', (view) => {
	const shown = (state: State): boolean => VIEWS[view]![1](state.kind) && isShownIn(view, state);

	it.each(SEATED_STATES.filter(shown).map((s) => [nameOf(s), s] as const))(
		'%s is drawn as before',
		(_, state) => expectFigure(view, state)
	);
	it.each(EVENT_STATES.filter(shown).map((s) => [nameOf(s), s] as const))(
		'%s, an event of the travel, is drawn as before',
		(_, state) => expectFigure(view, state)
	);
	it.each(['dark', 'ink'] as const)('the %s palette inks the same figure', (palette) => {
		const plug = view === 'pins' ? 'three-pin' : 'trs';
		return expectFigure(view, { kind: 'hybrid-10', plug, travel: 30.5 }, palette);
	});
});

describe.each([
	['a busy bench', BUSY, SOCKET],
	['one socket', benchIn({ kind: 'patch-jack', plug: null, travel: 0 }), SOCKET],
	['the panel alone', benchIn({ kind: 'hybrid-9', plug: null, travel: 0 }), null]
] as const)('the foot of a still picture, %s', (_, bench: Bench, socket) => {
	it.each([
		[true, false],
		[false, true]
	])('stands below all views, whole on the sheet: %s, %s', (inColour, isProbed) => {
		const foot = legendLines(inColour, isProbed);
		const bare = sheetFigure(bench, 'rear', socket);
		const figure = sheetFigure(bench, 'rear', socket, NOTHING_LIT, { foot });
		const words = wordsOf(figure).slice(wordsOf(bare).length);
		expect(words.map((word) => word.text)).toEqual(foot);
		for (const box of words.map((word) => boxOfWord(word))) {
			expect(box.top).toBeGreaterThan(bare.height - 8);
			expect(box.bottom).toBeLessThan(figure.height);
			expect(box.right).toBeLessThan(figure.width);
		}
	});
});

describe('a figure as text', () => {
	const bench = benchIn({ kind: 'hybrid-9', plug: 'trs', travel: 22.123 });
	const text = svgOf(sectionOf(bench, SOCKET, NOTHING_LIT), { palette: 'light' });

	it('is the same text for the same bench', () => {
		const again = benchIn({ kind: 'hybrid-9', plug: 'trs', travel: 22.123 });
		expect(svgOf(sectionOf(again, SOCKET), { palette: 'light' })).toBe(text);
	});
	it('fetches nothing, and opens by itself', () => {
		expect(text.startsWith('<svg xmlns="http://www.w3.org/2000/svg"')).toBe(true);
		expect(text.replace('http://www.w3.org/2000/svg', '')).not.toMatch(
			/https?:|@import|@font-face/
		);
	});
	it('has no number of more than two decimals', () => {
		expect(text).not.toMatch(/\d\.\d{3,}/);
	});
	it.each(['light', 'dark', 'ink'] as const)(
		'uses three line weights and no other, wires and what is lit included: %s',
		(palette) => {
			const lit = litNet(BUSY, 'A.1');
			for (const figure of [
				sectionOf(bench, SOCKET),
				sheetFigure(BUSY, 'rear', SOCKET, lit),
				sheetFigure(BUSY, 'front', SOCKET, lit)
			]) {
				// Letters stand clear of the lines they cross by a rim in the colour of the paper.
				const inked = svgOf(figure, { palette }).replaceAll(
					/\.w-mark,[^{}]*\{paint-order[^}]*\}/g,
					''
				);
				const weights = [...inked.matchAll(/stroke-width:([\d.]+)/g)].map((m) => m[1]);
				expect(new Set(weights)).toEqual(new Set(['1', '1.6', '2.8']));
			}
		}
	);
	it('escapes what a label could say', () => {
		const figure: Figure = {
			width: 9,
			height: 9,
			title: '<&"',
			marks: [{ kind: 'word', role: 'name', x: 1, y: 1, text: '</text>', anchor: 'start' }],
			points: new Map()
		};
		const escaped = svgOf(figure, { palette: 'ink' });
		expect(escaped).toContain('<title>&#60;&#38;&#34;</title>');
		expect(escaped).toContain('>&#60;/text></text>'.replace('/text>', '/text&#62;'));
	});
});

describe('the files', () => {
	const files = new Set(readdirSync(new URL('./svg', import.meta.url)));
	const states = [...SEATED_STATES, ...EVENT_STATES];

	it('hold every kind of socket with every plug that fits, at every event and at home, in every view', () => {
		for (const state of states) {
			const { kind } = state;
			const wanted = [
				'rear',
				'front',
				'symbol',
				...(hasJack(kind) && isShownIn('section', state) ? ['section'] : []),
				...(hasPins(kind) && isShownIn('pins', state) ? ['pins'] : [])
			];
			for (const view of wanted) expect(files).toContain(`${view}.${nameOf(state)}.svg`);
		}
	});
	it('hold nothing that no test draws', () => {
		const known = new Set(states.map(nameOf));
		const others = [...files].filter(
			(file) => !known.has(file.replace(/^\w+\./, '').replace(/(\.dark|\.ink)?\.svg$/, ''))
		);
		expect(
			others.filter((file) => !/^(rear|front)\.(busy\.\w+|panel-12)\.svg$/.test(file))
		).toEqual([]);
	});
});
