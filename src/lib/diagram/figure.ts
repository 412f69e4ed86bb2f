/**
 * A figure is a flat list of marks with roles: what a stroke or a word *is*, never how it is inked.
 * Svelte draws it on screen and `svgOf` writes it as text in plain Node, so that what reviewers see
 * change is what people see. Line weights come in three steps and no more: fine, line, bold.
 */
import type { NodeName } from '../engine';

/**
 * What a stroke is. Hatching stands for insulation, `hidden` for what lies behind; `collar` is an
 * insulator that moves or stands against another one, hatched the other way; `pointer` is a small
 * filled sign that says where something is; `flag` is the ring about a wire's letter, so that it is
 * never taken for the letter of a net; `panel` is one of metal, seen flat.
 */
export const STROKES = [
	'body',
	'metal',
	'insulator',
	'collar',
	'hole',
	'panel',
	'outline',
	'fine',
	'hidden',
	'centre',
	'spring',
	'blade',
	'seat',
	'seat-closed',
	'wire',
	'core',
	'halo',
	'flag',
	'dimension',
	'pointer',
	'symbol'
] as const;
export type StrokeRole = (typeof STROKES)[number];
/** What a word is; `part` is a name printed on the metal of a plug, which has little room. */
export const WORDS = [
	'mark',
	'letter',
	'caption',
	'part',
	'name',
	'dimension',
	'title',
	'wire'
] as const;
export type WordRole = (typeof WORDS)[number];

interface Common {
	/** The node, wire or core this mark belongs to, so that pointing at one lights all views. */
	readonly of?: NodeName;
	/** Conducts now, between the probes or on the net that is pointed at: the copper accent. */
	readonly lit?: boolean;
}
export interface Stroke extends Common {
	readonly kind: 'stroke';
	readonly role: StrokeRole;
	/** What a wire carries: its colour and its line pattern. */
	readonly ink?: 'hot' | 'cold' | 'shield' | 'other';
	readonly d: string;
	/** Explains the figure, and is nothing without its words. */
	readonly note?: boolean;
}
export interface Word extends Common {
	readonly kind: 'word';
	readonly role: WordRole;
	readonly x: number;
	readonly y: number;
	readonly text: string;
	readonly anchor: 'start' | 'middle' | 'end';
}
export type Mark = Stroke | Word;
/** How large words are: `large` for a figure that is shown small, as on a phone. */
export type Lettering = 'plain' | 'large';

/** Whether the two are drawn alike. */
export const sameMark = (a: Mark, b: Mark | undefined): boolean =>
	a === b ||
	(b !== undefined &&
		a.role === b.role &&
		a.of === b.of &&
		a.lit === b.lit &&
		(a.kind === 'stroke'
			? b.kind === 'stroke' && a.d === b.d && a.ink === b.ink
			: b.kind === 'word' &&
				a.text === b.text &&
				a.x === b.x &&
				a.y === b.y &&
				a.anchor === b.anchor));

export interface Figure {
	readonly width: number;
	readonly height: number;
	/** One sentence that says what is to be seen. */
	readonly title: string;
	readonly marks: readonly Mark[];
	readonly lettering?: Lettering;
	/** Marks and names stand on what is drawn, and keep a rim of paper about them. */
	readonly rimmed?: boolean;
	/** Where each node can be pointed at. */
	readonly points: ReadonlyMap<NodeName, { readonly x: number; readonly y: number }>;
}
