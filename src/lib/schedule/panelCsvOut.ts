/** A panel's bench as CSV, and what of a bench has no place in that table. The rows are those of `panelCsv.ts`. */
import {
	DEFAULTS,
	PANEL,
	splitNode,
	type Bench,
	type NodeName,
	type Socket,
	type Wire
} from '../engine';
import { makeCsv } from './csv';
import { grouped } from './grouped';
import { COLUMNS, METAL, MORE_COLUMNS } from './panelRows';

/** The socket in whose rows a wire stands; null for one that touches no socket. */
function homeOf(bench: Bench, wire: Wire): string | null {
	const isSocket = (id: string) => bench.sockets.some((s) => s.id === id);
	return [wire.from, wire.to].map((n) => splitNode(n)[0]).find(isSocket) ?? null;
}

/** Whether the table has a place for the node: a contact of a socket, or the panel. */
const isOnPanel = (bench: Bench, node: NodeName): boolean =>
	node === PANEL || bench.sockets.some((s) => s.id === splitNode(node)[0]);

/** Wires that the table can hold: between contacts of sockets, and to the panel. */
export const panelWires = (bench: Bench): Wire[] =>
	bench.wires.filter(
		(w) => isOnPanel(bench, w.from) && isOnPanel(bench, w.to) && homeOf(bench, w) !== null
	);

/** What of the bench has no place in the table: ids of wires, cables, devices and plugs. */
export function leftOutOfCsv(bench: Bench): string[] {
	const held = new Set(panelWires(bench).map((w) => w.id));
	return [
		...bench.wires.filter((w) => !held.has(w.id)).map((w) => w.id),
		...[...bench.cables, ...bench.devices, ...bench.plugs].map((x) => x.id)
	];
}

/** The same for two wires that nothing but their names tells apart. */
const likeOf = ({ from, to, awg, mm }: Wire): string =>
	JSON.stringify([...[from, to].sort(), awg, mm]);

/**
 * The panel of a bench as CSV: sockets in their order, each with its wires. Reading it gives the
 * same sockets and wires; wires come in the order of their sockets.
 */
export function makePanelCsv(bench: Bench): string {
	const homes = grouped(panelWires(bench), (w) => homeOf(bench, w));
	const wires = bench.sockets.flatMap((s) => homes.get(s.id) ?? []);
	const more = MORE_COLUMNS.filter((column) => {
		if (column === 'label') return bench.sockets.some((s) => s.label.trim() !== '');
		if (column === 'bush') return bench.sockets.some((s) => s.bush !== DEFAULTS.bush);
		// Names as well where two wires are alike: without them one row would repeat the other.
		return (
			wires.some((w, i) => w.id !== `w${i + 1}`) || new Set(wires.map(likeOf)).size < wires.length
		);
	});
	const local = (node: NodeName, own: string): string => {
		const [id, contact] = splitNode(node);
		return id === own ? contact : node;
	};
	const rowOf = (socket: Socket, wire: Wire | null, isFirst: boolean): (string | number)[] => [
		socket.id,
		socket.kind,
		...(wire
			? [local(wire.from, socket.id), local(wire.to, socket.id), wire.awg, wire.mm]
			: ['', '', '', '']),
		...more.map((column) => {
			if (column === 'wire') return wire?.id ?? '';
			return isFirst ? socket[column].trim() : '';
		})
	];
	const blank = more.map(() => '');
	return makeCsv([
		[...COLUMNS, ...more],
		...(bench.panel.metal ? [[PANEL, METAL, '', '', '', '', ...blank]] : []),
		...bench.sockets.flatMap((s) => {
			const own = homes.get(s.id) ?? [];
			return own.length > 0 ? own.map((w, i) => rowOf(s, w, i === 0)) : [rowOf(s, null, true)];
		})
	]);
}
