/**
 * The three-pin plug in section, at its travel: pins and shell of the male one, or the insert with
 * its contact tubes of the female one. Both reach as deep as the travel says, so that metal meets
 * metal on paper where the engine says that it has mated.
 */
import { SEATED, type Millimetres, type Plug } from '../engine';
import {
	MAKES,
	PIN_DEPTH,
	PIN_HALF,
	PIN_NAMES,
	PIN_UNIT,
	PLUG_SHELL,
	ROW,
	pinX
} from './sectionPinFrame';
import {
	bulletHalf,
	bulletStops,
	hangOf,
	heldBy,
	type Bullet,
	type Hang,
	type Profile
} from './profile';
import { closed, straight, type Place, type Sheet } from './sectionPen';

/** The rounded end of a pin. */
const END: Bullet = { cap: 0.85, turn: 38, long: 1.1, full: PIN_HALF / PIN_UNIT };
/** Half the thickness of the plug's shell, mm; its edge is round. */
const SHEET_HALF = (PLUG_SHELL.inner[0] - PLUG_SHELL.outer[0]) / 2 / PIN_UNIT;

/** Half the thickness of a pin, mm, at `s` mm behind its end; null beyond it. */
const pinHalf: Profile = (s) => (s < 0 ? null : bulletHalf(END, s));
const shellHalf: Profile = (s) => {
	if (s < 0 || s >= SHEET_HALF) return s < 0 ? null : SHEET_HALF;
	return Math.sqrt(SHEET_HALF ** 2 - (SHEET_HALF - s) ** 2);
};

/** Height that a round nose is held at over a pin's axis or the shell's middle, units; null before. */
export const heldByPin = (s: Millimetres, nose: number): number | null =>
	heldBy(pinHalf, PIN_UNIT, s, nose);
/** How a leaf with that nose (units) hangs that a pin lifts by `lift` (units) when it first touches. */
export const hangForPin = (nose: number, lift: number): Hang =>
	hangOf(pinHalf, END.cap, PIN_UNIT, nose, lift);
export const heldByShell = (s: Millimetres, nose: number): number | null =>
	heldBy(shellHalf, PIN_UNIT, s, nose);

const PIN_STOPS = bulletStops(END);
const SHELL_STOPS = Array.from(
	{ length: 7 },
	(_, i) => SHEET_HALF * (1 - Math.cos((i * Math.PI) / 12))
);

/** Heights of the grip, top and bottom. */
const GRIP = [PLUG_SHELL.outer[0] - 6, PLUG_SHELL.outer[1] + 6] as const;
const LEFT = pinX(PIN_DEPTH.left);
/** x of the wavy line along which the paper's edge breaks the plug off. */
const breakAt = (y: number): number =>
	LEFT + 2.6 * Math.sin(((y - GRIP[0]) / (GRIP[1] - GRIP[0])) * 2 * Math.PI);
/** x where the part that goes in begins at that height: where the grip does, or where the paper ends. */
const startAt = (back: Millimetres, y: number): number =>
	back > PIN_DEPTH.left ? pinX(back) : breakAt(y);
/** The same from one height to another, upwards. */
function startLine(back: Millimetres, top: number, bottom: number): Place[] {
	const steps = Math.max(1, Math.round((bottom - top) / 8));
	return Array.from({ length: steps + 1 }, (_, i) => {
		const y = bottom + (i / steps) * (top - bottom);
		return [startAt(back, y), y];
	});
}
/** A stretch of the plug from there to `right`. */
const stretch = (back: Millimetres, right: number, top: number, bottom: number): string =>
	closed([[right, top], [right, bottom], ...startLine(back, top, bottom)]);

/** A bar about `y` from `back` mm to its round end at `tip` mm. */
function barOutline(
	profile: Profile,
	stops: readonly Millimetres[],
	tip: Millimetres,
	back: Millimetres,
	y: number
): string {
	const within = stops.filter((s) => tip - s > back);
	const edge = (way: 1 | -1): Place[] =>
		within.map((s) => [pinX(tip - s), y - way * profile(s)! * PIN_UNIT]);
	const half = profile(tip - back)! * PIN_UNIT;
	return closed([...edge(1).reverse(), ...edge(-1), ...startLine(back, y - half, y + half)]);
}

function drawPins(sheet: Sheet, { id, travel }: Plug, back: Millimetres): void {
	for (const name of PIN_NAMES) {
		const of = `${id}.${name}`;
		const y = ROW[name];
		sheet.stroke('metal', barOutline(pinHalf, PIN_STOPS, travel, back, y), of);
		const [from, to] = [pinX(back) + 4, pinX(travel) - 8];
		if (to > from) sheet.stroke('fine', straight([from, y + 4.6], [to, y + 4.6]), of);
		sheet.point(of, [(pinX(back) + pinX(travel)) / 2, y]);
	}
}

/** The female plug's insert, its holes lined with tubes that are its contacts; tube 1 begins at its face. */
function drawTubes(sheet: Sheet, { id, travel }: Plug, back: Millimetres): void {
	const right = pinX(travel);
	const [top, bottom] = PLUG_SHELL.inner;
	sheet.stroke('collar', stretch(back, right, top + 1, bottom - 1));
	for (const name of PIN_NAMES) {
		const of = `${id}.${name}`;
		const y = ROW[name];
		sheet.stroke('hole', stretch(back, right, y - PIN_HALF, y + PIN_HALF));
		const mouth = pinX(travel - (MAKES[name] - MAKES['1']));
		for (const edge of [y - PIN_HALF - 4.5, y + PIN_HALF])
			sheet.stroke('metal', stretch(back, mouth, edge, edge + 4.5), of);
		sheet.point(of, [(pinX(back) + right) / 2, y - PIN_HALF - 2]);
	}
}

function drawShell(sheet: Sheet, { id, travel }: Plug, back: Millimetres): void {
	const of = `${id}.shell`;
	const { outer, inner } = PLUG_SHELL;
	for (const side of [0, 1] as const) {
		const middle = (outer[side] + inner[side]) / 2;
		sheet.stroke('metal', barOutline(shellHalf, SHELL_STOPS, travel, back, middle), of);
	}
	sheet.point(of, [(pinX(back) + pinX(travel)) / 2, (outer[1] + inner[1]) / 2]);
}

/** What the cable's hand holds, behind the part that goes in. */
function drawGrip(sheet: Sheet, travel: Millimetres): void {
	const start = pinX(travel - SEATED);
	if (start <= LEFT + 3) return;
	const [top, bottom] = GRIP;
	const cut = Array.from({ length: 25 }, (_, i): Place => {
		const y = top + (i / 24) * (bottom - top);
		return [breakAt(y), y];
	});
	sheet.stroke('body', closed([[start, top], ...cut, [start, bottom]]));
	for (const share of [0.05, 0.11, 0.2, 0.72, 0.8, 0.87, 0.92, 0.96]) {
		const y = top + share * (bottom - top);
		if (start - LEFT > 14) sheet.stroke('fine', straight([LEFT + 6, y], [start - 5, y]));
	}
}

/** The plug at its travel; `isMale`: it has pins, and goes into a female socket. */
export function drawThreePinPlug(sheet: Sheet, plug: Plug, isMale: boolean): void {
	const back = Math.max(PIN_DEPTH.left, plug.travel - SEATED);
	if (isMale) drawPins(sheet, plug, back);
	else drawTubes(sheet, plug, back);
	drawShell(sheet, plug, back);
	drawGrip(sheet, plug.travel);
}
