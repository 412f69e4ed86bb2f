/** The chooser: which kinds meet a need, worked out by hand from what each kind has. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SOCKETS, SOCKET_KINDS, type SocketKind } from '../../engine';
import {
	ARRIVALS,
	LINES,
	NOTHING_ASKED,
	SWITCHED,
	wantsOf,
	type Asked
} from '../../words/referenceNeeds';
import { isAsked, verdictOn, verdictsOn } from './choose';

const fitting = (asked: Partial<Asked>): SocketKind[] =>
	verdictsOn({ ...NOTHING_ASKED, ...asked })
		.filter((v) => v.fits)
		.map((v) => v.kind);
const sorted = (kinds: readonly string[]) => [...kinds].sort();

/** [what is asked, the kinds that meet it], by hand. */
const TABLE: [string, Partial<Asked>, SocketKind[]][] = [
	['nothing', {}, [...SOCKET_KINDS]],
	[
		'a microphone’s plug',
		{ arrivals: ['male'] },
		['hybrid-5', 'hybrid-6', 'hybrid-9', 'hybrid-10', 'three-pin-female']
	],
	['a female plug', { arrivals: ['female'] }, ['three-pin-male']],
	[
		'a microphone’s plug or a phone plug',
		{ arrivals: ['male', 'phone'] },
		['hybrid-5', 'hybrid-6', 'hybrid-9', 'hybrid-10']
	],
	[
		'either plug, balanced',
		{ arrivals: ['male', 'phone'], line: 'balanced' },
		['hybrid-6', 'hybrid-9', 'hybrid-10']
	],
	['both plugs at once', { arrivals: ['male', 'phone'], together: true }, []],
	['plugs of both genders', { arrivals: ['male', 'female'] }, []],
	[
		'a balanced line on a phone plug',
		{ arrivals: ['phone'], line: 'balanced' },
		['hybrid-6', 'hybrid-9', 'hybrid-10', 'jack-trs', 'jack-trs-break', 'patch-jack']
	],
	[
		'a balanced line on any plug',
		{ line: 'balanced' },
		SOCKET_KINDS.filter((k) => !['jack-ts', 'jack-ts-break', 'jack-ts-changeover'].includes(k))
	],
	[
		'two cables, balanced',
		{ cables: 2, line: 'balanced' },
		['hybrid-6', 'hybrid-9', 'hybrid-10', 'jack-trs-break', 'patch-jack']
	],
	[
		'two cables',
		{ cables: 2, line: 'unbalanced' },
		[
			'hybrid-5',
			'hybrid-6',
			'hybrid-9',
			'hybrid-10',
			'jack-ts-break',
			'jack-trs-break',
			'patch-jack'
		]
	],
	[
		'a break on the tip',
		{ switched: ['T'] },
		['hybrid-9', 'hybrid-10', 'jack-ts-break', 'jack-trs-break', 'patch-jack']
	],
	['a break on the sleeve', { switched: ['S'] }, ['hybrid-9', 'hybrid-10', 'jack-trs-break']],
	['a break on pin 1', { pin1: true }, ['hybrid-10']],
	['an isolated changeover', { changeover: true }, ['jack-ts-changeover']],
	['patching', { patch: true }, ['patch-jack', 'jack-trs-break', 'hybrid-9', 'hybrid-10']],
	[
		'patching, unbalanced',
		{ patch: true, line: 'unbalanced' },
		['jack-ts-break', 'patch-jack', 'jack-trs-break', 'hybrid-9', 'hybrid-10']
	],
	[
		'a chassis lug',
		{ lug: true },
		['hybrid-5', 'hybrid-6', 'hybrid-9', 'hybrid-10', 'three-pin-female', 'three-pin-male']
	]
];

describe('the chooser', () => {
	it.each(TABLE)('finds for %s', (_, asked, kinds) =>
		expect(sorted(fitting(asked))).toEqual(sorted(kinds))
	);

	it('puts the kind with the fewest contacts to spare first', () => {
		expect(fitting({ patch: true })[0]).toBe('patch-jack');
		expect(fitting({ arrivals: ['male', 'phone'] })[0]).toBe('hybrid-5');
		expect(fitting({ arrivals: ['phone'], line: 'unbalanced' })[0]).toBe('jack-ts');
		expect(verdictOn('patch-jack', { ...NOTHING_ASKED, patch: true }).spare).toEqual([]);
	});

	it('says why a kind does not do', () => {
		const why = (kind: SocketKind, asked: Partial<Asked>) =>
			verdictOn(kind, { ...NOTHING_ASKED, ...asked }).reasons;
		expect(why('hybrid-9', { pin1: true })).toEqual(['no break contact on pin 1']);
		expect(why('jack-ts', { arrivals: ['male'], switched: ['R'] })).toEqual([
			'no three-pin opening',
			'no contact R at all, and so no break contact on it'
		]);
		expect(why('three-pin-male', { arrivals: ['male'] })).toEqual([
			'its contacts are male, so a male plug does not go in'
		]);
		expect(why('hybrid-6', { arrivals: ['male', 'phone'], together: true })).toEqual([
			'it takes one plug at a time; two at once need two sockets'
		]);
		expect(why('jack-ts-break', { patch: true })).toEqual([
			'no break contact on R for the normal link'
		]);
		expect(why('hybrid-5', { arrivals: ['phone'], line: 'balanced' })).toEqual([
			'no ring contact, so a balanced line loses its cold leg on the jack'
		]);
	});
});

const anyAsked: fc.Arbitrary<Asked> = fc.record({
	arrivals: fc.subarray([...ARRIVALS]),
	together: fc.boolean(),
	line: fc.constantFrom(...LINES),
	cables: fc.constantFrom(1 as const, 2 as const),
	switched: fc.subarray([...SWITCHED]),
	pin1: fc.boolean(),
	changeover: fc.boolean(),
	patch: fc.boolean(),
	lug: fc.boolean()
});

describe('whatever is asked', () => {
	it('every kind that does not do has a reason, and no kind that does', () =>
		fc.assert(
			fc.property(anyAsked, (asked) => {
				for (const { fits, reasons } of verdictsOn(asked)) {
					expect(fits).toBe(reasons.length === 0);
					for (const reason of reasons) expect(reason).toMatch(/^[a-z][^.!]+[a-z\d]$|[A-Z\d]$/);
				}
			}),
			{ numRuns: 300 }
		));

	it('asking for more never lets another kind in', () =>
		fc.assert(
			fc.property(
				anyAsked,
				fc.constantFrom('pin1', 'changeover', 'lug', 'together'),
				(asked, more) => {
					const before = new Set(verdictsOn(asked).flatMap((v) => (v.fits ? [v.kind] : [])));
					for (const { kind, fits } of verdictsOn({ ...asked, [more]: true }))
						if (fits) expect(before).toContain(kind);
				}
			),
			{ numRuns: 300 }
		));

	it('a ring is missed only where there is a jack without one', () =>
		fc.assert(
			fc.property(anyAsked, (asked) => {
				for (const { kind, reasons } of verdictsOn(asked))
					if (reasons.some((why) => why.startsWith('no ring contact')))
						expect([kind, SOCKETS[kind].springs]).toEqual([kind, ['T', 'S']]);
			}),
			{ numRuns: 300 }
		));

	it('a reason for a missing break contact is the part table’s', () => {
		for (const kind of SOCKET_KINDS)
			for (const s of SWITCHED)
				expect(verdictOn(kind, { ...NOTHING_ASKED, switched: [s] }).fits).toBe(
					Object.values(SOCKETS[kind].breaks).includes(s)
				);
	});

	it('nothing asked is no need', () => {
		expect(isAsked(NOTHING_ASKED)).toBe(false);
		expect(wantsOf(NOTHING_ASKED)).toEqual([]);
		expect(isAsked({ ...NOTHING_ASKED, lug: true })).toBe(true);
	});
});
