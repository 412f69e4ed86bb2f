/** Judging a choice: which variants meet every need is computed, and so is what the others fail. */
import type { ChooseExercise } from './exercise';
import type { Judged, OptionJudged } from './judged';
import { failuresOf } from './needs';
import { refuse, type Result } from './result';

/** Ids of the options that meet every need. */
export const fittingOptions = ({ bench, needs, options }: ChooseExercise): string[] =>
	options.filter((o) => failuresOf(bench, o, needs).length === 0).map((o) => o.id);

export function judgeChoice(exercise: ChooseExercise, chosen: readonly string[]): Result {
	const strange = chosen.find((id) => !exercise.options.some((o) => o.id === id));
	if (strange !== undefined) return refuse(`"${strange}" is not among the variants`);
	const options = exercise.options.map((option): OptionJudged => {
		const fails = failuresOf(exercise.bench, option, exercise.needs);
		const isChosen = chosen.includes(option.id);
		const fits = fails.length === 0;
		return { id: option.id, chosen: isChosen, fits, right: isChosen === fits, fails };
	});
	const wrong = options.filter((o) => !o.right).length;
	const good = options.filter((o) => o.right && o.fits).length;
	const choose: NonNullable<Judged['choose']> = { options };
	const score = wrong === 0 ? 1 : good / (good + wrong);
	return { score, passed: wrong === 0, choose };
}
