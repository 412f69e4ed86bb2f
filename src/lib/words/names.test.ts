/** What things are called, on labels, in speech and in sentences. */
import { describe, expect, it } from 'vitest';
import { DEVICE_KINDS, FAULT_KINDS, PLUG_KINDS, SOCKET_KINDS, inState } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import type { PredictExercise } from '../exercises';
import { readExercises } from '../exercises/content.node';
import { GLOSSARY } from './glossary';
import { kindWords } from './kinds';
import {
	andOf,
	nodeName,
	plugName,
	sentence,
	socketName,
	spokenName,
	textName,
	whenWords,
	wireName
} from './names';

const ONE = benchOf({
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-10', label: 'Stage 1' }],
	plugs: [{ id: 'p', kind: 'three-pin' }],
	devices: [{ id: 'DESK', kind: 'mic-input' }],
	wires: [
		{ id: 'w1', from: 'A.T', to: 'A.2' },
		{ id: 'w2', from: 'A.T', to: 'DESK.hot' }
	],
	cables: [{ id: 'c', m: 1, cores: [['A.1', 'DESK.shield']] }]
});
const TWO = benchOf({
	sockets: [
		{ id: 'A', kind: 'hybrid-9', label: '  Stage \n 1 ' },
		{ id: 'B', kind: 'jack-ts-changeover' }
	],
	plugs: [{ id: 'p', kind: 'trs' }]
});

describe('names', () => {
	it.each([
		['A.T', 'T', 'tip spring, T', 'T'],
		['A.R', 'R', 'ring spring, R', 'R'],
		['A.SN', 'SN', 'sleeve normal, SN: break contact of S', 'SN'],
		['A.TN', 'TN', 'tip normal, TN: break contact of T', 'TN'],
		['A.1N', '1N', 'normal of pin 1, 1N: break contact of pin 1', '1N'],
		['A.1', '1', 'pin 1, shield', 'pin 1'],
		['A.2', '2', 'pin 2, hot', 'pin 2'],
		['A.3', '3', 'pin 3, cold', 'pin 3'],
		['A.G', 'G', 'chassis lug, G', 'lug G'],
		['p.1', 'plug p, 1', 'plug p, pin 1', 'pin 1 of plug p'],
		['p.shell', 'plug p, shell', 'plug p, shell', 'the shell of plug p'],
		['DESK.hot', 'DESK, hot', 'DESK, hot', 'hot of DESK'],
		['panel', 'panel', 'metal panel', 'the panel']
	])('%s is "%s" on a label', (node, label, spoken, text) => {
		expect(nodeName(ONE, node)).toBe(label);
		expect(spokenName(ONE, node)).toBe(spoken);
		expect(textName(ONE, node)).toBe(text);
	});
	it.each([
		['A.T', 'Stage 1, T', 'Stage 1, tip spring, T', 'T of Stage 1'],
		['B.NC', 'B, NC', 'B, changeover, NC: joined to C at rest', 'NC of B'],
		['p.tip', 'plug p, tip', 'plug p, tip', 'the tip of plug p']
	])('%s names its socket where there are several', (node, label, spoken, text) => {
		expect(nodeName(TWO, node)).toBe(label);
		expect(spokenName(TWO, node)).toBe(spoken);
		expect(textName(TWO, node)).toBe(text);
	});
	it('tell apart two sockets of one label, and cut a label that is too long', () => {
		const bench = benchOf({
			sockets: [
				{ id: 'A', kind: 'jack-ts', label: 'Wall' },
				{ id: 'B', kind: 'jack-ts', label: 'Wall' },
				{ id: 'C', kind: 'jack-ts', label: 'x'.repeat(80) }
			]
		});
		expect(socketName(bench, 'A')).toBe('Wall (A)');
		expect(socketName(bench, 'B')).toBe('Wall (B)');
		expect(socketName(bench, 'C')).toBe(`${'x'.repeat(39)}…`);
	});
	it('call a wire a jumper between sockets only, and count cores from one', () => {
		expect(wireName(ONE, 'w1')).toBe('jumper w1');
		expect(wireName(ONE, 'w2')).toBe('wire w2');
		expect(wireName(ONE, 'c:0')).toBe('core 1 of cable c');
	});
	it('call a bare plug by its kind', () => {
		const bench = inState(TWO, { A: 'ts' });
		expect(plugName(bench, bench.plugs.at(-1)!.id)).toBe('the TS plug');
		expect(plugName(bench, 'p')).toBe('plug p');
	});
	it.each([
		[{}, 'with the plugs as they stand'],
		[{ A: 'none' }, 'with nothing in Stage 1'],
		[{ A: 'ts', B: 'dummy' }, 'with a TS plug in Stage 1 and a dummy plug in B'],
		[{ B: 'p' }, 'with the TRS plug p in B']
	])('state %j is "%s"', (when, words) => expect(whenWords(TWO, when)).toBe(words));
	it('leave the socket’s name out of a state where there is one', () =>
		expect(whenWords(ONE, { A: 'three-pin' })).toBe('with a three-pin plug in the socket'));
});

describe('small words', () => {
	it('make a list and a sentence', () => {
		expect(andOf([])).toBe('');
		expect(andOf(['a', 'b', 'c'])).toBe('a, b and c');
		expect(sentence('nothing is in A')).toBe('Nothing is in A.');
		expect(sentence('It is.')).toBe('It is.');
	});
	it('gloss every kind, each in one sentence of its own', () => {
		const kinds = [...SOCKET_KINDS, ...PLUG_KINDS, ...DEVICE_KINDS, ...FAULT_KINDS];
		const words = kinds.map(kindWords);
		expect(new Set(words.map((w) => w.name)).size).toBe(kinds.length);
		expect(new Set(words.map((w) => w.gloss)).size).toBe(kinds.length);
		for (const { gloss } of words) expect(gloss).toMatch(/^[A-Z][^.!]+\.$/);
	});
	it('define every term once, without an exclamation mark', () => {
		expect(new Set(GLOSSARY.map((t) => t.term)).size).toBe(GLOSSARY.length);
		for (const { meaning } of GLOSSARY) expect(meaning).toMatch(/^[^!]+\.$/);
	});
});

describe('the state of a whole panel', () => {
	const rows = readExercises().find((e) => e.id === 'predict-four-rows') as PredictExercise;
	it('is said in a few words, where every socket of a row has the same', () =>
		expect(rows.questions.map((q) => whenWords(rows.bench, q.state))).toEqual([
			'with nothing in any socket',
			'with a TS plug in every top socket',
			'with a TS plug in every bottom socket'
		]));
	it('is said socket by socket where it is not so', () =>
		expect(whenWords(rows.bench, { ...rows.questions[1]!.state, F2: 'ts' })).toContain(
			'Full, top'
		));
});
