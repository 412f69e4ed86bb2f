/** The proofs bite: an exercise that is broken in one way has just that problem. */
import { describe, expect, it } from 'vitest';
import { readExercises } from './content.node';
import type { ExerciseKind, ExerciseOf } from './exercise';
import {
	beliefProblems,
	kindProblems,
	ordersKeeping,
	solutionProblems,
	startProblems,
	wrongProblems
} from './proofs';

const IDS = {
	predict: 'predict-ts-in-nine',
	wire: 'wire-one-cable-six',
	'put-right': 'put-right-sleeve-cup',
	find: 'find-fault-in-six',
	choose: 'choose-one-opening',
	name: 'name-lugs-of-five',
	order: 'order-test-the-line'
} as const satisfies Record<ExerciseKind, string>;
const all = readExercises();
const of = <K extends ExerciseKind>(kind: K) =>
	all.find((e) => e.id === IDS[kind]) as ExerciseOf<K>;

describe('a start that passes is found', () => {
	it('in a wiring that is done already', () => {
		const wire = of('wire');
		const done = { ...wire, bench: { ...wire.bench, wires: wire.solution } };
		expect(startProblems(wire)).toEqual([]);
		expect(startProblems(done)).toHaveLength(1);
	});
	it('in a prediction where nothing sounds', () => {
		const predict = of('predict');
		const pairs = predict.questions[0]!.pairs.filter(([a, b]) => a === 'A.T' && b !== 'A.R');
		const silent = { ...predict, questions: [{ state: predict.questions[0]!.state, pairs }] };
		expect(startProblems(silent)).toHaveLength(1);
		expect(kindProblems(silent)).toEqual(['no pair sounds, so whoever ticks nothing is right']);
	});
});

describe('a solution that does not do is found', () => {
	it('in a wiring', () => {
		const wire = of('wire');
		expect(solutionProblems({ ...wire, solution: wire.solution.slice(1) })).toHaveLength(1);
	});
	it('in a mending with more changes than it needs', () => {
		const mend = of('put-right');
		const spare = { ...mend.solution[0]!, id: 'spare' };
		expect(solutionProblems({ ...mend, solution: [...mend.solution, spare] })).toHaveLength(1);
	});
	it('in a hunt whose readings prove nothing', () => {
		const find = of('find');
		expect(solutionProblems({ ...find, solution: find.solution.slice(0, 2) })).toHaveLength(1);
	});
	it('in an order that breaks a rule', () => {
		const order = of('order');
		expect(solutionProblems({ ...order, solution: [...order.solution].reverse() })).toHaveLength(1);
	});
});

describe('a wrong answer is found out', () => {
	const wire = of('wire');
	const [crossed, lug] = wire.wrong as [(typeof wire.wrong)[0], (typeof wire.wrong)[0]];
	it('when it is right', () => {
		const right = { ...crossed, answer: { kind: 'wire', wires: wire.solution } as const };
		expect(wrongProblems(wire, right)).toContain('it scores 1');
	});
	it('when the judge says something else of it', () => {
		const says = [{ pair: ['A.1', 'A.S'], wanted: 'joined' } as const];
		expect(wrongProblems(wire, { ...crossed, says })).toHaveLength(1);
	});
	it('when it is unsafe and does not say so, or says so and is not', () => {
		expect(wrongProblems(wire, { ...lug, unsafe: false })).toHaveLength(1);
		expect(wrongProblems(wire, { ...crossed, unsafe: true })).toHaveLength(1);
	});
	it('when it cannot be judged', () => {
		const answer = { kind: 'wire', wires: [{ ...wire.solution[0]!, to: 'A.X' }] } as const;
		expect(wrongProblems(wire, { ...crossed, answer })[0]).toContain('cannot be judged');
	});
});

it('a belief that no wrong answer shows is found', () => {
	const predict = of('predict');
	const wrong = predict.wrong.slice(2);
	expect(beliefProblems({ ...predict, wrong })).toEqual([
		'no wrong answer shows the belief plug-feeds-normals',
		'no wrong answer shows the belief ts-leaves-ring-alone'
	]);
});

describe('of its kind', () => {
	it('a wiring without a hazard is found', () => {
		const wire = of('wire');
		const require = wire.require.map((r) => ({ ...r, hazard: false }));
		expect(kindProblems({ ...wire, require })).toHaveLength(1);
	});
	it('a hidden fault that no probe shows, or that nobody can name, is found', () => {
		const find = of('find');
		const bent = { ...find, hidden: { kind: 'spring-bent', contact: 'A.T' } } as const;
		expect(kindProblems(bent)).toContain('no probe can tell the hidden fault from a sound bench');
		const dirty = { ...find, hidden: { kind: 'resistive', wire: 'w1', ohms: 5 } } as const;
		expect(kindProblems(dirty).length).toBeGreaterThan(0);
	});
	it('an order whose rules leave something out is found', () => {
		const order = of('order');
		const rules = order.rules.filter((r) => r.first !== 'wait');
		expect(kindProblems({ ...order, rules })[0]).toContain('an order that keeps every rule');
	});
	it('lugs that no reading tells apart are found', () => {
		const name = of('name');
		const sockets = [{ ...name.bench.sockets[0]!, kind: 'hybrid-6' as const }];
		const lugs = { a: '1', b: '2', c: '3', d: 'T', e: 'R', f: 'S', g: 'G' };
		const bench = { ...name.bench, sockets, plugs: [] };
		const blind = { ...name, bench, lugs, plugs: [], candidates: ['hybrid-6' as const] };
		expect(kindProblems(blind)).toHaveLength(1);
		expect(kindProblems({ ...blind, plugs: ['ts'] })).toEqual([]);
	});
	it('every good one has no problem', () => {
		for (const kind of Object.keys(IDS) as ExerciseKind[])
			expect(kindProblems(of(kind))).toEqual([]);
	});
});

describe('orders that keep the rules', () => {
	const rule = (first: string, then: string) => ({ first, then, why: '' });
	it('are all of them where there are no rules, and one where each step has a rule', () => {
		expect(ordersKeeping(['a', 'b', 'c'], [], 100)).toHaveLength(6);
		expect(ordersKeeping(['c', 'a', 'b'], [rule('a', 'b'), rule('b', 'c')], 100)).toEqual([
			['a', 'b', 'c']
		]);
		expect(ordersKeeping(['a', 'b', 'c'], [rule('a', 'c')], 100)).toHaveLength(3);
	});
	it('are none where the rules go in a circle', () =>
		expect(ordersKeeping(['a', 'b'], [rule('a', 'b'), rule('b', 'a')], 100)).toEqual([]));
	it('are no more than asked for', () =>
		expect(ordersKeeping(['a', 'b', 'c', 'd'], [], 5)).toHaveLength(5));
});
