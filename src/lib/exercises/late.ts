/**
 * Exercises that pass their gate when they are opened, not before. A list of the course shows titles
 * and aims of all of them and opens one; running every gate first would keep a phone busy for a while.
 * That all of them pass is proven by content.test.ts. What the head says is taken from the file as it
 * stands; everything else is asked of the checked exercise, which is made once.
 */
import type { Exercise, ExerciseKind, ExerciseOf } from './exercise';

type Head = Pick<
	Exercise,
	'id' | 'kind' | 'unit' | 'place' | 'title' | 'aim' | 'why' | 'cautions' | 'sources' | 'hints'
>;
const HEAD = [
	...(['id', 'kind', 'unit', 'place', 'title', 'aim', 'why'] as const),
	...(['cautions', 'sources', 'hints'] as const)
] satisfies readonly (keyof Head)[];
/** Fields that every kind has and the gate makes. */
const MADE = ['bench', 'beliefs', 'wrong', 'text'] as const;
/** Fields of one kind only. */
const OWN: { readonly [K in ExerciseKind]: readonly (keyof ExerciseOf<K>)[] } = {
	predict: ['questions'],
	wire: ['mayWire', 'require', 'solution'],
	'put-right': ['mayWire', 'require', 'solution', 'allow'],
	find: ['hidden', 'symptom', 'most', 'solution'],
	choose: ['need', 'needs', 'options'],
	name: ['socket', 'candidates', 'lugs', 'most', 'plugs'],
	order: ['steps', 'rules', 'probes', 'solution']
};

/**
 * An exercise whose head is the file's and whose other fields are those of `open()`, called once and
 * when first needed. What `open` throws is thrown by the field that was asked for.
 */
export function lateExercise(file: unknown, open: () => Exercise): Exercise {
	const head = file as Head;
	let opened: Exercise | null = null;
	const get = (key: string): unknown => {
		opened ??= open();
		return opened[key as keyof Exercise];
	};
	const exercise = Object.fromEntries(HEAD.map((key) => [key, head[key]]));
	for (const key of [...MADE, ...OWN[head.kind]])
		Object.defineProperty(exercise, key, { enumerable: true, get: () => get(key) });
	// Safe: every field of this kind is there, by value or by getter.
	return exercise as unknown as Exercise;
}
