/**
 * What one entry of an exercise says about another, kind by kind. Each gate throws, or gives its
 * fields. The screens run them for every exercise at the start, so what takes long is in `proofs.ts`.
 */
import { faultListOf, probeNodes } from '../diagnosis';
import {
	SOCKETS,
	checkBench,
	checksOf,
	fits,
	splitNode,
	strangeRequirement,
	type Bench,
	type Wire
} from '../engine';
import type {
	ChooseExercise,
	FindExercise,
	NameExercise,
	OrderExercise,
	PredictExercise,
	PutRightExercise,
	Sign,
	ToldSymptom,
	WireExercise
} from './exercise';
import { fail, need, needAmong, needDifferent, needNodes, needPair, needShown } from './gate';
import { failuresOf } from './needs';
import { contactsToName } from './name';
import { CONSEQUENCES } from './procedure';
import { samePair } from './same';
import type { Shape } from './shapes';

const pairKey = ([a, b]: readonly [string, string]): string => [a, b].sort().join(' ');
const isPair = (sign: Sign, [a, b]: readonly [string, string]): boolean =>
	samePair([String(sign[0]), String(sign[1])], [a, b]);

/** At least four pairs in all, so that an answer is never bare yes or no. */
export function predictOf(
	shape: Shape<'predict'>,
	bench: Bench
): Pick<PredictExercise, 'questions'> {
	const { questions } = shape;
	for (const [i, { state, pairs }] of questions.entries()) {
		const at = `$.questions[${i}]`;
		needNodes(bench, state, pairs, `${at}.pairs`, `${at}.state`);
		needDifferent(pairs.map(pairKey), `${at}.pairs`, 'pair');
	}
	if (questions.flatMap((q) => q.pairs).length < 4)
		fail('$.questions', 'ask for four pairs or more in all: less is nearly yes or no');
	needShown(shape.beliefs, (sign) =>
		questions.some(
			({ pairs }, i) =>
				(sign[2] === undefined || sign[2] === i) && pairs.some((p) => isPair(sign, p))
		)
	);
	return { questions };
}

/** Wires through the engine's gate: they stand on the exercise's bench in place of its own. */
export function wiresOf(
	benchFile: object,
	value: readonly unknown[],
	path: string
): readonly Wire[] {
	return need(checkBench({ ...benchFile, wires: value }), '$.wires', path).wires;
}

/** The learner's wires are plain copper: a fault of the bench may not act on them. */
function needGoodWires(bench: Bench) {
	const i = bench.faults.findIndex(
		(f) =>
			f.kind === 'swap' || ((f.kind === 'open' || f.kind === 'resistive') && !f.wire.includes(':'))
	);
	if (i >= 0)
		fail(
			`$.bench.faults[${i}]`,
			'where wires are soldered no fault may act on them; draw it as wires'
		);
}

function needOwnWires(wires: readonly Wire[], mayWire: readonly string[], path: string) {
	for (const [i, w] of wires.entries())
		for (const end of ['from', 'to'] as const)
			if (!mayWire.includes(splitNode(w[end])[0]))
				fail(`${path}[${i}].${end}`, 'this wire leaves the sockets of mayWire; make it a cable');
}

export function wiringOf(
	shape: Shape<'wire'> | Shape<'put-right'>,
	bench: Bench
): Pick<WireExercise, 'mayWire' | 'require' | 'solution'> {
	const { mayWire, require } = shape;
	const sockets = bench.sockets.map((s) => s.id);
	needAmong(mayWire, sockets, '$.mayWire', (id) => `the bench has no socket "${id}"`);
	const strange = strangeRequirement(bench, require);
	if (strange) need(strange);
	needGoodWires(bench);
	needOwnWires(bench.wires, mayWire, '$.bench.wires');
	const checked = require.flatMap((r) => checksOf(r).map((c) => c.pair));
	needShown(shape.beliefs, (sign) => checked.some((p) => isPair(sign, p)));
	return { mayWire, require, solution: wiresOf(shape.bench, shape.solution, '$.solution') };
}

export function putRightOf(
	shape: Shape<'put-right'>,
	bench: Bench
): Pick<PutRightExercise, 'mayWire' | 'require' | 'solution' | 'allow'> {
	if (bench.wires.length === 0) fail('$.bench.wires', 'there is nothing to put right');
	return { ...wiringOf(shape, bench), allow: shape.allow };
}

/** Every reading that is told of, and every place to keep off, is there. */
function symptomOf({ symptom }: Shape<'find'>, bench: Bench): ToldSymptom {
	const { told, kinds, keepOff } = symptom;
	for (const [i, { readings }] of told.entries())
		for (const [k, { when, pair }] of readings.entries()) {
			const path = `$.symptom.told[${i}].readings[${k}]`;
			needPair(bench, when, pair, `${path}.pair`, `${path}.when`);
		}
	const nodes = probeNodes(bench);
	const off = keepOff?.off ?? [];
	for (const [i, place] of off.entries())
		for (const name of typeof place === 'string' ? [place] : place)
			if (!nodes.includes(name))
				fail(`$.symptom.keepOff.off[${i}]`, `no probe can be put on "${name}"`);
	return {
		told,
		kinds: kinds?.among ?? null,
		kindsSay: kinds?.says ?? '',
		keepOff: off,
		keepOffSays: keepOff?.says ?? ''
	};
}

export function findOf(
	shape: Shape<'find'>,
	bench: Bench
): Pick<FindExercise, 'hidden' | 'symptom' | 'most' | 'solution'> {
	const { hidden, most, solution } = shape;
	const at = `$.faults[${bench.faults.length}]`;
	need(checkBench({ ...shape.bench, faults: [...bench.faults, hidden] }), at, '$.hidden');
	for (const [i, { when, pair }] of solution.probes.entries()) {
		const path = `$.solution.probes[${i}]`;
		needPair(bench, when, pair, `${path}.pair`, `${path}.when`);
	}
	needShown(shape.beliefs, () => false, faultListOf(bench));
	return { hidden, symptom: symptomOf(shape, bench), most, solution: solution.probes };
}

export function chooseOf(
	shape: Shape<'choose'>,
	bench: Bench
): Pick<ChooseExercise, 'need' | 'needs' | 'options'> {
	const { options, needs } = shape;
	const ids = options.map((o) => o.id);
	const sockets = bench.sockets.map((s) => s.id);
	needDifferent(ids, '$.options', 'id');
	for (const [i, o] of options.entries())
		needAmong(
			o.sockets,
			sockets,
			`$.options[${i}].sockets`,
			(id) => `the bench has no socket "${id}"`
		);
	const fails = options.map((o) => failuresOf(bench, o, needs));
	if (!fails.some((f) => f.length === 0)) fail('$.options', 'none of them meets the need');
	if (!fails.some((f) => f.length > 0)) fail('$.options', 'all of them meet the need');
	const idle = needs.findIndex((n) => !fails.flat().some((f) => f.need === n));
	if (idle >= 0) fail(`$.needs[${idle}]`, 'no option fails this need, so it decides nothing');
	needShown(shape.beliefs, (sign) => sign.length === 1 && ids.includes(String(sign[0])));
	return { need: shape.need, needs, options };
}

export function nameOf(
	shape: Shape<'name'>,
	bench: Bench
): Pick<NameExercise, 'socket' | 'candidates' | 'lugs' | 'most' | 'plugs'> {
	const { socket, candidates, lugs, most, plugs } = shape;
	const own = bench.sockets.find((s) => s.id === socket);
	if (!own) return fail('$.socket', `the bench has no socket "${socket}"`);
	const { contacts } = SOCKETS[own.kind];
	for (const [lug, contact] of Object.entries(lugs))
		if (!contacts.includes(contact)) fail(`$.lugs.${lug}`, `there is no contact "${contact}"`);
	if (Object.keys(lugs).length < 3) fail('$.lugs', 'leave three lugs or more unmarked');
	needDifferent(Object.values(lugs), '$.lugs', 'contact');
	if (!candidates.includes(own.kind))
		fail('$.candidates', `the socket is a ${own.kind}; name it among the candidates`);
	needDifferent(candidates, '$.candidates', 'kind');
	const i = plugs.findIndex((p) => !fits(p, own.kind));
	if (i >= 0) fail(`$.plugs[${i}]`, `a ${plugs[i]} plug does not go into a ${own.kind}`);
	const wired = [
		...bench.wires.flatMap((w) => [w.from, w.to]),
		...bench.cables.flatMap((c) => c.cores.flat())
	];
	if (candidates.length > 1 && wired.some((n) => splitNode(n)[0] === socket))
		fail('$.candidates', 'a socket of unknown kind must have nothing soldered to it');
	const exercise = { ...shape, bench } as unknown as NameExercise;
	const names = candidates.flatMap((k) => contactsToName(exercise, k));
	needShown(
		shape.beliefs,
		([contact, called]) =>
			Object.values(lugs).includes(String(contact)) && names.includes(String(called))
	);
	return { socket, candidates, lugs, most, plugs };
}

export function orderOf(
	shape: Shape<'order'>,
	bench: Bench
): Pick<OrderExercise, 'steps' | 'rules' | 'probes' | 'solution'> {
	const { steps, rules, probes, solution } = shape;
	const ids = steps.map((s) => s.id);
	const needed = steps.filter((s) => s.needed).map((s) => s.id);
	needPair(bench, {}, probes, '$.probes');
	needDifferent(ids, '$.steps', 'id');
	for (const [i, r] of rules.entries())
		for (const end of ['first', 'then'] as const)
			if (!needed.includes(r[end]))
				fail(`$.rules[${i}].${end}`, `there is no needed step "${r[end]}"`);
	needDifferent(
		rules.map((r) => `${r.first} ${r.then}`),
		'$.rules',
		'rule'
	);
	needDifferent(solution, '$.solution', 'step');
	needAmong(solution, needed, '$.solution', (id) => `there is no needed step "${id}"`);
	const kinds: readonly string[] = CONSEQUENCES;
	needShown(shape.beliefs, (sign) =>
		sign.length === 1
			? kinds.includes(String(sign[0]))
			: rules.some((r) => r.first === sign[0] && r.then === sign[1])
	);
	return { steps, rules, probes, solution };
}
