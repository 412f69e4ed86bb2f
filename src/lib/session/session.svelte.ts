/**
 * One learner at one bench: the only place where its state changes. `bench` is what is drawn;
 * `truth` is what the meter measures (a hidden fault of an exercise is in force there and nowhere
 * else). Everything that follows from them is derived.
 */
import {
	PLUG_KINDS,
	SEATED,
	fits,
	isJoined,
	netsOf,
	nodesOfBench,
	pathBetween,
	plugIn,
	readMeter,
	shareCircuit,
	splitNode,
	withFaults,
	type Bench,
	type Fault,
	type MeterMode,
	type NodeName,
	type PlugKind
} from '../engine';
import { cupWords, kindWords, nodeName, standingWords, travelWords } from '../words';
import { inserted, withJumper, withNewPlug, withoutWire, type Change } from './changes';
import { History } from './history.svelte';
import { keeper, sameBuild, sameLayout, sameState } from './still';
import { Turns, afterFrame } from './turns';

export const TOOLS = ['red', 'black', 'jumper'] as const;
export type Tool = (typeof TOOLS)[number];
export type Probe = 'red' | 'black';

/** So many sentences on one move can be taken in. */
const MOST_SAID = 4;
/** How long a hand rests before what stands aside follows, ms. */
const RESTS = 150;

/** A node and what it is called. */
export interface NamedNode {
	readonly node: NodeName;
	readonly name: string;
}

export interface Rules {
	/** Faults the meter feels and the drawing does not show. */
	readonly hidden?: readonly Fault[];
	/** Whether the reason and the lit path may be shown. False while a fault is hunted. */
	readonly reasons?: boolean;
	/** What may be changed: all, wires between contacts of sockets only, or plugs only. */
	readonly edits?: 'all' | 'jumpers' | 'plugs';
}

export class Session {
	readonly rules: Required<Rules>;
	readonly history: History<Bench>;
	tool = $state<Tool>('red');
	red = $state.raw<NodeName | null>(null);
	black = $state.raw<NodeName | null>(null);
	jumperFrom = $state.raw<NodeName | null>(null);
	/** Pointed at or focused. */
	at = $state.raw<NodeName | null>(null);
	mode = $state<MeterMode>('continuity');
	zeroed = $state(false);
	view = $state<'rear' | 'front'>('rear');
	inside = $state(true);
	chosen = $state.raw<string | null>(null);
	awg = $state(26);
	mm = $state(40);
	/** What just happened, spoken and shown. */
	said = $state('');
	/** A plug picked up and not yet put anywhere: a kind, or the id of one that lies loose. */
	held = $state.raw<PlugKind | null>(null);
	/** How many readings were taken: changes of a probe or a mode while both probes are on. */
	readings = $state.raw(0);

	bench = $derived.by(() => this.history.present);
	#layout = $state.raw() as Bench;
	#still = $state.raw() as Bench;
	/** The bench for what asks only what lies where: it rests while a plug travels or a title is typed. */
	get layout(): Bench {
		return this.#layout;
	}
	/** The bench for what asks only what is joined: it rests between two events of the travel. */
	get still(): Bench {
		return this.#still;
	}
	#settled = $state.raw() as Bench;
	#settles: ReturnType<typeof setTimeout> | null = null;
	#restless = false;
	/** The bench for what tells of a travel beside the plug that moves: it follows when the hand rests. */
	get settled(): Bench {
		return this.#settled;
	}
	#counted = $state.raw() as Bench;
	/** The bench for numbers beside a plug that moves: they follow some frames behind it. */
	get counted(): Bench {
		return this.#counted;
	}
	/** Makes the numbers follow at once: the hand is on one of them. */
	count() {
		this.#counted = this.bench;
	}
	/** The title, which rests while a plug travels. */
	get title(): string {
		return this.#title;
	}
	#title = $state('');
	/** What the meter measures, as still as that. */
	truth = $derived.by(() => this.#true(this.still));
	/** The socket in hand. */
	socket = $derived.by(
		() => this.layout.sockets.find((s) => s.id === this.chosen) ?? this.layout.sockets[0] ?? null
	);
	plug = $derived.by(() => (this.socket ? plugIn(this.bench, this.socket.id) : null));
	/** Every node that stands on the bench, in file order, as `placed`. */
	nodes = $derived.by(() => nodesOfBench(this.placed));
	/** The same with names, for lists to choose from. One whose name stays is the same object. */
	named = $derived.by(() => this.#named(this.nodes));
	#names: readonly NamedNode[] = [];
	#named(nodes: readonly NodeName[]): readonly NamedNode[] {
		const before = Object.fromEntries(this.#names.map((n) => [n.node, n]));
		this.#names = nodes.map((node) => {
			const name = nodeName(this.placed, node);
			return before[node]?.name === name ? before[node] : { node, name };
		});
		return this.#names;
	}
	/**
	 * The layout for what gives things their places: at once when something is built or taken away, a
	 * frame later when only plugs come and go. The socket itself has answered by then.
	 */
	get placed(): Bench {
		return this.#placed;
	}
	#placed = $state.raw() as Bench;
	/** What is joined, for what stands beside the plug in hand: a frame later too. */
	get stillAside(): Bench {
		return this.#stillAside;
	}
	#stillAside = $state.raw() as Bench;
	/** The layout and what is joined for tables and lists further off: they come last, another frame later. */
	get aside(): Bench {
		return this.#aside;
	}
	get stillLast(): Bench {
		return this.#stillLast;
	}
	#aside = $state.raw() as Bench;
	#stillLast = $state.raw() as Bench;
	/** What is joined, for the drawing of the panel: at once with a plug, a frame after an event on its way. */
	get stillRear(): Bench {
		return this.#stillRear;
	}
	#stillRear = $state.raw() as Bench;
	/** The same for the section: metal that begins or ends to touch is coppered a frame after it does. */
	get stillCut(): Bench {
		return this.#stillCut;
	}
	#stillCut = $state.raw() as Bench;
	/** The same for the strip of states. */
	get stillStrip(): Bench {
		return this.#stillStrip;
	}
	#stillStrip = $state.raw() as Bench;
	/** The same for the three-pin half. */
	get stillPins(): Bench {
		return this.#stillPins;
	}
	#stillPins = $state.raw() as Bench;
	/** What follows an event of the travel, one a frame, so that no frame has to bear it all. */
	readonly #turns = new Turns(
		[
			// Nets are remembered, and what has a later turn finds them.
			() => (netsOf(this.#still), false),
			() => void (this.#stillCut = this.#stillStrip = this.#still),
			() => void (this.#stillAside = this.#still),
			() => void (this.#stillRear = this.#still),
			() => this.#sayTravel(),
			() => void (this.#stillPins = this.#still),
			() => void (this.#stillLast = this.#still)
		],
		() => this.count()
	);
	#asides = false;
	#followAside() {
		if (typeof requestAnimationFrame !== 'function') return this.#stepAside();
		if (this.#asides) return;
		this.#asides = true;
		afterFrame(() => {
			this.#asides = false;
			this.#stepNear();
			afterFrame(() => this.#stepAside());
		});
	}
	#stepNear() {
		this.#placed = this.#layout;
		this.#stillAside = this.#stillPins = this.#stillStrip = this.#still;
	}
	#stepAside() {
		this.#stepNear();
		this.#aside = this.#layout;
		this.#stillLast = this.#still;
	}
	/** Follows a state that is new: all at once with a plug that comes or goes, else turn by turn. */
	#follow(isLaidOut: boolean) {
		const isFirst = this.#aside === undefined;
		if (isFirst || isLaidOut) this.#stillRear = this.#stillCut = this.#still;
		if (isFirst) this.#stepAside();
		else if (isLaidOut) this.#followAside();
		else if (!this.#asides) this.#turns.all();
	}
	redAt = $derived.by(() => this.#present(this.red));
	blackAt = $derived.by(() => this.#present(this.black));
	reading = $derived.by(() =>
		this.redAt && this.blackAt
			? readMeter(this.truth, this.mode, this.redAt, this.blackAt, this.zeroed)
			: null
	);
	path = $derived.by(() =>
		this.rules.reasons && this.redAt && this.blackAt
			? pathBetween(this.truth, this.redAt, this.blackAt)
			: null
	);
	nets = $derived.by(() => netsOf(this.still));

	constructor(bench: Bench, rules: Rules = {}) {
		this.rules = { hidden: [], reasons: true, edits: 'all', ...rules };
		const keepLayout = keeper(sameLayout);
		const keepState = keeper(sameState, shareCircuit);
		// State that is set, not derived: what hangs on it is not even asked while a plug travels.
		this.history = new History(bench, (present) => {
			const [before, stood] = [this.#layout, this.#still];
			this.#title = present.title;
			this.#layout = keepLayout(present);
			this.#still = keepState(present);
			if (stood !== this.#still) this.#follow(before !== this.#layout);
			if (!sameBuild(this.#placed, this.#layout)) this.#placed = this.#layout;
			if (before !== this.#layout) this.#settled = this.#counted = present;
			else {
				this.#settleSoon();
				this.#turns.often();
			}
		});
	}

	/** One timer at a time: it looks again for as long as the hand moves. */
	#settleSoon() {
		this.#restless = this.#settles !== null;
		if (this.#settles === null) this.#settles = setTimeout(() => this.#settle(), RESTS);
	}
	#settle() {
		if (this.#restless) {
			this.#restless = false;
			this.#settles = setTimeout(() => this.#settle(), RESTS);
			return;
		}
		this.#settles = null;
		this.#settled = this.bench;
	}
	#present(node: NodeName | null): NodeName | null {
		return node !== null && this.nets.indexOf.has(node) ? node : null;
	}
	#true(bench: Bench): Bench {
		return this.rules.hidden.length > 0 ? withFaults(bench, this.rules.hidden) : bench;
	}

	/** Puts a changed bench in place, one undo step; `group` merges steps of one gesture. */
	commit(next: Bench, said = '', group?: string) {
		this.history.commit(next, group);
		if (said) this.said = said;
	}
	/** The same for a change that may be refused; the refusal is said. */
	attempt(change: Change, said = ''): boolean {
		if (change.ok) this.commit(change.bench, said);
		else this.said = change.why;
		return change.ok;
	}
	/** A different bench altogether, as one undo step. */
	open(next: Bench, said: string) {
		this.commit(next, said);
		this.#told = null;
		this.red = this.black = this.jumperFrom = this.chosen = null;
	}
	undo() {
		const lifted = this.#liftInHunt();
		this.history.undo();
		this.#told = null;
		this.said = `Undone.${lifted}`;
	}
	redo() {
		const lifted = this.#liftInHunt();
		this.history.redo();
		this.#told = null;
		this.said = `Done again.${lifted}`;
	}
	/** In a hunt a reading is always meant: both probes come off before a plug moves. What is said of it. */
	#liftInHunt(): string {
		if (this.rules.reasons || (this.red === null && this.black === null)) return '';
		this.red = this.black = null;
		if (this.tool === 'black') this.tool = 'red';
		return ' Both probes are off.';
	}

	setProbe(probe: Probe, node: NodeName | null) {
		// In a hunt every reading counts, so a new pair begins with both probes off.
		if (node && !this.rules.reasons && this.redAt && this.blackAt) this.red = this.black = null;
		this[probe] = node;
		if (node === null) this.said = `The ${probe} probe is off.`;
		else this.said = `${probe === 'red' ? 'Red' : 'Black'} probe on ${nodeName(this.bench, node)}.`;
		if (node && this.redAt && this.blackAt) this.readings += 1;
	}
	liftProbes() {
		this.red = this.black = null;
		if (this.tool === 'black') this.tool = 'red';
		this.said = 'Both probes are off.';
	}
	/** What a click on a contact does with the tool in hand. */
	use(node: NodeName) {
		const [owner] = splitNode(node);
		if (this.bench.sockets.some((s) => s.id === owner)) {
			this.chosen = owner;
			if (this.held) {
				this.putHeld(owner);
				return;
			}
		}
		if (this.tool === 'jumper') this.jumperAt(node);
		else {
			this.setProbe(this.tool, node);
			if (this.tool === 'red' && this.black === null) this.tool = 'black';
			// In a hunt the next click begins another pair.
			else if (!this.rules.reasons && this.redAt && this.blackAt) this.tool = 'red';
		}
	}
	/** First end, then second end, of a jumper. */
	jumperAt(node: NodeName) {
		const from = this.jumperFrom;
		if (from === null) {
			this.jumperFrom = node;
			this.said = `Jumper from ${nodeName(this.bench, node)}. Now choose where it goes.`;
			return;
		}
		this.jumperFrom = null;
		if (from === node) {
			this.said = 'Jumper put down.';
			return;
		}
		const change = withJumper(this.bench, from, node, this.awg, this.mm);
		const said = [
			`Jumper soldered from ${nodeName(this.bench, from)} to ${nodeName(this.bench, node)}.`,
			...(change.ok ? [cupWords(change.bench, from), cupWords(change.bench, node)] : [])
		];
		this.attempt(change, said.filter((w) => w !== null).join(' '));
	}
	removeWire(name: string) {
		this.commit(withoutWire(this.bench, name), `${name} is taken out.`);
	}

	/** Says what an insertion or travel changed, contact by contact. */
	#moved(next: Bench, socket: string, group?: string) {
		const lifted = group === undefined ? this.#liftInHunt() : '';
		this.#move(next, socket, group);
		this.said += lifted;
	}
	#move(next: Bench, socket: string, group?: string) {
		if (sameState(this.bench, next)) {
			shareCircuit(next, this.still);
			this.commit(next, '', group);
			return;
		}
		const at = (bench: Bench): number => plugIn(bench, socket)?.travel ?? 0;
		const now = at(this.bench);
		// A hand that has turned back is told of the way back, and not of what is left of both ways.
		const turned = this.#told !== null && (now - at(this.#told)) * (at(next) - now) < 0;
		if (this.#told === null || turned || socket !== this.#tells) this.#told = this.bench;
		this.#tells = socket;
		this.#saidThen = this.said;
		this.commit(next, '', group);
		// A hand on its way hears of it in the turn of words.
		if (group === undefined) this.#sayTravel();
	}
	#told: Bench | null = null;
	#tells = '';
	#saidThen = '';
	/** Says what has changed at the socket since that was last said; what was said meanwhile stays. */
	#sayTravel() {
		const [from, socket] = [this.#told, this.#tells];
		this.#told = null;
		if (from === null || this.said !== this.#saidThen) return;
		if (!this.bench.sockets.some((s) => s.id === socket)) return;
		const [before, after] = [this.#true(from), this.#true(this.bench)];
		const words = travelWords(before, after, socket);
		// A long jump passes many places; what counts then is where the plug has come to.
		const home = plugIn(after, socket)?.travel === SEATED ? 1 : 0;
		this.said =
			words.length > MOST_SAID
				? `${words.length - home} places passed. ${standingWords(after, socket)}`
				: words.join(' ') || this.said;
	}
	/** A new or loose plug of that kind into a socket, seated. */
	plugInto(kind: PlugKind, socket: string) {
		const place = this.bench.sockets.find((s) => s.id === socket);
		if (place && !fits(kind, place.kind)) {
			this.said = `A ${kind} plug does not go into this socket.`;
			return;
		}
		const loose = this.bench.plugs.find((p) => p.kind === kind && p.socket === null);
		const change = loose
			? inserted(this.bench, loose.id, socket)
			: withNewPlug(this.bench, kind, socket);
		if (change.ok) this.#moved(change.bench, socket);
		else this.said = change.why;
	}
	/** Picks up a plug, or puts it down again. */
	pickUp(kind: PlugKind) {
		this.held = this.held === kind ? null : kind;
		this.said = this.held
			? `${kindWords(kind).name} in hand. Choose a socket.`
			: 'The plug is put down.';
	}
	putHeld(socket: string) {
		const kind = this.held;
		this.held = null;
		if (kind) this.plugInto(kind, socket);
	}
	/** One key for plugs: puts in what is in hand, else pulls out what is there, else puts one in. */
	plugKey(socket: string) {
		const place = this.bench.sockets.find((s) => s.id === socket);
		if (!place) return;
		if (this.held) return this.putHeld(socket);
		if (plugIn(this.bench, socket)) return this.pullOut(socket);
		const loose = this.bench.plugs.find((p) => p.socket === null && fits(p.kind, place.kind));
		const kind = PLUG_KINDS.find((k) => fits(k, place.kind));
		if (loose) this.movePlug(loose.id, socket);
		else if (kind) this.plugInto(kind, socket);
	}
	movePlug(id: string, socket: string) {
		const change = inserted(this.bench, id, socket);
		if (change.ok) this.#moved(change.bench, socket);
		else this.said = change.why;
	}
	pullOut(socket: string) {
		const plugs = this.bench.plugs.map((p) => (p.socket === socket ? { ...p, socket: null } : p));
		this.#moved({ ...this.bench, plugs }, socket);
	}
	setTravel(id: string, travel: number) {
		const plug = this.bench.plugs.find((p) => p.id === id);
		if (!plug?.socket || plug.travel === travel) return;
		const plugs = this.bench.plugs.map((p) => (p.id === id ? { ...p, travel } : p));
		this.#moved({ ...this.bench, plugs }, plug.socket, `travel ${id}`);
	}
	/** Whether the two are on one net of what is drawn. */
	joined = (a: NodeName, b: NodeName): boolean => isJoined(this.still, a, b);
}
