/** The reference opens only benches that a file could hold. */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS, fileOf, isJoined, parseBench } from '../../engine';
import { referenceOf } from '../../words/referenceKinds';
import { benchOfClaim, benchWith } from './benches';

describe.each(SOCKET_KINDS)('the bench with a %s', (kind) => {
	it('comes back from its file as it went', () => {
		const bench = benchWith(kind);
		expect(parseBench(JSON.stringify(fileOf(bench)))).toEqual({ ok: true, value: bench });
		expect(bench.sockets.map((s) => s.kind)).toEqual([kind]);
		expect(bench.plugs.length).toBeGreaterThan(0);
	});

	it('carries the jumpers of each claim that has some', () => {
		const { uses, notFor } = referenceOf(kind);
		for (const claim of [...uses, ...notFor]) {
			const bench = benchOfClaim(kind, claim);
			const wires = claim.proof?.find((p) => p.wires)?.wires;
			expect(bench === null).toBe(wires === undefined);
			if (!bench) continue;
			expect(parseBench(JSON.stringify(fileOf(bench)))).toEqual({ ok: true, value: bench });
			for (const [a, b] of wires!) expect(isJoined(bench, `A.${a}`, `A.${b}`)).toBe(true);
			expect(bench.plugs.length).toBeGreaterThan(0);
		}
	});
});
