/** The truth tables of the reference, by hand for three kinds, and complete for all. */
import { describe, expect, it } from 'vitest';
import { SOCKETS, SOCKET_KINDS } from '../../engine';
import { truthOf } from './truth';

const shown = (kind: (typeof SOCKET_KINDS)[number]) =>
	truthOf(kind).rows.map((r) => [r.pair.join('–'), r.joined.map((j) => (j ? '●' : '·')).join('')]);

describe('a truth table', () => {
	it('is, for a hybrid of nine: none, ts, trs, dummy, shorting, three-pin', () =>
		expect(shown('hybrid-9')).toEqual([
			['R–RN', '●····●'],
			['R–S', '·●··●·'],
			['R–T', '····●·'],
			['S–SN', '●····●'],
			['S–T', '····●·'],
			['T–TN', '●····●']
		]));

	it('is, for a changeover: none, ts, trs, dummy, shorting', () =>
		expect(shown('jack-ts-changeover')).toEqual([
			['C–NC', '●····'],
			['C–NO', '·●●●●'],
			['S–T', '····●']
		]));

	it('is empty for a three-pin socket, whose plug joins nothing', () =>
		expect(truthOf('three-pin-female')).toEqual({
			states: ['none', 'three-pin'],
			rows: [],
			never: 6
		}));

	it.each(SOCKET_KINDS)('leaves no pair of %s out', (kind) => {
		const n = SOCKETS[kind].contacts.length;
		const { rows, never } = truthOf(kind);
		expect(rows.length + never).toBe((n * (n - 1)) / 2);
	});
});
