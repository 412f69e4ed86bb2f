/**
 * What touches what in one socket, read off the circuit: no rule of contact of its own. Used for the
 * sentence on the present state, and by `travel.ts` to compare the state before with the one after.
 */
import {
	PLUGS,
	SEATED,
	SOCKETS,
	circuit,
	plugIn,
	seenBySpring,
	type Bench,
	type Plug,
	type PlugConductor,
	type Socket,
	type SpringName
} from '../engine';
import { andOf, contactText, plugName, sentence, theSocket } from './names';
import { travelMm } from './units';

export interface Standing {
	readonly socket: Socket;
	readonly plug: Plug | null;
	/** Spring → the part of the plug that it touches. */
	readonly touches: ReadonlyMap<SpringName, PlugConductor>;
	/** Springs that the plug has moved; a bent one is passed over. */
	readonly lifted: ReadonlySet<SpringName>;
	/** Break contacts that are closed. */
	readonly closed: ReadonlySet<string>;
	readonly changeover: 'NC' | 'NO' | null;
	/** Parts of a three-pin plug that have mated. */
	readonly mated: readonly PlugConductor[];
}

/** What stands where in the socket now; null for an id that is no socket's. */
export function standingOf(bench: Bench, id: string): Standing | null {
	const socket = bench.sockets.find((s) => s.id === id);
	if (!socket) return null;
	const touches = new Map<SpringName, PlugConductor>();
	const closed = new Set<string>();
	const mated: PlugConductor[] = [];
	let changeover: 'NC' | 'NO' | null = null;
	for (const { reason: r } of circuit(bench).conductors) {
		if (!('socket' in r) || r.socket !== id) continue;
		if (r.kind === 'touch') touches.set(r.spring, r.part);
		else if (r.kind === 'rest') closed.add(r.contact);
		else if (r.kind === 'mate') mated.push(r.part);
		else if (r.kind === 'changeover') changeover = r.contact;
	}
	const plug = plugIn(bench, id);
	const lifted = new Set(
		SOCKETS[socket.kind].springs.filter(
			(s) => plug && seenBySpring(plug.kind, plug.travel, s).lifted && !isBent(bench, id, s)
		)
	);
	return { socket, plug, touches, lifted, closed, changeover, mated };
}

/** Whether the spring is bent, so that a plug passes it by. */
export const isBent = (bench: Bench, socket: string, spring: SpringName): boolean =>
	bench.faults.some((f) => f.kind === 'spring-bent' && f.contact === `${socket}.${spring}`);

/** Springs from the deepest to the shallowest, the order in which people name them. */
export const SPRING_ORDER: readonly SpringName[] = ['T', 'R', 'S'];

/** Pairs of springs that the plug joins, and through what: one part, or the plug's inside. */
export function bridgesOf({ plug, touches }: Standing): Map<string, string> {
	const bridges = new Map<string, string>();
	if (!plug) return bridges;
	const oneInside = PLUGS[plug.kind].inside.length > 0;
	SPRING_ORDER.forEach((x, i) => {
		for (const y of SPRING_ORDER.slice(i + 1)) {
			const [p, q] = [touches.get(x), touches.get(y)];
			if (!p || !q) continue;
			if (p === q) bridges.set(`${x} ${y}`, `the ${p}`);
			else if (oneInside) bridges.set(`${x} ${y}`, 'the plug’s inside');
		}
	});
	return bridges;
}

/** `T on TN, R on RN`: closed break contacts whose spring or pin rests. */
function restingWords({ socket, closed, lifted }: Standing): string {
	const breaks = Object.entries(SOCKETS[socket.kind].breaks);
	const resting = breaks.filter(([b, on]) => closed.has(b) && !lifted.has(on as SpringName));
	if (resting.length === 0) return '';
	const [first, ...rest] = resting.map(([b, on]) => [contactText(on), b] as const);
	return andOf([`${first![0]} rests on ${first![1]}`, ...rest.map(([on, b]) => `${on} on ${b}`)]);
}

function openWords({ socket, closed }: Standing): string {
	const open = Object.keys(SOCKETS[socket.kind].breaks).filter((b) => !closed.has(b));
	return open.length === 0 ? '' : `${andOf(open)} ${open.length > 1 ? 'stand' : 'stands'} open`;
}

const theChangeover = ({ changeover }: Standing): string =>
	changeover ? `the changeover stands on ${changeover}` : '';

function touchWords(s: Standing): string {
	const parts = PLUGS[s.plug!.kind].conductors.map((part) => {
		const on = SPRING_ORDER.filter((spring) => s.touches.get(spring) === part);
		return { part, on };
	});
	const touching = parts.filter((p) => p.on.length > 0);
	const idle = parts.filter((p) => p.on.length === 0).map((p) => `the ${p.part}`);
	const words = touching.map((p, i) => `the ${p.part} ${i === 0 ? 'is ' : ''}on ${andOf(p.on)}`);
	const nothing = idle.length
		? [`${andOf(idle)} ${idle.length > 1 ? 'touch' : 'touches'} no spring`]
		: [];
	return andOf([...words, ...nothing]);
}

function insulatedWords({ lifted, touches }: Standing): string {
	const on = SPRING_ORDER.filter((s) => lifted.has(s) && !touches.has(s));
	return on.length ? `${andOf(on)} ${on.length > 1 ? 'lie' : 'lies'} on insulation` : '';
}

/** Pairs that one thing joins, as one list of springs: part of the plug → `T, R and S`. */
export function springsBy(bridges: Iterable<readonly [string, string]>): [string, string][] {
	const by = new Map<string, Set<string>>();
	for (const [pair, part] of bridges)
		by.set(part, new Set([...(by.get(part) ?? []), ...pair.split(' ')]));
	return [...by].map(([part, on]) => [part, andOf(SPRING_ORDER.filter((s) => on.has(s)))]);
}

const bridgeWords = (s: Standing): string =>
	springsBy(bridgesOf(s))
		.map(([part, springs]) => `${springs} are joined through ${part}`)
		.join('; ');

function matedWords({ mated }: Standing): string {
	if (mated.length === 0) return 'nothing has mated';
	return mated.length < 4
		? 'pin 1 and the shell have mated, pins 2 and 3 not yet'
		: 'pins 1, 2 and 3 and the shell have mated';
}

/** The clauses on the present state: what touches, what is bridged, what rests, what stands open. */
export function standingClauses(s: Standing): string[] {
	const contact = s.plug
		? s.plug.kind === 'three-pin'
			? [matedWords(s)]
			: [touchWords(s), insulatedWords(s), bridgeWords(s)]
		: [];
	return [...contact, restingWords(s), openWords(s), theChangeover(s)].filter((w) => w !== '');
}

/** One sentence on what stands where in the socket now. */
export function standingWords(bench: Bench, socket: string): string {
	const s = standingOf(bench, socket);
	if (!s) return '';
	const where = theSocket(bench, socket);
	const clauses = standingClauses(s).join('; ');
	if (!s.plug) return sentence(`nothing is in ${where}${clauses ? `: ${clauses}` : ''}`);
	const place =
		s.plug.travel === SEATED
			? `${plugName(bench, s.plug.id)} is home in ${where}`
			: `${plugName(bench, s.plug.id)} stands ${travelMm(s.plug.travel)} deep in ${where}`;
	return sentence(`${place}${clauses ? `: ${clauses}` : ''}`);
}
