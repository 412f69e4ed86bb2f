/** Requirements as elementary checks, how they are counted, and what one unsafe check does. */
import { describe, expect, it } from 'vitest';
import { PLUG_KINDS, type Bench } from './bench';
import { benchOf } from './bench.fixture';
import {
	checkRequirements,
	checksOf,
	scoreOf,
	strangeRequirement,
	type Requirement
} from './requirement';

function requireOf(...require: unknown[]): Requirement[] {
	const checked = checkRequirements(JSON.parse(JSON.stringify({ require })));
	if (!checked.ok) throw new Error(`${checked.problem.path}: ${checked.problem.message}`);
	return checked.value;
}
function problemOf(value: unknown) {
	const checked = checkRequirements(value);
	if (checked.ok) throw new Error('accepted');
	return checked.problem;
}

/** A hybrid whose tip feeds pin 2 through its break, with a microphone on the pins. */
const override = benchOf({
	sockets: [
		{ id: 'A', kind: 'hybrid-9' },
		{ id: 'B', kind: 'jack-trs' }
	],
	wires: [
		{ id: 'w2', from: 'A.TN', to: 'A.2' },
		{ id: 'w3', from: 'A.RN', to: 'A.3' },
		{ id: 'w1', from: 'A.S', to: 'A.1' }
	],
	plugs: [
		{ id: 'p', kind: 'trs', socket: 'B', travel: 12 },
		{ id: 'q', kind: 'ts' }
	],
	devices: [
		{ id: 'DESK', kind: 'line-in' },
		{ id: 'OUT', kind: 'line-out' }
	],
	cables: [
		{
			id: 'in',
			m: 1,
			cores: [
				['A.T', 'DESK.hot'],
				['A.R', 'DESK.cold'],
				['A.S', 'DESK.shield']
			]
		},
		{
			id: 'out',
			m: 1,
			cores: [
				['OUT.hot', 'A.2'],
				['OUT.cold', 'A.3'],
				['OUT.shield', 'A.1']
			]
		}
	]
});

describe('counting', () => {
	it.each([
		[2, 1],
		[3, 3],
		[4, 6],
		[5, 10]
	])('a group of %i nodes is %i checks, for joined and for apart', (n, checks) => {
		const group = ['A.1', 'A.2', 'A.3', 'A.T', 'A.R'].slice(0, n);
		expect(checksOf(requireOf({ joined: [group] })[0]!)).toHaveLength(checks);
		expect(checksOf(requireOf({ apart: [group] })[0]!)).toHaveLength(checks);
	});
	it('groups do not mix, and hears, deaf and polarity are one check an entry', () => {
		const [r] = requireOf({
			joined: [
				['A.1', 'A.2'],
				['A.3', 'A.T', 'A.R']
			],
			apart: [['A.1', 'A.3']],
			hears: [['DESK', 'OUT']],
			deaf: [['DESK', 'OUT']],
			polarity: [['DESK', 'OUT', '+']]
		});
		expect(checksOf(r!).map((c) => [c.wanted, ...c.pair].join(' '))).toEqual([
			'joined A.1 A.2',
			'joined A.3 A.T',
			'joined A.3 A.R',
			'joined A.T A.R',
			'apart A.1 A.3',
			'hears DESK OUT',
			'deaf DESK OUT',
			'polarity + DESK OUT'
		]);
	});
	it('the same pair in two states is two checks', () => {
		const scored = scoreOf(
			override,
			requireOf(
				{ when: { A: 'none' }, joined: [['A.T', 'A.2']] },
				{ when: { A: 'ts' }, apart: [['A.T', 'A.2']] }
			)
		);
		expect(scored).toEqual({ checks: 2, passed: 2, unsafe: [], failed: [], score: 1 });
	});
	it('score is passed over checks, to four decimals', () => {
		const right = { joined: [['A.1', 'A.S']] };
		const wrong = { joined: [['A.1', 'A.2']] };
		const scored = scoreOf(override, requireOf(right, right, wrong));
		expect(scored).toMatchObject({ checks: 3, passed: 2, score: 0.6667 });
		expect(scoreOf(override, requireOf(right, wrong, wrong)).score).toBe(0.3333);
		expect(scoreOf(override, requireOf(wrong)).score).toBe(0);
	});
	it('a failed check says when, which pair, and what was wanted', () => {
		const { failed } = scoreOf(
			override,
			requireOf({ when: { A: 'ts' }, joined: [['A.T', 'A.2']], hears: [['DESK', 'OUT']] })
		);
		expect(failed).toEqual([
			{ when: { A: 'ts' }, pair: ['A.T', 'A.2'], wanted: 'joined' },
			{ when: { A: 'ts' }, pair: ['DESK', 'OUT'], wanted: 'hears' }
		]);
	});
});

describe('hazards', () => {
	const hazard = { apart: [['A.1', 'A.S']], hazard: true, why: 'the shell must not carry signal' };
	it('one unsafe check makes the score 0, and stands in both lists', () => {
		const scored = scoreOf(override, requireOf({ joined: [['A.T', 'A.2']] }, hazard));
		const check = { when: {}, pair: ['A.1', 'A.S'], wanted: 'apart' };
		expect(scored).toEqual({ checks: 2, passed: 1, unsafe: [check], failed: [check], score: 0 });
	});
	it('a hazard that is kept out costs nothing', () => {
		const kept = { apart: [['A.1', 'A.2']], hazard: true };
		expect(scoreOf(override, requireOf(kept))).toMatchObject({ unsafe: [], score: 1 });
	});
	it('a failed check without hazard is not unsafe', () => {
		const scored = scoreOf(
			override,
			requireOf({ apart: [['A.1', 'A.S']] }, { joined: [['A.T', 'A.2']] })
		);
		expect(scored).toMatchObject({ unsafe: [], score: 0.5 });
	});
});

describe('what must be heard', () => {
	it('hears, deaf and polarity follow the plug', () => {
		const heard = requireOf({
			when: { A: 'none' },
			hears: [['DESK', 'OUT']],
			polarity: [['DESK', 'OUT', '+']]
		});
		expect(scoreOf(override, heard).score).toBe(1);
		const silent = requireOf({ when: { A: 'dummy' }, deaf: [['DESK', 'OUT']] });
		expect(scoreOf(override, silent).score).toBe(1);
	});
	it('polarity fails for the other sign, and where nothing is heard', () => {
		const minus = requireOf({ polarity: [['DESK', 'OUT', '-']] });
		expect(scoreOf(override, minus).passed).toBe(0);
		const nothing = requireOf({ when: { A: 'dummy' }, polarity: [['DESK', 'OUT', '+']] });
		expect(scoreOf(override, nothing)).toMatchObject({
			passed: 0,
			failed: [{ wanted: 'polarity +' }]
		});
	});
});

describe('plug states', () => {
	const at = (when: Record<string, string>, field: 'joined' | 'apart', ...pair: string[]) =>
		scoreOf(override, requireOf({ when, [field]: [pair] })).score;
	it('a plug id moves that plug and seats it', () => {
		expect(at({ A: 'p' }, 'joined', 'A.R', 'p.ring')).toBe(1);
		expect(at({ A: 'p' }, 'joined', 'A.T', 'p.tip')).toBe(1);
		expect(at({ A: 'q' }, 'joined', 'A.R', 'q.sleeve')).toBe(1);
	});
	it('the socket that a moved plug came from stands empty', () => {
		expect(at({ A: 'p' }, 'apart', 'B.S', 'p.sleeve')).toBe(1);
		expect(at({ A: 'p' }, 'apart', 'B.S', 'p.tip')).toBe(1);
	});
	it('a plug named for its own socket is seated there', () => {
		// At 12 mm only the sleeve spring touches it, on the insulator.
		expect(at({}, 'apart', 'B.S', 'p.sleeve')).toBe(1);
		expect(at({ B: 'p' }, 'joined', 'B.S', 'p.sleeve')).toBe(1);
	});
	it('what a named socket held lies loose, and a socket that is not named keeps its plug', () => {
		const half = { ...override, plugs: [{ ...override.plugs[0]!, travel: 4 }] };
		expect(scoreOf(half, requireOf({ joined: [['B.S', 'p.tip']] })).score).toBe(1);
		expect(scoreOf(half, requireOf({ when: { A: 'ts' }, joined: [['B.S', 'p.tip']] })).score).toBe(
			1
		);
		expect(scoreOf(half, requireOf({ when: { B: 'ts' }, apart: [['B.S', 'p.tip']] })).score).toBe(
			1
		);
	});
	it('two sockets may swap their plugs', () => {
		const both: Bench = {
			...override,
			plugs: [
				{ id: 'p', kind: 'trs', socket: 'B', travel: 30.5 },
				{ id: 'q', kind: 'ts', socket: 'A', travel: 30.5 }
			]
		};
		const joined = [
			['A.R', 'p.ring'],
			['B.R', 'q.sleeve']
		];
		expect(scoreOf(both, requireOf({ when: { A: 'p', B: 'q' }, joined })).score).toBe(1);
	});
	it('scoring leaves the bench as it was', () => {
		const before = JSON.stringify(override);
		scoreOf(override, requireOf({ when: { A: 'p', B: 'ts' }, joined: [['A.T', 'p.tip']] }));
		expect(JSON.stringify(override)).toBe(before);
	});
	it.each(['constructor', 'prototype', '__proto__', 'toString', '1'])(
		'a socket may have the id %s',
		(id) => {
			const bench = benchOf({ sockets: [{ id, kind: 'jack-trs' }] });
			const text = `{"require":[{"when":{"${id}":"ts"},"joined":[["${id}.R","${id}.S"]]}]}`;
			const checked = checkRequirements(JSON.parse(text));
			if (!checked.ok) throw new Error(checked.problem.message);
			expect(strangeRequirement(bench, checked.value)).toBeNull();
			expect(scoreOf(bench, checked.value).score).toBe(1);
		}
	);
});

describe('requirements that are refused', () => {
	const R = (r: unknown) => ({ require: [r] });
	const pair = ['A.1', 'A.2'];
	it.each<[string, unknown, string, RegExp]>([
		['null', null, '$', /an object in braces/],
		['a number', 3, '$', /an object in braces/],
		['no require', {}, '$.require', /missing/],
		['an empty list', { require: [] }, '$.require', /at least one/],
		['nothing to check', R({ when: { A: 'ts' } }), '$.require', /nothing is checked/],
		['require as an object', { require: {} }, '$.require', /square brackets/],
		['a number', R(3), '$.require[0]', /a requirement/],
		['a list', R([]), '$.require[0]', /a requirement/],
		['an unknown key', R({ joined: [pair], x: 1 }), '$.require[0].x', /unknown key/],
		['joined as a pair', R({ joined: pair }), '$.require[0].joined[0]', /nodes/],
		['a bare id', R({ joined: [['A', 'A.1']] }), '$.require[0].joined[0][0]', /ID\.CONTACT/],
		['a node twice', R({ apart: [['A.1', 'A.1']] }), '$.require[0].apart[0]', /different/],
		['an ear pair of one', R({ hears: [['DESK']] }), '$.require[0].hears[0][1]', /missing/],
		['no such sign', R({ polarity: [['D', 'M', 'up']] }), '$.require[0].polarity[0][2]', /"\+"/],
		['hazard in words', R({ joined: [pair], hazard: 'yes' }), '$.require[0].hazard', /true or/],
		['when as a list', R({ joined: [pair], when: [] }), '$.require[0].when', /an object/],
		['when as a word', R({ joined: [pair], when: 'ts' }), '$.require[0].when', /an object/],
		['when null', R({ joined: [pair], when: { A: null } }), '$.require[0].when.A', /an id/]
	])('%s', (_, value, path, word) => {
		expect(problemOf(value)).toMatchObject({ path });
		expect(problemOf(value).message).toMatch(word);
	});
	it('an exercise may have keys of its own beside require', () => {
		expect(checkRequirements({ id: 'x', require: [{ joined: [pair] }] }).ok).toBe(true);
	});
});

describe('requirements that name what the bench does not have', () => {
	const at = (r: unknown) => {
		const strange = strangeRequirement(override, requireOf(r));
		return strange && !strange.ok ? strange.problem : null;
	};
	const joined = [['A.1', 'A.2']];
	it.each<[string, unknown, string, RegExp]>([
		['a socket', { joined, when: { X: 'ts' } }, '$.require[0].when.X', /no socket "X"; say A or B/],
		['a dashed one', { joined, when: { 'X-1': 'ts' } }, '$.require[0].when["X-1"]', /"X-1"/],
		['a state', { joined, when: { A: 'jack' } }, '$.require[0].when.A', /none, ts/],
		[
			'a misfit',
			{ joined, when: { B: 'three-pin' } },
			'$.require[0].when.B',
			/does not go into a jack-trs; none, ts, trs, dummy or shorting would/
		],
		[
			'one plug twice',
			{ joined, when: { A: 'p', B: 'p' } },
			'$.require[0].when.B',
			/two sockets at once; name another/
		],
		['a node', { apart: [['A.1', 'A.9']] }, '$.require[0].apart[0][1]', /"9"/],
		['a panel', { apart: [['A.1', 'panel']] }, '$.require[0].apart[0][1]', /panel/],
		[
			'an input',
			{ hears: [['OUT', 'OUT']] },
			'$.require[0].hears[0][0]',
			/no input "OUT"; say DESK/
		],
		[
			'a source',
			{ deaf: [['DESK', 'DESK']] },
			'$.require[0].deaf[0][1]',
			/no source "DESK"; say OUT/
		]
	])('%s', (_, requirement, path, word) => {
		expect(at(requirement)).toMatchObject({ path });
		expect(at(requirement)!.message).toMatch(word);
	});
	it('nothing is strange about a right one, in every state that fits', () => {
		for (const A of ['none', ...PLUG_KINDS, 'p', 'q'])
			expect(at({ joined, when: { A } })).toBeNull();
	});
});
