/** Everything that can be wrong with an answer of the course can be played, and the meter agrees with the judge. */
import { describe, expect, it } from 'vitest';
import { pathBetween, readMeter } from '../../engine';
import { judge, type Exercise, type Item } from '../../exercises';
import { readExercises } from '../../exercises/content.node';
import { wrongLines } from '../../words';
import { playOfLine, reachOf, shownOf, type Play } from './play';

const exercises = readExercises();
const answers = exercises.flatMap((exercise) =>
	exercise.wrong.map(({ name, answer }) => ({ exercise, name, answer }))
);
function playsOf(exercise: Exercise, answer: (typeof answers)[number]['answer']) {
	const judged = judge(exercise, answer);
	const failsOf = (id: string) => judged.choose?.options.find((o) => o.id === id)?.fails ?? [];
	return wrongLines(exercise, answer, judged).map((line) => ({
		line,
		play: playOfLine(exercise, answer, line, judged.items, failsOf)
	}));
}
/** What a meter or a net says of a played pair, in the judge's words. */
function isAsFound({ bench, pair }: Play, { wanted, found, right }: Item, kind: string): boolean {
	const sounds = readMeter(bench, 'continuity', ...pair!).beep;
	const joined = pathBetween(bench, ...pair!).kind === 'joined';
	if (kind === 'wire' || kind === 'put-right') return joined === (found === 'joined') && !right;
	// What is true of the bench is what was wanted: the learner expected the other.
	return sounds === (wanted === 'sounds');
}

describe('a wrong answer', () => {
	it('is played on a bench in every line that speaks of contacts', () => {
		const unplayed = answers
			.filter(({ exercise }) => exercise.kind !== 'order')
			.flatMap(({ exercise, name, answer }) =>
				playsOf(exercise, answer)
					.filter(({ play }) => play === null)
					.map(({ line }) => `${exercise.id}, ${name}: ${line.text}`)
			);
		expect(unplayed).toEqual([]);
	});
	it('is played as the judge had it', () => {
		const checked = answers.flatMap(({ exercise, answer }) =>
			playsOf(exercise, answer).flatMap(({ line, play }) => {
				const { item } = line;
				if (!item || !play?.pair || item.pair[0] !== play.pair[0]) return [];
				return [{ id: exercise.id, text: line.text, ok: isAsFound(play, item, exercise.kind) }];
			})
		);
		expect(checked.length).toBeGreaterThan(200);
		expect(checked.filter((c) => !c.ok)).toEqual([]);
	});
	it('shows two terminals for a source that is heard wrongly', () => {
		const ears = answers.flatMap(({ exercise, answer }) =>
			playsOf(exercise, answer).flatMap(({ line, play }) =>
				line.item && !line.item.pair[0].includes('.') && line.item.pair[0] !== 'panel'
					? [{ id: exercise.id, item: line.item, play: play! }]
					: []
			)
		);
		expect(ears.length).toBeGreaterThan(5);
		for (const { id, item, play } of ears) {
			expect(play.pair, `${id} ${item.pair.join(' ')}`).not.toBeNull();
			const joined = pathBetween(play.bench, ...play.pair!).kind === 'joined';
			if (item.wanted === 'deaf') expect(joined, id).toBe(true);
			// Either the way is cut, or the source is shorted and the short is shown.
			const [a, b] = play.pair!.map((node) => node.split('.')[0]);
			if (item.wanted === 'hears') expect(joined, id).toBe(a === b);
		}
	});
});

describe('the way between two nodes', () => {
	const bare = exercises.find((e) => e.id === 'predict-ts-in-nine')!.bench;
	it('lights conductor by conductor, and stops at the gap', () => {
		const open = pathBetween(bare, 'A.T', 'A.2');
		expect(open.kind).toBe('parted');
		expect(reachOf(open)).toBe(0);
		expect(shownOf(open, 0, ['A.T', 'A.2']).gaps).toEqual([['A.T', 'A.TN']]);
		const way = pathBetween(bare, 'A.R', 'A.S');
		expect(reachOf(way)).toBe(2);
		expect([...shownOf(way, 1, ['A.R', 'A.S']).lit.nodes]).toEqual(['A.R', 'lead.sleeve']);
		expect(shownOf(way, 2, ['A.R', 'A.S']).joints).toHaveLength(2);
	});
	it('marks the whole distance where nothing could join them', () =>
		expect(shownOf(pathBetween(bare, 'A.G', 'A.1'), 0, ['A.G', 'A.1'])).toMatchObject({
			gaps: [['A.G', 'A.1']]
		}));
});
