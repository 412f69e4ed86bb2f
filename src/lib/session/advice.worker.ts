/** The worker that advises: questions in, answers out. Warms itself up before the first one comes. */
import { EMPTY_BENCH } from '../engine';
import { AdviceHost, type Question } from './adviceHost';

const WARM: Question = {
	turn: -1,
	ask: {
		bench: {
			...EMPTY_BENCH,
			sockets: [{ id: 'A', kind: 'hybrid-10', bush: 'insulated', label: '' }],
			wires: [{ id: 'w', from: 'A.2', to: 'A.T', awg: 26, mm: 40 }]
		},
		readings: [],
		most: 2,
		par: true
	}
};

const host = new AdviceHost({
	post: (answer) => {
		if (answer.turn >= 0) postMessage(answer);
	},
	later: (run) => setTimeout(run, 0),
	now: () => performance.now(),
	slice: 20
});
addEventListener('message', ({ data }: MessageEvent<Question>) => host.take(data));
host.take(WARM);
