/**
 * Truth table of every socket against every plug that fits, written by hand: which of the socket's
 * own contacts are joined, and what each spring or pin has of the plug.
 *
 * Sources: a plug lifts each spring off its break contact; the sleeve of a TS plug covers the place
 * of the ring, so that in a jack with a ring spring it joins R to S (BOOK: an open textbook on
 * telephone-type plugs and jacks). Tip hot, ring cold, sleeve shield; pin 1 shield, 2 hot, 3 cold
 * (STD: AES14-1992, IEC 60268-12, as reported). Contact counts 5, 6, 9 and 10, and that nothing inside
 * joins the three-pin contacts to the jack contacts (PRACTICE).
 */
import { describe, expect, it } from 'vitest';
import {
	PLUG_KINDS,
	SOCKET_KINDS,
	type PlugKind,
	type SocketKind
} from '../../src/lib/engine/bench';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { matrixOf } from '../../src/lib/engine';
import { isJoined } from '../../src/lib/engine/nets';
import { conductorsOf, contactsOf } from '../../src/lib/engine/edit';

/** Joined pairs, `none` for no plug. A kind that is not named does not fit. */
const TABLE: Record<SocketKind, Partial<Record<'none' | PlugKind, string>>> = {
	'hybrid-5': { none: '', ts: '', trs: '', dummy: '', shorting: 'S-T', 'three-pin': '' },
	'hybrid-6': {
		none: '',
		ts: 'R-S',
		trs: '',
		dummy: '',
		shorting: 'R-S R-T S-T',
		'three-pin': ''
	},
	'hybrid-9': {
		none: 'R-RN S-SN T-TN',
		ts: 'R-S',
		trs: '',
		dummy: '',
		shorting: 'R-S R-T S-T',
		'three-pin': 'R-RN S-SN T-TN'
	},
	'hybrid-10': {
		none: '1-1N R-RN S-SN T-TN',
		ts: '1-1N R-S',
		trs: '1-1N',
		dummy: '1-1N',
		shorting: '1-1N R-S R-T S-T',
		'three-pin': 'R-RN S-SN T-TN'
	},
	'three-pin-female': { none: '', 'three-pin': '' },
	'three-pin-male': { none: '', 'three-pin': '' },
	'jack-ts': { none: '', ts: '', trs: '', dummy: '', shorting: 'S-T' },
	'jack-ts-break': { none: 'T-TN', ts: '', trs: '', dummy: '', shorting: 'S-T' },
	'jack-trs': { none: '', ts: 'R-S', trs: '', dummy: '', shorting: 'R-S R-T S-T' },
	'jack-trs-break': {
		none: 'R-RN S-SN T-TN',
		ts: 'R-S',
		trs: '',
		dummy: '',
		shorting: 'R-S R-T S-T'
	},
	'patch-jack': {
		none: 'R-RN T-TN',
		ts: 'R-S',
		trs: '',
		dummy: '',
		shorting: 'R-S R-T S-T'
	},
	'jack-ts-changeover': {
		none: 'C-NC',
		ts: 'C-NO',
		trs: 'C-NO',
		dummy: 'C-NO',
		shorting: 'C-NO S-T'
	}
};

/** What a contact meets of a seated plug; a contact that is not named meets nothing. */
const MEETS: Record<PlugKind, Record<string, string>> = {
	ts: { T: 'tip', R: 'sleeve', S: 'sleeve' },
	trs: { T: 'tip', R: 'ring', S: 'sleeve' },
	shorting: { T: 'tip', R: 'ring', S: 'sleeve' },
	dummy: {},
	'three-pin': { '1': '1', '2': '2', '3': '3', G: 'shell' }
};

const cases = SOCKET_KINDS.flatMap((socket) =>
	(['none', ...PLUG_KINDS] as const).map((state) => [socket, state] as const)
);

describe('a bare socket', () => {
	it.each(cases)('%s with %s', (kind, state) => {
		const bench = benchOf({ sockets: [{ id: 'A', kind }] });
		const expected = TABLE[kind][state];
		const pairs = matrixOf(bench, 'A')[state];
		if (expected === undefined) return expect(pairs).toBeUndefined();
		expect(pairs!.map((pair) => pair.join('-').replaceAll('A.', '')).join(' ')).toBe(expected);
	});
});

describe('a seated plug', () => {
	const fitting = cases.filter(
		(row): row is readonly [SocketKind, PlugKind] =>
			row[1] !== 'none' && TABLE[row[0]][row[1]] !== undefined
	);
	it.each(fitting)('in %s: a %s plug meets its contacts and no others', (socket, kind) => {
		const bench = benchOf({
			sockets: [{ id: 'A', kind: socket }],
			plugs: [{ id: 'p', kind, socket: 'A' }]
		});
		const shorted = kind === 'shorting';
		for (const contact of contactsOf(bench, 'A'))
			for (const part of conductorsOf(bench.plugs[0]!)) {
				const meets = MEETS[kind][contact.slice(2)];
				// Inside a shorting plug all three are one.
				const expected = shorted ? meets !== undefined : part === `p.${meets}`;
				expect(isJoined(bench, contact, part), `${contact} ${part}`).toBe(expected);
			}
	});
	it.each(
		PLUG_KINDS.flatMap((kind) =>
			SOCKET_KINDS.filter((socket) => TABLE[socket][kind] === undefined).map(
				(socket) => [kind, socket] as const
			)
		)
	)('a %s plug is refused by %s', (kind, socket) => {
		const file = {
			sockets: [{ id: 'A', kind: socket }],
			plugs: [{ id: 'p', kind, socket: 'A' }]
		};
		expect(() => benchOf(file)).toThrow(/does not go into/);
	});
	it('a feed on T meets the plug and leaves TN; a feed on TN is cut off and T hears the plug', () => {
		const feed = (contact: string, plugs: object[]) => {
			const bench = benchOf({
				sockets: [
					{ id: 'A', kind: 'jack-ts-break' },
					{ id: 'F', kind: 'jack-ts' }
				],
				wires: [{ id: 'w', from: 'F.T', to: `A.${contact}` }],
				plugs
			});
			return ['A.T', 'A.TN', 'p.tip'].filter((n) => isJoined(bench, 'F.T', n));
		};
		const loose = [{ id: 'p', kind: 'ts' }];
		const seated = [{ id: 'p', kind: 'ts', socket: 'A' }];
		expect(feed('T', loose)).toEqual(['A.T', 'A.TN']);
		expect(feed('TN', loose)).toEqual(['A.T', 'A.TN']);
		expect(feed('T', seated)).toEqual(['A.T', 'p.tip']);
		expect(feed('TN', seated)).toEqual(['A.TN']);
	});
});
