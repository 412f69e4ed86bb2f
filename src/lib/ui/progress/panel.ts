/**
 * The panel that shows how every exercise stands: one row of the panel for a unit, one place for an
 * exercise, as in the elevation of a rack. Pure geometry, in pixels, so that text keeps its size.
 */
import { unitOf, unitsOf, type Listed } from '../../session/progressSkills';

export interface Place {
	readonly id: string;
	/** Unit and place within it, `3.2`. */
	readonly number: string;
	readonly x: number;
	readonly y: number;
}
export interface Row {
	readonly unit: number;
	readonly x: number;
	readonly y: number;
	readonly places: readonly Place[];
}
export interface Panel {
	readonly width: number;
	readonly height: number;
	/** Of one row, its two ears included. */
	readonly rowWidth: number;
	readonly ear: number;
	/** Of a socket's hole. */
	readonly radius: number;
	/** Width of what belongs to one socket, for pointing at it. */
	readonly cell: number;
	readonly rows: readonly Row[];
}

/** Height of a row, of the strip with its title, and of the line with the numbers. */
export const ROW = 86;
export const STRIP = 24;
const NUMBERS = 16;
/** Between two bays. */
const GAP = 14;
/** From this width on, the rows stand in two bays. */
const TWO_BAYS = 700;
const WIDEST_CELL = 84;
const LEAST = 260;

/** `3.2`: the second exercise of the third unit. */
export function numberOf(exercises: readonly Listed[], id: string): string {
	const unit = unitOf(exercises.find((e) => e.id === id)!);
	const place = exercises.filter((e) => unitOf(e) === unit).findIndex((e) => e.id === id);
	return `${unit}.${place + 1}`;
}

/** The panel at a width; a page that is going away has none, so a least one is kept to. */
export function panelOf(exercises: readonly Listed[], given: number): Panel {
	const width = Math.max(LEAST, given);
	const units = unitsOf(exercises);
	const bays = width >= TWO_BAYS && units.length > 1 ? 2 : 1;
	const ear = width >= 500 ? 26 : 17;
	const rowWidth = (width - (bays - 1) * GAP) / bays;
	const most = Math.max(1, ...units.map((u) => u.exercises.length));
	const cell = Math.min(WIDEST_CELL, (rowWidth - 2 * ear) / most);
	const radius = Math.min(15, cell * 0.34);
	const perBay = Math.ceil(units.length / bays);
	const rows = units.map(({ unit, exercises: ofUnit }, i): Row => {
		const x = Math.floor(i / perBay) * (rowWidth + GAP);
		const y = (i % perBay) * ROW;
		const middle = y + STRIP + (ROW - STRIP - NUMBERS) / 2;
		const places = ofUnit.map(({ id }, n) => ({
			id,
			number: `${unit}.${n + 1}`,
			x: x + ear + (n + 0.5) * cell,
			y: middle
		}));
		return { unit, x, y, places };
	});
	return { width, height: perBay * ROW, rowWidth, ear, radius, cell, rows };
}
