/** Worked examples: a step changes what it says and leaves the rest, and a broken one is refused in its place. */
import { describe, expect, it } from 'vitest';
import { readCourse, readTexts } from './content.node';
import { framesOf, meterIn, parseUnits } from './units';

const json = () => JSON.parse(readTexts()['units.json']!) as Record<string, never>[];
type Loose = { worked: { steps: Record<string, unknown>[] }; [key: string]: unknown };
/** The path of the problem after a change to the first unit; 'fine' if there is none. */
function pathAfter(change: (unit: Loose, all: unknown[]) => void): string {
	const units = json() as unknown as Loose[];
	change(units[0]!, units);
	const parsed = parseUnits(JSON.stringify(units));
	return parsed.ok ? 'fine' : parsed.problem.path;
}

describe('a worked example', () => {
	const { units } = readCourse();
	it('keeps probes, plugs and wires until a step changes them', () => {
		const frames = framesOf(units[2]!.worked);
		expect(frames.map((f) => f.probes)).toEqual([
			['A.2', 'A.T'],
			['A.T', 'A.TN'],
			['A.T', 'A.TN'],
			['A.2', 'A.T'],
			['A.2', 'A.T'],
			['A.2', 'A.T']
		]);
		expect(frames.map((f) => f.bench.wires.length)).toEqual([0, 0, 0, 0, 1, 1]);
		expect(frames.map((f) => f.bench.plugs[0]!.socket)).toEqual([
			...[null, null, 'A', 'A', 'A', null]
		]);
	});
	it('takes a wire out together with its fault, and puts a new one in', () => {
		const frames = framesOf(units[11]!.worked);
		expect(frames.at(-2)!.bench).toMatchObject({ faults: [] });
		expect(frames.map(meterIn).at(-1)).toBe('sounds');
	});
	it('does not change the bench it began with', () => {
		const before = JSON.stringify(units);
		for (const unit of units) framesOf(unit.worked);
		expect(JSON.stringify(units)).toBe(before);
	});
});

describe('the list of units', () => {
	it('passes as it is', () => expect(pathAfter(() => {})).toBe('fine'));
	it.each<[string, (unit: Loose, all: unknown[]) => void, string]>([
		['a unit is missing', (_, all) => void all.pop(), '$'],
		['a number is wrong', (unit) => (unit.number = 2), '$'],
		[
			'a step names no plug',
			(unit) => (unit.worked.steps[3]!.plug = { id: 'x', socket: 'A' }),
			'$[0].worked.steps[3].plug.id'
		],
		[
			'a step names no socket',
			(unit) => (unit.worked.steps[1]!.pullOut = 'B'),
			'$[0].worked.steps[1].pullOut'
		],
		[
			'a step takes out no wire',
			(unit) => (unit.worked.steps[1]!.takeOut = 'w9'),
			'$[0].worked.steps[1].takeOut'
		],
		[
			'a probe meets nothing',
			(unit) => (unit.worked.steps[0]!.probes = ['A.1', 'A.9']),
			'$[0].worked.steps[0].probes[1]'
		],
		[
			'a step has a strange key',
			(unit) => (unit.worked.steps[0]!.hop = 1),
			'$[0].worked.steps[0].hop'
		]
	])('is refused where %s', (_, change, path) => expect(pathAfter(change)).toBe(path));
});
