/** The gate: a good exercise passes, and one wrong thing at a time is refused at its place. */
import { describe, expect, it } from 'vitest';
import { CONTENT, readCourse, readExercises, readTexts } from './content.node';
import { course } from './content.vite';
import { checkExercise, parseExercise } from './schema';
import { lateExercise } from './late';
import { beliefsIn, courseOf, lateCourseOf, sharedBy } from './shelf';

type Json = Record<string, unknown>;
const texts = readTexts();
const beliefs = beliefsIn(texts);
const folderOf = (id: string): string =>
	Object.keys(texts)
		.find((path) => path.includes(`/${id}/`))!
		.split('/')
		.slice(0, 2)
		.join('/');
const jsonOf = (id: string): Json => JSON.parse(texts[`${folderOf(id)}/exercise.json`]!) as Json;
const MEND = 'put-right-sleeve-cup';
const CHOOSE = 'choose-one-opening';
const NAME = 'name-lugs-of-five';
const ORDER = 'order-test-the-line';
const [PREDICT, WIRE, FIND] = ['predict-ts-in-nine', 'wire-one-cable-six', 'find-fault-in-six'];

/** The exercise with `change` made to a fresh copy of its JSON; the path of the problem, or 'fine'. */
function pathOf(id: string, change: (json: Json) => void, markdown = 'Do it.'): string {
	const json = jsonOf(id);
	change(json);
	const checked = checkExercise(json, markdown, beliefs);
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
	it.each([PREDICT, WIRE, FIND, MEND, CHOOSE, NAME, ORDER])('%s passes as it is', (id) =>
		expect(pathOf(id!, () => {})).toBe('fine')
	);

	const CAUTIONS = [PREDICT, WIRE, FIND, MEND, CHOOSE, NAME, ORDER].flatMap((id) =>
		['chassis', 'mains'].map((which) => [id!, which] as const)
	);
	it.each(CAUTIONS)('%s without its caution on %s is refused', (id, which) => {
		expect(pathOf(id, set(`cautions.${which}`, undefined))).toBe(`$.cautions.${which}`);
		expect(pathOf(id, set(`cautions.${which}`, ''))).toBe(`$.cautions.${which}`);
		expect(pathOf(id, set(`cautions.${which}`, ' '.repeat(200)))).toBe(`$.cautions.${which}`);
	});
	it.each(CAUTIONS)('%s whose caution on %s does not name what is done is refused', (id, which) => {
		const cautions = jsonOf(id).cautions as Record<string, string>;
		const silent = cautions[which]!.replace(
			/plug|jumper|solder|prob|socket|step|order|test/gi,
			'thing'
		);
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
		[PREDICT!, 'beliefs.0.shownBy', [['A.T', 'A.2', 1]], '$.beliefs[0].shownBy[0]'],
		[PREDICT!, 'beliefs.0.shownBy', [], '$.beliefs[0].shownBy'],
		[PREDICT!, 'beliefs.1.id', 'plug-feeds-normals', '$.beliefs[1]'],
		[PREDICT!, 'beliefs.1.id', 'moon-is-cheese', '$.beliefs[1].id'],
		[PREDICT!, 'unit', 13, '$.unit'],
		[PREDICT!, 'place', 0, '$.place'],
		[PREDICT!, 'wrong', [], '$.wrong'],
		[PREDICT!, 'wrong.0.says', [], '$.wrong[0].says'],
		[PREDICT!, 'wrong.0.says', [{ pair: ['A.T', 'A.2'] }], '$.wrong[0].says[0]'],
		[PREDICT!, 'wrong.0.says', [{ option: 'a' }], '$.wrong[0].says[0]'],
		[PREDICT!, 'wrong.0.says', [{ belief: 'either-way-round' }], '$.wrong[0].says[0].belief'],
		[PREDICT!, 'bench.sockets.0.kind', 'hybrid-7', '$.bench.sockets[0].kind'],
		[PREDICT!, 'questions.0.state', { A: 'none-such' }, '$.questions[0].state.A'],
		[PREDICT!, 'questions.0.pairs.3', ['A.TN', 'A.TX'], '$.questions[0].pairs[3][1]'],
		[PREDICT!, 'questions.0.pairs.3', ['A.S', 'A.R'], '$.questions[0].pairs[3]'],
		[PREDICT!, 'questions.0.pairs.3', ['A.S', 'A.S'], '$.questions[0].pairs[3]'],
		[WIRE!, 'require.1.hears', [['DESK', 'NOBODY']], '$.require[1].hears[0][1]'],
		[WIRE!, 'mayWire', ['B'], '$.mayWire[0]'],
		[WIRE!, 'solution.2.to', 'A.X', '$.solution[2].to'],
		[WIRE!, 'wrong.1.answer.wires.0.from', 'A.X', '$.wrong[1].answer.wires[0].from'],
		[WIRE!, 'wrong', [], '$.wrong'],
		[
			PREDICT!,
			'questions.0.pairs',
			[
				['A.R', 'A.S'],
				['A.T', 'A.TN']
			],
			'$.questions'
		],
		[PREDICT!, 'wrong.0.answer.ticked', [['A.R', 'A.S', 'x']], '$.wrong[0].answer.ticked[0]'],
		[PREDICT!, 'wrong.0.answer', { wires: [] }, '$.wrong[0].answer.ticked'],
		[WIRE!, 'bench.faults', [{ kind: 'swap', contacts: ['A.T', 'A.R'] }], '$.bench.faults[0]'],
		[WIRE!, 'bench.wires', [{ id: 'x', from: 'A.T', to: 'panel' }], '$.bench.wires[0].to'],
		[MEND, 'bench.wires', [], '$.bench.wires'],
		[MEND, 'allow', -1, '$.allow'],
		[MEND, 'wrong.0.says.0', { unproven: true }, '$.wrong[0].says[0]'],
		[CHOOSE, 'options.0.sockets', ['Z'], '$.options[0].sockets[0]'],
		[CHOOSE, 'options.1.id', 'A', '$.options[1]'],
		[CHOOSE, 'options.0.termination', 'glue', '$.options[0].termination'],
		[CHOOSE, 'needs.0', { need: 'openings', most: 9 }, '$.needs[0]'],
		[CHOOSE, 'needs.0', { need: 'magic' }, '$.needs[0].need'],
		[CHOOSE, 'needs', [{ need: 'contacts', least: 50 }], '$.options'],
		[CHOOSE, 'needs', [{ need: 'contacts', least: 1 }], '$.options'],
		[CHOOSE, 'beliefs.0.shownBy', [['Z']], '$.beliefs[0].shownBy[0]'],
		[NAME, 'socket', 'Y', '$.socket'],
		[NAME, 'lugs.a', 'G', '$.lugs.a'],
		[NAME, 'lugs.a', 'T', '$.lugs[1]'],
		[NAME, 'lugs', { a: 'T', b: 'R' }, '$.lugs'],
		[NAME, 'candidates', ['jack-trs'], '$.candidates'],
		[NAME, 'plugs', ['three-pin'], '$.plugs[0]'],
		[NAME, 'bench.wires', [{ id: 'w', from: 'X.T', to: 'X.R' }], '$.candidates'],
		[NAME, 'beliefs.0.shownBy', [['TN', 'G']], '$.beliefs[0].shownBy[0]'],
		[ORDER, 'steps.0.does', 'juggle', '$.steps[0].does'],
		[ORDER, 'steps.1.id', 'tell', '$.steps[1]'],
		[ORDER, 'rules.0.then', 'tape', '$.rules[0].then'],
		[ORDER, 'solution.0', 'tape', '$.solution[0]'],
		[ORDER, 'probes', ['A.2', 'A.9'], '$.probes[1]'],
		[ORDER, 'beliefs.0.shownBy', [['nonsense']], '$.beliefs[0].shownBy[0]'],
		[FIND!, 'most', 0, '$.most'],
		[FIND!, 'solution.probes.0.pair', ['A.2', 'A.X'], '$.solution.probes[0].pair[1]'],
		[FIND!, 'hidden', { kind: 'open', wire: 'w9' }, '$.hidden.wire'],
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
		const parsed = parseExercise('{', 'Do it.', beliefs);
		expect(parsed.ok ? '' : parsed.problem.path).toBe('$');
	});
});

describe('the shelf', () => {
	it('holds the course in order: unit by unit, place by place', () => {
		const { exercises } = readCourse();
		const places = exercises.map((e) => e.unit * 100 + e.place);
		expect(places).toEqual([...places].sort((a, b) => a - b));
	});
	it('is the same for the screens as for the command line', () =>
		expect(course).toEqual(readCourse()));
	it('opens an exercise when it is needed and not before, once, and says then what is broken', () => {
		const json = jsonOf(FIND!);
		const whole = readExercises().find((e) => e.id === FIND)!;
		let opened = 0;
		const late = lateExercise(json, () => {
			opened += 1;
			return whole;
		});
		expect([late.title, late.kind, late.cautions]).toEqual([
			whole.title,
			whole.kind,
			whole.cautions
		]);
		expect(opened).toBe(0);
		expect(late).toEqual(whole);
		expect({ ...late }).toEqual(whole);
		expect(opened).toBe(1);
		const at = '12-faults/x/exercise.json';
		const broken = lateCourseOf({ ...texts, [at]: JSON.stringify({ ...json, id: 'x', most: 0 }) });
		const one = broken.exercises.find((e) => e.id === 'x')!;
		expect(one.title).toBe(whole.title);
		expect(() => one.bench).toThrow('12-faults/x: $.most');
	});
	it('has no id and no caution twice', () => expect(sharedBy(readExercises())).toEqual([]));
	it('refuses a caution that two exercises share', () => {
		const json = { ...jsonOf(FIND!), id: 'other', title: 'Another box' };
		const other = { '12-faults/other/exercise.json': JSON.stringify(json) };
		expect(() => courseOf({ ...texts, ...other, '12-faults/other/text.md': 'Do it.' })).toThrow(
			'share the text'
		);
	});
	it('refuses a folder that is not named as its exercise or its unit, and says where content is broken', () => {
		const json = texts[`${folderOf(FIND!)}/exercise.json`]!;
		const shelf = (files: Record<string, string>) => courseOf({ ...files, ...shared });
		const shared = { 'units.json': texts['units.json']!, 'beliefs.json': texts['beliefs.json']! };
		const at = (folder: string) => ({
			[`${folder}/exercise.json`]: json,
			[`${folder}/text.md`]: 'Do it.'
		});
		expect(() => shelf(at('12-x/x'))).toThrow('12-x/x: $.id');
		expect(() => shelf(at(`11-x/${FIND}`))).toThrow(`11-x/${FIND}: $.unit`);
		expect(() => shelf({ '12-x/x/exercise.json': json })).toThrow('12-x/x: text.md: the text is');
		expect(() => shelf({ '12-x/x/text.md': 'Do it.' })).toThrow('12-x/x: $: not JSON');
	});
	it('refuses two exercises that want one place', () => {
		const { cautions, ...json } = jsonOf(FIND!);
		const { chassis, mains } = cautions as Record<string, string>;
		const own = { chassis: `${chassis} Mind it.`, mains: `${mains} Mind it.` };
		const files = {
			'12-faults/other/exercise.json': JSON.stringify({ ...json, id: 'other', cautions: own }),
			'12-faults/other/text.md': 'Do it.'
		};
		expect(() => courseOf({ ...texts, ...files })).toThrow('the same place');
	});
	it('speaks calmly: no exclamation mark and no markup in any text', () => {
		expect(CONTENT).toMatch(/content$/);
		for (const text of Object.values(texts)) expect(text).not.toMatch(/!|<[a-z/]/i);
	});
});
