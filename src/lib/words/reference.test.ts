/** What the reference says of every kind is true of the engine, complete, and careful. */
import { describe, expect, it } from 'vitest';
import { SOCKETS, SOCKET_KINDS, type SocketKind } from '../engine';
import { FLAGS } from '../exercises/exercise';
import { readExercises } from '../exercises/content.node';
import { gainsaid, type Claim } from './reference';
import { contactUse, drawingChecks, referenceOf, sourcesOf } from './referenceKinds';

const claimsOf = (kind: SocketKind): Claim[] => [
	...referenceOf(kind).uses,
	...referenceOf(kind).notFor
];
const CLAIMS = SOCKET_KINDS.flatMap((kind) =>
	claimsOf(kind)
		.filter((c) => c.proof)
		.map((claim) => [kind, claim.text, claim] as const)
);

describe('a claim with a proof', () => {
	it.each(CLAIMS)('%s: %s', (kind, _, { proof }) =>
		expect(proof!.flatMap((p) => gainsaid(kind, p))).toEqual([])
	);

	it('proves something', () => {
		for (const [kind, text, { proof }] of CLAIMS)
			for (const { joined = [], apart = [], lacks = [] } of proof!)
				expect(joined.length + apart.length + lacks.length, `${kind}: ${text}`).toBeGreaterThan(0);
	});

	it('names only contacts, parts of the plug in question and jumpers that exist', () => {
		const parts: Record<string, string> = {
			ts: 'tip sleeve',
			trs: 'tip ring sleeve',
			shorting: 'tip ring sleeve',
			'three-pin': '1 2 3 shell'
		};
		for (const [kind, , { proof }] of CLAIMS)
			for (const p of proof!) {
				const known = [
					...SOCKETS[kind].contacts,
					...(parts[p.with] ?? '').split(' ').map((part) => `plug.${part}`),
					...(p.metal ? ['panel'] : [])
				];
				const named = [...(p.joined ?? []), ...(p.apart ?? []), ...(p.wires ?? [])].flat();
				expect(known).toEqual(expect.arrayContaining(named));
			}
	});

	it('is refused where it is not so', () => {
		expect(gainsaid('hybrid-9', { with: 'ts', apart: [['R', 'S']] })).toEqual([
			'hybrid-9, ts: R–S joined'
		]);
		expect(gainsaid('hybrid-9', { with: 'ts', joined: [['T', 'TN']], lacks: ['TN'] })).toEqual([
			'hybrid-9, ts: T–TN apart',
			'hybrid-9, ts: there is TN'
		]);
		expect(
			gainsaid('jack-ts', { with: 'ts', travel: 2, joined: [['plug.tip', 'S']] })
		).toHaveLength(1);
	});
});

describe.each(SOCKET_KINDS)('the page of %s', (kind) => {
	const reference = referenceOf(kind);

	it('says what every contact is for', () => {
		for (const contact of SOCKETS[kind].contacts)
			expect(contactUse(kind, contact)).toMatch(/^[A-Z][^!]*\.$/);
		expect(() => contactUse(kind, 'X')).toThrow('No words');
	});

	it('names the spring or pin that each break contact rests on', () => {
		for (const [contact, on] of Object.entries(SOCKETS[kind].breaks))
			expect(contactUse(kind, contact)).toContain(`Break contact of ${on === '1' ? 'pin 1' : on}`);
	});

	it('says what it is for and what it is not for', () => {
		expect(reference.uses.length).toBeGreaterThan(0);
		expect(reference.notFor.length).toBeGreaterThan(1);
		for (const { text } of claimsOf(kind)) expect(text).toMatch(/^[A-Z][^!]*\.$/);
	});

	it('has something to look up on the maker’s drawing, the bush only where there is one', () => {
		const looks = drawingChecks(kind).map((c) => c.look);
		expect(looks).toContain('The termination');
		expect(looks.some((l) => l.includes('bush'))).toBe(SOCKETS[kind].hasBush);
		expect(looks.some((l) => l.includes('pins are numbered'))).toBe(
			SOCKETS[kind].threePin !== null
		);
		for (const check of drawingChecks(kind)) expect(FLAGS).toContain(check.flag);
	});

	it('has two cautions: chassis against signal, and mains', () => {
		expect(reference.cautions.chassis).toMatch(/chassis|panel|flange/);
		expect(reference.cautions.chassis).toMatch(/shield|signal|sleeve|pin 1/);
		expect(reference.cautions.mains).toMatch(/[Mm]ains/);
		expect(reference.cautions.mains).toMatch(/local code|licensed/);
	});

	it('gives a source with a flag for what it says', () => {
		const sources = sourcesOf(kind);
		expect(sources.length).toBeGreaterThan(3);
		for (const { fact, source, flag } of sources) {
			expect(FLAGS).toContain(flag);
			expect(fact.length * source.length).toBeGreaterThan(0);
			if (flag === 'STD') expect(source).toContain('as reported');
			if (flag === 'MEM') expect(source).toContain('from memory');
		}
		expect(new Set(sources.map((s) => s.fact)).size).toBe(sources.length);
	});
});

it('no caution is used twice, here or in an exercise', () => {
	const ours = SOCKET_KINDS.flatMap((kind) => Object.values(referenceOf(kind).cautions));
	const theirs = readExercises().flatMap((e) => Object.values(e.cautions));
	expect(new Set([...ours, ...theirs]).size).toBe(ours.length + theirs.length);
});
