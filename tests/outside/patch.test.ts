/**
 * Patch rows: full-normal, half-normal, parallel and isolated, with no plug, a plug on top, one at
 * the bottom, and both. The answers are written by hand and asked of the engine as what is heard.
 *
 * Source: common practice of broadcast and recording patch bays (PRACTICE): top row sources, bottom
 * row destinations. OUT is wired to the rear of the top jack, IN to the rear of the bottom jack. TAP
 * listens on the plug for the top jack, PLAY feeds the plug for the bottom jack.
 */
import { describe, expect, it } from 'vitest';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { inState } from '../../src/lib/engine/edit';
import { hears } from '../../src/lib/engine/hears';
import { netsOf } from '../../src/lib/engine/nets';

/** Link between the jacks, for one circuit; `x` stands for T, then for R. */
const LINKS: Record<string, [string, string] | null> = {
	full: ['TOP.xN', 'BOTTOM.xN'],
	half: ['TOP.x', 'BOTTOM.xN'],
	parallel: ['TOP.x', 'BOTTOM.x'],
	isolated: null
};
const STATES = {
	none: { TOP: 'none', BOTTOM: 'none' },
	top: { TOP: 'a', BOTTOM: 'none' },
	bottom: { TOP: 'none', BOTTOM: 'b' },
	both: { TOP: 'a', BOTTOM: 'b' }
} as const;

/** What IN hears and what TAP hears; '' is nothing. A loose plug hears nothing. */
const TABLE: [string, keyof typeof STATES, string, string][] = [
	['full', 'none', 'OUT', ''],
	['full', 'top', '', 'OUT'],
	['full', 'bottom', 'PLAY', ''],
	['full', 'both', 'PLAY', 'OUT'],
	['half', 'none', 'OUT', ''],
	['half', 'top', 'OUT', 'OUT'],
	['half', 'bottom', 'PLAY', ''],
	['half', 'both', 'PLAY', 'OUT'],
	['parallel', 'none', 'OUT', ''],
	['parallel', 'top', 'OUT', 'OUT'],
	['parallel', 'bottom', 'OUT PLAY', ''],
	['parallel', 'both', 'OUT PLAY', 'OUT PLAY'],
	['isolated', 'none', '', ''],
	['isolated', 'top', '', 'OUT'],
	['isolated', 'bottom', 'PLAY', ''],
	['isolated', 'both', 'PLAY', 'OUT']
];

/** Two jacks with their rear wiring and two plugs with a device on each. */
function patch(link: string, balanced: boolean) {
	const suffix = balanced ? '' : '-unbalanced';
	const legs = balanced ? ['T', 'R'] : ['T'];
	const terminal = { T: 'hot', R: 'cold', S: 'shield' } as Record<string, string>;
	const conductor = { T: 'tip', R: 'ring', S: 'sleeve' } as Record<string, string>;
	const circuits = [...legs, 'S'];
	const to = (device: string, jack: string) =>
		circuits.map((c) => [`${device}.${terminal[c]}`, `${jack}.${c}`]);
	const on = (device: string, plug: string) =>
		circuits.map((c) => [`${device}.${terminal[c]}`, `${plug}.${conductor[c]}`]);
	const ends = LINKS[link];
	const wires = ends
		? legs.map((c) => ({
				id: `link${c}`,
				from: ends[0].replace('x', c),
				to: ends[1].replace('x', c)
			}))
		: [];
	return benchOf({
		sockets: [
			{ id: 'TOP', kind: 'patch-jack' },
			{ id: 'BOTTOM', kind: 'patch-jack' }
		],
		plugs: ['a', 'b'].map((id) => ({ id, kind: balanced ? 'trs' : 'ts' })),
		devices: [
			{ id: 'OUT', kind: `line-out${suffix}` },
			{ id: 'IN', kind: `line-in${suffix}` },
			{ id: 'TAP', kind: `line-in${suffix}` },
			{ id: 'PLAY', kind: `line-out${suffix}` }
		],
		wires: [...wires, { id: 'sleeves', from: 'TOP.S', to: 'BOTTOM.S' }],
		cables: [
			{ id: 'c1', m: 2, cores: to('OUT', 'TOP') },
			{ id: 'c2', m: 2, cores: to('IN', 'BOTTOM') },
			{ id: 'c3', m: 1, cores: on('TAP', 'a') },
			{ id: 'c4', m: 1, cores: on('PLAY', 'b') }
		]
	});
}

describe.each([
	['balanced, TRS plugs', true],
	['unbalanced, TS plugs', false]
])('%s', (_, balanced) => {
	it.each(TABLE)('%s, plugged %s: IN hears "%s", TAP hears "%s"', (link, state, ...heard) => {
		const bench = inState(patch(link, balanced), STATES[state]);
		const list = (input: string) => Object.keys(hears(bench)[input]!).sort().join(' ');
		expect([list('IN'), list('TAP')]).toEqual(heard);
		for (const input of ['IN', 'TAP'])
			for (const { polarity, db } of Object.values(hears(bench)[input]!)) {
				expect(polarity).toBe('+');
				expect(db).toBeLessThan(0);
				expect(db).toBeGreaterThan(-7);
			}
	});
	it('two sources tied together load each other: each comes about 6 dB down', () => {
		const tied = hears(inState(patch('parallel', balanced), STATES.both))['IN']!;
		const alone = hears(inState(patch('parallel', balanced), STATES.none))['IN']!;
		expect(alone['OUT']!.db - tied['OUT']!.db).toBeGreaterThan(5.9);
		expect(alone['OUT']!.db - tied['OUT']!.db).toBeLessThan(6.1);
	});
	it.each(Object.keys(LINKS))('%s: the plugs pulled, everything is as before', (link) => {
		const bench = patch(link, balanced);
		const after = inState(inState(bench, STATES.both), STATES.none);
		expect(hears(after)).toEqual(hears(bench));
		expect(netsOf(after).list).toEqual(netsOf(bench).list);
	});
});
