/**
 * What is joined as a plug goes in, millimetre by millimetre, written by hand. Each row holds from its
 * travel up to the next row's; the nets it names are all those of two nodes or more.
 *
 * Source: order of springs and segments from memory of the 6.35 mm family (MEM: IEC 60603-11, shank
 * 6.35 mm; low confidence in the millimetres, which are schematic). Springs at 3 (sleeve), 18.5 (ring)
 * and 26 mm (tip) behind the face. Pin 1 makes first and breaks last (MEM).
 */
import { describe, expect, it } from 'vitest';
import type { PlugKind, SocketKind } from '../../src/lib/engine/bench';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { netsOf } from '../../src/lib/engine/nets';

type Row = [from: number, nets: string];
const REST = 'R-RN S-SN T-TN';

const TRS: Row[] = [
	[0, REST],
	[3, 'R-RN S-tip T-TN'],
	[12, 'R-RN T-TN'],
	[13, 'R-RN S-ring T-TN'],
	[17, 'R-RN T-TN'],
	[18, 'R-RN S-sleeve T-TN'],
	[18.5, 'R-tip S-sleeve T-TN'],
	[26, 'R-T-tip S-sleeve'],
	[27.5, 'S-sleeve T-tip'],
	[28.5, 'R-ring S-sleeve T-tip']
];
const TS: Row[] = [
	[0, REST],
	[3, 'R-RN S-tip T-TN'],
	[12, 'R-RN T-TN'],
	[13.5, 'R-RN S-sleeve T-TN'],
	[18.5, 'R-tip S-sleeve T-TN'],
	[26, 'R-T-tip S-sleeve'],
	[27.5, 'S-sleeve T-tip'],
	[29, 'R-S-sleeve T-tip']
];
/** Tip, ring and sleeve are one inside the plug: `plug` stands for the three. */
const SHORTING: Row[] = [
	[0, `${REST} plug`],
	[3, 'R-RN S-plug T-TN'],
	[12, 'R-RN T-TN plug'],
	[13, 'R-RN S-plug T-TN'],
	[17, 'R-RN T-TN plug'],
	[18, 'R-RN S-plug T-TN'],
	[18.5, 'R-S-plug T-TN'],
	[26, 'R-S-T-plug'],
	[27.5, 'S-T-plug'],
	[28.5, 'R-S-T-plug']
];
const DUMMY: Row[] = [
	[0, REST],
	[3, 'R-RN T-TN'],
	[18.5, 'T-TN'],
	[26, '']
];
const THREE_PIN: Row[] = [
	[0, REST],
	[8, `1-p1 G-shell ${REST}`],
	[10, `1-p1 2-p2 3-p3 G-shell ${REST}`]
];
/** A hybrid with a break on pin 1 as well. */
const THREE_PIN_1N: Row[] = [
	[0, `1-1N ${REST}`],
	[8, `1-p1 G-shell ${REST}`],
	[10, `1-p1 2-p2 3-p3 G-shell ${REST}`]
];
const TS_CHANGEOVER: Row[] = [
	[0, 'C-NC'],
	[3, 'C-NC S-tip'],
	[12, 'C-NC'],
	[13.5, 'C-NC S-sleeve'],
	[26, 'C-NO S-sleeve T-tip']
];
/** No ring spring: the ring of the plug passes and touches nothing. */
const TRS_IN_TS: Row[] = [
	[0, 'T-TN'],
	[3, 'S-tip T-TN'],
	[12, 'T-TN'],
	[13, 'S-ring T-TN'],
	[17, 'T-TN'],
	[18, 'S-sleeve T-TN'],
	[26, 'S-sleeve T-tip']
];

/** Nets of two or more, contact letters and plug parts only, in one order whatever their names. */
function netsAt(kind: SocketKind, plug: PlugKind, travel: number): string {
	const bench = benchOf({
		sockets: [{ id: 'A', kind }],
		plugs: [{ id: 'p', kind: plug, socket: 'A', travel }]
	});
	const bare = (node: string) =>
		node
			.replace('A.', '')
			.replace(/^p\.(?=\d)/, 'p')
			.replace('p.', '');
	return netsOf(bench)
		.list.filter((net) => net.length > 1)
		.map((net) => net.map(bare).join('-').replace('ring-sleeve-tip', 'plug'))
		.sort()
		.join(' ');
}
const inOrder = (nets: string) => nets.split(' ').filter(Boolean).sort().join(' ');

describe.each<[string, SocketKind, PlugKind, Row[]]>([
	['TRS', 'hybrid-9', 'trs', TRS],
	['TRS', 'jack-trs-break', 'trs', TRS],
	['TS', 'hybrid-9', 'ts', TS],
	['shorting', 'hybrid-9', 'shorting', SHORTING],
	['dummy', 'hybrid-9', 'dummy', DUMMY],
	['three-pin', 'hybrid-9', 'three-pin', THREE_PIN],
	['three-pin', 'hybrid-10', 'three-pin', THREE_PIN_1N],
	['TS', 'jack-ts-changeover', 'ts', TS_CHANGEOVER],
	['TRS', 'jack-ts-break', 'trs', TRS_IN_TS]
])('a %s plug into %s', (_, socket, plug, rows) => {
	it.each(rows.map((row, i) => [row[0], rows[i + 1]?.[0] ?? 30.501, row[1]] as const))(
		'from %f mm up to %f mm: %s',
		(from, to, nets) => {
			for (const travel of [from, from + 0.001, (from + to) / 2, to - 0.001])
				expect(netsAt(socket, plug, travel), `at ${travel} mm`).toBe(inOrder(nets));
		}
	);
});
