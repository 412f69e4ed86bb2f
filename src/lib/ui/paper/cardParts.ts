/** A test card in the parts that page, SVG and CSV share: groups by plug state, numbered probes, the bare rear. */
import { WORD_SIZES, sceneFigure, type Figure } from '../../diagram';
import { scaledFigure } from '../../diagram/scaled';
import { stateKey, type Card } from '../../diagnosis';
import { atRest } from '../../schedule';
import {
	PANEL,
	SOCKETS,
	deviceBetween,
	splitNode,
	type Bench,
	type NodeName,
	type When
} from '../../engine';
import { ANSWER_WORDS, cardNode, cardState } from '../../words/card';

export interface CardRow {
	/** The same for the same probe, whatever else stands on the card. */
	readonly key: string;
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
			rows: own.map(({ when, pair, expect }): CardRow => {
				const [red, black] = pair.map((n) => cardNode(bench, n)) as [string, string];
				const key = JSON.stringify([stateKey(bench, when), ...[...pair].sort()]);
				return {
					key,
					number: ++number,
					red,
					black,
					expect: ANSWER_WORDS[expect] as CardRow['expect']
				};
			})
		};
	});
}

/** Silent rows across a device that hangs on a line: its name, and the numbers of the rows. */
export function acrossDevices(bench: Bench, { probes }: Pick<Card, 'probes'>) {
	const states = [...new Set(probes.map((p) => keyOf(p.when)))];
	const rows = states.flatMap((key) => probes.filter((p) => keyOf(p.when) === key));
	const found = new Map<string, number[]>();
	rows.forEach(({ when, pair, expect }, i) => {
		const device = expect === 'apart' ? deviceBetween(bench, when, pair) : null;
		if (device) found.set(device.id, [...(found.get(device.id) ?? []), i + 1]);
	});
	return [...found].map(([id, numbers]) => ({ id, numbers }));
}

/** A chassis lug and the metal panel that it should be joined to. */
export interface Bond {
	readonly key: string;
	/** The lug, as it is called on the card. */
	readonly lug: string;
}
/** The chassis lugs of a metal panel; none where the panel insulates. */
export const bondsOf = (bench: Bench): Bond[] =>
	bench.sockets
		.filter((s) => bench.panel.metal && SOCKETS[s.kind].contacts.includes('G'))
		.map((s): Bond => ({ key: `bond ${s.id}`, lug: cardNode(bench, `${s.id}.G`) }));

/** More sockets than these cannot be told apart on a drawing as wide as a page. */
export const MOST_ON_CARD = 12;
/** So wide is a page, in units of the figures: their words are then some 9 points. */
export const PAGE_WIDTH = 1000;
const SMALL = 0.85;
/** Half the width of a lug, and of a letter of its mark (units of the figures). */
const LUG = 9;
const LETTER = WORD_SIZES.plain.mark * 0.3;

/** Much smaller, a long mark beside a lug stands close to it: elsewhere it would cross the edge of its block. */
const pulled = (figure: Figure, k: number): Figure => ({
	...figure,
	marks: figure.marks.map((m) => {
		if (m.kind !== 'word' || m.role !== 'mark' || !m.of) return m;
		const lug = figure.points.get(m.of);
		// The letter above the chassis lug would cross the edge of the flange.
		if (lug && m.text === 'G') return { ...m, y: Math.max(m.y, lug.y - LUG * k - 4) };
		if (m.text.length < 2) return m;
		if (!lug || m.x > lug.x - LUG * k) return m;
		return { ...m, x: Math.max(m.x, lug.x - LUG * k - 2.5 - m.text.length * LETTER) };
	})
});

/**
 * The rear with what is wired on the panel itself, nothing plugged in; what goes to other places is left
 * out, since its boxes would make all of it small. Null where there are too many sockets or none.
 */
export function panelRear(bench: Bench): Figure | null {
	const count = bench.sockets.length;
	if (count === 0 || count > MOST_ON_CARD) return null;
	const isHere = (node: NodeName) =>
		node === PANEL || bench.sockets.some((s) => s.id === splitNode(node)[0]);
	const wires = bench.wires.filter((w) => isHere(w.from) && isHere(w.to));
	const panel = { ...atRest(bench), plugs: [], wires, cables: [], devices: [] };
	const scene = sceneFigure(panel, 'rear');
	// Letters of nets are for a bench that is worked on.
	const marks = scene.marks.filter((m) => m.role !== 'letter');
	const figure = { ...scene, marks };
	const k = Math.min(SMALL, (PAGE_WIDTH - 80) / figure.width);
	return k < SMALL ? pulled(scaledFigure(figure, k), k) : scaledFigure(figure, k);
}
