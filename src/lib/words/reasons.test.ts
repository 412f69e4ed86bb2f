/** One clause for every reason, every gap and every fault; paths, cups and units. */
import { describe, expect, it } from 'vitest';
import { FAULT_KINDS, circuit, pathBetween, readMeter, type Bench, type Fault } from '../engine';
import { benchOf } from '../engine/bench.fixture';
import { faultWords } from './faults';
import { pathWords, whyWords } from './path';
import { cupWords, gapWords, reasonWords } from './reasons';
import { decibels, fineOhms, lengthWords } from './units';

const socket = (kind: string, plug?: string, more: Record<string, unknown> = {}): Bench =>
	benchOf({
		sockets: [{ id: 'A', kind }],
		plugs: plug ? [{ id: 'p', kind: plug, socket: 'A' }] : [],
		...more
	});
const reasonsOf = (bench: Bench) => circuit(bench).conductors.map((c) => reasonWords(bench, c));
const gapsOf = (bench: Bench) => circuit(bench).gaps.map((g) => gapWords(bench, g));

const DESK = { devices: [{ id: 'D', kind: 'mic-input', phantom: true }] };
const WIRED = {
	...DESK,
	wires: [{ id: 'w1', from: 'A.TN', to: 'A.2' }],
	cables: [
		{
			id: 'c',
			m: 12,
			cores: [
				['A.1', 'D.shield'],
				['A.2', 'D.hot']
			]
		}
	]
};
const fault = (f: Record<string, unknown>) => ({ faults: [f] });

describe('a reason', () => {
	it.each<[string, Bench, string]>([
		['rest', socket('hybrid-9'), 'T’s spring rests on TN'],
		['rest of pin 1', socket('hybrid-10'), '1N rests on pin 1, with no three-pin plug in'],
		[
			'rest, stuck',
			socket('hybrid-9', 'ts', fault({ kind: 'break-stuck-closed', contact: 'A.TN' })),
			'TN is held closed on T by a fault'
		],
		['changeover at rest', socket('jack-ts-changeover'), 'the changeover stands on NC'],
		['changeover moved', socket('jack-ts-changeover', 'ts'), 'the changeover stands on NO'],
		['touch', socket('hybrid-9', 'trs'), 'the tip of plug p touches T'],
		['mate', socket('hybrid-9', 'three-pin'), 'pin 2 of plug p has mated with pin 2'],
		[
			'mate of the shell',
			socket('hybrid-9', 'three-pin'),
			'the shell of plug p has mated with lug G'
		],
		[
			'wire',
			socket('hybrid-9', undefined, WIRED),
			'jumper w1, 40 mm of 26 AWG, joins TN and pin 2'
		],
		[
			'core',
			socket('hybrid-9', undefined, WIRED),
			'core 2 of cable c, 12 m of 24 AWG, joins pin 2 and hot of D'
		],
		['inside-plug', socket('jack-trs', 'shorting'), 'inside plug p, tip and ring are joined'],
		[
			'chassis',
			socket('hybrid-5', undefined, { panel: { metal: true } }),
			'lug G is fastened to the metal panel'
		],
		[
			'bush',
			benchOf({
				panel: { metal: true },
				sockets: [{ id: 'A', kind: 'jack-ts', bush: 'metal' }]
			}),
			'the metal bush of A joins its S to the panel'
		],
		[
			'bridge',
			socket('jack-ts', undefined, fault({ kind: 'bridge', between: ['A.T', 'A.S'] })),
			'a bridge joins T and S'
		],
		[
			'bond inside a device',
			benchOf(DESK),
			'inside D, the bond of shield to chassis stands between shield and chassis'
		],
		['load', benchOf(DESK), 'inside D, the load stands between hot and cold'],
		['feed', benchOf(DESK), 'inside D, the phantom feed resistor stands between cold and shield']
	])('of kind %s is in words', (_, bench, words) => expect(reasonsOf(bench)).toContain(words));

	it('names its socket where there are several', () => {
		const bench = benchOf({
			sockets: [
				{ id: 'A', kind: 'hybrid-9', label: 'Stage 1' },
				{ id: 'B', kind: 'jack-ts' }
			],
			wires: [{ id: 'w', from: 'A.T', to: 'B.T', mm: 2500 }]
		});
		expect(reasonsOf(bench)).toContain('in Stage 1, T’s spring rests on TN');
		expect(reasonsOf(bench)).toContain('jumper w, 2.5 m of 26 AWG, joins T of Stage 1 and T of B');
	});
	it('tells where a swapped wire really landed', () => {
		const swapped = fault({ kind: 'swap', contacts: ['A.2', 'A.3'] });
		expect(reasonsOf(socket('hybrid-9', undefined, { ...WIRED, ...swapped }))).toContain(
			'jumper w1, 40 mm of 26 AWG, joins TN and pin 3'
		);
	});
});

describe('a gap', () => {
	it.each<[string, Bench, string]>([
		['lifted', socket('hybrid-9', 'ts'), 'plug p lifts R’s spring off RN'],
		['lifted, pin 1', socket('hybrid-10', 'three-pin'), 'plug p has opened 1N from pin 1'],
		[
			'changeover at rest',
			socket('jack-ts-changeover'),
			'the changeover stands on NC, so C and NO are open'
		],
		[
			'changeover moved',
			socket('jack-ts-changeover', 'ts'),
			'the changeover stands on NO, moved there by plug p, so C and NC are open'
		],
		[
			'stuck-open',
			socket('hybrid-9', undefined, fault({ kind: 'break-stuck-open', contact: 'A.TN' })),
			'TN is stuck open and never meets T'
		],
		[
			'cut',
			socket('hybrid-9', undefined, { ...WIRED, ...fault({ kind: 'open', wire: 'w1' }) }),
			'jumper w1, from TN to pin 2, is open and conducts nothing'
		]
	])('of kind %s is in words', (_, bench, words) => expect(gapsOf(bench)).toContain(words));
});

describe('a path', () => {
	const wired = socket('hybrid-9', undefined, WIRED);
	const plugged = socket('hybrid-9', 'ts', WIRED);

	it('is told conductor by conductor, each with its ohms, and their sum', () => {
		const answer = pathBetween(wired, 'A.T', 'A.2');
		if (answer.kind !== 'joined') throw new Error('they should be joined');
		// 40 mm of 26 AWG at 0.1339 Ω/m is 0.005 Ω, and a good break contact 0.015 Ω.
		expect(pathWords(wired, 'A.T', 'A.2')).toEqual({
			verdict: 'T and pin 2 are joined by 2 conductors in a row, 0.020 Ω along the way.',
			steps: [
				'T’s spring rests on TN: 0.015 Ω',
				'jumper w1, 40 mm of 26 AWG, joins TN and pin 2: 0.005 Ω'
			]
		});
		expect(fineOhms(answer.ohms)).toBe('0.020 Ω');
	});
	it('names the break that stands open and the plug that lifts it', () => {
		expect(pathWords(plugged, 'A.T', 'A.2')).toEqual({
			verdict: 'T and pin 2 are apart: plug p lifts T’s spring off TN; closing it would join them.',
			steps: [
				'open here: plug p lifts T’s spring off TN; pulling plug p out would close it',
				'jumper w1, 40 mm of 26 AWG, joins TN and pin 2: 0.005 Ω'
			]
		});
	});
	it('speaks of mending where no plug stands in the way', () => {
		const cut = socket('hybrid-9', undefined, { ...WIRED, ...fault({ kind: 'open', wire: 'w1' }) });
		expect(pathWords(cut, 'A.TN', 'A.2').verdict).toMatch(
			/conducts nothing; mending it would join them\.$/
		);
	});
	it('names several open contacts together', () => {
		const bench = socket('hybrid-9', 'ts', { wires: [{ id: 'w', from: 'A.TN', to: 'A.RN' }] });
		expect(pathWords(bench, 'A.T', 'A.R').verdict).toBe(
			'T and R are apart: plug p lifts T’s spring off TN and plug p lifts R’s spring off RN; closing them all would join the two.'
		);
	});
	it('says of two halves of a hybrid that nothing inside joins them', () =>
		expect(pathWords(wired, 'A.3', 'A.R').verdict).toBe(
			'Nothing inside the socket joins the three-pin half to the jack half.'
		));
	it.each([
		['two pins', 'A.2', 'A.3'],
		['the lug and a pin', 'A.G', 'A.1']
	])('says that nothing joins %s', (_, a, b) =>
		expect(pathWords(socket('hybrid-9'), a, b).verdict).toBe(
			'Nothing joins them: no wire, spring or plug, and no break contact that could close.'
		)
	);
	it('does not say that nothing joins what a device’s inside joins', () => {
		const bench = benchOf({ devices: [{ id: 'D', kind: 'mic-input' }] });
		expect(pathWords(bench, 'D.hot', 'D.cold').verdict).toBe(
			'No conductor makes them one net, but there are 3.000 kΩ between them, through what is inside D.'
		);
		expect(readMeter(bench, 'ohms', 'D.hot', 'D.cold', true).display).toBe('3.000 kΩ');
	});
	it('adds what a device lets through beside an open contact', () => {
		const bench = socket('hybrid-9', 'ts', {
			devices: [{ id: 'D', kind: 'mic-input' }],
			wires: [
				{ id: 'x', from: 'A.T', to: 'D.hot' },
				{ id: 'y', from: 'A.TN', to: 'D.cold' }
			]
		});
		expect(pathWords(bench, 'A.T', 'A.TN').steps.at(-1)).toBe(
			'as it is, there are 3.000 kΩ between them, through what is inside D'
		);
	});
	it('knows both probes on one contact', () =>
		expect(pathWords(wired, 'A.2', 'A.2').verdict).toBe('Both probes are on pin 2.'));
	it('gives the reason alone in one sentence', () =>
		expect(whyWords(wired, 'A.T', 'A.2')).toBe(
			'T’s spring rests on TN; jumper w1, 40 mm of 26 AWG, joins TN and pin 2.'
		));
});

describe('a cup', () => {
	const bench = socket('hybrid-9', undefined, WIRED);
	it('with two conductors, a cable and a jumper, is as it should be: nothing is said', () =>
		expect(cupWords(bench, 'A.2')).toBeNull());
	it('with one or none says nothing', () => {
		expect(cupWords(bench, 'A.TN')).toBeNull();
		expect(cupWords(bench, 'A.3')).toBeNull();
	});
	it('is a socket’s only: a device’s terminal is none', () => {
		const two = benchOf({
			sockets: [{ id: 'A', kind: 'jack-ts' }],
			...DESK,
			wires: ['T', 'S'].map((c, i) => ({ id: `w${i}`, from: `A.${c}`, to: 'D.hot' }))
		});
		expect(cupWords(two, 'D.hot')).toBeNull();
	});
	it('with three is crowded', () => {
		const wires = [1, 2, 3].map((i) => ({ id: `w${i}`, from: 'A.T', to: 'A.2' }));
		expect(cupWords(socket('hybrid-5', undefined, { wires }), 'A.T')).toMatch(
			/holds three conductors: jumper w1, jumper w2 and jumper w3\. That is crowded/
		);
	});
});

describe('a fault', () => {
	const bench = socket('hybrid-9', undefined, WIRED);
	const cases: [Fault, string][] = [
		[{ kind: 'open', wire: 'w1' }, 'jumper w1 is open: it conducts nothing'],
		[
			{ kind: 'resistive', wire: 'c:1', ohms: 47 },
			'core 2 of cable c has 47.000 Ω more than it should'
		],
		[{ kind: 'bridge', between: ['A.1', 'A.G'] }, 'a bridge joins pin 1 and lug G'],
		[{ kind: 'swap', contacts: ['A.2', 'A.3'] }, 'the leads of pin 2 sit on pin 3'],
		[
			{ kind: 'break-dirty', contact: 'A.TN', ohms: 2 },
			'TN is dirty: 2.000 Ω more when it is closed'
		],
		[{ kind: 'break-stuck-open', contact: 'A.TN' }, 'TN is stuck open: it never closes'],
		[{ kind: 'break-stuck-closed', contact: 'A.TN' }, 'TN is stuck closed: it never opens'],
		[
			{ kind: 'spring-bent', contact: 'A.T' },
			'the spring of T is bent: it never touches a plug and never lifts off TN'
		]
	];
	it.each(cases)('%j is in words', (f, words) => expect(faultWords(bench, f)).toBe(words));
	it('of every kind is in words', () =>
		expect(cases.map(([f]) => f.kind)).toEqual([...FAULT_KINDS]));
	it('that is none is in words too', () =>
		expect(faultWords(bench, null)).toBe('nothing is wrong'));
	it('of a spring without a break contact names none', () =>
		expect(faultWords(socket('hybrid-6'), { kind: 'spring-bent', contact: 'A.T' })).toBe(
			'the spring of T is bent: it never touches a plug'
		));
});

describe('units', () => {
	it.each([
		[0, '0 Ω'],
		[0.0001, 'under 0.001 Ω'],
		[0.0152, '0.015 Ω'],
		[99.9994, '99.999 Ω'],
		[150, '150.0 Ω'],
		[3e6, '3.000 MΩ']
	])('%d ohms reads %s', (ohms, words) => expect(fineOhms(ohms)).toBe(words));
	it('write millimetres as metres from a metre on', () => {
		expect(lengthWords(999)).toBe('999 mm');
		expect(lengthWords(1200)).toBe('1.2 m');
	});
	it('write no minus before a level that rounds to zero', () => {
		expect(decibels(-0.04)).toBe('0.0 dB');
		expect(decibels(-6.02)).toBe('−6.0 dB');
	});
});
