/**
 * The judge: an exercise and an answer in, a result out. Pure; the screens, the tests and the command
 * line call the same function, and it asks the same engine as the meter.
 */
import { judgeChoice } from './choose';
import type { Belief, Exercise, Sign } from './exercise';
import { judgeHunt } from './find';
import type { Answer, Item, Judged } from './judged';
import { judgeNames } from './name';
import { judgeOrder } from './order';
import { judgePrediction } from './predict';
import { judgeMending } from './putRight';
import { refuse, type Result } from './result';
import { faultKey, samePair } from './same';
import { judgeWiring } from './wire';

/** A wrong item shows a sign if it is its pair, in its question if it names one, and was not a guess. */
const isShownBy = (item: Item, [a, b, question]: Sign): boolean =>
	!item.right &&
	item.sure !== false &&
	samePair(item.pair, [String(a), String(b)]) &&
	(question === undefined || question === item.question);

function isShown(sign: Sign, { items, choose, name, order }: Judged): boolean {
	const [first, second] = sign;
	if (choose) return choose.options.some((o) => o.id === first && !o.right);
	if (name) return name.lugs.some((l) => !l.right && l.contact === first && l.called === second);
	if (order)
		return second === undefined
			? order.consequences.some((c) => c.kind === first)
			: order.rules.some(({ rule, kept }) => !kept && rule.first === first && rule.then === second);
	return items.some((item) => isShownBy(item, sign));
}

const failKey = ({ when, pair, wanted }: Item): string => JSON.stringify([when, pair, wanted]);
const mistakes = ({ items }: Judged): string =>
	items.flatMap((i) => (i.right ? [] : [failKey(i)])).join();
const calledOf = ({ name }: Judged): string => JSON.stringify(name?.lugs.map((l) => l.called));
const chosenOf = ({ choose }: Judged): string =>
	JSON.stringify(choose?.options.map((o) => o.chosen));

/** Whether an answer is wrong as that wrong answer of the exercise is. */
function isLike(judged: Judged, wrong: Judged): boolean {
	if (judged.name) return calledOf(judged) === calledOf(wrong);
	if (judged.choose) return chosenOf(judged) === chosenOf(wrong);
	if (judged.order) return judged.order.missing.every((id) => wrong.order!.missing.includes(id));
	return mistakes(judged) === mistakes(wrong);
}

/**
 * Whether the sign is the learner's own doing, and not what an unfinished answer lacks: something that
 * was joined, heard or chosen and should not be, and that was not so on the bench that was given.
 */
function isDone(exercise: Exercise, sign: Sign, judged: Judged): boolean {
	if (exercise.kind === 'predict') return true;
	if (judged.choose) return judged.choose.options.some((o) => o.id === sign[0] && o.chosen);
	if (exercise.kind !== 'wire' && exercise.kind !== 'put-right') return false;
	const given = judgeWiring(exercise, exercise.bench.wires);
	const before = (given.items ?? []).filter((i) => !i.right).map(failKey);
	return judged.items.some(
		(i) =>
			isShownBy(i, sign) &&
			i.wanted !== 'joined' &&
			i.found !== 'deaf' &&
			!before.includes(failKey(i))
	);
}

/** Whether a wrong answer of the exercise carries the sign, and this answer is wrong in the same way. */
const isKnown = (exercise: Exercise, sign: Sign, judged: Judged): boolean =>
	exercise.wrong.some(({ answer }) => {
		const wrong = judgedOf(exercise, answer);
		return isShown(sign, wrong) && isLike(judged, wrong);
	});

/** Whether the answer says nothing at all. */
const isEmpty = (answer: Answer): boolean =>
	(answer.kind === 'predict' && answer.ticked.length === 0) ||
	(answer.kind === 'choose' && answer.chosen.length === 0) ||
	(answer.kind === 'order' && answer.order.length === 0);

/** Whether the mistakes show the belief: one of its signs is there, or one of its faults was named. */
function showsBelief(exercise: Exercise, belief: Belief, judged: Judged): boolean {
	const { find } = judged;
	const named = find?.named && !find.found ? faultKey(find.named) : null;
	return (
		belief.shownBy.some(
			(sign) =>
				isShown(sign, judged) && (isDone(exercise, sign, judged) || isKnown(exercise, sign, judged))
		) || belief.shownByNaming.some((f) => faultKey(f) === named)
	);
}

function resultOf(exercise: Exercise, answer: Answer): Result {
	if (exercise.kind === 'predict' && answer.kind === 'predict')
		return judgePrediction(exercise, answer.ticked, answer.unsure ?? []);
	if (exercise.kind === 'wire' && answer.kind === 'wire')
		return judgeWiring(exercise, answer.wires);
	if (exercise.kind === 'put-right' && answer.kind === 'put-right')
		return judgeMending(exercise, answer.wires);
	if (exercise.kind === 'find' && answer.kind === 'find')
		return judgeHunt(exercise, answer.fault, answer.probes);
	if (exercise.kind === 'choose' && answer.kind === 'choose')
		return judgeChoice(exercise, answer.chosen);
	if (exercise.kind === 'name' && answer.kind === 'name')
		return judgeNames(exercise, answer.names, answer.socketKind, answer.probes);
	if (exercise.kind === 'order' && answer.kind === 'order')
		return judgeOrder(exercise, answer.order);
	return refuse(
		`this is the answer of a ${answer.kind} exercise, and ${exercise.id} is a ${exercise.kind} exercise`
	);
}

/** The result without the beliefs that it shows. */
function judgedOf(exercise: Exercise, answer: Answer): Judged {
	const result = resultOf(exercise, answer);
	const { id, kind } = exercise;
	return {
		unsafe: false,
		items: [],
		refused: null,
		...result,
		id,
		kind,
		score: Number(result.score.toFixed(4)),
		beliefs: []
	};
}

/** Judges an answer. Never throws; an answer that cannot be judged has `refused` and score 0. */
export function judge(exercise: Exercise, answer: Answer): Judged {
	const judged = judgedOf(exercise, answer);
	if (judged.passed || judged.refused !== null || isEmpty(answer)) return judged;
	const shown = exercise.beliefs.filter((b) => showsBelief(exercise, b, judged));
	return { ...judged, beliefs: shown.map((b) => b.id) };
}
