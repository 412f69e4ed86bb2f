/**
 * The commands of the headless program as a table. A command says which options it needs and takes,
 * and answers one bench; reading files, checking usage, output and exit status are the same for all
 * (`run.ts`). Every answer comes from the engine: no rule of contact stands here. Commands on faults have
 * a file of their own (diagnosisCommands.ts).
 */
import {
	hears,
	matrixOf,
	netlistOf,
	netsOf,
	oneOf,
	readMeter,
	resistance,
	scoreOf,
	strangeNode,
	strangeRequirement,
	voltage,
	type Bench
} from '../lib/engine';
import { command, data, type Command, type Reply } from './command';
import { DIAGNOSIS_COMMANDS } from './diagnosisCommands';
import * as people from './people';
import { scheduleReply } from './schedule';

/** A refusal for the first of the named options whose node the bench does not have; null if all are there. */
function strangeNodes<K extends 'from' | 'to' | 'red' | 'black'>(
	bench: Bench,
	given: { readonly [P in K]: string },
	names: readonly K[]
): Reply | null {
	for (const name of names) {
		const message = strangeNode(bench, given[name]);
		if (message) return { kind: 'refused', path: `--${name}`, message };
	}
	return null;
}

function strangeSocket(bench: Bench, id: string): Reply | null {
	const ids = bench.sockets.map((s) => s.id);
	if (ids.includes(id)) return null;
	const right = ids.length ? `name ${oneOf(ids.slice(0, 20))}` : 'the bench has no sockets';
	return { kind: 'refused', path: '--socket', message: `there is no socket "${id}"; ${right}` };
}

export const COMMANDS: ReadonlyMap<string, Command> = new Map([
	[
		'nets',
		command({
			says: 'the nets of the bench: every set of nodes that conductors make one',
			example: '',
			answer(bench) {
				const nets = netsOf(bench).list;
				return data({ nets }, () => people.netLines(nets));
			}
		})
	],
	[
		'ohms',
		command({
			says: 'the resistance between two nodes in ohms; null where nothing joins them',
			example: '--from A.T --to A.2',
			needs: ['from', 'to'],
			answer(bench, { from, to }) {
				const strange = strangeNodes(bench, { from, to }, ['from', 'to']);
				if (strange) return strange;
				const found = resistance(bench, from, to);
				const ohms = Number.isFinite(found) ? found : null;
				return data({ ohms }, () => people.ohmsLines(from, to, ohms));
			}
		})
	],
	[
		'volts',
		command({
			says: 'the voltage of one node over another; null where nothing ties the two',
			example: '--from A.2 --to A.1',
			needs: ['from', 'to'],
			answer(bench, { from, to }) {
				const strange = strangeNodes(bench, { from, to }, ['from', 'to']);
				if (strange) return strange;
				const volts = voltage(bench, from, to);
				return data({ volts }, () => people.voltsLines(from, to, volts));
			}
		})
	],
	[
		'meter',
		command({
			says: 'what a hand meter shows with its probes on two nodes',
			example: '--mode continuity --red A.T --black A.2',
			needs: ['mode', 'red', 'black'],
			takes: ['zeroed'],
			answer(bench, { mode, red, black, zeroed = false }) {
				const strange = strangeNodes(bench, { red, black }, ['red', 'black']);
				if (strange) return strange;
				const reading = readMeter(bench, mode, red, black, zeroed);
				return data(reading, () => people.meterLines(mode, red, black, reading));
			}
		})
	],
	[
		'matrix',
		command({
			says: 'which contacts of a socket are joined, for each bare plug that fits it',
			example: '--socket A',
			needs: ['socket'],
			answer(bench, { socket }) {
				const strange = strangeSocket(bench, socket);
				if (strange) return strange;
				const states = matrixOf(bench, socket);
				return data({ socket, states }, () => people.matrixLines(socket, states));
			}
		})
	],
	[
		'hears',
		command({
			says: 'what each input hears of each source, in dB over one volt, and its polarity',
			example: '',
			answer(bench) {
				const heard = hears(bench);
				return data({ hears: heard }, () => people.hearsLines(heard));
			}
		})
	],
	[
		'netlist',
		command({
			says: 'the bench as a SPICE netlist, plain text',
			example: '',
			answer: (bench) => ({ kind: 'text', text: netlistOf(bench) })
		})
	],
	[
		'schedule',
		command({
			says: 'the wiring schedule: conductors, order of soldering, cut list and labels',
			example: '',
			answer: scheduleReply
		})
	],
	[
		'score',
		command({
			says: 'the checks of an exercise, run against the bench, and the score',
			example: '--exercise exercise.json',
			needs: ['exercise'],
			answer(bench, { exercise }) {
				const strange = strangeRequirement(bench, exercise.value);
				if (strange && !strange.ok)
					return { kind: 'refused', of: exercise.file, ...strange.problem };
				const scored = scoreOf(bench, exercise.value);
				return data(scored, () => people.scoreLines(scored));
			}
		})
	],
	...DIAGNOSIS_COMMANDS
]);
