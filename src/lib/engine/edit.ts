/** Changed copies of a bench: putting plugs in and out, and the plug states of a requirement. */
import type { Bench, Fault, Millimetres, Plug, PlugKind } from './bench';
import { PLUG_KINDS } from './bench';
import { PLUGS, SEATED, SOCKETS, fits } from './parts';

/** A socket's state in a requirement: `none`, a plug kind, or the id of a plug on the bench. */
export type When = Readonly<Record<string, string>>;

/** Every id on the bench. */
export const idsOf = (bench: Bench): string[] =>
	[bench.sockets, bench.wires, bench.plugs, bench.devices, bench.cables].flatMap((list) =>
		list.map((x) => x.id)
	);

/** An id that is free: `stem`, or `stem` with the first free number. */
export function freeId(bench: Bench, stem: string, first = 1): string {
	const taken = new Set(idsOf(bench));
	for (let n = first; ; n++) if (!taken.has(`${stem}${n}`)) return `${stem}${n}`;
}

const loosen = (plugs: readonly Plug[], socket: string): Plug[] =>
	plugs.map((p) => (p.socket === socket ? { ...p, socket: null } : p));

/** The plug that stands in the socket, or null. */
export const plugIn = (bench: Bench, socket: string): Plug | null =>
	bench.plugs.find((p) => p.socket === socket) ?? null;

/** The socket emptied; what it held lies loose. */
export const withEmpty = (bench: Bench, socket: string): Bench => ({
	...bench,
	plugs: loosen(bench.plugs, socket)
});

/** A plug of the bench moved into the socket; what the socket held lies loose. */
export const withPlug = (
	bench: Bench,
	socket: string,
	plug: string,
	travel: Millimetres = SEATED
): Bench => ({
	...bench,
	plugs: loosen(bench.plugs, socket).map((p) => (p.id === plug ? { ...p, socket, travel } : p))
});

/** A bare plug of that kind, seated in the socket, with an id that is free. */
export function withBarePlug(bench: Bench, socket: string, kind: PlugKind): Bench {
	const id = freeId(bench, 'bare');
	const plugs = [...loosen(bench.plugs, socket), { id, kind, socket, travel: SEATED }];
	return { ...bench, plugs };
}

/** The bench in the named state: sockets that are not named keep their plugs. */
export function inState(bench: Bench, when: When): Bench {
	let next = bench;
	for (const socket of Object.keys(when)) next = withEmpty(next, socket);
	for (const [socket, state] of Object.entries(when)) {
		if (state === 'none') continue;
		const kind = PLUG_KINDS.find((k) => k === state);
		next = kind ? withBarePlug(next, socket, kind) : withPlug(next, socket, state);
	}
	return next;
}

/** States of one socket with a bare plug: `none`, then the kinds that fit. */
export function statesOf(bench: Bench, socket: string): ('none' | PlugKind)[] {
	const found = bench.sockets.find((s) => s.id === socket);
	return found ? ['none', ...PLUG_KINDS.filter((k) => fits(k, found.kind))] : [];
}

export const withFaults = (bench: Bench, faults: readonly Fault[]): Bench => ({
	...bench,
	faults: [...bench.faults, ...faults]
});

/** All contacts of a socket as node names, chassis lug last. */
export function contactsOf(bench: Bench, socket: string): string[] {
	const found = bench.sockets.find((s) => s.id === socket);
	return found ? SOCKETS[found.kind].contacts.map((c) => `${socket}.${c}`) : [];
}

/** Conductors of a plug as node names. */
export const conductorsOf = (plug: Plug): string[] =>
	PLUGS[plug.kind].conductors.map((c) => `${plug.id}.${c}`);
