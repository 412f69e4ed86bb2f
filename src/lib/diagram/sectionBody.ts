/**
 * What stands still in the section: panel or flange, bush, the insulating body with its chambers,
 * the lugs at the rear, the ruler below. Everything cut is insulation and hatched; metal is plain.
 */
import {
	PANEL,
	PLUGS,
	SEATED,
	SOCKETS,
	SPRING_DEPTH,
	type Bench,
	type NodeName,
	type PlugKind,
	type Socket,
	type SocketKind
} from '../engine';
import type { Lettering, Mark } from './figure';
import { NOTHING_LIT } from './lit';
import { breakHeight } from './sectionLeaf';
import { DEPTH, HEIGHT, LEAVES, SECTION, depthX, placeAt, type Side } from './sectionFrame';
import { bent, box, closed, disc, kept, rounded, straight, Sheet, type Place } from './sectionPen';
import { sectionEvents, type SocketState } from './sectionStates';

/** Height of the ruler's line on the paper, units. */
const RULER = 288;
/** Depths of the chamber walls, mm, and the ceiling over the tip spring, units. */
const CHAMBER = { s: 1.5, sEnd: 13.9, r: 16.3, t: 21 } as const;
const ceiling = (socket: Socket): number => (SOCKETS[socket.kind].changeover ? 112 : 98);

const at = placeAt;
/** A height below the axis. */
const under = (depth: number, height: number): Place => placeAt(depth, height, -1);

/** The body with its bore and the chambers in which springs move: one closed outline. */
function bodyOutline(top: number): Place[] {
	const { bore, ring, outer, floor } = HEIGHT;
	return [
		at(0, bore),
		at(0, ring),
		at(DEPTH.plate, ring),
		at(DEPTH.plate, outer),
		at(DEPTH.rear, outer),
		under(DEPTH.rear, outer),
		under(DEPTH.plate, outer),
		under(DEPTH.plate, ring),
		under(0, ring),
		under(0, bore),
		under(CHAMBER.s, bore),
		under(CHAMBER.s, floor),
		under(CHAMBER.sEnd, floor),
		under(CHAMBER.sEnd, bore),
		under(CHAMBER.r, bore),
		under(CHAMBER.r, floor),
		under(DEPTH.block, floor),
		at(DEPTH.block, top),
		at(CHAMBER.t, top),
		at(CHAMBER.t, bore)
	];
}

function drawPlate(sheet: Sheet, bench: Bench, socket: Socket): void {
	const flange = SOCKETS[socket.kind].contacts.includes('G');
	const of = flange ? `${socket.id}.G` : bench.panel.metal ? PANEL : undefined;
	for (const side of [1, -1] as const) {
		const corners = [
			at(0, HEIGHT.ring, side),
			at(DEPTH.plate, HEIGHT.ring, side),
			at(DEPTH.plate, HEIGHT.plate, side),
			at(0, HEIGHT.plate, side)
		];
		sheet.stroke(of ? 'metal' : 'collar', closed(corners), of);
	}
	if (of) sheet.point(of, at(DEPTH.plate / 2, 112));
}

/** Half the gap in a line that passes behind another one, units. */
const GAP = 3.4;

/** The bush of a jack: the ring in front and the tube behind it, slotted below for `S`. */
function drawBush(sheet: Sheet, socket: Socket): void {
	const metal = socket.bush === 'metal';
	const of = metal ? `${socket.id}.S` : undefined;
	const { bore, ring } = HEIGHT;
	const tube = bore + 9;
	const role = metal ? 'metal' : 'collar';
	const over = [
		at(0, bore),
		at(0, ring),
		at(DEPTH.plate, ring),
		at(DEPTH.plate, tube),
		at(12, tube),
		at(12, bore)
	];
	const below = [under(0, bore), under(0, ring), under(CHAMBER.s, ring), under(CHAMBER.s, bore)];
	sheet.stroke(role, closed(over), of);
	sheet.stroke(role, closed(below), of);
	if (!metal) return;
	// Round the bore, behind the cut: from the tube to the strip of `S`.
	const { turn } = LEAVES.S;
	const passes = breakHeight('S');
	const strap = [at(12, bore + 4.5), at(turn!.spring, bore + 4.5)];
	const end = under(turn!.spring, 66);
	// A gap where it passes behind the strip of SN, which it does not meet.
	const ways =
		'SN' in SOCKETS[socket.kind].breaks
			? [
					bent([...strap, under(turn!.spring, passes - GAP)], 4),
					straight(under(turn!.spring, passes + GAP), end)
				]
			: [bent([...strap, end], 4)];
	sheet.stroke('hidden', ways.join(''), of);
}

export function drawBody(sheet: Sheet, bench: Bench, socket: Socket): void {
	drawPlate(sheet, bench, socket);
	const top = ceiling(socket);
	sheet.stroke(
		'insulator',
		kept(`body ${top}`, () => rounded(bodyOutline(top), 2.5))
	);
	if (SOCKETS[socket.kind].hasBush) drawBush(sheet, socket);
	sheet.stroke(
		'centre',
		straight([depthX(DEPTH.left), SECTION.axis], [depthX(DEPTH.block) - 6, SECTION.axis])
	);
	sheet.word('caption', [depthX(DEPTH.left), 22], 'front', 'start');
	// In the part they stand round the bore, each on a side of its own.
	if (sheet.lettering === 'plain')
		sheet.word('caption', [SECTION.width - 8, RULER + 7], 'drawn in one plane', 'end');
}

/** A solder lug with its eye, its letters and the letter of its net. */
export function drawLug(
	sheet: Sheet,
	node: NodeName,
	height: number,
	side: Side,
	letter: string | undefined
): void {
	const [x, y] = at(DEPTH.rear, height, side);
	const end = depthX(DEPTH.lug);
	const name = node.slice(node.indexOf('.') + 1);
	const tab = kept(`lug ${y}`, () => box(x, y - 5.5, end - x, 11, 4));
	sheet.stroke('metal', tab, node);
	const eye = kept(`eye ${y}`, () => disc(end - 6.5, y, 2.4));
	sheet.stroke('hole', eye, node, false);
	sheet.word('mark', [end + 6, y + sheet.drop], name, 'start', node);
	// Large names reach further, and letters of one net would touch in a row: each follows its name.
	const edge = sheet.lettering === 'plain' ? 12 : name.length > 1 ? 6.5 : 19.5;
	if (letter) sheet.word('letter', [SECTION.width - edge, y + sheet.drop], letter, 'middle', node);
	sheet.point(node, [end - 6.5, y]);
}

/** By lettering: y of the numbers' line and of the signs' meaning, what is written there, and the signs' sizes. */
const LINES = {
	plain: {
		numbers: RULER + 36,
		signs: RULER + 64,
		every: 5,
		lifted: 'a spring is lifted',
		changes: 'what it touches changes',
		columns: [8, 200, 432],
		dot: 3.2,
		half: 4.4
	},
	large: {
		numbers: RULER + 44,
		signs: RULER + 72,
		every: 10,
		lifted: 'spring lifted',
		changes: 'touch changes',
		columns: [8, 204, 408],
		dot: 3.9,
		half: 5.2
	}
} as const;

/** Sign of an event in which a spring is lifted and its break contact opens. */
const diamond = (x: number, y: number, half: number): string =>
	closed([
		[x, y - 1.3 * half],
		[x + half, y],
		[x, y + 1.3 * half],
		[x - half, y]
	]);

const MILLIMETRES = Array.from({ length: SEATED + 1 }, (_, mm) => mm);
function ticks(): string {
	const tick = (mm: number, long: boolean): string =>
		straight([depthX(mm), RULER], [depthX(mm), RULER + (long ? 9 : 4.5)]);
	const all = [...MILLIMETRES.map((mm) => tick(mm, mm % 5 === 0)), tick(SEATED, true)];
	return straight([depthX(0), RULER], [depthX(SEATED), RULER]) + all.join('');
}

/** The ruler: millimetres behind the front face. */
export function drawRuler(sheet: Sheet): void {
	const { numbers, every } = LINES[sheet.lettering];
	sheet.stroke('dimension', kept('ruler', ticks));
	for (const mm of MILLIMETRES.filter((m) => m % every === 0))
		sheet.word('dimension', [depthX(mm), numbers], String(mm));
}

const lifts = (event: number): boolean => Object.values(SPRING_DEPTH).includes(event);

/** Sign of an event: over the ruler what a spring touches changes, under it a spring is lifted. */
function eventSign(event: number, { dot, half }: (typeof LINES)[Lettering]): string {
	const x = depthX(event);
	return lifts(event) ? diamond(x, RULER + 12 + 1.3 * half, half) : disc(x, RULER - 3 - dot, dot);
}

/** On the ruler: the events of this plug, and what their signs mean. */
export function drawEvents(sheet: Sheet, { socket, plug }: SocketState): void {
	if (!plug || PLUGS[plug.kind].fits !== 'jack') return;
	const events = sectionEvents(plug.kind, socket.kind);
	for (const event of events) {
		const key = `event ${event} ${sheet.lettering}`;
		const d = kept(key, () => eventSign(event, LINES[sheet.lettering]));
		sheet.stroke(event <= plug.travel ? 'pointer' : 'outline', d);
	}
	const isAhead = events.at(-1)! > plug.travel;
	sheet.marks.push(...keptSigns(sheet.lettering, plug.kind, socket.kind, isAhead));
}

/** The meaning of signs changes once in a travel, when none is ahead any more. */
function keptSigns(
	lettering: Lettering,
	plug: PlugKind,
	socket: SocketKind,
	isAhead: boolean
): readonly Mark[] {
	const key = `${lettering} ${plug} ${socket} ${isAhead}`;
	const made = signs.get(key) ?? signsOf(lettering, sectionEvents(plug, socket), isAhead);
	signs.set(key, made);
	return made;
}
const signs = new Map<string, readonly Mark[]>();

/** What the signs on the ruler mean: filled is behind the nose, open before it. Only those that stand there. */
function signsOf(lettering: Lettering, events: readonly number[], isAhead: boolean): Mark[] {
	const sheet = new Sheet(NOTHING_LIT, lettering);
	const { signs: line, lifted, changes, columns, dot, half } = LINES[lettering];
	const y = line - sheet.drop;
	const kinds: readonly [string, (x: number) => string, number][] = [
		[lifted, (x) => diamond(x + half, y, half), 2 * half],
		[changes, (x) => disc(x + dot, y, dot), 2 * dot]
	];
	const standing = kinds.filter((_, i) => events.some((event) => lifts(event) === (i === 0)));
	standing.forEach(([says, sign, wide], i) => {
		sheet.note(sign(columns[i]!));
		sheet.word('caption', [columns[i]! + wide + 7, line], says, 'start');
	});
	if (!isAhead) return sheet.marks;
	let x: number = columns[standing.length]!;
	for (const [, sign, wide] of standing) {
		sheet.note(sign(x), 'outline');
		x += wide + 5;
	}
	sheet.word('caption', [x + 2, line], 'still ahead', 'start');
	return sheet.marks;
}

/** Where the plug's nose stands, on the ruler. */
export function drawNose(sheet: Sheet, travel: number): void {
	const x = depthX(travel);
	const tip = RULER - 5 - 2 * LINES[sheet.lettering].dot;
	sheet.stroke(
		'pointer',
		closed([
			[x, tip],
			[x - 4.5, tip - 8],
			[x + 4.5, tip - 8]
		])
	);
}

/** The travel in words, at the right of the ruler. */
export function drawTravel(sheet: Sheet, travel: number): void {
	const at = [SECTION.width - 8, LINES[sheet.lettering].numbers] as const;
	sheet.word('dimension', at, `${travel.toFixed(1)} mm`, 'end');
}
