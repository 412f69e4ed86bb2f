/** The bench that is there on the first visit, so that there is something to touch. Invented. */
import { checkBench, type Bench } from '../engine';

const START = {
	format: 'solderside-bench',
	version: 1,
	title: 'Wall plate by the stage',
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-9', label: 'Stage 1' }],
	wires: [{ id: 'w1', from: 'A.TN', to: 'A.2', awg: 26, mm: 40 }],
	plugs: [{ id: 'p1', kind: 'ts' }],
	devices: [{ id: 'DESK', kind: 'mic-input' }],
	cables: [
		{
			id: 'c1',
			m: 12,
			awg: 24,
			cores: [
				['A.1', 'DESK.shield'],
				['A.2', 'DESK.hot'],
				['A.3', 'DESK.cold']
			]
		}
	]
};

export function startBench(): Bench {
	const made = checkBench(START);
	if (!made.ok) throw new Error(`${made.problem.path}: ${made.problem.message}`);
	return made.value;
}
