/** Random benches for the properties of this folder: every one of them passes the gate. */
import fc from 'fast-check';
import {
	BUSHES,
	DEVICE_KINDS,
	PLUG_KINDS,
	SOCKET_KINDS,
	type Bench,
	type Fault
} from '../engine/bench';
import { nodesOfBench } from '../engine/circuit';
import { DEVICES, SOCKETS, breakContactsOf, fits } from '../engine/parts';
import { wireNames } from '../engine/parse';

const text = fc.string({ unit: 'grapheme', maxLength: 30 });
const awg = fc.integer({ min: 10, max: 40 });
const tenths = (most: number) => fc.integer({ min: 1, max: most * 10 }).map((n) => n / 10);

const sockets = fc.array(
	fc.record({
		kind: fc.constantFrom(...SOCKET_KINDS),
		bush: fc.constantFrom(...BUSHES),
		label: text
	}),
	{ maxLength: 4 }
);
const plugs = fc.array(
	fc.record({ kind: fc.constantFrom(...PLUG_KINDS), loose: fc.boolean(), travel: tenths(30.5) }),
	{ maxLength: 5 }
);
const devices = fc.array(
	fc.record({ kind: fc.constantFrom(...DEVICE_KINDS), phantom: fc.boolean() }),
	{ maxLength: 3 }
);

/** A bench without conductors: plugs go where they fit and where there is room. */
const bare = fc
	.record({ title: text, metal: fc.boolean(), sockets, plugs, devices })
	.map(({ title, metal, sockets, plugs, devices }): Bench => {
		const taken = new Set<string>();
		const placed = sockets.map((s, i) => ({
			...s,
			id: `A${i}`,
			bush: SOCKETS[s.kind].hasBush ? s.bush : ('insulated' as const)
		}));
		const put = plugs.map(({ kind, loose, travel }, i) => {
			const free = placed.find((s) => !taken.has(s.id) && fits(kind, s.kind));
			const socket = loose || !free ? null : free.id;
			if (socket) taken.add(socket);
			return { id: `p-${i}`, kind, socket, travel };
		});
		return {
			title,
			panel: { metal },
			sockets: placed,
			wires: [],
			plugs: put,
			devices: devices.map(({ kind, phantom }, i) => ({
				id: `D_${i}`,
				kind,
				phantom: phantom && DEVICES[kind].mayHavePhantom
			})),
			cables: [],
			faults: []
		};
	});

const pairOf = (nodes: readonly string[]) =>
	fc
		.shuffledSubarray([...nodes], { minLength: 2, maxLength: 2 })
		.map(([a, b]): [string, string] => [a!, b!]);

function withConductors(bench: Bench): fc.Arbitrary<Bench> {
	const nodes = nodesOfBench(bench);
	if (nodes.length < 2) return fc.constant(bench);
	const wires = fc.array(fc.record({ ends: pairOf(nodes), awg, mm: tenths(500) }), {
		maxLength: 8
	});
	const cables = fc.array(
		fc.record({ m: tenths(100), awg, cores: fc.array(pairOf(nodes), { maxLength: 4 }) }),
		{ maxLength: 2 }
	);
	return fc.record({ wires, cables }).map(({ wires, cables }) => ({
		...bench,
		wires: wires.map(({ ends: [from, to], awg, mm }, i) => ({ id: `w${i}`, from, to, awg, mm })),
		cables: cables.map((c, i) => ({ id: `c${i}`, ...c }))
	}));
}

function withFaults(bench: Bench): fc.Arbitrary<Bench> {
	const wires = wireNames(bench);
	const breaks = bench.sockets.flatMap((s) => breakContactsOf(s.kind).map((c) => `${s.id}.${c}`));
	const springs = bench.sockets.flatMap((s) => SOCKETS[s.kind].springs.map((c) => `${s.id}.${c}`));
	const nodes = nodesOfBench(bench);
	const ohms = fc.integer({ min: 0, max: 1e9 });
	const kinds: fc.Arbitrary<Fault>[] = [];
	if (wires.length > 0) {
		const wire = fc.constantFrom(...wires);
		kinds.push(fc.record({ kind: fc.constant('open'), wire }));
		kinds.push(fc.record({ kind: fc.constant('resistive'), wire, ohms }));
	}
	if (nodes.length > 1)
		kinds.push(fc.record({ kind: fc.constant('bridge'), between: pairOf(nodes) }));
	for (const { id, kind } of bench.sockets) {
		const contacts = pairOf(SOCKETS[kind].contacts.map((c) => `${id}.${c}`));
		kinds.push(fc.record({ kind: fc.constant('swap'), contacts }));
	}
	if (breaks.length > 0) {
		const contact = fc.constantFrom(...breaks);
		kinds.push(fc.record({ kind: fc.constant('break-dirty'), contact, ohms }));
		kinds.push(
			fc.record({ kind: fc.constantFrom('break-stuck-open', 'break-stuck-closed'), contact })
		);
	}
	if (springs.length > 0)
		kinds.push(
			fc.record({ kind: fc.constant('spring-bent'), contact: fc.constantFrom(...springs) })
		);
	if (kinds.length === 0) return fc.constant(bench);
	return fc.array(fc.oneof(...kinds), { maxLength: 3 }).map((faults) => ({ ...bench, faults }));
}

/** Benches with any of the parts, conductors and faults that a file may name. */
export const benches: fc.Arbitrary<Bench> = bare.chain(withConductors).chain(withFaults);
