/**
 * A bench falls into islands: sockets, plugs and devices that wires, cores, plugs and bridges hang
 * together. Islands share nothing but the panel, so a fault on one changes nothing that is read on
 * another, except through two ways to the panel (legs.ts). Everything on an island is renamed by its
 * place, cores become wires, and wires are sorted, so that islands alike are equal texts and are
 * worked out once.
 */
import {
	EMPTY_BENCH,
	PANEL,
	byCodePoint,
	splitNode,
	type Bench,
	type Fault,
	type NodeName,
	type When
} from '../engine';

export interface Island {
	/** The island by itself, under names of its own. */
	readonly bench: Bench;
	/** One text for islands that are alike. */
	readonly key: string;
	/** From the island's own names to those of the bench. */
	readonly node: (own: NodeName) => NodeName;
	readonly fault: (own: Fault) => Fault;
	readonly when: (own: When) => When;
}

/** A wire or a core as the bench names it. */
interface Lead {
	readonly name: string;
	readonly ends: readonly [NodeName, NodeName];
}

const leadsOf = (bench: Bench): Lead[] => [
	...bench.wires.map((w): Lead => ({ name: w.id, ends: [w.from, w.to] })),
	...bench.cables.flatMap((c) => c.cores.map((ends, i): Lead => ({ name: `${c.id}:${i}`, ends })))
];

const ownersOf = (nodes: readonly NodeName[]): string[] =>
	nodes.filter((node) => node !== PANEL).map((node) => splitNode(node)[0]);

const endsOfFault = (fault: Fault): readonly NodeName[] =>
	fault.kind === 'bridge' ? fault.between : fault.kind === 'swap' ? fault.contacts : [];

/** What hangs together with an owner, by the owner's id: one name for each island. */
function hangingOf(bench: Bench): (id: string) => string {
	const parent = new Map<string, string>();
	const root = (id: string): string => {
		let at = id;
		for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
		return at;
	};
	const unite = (owners: readonly string[]) =>
		owners.forEach((owner) => {
			const [x, y] = [root(owners[0]!), root(owner)];
			if (x !== y) parent.set(y, x);
		});
	for (const { ends } of leadsOf(bench)) unite(ownersOf(ends));
	for (const fault of bench.faults) unite(ownersOf(endsOfFault(fault)));
	for (const { id, socket } of bench.plugs) if (socket !== null) unite([socket, id]);
	return root;
}

/** Names by place: `s0`, `s1` for sockets, and so on. */
function namesOf(lists: Readonly<Record<string, readonly { readonly id: string }[]>>) {
	const own = new Map<string, string>();
	for (const [letter, list] of Object.entries(lists))
		list.forEach(({ id }, i) => own.set(id, `${letter}${i}`));
	return own;
}

const renamed = (node: NodeName, names: ReadonlyMap<string, string>): NodeName => {
	const [owner, contact] = splitNode(node);
	return node === PANEL ? node : `${names.get(owner)!}.${contact}`;
};

function renamedFault(
	fault: Fault,
	names: ReadonlyMap<string, string>,
	leads: ReadonlyMap<string, string>
): Fault {
	const pair = ([a, b]: readonly [NodeName, NodeName]) =>
		[renamed(a, names), renamed(b, names)] as const;
	if (fault.kind === 'bridge') return { ...fault, between: pair(fault.between) };
	if (fault.kind === 'swap') return { ...fault, contacts: pair(fault.contacts) };
	if ('wire' in fault) return { ...fault, wire: leads.get(fault.wire)! };
	return { ...fault, contact: renamed(fault.contact, names) };
}

const turned = (map: ReadonlyMap<string, string>): Map<string, string> =>
	new Map([...map].map(([x, y]) => [y, x]));

/** The leads in an order of their own, under the island's names. */
function sortedLeads(leads: readonly Lead[], names: ReadonlyMap<string, string>): Lead[] {
	const here = leads.map(({ name, ends }): Lead => {
		const [a, b] = ends.map((n) => renamed(n, names)).sort(byCodePoint) as [NodeName, NodeName];
		return { name, ends: [a, b] };
	});
	return here.sort((x, y) => byCodePoint(x.ends.join(), y.ends.join()));
}

function islandOf(whole: Bench, faults: readonly Fault[], leads: readonly Lead[]): Island {
	const { sockets, plugs, devices } = whole;
	const names = namesOf({ s: sockets, p: plugs, d: devices });
	const sorted = sortedLeads(leads, names);
	const leadNames = new Map(sorted.map(({ name }, i) => [name, `w${i}`]));
	const name = (id: string) => names.get(id)!;
	const bench: Bench = {
		...EMPTY_BENCH,
		panel: { metal: whole.panel.metal },
		sockets: sockets.map(({ id, kind, bush }) => ({ id: name(id), kind, bush, label: '' })),
		plugs: plugs.map(({ id, kind, socket, travel }) => ({
			...{ id: name(id), kind, travel },
			socket: socket === null ? null : name(socket)
		})),
		devices: devices.map(({ id, kind }) => ({ id: name(id), kind, phantom: false })),
		wires: sorted.map(({ ends: [from, to] }, i) => ({ id: `w${i}`, from, to, awg: 26, mm: 1 })),
		faults: faults.map((f) => renamedFault(f, names, leadNames))
	};
	const back = turned(names);
	const leadsBack = turned(leadNames);
	return {
		bench,
		key: JSON.stringify(bench),
		node: (own) => renamed(own, back),
		fault: (own) => renamedFault(own, back, leadsBack),
		when: (own) => Object.fromEntries(Object.entries(own).map(([s, to]) => [back.get(s)!, to]))
	};
}

/** The islands of a bench, in file order. Resistive and dirty joints join all the same: left out. */
export function islandsOf(bench: Bench): Island[] {
	const root = hangingOf(bench);
	const leads = leadsOf(bench);
	const rootOfLead = new Map(leads.map(({ name, ends }) => [name, root(ownersOf(ends)[0]!)]));
	const rootOfFault = (fault: Fault): string => {
		if ('wire' in fault) return rootOfLead.get(fault.wire)!;
		return root(ownersOf('contact' in fault ? [fault.contact] : endsOfFault(fault))[0]!);
	};
	const faults = bench.faults.filter((f) => f.kind !== 'resistive' && f.kind !== 'break-dirty');
	const owners = [...bench.sockets, ...bench.plugs, ...bench.devices];
	return [...new Set(owners.map(({ id }) => root(id)))].map((at) => {
		const here = <T extends { readonly id: string }>(list: readonly T[]) =>
			list.filter(({ id }) => root(id) === at);
		const whole = {
			...bench,
			sockets: here(bench.sockets),
			plugs: here(bench.plugs),
			devices: here(bench.devices)
		};
		return islandOf(
			whole,
			faults.filter((f) => rootOfFault(f) === at),
			leads.filter(({ name }) => rootOfLead.get(name) === at)
		);
	});
}

/** The most sockets that hang together. */
export const mostTogether = (bench: Bench): number =>
	islandsOf(bench).reduce((most, { bench: { sockets } }) => Math.max(most, sockets.length), 0);
