/** Benches and states of which figures are drawn: one socket, `A`, and what may stand in it. */
import {
	PLUG_KINDS,
	SOCKETS,
	SOCKET_KINDS,
	fits,
	type Bench,
	type PlugKind,
	type SocketKind
} from '../../src/lib/engine';
import { benchOf } from '../../src/lib/engine/bench.fixture';
import { sectionEvents, withPlugAt } from '../../src/lib/diagram/sectionStates';

export const SOCKET = 'A';
export interface State {
	readonly kind: SocketKind;
	readonly plug: PlugKind | null;
	readonly travel: number;
}

/** A bench of that socket alone, in that state. */
export function benchIn({ kind, plug, travel }: State, more: Record<string, unknown> = {}): Bench {
	const bench = benchOf({ sockets: [{ id: SOCKET, kind }], ...more });
	return plug ? withPlugAt(bench, SOCKET, plug, travel) : bench;
}

/** Every socket kind with no plug and with every plug kind that fits, seated. */
export const SEATED_STATES: readonly State[] = SOCKET_KINDS.flatMap((kind) =>
	[null, ...PLUG_KINDS.filter((plug) => fits(plug, kind))].map((plug) => ({
		kind,
		plug,
		travel: plug ? 30.5 : 0
	}))
);

/** Every socket kind with every plug kind that fits, at every event of the travel. */
export const EVENT_STATES: readonly State[] = SOCKET_KINDS.flatMap((kind) =>
	PLUG_KINDS.filter((plug) => fits(plug, kind)).flatMap((plug) =>
		sectionEvents(plug, kind).map((travel) => ({ kind, plug, travel }))
	)
);

export const hasJack = (kind: SocketKind): boolean => SOCKETS[kind].springs.length > 0;
export const hasPins = (kind: SocketKind): boolean => SOCKETS[kind].threePin !== null;

/** What a state is called in a file name. */
export const nameOf = ({ kind, plug, travel }: State): string =>
	plug === null ? `${kind}.no-plug` : `${kind}.${plug}.${travel.toFixed(1)}`;
