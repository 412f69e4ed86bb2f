/** Shapes that several parts of an exercise share. */
import * as v from 'valibot';
import { list, node, want } from '../engine';

export const words = (from: number, to: number) => {
	const right = `a text of ${from} to ${to} characters`;
	return v.pipe(
		v.string(want(right)),
		v.minLength(from, want(right)),
		v.maxLength(to, want(right))
	);
};
const ID_RIGHT = 'a permanent id: lower-case letters, digits and single hyphens';
export const id = v.pipe(
	v.string(want(ID_RIGHT)),
	v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, want(ID_RIGHT))
);
export const whole = (from: number, to: number) => {
	const right = `a whole number from ${from} to ${to}`;
	return v.pipe(
		v.number(want(right)),
		v.integer(want(right)),
		v.minValue(from, want(right)),
		v.maxValue(to, want(right))
	);
};
export const pair = v.pipe(
	v.strictTuple([node, node], want('two nodes in square brackets')),
	v.check(([a, b]) => a !== b, want('two different nodes'))
);
/** Two nodes, an input and a source, or two contacts. */
export const namePair = v.strictTuple(
	[v.string(), v.string()],
	want('two names in square brackets')
);
export const some = <T extends v.GenericSchema>(of: T, what: string) =>
	v.pipe(list(of, what), v.minLength(1, want(`a list of ${what}, one at least`)));
