/**
 * What just happened in a socket when a plug moved: one sentence for each event on the way, at the
 * travel where it happens. The depths and the plug's profile give the places; the circuit on either
 * side of a place tells what changed there, so a bent spring or a stuck contact is told truly too.
 */
import {
	PINS_MAKE,
	PIN_1_MAKES,
	PLUGS,
	SEATED,
	SOCKETS,
	SPRING_DEPTH,
	isJoined,
	type Bench,
	type Millimetres,
	type Plug,
	type Socket,
	type SpringName
} from '../engine';
import { plugName, sentence, theSocket } from './names';
import {
	SPRING_ORDER,
	bridgesOf,
	isBent,
	springsBy,
	standingOf,
	standingWords,
	type Standing
} from './standing';
import { travelMm } from './units';

/** Travels at which something changes in this socket for this plug, shallowest first. */
function placesOf(plug: Plug, socket: Socket): Millimetres[] {
	const { fits, segments } = PLUGS[plug.kind];
	if (fits === 'three-pin') return [PIN_1_MAKES, PINS_MAKE];
	const places = SOCKETS[socket.kind].springs.flatMap((s) =>
		segments.map((segment) => SPRING_DEPTH[s] + segment.from)
	);
	return [...new Set(places)].filter((t) => t <= SEATED).sort((a, b) => a - b);
}

const withTravel = (bench: Bench, plug: string, travel: Millimetres): Bench => ({
	...bench,
	plugs: bench.plugs.map((p) => (p.id === plug ? { ...p, travel } : p))
});

/** One place on the way, with the bench on either side of it. */
interface Event {
	readonly at: Millimetres;
	readonly inward: boolean;
	readonly bench: Bench;
	readonly before: Standing;
	readonly after: Standing;
}

/** The socket with its plug and nothing else: what stands where in it asks for no more. */
const alone = (bench: Bench, socket: Socket, plug: Plug): Bench => ({
	...bench,
	sockets: [socket],
	plugs: bench.plugs.filter((p) => p.id === plug.id),
	wires: [],
	cables: [],
	devices: []
});

function eventsOf(bench: Bench, socket: Socket, plug: Plug, from: Millimetres, to: Millimetres) {
	const inward = to > from;
	const [low, high] = inward ? [from, to] : [to, from];
	const places = placesOf(plug, socket).filter((t) => low < t && t <= high);
	const stops = [low, ...places];
	const standing = (x: Bench) => standingOf(alone(x, socket, plug), socket.id)!;
	const events = places.map((at, i): Event => {
		const below = withTravel(bench, plug.id, stops[i]!);
		const there = withTravel(bench, plug.id, at);
		const [x, y] = inward ? [below, there] : [there, below];
		return { at, inward, bench: y, before: standing(x), after: standing(y) };
	});
	return inward ? events : events.reverse();
}

const breakOn = (socket: Socket, spring: string): string | null =>
	Object.entries(SOCKETS[socket.kind].breaks).find(([, on]) => on === spring)?.[0] ?? null;

/** `the tip`, or `the insulation`. */
const surface = (part: string | undefined): string => (part ? `the ${part}` : 'insulation');

function liftWords({ before, after }: Event, spring: SpringName): string {
	const part = after.touches.get(spring);
	const touch = part ? `touches the ${part}` : 'touches nothing';
	const contact = breakOn(after.socket, spring);
	const start = `${surface(part)} reaches ${spring}’s spring and lifts it: ${spring} `;
	if (!contact) return `${start}${touch}`;
	if (!before.closed.has(contact)) return `${start}${touch}; ${contact} was open already`;
	return after.closed.has(contact)
		? `${start}${touch}, but ${contact} is stuck to it`
		: `${start}leaves ${contact} and ${touch}`;
}

function fallWords({ before, after }: Event, spring: SpringName): string {
	const contact = breakOn(after.socket, spring);
	const start = `the nose leaves ${spring}’s spring: ${spring} `;
	if (!contact) return `${start}touches the plug no more`;
	if (!after.closed.has(contact)) return `${start}falls back, but ${contact} stays open`;
	return before.closed.has(contact)
		? `${start}falls back on ${contact}, which was stuck to it all along`
		: `${start}falls back on ${contact}`;
}

function slideWords({ inward, before, after }: Event, spring: SpringName): string | null {
	const [was, is] = [before.touches.get(spring), after.touches.get(spring)];
	if (was === is) return null;
	const back = inward ? '' : 'back ';
	if (is) return `the ${is} comes ${back}under ${spring}’s spring: ${spring} touches the ${is}`;
	return `an insulator comes ${back}under ${spring}’s spring: ${spring} lets go of the ${was} and touches nothing`;
}

/** A bent spring is named where a good one would have been lifted. */
function bentWords({ bench, at, inward, after }: Event, spring: SpringName): string | null {
	if (!inward || at !== SPRING_DEPTH[spring] || !isBent(bench, after.socket.id, spring))
		return null;
	const contact = breakOn(after.socket, spring);
	const stays = contact && after.closed.has(contact) ? `stays on ${contact} and ` : '';
	return `the plug passes ${spring}’s spring, which is bent: ${spring} ${stays}touches nothing`;
}

function springWords(event: Event, spring: SpringName): string | null {
	const [was, is] = [event.before.lifted.has(spring), event.after.lifted.has(spring)];
	if (!was && is) return liftWords(event, spring);
	if (was && !is) return fallWords(event, spring);
	return is ? slideWords(event, spring) : bentWords(event, spring);
}

function changeoverWords({ before, after }: Event): string[] {
	if (before.changeover === after.changeover) return [];
	return [`the changeover moves: C leaves ${before.changeover} and closes on ${after.changeover}`];
}

/** Joints that the plug itself made or ended between two springs. */
function bridgeWords({ bench, before, after }: Event): string[] {
	const [was, is] = [bridgesOf(before), bridgesOf(after)];
	const made = [...is].filter(([pair]) => !was.has(pair));
	const ended = [...was].filter(([pair]) => !is.has(pair));
	return [
		...springsBy(made).map(([by, springs]) => `${by} now joins ${springs}`),
		...ended.map(([pair, by]) => {
			const [x, y] = pair.split(' ');
			const node = (spring: string) => `${after.socket.id}.${spring}`;
			return isJoined(bench, node(x!), node(y!))
				? `${x} and ${y} are bridged by ${by} no more, though other conductors still join them`
				: `${x} and ${y}, bridged by ${by}, part again`;
		})
	];
}

function pinWords({ at, inward, before, after }: Event): string {
	if (at === PINS_MAKE)
		return inward
			? 'pins 2 and 3 make: the plug has mated'
			: 'pins 2 and 3 part; pin 1 and the shell still hold';
	const opened = before.closed.has('1N') && !after.closed.has('1N');
	const closed = !before.closed.has('1N') && after.closed.has('1N');
	const also = opened ? ', and 1N opens from pin 1' : closed ? ', and 1N rests on pin 1 again' : '';
	return inward
		? `pin 1 and the shell make, before the others${also}`
		: `pin 1 and the shell part, after the others${also}`;
}

function eventWords(event: Event, plug: Plug): string[] {
	const where = `${event.inward ? 'at' : 'below'} ${travelMm(event.at)} `;
	if (plug.kind === 'three-pin') return [sentence(where + pinWords(event))];
	const clauses = [
		...SPRING_ORDER.map((s) => springWords(event, s)),
		...changeoverWords(event),
		...bridgeWords(event)
	].filter((w): w is string => w !== null);
	return clauses.length ? [sentence(where + clauses.join('; '))] : [];
}

function exchangedWords(before: Bench, after: Bench, socket: string, was: Plug | null) {
	const where = theSocket(after, socket);
	const out = was ? [sentence(`${plugName(before, was.id)} comes out of ${where}`)] : [];
	return [...out, standingWords(after, socket)];
}

/**
 * What happened in one socket between two benches that differ in its plug: a sentence for each event
 * when the same plug moved, the state it is in now when a plug went in or came out, and [] when
 * nothing changed.
 */
export function travelWords(before: Bench, after: Bench, socket: string): string[] {
	const [was, is] = [standingOf(before, socket), standingOf(after, socket)];
	if (!was || !is || (!was.plug && !is.plug)) return [];
	if (was.plug?.id !== is.plug?.id || !was.plug || !is.plug)
		return exchangedWords(before, after, socket, was.plug);
	const [from, to] = [was.plug.travel, is.plug.travel];
	if (from === to) return [];
	const events = eventsOf(after, is.socket, is.plug, from, to);
	const home = to === SEATED ? [standingWords(after, socket)] : [];
	return [...events.flatMap((e) => eventWords(e, is.plug!)), ...home];
}
