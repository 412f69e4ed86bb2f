/**
 * A hunt on real hardware: the panel, what is in its sockets, the pair under the probes, the readings
 * that a person has noted, and the advice on them. Readings are data in a list; undo goes back to an
 * older list. Advice comes from the worker in stages; the page only shows what has arrived.
 */
import type { Advice, Group, ProbeAnswer, Reply } from '../diagnosis';
import { groupKey, nodesAtPanel, stateKey, strangeReading } from '../diagnosis';
import type { Bench, NodeName, Pair, When } from '../engine';
import { plugIn, splitNode } from '../engine';
import { samePair } from '../exercises/same';
import { freshAt, type AtPanel, type KeptReadings, type Noted } from '../storage/readings';
import {
	cannotWords,
	classesText,
	numberWords,
	readingLine,
	ruledOutWords,
	sentence
} from '../words';
import type { Adviser } from './advice';

/** So long the probes stay where they were for news of what their reading came to, ms. */
const AWAITS = 16;
/** Classes that are listed. */
const LISTED = 24;

/** After the next frame is painted; at once where there are no frames. */
function later(run: () => void) {
	if (typeof requestAnimationFrame !== 'function') run();
	else requestAnimationFrame(() => setTimeout(run));
}

/** Sockets that are not as drawn: an empty one that is to be empty is as drawn. */
const notAsDrawn = (bench: Bench, when: When): When =>
	Object.fromEntries(
		Object.entries(when).filter(([id, state]) => state !== 'none' || plugIn(bench, id) !== null)
	);

export class RealHunt {
	bench: Bench;
	/** What sockets hold, where it is not as drawn. */
	when = $state.raw<When>({});
	first = $state.raw<NodeName | ''>('');
	second = $state.raw<NodeName | ''>('');
	/** The socket that is drawn. */
	socket = $state.raw('');
	noted = $state.raw<readonly Noted[]>([]);
	/** The same for the list on the page: it follows with `listed`. */
	shown = $state.raw<readonly Noted[]>([]);
	/** Faults at once, 1 to 3. */
	most = $state.raw(1);
	/** Only the panel itself can be reached: no advice at the far ends of its lines. */
	near = $state.raw(false);
	reply = $state.raw<Reply | null>(null);
	/** The same for long lists: it follows a task later, when what to do next is on the screen. */
	listed = $state.raw<Reply | null>(null);
	isWorking = $state.raw(false);
	/** Why there is no advice. */
	problem = $state.raw('');
	/** What the last step did, for the live region. */
	said = $state.raw('');
	private olds = $state.raw<readonly (readonly Noted[])[]>([]);
	private cancel: () => void = () => {};
	private adviser: Adviser | null = null;

	constructor(
		bench: Bench,
		private readonly keep: (kept: KeptReadings) => void = () => {}
	) {
		this.bench = $state.raw(bench);
		this.socket = bench.sockets[0]?.id ?? '';
	}

	readonly pair = $derived<Pair | null>(
		this.first !== '' && this.second !== '' && this.first !== this.second
			? [this.first, this.second]
			: null
	);
	/** Sockets to draw: both that the pair lies on, else the one that is looked at. */
	readonly drawn = $derived.by((): readonly string[] => {
		if (this.stays) return this.stays;
		const isSocket = (id: string) => this.bench.sockets.some((s) => s.id === id);
		const touched = [this.first, this.second].map((n) => splitNode(n)[0]).filter(isSocket);
		const both = touched.filter((id, i) => touched.indexOf(id) === i);
		if (both.length > 1 || both.includes(this.socket)) return both;
		return [...both, this.socket].filter(isSocket);
	});
	/** What stays drawn when probes come off, until the words of what is next are on the screen. */
	private stays = $state.raw<readonly string[] | null>(null);
	readonly counting = $derived(this.noted.filter((n) => !n.struck));
	readonly canUndo = $derived(this.olds.length > 0);
	/** The one class that is left, when it is enough to act on. */
	readonly answer = $derived<Group | null>(
		this.reply?.last && this.reply.settled ? (this.reply.groups[0] ?? null) : null
	);

	/** What to probe next; null while that is not known, or where nothing needs it. */
	readonly next = $derived<Advice | null>(
		this.answer || this.reply?.conflict ? null : (this.reply?.next ?? null)
	);
	/** Several classes are left, and only a probe at a far end would tell them apart. */
	readonly isStuck = $derived(
		this.near &&
			this.reply !== null &&
			this.reply.last &&
			!this.reply.settled &&
			!this.reply.conflict &&
			this.reply.next === null
	);

	/** Starts to ask this adviser. */
	begin(adviser: Adviser) {
		this.adviser = adviser;
		this.ask();
	}

	/** Another panel; readings that name what it does not have are left out. */
	open(
		bench: Bench,
		noted: readonly Noted[] = [],
		most = this.most,
		near = this.near,
		at: AtPanel = freshAt(bench)
	) {
		this.bench = bench;
		this.near = near;
		this.when = at.when;
		[this.first, this.second] = [at.first, at.second];
		this.socket = at.socket;
		this.most = most;
		this.reply = null;
		this.olds = [];
		this.noted = noted.filter((n) => strangeReading(bench, [n]) === null);
		this.list();
		this.save();
		this.ask();
	}

	/** Puts the next probe on a node: the first, then the second, then the first anew. */
	touch(node: NodeName) {
		this.free();
		if (this.first === node) this.first = '';
		else if (this.second === node) this.second = '';
		else if (this.first === '') this.first = node;
		else if (this.second === '') this.second = node;
		else [this.first, this.second] = [node, ''];
		this.save();
	}
	/** Puts one of the probes on a node, or takes it off. */
	put(probe: 'first' | 'second', node: NodeName | '') {
		this.free();
		this[probe] = node;
		this.save();
	}
	lift() {
		this.first = this.second = '';
		this.save();
	}
	/** Looks at another socket. */
	show(socket: string) {
		this.free();
		this.socket = socket;
		this.save();
	}

	/** What the socket holds now; `drawn` for the file's own. */
	setPlug(socket: string, state: string) {
		const rest = Object.fromEntries(Object.entries(this.when).filter(([id]) => id !== socket));
		this.when = state === 'drawn' ? rest : notAsDrawn(this.bench, { ...rest, [socket]: state });
		this.save();
	}

	/** Sets sockets and probes as a probe wants them. */
	take({ when, pair }: { when: When; pair: Pair }) {
		this.free();
		this.when = notAsDrawn(this.bench, when);
		[this.first, this.second] = pair;
		const [owner] = splitNode(pair[0]);
		this.save();
		// The drawing turns to that socket when the probe's words are on the screen.
		if (owner !== this.socket && this.bench.sockets.some((s) => s.id === owner))
			later(() => this.show(owner));
	}

	/** Notes what the meter said of the pair. An older reading of the same probe is struck out. */
	note(answer: ProbeAnswer, meter: string) {
		this.news();
		if (!this.pair) return;
		const probe = { when: this.when, pair: this.pair };
		const state = stateKey(this.bench, this.when);
		const isSame = (n: Noted) =>
			samePair(n.pair, probe.pair) && stateKey(this.bench, n.when) === state;
		const older = this.noted.map((n) => (isSame(n) ? { ...n, struck: true } : n));
		const lift = this.awaitNews();
		this.change([...older, { ...probe, answer, meter, struck: false }]);
		if (!this.adviser) lift();
	}
	/**
	 * The probes come off with the news of their reading, which is a moment later: so the page is laid
	 * out once and not twice. Where news takes long, or another step is taken, they come off before.
	 */
	private awaitNews(): () => void {
		const wait = setTimeout(() => this.news(), AWAITS);
		return (this.news = () => {
			clearTimeout(wait);
			this.news = () => {};
			this.stays = this.drawn;
			this.lift();
		});
	}
	private news: () => void = () => {};
	/** Another step is taken: nothing waits any longer. */
	private free() {
		this.news();
		this.stays = null;
	}
	/** Counts a reading, or leaves it out. */
	strike(at: number, struck: boolean) {
		this.change(this.noted.map((n, i) => (i === at ? { ...n, struck } : n)));
	}
	remove(at: number) {
		this.change(this.noted.filter((_, i) => i !== at));
	}
	/** Strikes a reading out and puts plugs and probes as they were for it. */
	again(at: number) {
		const noted = this.noted[at]!;
		this.strike(at, true);
		this.take(noted);
	}
	clear() {
		this.change([]);
	}
	undo() {
		this.news();
		const last = this.olds.at(-1);
		if (!last) return;
		this.olds = this.olds.slice(0, -1);
		this.noted = this.shown = last;
		this.said = 'The last step is taken back.';
		this.save();
		this.ask(false);
	}
	setMost(most: number) {
		this.said = '';
		this.most = most;
		this.save();
		this.ask(false);
	}

	/** Whether advice keeps to the panel itself. A probe that stands at a far end comes off. */
	setNear(near: boolean) {
		this.said = '';
		this.near = near;
		const within = nodesAtPanel(this.bench);
		if (near && [this.first, this.second].some((n) => n !== '' && !within.includes(n))) this.lift();
		this.save();
		this.ask(false);
	}

	private change(noted: readonly Noted[]) {
		this.olds = [...this.olds.slice(-99), this.noted];
		this.noted = noted;
		// A new reading is added to the list a moment later; what takes one away shows at once.
		if (noted.length <= this.shown.length || !this.adviser) this.shown = noted;
		this.save();
		this.ask();
	}
	private list() {
		this.listed = this.reply;
		this.shown = this.noted;
		this.stays = null;
	}
	private save() {
		this.keep(this.kept());
	}
	/** All that is to be kept of it. */
	kept(): KeptReadings {
		const { bench, noted, most, near, when, socket, first, second } = this;
		return { bench, noted, most, near, at: { when, socket, first, second } };
	}

	private ask(tell = true) {
		const { adviser, bench, most, reply: before } = this;
		this.cancel();
		if (!adviser) return;
		this.isWorking = true;
		this.problem = '';
		const readings = this.counting.map(({ when, pair, answer }) => ({ when, pair, answer }));
		this.cancel = adviser.advise(
			{ bench, readings, most, listed: LISTED, ...(this.near && { within: nodesAtPanel(bench) }) },
			(reply) => {
				this.news();
				this.reply = reply;
				later(() => this.list());
				if (!reply.last) return;
				this.isWorking = false;
				if (tell && before?.last && before.most === most) this.tell(before, reply);
			},
			(message) => {
				this.news();
				this.isWorking = false;
				this.reply = null;
				this.list();
				this.problem = message;
			}
		);
	}

	private tell(before: Reply, after: Reply) {
		if (after.conflict) {
			this.said = `With at most ${after.most} ${after.most === 1 ? 'fault' : 'faults'}, nothing agrees with all readings now. ${sentence(`${numberWords(after.conflict.length)} of them ${cannotWords(after.conflict.length)}`).slice(0, -1)}: ${after.conflict.map((r) => sentence(readingLine(this.bench, r))).join(' ')}`;
			return;
		}
		if (before.conflict || after.classes > before.classes) {
			this.said = `${classesText(after.classes)} ${after.classes === 1 ? 'agrees' : 'agree'} with the readings that count.`;
			return;
		}
		const left = after.groups.map(groupKey);
		const gone = before.groups.filter((g) => !left.includes(groupKey(g)));
		const out = ruledOutWords(this.bench, before.classes, after.classes, gone, after.most);
		this.said = after.settled ? `${out} That is enough to act.` : out;
	}

	end() {
		this.news();
		this.cancel();
	}
}
