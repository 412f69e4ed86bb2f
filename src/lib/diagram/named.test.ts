import { describe, expect, it } from 'vitest';
import { EMPTY_BENCH, type Bench } from '../engine';
import { litLive } from './lit';
import { named, type Named } from './named';
import { sectionOf, withPlugAt } from './section';

const bench: Bench = {
	...EMPTY_BENCH,
	sockets: [{ id: 'A', kind: 'hybrid-9', bush: 'insulated', label: '' }]
};
function marksAt(travel: number) {
	const plugged = withPlugAt(bench, 'A', 'trs', travel);
	return sectionOf(plugged, 'A', litLive(plugged, 'A')).marks;
}
const unlike = (a: readonly Named[], b: readonly Named[]): string[] =>
	b.filter((one, i) => one !== a[i]).map(({ name }) => name);

describe('names of marks', () => {
	it('are all different', () => {
		const all = named(marksAt(20), []);
		expect(all.map(({ mark }) => mark)).toEqual(marksAt(20));
		expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
	});

	it('keep the list where nothing has changed', () => {
		const before = named(marksAt(20), []);
		expect(named(marksAt(20), before)).toBe(before);
	});

	it('keep every mark that is as it was, and give the new ones the names that they would have alone', () => {
		let before: readonly Named[] = [];
		for (let travel = 0; travel <= 30.5; travel += 0.5) {
			const now = named(marksAt(travel), before);
			expect(now.map(({ name }) => name)).toEqual(named(marksAt(travel), []).map((n) => n.name));
			expect(now.map(({ mark }) => mark)).toEqual(marksAt(travel));
			before = now;
		}
	});

	it('touch what bends and no more', () => {
		const before = named(marksAt(24), []);
		const rest = named(marksAt(23.9), before);
		// Spring T hangs free before 26 mm and S lies on the sleeve: R alone rides in the plug's groove.
		const moved = unlike(before, rest).filter((name) => name.startsWith('spring'));
		expect(moved).toEqual(['spring A.R']);
	});

	it('know a contact that opens for the same one', () => {
		const before = named(marksAt(17.9), []);
		const name = 'seat A.RN';
		const at = (list: readonly Named[]) => list.find((one) => one.name === name)?.mark.role;
		expect(at(before)).toBe('seat-closed');
		expect(at(named(marksAt(25), before))).toBe('seat');
	});
});
