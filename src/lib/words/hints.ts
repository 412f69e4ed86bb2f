/** Computed hints in words: how many changes, then where, then which; and what cannot be done at all. */
import type { Bench, Check } from '../engine';
import { placesOf, socketsAt, type ChangeSet, type Search, type Spare } from '../exercises';
import { pairWords } from './checks';
import { andOf, sentence, socketName, textName, wireName } from './names';
import { numberWords } from './numbers';

/** 1 how many, 2 where, 3 which. */
export type HintStep = 1 | 2 | 3;

const counted = (n: number, what: string): string =>
	`${numberWords(n)} ${what}${n === 1 ? '' : 's'}`;

function howMany(changes: number): string {
	if (changes === 0) return 'Nothing needs to change: this wiring does all that is asked.';
	const does = changes === 1 ? 'does' : 'do';
	return sentence(
		`${counted(changes, 'change')} ${does} it, and no fewer. A jumper out is one change, a jumper in is one`
	);
}

function where(bench: Bench, set: ChangeSet): string {
	const sockets = socketsAt(set);
	if (bench.sockets.length > 1 && sockets.length > 1)
		return sentence(`look at ${andOf(sockets.map((id) => socketName(bench, id)))}`);
	return sentence(`look at ${andOf(placesOf(set).map((node) => textName(bench, node)))}`);
}

function which(bench: Bench, { out, in: put }: ChangeSet): string[] {
	const between = (from: string, to: string) =>
		`${textName(bench, from)} to ${textName(bench, to)}`;
	return [
		...out.map((w) => sentence(`take out ${wireName(bench, w.id)}, ${between(w.from, w.to)}`)),
		...put.map(([from, to]) => sentence(`put in a jumper from ${between(from, to)}`))
	];
}

function conflictWords(bench: Bench, conflict: readonly Check[]): string[] {
	const lines = conflict.map((check) => sentence(pairWords(bench, check)));
	return conflict.length === 1
		? [
				'No wiring does this, for the plugs, the cables and the socket itself stand against it:',
				...lines
			]
		: ['No wiring does all of this at once:', ...lines];
}

/**
 * A computed hint up to that step, one sentence an entry. The bench must hold the wires that the search
 * began with.
 */
export function hintWords(bench: Bench, search: Search, step: HintStep): string[] {
	if (search.kind === 'impossible') return conflictWords(bench, search.conflict);
	if (search.kind === 'gave-up')
		return [
			sentence(
				`it takes ${counted(search.atLeast, 'change')} or more; this bench is too large to say how many`
			)
		];
	const [set] = search.sets;
	const words = [howMany(search.changes)];
	if (!set || search.changes === 0) return words;
	if (step > 1) words.push(where(bench, set));
	if (step > 2) words.push(...which(bench, set));
	return words;
}

/** After success: `Your nine jumpers work; seven would do.` */
export const spareWords = ({ used, fewest }: Spare): string =>
	`Your ${counted(used, 'jumper')} work; ${numberWords(fewest)} would do.`;
