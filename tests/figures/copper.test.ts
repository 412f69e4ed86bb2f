/**
 * Copper is what touches metal now, in every view: held here to the circuit of the bench, contact by
 * contact, and never without the letter of its net.
 */
import { describe, expect, it } from 'vitest';
import type { Figure, Stroke } from '../../src/lib/diagram/figure';
import { litLive, litNet, litNow, litPath, netLetters } from '../../src/lib/diagram/lit';
import { sceneFigure } from '../../src/lib/diagram/sceneFigure';
import { SOCKETS, circuit, pathBetween, type Bench } from '../../src/lib/engine';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { BUSY, panelOf } from '../../src/routes/gallery/benches';
import { EVENT_STATES, SEATED_STATES, SOCKET, benchIn, nameOf } from './benches';

const states = [...SEATED_STATES, ...EVENT_STATES].map((s) => [nameOf(s), s] as const);
const litStrokes = ({ marks }: Figure): Stroke[] =>
	marks.filter((m): m is Stroke => m.kind === 'stroke' && m.lit === true);
const isLit = (figure: Figure, of: string, roles: readonly string[]): boolean =>
	litStrokes(figure).some((s) => s.of === of && roles.includes(s.role));

const METAL_PANEL = { panel: { metal: true } };

describe.each(['rear', 'front'] as const)('copper from the %s', (view) => {
	it.each(states)(
		'%s: a seat is copper exactly while its break is closed, a leaf as its spring',
		(_, state) => {
			const bench = benchIn(state, METAL_PANEL);
			const figure = sceneFigure(bench, view, litLive(bench));
			const rests = new Set(
				circuit(bench).conductors.flatMap(({ reason: r }) =>
					r.kind === 'rest' || r.kind === 'changeover' ? [r.contact] : []
				)
			);
			const { breaks, changeover } = SOCKETS[state.kind];
			const seats = ['seat', 'seat-closed'];
			const touches = litLive(bench).nodes;
			const all = { ...breaks, ...(changeover && { NC: 'C', NO: 'C' }) };
			for (const [contact, spring] of Object.entries(all)) {
				expect(isLit(figure, `${SOCKET}.${contact}`, seats), contact).toBe(rests.has(contact));
				const leaf = `${SOCKET}.${spring}`;
				expect(isLit(figure, leaf, ['blade']), spring).toBe(touches.has(leaf));
				const leaves = figure.marks.filter((m) => m.role === 'blade' && m.of === leaf);
				expect(leaves, spring).toHaveLength(1);
			}
		}
	);
	it.each(states)('%s: a contact is copper exactly while it touches metal', (_, state) => {
		const bench = benchIn(state, METAL_PANEL);
		const figure = sceneFigure(bench, view, litLive(bench));
		const touching = new Set(circuit(bench).conductors.flatMap(({ a, b }) => [a, b]));
		for (const contact of SOCKETS[state.kind].contacts) {
			const of = `${SOCKET}.${contact}`;
			expect(isLit(figure, of, ['metal', 'hidden']), contact).toBe(touching.has(of));
		}
	});
	it.each(states)('%s: nothing is copper without the letter of its net', (_, state) => {
		const bench = benchIn(state, METAL_PANEL);
		const letters = netLetters(bench);
		for (const { of } of litStrokes(sceneFigure(bench, view, litLive(bench))))
			expect(letters.has(of!), of).toBe(true);
	});
});

describe('copper of one piece', () => {
	const plugged = benchIn({ kind: 'three-pin-male', plug: 'three-pin', travel: 30.5 }, METAL_PANEL);
	const empty = benchIn({ kind: 'hybrid-10', plug: null, travel: 0 }, METAL_PANEL);

	it('takes in plate, shell and panel with the chassis lug, with a plug and without', () => {
		for (const bench of [plugged, empty])
			for (const view of ['rear', 'front'] as const) {
				const lit = litStrokes(sceneFigure(bench, view, litLive(bench)));
				const roles = lit.filter((s) => s.of === `${SOCKET}.G`).map((s) => s.role);
				// The plate's edge and the shell.
				expect(roles.filter((r) => r === 'outline')).toHaveLength(2);
				expect(lit.filter((s) => s.of === 'panel').map((s) => s.role)).toContain('fine');
			}
	});
	it('takes in bush and plate where the bush is metal, and none of them where it is not', () => {
		const kind = 'jack-trs' as const;
		const withBush = (bush: 'metal' | 'insulated') => {
			const bench = benchIn({ kind, plug: null, travel: 0 }, METAL_PANEL);
			const sockets = bench.sockets.map((s) => ({ ...s, bush }));
			return { ...bench, sockets };
		};
		for (const [bush, count] of [
			['metal', { rear: ['hidden', 'hidden', 'metal', 'outline'], front: 1 }],
			['insulated', { rear: [], front: 0 }]
		] as const) {
			const bench = withBush(bush);
			const of = (view: 'rear' | 'front') =>
				litStrokes(sceneFigure(bench, view, litLive(bench))).filter((s) => s.of === `${SOCKET}.S`);
			const rear = of('rear').map((s) => s.role);
			expect(rear.sort()).toEqual(count.rear);
			expect(of('front').filter((s) => s.role === 'metal')).toHaveLength(count.front);
		}
	});
	it('takes in the shell of a mated three-pin plug, round its pins, and leaves the opening empty', () => {
		const bench = benchIn({ kind: 'hybrid-10', plug: 'three-pin', travel: 8 }, METAL_PANEL);
		const [plug] = bench.plugs;
		for (const view of ['rear', 'front'] as const) {
			const figure = sceneFigure(bench, view, litLive(bench));
			const shell = litStrokes(figure).filter((s) => s.of === `${plug!.id}.shell`);
			// The second is its terminal in the plug's box.
			expect(shell.map((s) => s.role)).toContain(view === 'rear' ? 'hidden' : 'outline');
			expect(figure.marks.filter((m) => m.role === 'dimension')).toEqual([]);
		}
	});
	it('leaves the plate of a plastic panel in ink', () => {
		const bench = benchIn({ kind: 'hybrid-10', plug: null, travel: 0 });
		const lit = litStrokes(
			sceneFigure({ ...bench, panel: { metal: false } }, 'rear', litLive(bench))
		);
		expect(lit.map((s) => s.of).filter((of) => of === 'panel')).toEqual([]);
	});
	it('shows the pins of a mated plug on the face, and none without one', () => {
		const pins = (bench: Bench) =>
			litStrokes(sceneFigure(bench, 'front', litLive(bench)))
				.filter((s) => s.role === 'metal' && /^A\.[123]$/.test(s.of!))
				.map((s) => s.of);
		expect(pins(plugged)).toEqual([`${SOCKET}.1`, `${SOCKET}.2`, `${SOCKET}.3`].sort());
		expect(pins(benchIn({ kind: 'three-pin-male', plug: null, travel: 0 }))).toEqual([]);
	});
});

describe('the one rule', () => {
	const path = litPath(pathBetween(BUSY, 'A.T', 'A.TN'));
	const none = litPath(null);
	it('is the path while both probes are joined, then the net that is pointed at, then all that touches', () => {
		expect(litNow(BUSY, path, 'A.G')).toBe(path);
		expect(litNow(BUSY, none, 'A.G')).toEqual(litNet(BUSY, 'A.G'));
		expect(litNow(BUSY, none)).toEqual(litLive(BUSY));
	});
	it('leaves wires their colours until one points or probes', () => {
		for (const bench of [BUSY, panelOf(12)]) expect(litLive(bench).wires.size).toBe(0);
		expect(litNow(BUSY, none, 'A.G').wires.size).toBeGreaterThan(0);
	});
	it('of all sockets is the rule of each', () => {
		const bench = benchOf({
			sockets: [
				{ id: 'A', kind: 'patch-jack' },
				{ id: 'B', kind: 'hybrid-10' }
			]
		});
		const each = ['A', 'B'].flatMap((id) => [...litLive(bench, id).nodes]);
		expect(litLive(bench).nodes).toEqual(new Set(each));
	});
});

describe('wires from the front', () => {
	it('have the colour, the line pattern and the letter that they have from the rear, and cover nothing', () => {
		const of = (view: 'rear' | 'front') => {
			const { marks } = sceneFigure(BUSY, view);
			const wires = marks.filter((m) => m.kind === 'stroke' && m.ink);
			const letters = marks.filter((m) => m.kind === 'word' && m.role === 'wire');
			return { inks: wires.map((w) => [w.of, (w as Stroke).ink]), letters, marks };
		};
		const [rear, front] = [of('rear'), of('front')];
		expect(front.inks).toHaveLength(12);
		expect(front.inks).toEqual(rear.inks);
		expect(front.letters.map((w) => w.kind === 'word' && w.text)).toEqual(
			rear.letters.map((w) => w.kind === 'word' && w.text)
		);
		expect(front.marks.filter((m) => m.role === 'halo')).toEqual([]);
	});
});

describe('a panel seen from far', () => {
	const bench = panelOf(48);
	const far = sceneFigure(bench, 'rear', undefined, { lettering: 'large', far: true });
	const strokes = far.marks.filter((m): m is Stroke => m.kind === 'stroke');
	it('has a dot in the opening of the one socket with a plug, and nothing fine', () => {
		const dots = strokes.filter((s) => s.role === 'seat-closed' && s.of === undefined);
		expect(dots).toHaveLength(1);
		expect(strokes.filter((s) => s.role === 'fine').filter((s) => s.of === undefined)).toEqual([]);
	});
	it('cuts a long name, so that it ends before the next one begins', () => {
		const label = 'Monitor return from the balcony';
		const sockets = bench.sockets.map((socket) => ({ ...socket, label }));
		const { marks } = sceneFigure({ ...bench, sockets }, 'rear', undefined, { far: true });
		const names = marks.filter((m) => m.kind === 'word' && /^S\d+ · /.test(m.text));
		expect(names).toHaveLength(48);
		// Half an em a letter, 44 units large: the pitch of sockets is 330.
		for (const name of names)
			if (name.kind === 'word') expect(name.text.length * 22).toBeLessThan(330);
	});
});
