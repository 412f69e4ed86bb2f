/** The answers of the headless program in short lines for people (`--pretty`), the headline first. */
import {
	showOhms,
	type Check,
	type Heard,
	type MeterMode,
	type NodeName,
	type Ohms,
	type Pair,
	type Reading,
	type Scored,
	type Volts
} from '../lib/engine';

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;
const figures = (value: number): number => Number(value.toPrecision(4));

/** Four figures at any size: milliohms of a jumper and gigaohms of dirt alike. */
function plainOhms(ohms: Ohms): string {
	if (ohms < 1) return `${figures(ohms * 1000)} mΩ`;
	return ohms < 999.95 ? `${figures(ohms)} Ω` : showOhms(ohms);
}

export const netLines = (nets: readonly (readonly NodeName[])[]): string[] => [
	counted(nets.length, 'net'),
	...nets.map((net) => net.join('  '))
];

export const ohmsLines = (from: NodeName, to: NodeName, ohms: Ohms | null): string[] => [
	`${from} to ${to}: ${ohms === null ? 'nothing joins them' : plainOhms(ohms)}`
];

export const voltsLines = (from: NodeName, to: NodeName, volts: Volts | null): string[] => [
	`${from} over ${to}: ${volts === null ? 'nothing ties the two' : `${figures(volts)} V`}`
];

export function meterLines(
	mode: MeterMode,
	red: NodeName,
	black: NodeName,
	reading: Reading
): string[] {
	const sound = mode !== 'continuity' ? '' : reading.beep ? ', the beeper sounds' : ', no beep';
	const line = `${mode}, red on ${red}, black on ${black}: ${reading.display}${sound}`;
	return reading.warning ? [line, `warning: ${reading.warning}`] : [line];
}

const pairWords = (pairs: readonly Pair[]): string =>
	pairs.map(([a, b]) => `${a}–${b}`).join('  ') || 'nothing joined';

export const matrixLines = (
	socket: string,
	states: Readonly<Record<string, readonly Pair[]>>
): string[] => [
	`socket ${socket}, joined pairs by plug`,
	...Object.entries(states).map(([plug, pairs]) => `${plug}: ${pairWords(pairs)}`)
];

function heardLine(input: string, heard: Readonly<Record<string, Heard>>): string {
	const sources = Object.entries(heard).map(
		([source, { db, polarity }]) => `${source} at ${db.toFixed(1)} dB, polarity ${polarity}`
	);
	if (sources.length === 0) return `${input} hears nothing`;
	return `${input} hears ${sources.join('; ')}${sources.length > 1 ? ' (a clash)' : ''}`;
}

export function hearsLines(
	heard: Readonly<Record<string, Readonly<Record<string, Heard>>>>
): string[] {
	const inputs = Object.entries(heard);
	return [
		counted(inputs.length, 'input'),
		...inputs.map(([input, sources]) => heardLine(input, sources))
	];
}

function wantedWords({ pair: [a, b], wanted }: Check): string {
	if (wanted === 'joined' || wanted === 'apart') return `${a} and ${b} should be ${wanted}`;
	if (wanted === 'hears') return `${a} should hear ${b}`;
	if (wanted === 'deaf') return `${a} should hear nothing of ${b}`;
	return `${a} should hear ${b} with ${wanted}`;
}

function checkLine(check: Check, unsafe: readonly Check[]): string {
	const state = Object.entries(check.when).map(([socket, plug]) => `${socket} ${plug}`);
	const word = unsafe.includes(check) ? 'unsafe' : 'failed';
	return `${word}, with ${state.join(', ') || 'the bench as it is'}: ${wantedWords(check)}`;
}

export const scoreLines = ({ checks, passed, unsafe, failed, score }: Scored): string[] => [
	`${passed} of ${counted(checks, 'check')} passed, score ${score}`,
	...failed.map((check) => checkLine(check, unsafe))
];
