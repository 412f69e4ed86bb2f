/**
 * What stands still while a plug is on its way. A drag is hundreds of benches a second that differ in
 * one number, and nearly all that is shown follows from less than that: what lies where changes when
 * a plug goes in or out, what is joined changes at the events of the travel. Each keeper gives back
 * the bench it gave before for as long as nothing of its kind has changed, so that what is derived
 * from it rests.
 */
import { sectionEvents } from '../diagram';
import { SEATED, type Bench } from '../engine';

const PARTS = ['panel', 'sockets', 'wires', 'cables', 'devices', 'faults'] as const;

/** Whether all that is built is the same: all but titles and plugs. */
export const sameBuild = (a: Bench, b: Bench): boolean =>
	a === b || PARTS.every((part) => a[part] === b[part]);

/** Whether the same things lie in the same places: all but titles and how far plugs are in. */
export const sameLayout = (a: Bench, b: Bench): boolean =>
	a === b ||
	(sameBuild(a, b) &&
		a.plugs.length === b.plugs.length &&
		a.plugs.every((p, i) => {
			const q = b.plugs[i]!;
			return p === q || (p.id === q.id && p.kind === q.kind && p.socket === q.socket);
		}));

/**
 * Whether no contact opens or closes between the two: same layout, and no event between the travels.
 * A seated plug is a state of its own, because tables and words name it.
 */
export function sameState(a: Bench, b: Bench): boolean {
	if (!sameLayout(a, b)) return false;
	return a.plugs.every((p, i) => {
		const travel = b.plugs[i]!.travel;
		const socket = p.travel === travel ? undefined : a.sockets.find((s) => s.id === p.socket);
		if (!socket) return true;
		if ((p.travel === SEATED) !== (travel === SEATED)) return false;
		const [near, far] = [Math.min(p.travel, travel), Math.max(p.travel, travel)];
		return sectionEvents(p.kind, socket.kind).every((event) => event <= near || event > far);
	});
}

/** Gives back the last value for as long as the next one is the same in that sense, and tells of each. */
export function keeper<T>(
	same: (a: T, b: T) => boolean,
	onsame: (next: T, kept: T) => void = () => {}
): (next: T) => T {
	let kept: T | undefined;
	return (next) => {
		if (kept === undefined || !same(kept, next)) return (kept = next);
		if (kept !== next) onsame(next, kept);
		return kept;
	};
}
