/**
 * The gate: what it refuses, with the JSON path of the fault and a word on what would be right; what
 * it lets in, with what it fills in. Each refusal is one small change to a bench that is accepted,
 * so that nothing but the change can be the cause.
 */
import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, FAULT_KINDS, MOST_BYTES, PLUG_KINDS, RESERVED_IDS } from './bench';
import { jsonPath, makeBench, parseBench, parseJson, quote, type Problem } from './parse';

const HEAD = { format: 'solderside-bench', version: 1 };

/** A bench with one of everything, as a file would have it. */
const GOOD = {
	...HEAD,
	title: 'Stage box, left',
	panel: { metal: true },
	sockets: [
		{ id: 'A', kind: 'hybrid-10', bush: 'insulated', label: 'Stage 1' },
		{ id: 'J', kind: 'jack-trs', bush: 'metal' },
		{ id: 'M', kind: 'three-pin-male' }
	],
	wires: [
		{ id: 'w1', from: 'A.TN', to: 'A.2', awg: 26, mm: 40 },
		{ id: 'w2', from: 'A.G', to: 'panel' }
	],
	plugs: [
		{ id: 'p', kind: 'ts', socket: 'A', travel: 30.5 },
		{ id: 'q', kind: 'three-pin' }
	],
	devices: [
		{ id: 'DESK', kind: 'mic-input', phantom: true },
		{ id: 'MIC', kind: 'mic' }
	],
	cables: [{ id: 'c', m: 12, awg: 24, cores: [['A.2', 'DESK.hot']] }],
	faults: [
		{ kind: 'open', wire: 'w1' },
		{ kind: 'resistive', wire: 'c:0', ohms: 5 },
		{ kind: 'bridge', between: ['p.tip', 'DESK.cold'] },
		{ kind: 'swap', contacts: ['A.2', 'A.G'] },
		{ kind: 'break-dirty', contact: 'A.TN', ohms: 3 },
		{ kind: 'break-stuck-open', contact: 'A.RN' },
		{ kind: 'break-stuck-closed', contact: 'A.1N' },
		{ kind: 'spring-bent', contact: 'A.T' }
	]
};

type Json = Record<string, unknown>;
type Lists = 'sockets' | 'wires' | 'plugs' | 'devices' | 'cables' | 'faults';

/** The good bench with one entry of a list changed: keys set, or removed where undefined. */
function withEntry(list: Lists, index: number, change: Json): Json {
	const entries = structuredClone(GOOD[list]) as Json[];
	entries[index] = { ...entries[index], ...change };
	for (const key of Object.keys(change)) if (change[key] === undefined) delete entries[index]![key];
	return { ...GOOD, [list]: entries };
}
const withMore = (list: Lists, ...more: unknown[]): Json => ({
	...GOOD,
	[list]: [...(GOOD[list] as unknown[]), ...more]
});

function problemOf(file: unknown): Problem {
	const parsed = parseBench(typeof file === 'string' ? file : JSON.stringify(file));
	if (parsed.ok) throw new Error(`accepted: ${JSON.stringify(file).slice(0, 300)}`);
	return parsed.problem;
}
function benchOf(file: unknown) {
	const parsed = parseBench(JSON.stringify(file));
	if (!parsed.ok) throw new Error(`${parsed.problem.path}: ${parsed.problem.message}`);
	return parsed.value;
}
/** Each row: what is wrong, the file, the path of the fault, and a word that the message holds. */
type Row = [string, unknown, string, RegExp];
const refuses = (rows: Row[]) =>
	it.each(rows)('%s', (_, file, path, word) => {
		const problem = problemOf(file);
		expect(problem.path).toBe(path);
		expect(problem.message).toMatch(word);
		expect(problem.message).not.toMatch(/\n/);
	});

describe('a bench file that is right', () => {
	it('is accepted with one of everything in it', () => {
		const bench = benchOf(GOOD);
		expect(bench.sockets).toHaveLength(3);
		expect(bench.faults).toHaveLength(FAULT_KINDS.length);
	});
	it('needs format and version only', () => {
		expect(benchOf(HEAD)).toEqual(EMPTY_BENCH);
	});
	it('gets what it leaves out filled in', () => {
		const bench = benchOf({
			...HEAD,
			panel: {},
			sockets: [{ id: 'A', kind: 'jack-trs' }],
			wires: [{ id: 'w', from: 'A.T', to: 'A.R' }],
			plugs: [
				{ id: 'p', kind: 'ts', socket: 'A' },
				{ id: 'q', kind: 'ts' }
			],
			devices: [{ id: 'D', kind: 'mic-input' }],
			cables: [{ id: 'c', m: 1, cores: [] }]
		});
		expect(bench.panel).toEqual({ metal: false });
		expect(bench.sockets).toEqual([{ id: 'A', kind: 'jack-trs', bush: 'insulated', label: '' }]);
		expect(bench.wires).toEqual([{ id: 'w', from: 'A.T', to: 'A.R', awg: 26, mm: 40 }]);
		expect(bench.plugs).toEqual([
			{ id: 'p', kind: 'ts', socket: 'A', travel: 30.5 },
			{ id: 'q', kind: 'ts', socket: null, travel: 30.5 }
		]);
		expect(bench.devices).toEqual([{ id: 'D', kind: 'mic-input', phantom: false }]);
		expect(bench.cables).toEqual([{ id: 'c', m: 1, awg: 24, cores: [] }]);
	});
	it('may have a title and a label of any length that the file has room for', () => {
		const long = 'x'.repeat(200_000);
		const bench = benchOf({
			...HEAD,
			title: long,
			sockets: [{ id: 'A', kind: 'jack-ts', label: long }]
		});
		expect(bench.title).toBe(long);
		expect(bench.sockets[0]!.label).toBe(long);
	});
	it('may begin with a byte order mark', () => {
		expect(parseBench(`\uFEFF${JSON.stringify(GOOD)}`)).toEqual(parseBench(JSON.stringify(GOOD)));
	});
	it('comes back from the text that is made of it', () => {
		const bench = benchOf(GOOD);
		expect(parseBench(makeBench(bench))).toEqual({ ok: true, value: bench });
	});
	it.each(['a', '-', '_', '0', '1-b_C', 'x'.repeat(32), 'constructor', '__proto__', 'Panel', 'TS'])(
		'may use %s as an id',
		(id) => {
			const bench = benchOf({
				...HEAD,
				sockets: [{ id, kind: 'jack-ts' }],
				wires: [{ id: 'w', from: `${id}.T`, to: `${id}.S` }]
			});
			expect(bench.sockets[0]!.id).toBe(id);
		}
	);
	it.each([...'123', 'G'])('may swap contact %s of a three-pin socket with another', (contact) => {
		const other = contact === '1' ? '2' : '1';
		const fault = { kind: 'swap', contacts: [`M.${contact}`, `M.${other}`] };
		expect(benchOf({ ...GOOD, faults: [fault] }).faults).toEqual([fault]);
	});
	it('accepts "insulated" on a socket that has no bush, and phantom false on any device', () => {
		expect(() => benchOf(withEntry('sockets', 2, { bush: 'insulated' }))).not.toThrow();
		expect(() => benchOf(withEntry('devices', 1, { phantom: false }))).not.toThrow();
	});
});

describe('text that is no bench at all', () => {
	refuses([
		['empty text', '', '$', /not JSON/],
		['half an object', '{"format":', '$', /not JSON.*one JSON object/],
		['null', null, '$', /null.*a bench, an object in braces/],
		['a number', 3, '$', /3.*a bench, an object in braces/],
		['true', true, '$', /true.*a bench/],
		['a word', '"bench"', '$', /"bench".*a bench/],
		['an empty list', [], '$', /\[\].*a bench, an object in braces/],
		['a list with a bench in it', [GOOD], '$', /a bench, an object in braces/],
		['no format', { version: 1 }, '$.format', /missing/],
		['no version', { format: HEAD.format }, '$.version', /missing/],
		['an empty object', {}, '$.format', /missing/],
		['another format', { ...GOOD, format: 'bench' }, '$.format', /"bench".*solderside-bench/],
		['another version', { ...GOOD, version: 2 }, '$.version', /2.*should be 1/],
		['a version in quotation marks', { ...GOOD, version: '1' }, '$.version', /should be 1/]
	]);
	it('is refused without an exception however deep it is nested', () => {
		const deep = `${'['.repeat(300_000)}${']'.repeat(300_000)}`;
		for (const file of [deep, `{"format":${deep}}`, `{"x":${deep}}`])
			expect(parseBench(file).ok).toBe(false);
	});
	it('names the kind of file that was wanted', () => {
		const parsed = parseJson('{', 'an exercise');
		expect(!parsed.ok && parsed.problem.message).toMatch(/an exercise is one JSON object/);
	});
});

describe('the length of a file', () => {
	const padded = (bytes: number, pad: string) => {
		const bare = JSON.stringify({ ...HEAD, title: '' }).length;
		const per = new TextEncoder().encode(pad).length;
		const count = Math.floor((bytes - bare) / per);
		const rest = bytes - bare - count * per;
		return JSON.stringify({ ...HEAD, title: pad.repeat(count) + 'x'.repeat(rest) });
	};
	it.each(['x', 'é', '€', '😀'])('may be 1 MiB and no byte more, counted in UTF-8 (%s)', (pad) => {
		const most = padded(MOST_BYTES, pad);
		expect(new TextEncoder().encode(most).length).toBe(1024 * 1024);
		expect(parseBench(most).ok).toBe(true);
		const over = padded(MOST_BYTES + 1, pad);
		expect(parseBench(over)).toMatchObject({ ok: false, problem: { path: '$' } });
		expect(problemOf(over).message).toMatch(/1048577 bytes.*1048576 \(1 MiB\)/);
	});
});

describe('keys that nobody knows', () => {
	refuses([
		['in the file', { ...GOOD, colour: 1 }, '$.colour', /unknown key.*format, version/],
		['with a space', { ...GOOD, 'a key': 1 }, '$["a key"]', /unknown key/],
		['in the panel', { ...GOOD, panel: { metal: true, x: 1 } }, '$.panel.x', /unknown key.*metal/],
		['in a socket', withEntry('sockets', 1, { x: 1 }), '$.sockets[1].x', /unknown key.*bush/],
		['in a wire', withEntry('wires', 1, { x: 1 }), '$.wires[1].x', /unknown key.*awg/],
		['in a plug', withEntry('plugs', 1, { x: 1 }), '$.plugs[1].x', /unknown key.*travel/],
		['in a device', withEntry('devices', 0, { x: 1 }), '$.devices[0].x', /unknown key.*phantom/],
		['in a cable', withEntry('cables', 0, { mm: 1 }), '$.cables[0].mm', /unknown key.*cores/],
		['metres on a wire', withEntry('wires', 0, { m: 1 }), '$.wires[0].m', /unknown key.*mm/],
		...FAULT_KINDS.map((kind, i): Row => {
			const file = withEntry('faults', i, { x: 1 });
			return [`in a fault (${kind})`, file, `$.faults[${i}].x`, /unknown key.*kind/];
		}),
		['ohms on an open', withEntry('faults', 0, { ohms: 1 }), '$.faults[0].ohms', /unknown key/]
	]);
	it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])(
		'are refused when every object inherits them: %s',
		(key) => {
			const inFile = `{"${key}":{},${JSON.stringify(HEAD).slice(1)}`;
			expect(problemOf(inFile)).toMatchObject({ path: `$.${key}` });
			const socket = `{"id":"A","kind":"jack-ts","${key}":{"bush":"metal"}}`;
			const inSocket = `{"sockets":[${socket}],${JSON.stringify(HEAD).slice(1)}`;
			expect(problemOf(inSocket)).toMatchObject({ path: `$.sockets[0].${key}` });
			expect(problemOf(inSocket).message).toMatch(/unknown key/);
		}
	);
	it('do not become defaults through __proto__', () => {
		const file = `{"__proto__":{"panel":{"metal":true}},${JSON.stringify(HEAD).slice(1)}`;
		expect(parseBench(file).ok).toBe(false);
		expect(({} as Record<string, unknown>)['panel']).toBeUndefined();
	});
});

describe('a thing of the wrong type', () => {
	const object = /an object in braces/;
	const listed = /a list of .* in square brackets/;
	refuses([
		...(['sockets', 'wires', 'plugs', 'devices', 'cables', 'faults'] as const).flatMap(
			(list): Row[] => [
				[`${list} as an object`, { ...GOOD, [list]: {} }, `$.${list}`, listed],
				[`${list} as null`, { ...GOOD, [list]: null }, `$.${list}`, listed],
				[`a number among ${list}`, withMore(list, 3), `$.${list}[${GOOD[list].length}]`, object],
				[`null among ${list}`, withMore(list, null), `$.${list}[${GOOD[list].length}]`, object],
				[`a list among ${list}`, withMore(list, []), `$.${list}[${GOOD[list].length}]`, object]
			]
		),
		['a title that is a number', { ...GOOD, title: 3 }, '$.title', /text in quotation marks/],
		['a panel that is a list', { ...GOOD, panel: [] }, '$.panel', /\[\].*object in braces/],
		['a panel that is null', { ...GOOD, panel: null }, '$.panel', object],
		['a panel that is true', { ...GOOD, panel: true }, '$.panel', object],
		['a metal of 1', { ...GOOD, panel: { metal: 1 } }, '$.panel.metal', /true or false/],
		['an id of 5', withEntry('sockets', 0, { id: 5 }), '$.sockets[0].id', /an id/],
		['an empty id', withEntry('sockets', 0, { id: '' }), '$.sockets[0].id', /1 to 32/],
		['an id of 33', withEntry('plugs', 1, { id: 'x'.repeat(33) }), '$.plugs[1].id', /1 to 32/],
		['an id with a dot', withEntry('wires', 0, { id: 'w.1' }), '$.wires[0].id', /letters/],
		['an id with an umlaut', withEntry('wires', 0, { id: 'ü' }), '$.wires[0].id', /letters/],
		['an id with a new line', withEntry('devices', 0, { id: 'D\n' }), '$.devices[0].id', /letters/],
		['no id', withEntry('cables', 0, { id: undefined }), '$.cables[0].id', /missing/],
		['no kind', withEntry('sockets', 0, { kind: undefined }), '$.sockets[0].kind', /missing/],
		['a label of 1', withEntry('sockets', 0, { label: 1 }), '$.sockets[0].label', /text/],
		['no from', withEntry('wires', 0, { from: undefined }), '$.wires[0].from', /missing/],
		['no to', withEntry('wires', 0, { to: undefined }), '$.wires[0].to', /missing/],
		['no cores', withEntry('cables', 0, { cores: undefined }), '$.cables[0].cores', /missing/],
		['no metres', withEntry('cables', 0, { m: undefined }), '$.cables[0].m', /missing/],
		['cores as text', withEntry('cables', 0, { cores: 'A.2' }), '$.cables[0].cores', /cores/],
		[
			'a core of one',
			withEntry('cables', 0, { cores: [['A.2']] }),
			'$.cables[0].cores[0][1]',
			/node/
		],
		[
			'a core of three',
			withEntry('cables', 0, { cores: [['A.1', 'A.2', 'A.3']] }),
			'$.cables[0].cores[0][2]',
			/two nodes/
		],
		[
			'a phantom of 48',
			withEntry('devices', 0, { phantom: 48 }),
			'$.devices[0].phantom',
			/true or/
		],
		['no wire in a fault', withEntry('faults', 0, { wire: undefined }), '$.faults[0].wire', /miss/],
		['no ohms in a fault', withEntry('faults', 1, { ohms: undefined }), '$.faults[1].ohms', /miss/],
		[
			'a bridge between three',
			withEntry('faults', 2, { between: ['A.1', 'A.2', 'A.3'] }),
			'$.faults[2].between[2]',
			/two nodes/
		]
	]);
});

describe('kinds that nobody knows', () => {
	refuses([
		['socket', withEntry('sockets', 1, { kind: 'rca' }), '$.sockets[1].kind', /"rca".*hybrid-5/],
		['plug', withEntry('plugs', 0, { kind: 'TS' }), '$.plugs[0].kind', /"TS".*ts, trs/],
		['device', withEntry('devices', 1, { kind: 'amp' }), '$.devices[1].kind', /line-in/],
		['fault', withEntry('faults', 0, { kind: 'short' }), '$.faults[0].kind', /"short".*bridge/],
		['inherited', withEntry('sockets', 1, { kind: 'toString' }), '$.sockets[1].kind', /hybrid-5/],
		['bush', withEntry('sockets', 1, { bush: 'brass' }), '$.sockets[1].bush', /insulated or metal/]
	]);
});

describe('ids', () => {
	const first = { sockets: 'A', wires: 'w1', plugs: 'p', devices: 'DESK', cables: 'c' };
	const lists = Object.keys(first) as (keyof typeof first)[];
	refuses(
		lists.flatMap((one, i) =>
			lists.slice(i).map((other): Row => {
				const entry = { ...(GOOD[other][0] as Json), id: first[one] };
				// A second plug in the same socket would be a fault of its own.
				if (other === 'plugs') delete (entry as Json)['socket'];
				const path = `$.${other}[${GOOD[other].length}].id`;
				const word = new RegExp(`"${first[one]}" is the id of \\$\\.${one}\\[0\\]`);
				return [`the id of ${one} again in ${other}`, withMore(other, entry), path, word];
			})
		)
	);
	refuses(
		RESERVED_IDS.map((word): Row => {
			const file = withEntry('devices', 1, { id: word });
			return [`the word ${word}`, file, '$.devices[1].id', /a meaning of its own/];
		})
	);
	it('the words no id may be are panel, none and the plug kinds', () => {
		expect([...RESERVED_IDS]).toEqual(['panel', 'none', ...PLUG_KINDS]);
		expect([...PLUG_KINDS]).toEqual(['ts', 'trs', 'dummy', 'shorting', 'three-pin']);
	});
});

describe('references to what is not there', () => {
	const cores = (a: string, b: string) =>
		withEntry('cables', 0, {
			cores: [
				['A.2', 'A.3'],
				[a, b]
			]
		});
	const noPanel = { ...GOOD, panel: { metal: false } };
	refuses(
		[
			['an unknown owner', withEntry('wires', 0, { from: 'B.T' }), '$.wires[0].from', /no.*"B"/],
			[
				'no such contact',
				withEntry('wires', 0, { to: 'M.T' }),
				'$.wires[0].to',
				/"M".*1, 2, 3 or G/
			],
			[
				'a ring on a ts plug',
				withEntry('wires', 0, { to: 'p.ring' }),
				'$.wires[0].to',
				/tip or sleeve/
			],
			[
				'a terminal',
				withEntry('wires', 0, { to: 'MIC.shield' }),
				'$.wires[0].to',
				/hot, cold or shell/
			],
			['a bare id', withEntry('wires', 0, { to: 'A' }), '$.wires[0].to', /ID\.CONTACT, or panel/],
			['lower case', withEntry('wires', 0, { to: 'A.t' }), '$.wires[0].to', /it has 1, 2, 3, T/],
			['a wire as a node', withEntry('wires', 0, { to: 'w2.T' }), '$.wires[0].to', /"w2"/],
			[
				'a node of Object',
				withEntry('wires', 0, { to: 'A.toString' }),
				'$.wires[0].to',
				/"toString"/
			],
			['no panel', noPanel, '$.wires[1].to', /no panel.*panel\.metal/],
			['a core', cores('A.9', 'A.1'), '$.cables[0].cores[1][0]', /"9"/],
			['a core, second end', cores('A.1', 'X.1'), '$.cables[0].cores[1][1]', /"X"/],
			[
				'a plug',
				withEntry('plugs', 0, { socket: 'B' }),
				'$.plugs[0].socket',
				/no socket "B".*A, J/
			],
			[
				'a plug in a device',
				withEntry('plugs', 0, { socket: 'MIC' }),
				'$.plugs[0].socket',
				/"MIC"/
			],
			[
				'a fault’s wire',
				withEntry('faults', 0, { wire: 'w9' }),
				'$.faults[0].wire',
				/w1, w2 or c:0/
			],
			['a whole cable', withEntry('faults', 0, { wire: 'c' }), '$.faults[0].wire', /c:0/],
			['a core too many', withEntry('faults', 1, { wire: 'c:1' }), '$.faults[1].wire', /"c:1"/],
			['a core :00', withEntry('faults', 1, { wire: 'c:00' }), '$.faults[1].wire', /"c:00"/],
			['a wire as core', withEntry('faults', 1, { wire: 'w1:0' }), '$.faults[1].wire', /"w1:0"/],
			[
				'a bridge to nowhere',
				withEntry('faults', 2, { between: ['A.1', 'A.9'] }),
				'$.faults[2].between[1]',
				/"9"/
			],
			[
				'a swap with nowhere',
				withEntry('faults', 3, { contacts: ['A.9', 'A.1'] }),
				'$.faults[3].contacts[0]',
				/"9"/
			],
			[
				'a break contact',
				withEntry('faults', 4, { contact: 'J.TN' }),
				'$.faults[4].contact',
				/"TN"/
			],
			['a spring’s owner', withEntry('faults', 7, { contact: 'B.T' }), '$.faults[7].contact', /"B"/]
		].filter(([name]) => name !== 'a dummy has no conductor') as Row[]
	);
	it('says that a dummy plug has no conductor to name', () => {
		const file = {
			...GOOD,
			plugs: [...GOOD.plugs, { id: 'D', kind: 'dummy' }],
			wires: [{ id: 'w1', from: 'A.1', to: 'D.tip' }],
			faults: []
		};
		expect(problemOf(file)).toMatchObject({ path: '$.wires[0].to' });
		expect(problemOf(file).message).toMatch(/"D" has no conductor/);
	});
});

describe('things that cannot be', () => {
	refuses([
		[
			'a wire to itself',
			withEntry('wires', 0, { to: 'A.TN' }),
			'$.wires[0].to',
			/both ends.*A\.TN/
		],
		[
			'a core to itself',
			withEntry('cables', 0, { cores: [['A.2', 'A.2']] }),
			'$.cables[0].cores[0][1]',
			/both ends/
		],
		[
			'a bridge to itself',
			withEntry('faults', 2, { between: ['A.2', 'A.2'] }),
			'$.faults[2].between[1]',
			/two different/
		],
		[
			'a swap with itself',
			withEntry('faults', 3, { contacts: ['A.2', 'A.2'] }),
			'$.faults[3].contacts[1]',
			/two different/
		],
		[
			'a swap between sockets',
			withEntry('faults', 3, { contacts: ['A.2', 'M.2'] }),
			'$.faults[3].contacts',
			/one socket/
		],
		[
			'a swap on a plug',
			withEntry('faults', 3, { contacts: ['p.tip', 'p.sleeve'] }),
			'$.faults[3].contacts',
			/one socket/
		],
		['a dirty spring', withEntry('faults', 4, { contact: 'A.T' }), '$.faults[4].contact', /TN, RN/],
		['a stuck pin', withEntry('faults', 5, { contact: 'A.1' }), '$.faults[5].contact', /break/],
		[
			'a stuck chassis lug',
			withEntry('faults', 6, { contact: 'A.G' }),
			'$.faults[6].contact',
			/break/
		],
		[
			'a bent break',
			withEntry('faults', 7, { contact: 'A.TN' }),
			'$.faults[7].contact',
			/T, R or S/
		],
		['a bent pin', withEntry('faults', 7, { contact: 'A.1' }), '$.faults[7].contact', /spring/],
		['a bent plug', withEntry('faults', 7, { contact: 'p.tip' }), '$.faults[7].contact', /spring/],
		[
			'a second plug in one socket',
			withEntry('plugs', 1, { socket: 'A' }),
			'$.plugs[1].socket',
			/"A" holds plug "p".*one plug/
		],
		...['ts', 'trs', 'dummy', 'shorting'].map((kind): Row => [
			`a ${kind} plug in a three-pin socket`,
			withEntry('plugs', 1, { kind, socket: 'M' }),
			'$.plugs[1].socket',
			/does not go into a three-pin-male; three-pin would/
		]),
		[
			'a three-pin plug in a jack',
			withEntry('plugs', 1, { socket: 'J' }),
			'$.plugs[1].socket',
			/three-pin plug does not go into a jack-trs; ts, trs, dummy or shorting would/
		],
		...['hybrid-5', 'hybrid-6', 'hybrid-9', 'hybrid-10', 'three-pin-female', 'three-pin-male'].map(
			(kind): Row => [
				`a metal bush on ${kind}`,
				{ ...HEAD, panel: { metal: true }, sockets: [{ id: 'A', kind, bush: 'metal' }] },
				'$.sockets[0].bush',
				/has no bush/
			]
		),
		...['mic', 'line-out', 'line-out-unbalanced', 'line-in', 'line-in-unbalanced'].map(
			(kind): Row => [
				`phantom on a ${kind}`,
				withEntry('devices', 1, { kind, phantom: true }),
				'$.devices[1].phantom',
				/gives no phantom/
			]
		)
	]);
});

describe('numbers', () => {
	type Change = (n: unknown) => Json;
	const ranges: [string, Change, string, number[], number[]][] = [
		[
			'travel',
			(travel) => withEntry('plugs', 0, { travel }),
			'$.plugs[0].travel',
			[0, 0.001, 30.499, 30.5],
			[-0.001, 30.501, -1, 31]
		],
		[
			'awg of a wire',
			(awg) => withEntry('wires', 0, { awg }),
			'$.wires[0].awg',
			[10, 11, 39, 40],
			[9, 41, 0, -26, 9.999, 40.001]
		],
		[
			'awg of a cable',
			(awg) => withEntry('cables', 0, { awg }),
			'$.cables[0].awg',
			[10, 40],
			[9, 41, 9.999, 40.001]
		],
		[
			'mm',
			(mm) => withEntry('wires', 0, { mm }),
			'$.wires[0].mm',
			[1e-9, 0.5, 100_000],
			[0, -1, 100_000.1, 1e308]
		],
		[
			'm',
			(m) => withEntry('cables', 0, { m }),
			'$.cables[0].m',
			[1e-9, 0.5, 10_000],
			[0, -1, 10_000.1]
		],
		[
			'ohms in a wire',
			(ohms) => withEntry('faults', 1, { ohms }),
			'$.faults[1].ohms',
			[0, 1, 1e9],
			[-0.001, 1_000_000_001]
		],
		[
			'ohms on a break',
			(ohms) => withEntry('faults', 4, { ohms }),
			'$.faults[4].ohms',
			[0, 1e9],
			[-1, 1e10]
		]
	];
	it.each(ranges)('%s: both ends are in, and nothing beyond', (_, change, path, inside, beyond) => {
		for (const n of inside) expect(() => benchOf(change(n))).not.toThrow();
		for (const n of beyond) {
			const problem = problemOf(change(n));
			expect(problem.path).toBe(path);
			expect(problem.message).toMatch(/stands here; it should be a .*number (from|over)/);
		}
		for (const wrong of ['10', null, [10], true]) expect(problemOf(change(wrong)).path).toBe(path);
	});
	it('are refused when the text says more than a number holds', () => {
		const file = JSON.stringify(withEntry('cables', 0, { m: 12345 })).replace('12345', '1e999');
		expect(problemOf(file)).toMatchObject({ path: '$.cables[0].m' });
	});
});

describe('words about a problem', () => {
	it('quote a value and cut a long one', () => {
		expect(quote(undefined)).toBe('nothing');
		expect(quote('a\nb')).toBe('"a\\nb"');
		expect(quote('x'.repeat(100))).toHaveLength(58);
	});
	it('write a path with dots, indices, and brackets where a name needs them', () => {
		expect(jsonPath(['wires', 3, 'from'])).toBe('$.wires[3].from');
		expect(jsonPath(['a-b', '0', 'a"b'])).toBe('$["a-b"]["0"]["a\\"b"]');
		expect(jsonPath([])).toBe('$');
	});
});
