/** The commands on faults as hypotheses: their classes, the test card, and diagnosis from readings. */
import { cardOf, diagnose, faultClassesOf, strangeReading } from '../lib/diagnosis';
import { command, data, type Command } from './command';
import * as people from './diagnosisPeople';

export const DIAGNOSIS_COMMANDS: readonly (readonly [string, Command])[] = [
	[
		'faults',
		command({
			says: 'every single fault that the bench may have, by classes that no probe can tell apart',
			example: '',
			answer(bench) {
				const { faults, classes, silent } = faultClassesOf(bench);
				const reply = { faults: faults.length, classes, silent };
				return data(reply, () => people.faultsLines(reply));
			}
		})
	],
	[
		'card',
		command({
			says: 'as few probes as can be found that together catch every fault that is not silent',
			example: '',
			answer(bench) {
				const { probes, silent, exact } = cardOf(bench);
				return data({ probes, silent }, () => people.cardLines({ probes, silent, exact }));
			}
		})
	],
	[
		'diagnose',
		command({
			says: 'which faults agree with the readings, the likeliest first, and what to probe next',
			example: '--readings readings.json',
			needs: ['readings'],
			takes: ['most'],
			answer(bench, { readings, most = '1' }) {
				const strange = strangeReading(bench, readings.value);
				if (strange && !strange.ok)
					return { kind: 'refused', of: readings.file, ...strange.problem };
				const found = diagnose(bench, readings.value, Number(most));
				return data(found, () => people.diagnosisLines(found));
			}
		})
	]
];
