/**
 * A contradiction: a smallest set of readings that no hypothesis satisfies. Each class fails some
 * of the readings; readings of which every class fails one are a cover of the classes, and the
 * fewest are searched for without a limit. Classes that fail the same readings are asked once.
 */
import type { Dictionary } from './dictionary';
import { everyClass, isJoinedAt, placeOf, type Reading } from './evidence';
import { fewestColumns } from './cover';
import { Rows } from './rows';

/**
 * Positions of a smallest set of readings that no set of faults in the dictionary satisfies. Empty
 * if some set satisfies them all.
 */
export function conflictIn(dictionary: Dictionary, readings: readonly Reading[]): number[] {
	const places = readings.map((r) => placeOf(dictionary, r));
	const failed = new Rows(readings.length);
	const row = new Int32Array(readings.length);
	for (const id of everyClass(dictionary)) {
		places.forEach((place, i) => {
			const joined = readings[i]!.answer === 'joined';
			row[i] = isJoinedAt(dictionary, id, place) === joined ? 0 : 1;
		});
		if (row.every((f) => f === 0)) return [];
		failed.intern(row);
	}
	const classes = [...Array(failed.size).keys()];
	const columns = readings.map((_, i) => classes.filter((c) => failed.at(c, i) === 1));
	return [...fewestColumns(columns).chosen];
}
