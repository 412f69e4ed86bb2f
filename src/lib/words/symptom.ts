/** What an exercise tells before the first reading, put as the meter would say it. */
import type { Reading } from '../diagnosis';
import type { Bench } from '../engine';
import type { FindExercise } from '../exercises';
import { bothText } from './checks';
import { CLASS_GLOSS, classesWithFaults } from './classes';
import { FAULT_KIND_CHOICES } from './faultChoices';
import { andOf, sentence, textName, whenWords } from './names';

export interface ToldLine {
	/** The words of the exercise, as they stand there. */
	readonly says: string;
	/** What follows from them. */
	readonly means: string;
}

const isAsDrawn = ({ when }: Reading): boolean => Object.keys(when).length === 0;

/** `with a TS plug in LOW, T and TN sound`. */
function readingClause(bench: Bench, reading: Reading): string {
	const says = reading.answer === 'joined' ? 'sound' : 'are silent';
	const clause = `${bothText(bench, reading.pair)} ${says}`;
	return isAsDrawn(reading) ? clause : `${whenWords(bench, reading.when)}, ${clause}`;
}

/** Each thing told, in order; none where nothing is told. */
export function symptomLines({ bench, symptom }: FindExercise): ToldLine[] {
	const { told, kinds, kindsSay, keepOff, keepOffSays } = symptom;
	const lines = told.map(({ says, readings, any }): ToldLine => {
		const clauses = readings.map((r) => readingClause(bench, r)).join('; ');
		return { says, means: sentence(any ? `one of these at least: ${clauses}` : clauses) };
	});
	if (kinds) {
		const names = kinds.map((k) => FAULT_KIND_CHOICES[k].toLowerCase());
		lines.push({
			says: kindsSay,
			means: sentence(`the fault is of this kind: ${names.join(', or ')}`)
		});
	}
	if (keepOff.length > 0) {
		const places = keepOff.map((off) =>
			typeof off === 'string' ? textName(bench, off) : bothText(bench, off)
		);
		const joined = keepOff.every((off) => typeof off === 'string')
			? andOf(places)
			: places.join('; ');
		lines.push({ says: keepOffSays, means: sentence(`the best hunt keeps off ${joined}`) });
	}
	return lines;
}

/** How many classes of faults are in question at the start, and what a class is. */
export function inQuestionWords(classes: number, faults: number, told: number): string {
	const known =
		told > 0
			? 'What you were told leaves'
			: 'You were told only that one thing is wrong. That leaves';
	return `${known} ${classesWithFaults(classes, faults)}. ${CLASS_GLOSS}`;
}
