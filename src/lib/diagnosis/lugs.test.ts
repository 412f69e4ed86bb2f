/**
 * Simulated real sockets: a kind with its contacts in some order under the lugs, and the engine as the
 * meter. The readings that were needed are printed beside the bound of information: log2 of the namings.
 */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS, type SocketKind } from '../engine';
import { lugConflict, lugKnowledge, lugToProve, silentStates, type LugReading } from './lugs';
import { ask, groupOf, hunt, shuffled } from './lugs.fixture';
import { BAG, countedContacts, viewOf } from './tell';
import type { Question } from './tellPlan';

const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));

describe('which lug is which', () => {
	it.each(SOCKET_KINDS)('a %s is always named rightly, lug by lug', (kind) => {
		const contacts = countedContacts(kind);
		const times = contacts.length > 6 ? 12 : 24;
		const taken = Array.from({ length: times }, (_, seed) => {
			const order = shuffled(contacts.length, seed + 1);
			const { known, readings } = hunt(kind, order);
			expect(known.kinds.map((k) => k.kind)).toEqual([kind]);
			expect(known.names).toEqual(order.map((c) => [contacts[c]!]));
			return readings.length;
		});
		const bound = Math.log2(groupOf(kind).length * factorial(contacts.length));
		const mean = taken.reduce((sum, n) => sum + n, 0) / times;
		expect(mean).toBeGreaterThanOrEqual(Math.log2(factorial(contacts.length)) * 0.8);
		// eslint-disable-next-line no-console -- the count of readings is there to be seen
		console.log(
			`${kind}: ${mean.toFixed(1)} readings on average, ${Math.min(...taken)} to ${Math.max(...taken)} in ${times} sockets; bound ${bound.toFixed(1)}`
		);
	});

	it('counts every way once: all of them before a reading, and as a list would after some', () => {
		expect(lugKnowledge(['hybrid-10'], []).ways).toBe(factorial(10));
		expect(lugKnowledge(['hybrid-9'], []).ways).toBe(factorial(9));
		const order = shuffled(9, 5);
		const readings = [
			{ state: 'none', a: 0, b: 1 },
			{ state: 'none', a: 2, b: 7 },
			{ state: 'ts', a: 'sleeve', b: 3 },
			{ state: 'trs', a: 'ring', b: 4 },
			{ state: 'three-pin', a: '1', b: 5 }
		].map((q) => ask('hybrid-9', order, q as Question));
		const asked = readings.map((r) => ({ ...r, sounds: false }));
		for (const said of [readings, asked]) {
			let ways = 0;
			const lay = (laid: number[]) => {
				if (laid.length < 9) {
					for (let c = 0; c < 9; c++) if (!laid.includes(c)) lay([...laid, c]);
				} else if (
					said.every((r) => {
						const { lugs, parts } = VIEWS.get(r.state)!;
						const net = typeof r.a === 'number' ? lugs[laid[r.a]!] : parts.get(r.a);
						return (net === lugs[laid[r.b]!]) === r.sounds;
					})
				)
					ways += 1;
			};
			lay([]);
			expect(lugKnowledge(['hybrid-9'], said).ways).toBe(ways);
			expect(ways).toBeGreaterThan(0);
		}
	});

	it('without a three-pin plug it says that the pins cannot be told apart, and no more', () => {
		const order = shuffled(6, 3);
		const { known } = hunt('hybrid-6', order, ['none', 'ts', 'trs']);
		const contacts = countedContacts('hybrid-6');
		order.forEach((c, lug) => {
			const name = contacts[c]!;
			expect(known.names[lug]).toEqual('123'.includes(name) ? ['1', '2', '3'] : [name]);
		});
	});

	it('asks for a beep before silence is believed, and a true socket gives it', () => {
		let asked = 0;
		for (const kind of SOCKET_KINDS)
			for (const seed of [1, 2, 3]) {
				const order = shuffled(countedContacts(kind).length, seed);
				const { readings } = hunt(kind, order);
				const proof = lugToProve(groupOf(kind), readings);
				if (silentStates(readings).length === 0) expect(proof).toBeNull();
				if (!proof) continue;
				asked += 1;
				expect(silentStates(readings)).toContain(proof.state);
				expect(ask(kind, order, proof).sounds).toBe(true);
			}
		expect(asked).toBeGreaterThan(0);
	});
	it('can prove with one reading what silence alone has named', () => {
		const kinds: SocketKind[] = ['hybrid-9'];
		const readings: LugReading[] = [];
		for (;;) {
			const { next } = lugKnowledge(kinds, readings);
			if (!next) break;
			readings.push({ ...next, sounds: false });
		}
		expect(lugKnowledge(kinds, readings).ways).toBeGreaterThan(0);
		const proof = lugToProve(kinds, readings)!;
		expect(proof.state).toBe(readings.at(-1)!.state);
		const said = (sounds: boolean) => lugKnowledge(kinds, [...readings, { ...proof, sounds }]).ways;
		expect([said(true) > 0, said(false)]).toEqual([true, 0]);
	});
	it('names readings that cannot all be true, and none that could be left out', () => {
		const kinds: SocketKind[] = ['hybrid-9'];
		const readings: LugReading[] = [
			{ state: 'none', a: 4, b: 5, sounds: false },
			{ state: 'trs', a: 'tip', b: 0, sounds: true },
			{ state: 'none', a: 2, b: 3, sounds: true },
			{ state: 'ts', a: 'tip', b: 1, sounds: true }
		];
		expect(lugKnowledge(kinds, readings).ways).toBe(0);
		expect(lugConflict(kinds, readings)).toEqual([1, 3]);
		expect(lugConflict(kinds, readings.slice(0, 3))).toEqual([]);
	});
});
const VIEWS = new Map(BAG.map((s) => [s, viewOf('hybrid-9', s)]));
