/** Names for unmarked lugs, in words: a lug is called by its letter until it is named. */
import { lugOfNode, type Answer, type Item, type NameExercise, type Naming } from '../exercises';
import { kindWords } from './kinds';
import { andOf, contactText, sentence, textName, whenWords } from './names';

/** `lug a` for an unmarked lug, and what `textName` says of anything else. */
export function lugText(exercise: NameExercise, node: string): string {
	const lug = lugOfNode(exercise, node);
	return lug === null ? textName(exercise.bench, node) : `lug ${lug}`;
}

/** A reading that speaks against a name: what the two do, and what they would do if so named. */
export function nameItemWords(exercise: NameExercise, answer: Answer, item: Item): string {
	const { bench } = exercise;
	const names = answer.kind === 'name' ? answer.names : {};
	const called = item.pair.flatMap((node) => {
		const lug = lugOfNode(exercise, node);
		return lug !== null && names[lug] ? [`lug ${lug} were ${contactText(names[lug])}`] : [];
	});
	const [a, b] = item.pair.map((node) => lugText(exercise, node));
	const does = item.wanted === 'sounds' ? 'sound' : 'are silent';
	const would = item.wanted === 'sounds' ? 'be silent' : 'sound';
	return sentence(
		`${whenWords(bench, item.when)}, ${a} and ${b} ${does}; if ${andOf(called)}, they would ${would}`
	);
}

const readings = (n: number): string => `${n} ${n === 1 ? 'reading' : 'readings'}`;

function countWords({ used, most, par }: Naming): string {
	const over = most !== null && used > most ? `, ${used - most} more than allowed` : '';
	const bound = used > par ? ` No plan can be sure with fewer than ${readings(par)}.` : '';
	return `You took ${readings(used)}${over}.${bound}`;
}

/** `told`: whether the answer may be told. The result: how many lugs are rightly named, the kind, what cannot be told apart, and the count of readings. */
export function namingHeadline(exercise: NameExercise, naming: Naming, told = true): string[] {
	const { lugs, kindCalled, kindRight, alike } = naming;
	const right = lugs.filter((l) => l.right).length;
	const own = exercise.bench.sockets.find((s) => s.id === exercise.socket)!;
	const headline =
		right === lugs.length
			? `All ${lugs.length} lugs are rightly named.`
			: `${right} of ${lugs.length} lugs are rightly named.`;
	const kind =
		exercise.candidates.length > 1 && !kindRight
			? [
					sentence(
						`${kindCalled ? 'it is of another kind' : 'you did not say of which kind it is'}${told ? `: ${kindWords(own.kind).name}` : ''}`
					)
				]
			: [];
	const same = alike.map((set) =>
		sentence(`no reading here can tell ${andOf(set.map((lug) => `lug ${lug}`))} apart`)
	);
	return [headline, ...kind, ...same, countWords(naming)];
}

/** One sentence on a lug: what it was called and, if that is told, what it is. */
export function lugWords(
	{ lug, contact, called, right }: Naming['lugs'][number],
	told = true
): string {
	if (right) return sentence(`lug ${lug} is ${contactText(called ?? contact)}, as you said`);
	if (!told)
		return sentence(
			called === null ? `lug ${lug} has no name yet` : `lug ${lug} is not ${contactText(called)}`
		);
	return called === null
		? sentence(`lug ${lug} has no name yet; it is ${contactText(contact)}`)
		: sentence(`lug ${lug} is ${contactText(contact)}, and you called it ${contactText(called)}`);
}
