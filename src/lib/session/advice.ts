/**
 * Advice for screens: one question at a time, replies in stages as they are found. The work is done
 * in a worker that has warmed up; where none can be started (a sandboxed frame, an old browser) the
 * same host runs on the page in short slices.
 */
import type { Ask, Reply } from '../diagnosis';
import workerUrl from './advice.worker?worker&url';
import { AdviceHost, type Answer, type Question } from './adviceHost';
import { startWorker } from './trustedWorker';

export type Send = (question: Question) => void;

/** The host on the page itself. */
export function onPage(post: (answer: Answer) => void): Send {
	const host = new AdviceHost({
		post,
		later: (run) => setTimeout(run, 0),
		now: () => performance.now(),
		slice: 8
	});
	return (question) => host.take(question);
}

/** The host in a worker. Throws where no worker can be made; `lost` is called if it does not start. */
function inWorker(post: (answer: Answer) => void, lost: () => void): Send & { end: () => void } {
	const worker = startWorker(workerUrl);
	worker.onmessage = ({ data }: MessageEvent<Answer>) => post(data);
	worker.onerror = lost;
	return Object.assign((question: Question) => worker.postMessage(question), {
		end: () => worker.terminate()
	});
}

interface Waiting {
	readonly question: Question;
	readonly onReply: (reply: Reply) => void;
	readonly onError: (message: string) => void;
}

/** One adviser for one screen. Call `end` when the screen goes. */
export class Adviser {
	private turn = 0;
	private waiting: Waiting | null = null;
	private send: Send;
	private stop: () => void = () => {};

	constructor() {
		try {
			const worker = inWorker(this.hear, this.moveToPage);
			this.send = worker;
			this.stop = worker.end;
		} catch {
			this.send = onPage(this.hear);
		}
	}

	/**
	 * Asks; `onReply` is called for each stage, `reply.last` is the end. A newer question takes the
	 * place of an older one, which then hears no more. Returns a function that gives the question up.
	 */
	advise(
		ask: Ask,
		onReply: (reply: Reply) => void,
		onError: (message: string) => void = () => {}
	): () => void {
		const turn = this.turn++;
		// What a screen holds may be a proxy, which no worker can be sent.
		const question = { turn, ask: JSON.parse(JSON.stringify(ask)) as Ask };
		this.waiting = { question, onReply, onError };
		this.send(question);
		return () => {
			if (this.waiting?.question.turn === turn) this.waiting = null;
		};
	}

	/** The last reply to a question; rejects if it cannot be answered. Never settles if given up. */
	settled(ask: Ask): Promise<Reply> {
		return new Promise((settle, refuse) => {
			this.advise(
				ask,
				(reply) => reply.last && settle(reply),
				(message) => refuse(new Error(message))
			);
		});
	}

	end() {
		this.waiting = null;
		this.stop();
	}

	private hear = (answer: Answer) => {
		const { waiting } = this;
		if (!waiting || answer.turn !== waiting.question.turn) return;
		if ('error' in answer) waiting.onError(answer.error);
		else waiting.onReply(answer.reply);
	};

	private moveToPage = () => {
		this.stop();
		this.stop = () => {};
		this.send = onPage(this.hear);
		if (this.waiting) this.send(this.waiting.question);
	};
}
