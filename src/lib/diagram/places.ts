/**
 * Where devices and plugs stand beside the panel: rows of one thing, or of a plug with the device
 * behind it. The rows of a bench that is seen for the first time follow from the bench alone;
 * whoever draws it again and again hands in what was seen before, and everything keeps its place:
 * a cable that is laid later moves no box.
 */
import { DEVICES, PANEL, PLUGS, splitNode, type Bench, type Device, type Plug } from '../engine';

/** A device or a plug: a box with terminals along one edge. */
export interface Thing {
	readonly id: string;
	readonly what: 'device' | 'plug';
	readonly device?: Device;
	readonly plug?: Plug;
	readonly terminals: readonly string[];
	/** The edge its terminals stand on. */
	readonly side: 'left' | 'right';
}

/** Rows of ids in the order of first sight; the drawing adds to it. */
export interface Places {
	rows: string[][];
}
export const makePlaces = (): Places => ({ rows: [] });

const kept = new WeakMap<object, Places>();
/** The places that go with that object, so that screen and saved picture of it agree. */
export function placesFor(owner: object): Places {
	const found = kept.get(owner) ?? makePlaces();
	kept.set(owner, found);
	return found;
}

const plugThing = (plug: Plug): Thing => ({
	id: plug.id,
	what: 'plug',
	plug,
	terminals: PLUGS[plug.kind].conductors,
	side: 'right'
});
const deviceThing = (device: Device): Thing => ({
	id: device.id,
	what: 'device',
	device,
	terminals: DEVICES[device.kind].terminals,
	side: 'left'
});

/** Whose terminals wires and cores join to that device or plug; itself left out. */
function joinedTo(bench: Bench, thing: string): string[] {
	const ends = [
		...bench.wires.map((w) => [w.from, w.to]),
		...bench.cables.flatMap((c) => c.cores.map(([a, b]) => [a, b]))
	];
	return ends
		.map((pair) => pair.map((n) => splitNode(n)[0]))
		.filter((owners) => owners.includes(thing))
		.flat()
		.filter((id) => id !== thing);
}

/** The first plug of those that a core or wire joins to the device, or null. */
function plugOf(bench: Bench, device: Device, plugs: readonly Plug[]): Plug | null {
	const others = joinedTo(bench, device.id);
	return plugs.find((p) => others.includes(p.id)) ?? null;
}

/**
 * A device that only hangs on plugs of other rows turns its terminals to their side, and a plug that
 * only hangs on the panel to the panel's: from the other side their wires would run across words.
 */
function turned(bench: Bench, thing: Thing, row: readonly string[]): Thing {
	const others = joinedTo(bench, thing.id);
	if (others.length === 0) return thing;
	const isApart = (id: string) => bench.plugs.some((p) => p.id === id) && !row.includes(id);
	const isPanel = (id: string) => id === PANEL || bench.sockets.some((s) => s.id === id);
	if (thing.device && others.every(isApart)) return { ...thing, side: 'right' };
	return thing.plug && others.every(isPanel) ? { ...thing, side: 'left' } : thing;
}

/** Rows of the things that are in none yet. */
function newRows(bench: Bench, known: ReadonlySet<string>): string[][] {
	const plugs = bench.plugs.filter((p) => !known.has(p.id));
	const taken = new Set<string>();
	const pairs = bench.devices
		.filter((d) => !known.has(d.id))
		.map((device) => {
			const plug = plugOf(bench, device, plugs);
			if (!plug || taken.has(plug.id)) return [device.id];
			taken.add(plug.id);
			return [plug.id, device.id];
		});
	const loose = plugs.filter((p) => !taken.has(p.id)).map((p) => [p.id]);
	return [...pairs.sort((a, b) => a.length - b.length), ...loose];
}

/** Things in rows and columns, null where one has gone. `places` grows by what is seen now. */
export function rowsOf(bench: Bench, places: Places): (Thing | null)[][] {
	const things = new Map([
		...bench.plugs.map((p) => [p.id, plugThing(p)] as const),
		...bench.devices.map((d) => [d.id, deviceThing(d)] as const)
	]);
	if (!places.rows.flat().some((id) => things.has(id))) places.rows = [];
	places.rows.push(...newRows(bench, new Set(places.rows.flat())));
	return places.rows
		.map((row) =>
			row.map((id) => {
				const thing = things.get(id);
				return thing ? turned(bench, thing, row) : null;
			})
		)
		.filter((row) => row.some((thing) => thing !== null));
}
