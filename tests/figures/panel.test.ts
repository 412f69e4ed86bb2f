/**
 * Rear and front as files, and what would catch a lie: the front is the mirror image of the rear,
 * contact by contact; a break is drawn closed exactly when the engine says so; no two words overlap.
 */
import { describe, expect, it } from 'vitest';
import { NOTHING_LIT, isClosed, litNet } from '../../src/lib/diagram/lit';
import { sceneFigure, type NameOf } from '../../src/lib/diagram/sceneFigure';
import type { Figure, Stroke } from '../../src/lib/diagram/figure';
import { svgOf } from '../../src/lib/diagram/svg';
import { SOCKETS, SOCKET_KINDS } from '../../src/lib/engine';
import { kindWords } from '../../src/lib/words';
import { BUSY, panelOf } from '../../src/routes/gallery/benches';
import { EVENT_STATES, SEATED_STATES, SOCKET, benchIn, nameOf, type State } from './benches';
import { boxOfWord, overlap, wordsOf } from './measure';

const VIEWS = ['rear', 'front'] as const;
const states = [...SEATED_STATES, ...EVENT_STATES].map((s) => [nameOf(s), s] as const);

const inWords: NameOf = (kind) => kindWords(kind).name;
const strokesOf = (figure: Figure): Stroke[] => figure.marks.filter((m) => m.kind === 'stroke');

function overlaps(figure: Figure): string[] {
	const words = wordsOf(figure).map((w) => ({ text: w.text, box: boxOfWord(w, figure.lettering) }));
	return words.flatMap((a, i) =>
		words
			.slice(i + 1)
			.filter((b) => overlap(a.box, b.box))
			.map((b) => `${a.text} over ${b.text}`)
	);
}

describe.each(VIEWS)('the %s', (view) => {
	it.each(states)('%s is drawn as before', async (_, state: State) => {
		const bench = benchIn(state);
		const figure = sceneFigure(bench, view, litNet(bench, `${SOCKET}.1`), { nameOf: inWords });
		await expect(svgOf(figure, { palette: 'light' })).toMatchFileSnapshot(
			`./svg/${view}.${nameOf(state)}.svg`
		);
	});
	it.each(states)('%s has no two words over each other', (_, state: State) => {
		expect(overlaps(sceneFigure(benchIn(state), view))).toEqual([]);
	});
	it('keeps its words apart with eleven contacts and twelve wires, and is drawn as before', async () => {
		const figure = sceneFigure(BUSY, view, NOTHING_LIT, { nameOf: inWords });
		expect(overlaps(figure)).toEqual([]);
		const large = sceneFigure(BUSY, view, NOTHING_LIT, { nameOf: inWords, lettering: 'large' });
		expect(overlaps(large)).toEqual([]);
		for (const palette of ['light', 'dark', 'ink'] as const)
			await expect(svgOf(figure, { palette })).toMatchFileSnapshot(
				`./svg/${view}.busy.${palette}.svg`
			);
	});
	it('is drawn as before for a panel of twelve', async () => {
		const figure = sceneFigure(panelOf(12), view, NOTHING_LIT, { nameOf: inWords });
		await expect(svgOf(figure, { palette: 'light' })).toMatchFileSnapshot(
			`./svg/${view}.panel-12.svg`
		);
	});
});

/** Middle of the places that a stroke goes through. */
function middleX({ d }: Stroke): number {
	const xs = [...d.matchAll(/([MLHVAQCZ])([^MLHVAQCZ]*)/g)].flatMap(([, letter, rest]) => {
		const n = (rest!.match(/-?\d*\.?\d+/g) ?? []).map(Number);
		if (letter === 'H') return [n[0]!];
		if (letter === 'V' || letter === 'Z') return [];
		return letter === 'A' ? [n[5]!] : n.filter((_, i) => i % 2 === 0);
	});
	return (Math.min(...xs) + Math.max(...xs)) / 2;
}

describe('the front', () => {
	it.each(SOCKET_KINDS)('of a %s is the mirror image of its rear, contact by contact', (kind) => {
		const bench = benchIn({ kind, plug: null, travel: 0 });
		const [rear, front] = VIEWS.map((v) => sceneFigure(bench, v));
		const places = [...rear!.points].map(([node, p]) => p.x + front!.points.get(node)!.x);
		for (const sum of places) expect(sum).toBeCloseTo(places[0]!, 6);
		for (const contact of SOCKETS[kind].contacts) {
			const of = `${SOCKET}.${contact}`;
			const lug = (f: Figure, role: string) =>
				middleX(strokesOf(f).find((s) => s.of === of && s.role === role)!);
			expect(lug(rear!, 'metal') + lug(front!, 'hidden'), contact).toBeCloseTo(places[0]!, 1);
		}
	});
});

describe('a break on the rear', () => {
	it.each(states)('%s: its blade meets its seat exactly when it is closed', (_, state: State) => {
		const bench = benchIn(state);
		const strokes = strokesOf(sceneFigure(bench, 'rear'));
		for (const contact of Object.keys(SOCKETS[state.kind].breaks)) {
			const of = `${SOCKET}.${contact}`;
			const blade = strokes.find((s) => s.of === of && s.role === 'blade')!;
			const seat = strokes.find((s) => s.of === of && s.role.startsWith('seat'))!;
			const end = blade.d
				.match(/-?\d*\.?\d+/g)!
				.map(Number)
				.slice(-2);
			const point = seat.d
				.match(/-?\d*\.?\d+/g)!
				.map(Number)
				.slice(0, 2);
			const gap = Math.hypot(end[0]! - point[0]!, end[1]! - point[1]!);
			const closed = isClosed(bench, SOCKET, contact);
			expect(seat.role, contact).toBe(closed ? 'seat-closed' : 'seat');
			if (closed) expect(gap, contact).toBeLessThan(0.05);
			else expect(gap, contact).toBeGreaterThan(6);
		}
	});
});
