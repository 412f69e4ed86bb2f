/** Choosing a fault: every fault once, in groups with different words, none of them long. */
import { describe, expect, it } from 'vitest';
import type { FaultKind } from '../engine';
import { faultsToName } from '../exercises';
import { readExercises } from '../exercises/content.node';
import { FAULT_KIND_CHOICES, faultGroups } from './faultChoices';

const hunts = readExercises().filter((e) => e.kind === 'find');

describe.each(hunts.map((e) => [e.id, e] as const))('the faults of %s', (_, exercise) => {
	const { bench } = exercise;
	const list = faultsToName(exercise);
	const kinds = [...new Set(list.map((f) => f.kind))];
	it.each(kinds)('of kind %s stand in their groups, each once', (kind: FaultKind) => {
		expect(FAULT_KIND_CHOICES[kind]).not.toBe('');
		const faults = list.filter((f) => f.kind === kind);
		const groups = faultGroups(bench, faults);
		const choices = groups.flatMap((g) => g.choices);
		expect(new Set(choices.map((c) => c.fault))).toEqual(new Set(faults));
		expect(choices).toHaveLength(faults.length);
		const names = groups.map((g) => g.name);
		expect(new Set(names).size).toBe(names.length);
		for (const { name, choices: own } of groups) {
			expect(name === '').toBe(groups.length === 1);
			expect(new Set(own.map((c) => c.words)).size).toBe(own.length);
			expect(own.length).toBeLessThanOrEqual(10);
			for (const { words } of own) expect(words.length).toBeLessThanOrEqual(56);
		}
	});
});

describe('where a fault is', () => {
	const of = (id: string) => hunts.find((e) => e.id === id)!;
	const groupsOf = (id: string, kind: FaultKind) =>
		faultGroups(
			of(id).bench,
			faultsToName(of(id)).filter((f) => f.kind === kind)
		);
	it('is said with the ends of a wire or core, and by its cable', () => {
		const groups = groupsOf('find-lost-shield', 'open');
		expect(groups.map((g) => [g.name, g.choices.map((c) => c.words)])).toEqual([
			[
				'Jumpers and wires',
				['jumper w1: pin 2 to T', 'jumper w2: pin 3 to R', 'jumper w3: pin 1 to S']
			],
			[
				'Cable run',
				[
					'core 1: pin 1 to shield of DESK',
					'core 2: pin 2 to hot of DESK',
					'core 3: pin 3 to cold of DESK'
				]
			]
		]);
	});
	it('is said by the first of its two contacts where there are many pairs', () => {
		const [first] = groupsOf('find-splash-in-nine', 'bridge');
		expect(first!.name).toBe('pin 1 and another');
		expect(first!.choices[0]!.words).toBe('pin 1 and pin 2');
	});
	it('is said by socket where there are several', () =>
		expect(groupsOf('find-good-until-patched', 'bridge').map((g) => g.name)).toEqual([
			'Top',
			'Bottom'
		]));
});
