/** Copper in the views of a socket: one rule, read from the engine's circuit, in one state of the bench. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { litLive, viewsOf, withPlugAt } from '../../src/lib/diagram';
import { PLUG_KINDS, SOCKETS, SOCKET_KINDS, circuit, fits } from '../../src/lib/engine';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { SOCKET } from './benches';
import { RUNS, travels } from './samples';

const states = fc.constantFrom(...SOCKET_KINDS).chain((kind) =>
	fc.record({
		kind: fc.constant(kind),
		plug: fc.constantFrom(null, ...PLUG_KINDS.filter((p) => fits(p, kind))),
		travel: travels,
		metal: fc.boolean(),
		bush: fc.constantFrom('insulated', ...(SOCKETS[kind].hasBush ? ['metal'] : []))
	})
);
type Sample = (typeof states extends fc.Arbitrary<infer T> ? T : never) & object;

function benchFor({ kind, plug, travel, metal, bush }: Sample) {
	const bench = benchOf({ panel: { metal }, sockets: [{ id: SOCKET, kind, bush }] });
	return plug ? withPlugAt(bench, SOCKET, plug, travel) : bench;
}

describe('copper in section, pins and symbol', () => {
	it('is on a node in all views or in none, and exactly where it meets metal', () => {
		fc.assert(
			fc.property(states, (sample) => {
				const bench = benchFor(sample);
				// No wire and no cable: whatever conducts here does so by meeting, or is a plug's inside.
				const meets = new Set(circuit(bench).conductors.flatMap(({ a, b }) => [a, b]));
				const touched = (node: string): boolean =>
					meets.has(node) && (node.startsWith(`${SOCKET}.`) || node === 'panel' || isMet(node));
				const isMet = (node: string): boolean => litLive(bench, SOCKET).nodes.has(node);
				for (const { marks } of viewsOf(bench, SOCKET, litLive(bench, SOCKET)))
					for (const mark of marks) {
						if (mark.of === undefined || /seat|hole/.test(mark.role)) continue;
						expect(Boolean(mark.lit), `${mark.role} of ${mark.of}`).toBe(touched(mark.of));
					}
			}),
			RUNS
		);
	});

	it('is on the chassis lug of a metal panel with and without a plug, and on no lug of wood', () => {
		for (const kind of SOCKET_KINDS.filter((k) => SOCKETS[k].contacts.includes('G')))
			for (const plug of [null, 'three-pin'] as const)
				for (const metal of [true, false]) {
					const bench = benchFor({ kind, plug, travel: 30.5, metal, bush: 'insulated' });
					const isLit = litLive(bench, SOCKET).nodes.has(`${SOCKET}.G`);
					expect(isLit, `${kind}, ${plug}, ${metal}`).toBe(metal || plug !== null);
				}
	});

	it('is on every pin of a male half once the plug is home, in pins and symbol alike', () => {
		const bench = benchFor({
			kind: 'three-pin-male',
			plug: 'three-pin',
			travel: 30.5,
			metal: true,
			bush: 'insulated'
		});
		for (const { marks } of viewsOf(bench, SOCKET, litLive(bench, SOCKET)))
			for (const mark of marks)
				if (mark.of !== undefined && mark.role !== 'hole')
					expect(mark.lit, `${mark.role} of ${mark.of}`).toBe(true);
	});
});
