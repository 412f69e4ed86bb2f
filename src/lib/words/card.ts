/** Words of the test card: plug states, probes, what no probe can catch, cautions. */
import type { Bench, Fault, FaultKind, NodeName, When } from '../engine';
import { splitNode } from '../engine';
import type { Card, CardAim, CardProgress, ProbeAnswer } from '../diagnosis';
import { PROBES_PER_CHANGE } from '../diagnosis';
import { sentence, whenWords } from './names';
import { labelName } from '../schedule';

/** A node as short as it can be on a card: `TN` on a bench with one socket, else `A.TN`; a device with its name. */
export function cardNode(bench: Bench, node: NodeName): string {
	const [owner, contact] = splitNode(node);
	return bench.sockets.length === 1 && bench.sockets[0]!.id === owner ? contact : node;
}

/** A plug state as a heading: `With a TS plug in Stage 1`. The file's own state says what stands in the sockets. */
export function cardState(bench: Bench, when: When): string {
	if (Object.keys(when).length > 0) return sentence(whenWords(bench, when)).slice(0, -1);
	return bench.plugs.some((p) => p.socket !== null)
		? 'With the plugs as they stand on the bench'
		: 'With no plug in any socket';
}

/** What a good panel does: the beeper sounds, or is silent. */
export const ANSWER_WORDS: Readonly<Record<ProbeAnswer, string>> = {
	joined: 'sounds',
	apart: 'silent'
};

/** The bond of a chassis lug, which stands beside the probes: no fault on the list opens it. */
export const BOND_WORDS = {
	title: 'By eye and by meter: the chassis lug',
	panel: 'bare metal of the panel',
	/** The same on the page, where the note stands above. */
	short: 'bare metal',
	note: 'Common practice. No fault on the list opens this bond, so no probe above proves it. Look that the fixing bites bare metal, then touch the lug and bare metal of the panel.'
} as const;

const counted = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** How many boxes are ticked, probes and chassis lugs each by themselves. */
export function doneWords(probes: number, of: number, bonds: number, ofBonds: number): string {
	const lugs = ofBonds > 0 ? ` and ${bonds} of ${counted(ofBonds, 'chassis lug')}` : '';
	return `${probes} of ${counted(of, 'probe')}${lugs} as they should be`;
}

/** How long a card is: `17 probes, 9 plug changes`. */
export const lengthWords = ({ probes, changes }: Pick<Card, 'probes' | 'changes'>): string =>
	`${counted(probes.length, 'probe')}, ${counted(changes, 'plug change')}`;

/** How a plug change is reckoned where effort counts. */
const RECKONED = `a plug change counted as ${PROBES_PER_CHANGE} probes`;

const PROOF: Readonly<Record<CardAim, readonly [proven: string, found: string]>> = {
	'fewest-probes': [
		'No card that catches as much has fewer probes.',
		'The best card that was found, not proven the fewest: a shorter one is not ruled out.'
	],
	'least-effort': [
		`No card that catches as much is less work, ${RECKONED}.`,
		`The best card that was found, not proven the least work, ${RECKONED}: less is not ruled out.`
	]
};

/** How long the card is, and whether a better one by its own aim can exist. */
export function countWords(card: Pick<Card, 'aim' | 'probes' | 'changes' | 'exact'>): string {
	const [proven, found] = PROOF[card.aim];
	const length = `${lengthWords(card)}.`;
	return card.probes.length === 0 ? length : `${length} ${card.exact ? proven : found}`;
}

/** The two cards between which one may choose. */
export const AIM_WORDS: Readonly<
	Record<CardAim, { readonly name: string; readonly says: string }>
> = {
	'fewest-probes': { name: 'Fewest probes', says: 'and of those cards the fewest plug changes' },
	'least-effort': { name: 'Fewer plug changes', says: `least work, ${RECKONED}` }
};

/** Said where both aims come to cards of one length. */
export const ONE_CARD = `The card with the fewest probes is the least work too, ${RECKONED}, so there is one card.`;

const figures = (n: number): string => n.toLocaleString('en-GB');

/** What the search does just now, and how far it is with that. */
export function progressWords({ stage, done, of }: CardProgress): string {
	switch (stage) {
		case 'looking':
			return `Step 1 of 3: ${done} of ${counted(of, 'plug state')} looked at.`;
		case 'sorting':
			return `Step 2 of 3: leaving out probes that no card needs. ${figures(done)} of ${figures(of)} are left.`;
		case 'choosing':
			return `Step 3 of 3: choosing the fewest of ${figures(of)} probes.`;
	}
}

/** More sockets that are wired to each other than these take more than some seconds. */
const MANY_TOGETHER = 12;

/** What is said before the search begins; `together`: the most sockets that are wired to each other. */
export const beginWords = (together: number): string =>
	together > MANY_TOGETHER
		? `Working out the probes … ${together} sockets are wired to each other here, so it can take a minute or more. It ends with the best card that it finds, and you can stop it.`
		: 'Working out the probes …';

interface SilentWords {
	/** What the faults of this kind are called, before their list. */
	readonly title: string;
	/** Why no reading changes, and what to do instead. */
	readonly why: string;
}
const SILENT_WORDS: Partial<Readonly<Record<FaultKind, SilentWords>>> = {
	open: {
		title: 'A broken wire or joint',
		why: 'Another way beside it joins the same two ends. Look at the joint and pull at it gently.'
	},
	bridge: {
		title: 'A bridge of solder',
		why: 'They are joined in every plug state anyway. Look.'
	},
	swap: {
		title: 'Leads exchanged',
		why: 'Every reading stays the same. Follow the leads by eye.'
	},
	'break-stuck-open': {
		title: 'A break contact that never closes',
		why: 'Something else joins the same two. Look.'
	},
	'break-stuck-closed': {
		title: 'A break contact that never opens',
		why: 'Something else joins the same two. Look.'
	},
	'spring-bent': {
		title: 'A spring that misses the plug',
		why: 'A bare plug shows nothing. Put a plug with a tail in and probe at the end of the tail.'
	}
};

function faultMark(bench: Bench, fault: Fault): string {
	const pair = (nodes: readonly [string, string]) => nodes.map((n) => cardNode(bench, n)).join('–');
	switch (fault.kind) {
		case 'open':
		case 'resistive':
			return labelName(fault.wire);
		case 'bridge':
			return pair(fault.between);
		case 'swap':
			return pair(fault.contacts);
		default:
			return cardNode(bench, fault.contact);
	}
}

/** Faults of one kind that no probe can catch. */
export interface SilentGroup extends SilentWords {
	readonly kind: FaultKind;
	/** `1–S`, `w1`, `TN`. */
	readonly faults: readonly string[];
}
/** The faults that no probe can catch, by kind, in the order in which they come. */
export function silentGroups(bench: Bench, silent: readonly Fault[]): SilentGroup[] {
	const kinds = [...new Set(silent.map((f) => f.kind))];
	return kinds.map((kind): SilentGroup => {
		const faults = silent.filter((f) => f.kind === kind).map((f) => faultMark(bench, f));
		const words = SILENT_WORDS[kind] ?? { title: kind, why: 'No reading changes.' };
		return { kind, ...words, faults };
	});
}

/** A group as one line: `A bridge of solder: 1–S, 2–T. They are joined in every plug state anyway. Look.` */
export const silentLine = ({ title, faults, why }: SilentGroup): string =>
	`${title}: ${faults.join(', ')}. ${why}`;

/** Silent rows across devices that hang on the lines; '' where there are none. Common practice. */
export function acrossWords(
	across: readonly { readonly id: string; readonly numbers: readonly number[] }[]
): string {
	if (across.length === 0) return '';
	const where = across.map(({ id, numbers }) => `${numbers.join(', ')} (${id})`).join('; ');
	return `Across a device: ${where}. A transformer in it beeps there on a sound panel too. Lift the far plug or one core before you believe a bridge, and put it back (common practice).`;
}

/** What to do before the first probe and after the last (prove the tester, test, prove it again: HSE GS38, HSG85). */
export const CARD_STEPS = [
	'Make it dead: phantom power off, every device at the far ends switched off and unplugged from the mains.',
	'Set the meter to continuity. Touch the probes together: it sounds. If it does not, stop.',
	'Change plugs only at a new heading; use plugs with nothing on their tails. Touch each pair, the far end with a long lead or by a second person; tick what is as it should be, write down what is not.',
	'Touch the probes together once more: it still sounds. If it does not, nothing above counts.'
] as const;

export const CARD_CAUTIONS = {
	chassis:
		'Where a signal or shield should be silent against G or the panel and sounds, there is a second path to the chassis: a long screw, a metal bush, a stray strand. Take that one away, not the bond that is meant to be there.',
	mains:
		'Two devices on the mains are joined through their protective earths, and this card would call that a fault. So unplug them; never open an earth to get a reading. If anything here is fed by the mains, stop: local codes and licensed practice decide.'
} as const;
