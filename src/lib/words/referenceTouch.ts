/**
 * What every contact of a socket meets, plug by plug: read off the circuit by `standingOf`, put in a
 * word or two for a table.
 */
import { SOCKETS, inState, statesOf, type PlugState, type SocketKind } from '../engine';
import { aloneBench } from '../diagnosis/tell';
import { contactText, partText } from './names';
import { standingOf, type Standing } from './standing';

const breakOn = (kind: SocketKind, contact: string): string | null =>
	Object.entries(SOCKETS[kind].breaks).find(([, on]) => on === contact)?.[0] ?? null;

/** A pin, or the chassis lug: what has mated with it, or the break contact it rests on. */
function pinMeets(kind: SocketKind, contact: string, { mated, closed }: Standing): string {
	const part = contact === 'G' ? 'shell' : contact;
	const found = mated.find((m) => m === part);
	if (found) return partText(found);
	const rest = breakOn(kind, contact);
	return rest && closed.has(rest) ? `rests on ${rest}` : 'nothing';
}

function springMeets(kind: SocketKind, spring: 'T' | 'R' | 'S', standing: Standing): string {
	const part = standing.touches.get(spring);
	if (part) return part;
	if (standing.lifted.has(spring))
		return standing.plug?.kind === 'dummy' ? 'insulation' : 'nothing';
	const rest = breakOn(kind, spring);
	return rest && standing.closed.has(rest) ? `rests on ${rest}` : 'nothing';
}

function meets(kind: SocketKind, contact: string, standing: Standing): string {
	const on = SOCKETS[kind].breaks[contact];
	if (on) return standing.closed.has(contact) ? contactText(on) : 'open';
	if (contact === 'C') return standing.changeover ?? 'nothing';
	if (contact === 'NC' || contact === 'NO') return standing.changeover === contact ? 'C' : 'open';
	return contact === 'T' || contact === 'R' || contact === 'S'
		? springMeets(kind, contact, standing)
		: pinMeets(kind, contact, standing);
}

export interface TouchRow {
	readonly contact: string;
	/** What it meets in each state, in the order of the states. */
	readonly meets: readonly string[];
}

/** Plug states of that kind, and for every contact what it meets in each, plugs seated. */
export function touchTable(kind: SocketKind): { states: PlugState[]; rows: TouchRow[] } {
	const bench = aloneBench(kind);
	const states = statesOf(bench, 'A');
	const standings = states.map((state) => standingOf(inState(bench, { A: state }), 'A')!);
	const rows = SOCKETS[kind].contacts.map((contact) => ({
		contact,
		meets: standings.map((standing) => meets(kind, contact, standing))
	}));
	return { states, rows };
}
