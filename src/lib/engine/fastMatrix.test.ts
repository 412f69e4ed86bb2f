/** The fast continuity matrix against the plain one, and packed partitions against sets. */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS } from './bench';
import { benchOf } from './bench.fixture';
import { breakContactsOf, SOCKETS } from './parts';
import { matrixOf } from './fastMatrix';
import { labelsOf } from './fastNets';
import { plainMatrixOf } from './matrix';
import { Matrices, Packed } from './packed';
import { randomBench, randomNumbers } from './random.fixture';

/** As text, so that the order of states and of pairs is compared too. */
const agree = (bench: Parameters<typeof matrixOf>[0], socket: string) =>
	expect(JSON.stringify(matrixOf(bench, socket)), JSON.stringify(bench)).toBe(
		JSON.stringify(plainMatrixOf(bench, socket))
	);

describe('the fast continuity matrix', () => {
	it.each(SOCKET_KINDS)(
		'is the plain one for %s, bare and with each fault of its contacts',
		(kind) => {
			const contacts = [
				...breakContactsOf(kind).flatMap((c) => [
					{ kind: 'break-stuck-open', contact: `A.${c}` },
					{ kind: 'break-stuck-closed', contact: `A.${c}` }
				]),
				...SOCKETS[kind].springs.map((c) => ({ kind: 'spring-bent', contact: `A.${c}` }))
			];
			for (const faults of [[], ...contacts.map((f) => [f])])
				agree(benchOf({ sockets: [{ id: 'A', kind }], faults }), 'A');
		}
	);
	it('is the plain one, order included, for every socket of 400 benches drawn from a stated seed', () => {
		const below = randomNumbers(2026);
		for (let round = 0; round < 400; round++) {
			const bench = randomBench(below);
			for (const { id } of bench.sockets) agree(bench, id);
		}
	});
	it('of a socket that is not there is empty', () => {
		agree(benchOf({}), 'A');
	});
});

describe('packed partitions', () => {
	it('are the nets of the same joints, 500 times from a stated seed, and equal ones are one matrix', () => {
		const below = randomNumbers(16);
		const matrices = new Matrices();
		const texts = new Map<string, number>();
		for (let round = 0; round < 500; round++) {
			const ends = Array.from({ length: 2 * below(12) }, () => below(16));
			const packed = new Packed(16);
			packed.joinAll(0, Int32Array.from(ends), 1);
			const steps = ends.flatMap((a, k) => (k % 2 ? [] : [k / 2, a, ends[k + 1]!]));
			packed.joinAll(0, new Int32Array(0), 2);
			packed.joinEach(2, Int32Array.from(steps), 3);
			const last = 2 + ends.length / 2;
			expect([packed.low[last], packed.high[last]]).toEqual([packed.low[1], packed.high[1]]);
			const labels = labelsOf(16, Int32Array.from(ends));
			const id = matrices.intern(packed, 1);
			for (let a = 0; a < 16; a++)
				for (let b = 0; b < 16; b++)
					expect(matrices.isJoined(id, a, b)).toBe(labels[a] === labels[b]);
			const text = labels.join();
			expect(texts.get(text) ?? id).toBe(id);
			texts.set(text, id);
		}
		expect(matrices.size).toBe(texts.size);
		expect(texts.size).toBeGreaterThan(200);
	});
});
