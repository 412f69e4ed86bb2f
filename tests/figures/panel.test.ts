/**
 * Rear and front as files, and what would catch a lie: the front is the mirror image of the rear,
 * contact by contact; a break is drawn closed exactly when the engine says so; no two words overlap.
 */
import { describe, expect, it } from 'vitest';
import { NOTHING_LIT, isClosed, litLive, litNet } from '../../src/lib/diagram/lit';
import { panelParts } from '../../src/lib/diagram/panelParts';
import { panelAlone, sceneOf } from '../../src/lib/diagram/scene';
import { sceneFigure, type NameOf } from '../../src/lib/diagram/sceneFigure';
import { FLANGE } from '../../src/lib/diagram/socket';
import type { Figure, Stroke } from '../../src/lib/diagram/figure';
import { svgOf } from '../../src/lib/diagram/svg';
import { SOCKETS, SOCKET_KINDS, type Bench } from '../../src/lib/engine';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { MESSY, SHORT_RUN, SPLIT } from './wirings';
import { kindWords } from '../../src/lib/words';
import { BUSY, panelOf } from '../../src/routes/gallery/benches';
import { EVENT_STATES, SEATED_STATES, SOCKET, benchIn, nameOf, type State } from './benches';
import { boxOfWord, distance, linesOf, overlap, wordsOf, type Box, type Point } from './measure';

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
		const figure = sceneFigure(BUSY, view, litLive(BUSY), { nameOf: inWords });
		expect(overlaps(figure)).toEqual([]);
		const large = sceneFigure(BUSY, view, NOTHING_LIT, { nameOf: inWords, lettering: 'large' });
		expect(overlaps(large)).toEqual([]);
		for (const palette of ['light', 'dark', 'ink'] as const)
			await expect(svgOf(figure, { palette })).toMatchFileSnapshot(
				`./svg/${view}.busy.${palette}.svg`
			);
	});
	it('is drawn as before for a panel of twelve', async () => {
		const bench = panelOf(12);
		const figure = sceneFigure(bench, view, litLive(bench), { nameOf: inWords });
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
				middleX(strokesOf(f).findLast((s) => s.of === of && s.role === role)!);
			expect(lug(rear!, 'metal') + lug(front!, 'hidden'), contact).toBeCloseTo(places[0]!, 1);
		}
	});
});

describe('a break on the rear', () => {
	it.each(states)('%s: its blade meets its seat exactly when it is closed', (_, state: State) => {
		const bench = benchIn(state);
		const strokes = strokesOf(sceneFigure(bench, 'rear'));
		for (const [contact, spring] of Object.entries(SOCKETS[state.kind].breaks)) {
			const of = `${SOCKET}.${contact}`;
			const leaf = `${SOCKET}.${spring}`;
			const blade = strokes.find((s) => s.of === leaf && s.role === 'blade')!;
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

/** Where a wire's letter stands: the ring about it, or none. */
const ringsOf = (figure: Figure) =>
	strokesOf(figure)
		.filter((s) => s.role === 'flag')
		.map((s) => {
			const [right, y] = s.d.match(/-?\d*\.?\d+/g)!.map(Number) as [number, number];
			const r = Number(/A(\S+)/.exec(s.d)![1]);
			return { of: s.of!, x: right - r, y, r };
		});
const isWire = (s: Stroke, names: ReadonlySet<string>): boolean =>
	s.role !== 'flag' && s.role !== 'halo' && s.of !== undefined && names.has(s.of);
/** From a point to the nearest of a box: 0 within it. */
const toBox = (x: number, y: number, b: Box): number =>
	Math.hypot(Math.max(b.left - x, 0, x - b.right), Math.max(b.top - y, 0, y - b.bottom));
const edgesOf = ({ left, right, top, bottom }: Box): Point[] => [
	[left, top],
	[right, top],
	[right, bottom],
	[left, bottom],
	[left, top]
];

describe.each([
	['eleven contacts and twelve wires', BUSY],
	['many jumpers and one cable', MESSY],
	['a source for two', SPLIT],
	['one cable', SHORT_RUN]
] as const)('wires of %s', (_, bench: Bench) => {
	it.each(VIEWS)('have a letter in a ring, clear of words and of each other: %s', (view) => {
		const figure = sceneFigure(bench, view);
		const rings = ringsOf(figure);
		const wires = [
			...bench.wires.map((w) => w.id),
			...bench.cables.flatMap((c) => c.cores.map((_core, i) => `${c.id}:${i}`))
		];
		expect(rings.map((ring) => ring.of)).toEqual(wires);
		const words = wordsOf(figure);
		for (const [i, ring] of rings.entries()) {
			const own = words.filter((w) => w.role === 'wire' && w.of === ring.of);
			expect(own.map((w) => w.text).join()).toMatch(/^[hcsx]$/);
			for (const word of words.filter((w) => w.role !== 'wire' && w.role !== 'letter'))
				expect(toBox(ring.x, ring.y, boxOfWord(word)), `${ring.of}, ${word.text}`).toBeGreaterThan(
					ring.r - 1
				);
			for (const other of rings.slice(i + 1))
				expect(
					Math.hypot(ring.x - other.x, ring.y - other.y),
					`${ring.of}, ${other.of}`
				).toBeGreaterThan(2 * ring.r);
		}
	});
	it.each(VIEWS)('cross no word: %s', (view) => {
		expect(crossings(sceneFigure(bench, view))).toEqual([]);
	});
	it.each(VIEWS)('pass under no lug that they do not land on: %s', (view) => {
		expect(undercut(bench, sceneFigure(bench, view))).toEqual([]);
	});
});

/** Wires of a figure that run through a word, by estimate; the letter in its ring stands on its wire. */
function crossings(figure: Figure): string[] {
	const names = new Set(ringsOf(figure).map((ring) => ring.of));
	const wires = strokesOf(figure).filter((s) => isWire(s, names));
	expect(wires).toHaveLength(names.size);
	const words = wordsOf(figure).filter((w) => w.role !== 'wire');
	return wires.flatMap(({ of, d }) =>
		words
			.filter((word) => distance(linesOf(d), [edgesOf(boxOfWord(word, figure.lettering))]) === 0)
			.map((word) => `${of} over ${word.text} of ${word.of}`)
	);
}
/** Wires that pass a lug, on which they do not land, nearer than its own half width. */
function undercut(bench: Bench, figure: Figure): string[] {
	const ends = new Map<string, readonly string[]>([
		...bench.wires.map((w) => [w.id, [w.from, w.to]] as const),
		...bench.cables.flatMap((c) => c.cores.map((core, i) => [`${c.id}:${i}`, core] as const))
	]);
	const wires = strokesOf(figure).filter((s) => isWire(s, new Set(ends.keys())));
	expect(wires).toHaveLength(ends.size);
	return wires.flatMap(({ of, d }) =>
		[...figure.points]
			.filter(([node]) => !ends.get(of!)!.includes(node))
			.filter(([, { x, y }]) => distance(linesOf(d), [dotAt(x, y)]) < 12)
			.map(([node]) => `${of} under ${node}`)
	);
}
const dotAt = (x: number, y: number): Point[] => [
	[x, y],
	[x + 0.01, y]
];

describe.each([
	['eleven contacts and twelve wires', BUSY],
	['one cable', SHORT_RUN],
	['a panel of 12', panelOf(12)],
	['a panel of 48', panelOf(48)]
] as const)('%s, in plain and in large words', (_, bench: Bench) => {
	const figures = VIEWS.flatMap((view) =>
		(['plain', 'large'] as const).map(
			(lettering) =>
				[
					`${view}, ${lettering}`,
					sceneFigure(bench, view, NOTHING_LIT, { nameOf: inWords, lettering })
				] as const
		)
	);
	it.each(figures)('no two words overlap: %s', (_name, figure) => {
		expect(overlaps(figure)).toEqual([]);
	});
	it.each(figures)('no wire runs through a word, or under a lug: %s', (_name, figure) => {
		expect(crossings(figure)).toEqual([]);
		expect(undercut(bench, figure)).toEqual([]);
	});
	it.each(figures)(
		'rings stand clear of words, of each other and of other wires: %s',
		(_n, figure) => {
			const rings = ringsOf(figure);
			const wires = strokesOf(figure).filter((s) => isWire(s, new Set(rings.map((r) => r.of))));
			const words = wordsOf(figure).filter((w) => w.role !== 'wire');
			for (const [i, { of, x, y, r }] of rings.entries()) {
				for (const word of words)
					expect(
						toBox(x, y, boxOfWord(word, figure.lettering)),
						`${of}, ${word.text}`
					).toBeGreaterThan(r);
				for (const other of rings.slice(i + 1))
					expect(Math.hypot(x - other.x, y - other.y), `${of}, ${other.of}`).toBeGreaterThan(
						r + other.r
					);
				for (const wire of wires)
					if (wire.of !== of)
						expect(distance(linesOf(wire.d), [dotAt(x, y)]), `${of}, ${wire.of}`).toBeGreaterThan(
							r
						);
			}
		}
	);
});

describe('names read from far off, on a panel of many', () => {
	/** As large as the page writes them where it writes nothing else; half an em a letter, as seen. */
	const far = (word: { x: number; y: number; text: string }): Box => {
		const half = word.text.length * 0.25 * 44;
		return { left: word.x - half, right: word.x + half, top: word.y - 15, bottom: word.y + 28 };
	};
	it.each([12, 48])('have no wire through them, nor another name over them: %i', (count) => {
		const bench = panelOf(count);
		const figure = sceneFigure(bench, 'rear', NOTHING_LIT, { lettering: 'large', far: true });
		const ids = new Set(bench.sockets.map((s) => `${s.id} · ${s.label}`));
		const names = wordsOf(figure).filter((w) => w.role === 'name' && ids.has(w.text));
		expect(names).toHaveLength(count);
		const wires = strokesOf(figure).filter((s) => s.role === 'wire' || s.role === 'core');
		for (const [i, name] of names.entries()) {
			for (const wire of wires)
				expect(
					distance(linesOf(wire.d), [edgesOf(far(name))]),
					`${wire.of}, ${name.text}`
				).toBeGreaterThan(0);
			for (const other of names.slice(i + 1)) expect(overlap(far(name), far(other))).toBe(false);
		}
	});
});

describe('a cup with many conductors', () => {
	const from = (count: number): Bench =>
		benchOf({
			sockets: [{ id: 'A', kind: 'hybrid-10' }],
			wires: ['A.T', 'A.TN', 'A.R', 'A.RN', 'A.S'].slice(0, count).map((to, i) => ({
				id: `w${i}`,
				from: 'A.2',
				to
			}))
		});
	const endsIn = (figure: Figure): number =>
		strokesOf(figure)
			.filter((s) => s.role === 'seat-closed' && s.of === 'A.2')
			.flatMap((s) => s.d.match(/M/g) ?? []).length;
	it.each([1, 2, 3, 4])('shows %i one by one', (count) => {
		expect(endsIn(sceneFigure(from(count)))).toBe(count);
	});
	it('shows the number of five', () => {
		const figure = sceneFigure(from(5));
		expect(endsIn(figure)).toBe(0);
		expect(
			wordsOf(figure)
				.filter((w) => w.of === 'A.2')
				.map((w) => w.text)
		).toContain('5');
	});
});

describe('wires of a large panel', () => {
	/** Turns of a wire of over 120 degrees from one piece to the next: it would double back on itself. */
	function hooks(d: string): number {
		const n = (d.match(/-?\d*\.?\d+/g) ?? []).map(Number);
		const points = Array.from({ length: n.length / 2 }, (_, i) => [n[2 * i]!, n[2 * i + 1]!]);
		// M a C c1 c2 b, c1 c2 b …: at each joint the way in and the way out.
		return points.filter((b, i) => {
			if (i === 0 || i % 3 !== 0 || i === points.length - 1) return false;
			const [p, q] = [points[i - 1]!, points[i + 1]!];
			const [ax, ay] = [b[0]! - p[0]!, b[1]! - p[1]!];
			const [bx, by] = [q[0]! - b[0]!, q[1]! - b[1]!];
			return ax * bx + ay * by < -0.5 * Math.hypot(ax, ay) * Math.hypot(bx, by);
		}).length;
	}
	it.each([12, 24, 48])('never double back on a panel of %i', (count) => {
		const { marks } = sceneFigure(panelOf(count));
		const wires = marks.filter((m) => m.kind === 'stroke' && /^(wire|core)$/.test(m.role));
		expect(wires.length).toBeGreaterThan(count);
		expect(wires.filter((w) => hooks((w as Stroke).d) > 0).map((w) => w.of)).toEqual([]);
	});
});

describe.each([6, 12, 24, 48])('a panel of %i in parts, for paper', (count) => {
	const bench = panelOf(count);
	const options = { nameOf: inWords, lettering: 'large' } as const;
	const scenes = {
		rear: sceneOf(bench, 1),
		front: panelAlone(sceneOf(bench, -1))
	};
	const figures = {
		rear: sceneFigure(bench, 'rear', NOTHING_LIT, options),
		front: sceneFigure(bench, 'front', NOTHING_LIT, { ...options, alone: true })
	};
	const edges = (view: 'rear' | 'front'): Box[] =>
		panelParts(scenes[view]).map(({ box: { x, y, w, h } }) => ({
			left: x,
			right: x + w,
			top: y,
			bottom: y + h
		}));
	const isWhole = (box: Box, part: Box): boolean =>
		box.left >= part.left &&
		box.right <= part.right &&
		box.top >= part.top &&
		box.bottom <= part.bottom;

	it.each(VIEWS)('shows the plate of every socket whole in its part alone: %s', (view) => {
		const parts = edges(view);
		const named = panelParts(scenes[view]).map((part) => part.sockets);
		expect(named.flat().sort()).toEqual(bench.sockets.map((s) => s.id).sort());
		for (const { socket, x, y } of scenes[view].sockets) {
			const plate = {
				left: x - FLANGE.x,
				right: x + FLANGE.x,
				top: y - FLANGE.y,
				bottom: y + FLANGE.y
			};
			const where = parts.flatMap((part, i) => (isWhole(plate, part) ? [i] : []));
			expect(where, socket.id).toEqual([named.findIndex((ids) => ids.includes(socket.id))]);
		}
	});
	it.each(VIEWS)('cuts no word, and leaves none out: %s', (view) => {
		const parts = edges(view);
		for (const word of wordsOf(figures[view])) {
			const box = boxOfWord(word, 'large');
			expect(
				parts.filter((part) => overlap(box, part) && !isWhole(box, part)),
				word.text
			).toEqual([]);
			expect(
				parts.some((part) => isWhole(box, part)),
				word.text
			).toBe(true);
		}
	});
	it('shows every box whole in one part of the rear, and none at the front', () => {
		for (const b of scenes.rear.boxes) {
			const box = { left: b.x, right: b.x + b.w, top: b.y, bottom: b.y + b.h };
			expect(
				edges('rear').filter((part) => isWhole(box, part)),
				b.id
			).toHaveLength(1);
		}
		const ends = (figure: Figure) => [...figure.points.keys()].filter((n) => /^(SRC|p)\./.test(n));
		expect(ends(figures.rear).length).toBeGreaterThan(0);
		expect(ends(figures.front)).toEqual([]);
	});
});

it('boxes that fill two columns beside a panel are a part of their own', () => {
	const devices = Array.from({ length: 11 }, (_, i) => ({
		id: `D${i}`,
		kind: 'mic-input' as const,
		phantom: false
	}));
	const scene = sceneOf({ ...panelOf(16), devices: [...panelOf(16).devices, ...devices] });
	const parts = panelParts(scene);
	expect(parts.map((part) => part.sockets.length)).toEqual([8, 8, 0]);
	const { x, w } = parts.at(-1)!.box;
	expect(scene.boxes.every((b) => b.x >= x && b.x + b.w <= x + w)).toBe(true);
});
