/** Telling kinds apart, in words. */
import { describe, expect, it } from 'vitest';
import { SOCKET_KINDS } from '../engine';
import {
	countWords,
	foundWords,
	plainName,
	questionWords,
	seenApartWords,
	sightWords,
	signWords
} from './referenceTell';

describe('the words for telling kinds apart', () => {
	it('say what the eye sees', () => {
		expect(sightWords('hybrid-9')).toBe(
			'In front a female three-pin opening and a jack; at the rear nine lugs, and a chassis lug beside them that does not count.'
		);
		expect(sightWords('jack-ts')).toBe(
			'In front a jack alone; at the rear two lugs, and no chassis lug.'
		);
	});

	it('say how another kind looks', () => {
		expect(seenApartWords('hybrid-9', 'hybrid-10')).toBe('Ten lugs, not nine.');
		expect(seenApartWords('hybrid-5', 'patch-jack')).toBe('A jack alone.');
		expect(seenApartWords('patch-jack', 'jack-ts-changeover')).toBe('It looks the same.');
	});

	it('say what the meter counts', () => {
		expect(signWords('hybrid-9', 'hybrid-6')).toBe(
			'With no plug in, three pairs of lugs sound here and none there.'
		);
		expect(signWords('hybrid-6', 'hybrid-5')).toBe(
			'With a TS plug in, one pair of lugs sounds here and none there.'
		);
	});

	it('say so where only the face tells', () =>
		expect(signWords('three-pin-male', 'three-pin-female')).toBe(
			'No reading differs: the meter cannot tell, only the face can.'
		));

	it('say so where only the number of lugs tells', () =>
		expect(signWords('hybrid-9', 'jack-trs-break')).toBe(
			'What sounds is the same on both; only the number of lugs differs.'
		));

	it('ask a question', () => {
		expect(questionWords({ state: 'trs', a: 'ring', b: 2 })).toBe(
			'With a TRS plug in, touch the ring of the plug and lug c.'
		);
		expect(questionWords({ state: 'none', a: 0, b: 4 })).toBe(
			'With no plug in, touch lugs a and e.'
		);
	});

	it('name a kind inside a sentence', () => {
		expect(SOCKET_KINDS.map(plainName)).toEqual([
			'hybrid of five',
			'hybrid of six',
			'hybrid of nine',
			'hybrid of ten',
			'female three-pin socket',
			'male three-pin socket',
			'TS jack',
			'TS jack with break contact',
			'TRS jack',
			'TRS jack with break contacts',
			'patch jack',
			'TS jack with changeover'
		]);
		expect(foundWords('patch-jack')).toBe('It is a patch jack.');
	});

	it('count', () => {
		expect(countWords(1, 'lug')).toBe('one lug');
		expect(countWords(9, 'lug')).toBe('nine lugs');
		expect(countWords(0, 'pair')).toBe('no pair');
	});
});
