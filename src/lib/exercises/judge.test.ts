/**
 * The judge on the three exercises. What is right was worked out by hand from the wiring: with a TS
 * plug home every spring of the jack is lifted, its sleeve is on R and S, and jumpers stay jumpers.
 */
import { describe, expect, it } from 'vitest';
import { answerTo, classOf, fewestToProve, probesOf, suspectsOf, type Probe } from '../diagnosis';
import {
	EMPTY_BENCH,
	checkRequirements,
	isJoined,
	readMeter,
	scoreOf,
	withFaults,
	type Fault
} from '../engine';
import { answeredBench, replayBench, startAnswer, truthOf } from './answers';
import { readExercises, readTexts } from './content.node';
import type { FindExercise, PredictExercise, WireExercise } from './exercise';
import { faultsToName, hiddenClassOf } from './find';
import { judge } from './judge';
import { probesTaken, samePair } from './same';
import { isSaid } from './verdict';

const exercises = readExercises();
const byId = (id: string) => exercises.find((e) => e.id === id)!;
const predict = byId('predict-ts-in-nine') as PredictExercise;
const wire = byId('wire-one-cable-six') as WireExercise;
const find = byId('find-fault-in-six') as FindExercise;
const pair = (a: string, b: string) => [`A.${a}`, `A.${b}`] as const;
const SOUNDING = [pair('R', 'S'), pair('TN', '2'), pair('RN', '3'), pair('SN', '1')];

describe('predict', () => {
	const judged = (...ticked: (readonly [string, string])[]) =>
		judge(predict, { kind: 'predict', ticked });

	it('passes exactly the pairs that sound', () => {
		const result = judged(...SOUNDING);
		expect(result).toMatchObject({ score: 1, passed: true, refused: null, beliefs: [] });
		expect(result.items).toHaveLength(14);
	});
	it('takes a pair either way round', () =>
		expect(judged(...SOUNDING.map(([a, b]) => [b, a] as const)).passed).toBe(true));
	it('asks the meter, and the meter’s tone agrees with every item', () => {
		const bench = replayBench(predict, { kind: 'predict', ticked: [] }, judged().items[0]!);
		for (const item of judged().items)
			expect(readMeter(bench, 'continuity', ...item.pair)).toMatchObject({
				beep: item.wanted === 'sounds',
				warning: null
			});
	});
	it('scores right ticks over right, missed and false ones', () => {
		expect(judged().score).toBe(0);
		expect(judged(...SOUNDING.slice(0, 3)).score).toBe(0.75);
		expect(judged(...SOUNDING, pair('T', '2')).score).toBe(0.8);
		expect(judged(...predict.questions[0]!.pairs).score).toBe(0.2857);
		expect(judged(...SOUNDING, pair('T', '2')).passed).toBe(false);
	});
	it('knows the belief that the plug feeds the normals when its pairs are ticked', () => {
		expect(judged(...SOUNDING, pair('T', '2')).beliefs).toEqual(['plug-feeds-normals']);
		expect(judged(...SOUNDING.slice(1)).beliefs).toEqual(['ts-leaves-ring-alone']);
	});
	it('takes a wrong answer that was marked unsure for a guess, not for a belief', () => {
		const wrong = pair('T', '2');
		const sure = judge(predict, { kind: 'predict', ticked: [...SOUNDING, wrong], unsure: [] });
		const unsure = judge(predict, {
			kind: 'predict',
			ticked: [...SOUNDING, wrong],
			unsure: [wrong]
		});
		expect(sure.beliefs).toEqual(['plug-feeds-normals']);
		expect(unsure).toMatchObject({ score: sure.score, beliefs: [] });
		expect(unsure.items.filter((i) => !i.sure).map((i) => i.pair)).toEqual([wrong]);
	});
	it('counts how knowing and being sure went together', () => {
		const ticked = [...SOUNDING, pair('T', '2')];
		const unsure = [pair('2', 'T'), SOUNDING[0]!];
		expect(judge(predict, { kind: 'predict', ticked, unsure }).predict).toEqual({
			rightSure: 12,
			rightUnsure: 1,
			wrongSure: 0,
			wrongUnsure: 1
		});
	});
	it('asks each state by itself: the same pair may sound in one and be silent in the next', () => {
		const pairs = [pair('T', 'TN'), pair('TN', '2')];
		const states = [{ A: 'none' }, { A: 'lead' }];
		const questions = states.map((state) => ({ state, pairs }));
		const two: PredictExercise = { ...predict, questions };
		const right = [
			['A.T', 'A.TN'],
			['A.TN', 'A.2'],
			['A.2', 'A.TN', 1]
		] as const;
		const result = judge(two, { kind: 'predict', ticked: right });
		expect(result).toMatchObject({ score: 1, passed: true });
		expect(result.items.map((i) => [i.question, i.wanted])).toEqual([
			[0, 'sounds'],
			[0, 'sounds'],
			[1, 'silent'],
			[1, 'sounds']
		]);
		expect(judge(two, { kind: 'predict', ticked: right.slice(0, 2) }).score).toBe(0.6667);
	});
	it('shows a belief by a pair in one state only, where its sign names the state', () => {
		const pairs = [pair('T', 'TN'), pair('TN', '2')];
		const states = [{ A: 'none' }, { A: 'lead' }];
		const beliefs = [{ ...predict.beliefs[0]!, shownBy: [['A.T', 'A.TN', 1]] }];
		const questions = states.map((state) => ({ state, pairs }));
		const two: PredictExercise = { ...predict, questions, beliefs };
		expect(judge(two, { kind: 'predict', ticked: [] }).beliefs).toEqual([]);
		expect(judge(two, { kind: 'predict', ticked: [['A.T', 'A.TN', 1]] }).beliefs).toHaveLength(1);
	});
	it('refuses a pair that was not offered', () =>
		expect(judged(...SOUNDING, pair('T', '3'))).toMatchObject({ score: 0, passed: false }));
	it('keeps no answer in the file: other jumpers, other answers', () => {
		const bare = { ...predict, bench: { ...predict.bench, wires: [] } };
		const result = judge(bare, { kind: 'predict', ticked: [pair('R', 'S')] });
		expect(result.passed).toBe(true);
	});
});

describe('wire', () => {
	const judged = (wires: WireExercise['solution']) => judge(wire, { kind: 'wire', wires });
	it('does not pass as it starts', () => {
		const result = judged(wire.bench.wires);
		expect(result.passed).toBe(false);
		expect(result.score).toBeLessThan(0.7);
	});
	it('passes the solution with a full score', () =>
		expect(judged(wire.solution)).toMatchObject({ score: 1, passed: true, beliefs: [] }));
	it('passes any wiring that does the same: jumpers may go the other way round', () => {
		const wires = wire.solution.map((w) => ({ ...w, from: w.to, to: w.from }));
		expect(judged(wires).passed).toBe(true);
	});
	it.each(wire.wrong.map((w) => [w.name, w] as const))('fails %s, for that reason', (_, wrong) => {
		const result = judge(wire, wrong.answer);
		const failed = result.items.filter((i) => !i.right);
		expect(result.passed).toBe(false);
		expect(result.score).toBeLessThan(1);
		expect(result.score === 0).toBe(wrong.unsafe);
		for (const verdict of wrong.says) expect(isSaid(result, verdict)).toBe(true);
		for (const item of failed) {
			expect(item.found).not.toBe(item.wanted);
			expect(item.why).not.toBe('');
		}
	});
	it('finds polarity reversed, or nothing heard, where polarity was asked for', () => {
		const found = (wires: WireExercise['solution']) =>
			judged(wires).items.find((i) => i.wanted === 'polarity +' && i.pair[1] === 'LINE')!.found;
		expect(found(wire.wrong[0]!.answer.wires)).toBe('polarity -');
		expect(found([])).toBe('deaf');
		expect(found(wire.solution)).toBe('polarity +');
	});
	it('scores as the headless program does from the same file', () => {
		const json: unknown = JSON.parse(readTexts()[`04-one-cable/${wire.id}/exercise.json`]!);
		const require = checkRequirements(json);
		if (!require.ok) throw new Error(require.problem.message);
		for (const wires of [...wire.wrong.map((w) => w.answer.wires), wire.solution])
			expect(judged(wires).score).toBe(scoreOf({ ...wire.bench, wires }, require.value).score);
	});
	it('refuses wires that leave the socket, join nothing there is, or share an id', () => {
		const w = (from: string, to: string, id = 'x') => ({ id, from, to, awg: 26, mm: 40 });
		expect(judged([w('A.T', 'DESK.hot')]).refused).toContain('leaves the socket');
		expect(judged([w('A.T', 'A.TN')]).refused).toContain('no contact "TN"');
		expect(judged([w('A.T', 'A.2', 'run')]).refused).toContain('every id stands once');
		expect(judged([...wire.solution, w('A.G', 'panel', 'x')]).score).toBe(0);
	});
});

const THREE_PIN = { kind: 'three-pin-male' } as const;

describe('find', () => {
	const at = (a: string, b: string, when: Probe['when'] = {}): Probe => ({ when, pair: [a, b] });
	const OWN = [
		at('A.2', 'A.T'),
		at('A.3', 'A.T'),
		at('A.2', 'A.R'),
		at('A.2', 'DESK.hot'),
		at('A.3', 'DESK.hot')
	];
	const judged = (fault: Fault | null, probes: Probe[] = OWN) =>
		judge(find, { kind: 'find', fault, probes });
	const CROSSED_AT_JACK: Fault = { kind: 'swap', contacts: ['A.R', 'A.T'] };

	it('hides a fault that a meter can feel and that has a class of its own', () =>
		expect(classOf(find.bench, [find.hidden])).toEqual([find.hidden]));
	it('can be solved within its readings, and they prove it', () => {
		const result = judged(find.hidden);
		expect(OWN.length).toBeLessThanOrEqual(find.most);
		expect(result).toMatchObject({ score: 1, passed: true });
		expect(result.find).toMatchObject({ used: 5, found: true, proven: true });
		expect(result.find!.fitting).toEqual([find.hidden]);
	});
	it('cannot be told from crossed jumpers inside the socket', () => {
		const inside = probesOf(find.bench).filter((p) => p.pair.every((n) => n.startsWith('A.')));
		const fitting = judged(find.hidden, inside).find!.fitting;
		expect(fitting).toEqual(expect.arrayContaining([find.hidden, CROSSED_AT_JACK]));
	});
	it('accepts any fault of the same class', () => {
		// With two equal jumpers, one of them open is a thing no probe can tell from the other.
		const twin = {
			...find,
			bench: { ...find.bench, wires: [...find.bench.wires, { ...find.bench.wires[0]!, id: 'w4' }] },
			hidden: { kind: 'bridge', between: ['A.1', 'A.2'] } as const
		};
		const same: Fault = { kind: 'bridge', between: ['A.S', 'A.T'] };
		const probes = probesOf(twin.bench).slice(0, 400);
		const most = probes.length;
		const result = judge({ ...twin, most }, { kind: 'find', fault: same, probes });
		expect(result).toMatchObject({ score: 1, passed: true });
		expect(result.find!.alike).toHaveLength(4);
	});
	it('takes a pair of contacts either way round', () =>
		expect(judged({ kind: 'swap', contacts: ['A.3', 'A.2'] }).passed).toBe(true));
	it('fails another fault, and plays back the reading that speaks against it', () => {
		const result = judged(CROSSED_AT_JACK);
		expect(result).toMatchObject({ score: 0, passed: false, beliefs: ['crossed-means-jumpers'] });
		const [item] = result.items;
		expect(item).toMatchObject({ right: false, pair: ['A.2', 'DESK.hot'], wanted: 'silent' });
		const bench = replayBench(find, { kind: 'find', fault: null, probes: [] }, item!);
		expect(isJoined(bench, ...item!.pair)).toBe(false);
	});
	it.each(faultsToName(find).map((f) => [JSON.stringify(f), f] as const))(
		'judges %s rightly, and its item is true of the bench',
		(_, fault) => {
			const result = judged(fault, []);
			const isHidden = JSON.stringify(fault) === JSON.stringify(find.hidden);
			expect(result.find!.found).toBe(isHidden);
			expect(result.passed).toBe(false);
			const [item] = result.items;
			const bench = replayBench(find, { kind: 'find', fault, probes: [] }, item!);
			expect(readMeter(bench, 'continuity', ...item!.pair).beep).toBe(item!.wanted === 'sounds');
		}
	);
	it('fails "nothing is wrong", with a reading that shows otherwise', () => {
		const result = judged(null, []);
		expect(result.passed).toBe(false);
		expect(result.items).toHaveLength(1);
	});
	it('knows the shortest proof: no reading alone leaves only the hidden fault, and some two do', () => {
		const list = faultsToName(find).map((f) => withFaults(find.bench, [f]));
		const left = (probes: Probe[]) =>
			list.filter((b) => probes.every((p) => answerTo(b, p) === answerTo(truthOf(find), p)));
		expect(judged(find.hidden).find!.fewest).toBe(2);
		expect(probesOf(find.bench).some((p) => left([p]).length === 1)).toBe(false);
		const two = fewestToProve(
			suspectsOf(find.bench, find.symptom),
			hiddenClassOf(suspectsOf(find.bench, find.symptom), find)
		)!;
		expect(left(two)).toHaveLength(1);
	});
	it('gives half for the right fault with too many readings', () => {
		const many = [...OWN, ...probesOf(find.bench).slice(0, 10)];
		const result = judged(find.hidden, many);
		expect(result).toMatchObject({ score: 0.5, passed: false });
	});
	it('counts the same pair in the same plug state once', () => {
		const twice = [at('A.2', 'A.T'), at('A.T', 'A.2'), at('A.2', 'A.T', { A: 'none' })];
		expect(probesTaken(twice)).toHaveLength(2);
		expect(judged(find.hidden, [...OWN, ...OWN]).find!.used).toBe(5);
	});
	it('takes a right guess for a guess: no pass, and worth the chance that it had', () => {
		for (const exercise of exercises.filter((e) => e.kind === 'find')) {
			const { hidden } = exercise;
			const lucky = judge(exercise, { kind: 'find', fault: hidden, probes: [] });
			expect(lucky).toMatchObject({ passed: false, refused: null });
			const { found, proven, classes, chance } = lucky.find!;
			expect([found, proven]).toEqual([true, false]);
			expect(classes).toBeGreaterThan(1);
			expect(chance).toBeGreaterThan(0);
			expect(chance).toBeLessThan(1);
			expect(lucky.score).toBe(Number(chance.toFixed(4)));
		}
	});
	it('lets the chance of a guess grow with what is ruled out, up to a proof', () => {
		const steps = OWN.map((_, i) => judged(find.hidden, OWN.slice(0, i + 1)));
		const chances = steps.map((s) => s.find!.chance);
		expect(chances).toEqual([...chances].sort((a, b) => a - b));
		expect(steps.map((s) => s.passed)).toEqual(steps.map((s) => s.find!.classes === 1));
		expect(chances.at(-1)).toBe(1);
	});
	it('takes for proven what is left when all else is ruled out, since something is wrong', () => {
		const bench = { ...EMPTY_BENCH, sockets: [{ ...find.bench.sockets[0]!, ...THREE_PIN }] };
		const hidden = { kind: 'bridge', between: ['A.1', 'A.2'] } as const;
		const others = probesOf(bench).filter((p) => !samePair(p.pair, hidden.between));
		const hunt = { ...find, bench, hidden };
		const result = judge(hunt, { kind: 'find', fault: hidden, probes: others });
		expect(result.find).toMatchObject({ fitting: [hidden], proven: true });
	});
	it('counts what was told before the first reading', () => {
		const splash = exercises.find((e) => e.id === 'find-splash-in-nine') as FindExercise;
		const { hidden } = splash;
		const fitting = judge(splash, { kind: 'find', fault: hidden, probes: [] }).find!.fitting;
		expect(fitting).toHaveLength(6);
		for (const fault of fitting) {
			expect(fault.kind).toBe('bridge');
			const bench = withFaults(splash.bench, [fault]);
			const jack = ['T', 'R', 'S', 'TN', 'RN', 'SN'];
			expect(jack.some((c) => isJoined(bench, 'A.1', `A.${c}`))).toBe(true);
		}
		const blind = { ...splash, symptom: { ...splash.symptom, told: [], kinds: null } };
		const all = judge(blind, { kind: 'find', fault: hidden, probes: [] }).find!.fitting;
		expect(all).toEqual(faultsToName(splash));
	});
	it('shows no belief to whoever names the fault rightly', () => {
		const beliefs = [{ ...find.beliefs[0]!, shownByNaming: [find.hidden] }];
		const answer = { kind: 'find', fault: find.hidden, probes: [] } as const;
		expect(judge({ ...find, beliefs }, answer).beliefs).toEqual([]);
	});
	it('refuses a fault that this bench cannot have', () =>
		expect(judged({ kind: 'open', wire: 'w9' }).refused).toMatch(/not in the list/));
	it('hides the fault from the bench that is drawn, and not from the meter', () => {
		expect(find.bench.faults).toEqual([]);
		expect(truthOf(find).faults).toEqual([find.hidden]);
		const answer = { kind: 'find', fault: null, probes: [] } as const;
		expect(answeredBench(find, answer)).toEqual(truthOf(find));
	});
});

describe('a belief', () => {
	const mend = exercises.find((e) => e.id === 'put-right-sleeve-cup')!;
	const one = exercises.find((e) => e.id === 'choose-one-opening')!;
	it('is not shown by what was wrong before the learner came', () =>
		expect(judge(mend, startAnswer(mend)).beliefs).toEqual([]));
	it('is not shown by an empty answer', () =>
		expect(judge(one, { kind: 'choose', chosen: [] }).beliefs).toEqual([]));
	it('is not shown by wiring that is not finished', () =>
		expect(judge(wire, { kind: 'wire', wires: wire.solution.slice(0, 1) }).beliefs).toEqual([]));
	it('is shown by the wrong answer that carries it', () => {
		for (const { answer, says } of mend.wrong)
			for (const said of says)
				if ('belief' in said) expect(judge(mend, answer).beliefs).toContain(said.belief);
	});
});

describe('any exercise', () => {
	it('refuses an answer of another kind', () =>
		expect(judge(predict, { kind: 'wire', wires: [] })).toMatchObject({ score: 0, passed: false }));
	it('is judged the same twice, and is not changed by it', () => {
		const before = JSON.stringify(exercises);
		const answer = { kind: 'wire', wires: wire.wrong[0]!.answer.wires } as const;
		expect(judge(wire, answer)).toEqual(judge(wire, answer));
		expect(JSON.stringify(exercises)).toBe(before);
	});
});
