/**
 * A figure as standalone SVG text, inked from its roles: three line weights, hatching, one copper
 * accent. Numbers are rounded to two decimals, so that the same figure is the same text everywhere.
 * Fonts are named and never fetched; words stand where they are put whatever the font.
 */
import { compactPath } from './compactPath';
import {
	WORDS,
	type Figure,
	type Lettering,
	type Mark,
	type Stroke,
	type Word,
	type WordRole
} from './figure';

export type PaletteName = 'light' | 'dark' | 'ink';
interface Palette {
	readonly sheet: string;
	readonly sunk: string;
	/** A metal panel, seen flat. */
	readonly panel: string;
	readonly ink: string;
	readonly soft: string;
	readonly hatch: string;
	readonly cup: string;
	readonly copper: string;
	readonly wash: string;
	/** Wires by what they carry: hot, cold, shield, other. */
	readonly wires: readonly [string, string, string, string];
}
/** The application's own colours (light, dark), and plain black on white for print. */
export const PALETTES: Readonly<Record<PaletteName, Palette>> = {
	light: {
		sheet: '#fbf7ed',
		sunk: '#f3ecdd',
		panel: '#e6dcc7',
		ink: '#1f2428',
		soft: '#54585a',
		hatch: '#978a6b',
		cup: '#e9dfc8',
		copper: '#9c4115',
		wash: '#f4dfcc',
		wires: ['#1f4e79', '#35683b', '#3c3f41', '#6a3f78']
	},
	dark: {
		sheet: '#1b2226',
		sunk: '#161c1f',
		panel: '#2c3438',
		ink: '#ebe4d4',
		soft: '#b3afa3',
		hatch: '#7d8c91',
		cup: '#43423c',
		copper: '#f0a26b',
		wash: '#573822',
		wires: ['#8fbce6', '#93cf9b', '#d5cfc0', '#d0a4de']
	},
	ink: {
		sheet: '#fff',
		sunk: '#fff',
		panel: '#fff',
		ink: '#000',
		soft: '#222',
		hatch: '#888',
		cup: '#e6e6e6',
		copper: '#000',
		wash: '#bbb',
		wires: ['#000', '#000', '#000', '#000']
	}
};

/** Size of each kind of word, in units of the figure, plain and large. */
export const WORD_SIZES: Readonly<Record<Lettering, Readonly<Record<WordRole, number>>>> = {
	plain: {
		mark: 16,
		letter: 16,
		caption: 15,
		part: 15,
		name: 17,
		dimension: 15,
		title: 24,
		wire: 13
	},
	large: {
		mark: 23,
		letter: 20,
		caption: 22,
		part: 21,
		name: 24,
		dimension: 22,
		title: 30,
		wire: 22
	}
};
const SANS = "'Commissioner Variable',Commissioner,'Segoe UI','DejaVu Sans',sans-serif";
const SERIF = "'Literata Variable',Literata,Georgia,'DejaVu Serif',serif";

const FINE = 1;
const LINE = 1.6;
const BOLD = 2.8;

type Ink = [fill: string, stroke: string, weight: number, more?: string];
const HATCH = 'url(#hatch)';
const COUNTER = 'url(#counter)';

/** How each role is inked. */
function inks(p: Palette): Record<Stroke['role'], Ink> {
	const dashed = 'stroke-dasharray:5 4';
	return {
		body: [p.sheet, p.ink, LINE],
		metal: [p.cup, p.ink, LINE],
		insulator: [HATCH, p.ink, LINE, 'fill-rule:evenodd'],
		collar: [COUNTER, p.ink, LINE],
		hole: [p.sunk, p.ink, FINE],
		panel: [p.panel, p.ink, FINE],
		outline: ['none', p.ink, LINE],
		fine: ['none', p.soft, FINE],
		hidden: ['none', p.soft, FINE, dashed],
		centre: ['none', p.soft, FINE, 'stroke-dasharray:14 4 2 4'],
		spring: ['none', p.ink, BOLD],
		blade: ['none', p.ink, LINE],
		seat: [p.sheet, p.ink, LINE],
		'seat-closed': [p.ink, p.ink, LINE],
		wire: ['none', p.ink, BOLD],
		core: ['none', p.ink, LINE],
		halo: [p.sheet, 'none', FINE],
		flag: [p.sheet, p.ink, FINE],
		dimension: ['none', p.soft, FINE],
		pointer: [p.soft, p.soft, FINE],
		symbol: ['none', p.ink, LINE]
	};
}

const FILLED = ['metal', 'body', 'flag'];
const SOLID = ['seat-closed', 'pointer'];
const rule = (selector: string, declarations: string): string => `${selector}{${declarations}}`;

function strokeRules(p: Palette, used: ReadonlySet<string>, lit: ReadonlySet<string>): string[] {
	const needed = Object.entries(inks(p)).filter(([role]) => used.has(role));
	return needed.flatMap(([role, [fill, stroke, weight, more]]) => {
		const plain = `fill:${fill};stroke:${stroke};stroke-width:${weight}${more ? `;${more}` : ''}`;
		const litFill = FILLED.includes(role)
			? `;fill:${p.wash}`
			: SOLID.includes(role)
				? `;fill:${p.copper}`
				: role === 'hidden'
					? `;stroke-width:${LINE}`
					: '';
		const isLit = lit.has(role);
		return [
			rule(`.${role}`, plain),
			...(isLit ? [rule(`.${role}.lit`, `stroke:${p.copper}${litFill}`)] : [])
		];
	});
}

function wordRules(p: Palette, lettering: Lettering, used: ReadonlySet<string>): string[] {
	const faces: Readonly<Record<WordRole, string>> = {
		mark: 'font-weight:600',
		letter: `font-family:${SERIF};font-style:italic;fill:${p.soft}`,
		caption: `fill:${p.soft}`,
		part: `fill:${p.soft}`,
		name: `font-family:${SERIF};font-weight:500`,
		title: `font-family:${SERIF};font-weight:500`,
		wire: 'font-weight:600',
		dimension: `fill:${p.soft}`
	};
	return [
		rule('text', `font-family:${SANS};fill:${p.ink}`),
		...WORDS.filter((role) => used.has(role)).map((role) =>
			rule(`.w-${role}`, `font-size:${WORD_SIZES[lettering][role]}px;${faces[role]}`)
		),
		rule('text.lit', `fill:${p.copper}`)
	];
}

/** Without colour, what conducts is told by its weight: springs are drawn a step finer, lit ones bold. */
const BY_WEIGHT =
	rule('.spring', `stroke-width:${LINE}`) + rule('.lit.spring,.lit.blade', `stroke-width:${BOLD}`);

const rolesOf = (marks: readonly Mark[]): ReadonlySet<string> => new Set(marks.map((m) => m.role));
function styleOf(p: Palette, { marks, lettering = 'plain' }: Figure): string {
	const used = rolesOf(marks);
	const lit = rolesOf(marks.filter((m) => m.lit));
	return [
		rule('path', 'stroke-linecap:round;stroke-linejoin:round'),
		rule('.paper', `fill:${p.sheet}`),
		rule('.hatching', `stroke:${p.hatch};stroke-width:${FINE}`),
		...strokeRules(p, used, lit),
		...(p.copper === p.ink ? [BY_WEIGHT] : []),
		...wordRules(p, lettering, used)
	].join('');
}

/** Words on a panel stand clear of the lines they cross; nothing crosses a name. */
const rim = (p: Palette): string =>
	rule(
		'.w-mark,.w-letter',
		`paint-order:stroke;stroke:${p.sheet};stroke-width:4px;stroke-linejoin:round`
	) + rule('text[data-of=panel]', `stroke:${p.panel}`);

/** A wire's colour is a line pattern too. */
function wireRules(p: Palette): string[] {
	const [hot, cold, shield, other] = p.wires;
	const unlit = (ink: string, stroke: string) => rule(`.ink-${ink}:not(.lit)`, `stroke:${stroke}`);
	return [
		rule('.wire,.core', 'stroke-linecap:butt'),
		...(
			[
				['hot', hot],
				['cold', cold],
				['shield', shield],
				['other', other]
			] as const
		).map(([ink, stroke]) => unlit(ink, stroke)),
		rule('.ink-cold', 'stroke-dasharray:12 3'),
		rule('.ink-shield', 'stroke-dasharray:3 2'),
		rule('.ink-other', 'stroke-dasharray:11 3 2 3'),
		rule('.halo.lit', `stroke:none;fill:${p.wash}`)
	];
}

/** Hatching at 45°, one way for bodies and the other way for what stands against them. */
function hatching(id: string, angle: number, step: number): string {
	const frame = `width="${step}" height="${step}" patternUnits="userSpaceOnUse"`;
	// In the middle of its tile: at the edge half of the line would be cut off.
	const line = `<line class="hatching" x1="${step / 2}" y1="0" x2="${step / 2}" y2="${step}"/>`;
	const ground = `<rect class="paper" width="${step}" height="${step}"/>`;
	return `<pattern id="${id}" ${frame} patternTransform="rotate(${angle})">${ground}${line}</pattern>`;
}

const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => `&#${c.charCodeAt(0)};`);

/** At two decimals, without a trailing nought. */
const number = (n: number): string => String(Math.round(n * 100) / 100 + 0);

function attributes(mark: Mark, role: string): string {
	const lit = mark.lit ? ' lit' : '';
	return `class="${role}${lit}"${mark.of ? ` data-of="${escaped(mark.of)}"` : ''}`;
}

const strokeText = (mark: Stroke): string =>
	`<path ${attributes(mark, mark.ink ? `${mark.role} ink-${mark.ink}` : mark.role)} d="${compactPath(mark.d)}"/>`;

function wordText(mark: Word): string {
	const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`;
	const place = `x="${number(mark.x)}" y="${number(mark.y)}"${anchor}`;
	return `<text ${attributes(mark, `w-${mark.role}`)} ${place}>${escaped(mark.text)}</text>`;
}

/** The figure as one SVG document, one mark a line. The same figure gives the same text. */
export function svgOf(figure: Figure, { palette }: { palette: PaletteName }): string {
	const { width, height } = figure;
	const style = styleOf(PALETTES[palette], figure);
	const has = (role: Stroke['role']) => figure.marks.some((m) => m.role === role);
	const hasWires = has('flag');
	// A figure that is shown small is hatched wider, so that it is seen as hatched.
	const wide = figure.lettering === 'large' ? 1.6 : 1;
	const defs = [
		...(has('insulator') ? [hatching('hatch', 45, 9 * wide)] : []),
		...(has('collar') ? [hatching('counter', -45, 6 * wide)] : [])
	].join('');
	const wires = hasWires ? wireRules(PALETTES[palette]).join('') : '';
	const size = `width="${number(width)}" height="${number(height)}"`;
	const head = `viewBox="0 0 ${number(width)} ${number(height)}" ${size} role="img"`;
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" ${head}>`,
		`<title>${escaped(figure.title)}</title>`,
		`<style>${style}${wires}${figure.rimmed ? rim(PALETTES[palette]) : ''}</style>`,
		...(defs ? [`<defs>${defs}</defs>`] : []),
		`<rect class="paper" ${size}/>`,
		...figure.marks.map((m) => (m.kind === 'stroke' ? strokeText(m) : wordText(m))),
		'</svg>',
		''
	].join('\n');
}
