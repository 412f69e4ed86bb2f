/** A test card in the parts that page, SVG and CSV share: groups by plug state, numbered probes, the bare rear. */
import { sceneFigure, type Figure } from '../../diagram';
import { scaledFigure } from '../../diagram/scaled';
import type { Card } from '../../diagnosis';
import { atRest } from '../../schedule';
import type { Bench, When } from '../../engine';
import { ANSWER_WORDS, cardNode, cardState } from '../../words/card';

export interface CardRow {
	/** Counted through the whole card, from 1. */
	readonly number: number;
	readonly red: string;
	readonly black: string;
	readonly expect: 'sounds' | 'silent';
}
export interface CardGroup {
	readonly state: string;
	readonly rows: readonly CardRow[];
}

const keyOf = (when: When): string => JSON.stringify(when);

/** The card's probes by plug state, states in the order of the card, so that each plug goes in once. */
export function groupsOf(bench: Bench, { probes }: Pick<Card, 'probes'>): CardGroup[] {
	const states = [...new Set(probes.map((p) => keyOf(p.when)))];
	let number = 0;
	return states.map((key): CardGroup => {
		const own = probes.filter((p) => keyOf(p.when) === key);
		return {
			state: cardState(bench, own[0]!.when),
			rows: own.map(({ pair, expect }): CardRow => {
				const [red, black] = pair.map((n) => cardNode(bench, n)) as [string, string];
				return { number: ++number, red, black, expect: ANSWER_WORDS[expect] as CardRow['expect'] };
			})
		};
	});
}

/** More sockets than these cannot be told apart on a drawing as wide as a page. */
export const MOST_ON_CARD = 12;
/** So wide is a page, in units of the figures: their words are then some 9 points. */
export const PAGE_WIDTH = 1000;
const SMALL = 0.66;

/** The rear with its lugs and nothing on them; null where there are too many sockets or none. */
export function bareRear(bench: Bench): Figure | null {
	const count = bench.sockets.length;
	if (count === 0 || count > MOST_ON_CARD) return null;
	const bare = { ...atRest(bench), plugs: [], wires: [], cables: [], devices: [] };
	const scene = sceneFigure(bare, 'rear');
	// Letters of nets are for a bench that is worked on; here there is nothing on the lugs.
	const marks = scene.marks.filter((m) => m.role !== 'letter');
	const figure = { ...scene, marks };
	return scaledFigure(figure, Math.min(SMALL, (PAGE_WIDTH - 80) / figure.width));
}
