/**
 * The three-pin plug in section, at its travel: pins and shell of the male one, or the insert with
 * its contact tubes of the female one. Both reach as deep as the travel says, so that metal meets
 * metal on paper where the engine says that it has mated.
 */
import { SEATED, type Millimetres, type Plug } from '../engine';
import { PIN_DEPTH, PIN_HALF, PIN_NAMES, PIN_UNIT, PLUG_SHELL, ROW, pinX } from './sectionPinFrame';
import { box, closed, straight, type Place, type Sheet } from './sectionPen';

/** The rounded end of a pin: a blunt face, then a quarter of an ellipse, mm and units. */
const END = { flat: 4.6, long: 0.9 } as const;

/** Half the thickness of a pin, units, at `s` mm behind its end; null beyond it. */
export function pinHalf(s: Millimetres): number | null {
	if (s < 0) return null;
	if (s >= END.long) return PIN_HALF;
	const left = 1 - s / END.long;
	return END.flat + (PIN_HALF - END.flat) * Math.sqrt(1 - left * left);
}

/** Height that a round nose of that radius is held at over a pin's axis, units; null before it. */
export function heldByPin(s: Millimetres, nose: number): number | null {
	if (s < 0) return null;
	let height = 0;
	for (let u = -nose; u <= nose; u += nose / 12) {
		const half = pinHalf(s + u / PIN_UNIT);
		if (half !== null) height = Math.max(height, half - nose + Math.sqrt(nose * nose - u * u));
	}
	return height;
}

/** A pin of the plug, its round end at `tip` mm, up to `from` mm. */
function pinOutline(tip: Millimetres, from: Millimetres, y: number): string {
	const steps = Array.from({ length: 9 }, (_, i) => END.long * (i / 8) ** 2);
	const edge = (way: 1 | -1): Place[] => steps.map((s) => [pinX(tip - s), y - way * pinHalf(s)!]);
	return closed([
		[pinX(from), y - PIN_HALF],
		...edge(1).reverse(),
		...edge(-1),
		[pinX(from), y + PIN_HALF]
	]);
}

function drawPins(sheet: Sheet, { id, travel }: Plug, back: Millimetres): void {
	for (const name of PIN_NAMES) {
		const of = `${id}.${name}`;
		const y = ROW[name];
		sheet.stroke('metal', pinOutline(travel, back, y), of);
		const [from, to] = [pinX(back) + 4, pinX(travel) - 8];
		if (to > from) sheet.stroke('fine', straight([from, y + 4.6], [to, y + 4.6]), of);
		sheet.point(of, [(pinX(back) + pinX(travel)) / 2, y]);
	}
}

/** The female plug's insert, its holes lined with tubes that are its contacts. */
function drawTubes(sheet: Sheet, { id, travel }: Plug, back: Millimetres): void {
	const [left, right] = [pinX(back), pinX(travel)];
	const [top, bottom] = PLUG_SHELL.inner;
	sheet.stroke('collar', box(left, top + 1, right - left, bottom - top - 2, 1));
	for (const name of PIN_NAMES) {
		const of = `${id}.${name}`;
		const y = ROW[name];
		sheet.stroke('hole', box(left, y - PIN_HALF, right - left, 2 * PIN_HALF, 0));
		for (const edge of [y - PIN_HALF - 4.5, y + PIN_HALF])
			sheet.stroke('metal', box(left, edge, right - left, 4.5, 0), of);
		sheet.point(of, [(left + right) / 2, y - PIN_HALF - 2]);
	}
}

function drawShell(sheet: Sheet, { id, travel }: Plug, back: Millimetres): void {
	const of = `${id}.shell`;
	const [left, right] = [pinX(back), pinX(travel)];
	const { outer, inner } = PLUG_SHELL;
	sheet.stroke('metal', box(left, outer[0], right - left, inner[0] - outer[0], 1), of);
	sheet.stroke('metal', box(left, inner[1], right - left, outer[1] - inner[1], 1), of);
	sheet.point(of, [(left + right) / 2, (outer[1] + inner[1]) / 2]);
}

/** What the cable's hand holds, behind the part that goes in. */
function drawGrip(sheet: Sheet, travel: Millimetres): void {
	const left = pinX(PIN_DEPTH.left);
	const start = pinX(travel - SEATED);
	if (start <= left + 3) return;
	const [top, bottom] = [PLUG_SHELL.outer[0] - 6, PLUG_SHELL.outer[1] + 6];
	const cut = Array.from({ length: 25 }, (_, i) => {
		const part = i / 24;
		return [left + 2.6 * Math.sin(part * 2 * Math.PI), top + part * (bottom - top)] as const;
	});
	sheet.stroke('body', closed([[start, top], ...cut, [start, bottom]]));
	for (const share of [0.05, 0.11, 0.2, 0.72, 0.8, 0.87, 0.92, 0.96]) {
		const y = top + share * (bottom - top);
		if (start - left > 14) sheet.stroke('fine', straight([left + 6, y], [start - 5, y]));
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
