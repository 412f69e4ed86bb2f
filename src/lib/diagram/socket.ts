/**
 * A socket as a drawing, rear view, in units of its own cell: origin in the middle, x to the right,
 * y down. Lugs and cups stand where the solder side of a generic part has them: pin numbers as they
 * are moulded (female solder side 1 left, 2 right, 3 below; male 2 left, 1 right: geometry from
 * memory of the standard face, exact as a mirror image), jack springs in one row with each break
 * contact below its spring (common practice). Shapes are path strings, so that a figure can be
 * compared in plain Node.
 */
import { pathRound } from 'd3-path';
import { SOCKETS, type Socket, type SocketKind } from '../engine';

export interface Point {
	readonly x: number;
	readonly y: number;
}
export interface LugPlace extends Point {
	readonly contact: string;
	readonly form: 'cup' | 'lug' | 'chassis';
	/** Where its mark stands, relative to the lug. */
	readonly mark: Point;
	/** Where the letter of its net stands, relative to the lug. */
	readonly letter: Point;
	/** Directions in which a wire leaves it, radians: 0 to the right, π/2 down. */
	readonly ways: readonly number[];
}
/** What a shape is, which decides how it is inked. */
export type Role = 'body' | 'insulator' | 'outline' | 'fine' | 'hole' | 'metal' | 'hidden';
export interface Shape {
	readonly role: Role;
	readonly d: string;
	/** The contact whose metal it is. */
	readonly contact?: string;
	/** Part of a bush, or screwed to it: metal of `S` where the bush is metal. */
	readonly bush?: true;
	/** Stands over whatever plug is in. */
	readonly over?: true;
	/** The face of the jack: from the front no wire is drawn over it. */
	readonly face?: true;
}
export interface BreakPlace {
	readonly contact: string;
	readonly spring: string;
	readonly from: Point;
	readonly to: Point;
	/** Its leaf moves between this contact and another one. */
	readonly between: boolean;
}
export interface SocketDrawing {
	readonly lugs: readonly LugPlace[];
	readonly breaks: readonly BreakPlace[];
	readonly rear: readonly Shape[];
	/** Seen from the front, but in rear coordinates: the drawing is mirrored as it turns. */
	readonly front: readonly Shape[];
	/** Middle of the opening, and its radius. */
	readonly bore: Point & { readonly r: number };
	/** Middle of the round three-pin half, and the radius of a plug's shell in it. */
	readonly round?: Point & { readonly r: number };
}

/** Half the width and height of a cell's flange. */
export const FLANGE = { x: 142, y: 220 } as const;
/**
 * Distance from cell to cell, and from a cell's top to its socket's middle. Between two rows there is
 * room for a name and for the lane of long wires; a single socket needs none.
 */
export const PITCH = { x: 330, y: 540, single: 496, middle: 240 } as const;

type Draw = (p: ReturnType<typeof pathRound>) => void;
const shape = (role: Role, draw: Draw): Shape => {
	const p = pathRound(2);
	draw(p);
	return { role, d: p.toString() };
};
const circle = (role: Role, x: number, y: number, r: number): Shape =>
	shape(role, (p) => {
		p.moveTo(x + r, y);
		p.arc(x, y, r, 0, 2 * Math.PI);
		p.closePath();
	});
function box(role: Role, x: number, y: number, w: number, h: number, r: number): Shape {
	return shape(role, (p) => {
		p.moveTo(x + r, y);
		p.arcTo(x + w, y, x + w, y + h, r);
		p.arcTo(x + w, y + h, x, y + h, r);
		p.arcTo(x, y + h, x, y, r);
		p.arcTo(x, y, x + w, y, r);
		p.closePath();
	});
}
/** Middle of the round three-pin half, and its radius. */
const ROUND = { x: 0, y: -98, r: 102 } as const;
/** The insulator within the shell leaves a gap, which a plug's shell goes into. */
const INSERT = { r: ROUND.r - 9, plug: ROUND.r - 4.5 } as const;
/** Three cups round the middle. */
const CUPS: Readonly<Record<'left' | 'right' | 'below', Point>> = {
	left: { x: -60, y: -124 },
	right: { x: 60, y: -124 },
	below: { x: 0, y: -36 }
};

/** Eighths of a turn: 0 right, 2 down, 4 left, 6 up. */
const ways = (...eighths: number[]): number[] => eighths.map((n) => (n * Math.PI) / 4);
const ALL_WAYS = Array.from({ length: 16 }, (_, i) => (i * Math.PI) / 8);

/** A cup stands out of the page, so its wire bends off any way that is not over its mark or letter. */
function cup(contact: string, at: Point, mark: Point): LugPlace {
	const letter = { x: mark.x > 0 ? -21 : mark.y < 0 ? 18 : 21, y: 22 };
	const over = [Math.atan2(mark.y, mark.x), Math.atan2(letter.y - 6, letter.x)];
	const free = ALL_WAYS.filter((w) => over.every((o) => Math.cos(w - o) < 0.84));
	return { contact, ...at, form: 'cup', mark, letter, ways: free };
}

function threePinLugs(kind: SocketKind, down: number): LugPlace[] {
	const male = SOCKETS[kind].threePin === 'male';
	const move = (p: Point): Point => ({ x: p.x, y: p.y + down });
	const lugs = [
		cup('1', move(male ? CUPS.right : CUPS.left), { x: 0, y: -27 }),
		cup('2', move(male ? CUPS.left : CUPS.right), { x: 0, y: -27 }),
		cup('3', move(CUPS.below), { x: 26, y: 0 })
	];
	if ('1N' in SOCKETS[kind].breaks) lugs.push(cup('1N', move({ x: -48, y: -64 }), { x: 0, y: 26 }));
	return lugs;
}

/** A lug's wire leaves it lengthwise, up or down, and not over its letter. */
const UP = ways(5, 5.5, 6, 6.5, 7);
const DOWN = ways(1.5, 2, 2.5, 3);

/** Jack lugs: springs in a row, break contacts in a row below. `y` is the upper row. */
function jackLugs(kind: SocketKind, y: number): LugPlace[] {
	const { contacts, changeover } = SOCKETS[kind];
	const has = (c: string) => contacts.includes(c);
	const lower = y + 76;
	const single = !changeover && !has('TN');
	const lug = (contact: string, x: number, row: number): LugPlace => ({
		contact,
		x,
		y: row,
		form: 'lug',
		mark: { x: contact.length > 1 ? -26 : -22, y: 0 },
		letter: { x: 18, y: 11 },
		ways: single ? [...UP, ...DOWN] : row === y ? UP : DOWN
	});
	if (changeover)
		return [
			lug('T', -84, y),
			lug('S', -16, y),
			lug('C', 52, y),
			lug('NC', 10, lower),
			lug('NO', 94, lower)
		];
	const columns: Record<string, number> = has('R') ? { T: -78, R: 0, S: 82 } : { T: -52, S: 52 };
	return Object.entries(columns).flatMap(([spring, x]) => [
		lug(spring, x, y),
		...(has(`${spring}N`) ? [lug(`${spring}N`, x, lower)] : [])
	]);
}

const CHASSIS_LUG: LugPlace = {
	contact: 'G',
	x: 113,
	y: -184,
	form: 'chassis',
	mark: { x: 0, y: -21 },
	letter: { x: -23, y: 5 },
	ways: DOWN
};

/** What a bush is made of, or holds: metal of S where the bush is metal. */
const ofBush = (made: Shape): Shape => ({ ...made, bush: true });

/** The shapes of one view as a socket with that bush has them. */
export function shapesOf(shapes: readonly Shape[], bush: Socket['bush']): readonly Shape[] {
	if (bush !== 'metal' || !shapes.some((s) => s.bush)) return shapes;
	return shapes.map((s) =>
		s.bush ? { ...s, contact: 'S', role: s.role === 'outline' ? 'metal' : s.role } : s
	);
}

/** The shape as metal of that contact. */
const metalOf = (contact: string, made: Shape): Shape => ({ ...made, contact });

/** The plate; `G`: it is one piece with the chassis lug. */
function flange(contact: 'G' | null = null): Shape[] {
	const { x, y } = FLANGE;
	const plate = box('body', -x, -y, 2 * x, 2 * y, 16);
	return [
		contact ? metalOf(contact, plate) : plate,
		circle('hole', -x + 19, -y + 19, 8),
		circle('hole', x - 19, y - 15, 8)
	];
}

const ofFace = (part: Shape): Shape => ({ ...part, face: true });
const overPlug = (part: Shape): Shape => ({ ...part, over: true });

/**
 * The latch of a female socket, over the middle of its round half: outside the tab that a thumb
 * presses, inside its lever with the hook that holds a plug. A generic shape. Some sockets have none
 * (common practice); the phone half holds by friction.
 */
function latch(middle: number): { rear: Shape[]; front: Shape[] } {
	const top = middle - ROUND.r;
	const ribs = (y: number): Shape[] =>
		[0, 6, 12].map((dy) =>
			shape('fine', (p) => {
				p.moveTo(-15, y + dy);
				p.lineTo(15, y + dy);
			})
		);
	return {
		rear: [
			box('metal', -22, top - 9, 44, 20, 4),
			box('hidden', -9, top + 11, 18, 16, 2),
			circle('hole', -14, top + 1, 2.6),
			circle('hole', 14, top + 1, 2.6)
		].map(overPlug),
		front: [
			box('hole', -7, top + 9, 14, 17, 2),
			box('body', -25, top - 14, 50, 26, 6),
			...ribs(top - 7)
		].map(overPlug)
	};
}

/** A panel plug has no latch: a key inside its shell, and the window that a latch hooks into. */
const keyed = (middle: number): Shape[] => [
	box('fine', -8, middle - ROUND.r + 9, 16, 9, 2),
	box('hole', -13, middle - ROUND.r + 1, 26, 7, 2)
];

/** What the mould leaves on the insulator: the marks of its ejectors, and a rib. */
const moulded = (x: number, y: number, w: number, h: number): Shape[] => [
	circle('fine', x + 11, y + 11, 4),
	circle('fine', x + w - 11, y + 11, 4),
	circle('fine', x + 11, y + h - 11, 4),
	circle('fine', x + w - 11, y + h - 11, 4)
];
const mouldedRound = (middle: number): Shape[] => [
	circle('fine', -34, middle - 76, 4),
	circle('fine', 34, middle - 76, 4)
];

function hybrid(kind: SocketKind): SocketDrawing {
	const breaks = Object.keys(SOCKETS[kind].breaks).length > 0;
	const block = { y: 22, h: breaks ? 168 : 92 };
	const lugs = [...threePinLugs(kind, 0), ...jackLugs(kind, block.y + 46), CHASSIS_LUG];
	const pins = threePinLugs(kind, 0).filter((l) => l.contact !== '1N');
	return {
		lugs,
		breaks: breaksOf(kind, lugs),
		rear: [
			...flange('G'),
			metalOf('G', circle('outline', ROUND.x, ROUND.y, ROUND.r)),
			circle('insulator', ROUND.x, ROUND.y, INSERT.r),
			...mouldedRound(ROUND.y),
			...latch(ROUND.y).rear,
			box('insulator', -128, block.y, 256, block.h, 8),
			...moulded(-128, block.y, 256, block.h),
			circle('hidden', ROUND.x, ROUND.y + 8, 31)
		],
		front: [
			...flange('G'),
			metalOf('G', circle('outline', ROUND.x, ROUND.y, ROUND.r)),
			circle('insulator', ROUND.x, ROUND.y, INSERT.r),
			ofFace(circle('hole', ROUND.x, ROUND.y + 8, 34)),
			ofFace(circle('fine', ROUND.x, ROUND.y + 8, 29)),
			...pins.map((l) => metalOf(l.contact, circle('hole', l.x, l.y, 9))),
			...latch(ROUND.y).front,
			box('hidden', -128, block.y, 256, block.h, 8)
		],
		bore: { x: ROUND.x, y: ROUND.y + 8, r: 31 },
		round: { x: ROUND.x, y: ROUND.y, r: INSERT.plug }
	};
}

function threePin(kind: SocketKind): SocketDrawing {
	const down = 98;
	const lugs = [...threePinLugs(kind, down), CHASSIS_LUG];
	const male = SOCKETS[kind].threePin === 'male';
	const middle = ROUND.y + down;
	return {
		lugs,
		breaks: [],
		rear: [
			...flange('G'),
			metalOf('G', circle('outline', 0, middle, ROUND.r)),
			circle('insulator', 0, middle, INSERT.r),
			...mouldedRound(middle),
			...(male ? [] : latch(middle).rear)
		],
		front: [
			...flange('G'),
			metalOf('G', circle('outline', 0, middle, ROUND.r)),
			circle('insulator', 0, middle, INSERT.r),
			...lugs
				.filter((l) => l.form === 'cup')
				.map((l) => metalOf(l.contact, circle(male ? 'metal' : 'hole', l.x, l.y, 9))),
			...(male ? keyed(middle) : latch(middle).front)
		],
		bore: { x: 0, y: middle, r: 31 },
		round: { x: 0, y: middle, r: INSERT.plug }
	};
}

/** Radius of a bush's face. */
const BUSH = 46;

function jackOnly(kind: SocketKind): SocketDrawing {
	const part = SOCKETS[kind];
	const two = Object.keys(part.breaks).length > 0 || part.changeover;
	const top = 12;
	const lugs = jackLugs(kind, top + 46);
	const plate = flange().map((s) => (s.role === 'body' ? ofBush(s) : s));
	return {
		lugs,
		breaks: breaksOf(kind, lugs),
		rear: [
			...plate,
			// The bush lies flush in the panel, its face to the front.
			ofBush(circle('hidden', 0, -84, BUSH)),
			ofBush(circle('hidden', 0, -84, 31)),
			box('insulator', -34, -44, 68, 62, 4),
			box('insulator', -128, top, 256, two ? 170 : 96, 8),
			...moulded(-128, top, 256, two ? 170 : 96)
		],
		front: [
			...plate,
			ofFace(ofBush(circle('outline', 0, -84, BUSH))),
			// Two slots, by which it is screwed in.
			...[-1, 1].map((side) => ofFace(box('hole', side * 39 - 5, -87, 10, 6, 1))),
			ofFace(circle('hole', 0, -84, 34)),
			ofFace(circle('fine', 0, -84, 29)),
			...[-34, 34].map((x) =>
				shape('hidden', (p) => {
					p.moveTo(x, -84 + Math.sqrt(BUSH ** 2 - 34 ** 2));
					p.lineTo(x, top);
				})
			),
			box('hidden', -128, top, 256, two ? 170 : 96, 8)
		],
		bore: { x: 0, y: -84, r: 31 }
	};
}

function breaksOf(kind: SocketKind, lugs: readonly LugPlace[]): BreakPlace[] {
	const at = (contact: string): Point => lugs.find((l) => l.contact === contact)!;
	const pairs = Object.entries(SOCKETS[kind].breaks);
	if (SOCKETS[kind].changeover) pairs.push(['NC', 'C'], ['NO', 'C']);
	return pairs.map(([contact, spring]) => {
		const between = spring === 'C';
		return { contact, spring, from: at(spring), to: at(contact), between };
	});
}

const drawn = new Map<SocketKind, SocketDrawing>();
/** The drawing of a socket kind. */
export function socketDrawing(kind: SocketKind): SocketDrawing {
	const known = drawn.get(kind);
	if (known) return known;
	const { threePin: pins, springs } = SOCKETS[kind];
	const made = springs.length === 0 ? threePin(kind) : pins ? hybrid(kind) : jackOnly(kind);
	drawn.set(kind, made);
	return made;
}
