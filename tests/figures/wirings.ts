/** Benches with wires as they are met with, from one cable to a tangle, to measure drawings on. */
import type { Bench } from '../../src/lib/engine';
import { benchOf } from '../../src/lib/engine/bench.fixture';

const wires = (pairs: string) =>
	pairs.split(', ').map((pair, i) => {
		const [from, to] = pair.split(' ').map((end) => (end === 'panel' ? end : `A.${end}`));
		return { id: `w${i}`, from, to };
	});
const cores = (device: string, pairs: string) =>
	pairs.split(', ').map((pair) => {
		const [contact, terminal] = pair.split(' ');
		return [`A.${contact}`, `${device}.${terminal}`];
	});
const A = { id: 'A', kind: 'hybrid-10', label: 'Stage 1' };
const DESK = { id: 'DESK', kind: 'mic-input' };

/** Nine jumpers that join nearly everything, and a cable. */
export const MESSY: Bench = benchOf({
	panel: { metal: true },
	sockets: [A],
	devices: [DESK],
	wires: wires('1 S, 2 T, 3 R, 1N SN, RN 3, SN 1, TN 2, G 1, 1N G'),
	cables: [{ id: 'c', m: 9, cores: cores('DESK', '1 shield, 2 hot, 3 cold') }]
});
/** One source heard at two places. */
export const SPLIT: Bench = benchOf({
	panel: { metal: true },
	sockets: [{ ...A, kind: 'hybrid-9' }],
	devices: [DESK, { id: 'REC', kind: 'line-in' }],
	wires: wires('1 S, 2 T, 3 R, G panel'),
	cables: [
		{ id: 'c', m: 9, cores: cores('DESK', '1 shield, 2 hot, 3 cold') },
		{ id: 'd', m: 4, cores: cores('REC', 'SN shield, TN hot, RN cold') }
	]
});
export const SHORT_RUN: Bench = benchOf({
	panel: { metal: true },
	sockets: [{ ...A, kind: 'hybrid-6' }],
	devices: [DESK],
	wires: wires('1 S, 2 T, 3 R'),
	cables: [{ id: 'c', m: 9, cores: cores('DESK', '1 shield, 2 hot, 3 cold') }]
});
