/** The gate for readings: a JSON value becomes readings, or a problem with its JSON path. */
import * as v from 'valibot';
import {
	checkShape,
	exact,
	list,
	node,
	strangeNode,
	strangeWhen,
	want,
	whenShape,
	type Bench,
	type Parsed
} from '../engine';
import type { Reading } from './evidence';

const pairShape = v.pipe(
	v.strictTuple([node, node], want('two nodes in square brackets')),
	v.check(([a, b]) => a !== b, want('two different nodes'))
);
export const readingShape = exact(
	{
		when: v.optional(whenShape, {}),
		pair: pairShape,
		answer: v.picklist(['joined', 'apart'], want('joined or apart'))
	},
	'a reading'
);
const readingsShape = exact({ readings: list(readingShape, 'readings') }, 'a readings file');

/** The readings of a file, whatever the bench. */
export function checkReadings(value: unknown): Parsed<Reading[]> {
	const shape = checkShape(readingsShape, value);
	return shape.ok ? { ok: true, value: shape.value.readings } : shape;
}

/** The first thing that a reading names and the bench does not have; null if all is there. */
export function strangeReading(bench: Bench, readings: readonly Reading[]): Parsed<never> | null {
	for (const [i, { when, pair }] of readings.entries()) {
		const at = `$.readings[${i}]`;
		const strange = strangeWhen(bench, when, `${at}.when`);
		if (strange) return strange;
		for (const [k, name] of pair.entries()) {
			const message = strangeNode(bench, name);
			if (message) return { ok: false, problem: { path: `${at}.pair[${k}]`, message } };
		}
	}
	return null;
}
