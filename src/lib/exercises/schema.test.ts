/** The gate: a good exercise passes, and one wrong thing at a time is refused at its place. */
import { describe, expect, it } from 'vitest';
import { CONTENT, readExercises, readTexts } from './content.node';
import { exercises } from './content.vite';
import { checkExercise, parseExercise } from './schema';
import { sharedBy, shelve } from './shelf';

type Json = Record<string, unknown>;
const texts = readTexts();
const jsonOf = (id: string): Json => JSON.parse(texts[`${id}/exercise.json`]!) as Json;
const [PREDICT, WIRE, FIND] = ['predict-ts-in-nine', 'wire-one-cable-six', 'find-fault-in-six'];

/** The exercise with `change` made to a fresh copy of its JSON; the path of the problem, or 'fine'. */
function pathOf(id: string, change: (json: Json) => void, markdown = 'Do it.'): string {
	const json = jsonOf(id);
	change(json);
	const checked = checkExercise(json, markdown);
	return checked.ok ? 'fine' : checked.problem.path;
}
const set = (path: string, value: unknown) => (json: Json) => {
	const keys = path.split('.');
	let at = json as Record<string, Json>;
	for (const key of keys.slice(0, -1)) at = at[key] as unknown as Record<string, Json>;
	if (value === undefined) delete at[keys.at(-1)!];
	else at[keys.at(-1)!] = value as Json;
};

describe('an exercise', () => {
	it.each([PREDICT, WIRE, FIND])('%s passes as it is', (id) =>
		expect(pathOf(id!, () => {})).toBe('fine')
	);

	const CAUTIONS = [PREDICT, WIRE, FIND].flatMap((id) =>
		['chassis', 'mains'].map((which) => [id!, which] as const)
	);
	it.each(CAUTIONS)('%s without its caution on %s is refused', (id, which) => {
		expect(pathOf(id, set(`cautions.${which}`, undefined))).toBe(`$.cautions.${which}`);
		expect(pathOf(id, set(`cautions.${which}`, ''))).toBe(`$.cautions.${which}`);
		expect(pathOf(id, set(`cautions.${which}`, ' '.repeat(200)))).toBe(`$.cautions.${which}`);
	});
	it.each(CAUTIONS)('%s whose caution on %s does not name what is done is refused', (id, which) => {
		const cautions = jsonOf(id).cautions as Record<string, string>;
		const silent = cautions[which]!.replace(/plug|jumper|solder|prob/gi, 'thing');
		expect(pathOf(id, set(`cautions.${which}`, silent))).toBe(`$.cautions.${which}`);
	});
	it.each(['mains', 'dead', 'protective earth', 'local codes', 'licensed'])(
		'whose mains caution leaves out "%s" is refused',
		(word) => {
			const { mains } = jsonOf(WIRE!).cautions as Record<string, string>;
			const without = mains!.replace(new RegExp(word, 'gi'), 'it');
			expect(pathOf(WIRE!, set('cautions.mains', without))).toBe('$.cautions.mains');
		}
	);
	it('without cautions at all is refused', () =>
		expect(pathOf(FIND!, set('cautions', undefined))).toBe('$.cautions'));

	it.each<[string, string, unknown, string]>([
		[PREDICT!, 'id', 'Predict TS', '$.id'],
		[PREDICT!, 'kind', 'quiz', '$.kind'],
		[PREDICT!, 'extra', 1, '$.extra'],
		[PREDICT!, 'aim', '', '$.aim'],
		[PREDICT!, 'sources', [], '$.sources'],
		[PREDICT!, 'sources.0.flag', 'SURE', '$.sources[0].flag'],
		[PREDICT!, 'beliefs.0.shownBy', [['A.1', 'A.T']], '$.beliefs[0].shownBy[0]'],
		[PREDICT!, 'beliefs.1.id', 'plug-feeds-normals', '$.beliefs[1]'],
		[PREDICT!, 'bench.sockets.0.kind', 'hybrid-7', '$.bench.sockets[0].kind'],
		[PREDICT!, 'state', { A: 'none-such' }, '$.state.A'],
		[PREDICT!, 'pairs.3', ['A.TN', 'A.TX'], '$.pairs[3][1]'],
		[PREDICT!, 'pairs.3', ['A.S', 'A.R'], '$.pairs[3]'],
		[PREDICT!, 'pairs.3', ['A.S', 'A.S'], '$.pairs[3]'],
		[WIRE!, 'require.1.hears', [['DESK', 'NOBODY']], '$.require[1].hears[0][1]'],
		[WIRE!, 'mayWire', ['B'], '$.mayWire[0]'],
		[WIRE!, 'solution.2.to', 'A.X', '$.solution[2].to'],
		[WIRE!, 'wrong.1.wires.0.from', 'A.X', '$.wrong[1].wires[0].from'],
		[WIRE!, 'wrong', [], '$.wrong'],
		[FIND!, 'most', 0, '$.most'],
		[FIND!, 'hidden', { kind: 'open', wire: 'w9' }, '$.hidden.wire'],
		// A tip spring that misses a bare plug's tip shows at no contact: no probe can catch it.
		[FIND!, 'hidden', { kind: 'spring-bent', contact: 'A.T' }, '$.hidden'],
		[FIND!, 'hidden', { kind: 'resistive', wire: 'w1', ohms: 5 }, '$.hidden'],
		[
			FIND!,
			'beliefs.0.shownByNaming',
			[{ kind: 'open', wire: 'w9' }],
			'$.beliefs[0].shownByNaming[0]'
		]
	])('%s with %s set to %j is refused there', (id, path, value, at) =>
		expect(pathOf(id, set(path, value))).toBe(at)
	);
	it('with HTML in its text is refused', () =>
		expect(pathOf(WIRE!, () => {}, '<b>Solder</b>')).toBe('text.md'));
	it('that is no JSON is refused', () => {
		const parsed = parseExercise('{', 'Do it.');
		expect(parsed.ok ? '' : parsed.problem.path).toBe('$');
	});
});

describe('the shelf', () => {
	it('holds one exercise of each kind, in course order', () =>
		expect(readExercises().map((e) => [e.id, e.kind])).toEqual([
			[PREDICT, 'predict'],
			[WIRE, 'wire'],
			[FIND, 'find']
		]));
	it('is the same for the screens as for the command line', () =>
		expect(exercises).toEqual(readExercises()));
	it('has no id and no caution twice', () => expect(sharedBy(readExercises())).toEqual([]));
	it('refuses a caution that two exercises share', () => {
		const json = jsonOf(FIND!);
		const other = { ...json, id: 'other', title: 'Another box' };
		expect(() =>
			shelve({ ...texts, 'other/exercise.json': JSON.stringify(other), 'other/text.md': 'Do it.' })
		).toThrow('share the text');
	});
	it('refuses a folder that is not named as its exercise, and says where content is broken', () => {
		const json = texts[`${FIND}/exercise.json`]!;
		expect(() => shelve({ 'x/exercise.json': json, 'x/text.md': 'Do it.' })).toThrow('x: $.id');
		expect(() => shelve({ 'x/exercise.json': json })).toThrow('x: text.md: the text is empty');
		expect(() => shelve({ 'x/text.md': 'Do it.' })).toThrow('x: $: not JSON');
	});
	it('speaks calmly: no exclamation mark and no markup in any text', () => {
		expect(CONTENT).toMatch(/content$/);
		for (const text of Object.values(texts)) expect(text).not.toMatch(/!|<[a-z/]/i);
	});
});
