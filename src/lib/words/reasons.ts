/** Why a conductor is there, or why a contact stands open: one clause for every kind of reason. */
import {
	circuit,
	splitNode,
	type Bench,
	type Circuit,
	type Conductor,
	type Gap,
	type GapReason,
	type NodeName,
	type Reason
} from '../engine';
import { andOf, contactText, partText, plugName, socketName, textName, wireName } from './names';
import { lengthWords } from './units';
import { faultWords } from './faults';

/** `in Stage 1, ` on a bench with several sockets. */
const inSocket = (bench: Bench, socket: string): string =>
	bench.sockets.length === 1 ? '' : `in ${socketName(bench, socket)}, `;

/** `T's spring`, `pin 1`. */
export const springWords = (spring: string): string =>
	spring === '1' ? 'pin 1' : `${spring}’s spring`;

type Of<R extends { kind: string }, K extends R['kind']> = Extract<R, { kind: K }>;

function restWords(bench: Bench, r: Of<Reason, 'rest'>): string {
	const where = inSocket(bench, r.socket);
	if (r.stuck) return `${where}${r.contact} is held closed on ${contactText(r.spring)} by a fault`;
	if (r.spring === '1') return `${where}${r.contact} rests on pin 1, with no three-pin plug in`;
	return `${where}${springWords(r.spring)} rests on ${r.contact}`;
}

function mateWords(bench: Bench, r: Of<Reason, 'mate'>): string {
	const of = `${partText(r.part)} of ${plugName(bench, r.plug)}`;
	const part = r.part === 'shell' ? `the ${of}` : of;
	return `${part} has mated with ${textName(bench, `${r.socket}.${r.contact}`)}`;
}

function wireWords(bench: Bench, wire: string, ends: string): string {
	const found = bench.wires.find((w) => w.id === wire);
	const size = found ? `, ${lengthWords(found.mm)} of ${found.awg} AWG,` : '';
	return `${wireName(bench, wire)}${size} joins ${ends}`;
}

function coreWords(bench: Bench, r: Of<Reason, 'core'>, ends: string): string {
	const cable = bench.cables.find((c) => c.id === r.cable);
	const size = cable ? `, ${lengthWords(cable.m * 1000)} of ${cable.awg} AWG,` : '';
	return `${wireName(bench, `${r.cable}:${r.core}`)}${size} joins ${ends}`;
}

const DEVICE_ROLES: Readonly<Record<Of<Reason, 'inside-device'>['role'], string>> = {
	bond: 'the bond of shield to chassis',
	coil: 'the coil between hot and cold',
	load: 'the load',
	output: 'the output resistor',
	feed: 'the phantom feed resistor'
};

/** Why the conductor is there: one clause, no capital, no full stop. */
export function reasonWords(bench: Bench, { a, b, reason: r }: Conductor): string {
	const ends = `${textName(bench, a)} and ${textName(bench, b)}`;
	switch (r.kind) {
		case 'rest':
			return restWords(bench, r);
		case 'changeover':
			return `${inSocket(bench, r.socket)}the changeover stands on ${r.contact}`;
		case 'touch':
			return `the ${r.part} of ${plugName(bench, r.plug)} touches ${textName(bench, a)}`;
		case 'mate':
			return mateWords(bench, r);
		case 'wire':
			return wireWords(bench, r.wire, ends);
		case 'core':
			return coreWords(bench, r, ends);
		case 'inside-plug':
			return `inside ${plugName(bench, r.plug)}, ${splitNode(a)[1]} and ${splitNode(b)[1]} are joined`;
		case 'chassis':
			return `${textName(bench, a)} is fastened to the metal panel`;
		case 'bush':
			return `the metal bush of ${socketName(bench, r.socket)} joins its S to the panel`;
		case 'bridge':
			return faultWords(bench, bench.faults[r.fault] ?? { kind: 'bridge', between: [a, b] });
		case 'inside-device':
			return `inside ${r.device}, ${DEVICE_ROLES[r.role]} stands between ${splitNode(a)[1]} and ${splitNode(b)[1]}`;
	}
}

function liftedWords(bench: Bench, r: Of<GapReason, 'lifted'>): string {
	const plug = plugName(bench, r.plug);
	const where = inSocket(bench, r.socket);
	return r.spring === '1'
		? `${where}${plug} has opened ${r.contact} from pin 1`
		: `${where}${plug} lifts ${springWords(r.spring)} off ${r.contact}`;
}

function changeoverGap(bench: Bench, r: Of<GapReason, 'changeover'>): string {
	const where = inSocket(bench, r.socket);
	const other = r.contact === 'NC' ? 'NO' : 'NC';
	const by = r.plug === null ? '' : `, moved there by ${plugName(bench, r.plug)}`;
	return `${where}the changeover stands on ${other}${by}, so C and ${r.contact} are open`;
}

/** Why the contact or wire is open: one clause, no capital, no full stop. */
export function gapWords(bench: Bench, { a, b, reason: r }: Gap): string {
	switch (r.kind) {
		case 'lifted':
			return liftedWords(bench, r);
		case 'changeover':
			return changeoverGap(bench, r);
		case 'stuck-open':
			return `${inSocket(bench, r.socket)}${r.contact} is stuck open and never meets ${contactText(r.spring)}`;
		case 'cut':
			return `${wireName(bench, r.wire)}, from ${textName(bench, a)} to ${textName(bench, b)}, is open and conducts nothing`;
	}
}

/** What would close the gap, as a clause; null where nothing but a repair would. */
export function closingWords(bench: Bench, { reason: r }: Gap): string | null {
	if (r.kind === 'lifted') return `pulling ${plugName(bench, r.plug)} out would close it`;
	if (r.kind !== 'changeover') return null;
	return r.plug === null
		? 'a plug would move the changeover'
		: `pulling ${plugName(bench, r.plug)} out would move the changeover back`;
}

/** Wires and cores that land on the node, open ones too, as they are called. */
const landingOn = (bench: Bench, node: NodeName): string[] =>
	(landings(circuit(bench)).get(node) ?? []).map((name) => wireName(bench, name));

const landed = new WeakMap<Circuit, ReadonlyMap<NodeName, readonly string[]>>();

function landings(made: Circuit): ReadonlyMap<NodeName, readonly string[]> {
	const known = landed.get(made);
	if (known) return known;
	const names = new Map<NodeName, string[]>();
	for (const { a, b, reason: r } of [...made.conductors, ...made.gaps]) {
		const name =
			r.kind === 'wire' || r.kind === 'cut'
				? r.wire
				: r.kind === 'core'
					? `${r.cable}:${r.core}`
					: null;
		if (name === null) continue;
		for (const node of new Set([a, b])) names.set(node, [...(names.get(node) ?? []), name]);
	}
	landed.set(made, names);
	return names;
}

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/**
 * What to mind at a solder cup that holds three conductors or more; null for any other node. That a
 * cup takes two at a hybrid, cable and jumper, is common practice, so two are nothing to speak of.
 */
export function cupWords(bench: Bench, node: NodeName): string | null {
	const there = landingOn(bench, node);
	const isCup = bench.sockets.some((s) => s.id === splitNode(node)[0]);
	if (!isCup || there.length < 3) return null;
	const count = COUNTS[there.length] ?? there.length;
	return `The cup of ${textName(bench, node)} holds ${count} conductors: ${andOf(there)}. That is crowded; see whether one could land on another contact of the same net.`;
}
