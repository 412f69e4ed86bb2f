/**
 * The isolated changeover over the tip spring: a card of insulation stands on the spring and lifts
 * `C` off `NC` and against `NO`. Which of the two it stands on is the engine's; the card's height is
 * the beam's. Past the touch, `C` bows between card and `NO`: both stay where they are.
 */
import type { Bench } from '../engine';
import { isClosed } from './lit';
import { drawLug } from './sectionBody';
import { BEAD, DEPTH, HALF_LEAF, SECTION, depthX, placeAt } from './sectionFrame';
import { heightAt } from './sectionBeam';
import { atRest, type Leaf } from './sectionLeaf';
import { bent, closed, disc, draw, type Sheet } from './sectionPen';

/** Height of `C` at rest, and how far its free end moves, units. */
const C = { height: 93, stroke: 5.2 } as const;
/** Heights of the lugs, units. */
const LUGS = { NC: 68, C: 91, NO: 114 } as const;
/** Depths of card, beads and free end, mm. */
const CARD = 33.4;
const BEADS = 27.4;
const FREE = 26;
const REACH = HALF_LEAF + BEAD;

/** Coefficients of the bow: flat at the clamp, `card` high at the card, `end` at the beads. */
function bow(card: number, end: number): { square: number; cube: number } {
	const k = (DEPTH.block - CARD) / (DEPTH.block - BEADS);
	const square = (card - end * k ** 3) / (k ** 2 - k ** 3);
	return { square, cube: end - square };
}

function drawMiddle(sheet: Sheet, of: string, card: number, end: number): void {
	const { square, cube } = bow(card, end);
	const [x0, x1] = [depthX(DEPTH.block), depthX(BEADS)];
	const y = (height: number): number => SECTION.axis - C.height - height;
	const way = bent(
		[
			placeAt(DEPTH.rear, LUGS.C),
			placeAt(DEPTH.rear - 0.4, LUGS.C),
			placeAt(DEPTH.block + 0.5, C.height),
			placeAt(DEPTH.block, C.height)
		],
		4
	);
	const leaf = draw((pen) => {
		pen.moveTo(x0, y(0));
		const slope = 2 * square + 3 * cube;
		pen.bezierCurveTo(
			x0 + (x1 - x0) / 3,
			y(0),
			x0 + (2 * (x1 - x0)) / 3,
			y(end - slope / 3),
			x1,
			y(end)
		);
		const run = (BEADS - FREE) / (DEPTH.block - BEADS);
		pen.lineTo(depthX(FREE), y(end + slope * run));
	});
	sheet.stroke('spring', way + leaf.replace(/^M[^CLQ]*/, ''), of);
}

/** A fixed side: a strip and a bead that faces `C`, from inside (`NC`) or from outside (`NO`). */
function drawFixed(
	sheet: Sheet,
	of: string,
	bead: number,
	out: 1 | -1,
	lug: number,
	shut: boolean
) {
	const strip = bead + out * BEAD;
	const way = [
		placeAt(DEPTH.rear, lug),
		placeAt(DEPTH.rear - 0.4, lug),
		placeAt(DEPTH.block + 0.5, strip),
		placeAt(BEADS - 0.5, strip)
	];
	sheet.stroke('blade', bent(way, 4), of);
	const isLit = shut && sheet.lit.breaks.has(of);
	sheet.stroke(shut ? 'seat-closed' : 'seat', disc(...placeAt(BEADS, bead), BEAD), of, isLit);
}

function drawCard(sheet: Sheet, foot: number, head: number): void {
	const half = 0.32;
	sheet.stroke(
		'collar',
		closed([
			placeAt(CARD - half, foot),
			placeAt(CARD + half, foot),
			placeAt(CARD + half, head),
			placeAt(CARD - half, head)
		])
	);
}

/** Draws `C`, `NC`, `NO` and the card that the tip spring carries. */
export function drawChangeover(sheet: Sheet, bench: Bench, socket: string, tip: Leaf): void {
	const node = (contact: string): string => `${socket}.${contact}`;
	const onNC = isClosed(bench, socket, 'NC');
	const under = heightAt(tip, depthX(CARD));
	const lift = onNC ? 0 : under - heightAt(atRest(tip), depthX(CARD));
	const end = onNC ? 0 : C.stroke;
	// The stud passes beside NC's leaf.
	drawCard(sheet, under + HALF_LEAF, C.height + lift - HALF_LEAF);
	drawFixed(sheet, node('NC'), C.height - REACH, -1, LUGS.NC, onNC);
	const onNO = isClosed(bench, socket, 'NO');
	drawFixed(sheet, node('NO'), C.height + C.stroke + REACH, 1, LUGS.NO, onNO);
	drawMiddle(sheet, node('C'), lift, end);
}

/** The lugs of `NC`, `C` and `NO`. */
export function drawChangeoverLugs(
	sheet: Sheet,
	socket: string,
	letters: ReadonlyMap<string, string>
): void {
	for (const [contact, height] of Object.entries(LUGS)) {
		const node = `${socket}.${contact}`;
		drawLug(sheet, node, height, 1, letters.get(node));
	}
}
