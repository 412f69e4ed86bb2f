/**
 * The test card as CSV: a row a probe with room for what was read, then the
 * bonds of the chassis lugs, then a row for each group that no probe catches.
 */
import type { Card } from '../../diagnosis';
import type { Bench } from '../../engine';
import { makeCsv } from '../../schedule';
import { BOND_WORDS, silentGroups, silentLine } from '../../words/card';
import { bondsOf, groupsOf } from './cardParts';

export const makeCardCsv = (bench: Bench, card: Pick<Card, 'probes' | 'silent'>): string =>
	makeCsv([
		['step', 'plugs', 'red', 'black', 'should_be', 'was', 'note'],
		...groupsOf(bench, card).flatMap(({ state, rows }) =>
			rows.map((r) => [r.number, state, r.red, r.black, r.expect, '', ''])
		),
		...bondsOf(bench).map(({ lug }) => [
			...['by eye and by meter', '', lug, BOND_WORDS.panel, 'sounds', ''],
			BOND_WORDS.note
		]),
		...silentGroups(bench, card.silent).map((group) => [
			...['no probe', '', '', '', '', ''],
			silentLine(group)
		])
	]);
