/** The schedule's tables as CSV, for a spreadsheet: one table after another would be none, so each is a file. */
import { makeCsv } from './csv';
import type { Schedule } from './schedule';
import { labelName } from './runs';

/** The conductors, one a row. */
export const makeScheduleCsv = ({ conductors }: Schedule): string =>
	makeCsv([
		[
			'conductor',
			'kind',
			'from',
			'to',
			'awg',
			'mm2',
			'length_mm',
			'colour',
			'function',
			'net',
			'label_from',
			'label_to'
		],
		...conductors.map((c) => [
			...[labelName(c.name), c.kind, c.from, c.to, c.awg, c.mm2, c.mm, c.colour, c.function, c.net],
			...c.labels
		])
	]);

/** The cut list, one piece a row, in the order in which to cut. */
export const makeCutsCsv = ({ cuts }: Schedule): string =>
	makeCsv([
		['stuff', 'awg', 'mm2', 'colour_or_cores', 'piece', 'cut_mm'],
		...cuts.wires.flatMap((w) =>
			w.pieces.map((p) => ['wire', w.awg, w.mm2, w.colour, p.name, p.mm])
		),
		...cuts.cables.flatMap((c) =>
			c.pieces.map((p) => ['cable', c.awg, c.mm2, c.cores, p.name, p.mm])
		)
	]);
