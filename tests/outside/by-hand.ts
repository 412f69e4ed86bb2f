/**
 * The circuit of a bench derived a second time, from tables written by hand and without a call to
 * the engine's rules: what stands behind the comparison with a graph library. A plug is drawn as a
 * string, one letter for each half millimetre from its nose: t, r, s for tip, ring, sleeve, a dot for
 * an insulator. The profile and the spring depths are schematic (MEM: IEC 60603-11, from memory).
 */
import type { Bench } from '../../src/lib/engine/bench';

export interface Joint {
	readonly a: string;
	readonly b: string;
	readonly ohms: number;
	readonly joins: boolean;
}

const CONTACTS: Record<string, string> = {
	'hybrid-5': '1 2 3 T S G',
	'hybrid-6': '1 2 3 T R S G',
	'hybrid-9': '1 2 3 T R S TN RN SN G',
	'hybrid-10': '1 2 3 T R S TN RN SN 1N G',
	'three-pin-female': '1 2 3 G',
	'three-pin-male': '1 2 3 G',
	'jack-ts': 'T S',
	'jack-ts-break': 'T S TN',
	'jack-trs': 'T R S',
	'jack-trs-break': 'T R S TN RN SN',
	'patch-jack': 'T R S TN RN',
	'jack-ts-changeover': 'T S C NC NO'
};
const CONDUCTORS: Record<string, string> = {
	ts: 'tip sleeve',
	trs: 'tip ring sleeve',
	dummy: '',
	shorting: 'tip ring sleeve',
	'three-pin': '1 2 3 shell'
};
const PROFILE: Record<string, string> = {
	ts: 't'.repeat(18) + '.'.repeat(3) + 's'.repeat(40),
	trs: 't'.repeat(18) + '..' + 'r'.repeat(8) + '..' + 's'.repeat(31),
	shorting: 't'.repeat(18) + '..' + 'r'.repeat(8) + '..' + 's'.repeat(31),
	dummy: '.'.repeat(61)
};
const LETTER: Record<string, string> = { t: 'tip', r: 'ring', s: 'sleeve' };
const DEPTH: Record<string, number> = { S: 3, R: 18.5, T: 26 };
/** Terminals; then what is inside: two terminals and ohms; a star marks what makes one net. */
const DEVICES: Record<string, [string, string[]]> = {
	mic: ['hot cold shell', ['hot cold 200']],
	'mic-input': ['hot cold shield chassis', ['hot cold 3000', 'shield chassis 0.01 *']],
	'line-out': [
		'hot cold shield chassis',
		['hot shield 50', 'cold shield 50', 'shield chassis 0.01 *']
	],
	'line-out-unbalanced': ['hot shield chassis', ['hot shield 100', 'shield chassis 0.01 *']],
	'line-in': [
		'hot cold shield chassis',
		['hot shield 10000', 'cold shield 10000', 'shield chassis 0.01 *']
	],
	'line-in-unbalanced': ['hot shield chassis', ['hot shield 10000', 'shield chassis 0.01 *']]
};
const words = (list: string): string[] => list.split(' ').filter(Boolean);

export function nodesByHand(bench: Bench): string[] {
	const of = (id: string, list: string) => words(list).map((c) => `${id}.${c}`);
	return [
		...bench.sockets.flatMap((s) => of(s.id, CONTACTS[s.kind]!)),
		...bench.plugs.flatMap((p) => of(p.id, CONDUCTORS[p.kind]!)),
		...bench.devices.flatMap((d) => of(d.id, DEVICES[d.kind]![0])),
		...(bench.panel.metal ? ['panel'] : [])
	];
}

/** Copper of that gauge: resistivity over area, Ω/m. */
const copper = (awg: number): number =>
	1.7241e-8 / (Math.PI * (0.5 * 0.127e-3 * Math.pow(92, (36 - awg) / 39)) ** 2);

function socketsByHand(bench: Bench): Joint[] {
	const made: Joint[] = [];
	const is = (kind: string, contact: string) =>
		bench.faults.some((f) => f.kind === kind && 'contact' in f && f.contact === contact);
	for (const { id, kind, bush } of bench.sockets) {
		const has = words(CONTACTS[kind]!);
		const plug = bench.plugs.find((p) => p.socket === id);
		const lifted: string[] = [];
		const join = (x: string, y: string, ohms: number) =>
			made.push({ a: x, b: y, ohms, joins: true });
		if (plug && plug.kind === 'three-pin') {
			const mated = plug.travel >= 10 ? '123G' : plug.travel >= 8 ? '1G' : '';
			for (const c of mated) join(`${id}.${c}`, `${plug.id}.${c === 'G' ? 'shell' : c}`, 0.01);
			if (mated) lifted.push('1');
		} else if (plug) {
			for (const spring of has.filter((c) => c in DEPTH)) {
				const seen = plug.travel - DEPTH[spring]!;
				if (seen < 0 || is('spring-bent', `${id}.${spring}`)) continue;
				lifted.push(spring);
				const part = LETTER[PROFILE[plug.kind]![Math.floor(seen * 2)]!];
				if (part) join(`${id}.${spring}`, `${plug.id}.${part}`, 0.01);
			}
		}
		for (const rest of has.filter((c) => ['TN', 'RN', 'SN', '1N'].includes(c))) {
			const closed = !lifted.includes(rest[0]!) || is('break-stuck-closed', `${id}.${rest}`);
			if (!closed || is('break-stuck-open', `${id}.${rest}`)) continue;
			const dirt = bench.faults
				.filter((f) => f.kind === 'break-dirty')
				.filter((f) => f.contact === `${id}.${rest}`);
			join(
				`${id}.${rest[0]}`,
				`${id}.${rest}`,
				dirt.reduce((r, f) => r + f.ohms, 0.015)
			);
		}
		if (has.includes('C')) join(`${id}.C`, `${id}.${lifted.includes('T') ? 'NO' : 'NC'}`, 0.015);
		if (bench.panel.metal && has.includes('G')) join(`${id}.G`, 'panel', 0.01);
		if (bench.panel.metal && bush === 'metal') join(`${id}.S`, 'panel', 0.01);
	}
	return made;
}

function wiresByHand(bench: Bench): Joint[] {
	// Each lug holds the name of the wire ends that have landed on it; a swap exchanges two lugs' ends.
	const lug = new Map(nodesByHand(bench).map((n) => [n, n]));
	for (const f of bench.faults)
		if (f.kind === 'swap')
			for (const [end, at] of lug)
				if (at === f.contacts[0]) lug.set(end, f.contacts[1]);
				else if (at === f.contacts[1]) lug.set(end, f.contacts[0]);
	const laid = [
		...bench.wires.map((w) => ({ ...w, ohms: copper(w.awg) * w.mm * 1e-3 })),
		...bench.cables.flatMap((c) =>
			c.cores.map(([from, to], i) => ({ id: `${c.id}:${i}`, from, to, ohms: copper(c.awg) * c.m }))
		)
	];
	return laid.flatMap(({ id, from, to, ohms }) => {
		const on = bench.faults.filter((f) => 'wire' in f && f.wire === id);
		if (on.some((f) => f.kind === 'open')) return [];
		const more = on.reduce((sum, f) => sum + ('ohms' in f ? f.ohms : 0), 0);
		return [{ a: lug.get(from)!, b: lug.get(to)!, ohms: ohms + more, joins: true }];
	});
}

function devicesByHand(bench: Bench): Joint[] {
	return bench.devices.flatMap(({ id, kind, phantom }) => {
		const feed = phantom ? ['hot shield 6810', 'cold shield 6810'] : [];
		return [...DEVICES[kind]![1], ...feed].map((line) => {
			const [a, b, ohms, star] = words(line);
			return { a: `${id}.${a}`, b: `${id}.${b}`, ohms: Number(ohms), joins: star === '*' };
		});
	});
}

/** Every conductor of the bench, from the tables above. */
export function jointsByHand(bench: Bench): Joint[] {
	const plugs = bench.plugs
		.filter((p) => p.kind === 'shorting')
		.flatMap(({ id }) => [
			{ a: `${id}.tip`, b: `${id}.ring`, ohms: 0.01, joins: true },
			{ a: `${id}.ring`, b: `${id}.sleeve`, ohms: 0.01, joins: true }
		]);
	const bridges = bench.faults.flatMap((f) =>
		f.kind === 'bridge' ? [{ a: f.between[0], b: f.between[1], ohms: 0.01, joins: true }] : []
	);
	return [
		...socketsByHand(bench),
		...plugs,
		...wiresByHand(bench),
		...devicesByHand(bench),
		...bridges
	];
}
