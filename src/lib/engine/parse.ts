/**
 * The one gate from text to `Bench`. Valibot checks the shape; the second half checks what one
 * entry says about another. The first problem is returned with its JSON path and with what would be
 * right. Nothing downstream checks again.
 */
import * as v from 'valibot';
import {
	BUSHES,
	DEFAULTS,
	DEVICE_KINDS,
	FORMAT,
	MOST_BYTES,
	PLUG_KINDS,
	RANGES,
	RESERVED_IDS,
	SOCKET_KINDS,
	VERSION,
	splitNode,
	type Bench,
	type Fault
} from './bench';
import { nodesOfBench } from './circuit';
import { DEVICES, PLUGS, SOCKETS, breakContactsOf, fits } from './parts';

export interface Problem {
	/** JSON path of the fault, `$.wires[3].from`. */
	readonly path: string;
	/** What is wrong and what would be right, one line. */
	readonly message: string;
}
export type Parsed<T> =
	{ readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

const bad = (path: string, message: string): { ok: false; problem: Problem } => ({
	ok: false,
	problem: { path, message }
});

/** A JSON value as a short quotation for a message. */
export function quote(value: unknown): string {
	if (value === undefined) return 'nothing';
	const text = jsonOf(value);
	return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
/** JSON of a value; a value that is nested deeper than the stack goes is named instead. */
function jsonOf(value: unknown): string {
	try {
		return JSON.stringify(value) ?? String(value);
	} catch {
		return 'something nested very deep';
	}
}
/** A list for a message: `a, b or c`. */
export const oneOf = (words: readonly string[]): string =>
	words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

type AnyIssue = v.BaseIssue<unknown>;
/** A message for valibot: what stands there, and what would be right. */
export const want = (right: string) => (issue: AnyIssue) =>
	issue.input === undefined
		? `missing; it should be ${right}`
		: `${quote(issue.input)} stands here; it should be ${right}`;

/** The shape, refusing a list: valibot takes one for an object that lacks the keys. */
export function braced<const S extends v.GenericSchema>(shape: S, what: string): S {
	const right = `${what}, an object in braces`;
	const refuse: v.GenericSchema = v.custom(() => false, want(right));
	const run: S['~run'] = (dataset, config) =>
		(Array.isArray(dataset.value) ? refuse : shape)['~run'](dataset, config) as never;
	return { ...shape, '~run': run };
}

/** An object with just these keys. */
export function exact<const E extends v.ObjectEntries>(entries: E, what: string) {
	const keys = oneOf(Object.keys(entries));
	const shape = v.strictObject(entries, (issue: AnyIssue) => {
		if (issue.expected === 'never') return `unknown key; the keys of ${what} are ${keys}`;
		const missing = issue.path?.at(-1)?.key;
		if (issue.received === 'undefined' && typeof missing === 'string')
			return `missing; ${what} needs ${missing}`;
		return `${quote(issue.input)} stands here; it should be ${what}, an object in braces`;
	});
	return braced(shape, what);
}

/** Writes a valibot path as `$.wires[3].from`. */
export function jsonPath(keys: readonly unknown[]): string {
	return keys.reduce<string>((path, key) => {
		if (typeof key === 'number') return `${path}[${key}]`;
		const word = String(key);
		return /^[A-Za-z_][\w]*$/.test(word) ? `${path}.${word}` : `${path}[${JSON.stringify(word)}]`;
	}, '$');
}

type Range = { from?: number; above?: number; to: number; unit: string };
function ranged(range: Range, whole = false) {
	const low = range.above !== undefined ? `over ${range.above}` : `${range.from}`;
	const kind = whole ? 'a whole number' : 'a number';
	const message = want(`${kind} from ${low} to ${range.to} (${range.unit})`);
	return v.pipe(
		v.number(message),
		v.check(
			(n) =>
				Number.isFinite(n) &&
				n <= range.to &&
				(range.above !== undefined ? n > range.above : n >= range.from!) &&
				(!whole || Number.isInteger(n)),
			message
		)
	);
}

const ID = /^[A-Za-z0-9_-]{1,32}$/;
const ID_RIGHT = 'an id: 1 to 32 letters, digits, - or _';
const id = v.pipe(v.string(want(ID_RIGHT)), v.regex(ID, want(ID_RIGHT)));
const NODE_RIGHT = 'a node: ID.CONTACT, or panel';
export const node = v.pipe(
	v.string(want(NODE_RIGHT)),
	v.regex(/^(panel|[A-Za-z0-9_-]{1,32}\.[A-Za-z0-9]{1,8})$/, want(NODE_RIGHT))
);
export const list = <T extends v.GenericSchema>(of: T, what: string) =>
	v.array(of, want(`a list of ${what} in square brackets`));
const text = v.string(want('text in quotation marks'));
const kinds = <const K extends readonly string[]>(of: K) => v.picklist(of, want(oneOf(of)));
const truth = v.boolean(want('true or false'));
const ohms = ranged(RANGES.ohms);
const WIRE_RIGHT = 'a wire’s id, or CABLE:0, CABLE:1 … for a core';
const wireName = v.pipe(
	v.string(want(WIRE_RIGHT)),
	v.regex(/^[A-Za-z0-9_-]{1,32}(:\d{1,5})?$/, want(WIRE_RIGHT))
);
const twoNodes = v.strictTuple([node, node], want('two nodes in square brackets'));

const faultShape = {
	open: exact({ kind: v.literal('open'), wire: wireName }, 'an open fault'),
	resistive: exact({ kind: v.literal('resistive'), wire: wireName, ohms }, 'a resistive fault'),
	bridge: exact({ kind: v.literal('bridge'), between: twoNodes }, 'a bridge fault'),
	swap: exact({ kind: v.literal('swap'), contacts: twoNodes }, 'a swap fault'),
	'break-dirty': exact(
		{ kind: v.literal('break-dirty'), contact: node, ohms },
		'a break-dirty fault'
	),
	'break-stuck-open': exact(
		{ kind: v.literal('break-stuck-open'), contact: node },
		'a break-stuck-open fault'
	),
	'break-stuck-closed': exact(
		{ kind: v.literal('break-stuck-closed'), contact: node },
		'a break-stuck-closed fault'
	),
	'spring-bent': exact({ kind: v.literal('spring-bent'), contact: node }, 'a spring-bent fault')
} as const;
const FAULT_WORDS = oneOf(Object.keys(faultShape));
const anyFault = v.variant('kind', Object.values(faultShape) as never, (issue: AnyIssue) =>
	want(issue.expected === 'Object' ? 'a fault, an object in braces' : FAULT_WORDS)(issue)
) as unknown as v.GenericSchema<unknown, Fault>;
export const fault = braced(anyFault, 'a fault');

const benchShape = exact(
	{
		format: v.literal(FORMAT, want(quote(FORMAT))),
		version: v.literal(VERSION, want(String(VERSION))),
		title: v.optional(text, ''),
		panel: v.optional(exact({ metal: v.optional(truth, false) }, 'the panel'), { metal: false }),
		sockets: v.optional(
			list(
				exact(
					{
						id,
						kind: kinds(SOCKET_KINDS),
						bush: v.optional(kinds(BUSHES), DEFAULTS.bush),
						label: v.optional(text, '')
					},
					'a socket'
				),
				'sockets'
			),
			[]
		),
		wires: v.optional(
			list(
				exact(
					{
						id,
						from: node,
						to: node,
						awg: v.optional(ranged(RANGES.awg, true), DEFAULTS.wireAwg),
						mm: v.optional(ranged(RANGES.mm), DEFAULTS.mm)
					},
					'a wire'
				),
				'wires'
			),
			[]
		),
		plugs: v.optional(
			list(
				exact(
					{
						id,
						kind: kinds(PLUG_KINDS),
						socket: v.optional(id),
						travel: v.optional(ranged(RANGES.travel), DEFAULTS.travel)
					},
					'a plug'
				),
				'plugs'
			),
			[]
		),
		devices: v.optional(
			list(
				exact({ id, kind: kinds(DEVICE_KINDS), phantom: v.optional(truth, false) }, 'a device'),
				'devices'
			),
			[]
		),
		cables: v.optional(
			list(
				exact(
					{
						id,
						m: ranged(RANGES.m),
						awg: v.optional(ranged(RANGES.awg, true), DEFAULTS.cableAwg),
						cores: list(twoNodes, 'cores, each two nodes')
					},
					'a cable'
				),
				'cables'
			),
			[]
		),
		faults: v.optional(list(fault, 'faults'), [])
	},
	'a bench'
);

/** Names that every object inherits and that a shape check could take for known keys. */
const isInherited = (key: string): boolean => key in Object.prototype;
/**
 * The path of the first key that stands only in Object.prototype, or null. The keys of a `when` are
 * ids of sockets, and an id may be any word.
 */
function inheritedKey(value: unknown, path: readonly unknown[] = []): readonly unknown[] | null {
	if (typeof value !== 'object' || value === null || path.at(-1) === 'when') return null;
	for (const [key, inner] of Object.entries(value)) {
		const here = [...path, Array.isArray(value) ? Number(key) : key];
		if (!Array.isArray(value) && isInherited(key)) return here;
		const deeper = path.length < 12 ? inheritedKey(inner, here) : null;
		if (deeper) return deeper;
	}
	return null;
}

/** Checks an unknown value against a shape; the first problem wins. */
export function checkShape<T extends v.GenericSchema>(
	shape: T,
	value: unknown
): Parsed<v.InferOutput<T>> {
	const strange = inheritedKey(value);
	if (strange) return bad(jsonPath(strange), 'unknown key; leave it out');
	const result = v.safeParse(shape, value, { abortEarly: true });
	if (result.success) return { ok: true, value: result.output };
	const [issue] = result.issues;
	return bad(jsonPath((issue.path ?? []).map((p) => p.key)), issue.message);
}

/** Text to JSON value; says where the text breaks off being JSON. `what`: what the file should be. */
export function parseJson(source: string, what = 'a bench file'): Parsed<unknown> {
	const bytes = bytesOf(source);
	if (bytes > MOST_BYTES)
		return bad('$', `the file has ${bytes} bytes; at most ${MOST_BYTES} (1 MiB) fit`);
	try {
		return { ok: true, value: JSON.parse(source.replace(/^\uFEFF/, '')) };
	} catch (error) {
		const why = (error as Error).message.replace(/\s+/g, ' ').slice(0, 160);
		return bad('$', `not JSON (${why}); ${what} is one JSON object`);
	}
}

/** Bytes of a text in UTF-8, without the browser's or Node's encoder (the engine knows neither). */
function bytesOf(source: string): number {
	let bytes = 0;
	for (const character of source) {
		const code = character.codePointAt(0)!;
		bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
	}
	return bytes;
}

type Check = () => { path: string; message: string } | null;

function doubledId(bench: Bench): ReturnType<Check> {
	const seen = new Map<string, string>();
	const lists = { sockets: 0, wires: 0, plugs: 0, devices: 0, cables: 0 };
	for (const name of Object.keys(lists) as (keyof typeof lists)[])
		for (const [i, entry] of bench[name].entries()) {
			const path = `$.${name}[${i}].id`;
			if ((RESERVED_IDS as readonly string[]).includes(entry.id))
				return {
					path,
					message: `"${entry.id}" has a meaning of its own; choose an id that is none of ${oneOf(RESERVED_IDS)}`
				};
			const first = seen.get(entry.id);
			if (first)
				return {
					path,
					message: `"${entry.id}" is the id of ${first} already; every id stands once in a file`
				};
			seen.set(entry.id, path.slice(0, -3));
		}
	return null;
}

function strangeBush(bench: Bench): ReturnType<Check> {
	const i = bench.sockets.findIndex((s) => s.bush === 'metal' && !SOCKETS[s.kind].hasBush);
	if (i < 0) return null;
	const message = `a ${bench.sockets[i]!.kind} has no bush; leave it out or say "insulated"`;
	return { path: `$.sockets[${i}].bush`, message };
}

function strangePhantom(bench: Bench): ReturnType<Check> {
	const i = bench.devices.findIndex((d) => d.phantom && !DEVICES[d.kind].mayHavePhantom);
	if (i < 0) return null;
	const message = `a ${bench.devices[i]!.kind} gives no phantom power; only a mic-input does`;
	return { path: `$.devices[${i}].phantom`, message };
}

function wrongPlug(bench: Bench): ReturnType<Check> {
	const held = new Map<string, string>();
	for (const [i, plug] of bench.plugs.entries()) {
		if (plug.socket === null) continue;
		const path = `$.plugs[${i}].socket`;
		const socket = bench.sockets.find((s) => s.id === plug.socket);
		if (!socket) return { path, message: `there is no socket "${plug.socket}"; ${namesOf(bench)}` };
		if (!fits(plug.kind, socket.kind))
			return {
				path,
				message: `a ${plug.kind} plug does not go into a ${socket.kind}; ${oneOf(PLUG_KINDS.filter((k) => fits(k, socket.kind)))} would`
			};
		const other = held.get(socket.id);
		if (other)
			return {
				path,
				message: `"${socket.id}" holds plug "${other}" already; a socket takes one plug at a time`
			};
		held.set(socket.id, plug.id);
	}
	return null;
}

const namesOf = (bench: Bench): string =>
	bench.sockets.length === 0
		? 'the bench has no sockets'
		: `the sockets are ${oneOf(bench.sockets.slice(0, 20).map((s) => s.id))}`;

/** Why `node` is not on the bench, and what would be right; null if it is there. */
export function strangeNode(bench: Bench, name: string): string | null {
	if (nodesOfBench(bench).includes(name)) return null;
	if (name === 'panel')
		return 'there is no panel to touch; set panel.metal to true for a metal one';
	const [owner, contact] = splitNode(name);
	const offered = contactNames(bench, owner);
	if (!offered) return `nothing on the bench has the id "${owner}"; name a socket, plug or device`;
	if (offered.length === 0) return `"${owner}" has no conductor to name`;
	return `"${owner}" has no contact "${contact}"; it has ${oneOf(offered)}`;
}

function contactNames(bench: Bench, owner: string): readonly string[] | null {
	const socket = bench.sockets.find((s) => s.id === owner);
	if (socket) return SOCKETS[socket.kind].contacts;
	const plug = bench.plugs.find((p) => p.id === owner);
	if (plug) return PLUGS[plug.kind].conductors;
	const device = bench.devices.find((d) => d.id === owner);
	return device ? DEVICES[device.kind].terminals : null;
}

function wrongEnds(
	known: (name: string) => string | null,
	ends: readonly (readonly [string, string])[],
	sameIs: string
): ReturnType<Check> {
	for (const [path, name] of ends) {
		const message = known(name);
		if (message) return { path, message };
	}
	if (ends.length === 2 && ends[0]![1] === ends[1]![1])
		return { path: ends[1]![0], message: `both ends are ${ends[0]![1]}; ${sameIs}` };
	return null;
}

function wrongConductor(bench: Bench, known: (n: string) => string | null): ReturnType<Check> {
	for (const [i, w] of bench.wires.entries()) {
		const at = `$.wires[${i}]`;
		const wrong = wrongEnds(
			known,
			[
				[`${at}.from`, w.from],
				[`${at}.to`, w.to]
			],
			'a wire goes from one node to another'
		);
		if (wrong) return wrong;
	}
	for (const [i, cable] of bench.cables.entries())
		for (const [k, [from, to]] of cable.cores.entries()) {
			const at = `$.cables[${i}].cores[${k}]`;
			const wrong = wrongEnds(
				known,
				[
					[`${at}[0]`, from],
					[`${at}[1]`, to]
				],
				'a core goes from one node to another'
			);
			if (wrong) return wrong;
		}
	return null;
}

/** Every wire's id and every core's name. */
export const wireNames = (bench: Bench): string[] => [
	...bench.wires.map((w) => w.id),
	...bench.cables.flatMap((c) => c.cores.map((_, i) => `${c.id}:${i}`))
];

function isContact(bench: Bench, name: string, of: (kind: Bench['sockets'][number]) => string[]) {
	const [owner, contact] = splitNode(name);
	const socket = bench.sockets.find((s) => s.id === owner);
	return socket !== undefined && of(socket).includes(contact);
}

function wrongPair(
	fault: Fault & { kind: 'bridge' | 'swap' },
	bench: Bench,
	at: string,
	known: (n: string) => string | null
) {
	const field = fault.kind === 'bridge' ? 'between' : 'contacts';
	const pair = fault.kind === 'bridge' ? fault.between : fault.contacts;
	const wrong = wrongEnds(
		known,
		pair.map((n, k) => [`${at}.${field}[${k}]`, n] as const),
		`a ${fault.kind} is between two different nodes`
	);
	if (wrong || fault.kind === 'bridge') return wrong;
	const owners = pair.map((n) => splitNode(n)[0]);
	const socket = bench.sockets.some((s) => s.id === owners[0]);
	if (socket && owners[0] === owners[1]) return null;
	return { path: `${at}.contacts`, message: 'a swap is between two contacts of one socket' };
}

function wrongFault(bench: Bench, known: (n: string) => string | null): ReturnType<Check> {
	const wires = new Set(wireNames(bench));
	for (const [i, f] of bench.faults.entries()) {
		const at = `$.faults[${i}]`;
		if (f.kind === 'open' || f.kind === 'resistive') {
			if (!wires.has(f.wire))
				return {
					path: `${at}.wire`,
					message: `there is no wire or core "${f.wire}"; ${wires.size ? `name one of ${oneOf([...wires].slice(0, 12))}` : 'the bench has none'}`
				};
		} else if (f.kind === 'bridge' || f.kind === 'swap') {
			const wrong = wrongPair(f, bench, at, known);
			if (wrong) return wrong;
		} else {
			const spring = f.kind === 'spring-bent';
			const right = spring ? 'a jack spring (T, R or S)' : 'a break contact (TN, RN, SN or 1N)';
			const message = known(f.contact);
			const fine = isContact(bench, f.contact, (s) =>
				spring ? [...SOCKETS[s.kind].springs] : breakContactsOf(s.kind)
			);
			if (message || !fine)
				return {
					path: `${at}.contact`,
					message: message ?? `${f.contact} is not ${right} of a socket; name one`
				};
		}
	}
	return null;
}

/** Checks a JSON value and fills in what it leaves out. */
export function checkBench(value: unknown): Parsed<Bench> {
	const shape = checkShape(benchShape, value);
	if (!shape.ok) return shape;
	const { title, panel, sockets, wires, devices, cables, faults } = shape.value;
	const plugs = shape.value.plugs.map((p) => ({ ...p, socket: p.socket ?? null }));
	const bench: Bench = { title, panel, sockets, wires, plugs, devices, cables, faults };
	const nodes = new Set(nodesOfBench(bench));
	const known = (name: string) => (nodes.has(name) ? null : strangeNode(bench, name));
	const problem =
		doubledId(bench) ??
		strangeBush(bench) ??
		wrongPlug(bench) ??
		strangePhantom(bench) ??
		wrongConductor(bench, known) ??
		wrongFault(bench, known);
	return problem ? bad(problem.path, problem.message) : { ok: true, value: bench };
}

/** Bench file to bench, or the first problem with its JSON path. Never throws. */
export function parseBench(source: string): Parsed<Bench> {
	const json = parseJson(source);
	return json.ok ? checkBench(json.value) : json;
}

/** A bench as a plain object for a file: what is as the defaults say is left out. */
export function fileOf(bench: Bench): Record<string, unknown> {
	const lists = {
		sockets: bench.sockets.map(({ id, kind, bush, label }) => ({
			id,
			kind,
			...(bush !== DEFAULTS.bush && { bush }),
			...(label !== '' && { label })
		})),
		wires: bench.wires.map(({ id, from, to, awg, mm }) => ({ id, from, to, awg, mm })),
		plugs: bench.plugs.map(({ id, kind, socket, travel }) => ({
			id,
			kind,
			...(socket !== null && { socket }),
			...(travel !== DEFAULTS.travel && { travel })
		})),
		devices: bench.devices.map(({ id, kind, phantom }) => ({
			id,
			kind,
			...(phantom && { phantom })
		})),
		cables: bench.cables.map(({ id, m, awg, cores }) => ({ id, m, awg, cores })),
		faults: bench.faults
	};
	return {
		format: FORMAT,
		version: VERSION,
		...(bench.title !== '' && { title: bench.title }),
		...(bench.panel.metal && { panel: { metal: true } }),
		...Object.fromEntries(Object.entries(lists).filter(([, entries]) => entries.length > 0))
	};
}

/** A bench as the text of a bench file; `parseBench` of it gives the same bench. */
export const makeBench = (bench: Bench): string => `${JSON.stringify(fileOf(bench), null, '\t')}\n`;
