/** What is promised beside what it takes: whole hunts on simulated sockets, and what is left in their midst. */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS, type SocketKind } from '../engine';
import { groupOf, hunt, shuffled } from './lugs.fixture';
import { readingsLeft } from './lugsLeft';
import { countedContacts } from './tell';

const TIMES = 10;
const meanOf = (numbers: readonly number[]) =>
	numbers.reduce((sum, n) => sum + n, 0) / numbers.length;

describe('readings left', () => {
	it.each(SOCKET_KINDS)('of a %s are about as many as are then taken', (kind: SocketKind) => {
		const n = countedContacts(kind).length;
		const hunts = Array.from({ length: TIMES }, (_, i) => hunt(kind, shuffled(n, i + 1)).readings);
		const promised = readingsLeft(groupOf(kind), []);
		const taken = meanOf(hunts.map((readings) => readings.length));
		expect(Math.abs(promised - taken)).toBeLessThanOrEqual(Math.max(1.5, 0.15 * taken));
		// Half way, over all of the hunts together: within a fifth.
		const half = hunts.map((readings) => readings.slice(0, Math.floor(readings.length / 2)));
		const errors = half.map(
			(readings, i) => readingsLeft(groupOf(kind), readings) - (hunts[i]!.length - readings.length)
		);
		expect(Math.abs(meanOf(errors))).toBeLessThanOrEqual(Math.max(1.5, (0.2 * taken) / 2));
	});
	it('are none at the end, and one where one question is left', () => {
		const { readings } = hunt('jack-ts', shuffled(2, 1));
		expect(readingsLeft(groupOf('jack-ts'), readings)).toBe(0);
		expect(readingsLeft(groupOf('jack-ts'), readings.slice(0, -1))).toBe(1);
	});
	it('are fewer without a plug that could tell more, for less is then named', () => {
		const all = readingsLeft(['hybrid-6'], []);
		const few = readingsLeft(['hybrid-6'], [], ['none', 'ts', 'trs']);
		expect(few).toBeLessThan(all);
	});
});
