/** What the commands on faults answer, in short lines for people (`--pretty`), the headline first. */
import type { Candidate, Card, CardProbe, Diagnosis, Probe } from '../lib/diagnosis';
import type { Fault } from '../lib/engine';
import { classesText, classesWithFaults } from '../lib/words/classes';

const counted = (n: number, one: string, more = `${one}s`): string =>
	`${n} ${n === 1 ? one : more}`;

/** One fault in the words of the file format. */
function faultWords(fault: Fault): string {
	if ('wire' in fault) return `${fault.kind} ${fault.wire}`;
	if (fault.kind === 'bridge') return `bridge ${fault.between.join('–')}`;
	if (fault.kind === 'swap') return `swap ${fault.contacts.join('–')}`;
	return `${fault.kind} ${fault.contact}`;
}
const setWords = (faults: readonly Fault[]): string =>
	faults.map(faultWords).join(' and ') || 'sound';

const probeWords = ({ when, pair }: Probe): string => {
	const state = Object.entries(when).map(([socket, plug]) => `${socket} ${plug}`);
	return `with ${state.join(', ') || 'the bench as it is'}: ${pair.join('–')}`;
};

const silentLine = (silent: readonly Fault[]): string =>
	`no probe can catch: ${silent.map(faultWords).join(', ') || 'none'}`;

export const faultsLines = (found: {
	readonly faults: number;
	readonly classes: readonly (readonly Fault[])[];
	readonly silent: readonly Fault[];
}): string[] => [
	classesWithFaults(found.classes.length, found.faults),
	...found.classes.map((faults) => faults.map(faultWords).join(', ')),
	silentLine(found.silent)
];

const cardLine = (probe: CardProbe): string => `${probeWords(probe)} should be ${probe.expect}`;

export const cardLines = ({
	probes,
	silent,
	exact
}: Pick<Card, 'probes' | 'silent' | 'exact'>): string[] => [
	`${counted(probes.length, 'probe')}${exact ? '' : ', not proven the fewest'}`,
	...probes.map(cardLine),
	silentLine(silent)
];

function candidateLine({ faults, weight, members }: Candidate): string {
	const stands = members && members > 1 ? `, and ${members - 1} more that answer alike` : '';
	return `${(100 * weight).toPrecision(3)} %: ${setWords(faults)}${stands}`;
}

/** Above one fault at once a candidate stands for its class; until then each is named by itself. */
function agreeLine(total: number, candidates: readonly Candidate[]): string {
	if (candidates.some((c) => c.members !== undefined)) return `${classesText(total)} agree`;
	const sound = candidates.some((c) => c.faults.length === 0) ? 1 : 0;
	const faults = counted(total - sound, 'single fault');
	return sound ? `${faults} or none agree` : `${faults} ${total === 1 ? 'agrees' : 'agree'}`;
}

export function diagnosisLines({ candidates, total, next, conflict }: Diagnosis): string[] {
	if (conflict)
		return [
			'nothing agrees with the readings',
			...conflict.map((r) => `measure again, ${probeWords(r)} was ${r.answer}`)
		];
	const rest = total - candidates.length;
	return [
		agreeLine(total, candidates),
		...candidates.map(candidateLine),
		...(rest > 0 ? [`and ${rest} more`] : []),
		next
			? `next, ${probeWords(next)} tells ${next.gain.toFixed(2)} bit`
			: 'no probe can tell the rest apart'
	];
}
