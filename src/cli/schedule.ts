/** The command `schedule`: the wiring schedule of a bench as data, and in short lines for people. */
import type { Bench } from '../lib/engine';
import { labelName, scheduleOf, type Schedule } from '../lib/schedule';
import {
	buyLength,
	colourName,
	cutLength,
	functionWords,
	warningWords
} from '../lib/words/schedule';
import type { Reply } from './command';

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

const conductorLine = (c: Schedule['conductors'][number]): string =>
	`${labelName(c.name)}: ${c.from} to ${c.to}, ${c.awg} AWG (${c.mm2} mm²), ${cutLength(c.mm)}, ${c.colour} ${colourName(c.colour)}, ${functionWords(c.function)}`;

const stepLine = ({ at, ends }: Schedule['order'][number], i: number): string =>
	`${i + 1}. ${at}: ${ends.map((e) => labelName(e.name)).join(', ')}`;

function cutLines({ cuts }: Schedule): string[] {
	const pieces = (list: readonly { mm: number }[]) => list.map((p) => cutLength(p.mm)).join(', ');
	return [
		...cuts.wires.map(
			(w) => `${w.awg} AWG ${w.colour}: ${pieces(w.pieces)}; buy ${buyLength(w.buy)}`
		),
		...cuts.cables.map(
			(c) =>
				`cable of ${counted(c.cores, 'core')}, ${c.awg} AWG: ${pieces(c.pieces)}; buy ${buyLength(c.buy)}`
		)
	];
}

const block = (title: string, lines: readonly string[]): string[] =>
	lines.length > 0 ? [title, ...lines.map((l) => `  ${l}`)] : [];

/** The schedule in short lines, the headline first. */
export function scheduleLines(bench: Bench, schedule: Schedule): string[] {
	const { conductors, order, warnings } = schedule;
	return [
		`${counted(conductors.length, 'conductor')}, ${counted(order.length, 'cup')}`,
		...block('Conductors', conductors.map(conductorLine)),
		...block('Order of soldering, each cup once', order.map(stepLine)),
		...block('Cut list', cutLines(schedule)),
		...block(
			'Look at this twice',
			warnings.map((w) => warningWords(bench, w))
		)
	];
}

/** What `schedule` answers for one bench. */
export function scheduleReply(bench: Bench): Reply {
	const schedule = scheduleOf(bench);
	return { kind: 'data', data: schedule, lines: () => scheduleLines(bench, schedule) };
}
