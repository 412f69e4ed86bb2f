/**
 * What hunts, the real bench and the command line count, and the one way it is said: classes, with
 * the single faults in them in brackets where there are more of these.
 */

/** What a class is, said once on each page that counts them. */
export const CLASS_GLOSS = 'A class is one kind of trouble: faults that no probe can tell apart.';

const counted = (n: number, one: string, many: string): string =>
	`${n.toLocaleString('en-GB')} ${n === 1 ? one : many}`;

/** `32 classes of faults`. */
export const classesText = (classes: number): string =>
	counted(classes, 'class of faults', 'classes of faults');

/** `(131 single faults)`; '' where each class is one fault. */
export const inFaults = (classes: number, faults: number): string =>
	faults === classes ? '' : `(${counted(faults, 'single fault', 'single faults')})`;

/** `32 classes of faults (131 single faults)`. */
export const classesWithFaults = (classes: number, faults: number): string =>
	`${classesText(classes)} ${inFaults(classes, faults)}`.trim();

/** A chance for people: `3 %`, `under 1 %`, `over 99 %` for what is not certain. */
export function shareWords(part: number): string {
	const percent = part * 100;
	if (percent >= 99.5 && part < 1) return 'over 99 %';
	return percent < 1 ? 'under 1 %' : `${Math.round(percent)} %`;
}
