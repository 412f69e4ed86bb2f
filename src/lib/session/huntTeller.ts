/**
 * Tells a hunter how the hunt goes without holding up the page: one worker for one screen, the newest
 * question is the one that is answered. Where no worker can be had it is done on the page, later.
 */
import { toldHunt, type HuntQuestion, type ToldHunt } from '../diagnosis';
import address from './hunt.worker?worker&url';
import { startWorker } from './trustedWorker';

export class HuntTeller {
	private turn = 0;
	private worker: Worker | null = null;
	private waiting: { question: HuntQuestion; tell: (told: ToldHunt) => void } | null = null;

	constructor() {
		try {
			this.worker = startWorker(address);
			this.worker.onmessage = ({ data }: MessageEvent<{ turn: number; told: ToldHunt }>) =>
				this.hear(data.turn, data.told);
			this.worker.onerror = (event) => {
				event.preventDefault();
				this.worker = null;
				this.onPage();
			};
		} catch {
			this.worker = null;
		}
	}

	/** Asks; a newer question takes the place of an older one, which then is not answered. */
	ask(question: HuntQuestion, tell: (told: ToldHunt) => void) {
		this.turn += 1;
		this.waiting = { question, tell };
		// What a screen holds may be a proxy, which no worker can be sent.
		const plain = JSON.parse(JSON.stringify(question)) as HuntQuestion;
		if (this.worker) this.worker.postMessage({ turn: this.turn, question: plain });
		else this.onPage();
	}
	end() {
		this.waiting = null;
		this.worker?.terminate();
	}

	private hear(turn: number, told: ToldHunt) {
		if (turn === this.turn) this.waiting?.tell(told);
	}
	private onPage() {
		const { turn, waiting } = this;
		if (waiting) setTimeout(() => this.hear(turn, toldHunt(waiting.question)), 50);
	}
}
