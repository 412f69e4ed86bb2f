/** What a fault is, for whoever has to name it: one clause, no capital, no full stop. */
import { SOCKETS, splitNode, type Bench, type Fault } from '../engine';
import { textName, wireName } from './names';
import { fineOhms } from './units';

const pairText = (bench: Bench, [a, b]: readonly [string, string]): string =>
	`${textName(bench, a)} and ${textName(bench, b)}`;

/** Leads that should land on a contact: wires and cores, by their ends. */
const leadsOn = (bench: Bench, contact: string): number =>
	[...bench.wires.map((w) => [w.from, w.to]), ...bench.cables.flatMap((c) => c.cores)]
		.flat()
		.filter((end) => end === contact).length;

/** An exchange where one of the two has no lead of its own: the other's sits there. Else null. */
export function strayed(bench: Bench, [a, b]: readonly [string, string]) {
	const [onA, onB] = [leadsOn(bench, a), leadsOn(bench, b)];
	if (onA > 0 === onB > 0) return null;
	return onA > 0 ? { of: a, on: b, leads: onA } : { of: b, on: a, leads: onB };
}

function swapWords(bench: Bench, contacts: readonly [string, string]): string {
	const stray = strayed(bench, contacts);
	if (!stray)
		return `the leads of ${pairText(bench, contacts)} are swapped: each landed on the other`;
	const sits = stray.leads === 1 ? ['lead', 'sits'] : ['leads', 'sit'];
	return `the ${sits[0]} of ${textName(bench, stray.of)} ${sits[1]} on ${textName(bench, stray.on)}`;
}

/** The break contact that belongs to a spring, if its socket has one. */
function breakOf(bench: Bench, spring: string): string | null {
	const [owner, name] = splitNode(spring);
	const socket = bench.sockets.find((s) => s.id === owner);
	const breaks = Object.entries(socket ? SOCKETS[socket.kind].breaks : {});
	return breaks.find(([, on]) => on === name)?.[0] ?? null;
}

function bentWords(bench: Bench, contact: string): string {
	const off = breakOf(bench, contact);
	return `the spring of ${textName(bench, contact)} is bent: it never touches a plug${off ? ` and never lifts off ${off}` : ''}`;
}

/** The same without what it does: `jumper w1 is open`. */
export const faultName = (bench: Bench, fault: Fault): string =>
	faultWords(bench, fault).split(': ')[0]!;

/** One clause for any fault; null is "no fault". */
export function faultWords(bench: Bench, fault: Fault | null): string {
	if (fault === null) return 'nothing is wrong';
	switch (fault.kind) {
		case 'open':
			return `${wireName(bench, fault.wire)} is open: it conducts nothing`;
		case 'resistive':
			return `${wireName(bench, fault.wire)} has ${fineOhms(fault.ohms)} more than it should`;
		case 'bridge':
			return `a bridge joins ${pairText(bench, fault.between)}`;
		case 'swap':
			return swapWords(bench, fault.contacts);
		case 'break-dirty':
			return `${textName(bench, fault.contact)} is dirty: ${fineOhms(fault.ohms)} more when it is closed`;
		case 'break-stuck-open':
			return `${textName(bench, fault.contact)} is stuck open: it never closes`;
		case 'break-stuck-closed':
			return `${textName(bench, fault.contact)} is stuck closed: it never opens`;
		case 'spring-bent':
			return bentWords(bench, fault.contact);
	}
}
