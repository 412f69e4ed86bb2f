import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { COMMANDS } from './commands';
import type { Io } from './io';
import { OPTIONS } from './options';
import { oneLine, run } from './run';

const bench = (parts: object): string =>
	JSON.stringify({ format: 'solderside-bench', version: 1, ...parts });

/** A hybrid of nine with a jumper TN–2, no plug in it, on a metal panel. */
const JUMPERED = bench({
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-9' }],
	wires: [{ id: 'w1', from: 'A.TN', to: 'A.2', awg: 26, mm: 40 }]
});
const WITH_TS = bench({
	sockets: [{ id: 'A', kind: 'hybrid-9' }],
	plugs: [{ id: 'p', kind: 'ts', socket: 'A' }]
});
/** A microphone input with phantom power on, and nothing cabled to it. */
const PHANTOM = bench({ devices: [{ id: 'DESK', kind: 'mic-input', phantom: true }] });
const MIC = bench({
	devices: [
		{ id: 'DESK', kind: 'mic-input' },
		{ id: 'MIC', kind: 'mic' },
		{ id: 'DEAF', kind: 'line-in' }
	],
	cables: [
		{
			id: 'c',
			m: 0.001,
			cores: [
				['MIC.hot', 'DESK.hot'],
				['MIC.cold', 'DESK.cold']
			]
		}
	]
});
const EXERCISE = JSON.stringify({
	title: 'keys of the exercise’s own are let be',
	require: [
		{ when: { A: 'none' }, joined: [['A.T', 'A.2']], apart: [['A.2', 'A.3']] },
		{ when: { A: 'ts' }, apart: [['A.R', 'A.S']], hazard: true, why: 'the sleeve lies on both' }
	]
});

/** Two lugs of a tip jack with its break contact; a reading that no single fault of it explains. */
const JACK = bench({ sockets: [{ id: 'J', kind: 'jack-ts-break' }] });
const READINGS = JSON.stringify({
	readings: [{ when: { J: 'none' }, pair: ['J.T', 'J.TN'], answer: 'apart' }]
});
const AT_ODDS = JSON.stringify({
	readings: [
		{ when: { J: 'ts' }, pair: ['J.T', 'J.TN'], answer: 'apart' },
		{ pair: ['J.S', 'J.T'], answer: 'joined' },
		{ when: { J: 'none' }, pair: ['J.T', 'J.TN'], answer: 'apart' }
	]
});

type Content = string | Uint8Array | { code: string };
const FILES: Readonly<Record<string, Content>> = {
	'a.json': JUMPERED,
	'ts.json': WITH_TS,
	'phantom.json': PHANTOM,
	'mic.json': MIC,
	'exercise.json': EXERCISE,
	'jack.json': JACK,
	'none.json': '{"readings":[]}',
	'readings.json': READINGS,
	'odds.json': AT_ODDS,
	'-': JUMPERED,
	'missing.json': { code: 'ENOENT' },
	folder: { code: 'EISDIR' },
	'secret.json': { code: 'EACCES' },
	'odd.json': { code: 'EIO' },
	'latin.json': new Uint8Array([0x7b, 0xe9, 0x7d]),
	'long.json': new Uint8Array(1_048_577).fill(0x20),
	'text.json': 'hello\nthere',
	'empty.json': '',
	'strange.json': bench({ sockets: [{ id: 'A', kind: 'hybrid-7' }] }),
	'deep.json': `{"format":${'['.repeat(200_000)}${']'.repeat(200_000)}}`,
	'two\nlines.json': 'hello',
	'short.json': bench({
		sockets: [{ id: 'A', kind: 'hybrid-9' }],
		wires: [
			{ id: 'w1', from: 'A.1', to: 'A.2', mm: Number.MIN_VALUE },
			{ id: 'w2', from: 'A.2', to: 'A.3', mm: 40 }
		]
	})
};

interface Outcome {
	status: number;
	out: string;
	err: string;
	/** Files in the order in which they were read. */
	read: string[];
}

/** Runs the program on the files above. `readers`: how many writes anybody takes in. */
async function answerTo(argv: readonly string[], readers = Infinity): Promise<Outcome> {
	const outcome: Outcome = { status: -1, out: '', err: '', read: [] };
	const io: Io = {
		async read(file) {
			outcome.read.push(file);
			const content = FILES[file] ?? { code: 'ENOENT' };
			if (typeof content === 'string') return new TextEncoder().encode(content);
			if (content instanceof Uint8Array) return content;
			throw Object.assign(new Error('no'), content);
		},
		async out(text) {
			outcome.out += text;
			return --readers > 0;
		},
		async err(text) {
			outcome.err += text;
		}
	};
	outcome.status = await run(argv, io);
	return outcome;
}
const words = (line: string): string[] => line.split(' ');

describe('answers', () => {
	it('nets lists every node, single ones too, in code-point order', async () => {
		const { out, err, status } = await answerTo(['nets', 'a.json']);
		expect(out).toBe(
			'{"nets":[["A.1"],["A.2","A.T","A.TN"],["A.3"],["A.G","panel"],["A.R","A.RN"],["A.S","A.SN"]]}\n'
		);
		expect([err, status]).toEqual(['', 0]);
	});
	// 26 AWG is 133.9 Ω/km (standard wire table), so 40 mm are 5.356 mΩ; the closed break adds 15 mΩ.
	it('ohms adds the closed break contact and 40 mm of 26 AWG', async () => {
		const { out } = await answerTo(words('ohms a.json --from A.T --to A.2'));
		expect(out).toMatch(/^\{"ohms":0\.02035\d+\}\n$/);
	});
	it('ohms is null where nothing joins the two, and zero from a node to itself', async () => {
		expect((await answerTo(words('ohms a.json --from A.1 --to panel'))).out).toBe(
			'{"ohms":null}\n'
		);
		expect((await answerTo(words('ohms a.json --from A.1 --to A.1'))).out).toBe('{"ohms":0}\n');
	});
	it('ohms of a wire shorter than any number of ohms still add up', async () => {
		const { out } = await answerTo(words('ohms short.json --from A.1 --to A.3'));
		expect(out).toMatch(/^\{"ohms":0\.00535\d+\}\n$/);
	});
	it('volts has a sign, and is null where nothing ties the two', async () => {
		const volts = async (from: string, to: string) =>
			(await answerTo(['volts', 'phantom.json', '--from', from, '--to', to])).out;
		expect(await volts('DESK.hot', 'DESK.shield')).toBe('{"volts":48}\n');
		expect(await volts('DESK.shield', 'DESK.hot')).toBe('{"volts":-48}\n');
		expect((await answerTo(words('volts a.json --from A.1 --to A.3'))).out).toBe(
			'{"volts":null}\n'
		);
	});
	it('meter adds the leads, sounds, and leaves them out once zeroed', async () => {
		const line = words('meter a.json --mode continuity --red A.T --black A.2');
		expect((await answerTo(line)).out).toMatch(
			/^\{"display":"0\.2 Ω","ohms":0\.22035\d*,"beep":true,"warning":null\}\n$/
		);
		expect((await answerTo([...line, '--zeroed'])).out).toMatch(
			/^\{"display":"0\.0 Ω","ohms":0\.02035\d*,"beep":true,"warning":null\}\n$/
		);
	});
	it('meter says over range where nothing joins the probes', async () => {
		const { out } = await answerTo(words('meter a.json --mode=ohms --red=A.1 --black=A.3'));
		expect(out).toBe('{"display":"over range","ohms":null,"beep":false,"warning":null}\n');
	});
	// 48 V behind 6810 Ω beside 6810 + 3000 Ω is 4019.6 Ω; 10 MΩ of meter across it: 47.9807 V.
	it('meter shows volts as its own 10 MΩ leaves them', async () => {
		const line = 'meter phantom.json --mode volts --red DESK.hot --black DESK.shield';
		expect((await answerTo(words(line))).out).toMatch(
			/^\{"display":"47\.98 V","ohms":null,"volts":47\.9807\d*,"beep":false,"warning":null\}\n$/
		);
	});
	it('meter gives a warning and no reading on a live circuit', async () => {
		const line = 'meter phantom.json --mode ohms --red DESK.hot --black DESK.shield';
		const reading = JSON.parse((await answerTo(words(line))).out);
		expect(Object.keys(reading)).toEqual(['display', 'ohms', 'beep', 'warning']);
		expect(reading.ohms).toBeNull();
		expect(reading.warning).toContain('live circuit');
	});
	it('matrix gives a state for each plug that fits', async () => {
		const { out } = await answerTo(words('matrix ts.json --socket A'));
		const answer = JSON.parse(out);
		expect(Object.keys(answer)).toEqual(['socket', 'states']);
		expect(Object.keys(answer.states)).toEqual([
			'none',
			'ts',
			'trs',
			'dummy',
			'shorting',
			'three-pin'
		]);
		expect(answer.states.ts).toEqual([['A.R', 'A.S']]);
		expect(answer.states.none).toEqual([
			['A.R', 'A.RN'],
			['A.S', 'A.SN'],
			['A.T', 'A.TN']
		]);
	});
	// 3 kΩ of the input beside 200 Ω of the coil: 20·log10(3000/3200) = −0.561 dB.
	it('hears names every input, the deaf one too', async () => {
		const { out } = await answerTo(['hears', 'mic.json']);
		expect(out).toMatch(
			/^\{"hears":\{"DESK":\{"MIC":\{"db":-0\.560\d+,"polarity":"\+"\}\},"DEAF":\{\}\}\}\n$/
		);
	});
	it('netlist is plain text, one resistor a conductor', async () => {
		const { out } = await answerTo(['netlist', 'a.json']);
		expect(out).toMatch(/^\* Solderside bench: /);
		expect(out.endsWith('\n.end\n')).toBe(true);
		// Three closed breaks, one jumper, the chassis lug on the panel.
		expect(out.match(/^R\d+ /gm)).toHaveLength(5);
		expect(out).toContain('= A.TN\n');
	});
	it('schedule gives conductors, nets, order, cuts and warnings', async () => {
		const { out } = await answerTo(['schedule', 'a.json']);
		const answer = JSON.parse(out);
		expect(Object.keys(answer)).toEqual([
			'title',
			'conductors',
			'nets',
			'order',
			'cuts',
			'warnings'
		]);
		expect(answer.conductors).toEqual([
			{
				...{ name: 'w1', kind: 'jumper', from: 'A.TN', to: 'A.2', awg: 26, mm2: 0.1288, mm: 40 },
				...{ colour: 'RD', function: 'hot', net: 'A.2' },
				labels: ['w1 A.TN > A.2', 'w1 A.2 > A.TN']
			}
		]);
		expect(answer.nets).toEqual([
			{ name: 'A.2', nodes: ['A.2', 'A.T', 'A.TN'], conductors: ['w1'] }
		]);
		expect(answer.order.map((s: { at: string }) => s.at)).toEqual(['A.2', 'A.TN']);
		// 40 mm and 5 mm stripped at each end; a tenth more to buy.
		expect(answer.cuts.wires[0]).toMatchObject({ pieces: [{ name: 'w1', mm: 50 }], buy: 55 });
	});
	it('schedule of a bench with nothing on it is empty', async () => {
		const { out } = await answerTo(['schedule', 'ts.json']);
		expect(JSON.parse(out)).toMatchObject({ conductors: [], nets: [], order: [], warnings: [] });
	});
	it('score counts checks, and one unsafe check makes it 0', async () => {
		const { out } = await answerTo(words('score a.json --exercise exercise.json'));
		const failed = { when: { A: 'ts' }, pair: ['A.R', 'A.S'], wanted: 'apart' };
		expect(out).toBe(
			`${JSON.stringify({ checks: 3, passed: 2, unsafe: [failed], failed: [failed], score: 0 })}\n`
		);
	});
	it('faults counts the list, sorts it into classes, and names what no probe can catch', async () => {
		const { out, status } = await answerTo(['faults', 'jack.json']);
		const between = (a: string, b: string) => ({ kind: 'bridge', between: [`J.${a}`, `J.${b}`] });
		const contact = (kind: string, c: string) => ({ kind, contact: `J.${c}` });
		expect(JSON.parse(out)).toEqual({
			faults: 7,
			classes: [
				// At rest T and TN are one net, so a splash from S to either is the same; a plug parts them.
				[between('S', 'T')],
				[between('S', 'TN')],
				[between('T', 'TN'), contact('break-stuck-closed', 'TN'), contact('spring-bent', 'T')],
				[contact('break-stuck-open', 'TN')],
				[contact('spring-bent', 'S')]
			],
			silent: [contact('spring-bent', 'S')]
		});
		expect(status).toBe(0);
	});
	it('card lists probes state by state with what a sound bench says', async () => {
		const { out } = await answerTo(['card', 'jack.json']);
		expect(JSON.parse(out)).toEqual({
			probes: [
				{ when: {}, pair: ['J.S', 'J.T'], expect: 'apart' },
				{ when: {}, pair: ['J.T', 'J.TN'], expect: 'joined' },
				{ when: { J: 'ts' }, pair: ['J.T', 'J.TN'], expect: 'apart' }
			],
			silent: [{ kind: 'spring-bent', contact: 'J.S' }]
		});
	});
	it('diagnose names what agrees with the readings', async () => {
		const { out } = await answerTo(words('diagnose jack.json --readings readings.json'));
		expect(JSON.parse(out)).toEqual({
			candidates: [{ faults: [{ kind: 'break-stuck-open', contact: 'J.TN' }], weight: 1 }],
			total: 1,
			next: null
		});
	});
	it('diagnose with more faults at once gives the size of each class', async () => {
		const line = 'diagnose jack.json --readings readings.json --most';
		for (const most of [2, 3]) {
			const { candidates, total, next } = JSON.parse(
				(await answerTo(words(`${line} ${most}`))).out
			);
			expect(candidates).toHaveLength(total);
			const members = candidates.reduce((n: number, c: { members: number }) => n + c.members, 0);
			// Stuck open besides up to one or two of the other six, but for a splash across the break,
			// and but for the splashes S–T with S–TN, which are a way round it.
			expect(members).toBe(most === 2 ? 1 + 5 : 1 + 5 + 10 - 1);
			const weights = candidates.map((c: { weight: number }) => c.weight);
			expect(weights.reduce((a: number, b: number) => a + b, 0)).toBeCloseTo(1, 12);
			expect(Object.keys(next)).toEqual(['when', 'pair', 'gain']);
		}
	});
	it('diagnose names the fewest readings that nothing satisfies', async () => {
		const { out, status } = await answerTo(words('diagnose jack.json --readings odds.json'));
		expect(JSON.parse(out)).toEqual({
			candidates: [],
			total: 0,
			next: null,
			conflict: [
				{ when: {}, pair: ['J.S', 'J.T'], answer: 'joined' },
				{ when: { J: 'none' }, pair: ['J.T', 'J.TN'], answer: 'apart' }
			]
		});
		expect(status).toBe(0);
	});
	it('one line a file, in order, the same file twice if it is named twice', async () => {
		const { out } = await answerTo(['hears', 'mic.json', 'a.json', '-', 'mic.json']);
		const lines = out.split('\n');
		expect(lines).toHaveLength(5);
		expect(lines[1]).toBe('{"hears":{}}');
		expect(lines[0]).toBe(lines[3]);
	});
});

describe('lines for people', () => {
	const rows: [string, RegExp][] = [
		['nets a.json', /^a\.json: 6 nets\n {2}A\.1\n {2}A\.2 {2}A\.T {2}A\.TN\n/],
		['ohms a.json --from A.T --to A.2', /^a\.json: A\.T to A\.2: 20\.36 mΩ\n$/],
		['ohms a.json --from A.1 --to A.2', /nothing joins them\n$/],
		['volts phantom.json --from DESK.hot --to DESK.shield', /DESK\.hot over DESK\.shield: 48 V\n$/],
		['volts a.json --from A.1 --to A.2', /nothing ties the two\n$/],
		['meter a.json --mode continuity --red A.T --black A.2', /: 0\.2 Ω, the beeper sounds\n$/],
		['meter phantom.json --mode ohms --red DESK.hot --black DESK.shield', /\n {2}warning: live/],
		['matrix ts.json --socket A', /\n {2}ts: A\.R–A\.S\n {2}trs: nothing joined\n/],
		['hears mic.json', /\n {2}DESK hears MIC at -0\.6 dB, polarity \+\n {2}DEAF hears nothing\n$/],
		[
			'faults jack.json',
			/^jack\.json: 5 classes of faults \(7 single faults\)\n {2}bridge J\.S–J\.T\n/
		],
		['faults jack.json', /\n {2}no probe can catch: spring-bent J\.S\n$/],
		['card jack.json', /3 probes\n {2}with the bench as it is: J\.S–J\.T should be apart\n/],
		[
			'diagnose jack.json --readings readings.json',
			/1 single fault agrees\n {2}100 %: break-stuck-open J\.TN\n/
		],
		[
			'diagnose jack.json --readings none.json',
			/\n {2}next, with .*: J\.\S+–J\.\S+ tells 0\.\d\d bit\n$/
		],
		[
			'diagnose jack.json --readings odds.json',
			/\n {2}measure again, with J none: J\.T–J\.TN was apart\n$/
		],
		[
			'schedule a.json',
			/^a\.json: 1 conductor, 2 cups\n {2}Conductors\n {4}w1: A\.TN to A\.2, 26 AWG \(0\.1288 mm²\), 40 mm, RD red, hot\n/
		],
		[
			'score a.json --exercise exercise.json',
			/^a\.json: 2 of 3 checks passed, score 0\n {2}unsafe,/
		]
	];
	it.each(rows)('%s --pretty', async (line, right) => {
		const { out, status } = await answerTo([...words(line), '--pretty']);
		expect(out).toMatch(right);
		expect(status).toBe(0);
	});
	it('no JSON stands in them', async () => {
		const { out } = await answerTo(['nets', 'a.json', '--pretty']);
		expect(out).not.toMatch(/[[\]{}"]/);
	});
});

describe('a bad file is one line on standard error, and the others are answered', () => {
	const rows: [string, string][] = [
		['missing.json', 'missing.json: $: there is no such file'],
		['never-heard-of.json', 'never-heard-of.json: $: there is no such file'],
		['folder', 'folder: $: this is a folder'],
		['secret.json', 'secret.json: $: this file may not be read'],
		['odd.json', 'odd.json: $: the file cannot be read (EIO)'],
		['latin.json', 'latin.json: $: the file is not UTF-8 text'],
		['long.json', 'long.json: $: the file is too long; at most 1048576 bytes'],
		['text.json', 'text.json: $: not JSON'],
		['empty.json', 'empty.json: $: not JSON'],
		['strange.json', 'strange.json: $.sockets[0].kind: "hybrid-7" stands here'],
		['deep.json', 'deep.json: $.format: something nested very deep'],
		['two\nlines.json', 'two lines.json: $: not JSON'],
		['', '"": $: there is no such file']
	];
	it.each(rows)('%j', async (file, right) => {
		const { out, err, status } = await answerTo(['nets', 'a.json', file, 'ts.json']);
		expect(status).toBe(1);
		expect(out.split('\n')).toHaveLength(3);
		expect(err.startsWith(right)).toBe(true);
		expect(err.indexOf('\n')).toBe(err.length - 1);
	});
	const named: [string, string][] = [
		['ohms --from B.T --to A.2', '--from: nothing on the bench has the id "B"'],
		['ohms --from A.T --to A.4', '--to: "A" has no contact "4"; it has 1, 2'],
		['volts --from A.T --to A', '--to: "A" has no contact ""'],
		['meter --mode volts --red X.1 --black A.2', '--red: nothing on the bench has the id "X"'],
		['meter --mode volts --red A.1 --black X', '--black: nothing on the bench has the id "X"'],
		['matrix --socket B', '--socket: there is no socket "B"; name A']
	];
	it.each(named)('%s: what this bench does not have', async (line, right) => {
		const { out, err, status } = await answerTo([...words(line), 'a.json']);
		expect([out, status]).toEqual(['', 1]);
		expect(err.startsWith(`a.json: ${right}`)).toBe(true);
		expect(err.indexOf('\n')).toBe(err.length - 1);
	});
	it('every command goes on after a bad file', async () => {
		const given: Record<string, string> = {
			mode: 'ohms',
			socket: 'A',
			exercise: 'exercise.json',
			readings: 'none.json'
		};
		for (const [name, { needs }] of COMMANDS) {
			const options = needs.map((o) => `--${o}=${given[o] ?? 'A.1'}`);
			const files = ['a.json', 'strange.json', '-'];
			const { out, err, status } = await answerTo([name, ...options, ...files]);
			expect([name, status]).toEqual([name, 1]);
			expect(err.split('\n')).toHaveLength(2);
			const starts = name === 'netlist' ? /^\* Solderside bench/gm : /^\{"/gm;
			expect(out.match(starts)).toHaveLength(2);
		}
	});
	it('a bad exercise is one line, whatever the number of benches', async () => {
		for (const file of ['missing.json', 'text.json', 'a.json']) {
			const { out, err, status } = await answerTo([
				'score',
				'ts.json',
				'mic.json',
				`--exercise=${file}`
			]);
			expect([out, status]).toEqual(['', 1]);
			expect(err).toMatch(new RegExp(`^${file}: \\$.*\n$`));
			expect(err).not.toContain('a bench file');
		}
	});
	it('readings of what the bench does not have name both', async () => {
		const { out, err, status } = await answerTo(
			words('diagnose a.json jack.json --readings readings.json')
		);
		expect(status).toBe(1);
		expect(err).toMatch(/^readings\.json: \$\.readings\[0\]\.when\.J: [^\n]* \(bench a\.json\)\n$/);
		expect(out).toMatch(/^\{"candidates":/);
	});
	it('a bad readings file is one line, whatever the number of benches', async () => {
		for (const file of ['missing.json', 'text.json', 'a.json']) {
			const { out, err, status } = await answerTo(
				words(`diagnose jack.json a.json --readings ${file}`)
			);
			expect([out, status]).toEqual(['', 1]);
			expect(err).toMatch(new RegExp(`^${file}: \\$.*\n$`));
		}
	});
	it('an exercise that asks for what the bench does not have names both', async () => {
		const { out, err, status } = await answerTo(
			words('score mic.json a.json --exercise exercise.json')
		);
		expect(status).toBe(1);
		expect(err).toBe(
			'exercise.json: $.require[0].when.A: the bench has no socket "A" (bench mic.json)\n'
		);
		expect(out).toMatch(/^\{"checks":3,/);
	});
});

describe('wrong usage is one or two lines on standard error, and nothing is read', () => {
	const rows: [string, RegExp][] = [
		['', /no command given; say nets, ohms/],
		['knots a.json', /unknown command "knots"; say nets/],
		['constructor a.json', /unknown command/],
		['knots --help', /unknown command/],
		['nets', /needs at least one FILE/],
		['nets --', /needs at least one FILE/],
		['nets a.json --loud', /unknown option --loud/],
		['nets a.json --toString', /unknown option --toString/],
		['nets -x', /unknown option -x/],
		['nets a.json --from A.T', /nets does not take --from/],
		['ohms a.json --from A.T --to A.2 --zeroed', /ohms does not take --zeroed/],
		['ohms a.json --to A.T', /ohms needs --from NODE/],
		['ohms a.json --from A.T', /ohms needs --to NODE/],
		['ohms a.json --from --to A.T', /--from needs a value/],
		['ohms a.json --to A.T --from', /--from needs a value/],
		['ohms a.json --to A.T --from=', /--from needs a value/],
		['ohms a.json --from A.T --from A.2 --to A.3', /--from is given twice/],
		['nets a.json --pretty --pretty', /--pretty is given twice/],
		['nets a.json --pretty=yes', /--pretty takes no value/],
		['volts a.json', /volts needs --from/],
		['meter a.json --red A.T --black A.2', /meter needs --mode/],
		['meter a.json --mode ohms --black A.2', /meter needs --red/],
		['meter a.json --mode ohms --red A.2', /meter needs --black/],
		['meter a.json --mode amps --red A.2 --black A.3', /say continuity, ohms or volts/],
		['matrix a.json', /matrix needs --socket ID/],
		['schedule', /needs at least one FILE/],
		['schedule a.json --from A.T', /schedule does not take --from/],
		['score a.json', /score needs --exercise FILE/],
		['diagnose a.json', /diagnose needs --readings FILE/],
		['diagnose a.json --readings r.json --most 4', /--most 4: say 1, 2 or 3/],
		['diagnose a.json --readings r.json --most 0', /--most 0: say 1, 2 or 3/],
		['diagnose a.json --readings r.json --most two', /say 1, 2 or 3/],
		['diagnose - --readings -', /standard input \(-\) can be read only once/],
		['faults a.json --most 2', /faults does not take --most/],
		['nets - -', /standard input \(-\) can be read only once/],
		['score - --exercise -', /standard input \(-\) can be read only once/]
	];
	it.each(rows)('%s', async (line, right) => {
		const { out, err, status, read } = await answerTo(line === '' ? [] : words(line));
		expect(err).toMatch(right);
		expect(err).toMatch(/^solderside: [^\n]+\n([^\n]+\n)?$/);
		expect([out, status, read]).toEqual(['', 2, []]);
	});
});

describe('words and options', () => {
	it('options stand before, between and after the files', async () => {
		const usual = await answerTo(words('ohms a.json --from A.T --to A.2'));
		for (const line of [
			'ohms --from A.T --to A.2 a.json',
			'--from=A.T ohms a.json --to=A.2',
			'ohms --to A.2 a.json --from A.T',
			'ohms --to A.2 --from A.T -- a.json'
		])
			expect((await answerTo(words(line))).out).toBe(usual.out);
	});
	it('after -- a word is a file, even one that looks like an option', async () => {
		const { err, status } = await answerTo(words('nets -- --pretty --help'));
		expect(status).toBe(1);
		expect(err).toBe(
			['--pretty', '--help'].map((f) => `${f}: $: there is no such file; check the name\n`).join('')
		);
	});
	it('standard input may be the bench or the exercise', async () => {
		expect((await answerTo(['nets', '-'])).out).toBe((await answerTo(['nets', 'a.json'])).out);
		const { err } = await answerTo(words('score a.json --exercise -'));
		expect(err).toMatch(/^-: \$\.require: missing/);
	});
	it('help of the program names every command, help of a command its options', async () => {
		for (const argv of [['--help'], ['-h']]) {
			const { out, err, status } = await answerTo(argv);
			expect([err, status]).toEqual(['', 0]);
			for (const name of COMMANDS.keys()) expect(out).toContain(`\n  ${name} `);
		}
		for (const [name, { needs, takes }] of COMMANDS)
			for (const argv of [
				[name, '--help'],
				['--help', name],
				[name, '--loud', '--help']
			]) {
				const { out, status, read } = await answerTo(argv);
				expect([status, read]).toEqual([0, []]);
				expect(out.startsWith(`${name}: `)).toBe(true);
				for (const option of [...needs, ...takes]) expect(out).toContain(OPTIONS[option].says);
			}
	});
	it('line ends, escape sequences and other control characters become spaces', () => {
		expect(oneLine('a\r\nb\u001b[31mc\u2028d\u0085e')).toBe('a b [31mc d e');
	});
	it('once nobody reads the answers, no more files are opened', async () => {
		const { read, status } = await answerTo(['nets', 'a.json', 'ts.json', 'mic.json'], 1);
		expect(read).toEqual(['a.json']);
		expect(status).toBe(0);
	});
});

describe('the program itself', () => {
	const root = fileURLToPath(new URL('../..', import.meta.url));
	const folder = mkdtempSync(join(tmpdir(), 'solderside-cli-'));
	afterAll(() => rmSync(folder, { recursive: true, force: true }));
	const at = (name: string) => join(folder, name);
	writeFileSync(at('a.json'), JUMPERED);

	/** Runs a shell line with `solderside` meaning the real program; `cwd` is where the person stands. */
	function shell(line: string, input = '', cwd = root) {
		const program = `npm --prefix '${root}' run -s solderside --`;
		return new Promise<{ status: number | null; out: string; err: string }>((settle) => {
			const child = spawn('bash', ['-c', line.replace(/\bsolderside\b/g, program)], { cwd });
			let out = '';
			let err = '';
			child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
			child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
			child.on('close', (status) => settle({ status, out, err }));
			child.stdin.on('error', () => {});
			child.stdin.end(input);
		});
	}

	it('reads files from where the person stands, and standard input', async () => {
		const { status, out, err } = await shell('solderside nets a.json - none.json', MIC, folder);
		expect(status).toBe(1);
		expect(out.split('\n')).toHaveLength(3);
		expect(err).toBe('none.json: $: there is no such file; check the name\n');
	});
	const names = Array.from({ length: 400 }, (_, i) => `${i}.json`).join(' ');
	const big = bench({
		sockets: Array.from({ length: 40 }, (_, i) => ({ id: `S${i}`, kind: 'hybrid-10' }))
	});
	for (let i = 0; i < 400; i++) writeFileSync(at(`${i}.json`), i % 2 ? JUMPERED : big);

	it('answers 400 files in one start, every byte of it, through a pipe', async () => {
		const { status, out, err } = await shell(`solderside nets ${names} | cat`, '', folder);
		expect([status, err]).toEqual([0, '']);
		const lines = out.trimEnd().split('\n');
		expect(lines).toHaveLength(400);
		expect(lines.map((l) => JSON.parse(l).nets.length)).toEqual(
			lines.map((_, i) => (i % 2 ? 6 : 40 * 7))
		);
	});
	// The answers are far longer than a pipe holds (64 KiB), so the program does meet the closed end.
	it('ends quietly when its reader leaves', async () => {
		const line = `solderside nets ${names} | head -1; echo \${PIPESTATUS[0]}`;
		const { status, out, err } = await shell(line, '', folder);
		expect([status, err]).toEqual([0, '']);
		expect(out).toMatch(/^\{"nets":[^\n]*\n0\n$/);
	});
	it.skipIf(!existsSync('/dev/full'))('says in one line that the disk is full', async () => {
		const { status, out, err } = await shell('solderside nets a.json > /dev/full', '', folder);
		expect([status, out]).toEqual([1, '']);
		expect(err).toMatch(/^solderside: [^\n]*ENOSPC[^\n]*\n$/);
	});
	it('stops reading at the limit, even of a stream without an end', async () => {
		const { status, out, err } = await shell('yes | solderside nets -');
		expect([status, out]).toEqual([1, '']);
		expect(err).toMatch(/^-: \$: the file is too long; [^\n]*\n$/);
	});
});
