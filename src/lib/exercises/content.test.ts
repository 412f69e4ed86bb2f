/**
 * What is proven of every exercise of the course, folder by folder, so that one that is half written
 * fails alone: `npx vitest run src/lib/exercises/content.test.ts -t ID`.
 */
import { describe, expect, it } from 'vitest';
import { readTexts } from './content.node';
import { countLines, countOf } from './count';
import type { Exercise, WrongAnswer } from './exercise';
import {
	beliefProblems,
	kindProblems,
	solutionProblems,
	startProblems,
	wrongProblems
} from './proofs';
import { parseExercise } from './schema';
import { beliefsIn, exerciseIn, foldersOf, samePlace, sharedBy } from './shelf';
import { UNITS } from './shapes';
import { framesOf, meterIn, parseUnits } from './units';

const texts = readTexts();
const beliefs = beliefsIn(texts);
const folders = foldersOf(texts);
/** As many exercises as make a course; from then on every belief must be met three times. */
const WHOLE = 60;
const MEETINGS = 3;

/** The exercise of a folder; null where it is broken, which its own test tells. */
function tryExercise(folder: string): Exercise | null {
	const [json, text] = ['exercise.json', 'text.md'].map((f) => texts[`${folder}/${f}`] ?? '');
	const parsed = parseExercise(json!, text!, beliefs);
	return parsed.ok ? parsed.value : null;
}
const read = folders.map((folder) => [folder, tryExercise(folder)] as const);
const exercises = read.flatMap(([, e]) => (e ? [e] : []));

describe.each(read)('%s', (folder, exercise) => {
	it('passes the gate, and stands where it says', () =>
		expect(exerciseIn(folder, texts, beliefs).id).toBe(exercise?.id));
	if (!exercise) return;
	it('is not passed by whoever does nothing', () => expect(startProblems(exercise)).toEqual([]));
	it('is passed by its solution, with score 1', () =>
		expect(solutionProblems(exercise)).toEqual([]));
	const wrongs: readonly WrongAnswer[] = exercise.wrong;
	it.each(wrongs.map((w) => [w.name, w] as const))(
		'scores less for "%s", and says why',
		(_, wrong) => expect(wrongProblems(exercise, wrong)).toEqual([])
	);
	it('brings to light every belief that it names', () =>
		expect(beliefProblems(exercise)).toEqual([]));
	it('can be taught', () => expect(kindProblems(exercise)).toEqual([]));
	it('says of each source how well it is known', () => {
		const says = { STD: 'as reported', MEM: 'from memory' } as const;
		const silent = exercise.sources.filter(
			(s) => (s.flag === 'STD' || s.flag === 'MEM') && !s.source.includes(says[s.flag])
		);
		expect(silent).toEqual([]);
	});
	it('raises its voice nowhere', () =>
		expect(JSON.stringify({ ...exercise, bench: null })).not.toContain('!'));
	it('shares no caution, id or place with another exercise', () => {
		const others = exercises.filter((e) => e !== exercise);
		const { chassis, mains } = exercise.cautions;
		const taken = others.flatMap((e) => [e.id, e.cautions.chassis, e.cautions.mains]);
		expect([exercise.id, chassis, mains].filter((text) => taken.includes(text))).toEqual([]);
		const [same] = others.filter((e) => e.unit === exercise.unit && e.place === exercise.place);
		expect(same?.id).toBeUndefined();
	});
});

describe('the units', () => {
	const parsed = parseUnits(texts['units.json'] ?? '');
	it('pass the gate', () => expect(parsed).toMatchObject({ ok: true }));
	const units = parsed.ok ? parsed.value : [];
	it('are twelve', () => expect(units).toHaveLength(UNITS));
	it('give less help as they go on', () => {
		const helps = units.map((u) => u.help);
		expect(helps).toEqual([...helps].sort((a, b) => b - a));
		expect([helps[0], helps.at(-1)]).toEqual([3, 1]);
	});
	it.each(units.map((u) => [u.number, u] as const))(
		'unit %s opens with an example whose every step does what it says',
		(_, { worked }) => {
			const frames = framesOf(worked);
			const said = worked.steps.map((s) => s.expect ?? null);
			const done = frames.map((f, i) => (said[i] ? meterIn(f) : null));
			expect(done).toEqual(said);
			expect(said.filter((s) => s).length).toBeGreaterThan(1);
		}
	);
});

describe('the course', () => {
	it('has no caution, id or place twice', () => {
		expect(sharedBy(exercises)).toEqual([]);
		expect(samePlace(exercises)).toBeNull();
	});
	it(`brings every belief to light ${MEETINGS} times, once it has ${WHOLE} exercises`, () => {
		const met = (id: string) => exercises.filter((e) => e.beliefs.some((b) => b.id === id)).length;
		const rare = beliefs
			.map((b) => `${b.id}: ${met(b.id)}`)
			.filter((_, i) => met(beliefs[i]!.id) < MEETINGS);
		if (exercises.length >= WHOLE) expect(rare).toEqual([]);
		else expect(exercises.length).toBeLessThan(WHOLE);
	});
	it('is counted', () => {
		const numbers = Array.from({ length: UNITS }, (_, i) => i + 1);
		const count = countOf(
			exercises,
			numbers,
			beliefs.map((b) => b.id)
		);
		process.stdout.write(`course: ${countLines(count)[0]}\n`);
		expect(count.exercises).toBe(folders.length);
		expect(count.units.reduce((sum, u) => sum + u.exercises, 0)).toBe(count.exercises);
		expect(Object.values(count.kinds).reduce((sum, n) => sum + n, 0)).toBe(count.exercises);
		const met = exercises.reduce((sum, e) => sum + e.beliefs.length, 0);
		expect(Object.values(count.beliefs).reduce((sum, n) => sum + n, 0)).toBe(met);
		for (const n of Object.values(count.kinds)) expect(n).toBeGreaterThanOrEqual(MEETINGS);
	});
});
