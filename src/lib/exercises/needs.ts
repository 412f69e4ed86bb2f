/**
 * A need as data, and whether a variant of a socket meets it. What contacts do is asked of the
 * engine on the exercise's own bench; how it is fixed and how its wires end are attributes of the
 * variant. Ways to end a wire and latches: common practice, no maker's list.
 */
import {
	PANEL,
	PLUGS,
	SOCKETS,
	circuit,
	fits,
	inState,
	isJoined,
	plugIn,
	type Bench,
	type PlugKind,
	type Socket
} from '../engine';

export const TERMINATIONS = ['cup', 'board', 'crimp'] as const;
/** How a wire ends at a contact: solder cup, board pins, crimp. */
export type Termination = (typeof TERMINATIONS)[number];

/** One variant to choose: one socket of the bench, or several that would be mounted together. */
export interface Option {
	readonly id: string;
	readonly sockets: readonly string[];
	readonly termination: Termination;
	/** Whether the circular part latches; no matter for a jack, which holds by friction. */
	readonly latch: boolean;
}

export type Need =
	/** So many contacts, chassis lugs not counted. */
	| { readonly need: 'contacts'; readonly least: number; readonly most: number }
	/** The plug goes in. */
	| { readonly need: 'takes'; readonly plug: PlugKind }
	/** Every conductor of the plug meets a contact that no other conductor meets. */
	| { readonly need: 'meets'; readonly plug: PlugKind }
	/** A break contact on each of these springs or pins, in one socket. */
	| { readonly need: 'breaks'; readonly on: readonly string[] }
	/** An isolated changeover that touches no signal. */
	| { readonly need: 'changeover' }
	/** Contacts of one socket are joined and apart with this in it. */
	| {
			readonly need: 'behaves';
			readonly with: 'none' | PlugKind;
			readonly joined: readonly (readonly [string, string])[];
			readonly apart: readonly (readonly [string, string])[];
	  }
	/** Takes either plug, never both together. */
	| { readonly need: 'one-at-a-time'; readonly plugs: readonly [PlugKind, PlugKind] }
	/** Takes both plugs together. */
	| { readonly need: 'both-at-once'; readonly plugs: readonly [PlugKind, PlugKind] }
	/** So many openings in the panel at most. */
	| { readonly need: 'openings'; readonly most: number }
	| { readonly need: 'termination'; readonly among: readonly Termination[] }
	| { readonly need: 'latch'; readonly is: boolean }
	/** The three-pin part is an input (female) or an output (male). */
	| { readonly need: 'gender'; readonly is: 'female' | 'male' }
	/** No sleeve contact is joined to the panel. */
	| { readonly need: 'sleeve-off-panel' };
export const NEEDS = [
	'contacts',
	'takes',
	'meets',
	'breaks',
	'changeover',
	'behaves',
	'one-at-a-time',
	'both-at-once',
	'openings',
	'termination',
	'latch',
	'gender',
	'sleeve-off-panel'
] as const satisfies readonly Need['need'][];
export type NeedKind = Need['need'];

/** A need that a variant fails, and by what. */
export interface NeedFailure {
	readonly need: Need;
	/** contacts, openings: how many there are. */
	readonly count?: number;
	/** breaks, behaves: the first contact that is not there. meets: the conductor without a contact of its own. */
	readonly missing?: string;
	/** behaves: the first pair that is otherwise. */
	readonly pair?: readonly [string, string];
	/** takes, meets, one-at-a-time, both-at-once: the plug that does not go in. */
	readonly plug?: PlugKind;
}
type By = Omit<NeedFailure, 'need'>;

const contactsOfKind = ({ kind }: Socket): readonly string[] =>
	SOCKETS[kind].contacts.filter((c) => c !== 'G');

const counted = (count: number, from: number, to: number): By | null =>
	count < from || count > to ? { count } : null;

/** The first answer that is null (met), or else the first failure. */
function anyOf(sockets: readonly Socket[], by: (s: Socket) => By | null): By | null {
	const answers = sockets.map(by);
	return answers.some((a) => a === null) ? null : (answers[0] ?? {});
}

/** The first conductor of the seated plug that has no contact of its own. */
function meets(bench: Bench, socket: Socket, kind: PlugKind): By | null {
	if (!fits(kind, socket.kind)) return { plug: kind };
	const there = inState(bench, { [socket.id]: kind });
	const plug = plugIn(there, socket.id)!;
	const landed = circuit(there).conductors.filter(
		({ reason: r }) => (r.kind === 'touch' || r.kind === 'mate') && r.plug === plug.id
	);
	const own = (part: string) => landed.some(({ b }) => b === `${plug.id}.${part}`);
	const missing = PLUGS[kind].conductors.find((part) => !own(part));
	return missing === undefined ? null : { missing };
}

function breaksOn({ kind }: Socket, on: readonly string[]): By | null {
	const sprung = Object.values(SOCKETS[kind].breaks);
	const missing = on.find((spring) => !sprung.includes(spring));
	return missing === undefined ? null : { missing };
}

function behaves(
	bench: Bench,
	socket: Socket,
	need: Extract<Need, { need: 'behaves' }>
): By | null {
	if (need.with !== 'none' && !fits(need.with, socket.kind)) return { plug: need.with };
	const { contacts } = SOCKETS[socket.kind];
	const missing = [...need.joined, ...need.apart].flat().find((c) => !contacts.includes(c));
	if (missing !== undefined) return { missing };
	const there = inState(bench, { [socket.id]: need.with });
	const is = ([a, b]: readonly [string, string]) =>
		isJoined(there, `${socket.id}.${a}`, `${socket.id}.${b}`);
	const pair = need.joined.find((p) => !is(p)) ?? need.apart.find(is);
	return pair ? { pair } : null;
}

/** Whether both plugs can stand in at once: in two sockets of the variant. */
const bothFit = (sockets: readonly Socket[], [p, q]: readonly [PlugKind, PlugKind]): boolean =>
	sockets.some((s, i) => fits(p, s.kind) && sockets.some((t, k) => k !== i && fits(q, t.kind)));

const unplugged = (sockets: readonly Socket[], plugs: readonly PlugKind[]): By | null => {
	const plug = plugs.find((p) => !sockets.some((s) => fits(p, s.kind)));
	return plug ? { plug } : null;
};

/** By what the variant fails the need; null if it meets it. */
function failing(bench: Bench, option: Option, need: Need): By | null {
	const sockets = bench.sockets.filter((s) => option.sockets.includes(s.id));
	const unless = (met: boolean): By | null => (met ? null : {});
	switch (need.need) {
		case 'contacts':
			return counted(sockets.flatMap(contactsOfKind).length, need.least, need.most);
		case 'takes':
			return unplugged(sockets, [need.plug]);
		case 'meets':
			return anyOf(sockets, (s) => meets(bench, s, need.plug));
		case 'breaks':
			return anyOf(sockets, (s) => breaksOn(s, need.on));
		case 'changeover':
			return unless(sockets.some((s) => SOCKETS[s.kind].changeover));
		case 'behaves':
			return anyOf(sockets, (s) => behaves(bench, s, need));
		case 'one-at-a-time':
			return unplugged(sockets, need.plugs) ?? unless(!bothFit(sockets, need.plugs));
		case 'both-at-once':
			return unplugged(sockets, need.plugs) ?? unless(bothFit(sockets, need.plugs));
		case 'openings':
			return counted(sockets.length, 0, need.most);
		case 'termination':
			return unless(need.among.includes(option.termination));
		case 'latch':
			return unless(option.latch === need.is);
		case 'gender':
			return unless(sockets.some((s) => SOCKETS[s.kind].threePin === need.is));
		case 'sleeve-off-panel':
			return unless(!sockets.some((s) => isJoined(bench, `${s.id}.S`, PANEL)));
	}
}

/** Every need that the variant fails, in the order in which the needs stand. */
export const failuresOf = (bench: Bench, option: Option, needs: readonly Need[]): NeedFailure[] =>
	needs.flatMap((need) => {
		const by = failing(bench, option, need);
		return by ? [{ need, ...by }] : [];
	});
