/** The test card as CSV: a row a probe with room for what was read, then a row for each group that no probe catches. */
import type { Card } from '../../diagnosis';
import type { Bench } from '../../engine';
import { makeCsv } from '../../schedule';
import { silentGroups, silentLine } from '../../words/card';
import { groupsOf } from './cardParts';

export const makeCardCsv = (bench: Bench, card: Pick<Card, 'probes' | 'silent'>): string =>
	makeCsv([
		['step', 'plugs', 'red', 'black', 'should_be', 'was', 'note'],
		...groupsOf(bench, card).flatMap(({ state, rows }) =>
			rows.map((r) => [r.number, state, r.red, r.black, r.expect, '', ''])
		),
		...silentGroups(bench, card.silent).map((group) => [
			...['no probe', '', '', '', '', ''],
			silentLine(group)
		])
	]);
