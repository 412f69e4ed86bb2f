/** What hangs between two nodes: a device bridges them with ohms where no wire joins them. */
import type { Bench, Device, NodeName } from './bench';
import { inState, type When } from './edit';
import type { Pair } from './matrix';
import { netsOf } from './nets';
import { DEVICES } from './parts';

/**
 * The device on whose own two terminals the pair lies in this plug state, through its wires. Null
 * where there is none, or where the two are one net; a bond inside a device is no such thing.
 */
export function deviceBetween(bench: Bench, when: When, [a, b]: Pair): Device | null {
	if (bench.devices.length === 0) return null;
	const { indexOf } = netsOf(inState(bench, when));
	const at = (node: NodeName) => indexOf.get(node);
	if (at(a) === at(b)) return null;
	const hangs = ({ id, kind }: Device): boolean =>
		DEVICES[kind].inside.some(({ a: x, b: y, role }) => {
			const ends = [at(`${id}.${x}`), at(`${id}.${y}`)];
			return role !== 'bond' && ends.includes(at(a)) && ends.includes(at(b));
		});
	return bench.devices.find(hangs) ?? null;
}
