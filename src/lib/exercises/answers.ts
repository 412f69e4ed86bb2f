/** The answers that an exercise itself knows, and the benches behind an answer. */
import { inState, withFaults, type Bench } from '../engine';
import { fittingOptions } from './choose';
import type { Exercise } from './exercise';
import type { Answer, Item } from './judged';
import { soundingCells } from './predict';

/** The bench that the meter feels: in a find exercise the hidden fault is in force. */
export const truthOf = (exercise: Exercise): Bench =>
	exercise.kind === 'find' ? withFaults(exercise.bench, [exercise.hidden]) : exercise.bench;

/** The bench as the answer leaves it, plugs where the exercise put them. */
export const answeredBench = (exercise: Exercise, answer: Answer): Bench =>
	answer.kind === 'wire' || answer.kind === 'put-right'
		? { ...exercise.bench, wires: answer.wires }
		: truthOf(exercise);

/** The same with the plugs as one judged thing needs them; put the probes on its pair. */
export const replayBench = (exercise: Exercise, answer: Answer, item: Item): Bench =>
	inState(answeredBench(exercise, answer), item.when);

/** The answer of someone who does nothing. It never passes. */
export function startAnswer(exercise: Exercise): Answer {
	switch (exercise.kind) {
		case 'predict':
			return { kind: 'predict', ticked: [] };
		case 'wire':
		case 'put-right':
			return { kind: exercise.kind, wires: exercise.bench.wires };
		case 'find':
			return { kind: 'find', fault: null, probes: [] };
		case 'choose':
			return { kind: 'choose', chosen: [] };
		case 'name':
			return { kind: 'name', names: {}, probes: [] };
		case 'order':
			return { kind: 'order', order: [] };
	}
}

/** A right answer, computed where it is not written down. It scores 1. */
export function solutionOf(exercise: Exercise): Answer {
	switch (exercise.kind) {
		case 'predict':
			return { kind: 'predict', ticked: soundingCells(exercise) };
		case 'wire':
		case 'put-right':
			return { kind: exercise.kind, wires: exercise.solution };
		case 'find':
			return { kind: 'find', fault: exercise.hidden, probes: exercise.solution };
		case 'choose':
			return { kind: 'choose', chosen: fittingOptions(exercise) };
		case 'name': {
			const own = exercise.bench.sockets.find((s) => s.id === exercise.socket)!;
			return { kind: 'name', names: exercise.lugs, socketKind: own.kind, probes: [] };
		}
		case 'order':
			return { kind: 'order', order: exercise.solution };
	}
}
