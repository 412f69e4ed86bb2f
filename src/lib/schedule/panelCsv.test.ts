/** A panel as a table: what a row means, what is refused and in which words, there and back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, SOCKET_KINDS, netsOf, splitNode, type Bench } from '../engine';
import { RUNS, benches } from '../../../tests/outside/benches';
import { leftOutOfCsv, makePanelCsv, panelWires, parsePanelCsv } from '.';

const HEAD = 'socket,kind,from,to,gauge,length';
const lines = (...rows: string[]) => `${[HEAD, ...rows].join('\r\n')}\r\n`;
function read(...rows: string[]): Bench {
	const panel = parsePanelCsv(lines(...rows));
	if (!panel.ok) throw new Error(JSON.stringify(panel.problems));
	return panel.bench;
}
/** `line column: message` of everything that is wrong. */
function wrong(text: string): string[] {
	const panel = parsePanelCsv(text);
	if (panel.ok) return [];
	return panel.problems.map((p) => `${p.line} ${p.column ?? '-'}: ${p.message}`);
}

describe('what a row means', () => {
	it('socket and kind alone are a socket without wires', () => {
		expect(read('A,hybrid-9,,,,').sockets).toEqual([
			{ id: 'A', kind: 'hybrid-9', bush: 'insulated', label: '' }
		]);
	});
	it('from and to are a wire between two of its contacts', () => {
		const { wires, sockets } = read('A,hybrid-9,TN,2,26,40', 'A,hybrid-9,RN,3,24,45.5');
		expect(sockets).toHaveLength(1);
		expect(wires).toEqual([
			{ id: 'w1', from: 'A.TN', to: 'A.2', awg: 26, mm: 40 },
			{ id: 'w2', from: 'A.RN', to: 'A.3', awg: 24, mm: 45.5 }
		]);
	});
	it('the kind stands once at least, on any of its rows', () => {
		expect(read('A,,TN,2,26,40', 'A,hybrid-9,,,,').sockets[0]!.kind).toBe('hybrid-9');
	});
	it('a wire to another socket names it, whether that comes earlier or later', () => {
		const { wires } = read('A,patch-jack,TN,B.TN,26,90', 'B,patch-jack,A.RN,RN,26,90');
		expect(wires.map((w) => [w.from, w.to])).toEqual([
			['A.TN', 'B.TN'],
			['A.RN', 'B.RN']
		]);
	});
	it('gauge and length left empty are 26 AWG and 40 mm, as in a bench file', () => {
		expect(read('A,hybrid-6,T,2,,').wires[0]).toMatchObject({ awg: 26, mm: 40 });
	});
	it('a wire to the panel makes it metal, and so does its own row', () => {
		expect(read('A,hybrid-6,1,G,26,40').panel.metal).toBe(false);
		expect(read('A,hybrid-6,G,panel,18,60').panel.metal).toBe(true);
		expect(read('panel,metal,,,,', 'A,hybrid-6,,,,').panel.metal).toBe(true);
	});
	it('label, bush and wire may have columns, and columns may stand in any order', () => {
		const text = `wire,label,Socket,KIND,to,from,length,gauge,bush\nx,"Stage 1, left",A,jack-trs,S,T,50,24,metal\n,,A,,R,S,,,\n`;
		const panel = parsePanelCsv(text, 'Left');
		expect(panel.ok && panel.bench).toMatchObject({
			title: 'Left',
			sockets: [{ id: 'A', kind: 'jack-trs', bush: 'metal', label: 'Stage 1, left' }],
			wires: [
				{ id: 'x', from: 'A.T', to: 'A.S', awg: 24, mm: 50 },
				{ id: 'w1', from: 'A.S', to: 'A.R', awg: 26, mm: 40 }
			]
		});
	});
	it('numbering passes over names that are taken', () => {
		const { wires } = read('w1,hybrid-6,T,2,26,40');
		expect(wires[0]!.id).toBe('w2');
	});
});

describe('what is wrong is named by line, with what would be right', () => {
	const ROWS: [row: string, right: string][] = [
		['A,hybrid-7,T,2,26,40', '2 kind: there is no kind "hybrid-7"; say hybrid-5, hybrid-6'],
		['A,,T,2,26,40', '2 kind: the kind is missing'],
		[',hybrid-9,T,2,26,40', '2 socket: the socket is missing'],
		['A B,hybrid-9,T,2,26,40', '2 socket: "A B" cannot be a name; use 1 to 32 letters'],
		['ts,hybrid-9,T,2,26,40', '2 socket: "ts" has a meaning of its own'],
		['A,hybrid-9,T,4,26,40', '2 to: a hybrid-9 has no contact "4"; it has 1, 2, 3, T'],
		['A,hybrid-9,T,B.2,26,40', '2 to: there is no socket "B" in the table'],
		['A,hybrid-9,T,,26,40', '2 to: to is missing; a wire has two ends'],
		['A,hybrid-9,,2,26,40', '2 from: from is missing'],
		['A,hybrid-9,,,26,', '2 from: from is missing'],
		['A,hybrid-9,T,A.T,26,40', '2 to: both ends are A.T'],
		[
			'A,hybrid-9,T,2,26.5,40',
			'2 gauge: "26.5" is not a whole number; write a whole number of AWG, 10 to 40'
		],
		['A,hybrid-9,T,2,9,40', '2 gauge: "9" is out of range'],
		['A,hybrid-9,T,2,26 AWG,40', '2 gauge: "26 AWG" is not a number'],
		['A,hybrid-9,T,2,26,0', '2 length: "0" is out of range; write millimetres'],
		['A,hybrid-9,T,2,26,-5', '2 length: "-5" is out of range'],
		['A,hybrid-9,T,2,26,4 cm', '2 length: "4 cm" is not a number; write millimetres'],
		['A,hybrid-9,T,2,26,"40,5"', '2 length: "40,5" has a comma; write a full stop, 40.5'],
		['A,hybrid-9,T,2,26,1e999', '2 length: "1e999" is out of range'],
		['A,hybrid-9,T,2,26', '2 -: the row has 5 fields; the first line has 6'],
		[
			'panel,wood,,,,',
			'2 kind: "wood" is no kind of panel; write panel,metal where the panel is metal, and no such row where it is not'
		],
		['panel,,,,,', '2 kind: the row of the panel has no kind; write panel,metal'],
		[
			'panel,metal,Z.G,,,',
			'2 from: "Z.G" stands in the row of the panel, which says panel,metal and no more; a wire to the panel goes into the row of its socket'
		]
	];
	it.each(ROWS)('%s', (row, right) => {
		const all = wrong(lines(row));
		expect(
			all.some((p) => p.startsWith(right)),
			all.join('\n')
		).toBe(true);
	});
	it.each(ROWS)('and with %s among good rows nothing is loaded', (row) => {
		expect(parsePanelCsv(lines('Z,hybrid-9,TN,2,26,40', row)).ok).toBe(false);
	});
	it('all of them at once, in the order of the lines', () => {
		const all = wrong(
			lines('A,hybrid-9,T,4,26,40', 'A,hybrid-6,T,2,9,x', 'B,jack-ts,T,S,26,40', 'C,none,,,,')
		);
		expect(all.map((p) => p.slice(0, p.indexOf(':')))).toEqual([
			'2 to',
			'3 kind',
			'3 gauge',
			'3 length',
			'5 kind'
		]);
	});
	it('two kinds for one socket, naming both lines', () => {
		expect(wrong(lines('A,hybrid-9,,,,', 'A,hybrid-6,,,,'))).toEqual([
			'3 kind: "hybrid-6" stands here and "hybrid-9" on line 2; a socket has one kind'
		]);
	});
	it('a row that repeats another, naming both lines', () => {
		const one = 'the row repeats the one on line';
		expect(
			wrong(
				lines(
					'A,hybrid-9,TN,2,26,40',
					'B,jack-trs,,,,',
					'A,,2,A.TN,,',
					'B,jack-trs,,,,',
					'panel,metal,,,,',
					'panel,metal,,,,'
				)
			)
		).toEqual([
			`4 -: ${one} 2; take one of the two away, or, if two wires lie side by side, give each a name in a column wire`,
			`5 -: ${one} 3; take one of the two away`,
			`7 -: ${one} 6; take one of the two away`
		]);
	});
	it('but two wires side by side are right when they have names, or differ in gauge or length', () => {
		const named = parsePanelCsv(`${HEAD},wire\nA,jack-ts,T,S,26,40,x\nA,,T,S,26,40,y\n`);
		expect(named.ok && named.bench.wires.map((w) => w.id)).toEqual(['x', 'y']);
		expect(read('A,jack-ts,T,S,26,40', 'A,,T,S,24,40').wires).toHaveLength(2);
		const text = makePanelCsv(read('A,jack-ts,T,S,26,40', 'A,,T,S,24,40'));
		expect(text).not.toContain('wire');
		const twins = read('A,jack-ts,T,S,26,40', 'A,,T,S,24,40');
		const alike = { ...twins, wires: twins.wires.map((w) => ({ ...w, awg: 26 })) };
		expect(makePanelCsv(alike)).toContain('40,w2');
		expect(parsePanelCsv(makePanelCsv(alike))).toEqual({ ok: true, bench: alike });
	});
	it('a wire whose row is another socket’s', () => {
		const all = wrong(lines('A,hybrid-9,,,,', 'B,hybrid-9,,,,', 'C,hybrid-9,A.T,B.T,26,40'));
		expect(all).toEqual(['4 socket: neither end is on C; name the socket of one of them here']);
	});
	it('a name given twice, and a bush where there is none', () => {
		const text = `${HEAD},wire,bush\nA,hybrid-9,T,2,26,40,x,metal\nA,hybrid-9,R,3,26,40,x,\nB,jack-ts,T,S,,,A,steel\n`;
		expect(wrong(text)).toEqual([
			'2 bush: a hybrid-9 has no bush; leave it empty',
			'3 wire: "x" is the name of the wire on line 2 already',
			'4 bush: the bush is "steel"; say insulated or metal',
			'4 wire: "A" is the name of a socket already'
		]);
	});
	it.each([
		[
			`${HEAD.replaceAll(',', ';')}\nA;hybrid-9;T;2;26;40,5`,
			'the columns are parted by semicolons'
		],
		[`${HEAD.replaceAll(',', '\t')}\nA\thybrid-9`, 'the columns are parted by tabs'],
		['A,hybrid-9,T,2,26,40', 'there is no column "a"; the first line should be socket,kind'],
		['socket,kind,from,to,gauge', 'the column length is missing'],
		[`${HEAD},kind`, 'the column kind stands twice'],
		[`${HEAD},colour`, 'there is no column "colour"'],
		['', 'the table is empty'],
		['\n\n', 'the table is empty'],
		['"socket', 'a quotation mark is opened here'],
		['x'.repeat(1_048_577), 'the file is too long']
	])('a first line that does not do: %.40j', (text, right) => {
		const all = wrong(text);
		expect(all).toHaveLength(1);
		expect(all[0]).toContain(`1 -: ${right}`);
	});
});

describe('there and back', () => {
	/** The bench as far as the table holds it: wires in the order of their sockets. */
	function held(bench: Bench): Bench {
		const isSocket = (id: string) => bench.sockets.some((s) => s.id === id);
		const home = (w: Bench['wires'][number]) =>
			[w.from, w.to].map((n) => splitNode(n)[0]).find(isSocket);
		const wires = bench.sockets.flatMap((s) => panelWires(bench).filter((w) => home(w) === s.id));
		const sockets = bench.sockets.map((s) => ({ ...s, label: s.label.trim() }));
		return { ...EMPTY_BENCH, panel: bench.panel, sockets, wires };
	}
	it('any panel comes back with the same sockets, wires and names', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const back = parsePanelCsv(makePanelCsv(any));
				expect(back).toEqual({ ok: true, bench: held(any) });
			}),
			RUNS
		);
	});
	it('and the second time out is the first', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const text = makePanelCsv(any);
				const back = parsePanelCsv(text);
				expect(back.ok && makePanelCsv(back.bench)).toBe(text);
			}),
			RUNS
		);
	});
	it('what is held and what is left out are all there is', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const parts = [...any.wires, ...any.cables, ...any.devices, ...any.plugs].map((x) => x.id);
				const both = [...panelWires(any).map((w) => w.id), ...leftOutOfCsv(any)];
				expect(both.sort()).toEqual(parts.sort());
			}),
			RUNS
		);
	});
	it('a panel of wires alone has the same nets afterwards', () => {
		fc.assert(
			fc.property(benches(), (any) => {
				const alone = { ...any, plugs: [], devices: [], cables: [], faults: [] };
				const panel = { ...alone, wires: panelWires(alone) };
				const back = parsePanelCsv(makePanelCsv(panel));
				expect(back.ok && netsOf(back.bench).list).toEqual(netsOf(panel).list);
			}),
			RUNS
		);
	});
	it('a plain panel has the six columns and no more', () => {
		const text = makePanelCsv(read('A,hybrid-9,TN,2,26,40', 'B,jack-ts,,,,'));
		expect(text).toBe(lines('A,hybrid-9,TN,2,26,40', 'B,jack-ts,,,,'));
	});
	it('every kind of socket can be written and read', () => {
		const text = lines(...SOCKET_KINDS.map((kind, i) => `S${i},${kind},,,,`));
		const panel = parsePanelCsv(text);
		expect(panel.ok && panel.bench.sockets.map((s) => s.kind)).toEqual([...SOCKET_KINDS]);
	});
	it('a label that looks like a formula is text in the table and itself on the bench', () => {
		const label = '=HYPERLINK("x")';
		const bench: Bench = {
			...EMPTY_BENCH,
			sockets: [{ id: '-A', kind: 'jack-ts', bush: 'insulated', label }]
		};
		const text = makePanelCsv(bench);
		expect(text).toContain(`"'=HYPERLINK(""x"")"`);
		expect(text).toContain(`\r\n'-A,jack-ts`);
		const back = parsePanelCsv(text);
		expect(back.ok && back.bench.sockets).toEqual(bench.sockets);
	});
});
