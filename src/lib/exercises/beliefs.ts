/** The mistaken beliefs that the course brings to light: one list, content/beliefs.json, for all exercises. */
import * as v from 'valibot';
import { checkShape, exact, parseJson, type Parsed } from '../engine';
import { id, some, words } from './shapesShared';

export interface BeliefEntry {
	readonly id: string;
	readonly says: string;
	readonly truth: string;
}
export type Beliefs = readonly BeliefEntry[];

const shape = v.pipe(
	some(exact({ id, says: words(10, 200), truth: words(10, 400) }, 'a belief'), 'beliefs'),
	v.check((list) => new Set(list.map((b) => b.id)).size === list.length, 'an id stands here twice')
);

/** Beliefs from the text of beliefs.json, or the first problem. */
export function parseBeliefs(json: string): Parsed<Beliefs> {
	const value = parseJson(json, 'the list of beliefs');
	return value.ok ? checkShape(shape, value.value) : value;
}
