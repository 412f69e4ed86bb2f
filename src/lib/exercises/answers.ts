/** The benches behind an answer: what it made, and in which state each judged thing is replayed. */
import { inState, withFaults, type Bench } from '../engine';
import type { Answer, Exercise, Item } from './exercise';

/** The bench that the meter feels: in a find exercise the hidden fault is in force. */
export const truthOf = (exercise: Exercise): Bench =>
	exercise.kind === 'find' ? withFaults(exercise.bench, [exercise.hidden]) : exercise.bench;

/** The bench as the answer leaves it, plugs where the exercise put them. */
export const answeredBench = (exercise: Exercise, answer: Answer): Bench =>
	answer.kind === 'wire' ? { ...exercise.bench, wires: answer.wires } : truthOf(exercise);

/** The same with the plugs as one judged thing needs them; put the probes on its pair. */
export const replayBench = (exercise: Exercise, answer: Answer, item: Item): Bench =>
	inState(answeredBench(exercise, answer), item.when);
