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
	type Socket
} from '../engine';
import { DEPTH, HEIGHT, LEAVES, SECTION, depthX, placeAt, type Side } from './sectionFrame';
import {
	bent,
	box,
	closed,
	disc,
	kept,
	rounded,
	straight,
	type Place,
	type Sheet
} from './sectionPen';
import { sectionEvents, type SocketState } from './sectionStates';

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
	const { turn, wall } = LEAVES.S;
	const strap = [
		under(turn!.spring, wall!.spring),
		under(0.75, wall!.spring),
		under(0.75, ring + 0.8)
	];
	sheet.stroke('spring', bent(strap, 5), of);
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
	if (letter) sheet.word('letter', [SECTION.width - 12, y + sheet.drop], letter, 'middle', node);
	sheet.point(node, [end - 6.5, y]);
}

const RULER = 278;
/** y of the numbers' line and of the signs' meaning, and what is written there, by lettering. */
const LINES = {
	plain: {
		numbers: RULER + 24,
		signs: RULER + 52,
		every: 5,
		says: [
			[8, 'a spring is lifted'],
			[200, 'what it touches changes'],
			[432, 'still ahead']
		]
	},
	large: {
		numbers: RULER + 28,
		signs: RULER + 57,
		every: 10,
		says: [
			[8, 'spring lifted'],
			[204, 'touch changes'],
			[408, 'still ahead']
		]
	}
} as const;

/** Sign of an event in which a spring is lifted and its break contact opens. */
const diamond = (x: number, y: number): string =>
	closed([
		[x, y - 5.5],
		[x + 4, y],
		[x, y + 5.5],
		[x - 4, y]
	]);
const dot = (x: number, y: number): string => disc(x, y, 2.4);

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

/** On the ruler: the events of this plug, and what their signs mean. */
export function drawEvents(sheet: Sheet, { socket, plug }: SocketState): void {
	if (!plug || PLUGS[plug.kind].fits !== 'jack') return;
	for (const event of sectionEvents(plug.kind, socket.kind)) {
		const past = event <= plug.travel;
		const sign = Object.values(SPRING_DEPTH).includes(event) ? diamond : dot;
		const d = kept(`event ${event}`, () => sign(depthX(event), RULER));
		sheet.stroke(past ? 'pointer' : 'outline', d);
	}
	drawSigns(sheet);
}

/** What the signs on the ruler mean: filled is behind the nose, open before it. */
function drawSigns(sheet: Sheet): void {
	const { signs, says } = LINES[sheet.lettering];
	const y = signs - sheet.drop;
	const [[lifts, lifted], [changes, changed], [opens, ahead]] = says;
	sheet.note(diamond(lifts + 4, y));
	sheet.word('caption', [lifts + 16, signs], lifted, 'start');
	sheet.note(dot(changes + 4, y));
	sheet.word('caption', [changes + 14, signs], changed, 'start');
	for (const sign of [diamond(opens + 4, y), dot(opens + 16, y)]) sheet.note(sign, 'outline');
	sheet.word('caption', [opens + 26, signs], ahead, 'start');
}

/** Where the plug's nose stands, on the ruler. */
export function drawNose(sheet: Sheet, travel: number): void {
	const x = depthX(travel);
	sheet.stroke(
		'pointer',
		closed([
			[x, RULER - 5],
			[x - 4.5, RULER - 13],
			[x + 4.5, RULER - 13]
		])
	);
}

/** The travel in words, at the right of the ruler. */
export function drawTravel(sheet: Sheet, travel: number): void {
	const at = [SECTION.width - 8, LINES[sheet.lettering].numbers] as const;
	sheet.word('dimension', at, `${travel.toFixed(1)} mm`, 'end');
}
