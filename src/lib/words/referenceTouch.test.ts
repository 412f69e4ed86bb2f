/** What a contact meets: the words of the table against the circuit, and two tables by hand. */
import { describe, expect, it } from 'vitest';
import { SOCKETS, SOCKET_KINDS, inState, isJoined, plugIn } from '../engine';
import { aloneBench } from '../diagnosis/tell';
import { touchTable } from './referenceTouch';

describe('the table of what each contact meets', () => {
	it('is, for a hybrid of ten, as its springs and pins have it', () => {
		const { states, rows } = touchTable('hybrid-10');
		expect(states).toEqual(['none', 'ts', 'trs', 'dummy', 'shorting', 'three-pin']);
		const row = (contact: string) => rows.find((r) => r.contact === contact)!.meets;
		expect(row('T')).toEqual(['rests on TN', 'tip', 'tip', 'insulation', 'tip', 'rests on TN']);
		expect(row('R')).toEqual([
			'rests on RN',
			'sleeve',
			'ring',
			'insulation',
			'ring',
			'rests on RN'
		]);
		expect(row('SN')).toEqual(['S', 'open', 'open', 'open', 'open', 'S']);
		expect(row('1')).toEqual([...Array(5).fill('rests on 1N'), 'pin 1']);
		expect(row('1N')).toEqual([...Array(5).fill('pin 1'), 'open']);
		expect(row('2')).toEqual([...Array(5).fill('nothing'), 'pin 2']);
		expect(row('G')).toEqual([...Array(5).fill('nothing'), 'shell']);
	});

	it('is, for a changeover, as the tip spring moves it', () => {
		const { rows } = touchTable('jack-ts-changeover');
		expect(rows.map((r) => [r.contact, ...r.meets])).toEqual([
			['T', 'nothing', 'tip', 'tip', 'insulation', 'tip'],
			['S', 'nothing', 'sleeve', 'sleeve', 'insulation', 'sleeve'],
			['C', 'NC', 'NO', 'NO', 'NO', 'NO'],
			['NC', 'C', 'open', 'open', 'open', 'open'],
			['NO', 'open', 'C', 'C', 'C', 'C']
		]);
	});

	it.each(SOCKET_KINDS)(
		'names, for %s, a part or a contact exactly where they are joined',
		(kind) => {
			const { states, rows } = touchTable(kind);
			states.forEach((state, i) => {
				const bench = inState(aloneBench(kind), { A: state });
				const plug = plugIn(bench, 'A');
				for (const { contact, meets } of rows) {
					const words = meets[i]!.replace(/^rests on /, '');
					const name = words.replace(/^pin /, '');
					const isPart = plug && !SOCKETS[kind].breaks[contact] && words === meets[i];
					const other = isPart && !/^(C|NC|NO)$/.test(words) ? `${plug.id}.${name}` : `A.${name}`;
					const expected = !['nothing', 'open', 'insulation'].includes(words);
					if (expected)
						expect(isJoined(bench, `A.${contact}`, other), `${contact} ${state}`).toBe(true);
					else {
						const others = SOCKETS[kind].contacts.filter((c) => c !== contact);
						const joined = others.filter((c) => isJoined(bench, `A.${contact}`, `A.${c}`));
						expect(joined, `${contact} ${state}`).toEqual([]);
					}
				}
			});
		}
	);
});
