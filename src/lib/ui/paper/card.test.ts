/** The test card as groups, as CSV and as a figure: every probe and every silent fault is on each of them. */
import { describe, expect, it } from 'vitest';
import { WORD_SIZES, svgOf, type Figure } from '../../diagram';
import { cardOf, faultListOf, makingCards } from '../../diagnosis';
import { SOCKET_KINDS, checkBench, inState, isJoined, withFaults, type Bench } from '../../engine';
import { parseCsv } from '../../schedule';
import {
	acrossWords,
	cardNode,
	cardState,
	countWords,
	progressWords,
	silentGroups
} from '../../words/card';
import { makeCardCsv } from './cardCsv';
import { cardFigure, linesOf } from './cardFigure';
import { PAGE_WIDTH, acrossDevices, panelRear, bondsOf, groupsOf } from './cardParts';

function bench(parts: object): Bench {
	const made = checkBench({ format: 'solderside-bench', version: 1, ...parts });
	if (!made.ok) throw new Error(`${made.problem.path}: ${made.problem.message}`);
	return made.value;
}
const PLATE = bench({
	title: 'Plate <1>',
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-6', label: '=Stage' }],
	wires: [
		{ id: 'w1', from: 'A.T', to: 'A.2' },
		{ id: 'w2', from: 'A.R', to: 'A.3' }
	],
	devices: [{ id: 'DESK', kind: 'mic-input' }],
	cables: [{ id: 'c', m: 5, cores: [['A.2', 'DESK.hot']] }]
});
const TWO = bench({
	sockets: [
		{ id: 'A', kind: 'jack-ts-break' },
		{ id: 'B', kind: 'jack-ts-break' }
	],
	wires: [{ id: 'w1', from: 'A.TN', to: 'B.T' }]
});

describe.each([
	['a plate', PLATE],
	['two jacks', TWO]
])('the card of %s', (_, of) => {
	const card = cardOf(of);
	const rows = groupsOf(of, card).flatMap((g) => g.rows);

	it('has every probe once, numbered in its order, and each plug state once', () => {
		expect(rows.map((r) => r.number)).toEqual(card.probes.map((_, i) => i + 1));
		const states = groupsOf(of, card).map((g) => g.state);
		expect(new Set(states).size).toBe(states.length);
		expect(card.probes.length).toBeGreaterThan(3);
	});
	it('says of each probe what the bench answers', () => {
		for (const { when, pair, expect: said } of card.probes)
			expect(isJoined(inState(of, when), ...pair) ? 'joined' : 'apart').toBe(said);
		expect(rows.map((r) => r.expect)).toEqual(
			card.probes.map((p) => (p.expect === 'joined' ? 'sounds' : 'silent'))
		);
	});
	it('names every fault that no probe catches', () => {
		const groups = silentGroups(of, card.silent);
		expect(groups.flatMap((g) => g.faults)).toHaveLength(card.silent.length);
	});
	it('is whole as CSV', () => {
		const read = parseCsv(makeCardCsv(of, card));
		if (!read.ok) throw new Error('no CSV');
		const [head, ...lines] = read.rows.map((r) => r.fields);
		expect(head).toEqual(['step', 'plugs', 'red', 'black', 'should_be', 'was', 'note']);
		expect(lines.map((l) => l[0]).filter((s) => /^\d+$/.test(s!))).toEqual(
			rows.map((r) => String(r.number))
		);
		expect(lines.filter((l) => l[0] === 'by eye and by meter')).toHaveLength(bondsOf(of).length);
		expect(lines.every((l) => l.length === 7)).toBe(true);
	});
	it('is whole as a figure, and nothing stands outside it', () => {
		const figure = cardFigure(of, card);
		const words = figure.marks.flatMap((m) => (m.kind === 'word' ? [m] : []));
		for (const row of rows) expect(words.map((w) => w.text)).toContain(`${row.red} – ${row.black}`);
		for (const word of words) {
			expect(word.x).toBeGreaterThan(0);
			expect(word.x).toBeLessThan(PAGE_WIDTH);
			expect(word.y).toBeLessThan(figure.height);
		}
		const svg = svgOf(figure, { palette: 'ink' });
		expect(svg).not.toContain('NaN');
		expect(svg).not.toContain('<1>');
	});
});

describe('the bond of a chassis lug', () => {
	it('stands on the card of a metal panel, for each socket that has one, and is no probe of it', () => {
		expect(bondsOf(PLATE)).toEqual([{ key: 'bond A', lug: 'G' }]);
		expect(bondsOf({ ...PLATE, panel: { metal: false } })).toEqual([]);
		expect(bondsOf({ ...TWO, panel: { metal: true } })).toEqual([]);
		const words = cardFigure(PLATE, cardOf(PLATE)).marks.flatMap((m) =>
			m.kind === 'word' ? [m.text] : []
		);
		expect(words).toContain('G – bare metal of the panel');
	});
	it('is opened by no fault of the list, so no reading of the list can prove it', () => {
		const open = faultListOf(PLATE).filter((f) => f.kind === 'open');
		for (const fault of open)
			expect(isJoined(withFaults(PLATE, [fault]), 'A.G', 'panel')).toBe(true);
		expect(isJoined(PLATE, 'A.G', 'panel')).toBe(true);
	});
});

describe('a probe’s key', () => {
	it('is its own, and stays when the plugs of the file lie loose and nothing is in a socket', () => {
		const keysOf = (of: Bench) => groupsOf(of, cardOf(of)).flatMap((g) => g.rows.map((r) => r.key));
		const keys = keysOf(PLATE);
		expect(new Set(keys).size).toBe(keys.length);
		const loose = bench({ plugs: [{ id: 'p', kind: 'ts' }] }).plugs;
		expect(keysOf({ ...PLATE, plugs: loose })).toEqual(keys);
	});
});

describe('words of the card', () => {
	it('a state is a heading, and the file’s own state says what stands in the sockets', () => {
		expect(cardState(PLATE, { A: 'ts' })).toBe('With a TS plug in the socket');
		expect(cardState(PLATE, {})).toBe('With no plug in any socket');
		const used = bench({
			sockets: [{ id: 'A', kind: 'jack-ts' }],
			plugs: [{ id: 'p', kind: 'ts', socket: 'A' }]
		});
		expect(cardState(used, {})).toBe('With the plugs as they stand on the bench');
	});
	it('a single socket’s contacts stand alone, several with their socket', () => {
		expect(['A.2', 'DESK.hot', 'panel'].map((n) => cardNode(PLATE, n))).toEqual([
			'2',
			'DESK.hot',
			'panel'
		]);
		expect(cardNode(TWO, 'A.T')).toBe('A.T');
	});
	it('says whether a shorter card can exist', () => {
		const aim = 'fewest-probes' as const;
		const card = { aim, probes: cardOf(TWO).probes.slice(0, 1), silent: [], changes: 1 };
		expect(countWords({ ...card, exact: true })).toBe(
			'1 probe, 1 plug change. No card that catches as much has fewer probes.'
		);
		expect(countWords({ ...card, exact: false })).toContain('not proven the fewest');
	});
	it('says what the search does just now', () => {
		expect(progressWords({ stage: 'looking', done: 3, of: 73 })).toBe(
			'Step 1 of 3: 3 of 73 plug states looked at.'
		);
		expect(progressWords({ stage: 'sorting', done: 8000, of: 8688 })).toContain(
			'8,000 of 8,688 are left'
		);
		const stages = new Set<string>();
		const sockets = ['A', 'B', 'C'].map((id) => ({ id, kind: 'hybrid-10' }));
		const wires = ['A', 'B'].map((id, i) => ({ id: `w${i}`, from: `${id}.S`, to: 'C.S' }));
		for (const making = makingCards(bench({ sockets, wires })); ;) {
			const step = making.next();
			if (step.done) break;
			stages.add(step.value.stage);
		}
		expect([...stages]).toEqual(['looking', 'sorting', 'choosing']);
	});
	it('says of the least work whether less can exist', () => {
		const card = {
			...{ aim: 'least-effort' as const, silent: [], changes: 1 },
			probes: cardOf(TWO).probes.slice(0, 1)
		};
		expect(countWords({ ...card, exact: true })).toBe(
			'1 probe, 1 plug change. No card that catches as much is less work, a plug change counted as 4 probes.'
		);
	});
});

describe('lines of a paragraph', () => {
	it('hold every word in order, none longer than asked for unless it is one word', () => {
		const text = 'a bb ccc dddd eeeee ffffffffffffffffffffffffffffff g';
		const lines = linesOf(text, 100);
		expect(lines.join(' ')).toBe(text);
		for (const line of lines) expect(line.length <= 12 || !line.includes(' ')).toBe(true);
	});
});

describe('the rear on the card', () => {
	it('has lugs and the jumpers of the panel, no plugs, cables or devices, and fits beside the text when there is one socket', () => {
		const figure = panelRear(PLATE)!;
		const wires = figure.marks.flatMap((m) => (m.kind === 'stroke' && m.ink && m.of ? [m.of] : []));
		expect([...new Set(wires)].sort()).toEqual(['w1', 'w2']);
		expect(figure.marks.some((m) => m.kind === 'word' && m.text === 'DESK')).toBe(false);
		expect(figure.marks.some((m) => m.kind === 'word' && m.text === 'T')).toBe(true);
		expect(figure.width).toBeLessThan(PAGE_WIDTH / 2);
	});
	/** Boxes that the words fill, by letters of three fifths of their height. */
	const wordBoxes = ({ marks }: Figure) =>
		marks.flatMap((m) => {
			if (m.kind !== 'word') return [];
			const high = WORD_SIZES.plain[m.role] * 0.72;
			const wide = m.text.length * WORD_SIZES.plain[m.role] * 0.6;
			const left = m.x - (m.anchor === 'start' ? 0 : m.anchor === 'end' ? wide : wide / 2);
			return [{ text: m.text, x0: left, x1: left + wide, y0: m.y - high, y1: m.y }];
		});
	/** Edges of flanges and blocks that are rectangles, whatever their corners. */
	const blocks = ({ marks }: Figure) =>
		marks.flatMap((m) => {
			const isBlock = m.kind === 'stroke' && ['insulator', 'body'].includes(m.role);
			if (!isBlock || !m.d.includes('L')) return [];
			const [xs, ys] = cornersOf(m.d);
			return [
				{ x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
			];
		});
	const cornersOf = (d: string): [number[], number[]] => {
		const ends = [...d.matchAll(/[MLA]([^MLAZ]*)/g)].map(([, n]) => n!.trim().split(/[ ,]+/));
		return [ends.map((n) => Number(n.at(-2))), ends.map((n) => Number(n.at(-1)))];
	};
	it.each([1, 2, 4])('of %i has no word over another, and none across the edge of a block', (n) => {
		for (const kind of SOCKET_KINDS) {
			const sockets = Array.from({ length: n }, (_, i) => ({
				id: 'ABCD'[i],
				kind,
				label: 'Stage 1'
			}));
			const figure = panelRear(bench({ panel: { metal: true }, sockets }))!;
			const words = wordBoxes(figure);
			const edges = blocks(figure);
			expect(edges.length, kind).toBeGreaterThanOrEqual(n);
			const wrong = words.flatMap((a, i) => [
				...words
					.slice(0, i)
					.filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
					.map((b) => `${a.text} over ${b.text}`),
				...edges
					.filter(({ x0, x1, y0, y1 }) => {
						const isIn = a.x0 > x0 && a.x1 < x1 && a.y0 > y0 && a.y1 < y1;
						return !isIn && a.x0 < x1 && a.x1 > x0 && a.y0 < y1 && a.y1 > y0;
					})
					.map(() => `${a.text} across an edge`)
			]);
			expect(wrong, kind).toEqual([]);
		}
	});
	it('is left out where its lugs could not be told apart', () => {
		const many = Array.from({ length: 13 }, (_, i) => ({ id: `S${i}`, kind: 'jack-ts' }));
		expect(panelRear(bench({ sockets: many }))).toBeNull();
		expect(panelRear(bench({}))).toBeNull();
	});
});

describe('silent rows across a device', () => {
	const line = bench({
		sockets: [{ id: 'A', kind: 'three-pin-female' }],
		devices: [{ id: 'DESK', kind: 'mic-input' }],
		cables: [
			{
				id: 'c',
				m: 5,
				cores: [
					['A.2', 'DESK.hot'],
					['A.3', 'DESK.cold']
				]
			}
		]
	});
	const row = (a: string, b: string, expect: 'apart' | 'joined') => ({
		when: {},
		pair: [a, b] as [string, string],
		expect
	});
	it('are named by their numbers, and no other row is', () => {
		const probes = [
			row('A.1', 'A.2', 'apart'),
			row('A.2', 'A.3', 'apart'),
			row('A.2', 'DESK.hot', 'joined'),
			row('DESK.cold', 'A.2', 'apart')
		];
		const across = acrossDevices(line, { probes });
		expect(across).toEqual([{ id: 'DESK', numbers: [2, 4] }]);
		expect(acrossWords(across)).toMatch(/^Across a device: 2, 4 \(DESK\)\. A transformer/);
		expect(acrossWords([])).toBe('');
	});
});
