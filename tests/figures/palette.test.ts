/**
 * Contrast of both palettes, measured: 4.5:1 for text, 3:1 for lines that carry meaning. Source:
 * WCAG 2.2, success criteria 1.4.3 and 1.4.11, relative luminance as defined there.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { WORDS } from '../../src/lib/diagram/figure';
import { PALETTES, svgOf } from '../../src/lib/diagram/svg';

const css = readFileSync(new URL('../../src/app.css', import.meta.url), 'utf8');

/** The custom properties of the n-th block that sets `--paper`: light, dark by choice, dark by system. */
function tokens(nth: number): Record<string, string> {
	const blocks = [...css.matchAll(/\{([^{}]*--paper:[^{}]*)\}/g)].map((m) => m[1]!);
	return Object.fromEntries(
		[...blocks[nth]!.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map((m) => [m[1]!, m[2]!])
	);
}
function luminance(hex: string): number {
	const [r, g, b] = [1, 3, 5].map((i) => {
		const c = parseInt(hex.slice(i, i + 2), 16) / 255;
		return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
function contrast(a: string, b: string): number {
	const [x, y] = [luminance(a), luminance(b)];
	return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05);
}

const GROUNDS = ['paper', 'sheet', 'sunk'];
const TEXT = ['ink', 'soft', 'copper', 'red'];
const LINES = ['rule', 'wire-hot', 'wire-cold', 'wire-shield', 'wire-other'];

describe('the measure itself', () => {
	it('gives 21 for black on white and 1 for a colour on itself', () => {
		expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
		expect(contrast('#336699', '#336699')).toBe(1);
	});
	it('gives 4.48 for #777777 on white, a value often quoted (from memory)', () => {
		expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
	});
});

describe.each([
	['light', 0],
	['dark', 1]
] as const)('the %s palette', (_, nth) => {
	const t = tokens(nth);
	it.each(TEXT.flatMap((ink) => GROUNDS.map((ground) => [ink, ground] as const)))(
		'shows text in %s on %s at 4.5:1 or more',
		(ink, ground) => expect(contrast(t[ink]!, t[ground]!)).toBeGreaterThanOrEqual(4.5)
	);
	it.each(LINES.flatMap((line) => GROUNDS.map((ground) => [line, ground] as const)))(
		'shows lines in %s on %s at 3:1 or more',
		(line, ground) => expect(contrast(t[line]!, t[ground]!)).toBeGreaterThanOrEqual(3)
	);
	it('shows text on what it stands on in figures: metal and lit metal', () => {
		for (const ground of ['cup', 'copper-wash'])
			for (const ink of ['ink', 'soft', 'copper'])
				expect(contrast(t[ink]!, t[ground]!), `${ink} on ${ground}`).toBeGreaterThanOrEqual(4.5);
	});
	it('tells insulation by its hatching and metal by its tone, both with an outline at 3:1', () => {
		expect(contrast(t.hatch!, t.sheet!)).toBeGreaterThanOrEqual(3);
		for (const ground of [...GROUNDS, 'cup']) {
			expect(contrast(t.ink!, t[ground]!)).toBeGreaterThanOrEqual(3);
			expect(contrast(t.soft!, t[ground]!)).toBeGreaterThanOrEqual(3);
		}
	});
	it('tells metal, lit metal and paper apart by tone, and hatching from what it stands on', () => {
		for (const metal of [t.cup!, t['copper-wash']!])
			expect(contrast(metal, t.sheet!)).toBeGreaterThanOrEqual(1.2);
		if (nth === 1)
			for (const metal of [t.cup!, t['copper-wash']!])
				expect(contrast(metal, t.sheet!)).toBeGreaterThanOrEqual(1.5);
	});
	it('shows a metal panel on the sheet, and what is written and soldered on it', () => {
		expect(contrast(t.panel!, t.sheet!)).toBeGreaterThanOrEqual(1.2);
		for (const ink of TEXT.filter((one) => one !== 'red'))
			expect(contrast(t[ink]!, t.panel!), ink).toBeGreaterThanOrEqual(4.5);
		for (const line of LINES.filter((one) => one.startsWith('wire')))
			expect(contrast(t[line]!, t.panel!), line).toBeGreaterThanOrEqual(3);
	});
	it('shows ink and copper on the metal of a cup, and copper on its wash, at 3:1 or more', () => {
		expect(contrast(t.ink!, t.cup!)).toBeGreaterThanOrEqual(4.5);
		expect(contrast(t.copper!, t.cup!)).toBeGreaterThanOrEqual(3);
		expect(contrast(t.copper!, t['copper-wash']!)).toBeGreaterThanOrEqual(3);
	});
});

it('is the same dark whether the system or the person asks for it', () => {
	expect(tokens(2)).toEqual(tokens(1));
});

it('is on paper what it is in figures for paper', () => {
	const print = css.slice(css.indexOf('@media print'));
	const on = (name: string) => new RegExp(`--${name}: (#\\w+);`).exec(print)![1];
	const { wash, wires, ...rest } = PALETTES.ink;
	expect(wash).toBe(on('copper-wash'));
	expect(wires).toEqual(['hot', 'cold', 'shield', 'other'].map((w) => on(`wire-${w}`)));
	for (const [role, colour] of Object.entries(rest)) expect(colour, role).toBe(on(role));
});

it.each(['light', 'dark'] as const)('stands in figures as on screen: %s', (name) => {
	const t = tokens(name === 'light' ? 0 : 1);
	const { wash, wires, ...rest } = PALETTES[name];
	expect(wash).toBe(t['copper-wash']);
	expect(wires).toEqual(['hot', 'cold', 'shield', 'other'].map((w) => t[`wire-${w}`]));
	for (const [role, colour] of Object.entries(rest)) expect(colour, role).toBe(t[role]);
});

const folder = new URL('../../src/lib/ui/drawing/', import.meta.url);

describe('words', () => {
	const styles = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
	/** Whether the rule of that selector sets its words in the serif, upright or italic. */
	const face = (text: string, selector: string): string => {
		const rule = new RegExp(`\\${selector}\\s*\\{([^}]*)\\}`).exec(text)?.[1] ?? '';
		const italic = rule.includes('italic') ? ' italic' : '';
		return (/serif\)|Literata/.test(rule) ? 'serif' : 'sans') + italic;
	};
	const saved = svgOf(
		{
			width: 9,
			height: 9,
			title: '',
			points: new Map(),
			marks: WORDS.map((role) => ({ kind: 'word', role, x: 0, y: 0, text: 'a', anchor: 'start' }))
		},
		{ palette: 'light' }
	);
	it.each([
		['.w-name', 'SocketMark.svelte', '.name', 'serif'],
		['.w-name', 'BoxMark.svelte', '.title', 'serif'],
		['.w-letter', 'NodeMark.svelte', '.letter', 'serif italic'],
		['.w-mark', 'NodeMark.svelte', '.mark', 'sans'],
		['.w-wire', 'WireFlag.svelte', '.flag-letter', 'sans'],
		['.w-caption', 'Sheet.svelte', '.caption', 'sans']
	])('%s of a saved picture has the face of %s %s', (role, file, selector, wanted) => {
		expect(face(styles(file), selector)).toBe(wanted);
		expect(face(saved, role)).toBe(wanted);
		expect(face(styles('FigureView.svelte'), role)).toBe(wanted);
	});
	it('carries every face that it names in the file', () => {
		const carried = readFileSync(
			new URL('../../src/lib/storage/picture.ts', import.meta.url),
			'utf8'
		);
		expect(carried).toContain('literata-latin-wght-normal.woff2');
		expect(carried).toContain('literata-latin-wght-italic.woff2');
		expect(carried).toContain('commissioner-latin-wght-normal.woff2');
	});
});

describe('line weights on screen', () => {
	/** The steps, and what they are called where they grow as one looks from farther off. */
	const STEPS = { '1': 'var(--fine)', '1.6': 'var(--line)', '2.8': 'var(--bold)' } as const;
	it.each(Object.entries(STEPS))('a step of %s is never thinner than a pixel', (step, name) => {
		const sheet = readFileSync(new URL('Sheet.svelte', folder), 'utf8');
		const token = name.slice(4, -1);
		const [, width, pixels] = new RegExp(
			`${token}: max\\(([\\d.]+)px, calc\\(([\\d.]+)px / var\\(--u, 1\\)\\)\\);`
		).exec(sheet)!;
		expect(width).toBe(step);
		expect(Number(pixels)).toBeGreaterThanOrEqual(1);
	});
	it.each(Object.entries(STEPS))('a figure has the same step of %s', (step, name) => {
		const figure = readFileSync(new URL('FigureView.svelte', folder), 'utf8');
		expect(figure).toContain(`${name.slice(4, -1)}: calc(${step}px * var(--step, 1));`);
	});
	it.each(readdirSync(folder).filter((file) => file.endsWith('.svelte')))(
		'%s draws in three steps and no more',
		(file) => {
			const text = readFileSync(new URL(file, folder), 'utf8');
			// What catches the pointer is not seen, and letters stand clear of lines by a rim of paper.
			const rules = [...text.matchAll(/\{[^{}]*\}/g)].map(([rule]) => rule);
			const seen = rules.filter((rule) => !/stroke: transparent|paint-order: stroke/.test(rule));
			for (const rule of seen)
				for (const [, weight] of rule.matchAll(/stroke-width: ([^;]+);/g))
					expect([...Object.keys(STEPS), ...Object.values(STEPS)], rule).toContain(weight);
		}
	);
});
