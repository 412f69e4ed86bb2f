/**
 * The faults of a list as a person chooses among them: first the kind, then where, in groups that
 * are short enough to look through on a phone. What all of a group share stands in its name.
 */
import { splitNode, type Bench, type Fault, type FaultKind } from '../engine';
import { contactText, socketName, textName, wireName } from './names';

/** Kinds as something to choose. */
export const FAULT_KIND_CHOICES: Readonly<Record<FaultKind, string>> = {
	open: 'A wire or core that conducts nothing',
	resistive: 'A wire or core with too many ohms',
	bridge: 'Two contacts bridged',
	swap: 'Two contacts exchanged',
	'break-dirty': 'A dirty break contact',
	'break-stuck-open': 'A break contact that never closes',
	'break-stuck-closed': 'A break contact that never opens',
	'spring-bent': 'A bent spring'
};

export interface FaultChoice {
	readonly fault: Fault;
	/** Where it is, without what its kind says already. */
	readonly words: string;
}
export interface FaultGroup {
	/** '' where one group holds all. */
	readonly name: string;
	readonly choices: readonly FaultChoice[];
}

/** As many pairs of one socket may stand in one group. */
const MOST_TOGETHER = 10;

const isPaired = (fault: Fault): fault is Extract<Fault, { kind: 'bridge' | 'swap' }> =>
	fault.kind === 'bridge' || fault.kind === 'swap';
const pairOf = (fault: Extract<Fault, { kind: 'bridge' | 'swap' }>) =>
	fault.kind === 'bridge' ? fault.between : fault.contacts;
const nodeOf = (fault: Exclude<Fault, { wire: string }>): string =>
	isPaired(fault) ? pairOf(fault)[0] : fault.contact;

/** `w1, pin 2 to T`: a wire with its ends, `core 1, pin 1 to shield of DESK`. */
function wireChoice(bench: Bench, name: string): { group: string; words: string } {
	const core = /^(.*):(\d+)$/.exec(name);
	const ends = core
		? bench.cables.find((c) => c.id === core[1])?.cores[Number(core[2])]
		: bench.wires.flatMap((w) => (w.id === name ? [[w.from, w.to] as const] : []))[0];
	const way = ends ? `: ${textName(bench, ends[0])} to ${textName(bench, ends[1])}` : '';
	const [what, ...rest] = wireName(bench, name).split(' of ');
	if (core) return { group: `Cable ${core[1]}`, words: `${what}${way}` };
	return { group: 'Jumpers and wires', words: `${[what, ...rest].join(' of ')}${way}` };
}

function choiceOf(bench: Bench, fault: Fault, byContact: boolean) {
	if ('wire' in fault) return wireChoice(bench, fault.wire);
	const [owner, contact] = splitNode(nodeOf(fault));
	const socket = bench.sockets.length > 1 ? socketName(bench, owner) : '';
	if (!isPaired(fault)) return { group: socket, words: contactText(contact) };
	const words = pairOf(fault)
		.map((node) => contactText(splitNode(node)[1]))
		.join(' and ');
	const first = `${contactText(contact)} and another`;
	if (!byContact) return { group: socket, words };
	return { group: socket ? `${socket}: ${first}` : first, words };
}

/** The faults of one kind by socket and contact, or by jumpers and cables; in list order. */
export function faultGroups(bench: Bench, faults: readonly Fault[]): FaultGroup[] {
	const pairs = faults.filter(isPaired).map((f) => splitNode(nodeOf(f))[0]);
	const byContact = bench.sockets.some(
		({ id }) => pairs.filter((owner) => owner === id).length > MOST_TOGETHER
	);
	const groups = new Map<string, FaultChoice[]>();
	for (const fault of faults) {
		const { group, words } = choiceOf(bench, fault, byContact);
		groups.set(group, [...(groups.get(group) ?? []), { fault, words }]);
	}
	const all = [...groups].map(([name, choices]): FaultGroup => ({ name, choices }));
	return all.length === 1 ? [{ ...all[0]!, name: '' }] : all;
}
