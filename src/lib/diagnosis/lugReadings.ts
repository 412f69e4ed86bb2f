/** Readings of an unmarked socket as somebody else's data: the gate that they pass before they count. */
import { PLUGS, type PlugConductor, type SocketKind } from '../engine';
import type { LugReading } from './lugs';
import { BAG, commonStates, countedContacts } from './tell';

/** Whether it is a reading that a socket which may be any of these kinds can give. */
export function isLugReading(kinds: readonly SocketKind[], value: unknown): value is LugReading {
	const { state, a, b, sounds } = (value ?? {}) as Partial<LugReading>;
	const lugs = countedContacts(kinds[0]!).length;
	const isLug = (n: unknown) => Number.isInteger(n) && (n as number) >= 0 && (n as number) < lugs;
	if (!commonStates(kinds, BAG).some((s) => s === state)) return false;
	if (typeof sounds !== 'boolean' || !isLug(b)) return false;
	if (typeof a === 'number') return isLug(a) && a !== b;
	const plug = BAG.find((s) => s === state);
	if (plug === undefined || plug === 'none') return false;
	return PLUGS[plug as keyof typeof PLUGS].conductors.some((c: PlugConductor) => c === a);
}
