/** Names for the marks of a figure, so that the screen touches only those that have changed. */
import { sameMark, type Mark } from './figure';

export interface Named {
	readonly name: string;
	readonly mark: Mark;
}
/** Roles that a mark changes to where it stands: it is the same mark in another ink. */
const SAME_PLACE: Partial<Record<string, string>> = {
	'seat-closed': 'seat',
	pointer: 'outline',
	core: 'wire'
};
const placeOf = (role: string): string => SAME_PLACE[role] ?? role;
const isAlike = (a: Mark, b: Mark): boolean =>
	a.of === b.of && (a.role === b.role || placeOf(a.role) === placeOf(b.role));

/** What stood under the same name, where it is drawn alike. */
const keptOr = (name: string, mark: Mark, was: Named | undefined): Named =>
	was && sameMark(mark, was.mark) ? was : { name, mark };

/**
 * Every mark under a name of its own: what it is, whose, and which of those. One that is as it was in
 * `before` stays the same object; where all are, so does the list.
 */
export function named(marks: readonly Mark[], before: readonly Named[]): readonly Named[] {
	// As a rule the same marks stand in the same order, and have the names that they had.
	if (marks.length !== before.length || !marks.every((m, i) => isAlike(m, before[i]!.mark)))
		return namedAnew(marks, before);
	const now = marks.map((mark, i) => keptOr(before[i]!.name, mark, before[i]));
	return now.every((one, i) => one === before[i]) ? before : now;
}

function namedAnew(marks: readonly Mark[], before: readonly Named[]): readonly Named[] {
	const old = new Map(before.map((one) => [one.name, one]));
	const now = new Map<string, Named>();
	for (const mark of marks) {
		const stem = `${placeOf(mark.role)} ${mark.of}`;
		let name = stem;
		for (let i = 1; now.has(name); i++) name = `${stem} ${i}`;
		now.set(name, keptOr(name, mark, old.get(name)));
	}
	return [...now.values()];
}
