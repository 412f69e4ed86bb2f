/** The worker that advises: questions in, answers out. Warms itself up before the first one comes. */
import { EMPTY_BENCH } from '../engine';
import { AdviceHost, type Answer, type Question } from './adviceHost';

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

let latest: Question | null = null;

/** Answers beforehand what is likely to be asked first, once, while the person holds the probes. */
function rehearse(answer: Answer) {
	const asked = latest;
	if (!asked || asked.turn !== answer.turn || asked.ask.readings.length > 0) return;
	const next = 'reply' in answer && answer.reply.last ? answer.reply.next : null;
	if (!next) return;
	const readings = [{ when: next.when, pair: next.pair, answer: 'apart' as const }];
	setTimeout(() => {
		// A question that came meanwhile is never put off.
		if (latest === asked) host.take({ turn: -1, ask: { ...asked.ask, par: false, readings } });
	});
}

const host = new AdviceHost({
	post: (answer) => {
		if (answer.turn < 0) return;
		postMessage(answer);
		rehearse(answer);
	},
	later: (run) => setTimeout(run, 0),
	now: () => performance.now(),
	slice: 20
});
addEventListener('message', ({ data }: MessageEvent<Question>) => {
	latest = data;
	host.take(data);
});
host.take(WARM);
