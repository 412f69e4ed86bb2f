/** The symbol, measured: arrowheads, pads and pins in the engine's state. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { symbolOf } from '../../src/lib/diagram/symbol';
import { SOCKETS, splitNode, type PlugKind, type SocketKind } from '../../src/lib/engine';
import { SOCKET } from './benches';
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
