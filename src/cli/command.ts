/** What a command of the headless program is: the options that it needs and takes, and its reply. */
import type { Bench } from '../lib/engine';
import type { OptionName, ValueOf } from './options';

export type Reply =
	/** `lines`: the same for people, the headline first. */
	| { readonly kind: 'data'; readonly data: unknown; readonly lines: () => readonly string[] }
	/** Plain text, as it is, for programs and people alike. */
	| { readonly kind: 'text'; readonly text: string }
	/** The file cannot be answered; `of` is the file at fault where it is not the bench. */
	| {
			readonly kind: 'refused';
			readonly path: string;
			readonly message: string;
			readonly of?: string;
	  };

/** The options as a command receives them: what it needs is there. */
type Given<Needs extends OptionName, Takes extends OptionName> = {
	readonly [K in Needs]: ValueOf[K];
} & { readonly [K in Takes]?: ValueOf[K] };

export interface Command {
	/** One line of help. */
	readonly says: string;
	/** An example of the options, for help. */
	readonly example: string;
	readonly needs: readonly OptionName[];
	readonly takes: readonly OptionName[];
	readonly answer: (bench: Bench, given: Given<never, OptionName>) => Reply;
}

/** A table entry whose answer sees exactly the options that the entry names. */
export function command<
	const Needs extends OptionName = never,
	const Takes extends OptionName = never
>(
	entry: Omit<Command, 'needs' | 'takes' | 'answer'> & {
		readonly needs?: readonly Needs[];
		readonly takes?: readonly Takes[];
		readonly answer: (bench: Bench, given: Given<Needs, Takes>) => Reply;
	}
): Command {
	// Safe: usage has been checked against `needs` and `takes` before an answer is asked for.
	return { needs: [], takes: [], ...entry } as Command;
}

/** A reply of data. */
export const data = (value: unknown, lines: () => readonly string[]): Reply => ({
	kind: 'data',
	data: value,
	lines
});
