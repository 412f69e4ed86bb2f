import { describe, expect, it } from 'vitest';
import { sectionEvents } from '../diagram';
import {
	EMPTY_BENCH,
	PLUG_KINDS,
	SEATED,
	SOCKET_KINDS,
	circuit,
	fits,
	type Bench,
	type PlugKind,
	type SocketKind
} from '../engine';
import { keeper, sameLayout, sameState } from './still';

const at = (socket: SocketKind, plug: PlugKind, travel: number): Bench => ({
	...EMPTY_BENCH,
	sockets: SOCKETS_OF.get(socket)!,
	plugs: [{ id: 'p', kind: plug, socket: 'A', travel }]
});
/** One list for each kind, so that two benches with the same socket share it as a session's do. */
const SOCKETS_OF = new Map<SocketKind, Bench['sockets']>(
	SOCKET_KINDS.map((kind) => [kind, [{ id: 'A', kind, bush: 'metal', label: '' }]])
);
/** What is joined and what is apart, with every reason. */
const told = (bench: Bench): string => {
	const { conductors, gaps } = circuit(bench);
	return JSON.stringify([conductors, gaps]);
};

describe('a plug on its way', () => {
	const pairs = SOCKET_KINDS.flatMap((socket) =>
		PLUG_KINDS.filter((plug) => fits(plug, socket)).map((plug) => [socket, plug] as const)
	);
	it.each(pairs)('leaves %s with %s in the same state only where no contact changes', (s, p) => {
		let before = at(s, p, 0);
		let changes = 0;
		for (let tenths = 1; tenths <= SEATED * 10; tenths++) {
			const now = at(s, p, tenths / 10);
			const same = sameState(before, now);
			if (same) expect(told(now), `${tenths / 10} mm`).toBe(told(before));
			else changes += 1;
			expect(sameState(now, before), `back to ${tenths / 10} mm`).toBe(same);
			before = now;
		}
		// A spring without a break contact may be lifted by an insulator: seen, and not to be measured.
		// The last step of all seats it.
		const seats = sectionEvents(p, s).includes(SEATED) ? 0 : 1;
		expect(changes).toBe(sectionEvents(p, s).length + seats);
	});
	it('keeps the layout until it goes to another place', () => {
		const bench = at('patch-jack', 'trs', 4);
		expect(sameLayout(bench, at('patch-jack', 'trs', 20))).toBe(true);
		expect(sameLayout(bench, { ...bench, title: 'Another' })).toBe(true);
		expect(sameLayout(bench, { ...bench, plugs: [{ ...bench.plugs[0]!, socket: null }] })).toBe(
			false
		);
		expect(
			sameLayout(bench, { ...bench, faults: [{ kind: 'bridge', between: ['A.T', 'A.R'] }] })
		).toBe(false);
	});
});

describe('a keeper', () => {
	it('gives back what it gave before for as long as that is the same', () => {
		const keep = keeper<number[]>((a, b) => a.length === b.length);
		const first = [1];
		expect(keep(first)).toBe(first);
		expect(keep([2])).toBe(first);
		const second = [1, 2];
		expect(keep(second)).toBe(second);
		expect(keep([3, 4])).toBe(second);
	});
});
