/** The symbol, measured: arrowheads, pads and pins in the engine's state. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { symbolOf } from '../../src/lib/diagram/symbol';
import {
	SOCKETS,
	SOCKET_KINDS,
	SPRING_DEPTH,
	splitNode,
	type PlugKind,
	type SocketKind
} from '../../src/lib/engine';
import { SOCKET, benchIn } from './benches';
import { distance, strokesOf } from './measure';
import {
	GAP,
	HALF,
	JACK_KINDS,
	JACK_PLUGS,
	PIN_KINDS,
	RUNS,
	SLACK,
	expectBreaksTrue,
	isBent,
	samplesOf,
	touchOf
} from './samples';

describe('the symbol tells the engine’s truth', () => {
	it.each([
		['any jack', JACK_KINDS, JACK_PLUGS],
		['the changeover', ['jack-ts-changeover'], JACK_PLUGS],
		['1N', ['hybrid-10'], ['three-pin']]
	] as [string, SocketKind[], PlugKind[]][])(
		'draws arrowheads touching exactly where contacts are closed: %s',
		(_, kinds, plugs) => {
			fc.assert(
				fc.property(samplesOf(kinds, plugs), ({ state, bench }) => {
					expectBreaksTrue(symbolOf(bench, SOCKET), bench, state.kind, /./);
				}),
				RUNS
			);
		}
	);

	it('puts under every spring what it touches', () => {
		fc.assert(
			fc.property(samplesOf(JACK_KINDS, JACK_PLUGS), ({ state, bench }) => {
				const figure = symbolOf(bench, SOCKET);
				for (const name of SOCKETS[state.kind].springs) {
					const node = touchOf(bench, name);
					const own = strokesOf(
						figure,
						(s) => (s.role === 'spring' || s.role === 'metal') && s.of === `${SOCKET}.${name}`
					);
					const pads = strokesOf(figure, (s) => s.role === 'metal' && s.of === node);
					const all = strokesOf(
						figure,
						(s) =>
							s.role === 'collar' ||
							(s.role === 'metal' && s.of !== undefined && splitNode(s.of)[0] !== SOCKET)
					);
					if (node) expect(distance(own, pads), `${name} on ${node}`).toBeLessThan(HALF + SLACK);
					if (isBent(bench, name)) expect(distance(own, all)).toBeGreaterThan(GAP);
				}
			}),
			RUNS
		);
	});

	it('draws an insulating plug as one body under all the springs that it lifts', () => {
		for (const kind of JACK_KINDS)
			for (let half = 0; half <= 61; half++) {
				const bench = benchIn({ kind, plug: 'dummy', travel: half / 2 });
				const bodies = symbolOf(bench, SOCKET).marks.filter((m) => m.role === 'collar');
				expect(bodies).toHaveLength(half / 2 < SPRING_DEPTH.S ? 0 : 1);
			}
	});

	it('keeps the strap of a shorting plug clear of insulation', () => {
		for (const kind of JACK_KINDS)
			for (let half = 0; half <= 61; half++) {
				const figure = symbolOf(benchIn({ kind, plug: 'shorting', travel: half / 2 }), SOCKET);
				const strap = strokesOf(
					figure,
					(s) => s.role === 'blade' && s.of !== undefined && splitNode(s.of)[0] !== SOCKET
				);
				if (half === 61) expect(strap.length, kind).toBe(SOCKETS[kind].springs.length - 1);
				const bodies = strokesOf(figure, (s) => s.role === 'collar');
				expect(distance(strap, bodies)).toBeGreaterThan(GAP);
				for (const name of SOCKETS[kind].springs) {
					const own = strokesOf(figure, (s) => s.role === 'spring' && s.of === `${SOCKET}.${name}`);
					expect(distance(strap, own), name).toBeGreaterThan(GAP);
				}
			}
	});

	it('names every contact at its terminal', () => {
		for (const kind of SOCKET_KINDS) {
			const { marks, width } = symbolOf(benchIn({ kind, plug: null, travel: 0 }), SOCKET);
			const names = marks.flatMap((m) =>
				m.kind === 'word' && m.role === 'mark' && m.x > width * 0.8 ? [m.text] : []
			);
			expect(names.sort()).toEqual([...SOCKETS[kind].contacts].sort());
		}
	});

	it('lets the shells meet exactly when they have mated', () => {
		fc.assert(
			fc.property(samplesOf(PIN_KINDS, ['three-pin']), ({ bench }) => {
				const figure = symbolOf(bench, SOCKET);
				const { id, travel } = bench.plugs[0]!;
				const plug = strokesOf(figure, (s) => s.of === `${id}.shell`);
				const own = strokesOf(figure, (s) => s.role === 'symbol' && s.of === `${SOCKET}.G`);
				if (travel >= 8) expect(distance(plug, own)).toBeLessThan(SLACK);
				else expect(distance(plug, own) - HALF).toBeGreaterThanOrEqual(GAP);
			}),
			RUNS
		);
	});

	it('brings the plug’s pins to the circles exactly when they have mated', () => {
		fc.assert(
			fc.property(samplesOf(PIN_KINDS, ['three-pin']), ({ bench }) => {
				const figure = symbolOf(bench, SOCKET);
				const { id, travel } = bench.plugs[0]!;
				for (const name of ['1', '2', '3']) {
					const pin = strokesOf(figure, (s) => s.role === 'spring' && s.of === `${id}.${name}`);
					const own = strokesOf(figure, (s) => s.role !== 'spring' && s.of === `${SOCKET}.${name}`);
					const gap = distance(pin, own) - HALF;
					if (travel >= (name === '1' ? 8 : 10)) expect(Math.abs(gap)).toBeLessThan(SLACK);
					else expect(gap).toBeGreaterThanOrEqual(GAP);
				}
			}),
			RUNS
		);
	});
});
