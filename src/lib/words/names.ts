/**
 * What things are called: short on a label, in full for the ear, and so that it reads well inside a
 * sentence. A bench with one socket leaves that socket's name out.
 */
import {
	SOCKETS,
	PLUG_KINDS,
	splitNode,
	type Bench,
	type NodeName,
	type Plug,
	type Socket,
	type When
} from '../engine';
import { kindWords } from './kinds';

/** Labels come from people and files: one line, and not too long for a sentence. */
const tidy = (label: string): string => {
	const line = [...label.replace(/\s+/g, ' ').trim()];
	return line.length > 40 ? `${line.slice(0, 39).join('')}…` : line.join('');
};

/** A list in a sentence: `a, b and c`. */
export const andOf = (words: readonly string[]): string =>
	words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** A clause as a sentence: capital first, full stop last. */
export const sentence = (clause: string): string =>
	clause === ''
		? ''
		: `${clause[0]!.toUpperCase()}${clause.slice(1)}${/[.?]$/.test(clause) ? '' : '.'}`;

const socketOf = (bench: Bench, id: string): Socket | undefined =>
	bench.sockets.find((s) => s.id === id);
const plugOf = (bench: Bench, id: string): Plug | undefined => bench.plugs.find((p) => p.id === id);

/** A socket's label; its id where it has none, and both where two sockets share a label. */
export function socketName(bench: Bench, id: string): string {
	const label = tidy(socketOf(bench, id)?.label ?? '');
	if (label === '') return id;
	const namesakes = bench.sockets.filter((s) => tidy(s.label) === label);
	return namesakes.length > 1 ? `${label} (${id})` : label;
}

/** `Stage 1`, or `the socket` on a bench with one. */
export const theSocket = (bench: Bench, id: string): string =>
	bench.sockets.length === 1 ? 'the socket' : socketName(bench, id);

/** `plug p`; a bare plug that only a state put there is named by its kind, `the TS plug`. */
export function plugName(bench: Bench, id: string): string {
	const plug = plugOf(bench, id);
	return plug && /^bare\d+$/.test(id) ? `the ${kindWords(plug.kind).name}` : `plug ${id}`;
}

/** `jumper w1` between sockets, `wire w1` elsewhere, `core 2 of cable c` (people count from one). */
export function wireName(bench: Bench, name: string): string {
	const core = /^(.*):(\d+)$/.exec(name);
	if (core) return `core ${Number(core[2]) + 1} of cable ${core[1]}`;
	const wire = bench.wires.find((w) => w.id === name);
	const onSockets = wire && [wire.from, wire.to].every((end) => socketOf(bench, splitNode(end)[0]));
	return `${onSockets ? 'jumper' : 'wire'} ${name}`;
}

/** Label of a node: `T`, `Stage 1, T`, `plug p, tip`, `DESK, hot`, `panel`. */
export function nodeName(bench: Bench, node: NodeName): string {
	const [owner, contact] = splitNode(node);
	if (contact === '') return owner;
	if (socketOf(bench, owner))
		return bench.sockets.length === 1 ? contact : `${socketName(bench, owner)}, ${contact}`;
	return `${plugOf(bench, owner) ? plugName(bench, owner).replace(/^the /, '') : owner}, ${contact}`;
}

const isPin = (contact: string): boolean => /^[123]$/.test(contact);

/** A contact inside a sentence: `T`, `TN`, `pin 2`, `lug G`. */
export const contactText = (contact: string): string =>
	isPin(contact) ? `pin ${contact}` : contact === 'G' ? 'lug G' : contact;

/** A part of a plug inside a sentence: `tip`, `pin 2`, `shell`. */
export const partText = (part: string): string => (isPin(part) ? `pin ${part}` : part);

/** A node inside a sentence: `TN`, `pin 2 of Stage 1`, `the tip of plug p`, `hot of DESK`, `the panel`. */
export function textName(bench: Bench, node: NodeName): string {
	const [owner, contact] = splitNode(node);
	if (contact === '') return `the ${owner}`;
	if (socketOf(bench, owner)) {
		const name = contactText(contact);
		return bench.sockets.length === 1 ? name : `${name} of ${socketName(bench, owner)}`;
	}
	if (plugOf(bench, owner)) return `${theFirst(partText(contact))} of ${plugName(bench, owner)}`;
	return `${contact} of ${owner}`;
}
const theFirst = (part: string): string => (part.startsWith('pin') ? part : `the ${part}`);

const SPRINGS: Readonly<Record<string, string>> = { T: 'tip', R: 'ring', S: 'sleeve' };
const PINS: Readonly<Record<string, string>> = {
	'1': 'pin 1, shield',
	'2': 'pin 2, hot',
	'3': 'pin 3, cold'
};
const CHANGEOVER: Readonly<Record<string, string>> = {
	C: 'changeover, C',
	NC: 'changeover, NC: joined to C at rest',
	NO: 'changeover, NO: joined to C when a plug is in'
};

function spokenContact(socket: Socket, contact: string): string {
	const on = SOCKETS[socket.kind].breaks[contact];
	if (on === '1') return `normal of pin 1, ${contact}: break contact of pin 1`;
	if (on) return `${SPRINGS[on]} normal, ${contact}: break contact of ${on}`;
	if (contact === 'G') return 'chassis lug, G';
	if (SPRINGS[contact]) return `${SPRINGS[contact]} spring, ${contact}`;
	return PINS[contact] ?? CHANGEOVER[contact] ?? contact;
}

/** A node for the ear: `tip spring, T`, `tip normal, TN: break contact of T`, `DESK, hot`. */
export function spokenName(bench: Bench, node: NodeName): string {
	const [owner, contact] = splitNode(node);
	const socket = socketOf(bench, owner);
	if (contact === '') return 'metal panel';
	if (socket) {
		const words = spokenContact(socket, contact);
		return bench.sockets.length === 1 ? words : `${socketName(bench, owner)}, ${words}`;
	}
	return plugOf(bench, owner)
		? `${plugName(bench, owner).replace(/^the /, '')}, ${partText(contact)}`
		: `${owner}, ${contact}`;
}

const article = (words: string): string => `${/^[aeiou]/i.test(words) ? 'an' : 'a'} ${words}`;

function stateWords(bench: Bench, socket: string, state: string): string {
	const where = theSocket(bench, socket);
	if (state === 'none') return `nothing in ${where}`;
	const kind = PLUG_KINDS.find((k) => k === state);
	const plug = plugOf(bench, state);
	if (kind) return `${article(kindWords(kind).name)} in ${where}`;
	return plug
		? `the ${kindWords(plug.kind).name} ${state} in ${where}`
		: `plug ${state} in ${where}`;
}

/** What stands after the comma of a socket's label: `top` of `Full, top`; '' where there is none. */
const rowOf = (bench: Bench, socket: string): string =>
	/, ([^,]+)$/.exec(socketOf(bench, socket)?.label ?? '')?.[1] ?? '';

/**
 * The state of a whole panel in a few words: nothing anywhere, or one kind of plug in every socket of a
 * row and nothing else; null where it has to be said socket by socket.
 */
function panelWords(bench: Bench, states: readonly (readonly [string, string])[]): string | null {
	if (states.length < 3 || states.length < bench.sockets.length) return null;
	const plugged = states.filter(([, state]) => state !== 'none');
	const [first] = plugged;
	if (!first) return 'nothing in any socket';
	const kind = PLUG_KINDS.find((k) => k === first[1]);
	const row = rowOf(bench, first[0]);
	const inRow = bench.sockets.filter((s) => rowOf(bench, s.id) === row);
	const isRow =
		row !== '' &&
		inRow.length === plugged.length &&
		plugged.every(([socket, state]) => state === kind && rowOf(bench, socket) === row);
	return kind && isRow ? `${article(kindWords(kind).name)} in every ${row} socket` : null;
}

/** A plug state: `with a TS plug in Stage 1`, `with nothing in the socket`, `with the plugs as they stand`. */
export function whenWords(bench: Bench, when: When): string {
	const panel = panelWords(bench, Object.entries(when));
	if (panel !== null) return `with ${panel}`;
	const states = Object.entries(when).map(([socket, state]) => stateWords(bench, socket, state));
	return `with ${states.length ? andOf(states) : 'the plugs as they stand'}`;
}

/** What a part of a large panel shows, from 0; `sockets` are ids, in their order. */
export function partWords(
	view: 'rear' | 'front',
	part: number,
	many: number,
	sockets: readonly string[]
): string {
	const which = many > 1 ? `, part ${part + 1} of ${many}` : '';
	const shown = sockets.length > 0 ? sockets.join(', ') : 'devices and plugs';
	return `${view === 'rear' ? 'Rear' : 'Front'}${which}: ${shown}`;
}
