/**
 * Words of the two pages that stand beside real hardware: suspects as classes, what a reading ruled
 * out, what a number of ohms may be, what to do about a fault. Advice without a source beside it is
 * common practice.
 */
import {
	BEEPS_UNDER,
	LEADS,
	deviceBetween,
	inState,
	isJoined,
	readMeter,
	showOhms,
	splitNode
} from '../engine';
import type { Bench, Device, Fault, NodeName, Ohms, Pair, When } from '../engine';
import { nodesAtPanel, type Group, type Reading, type Suspect } from '../diagnosis';
import { bothText } from './checks';
import { CLASS_GLOSS, classesText } from './classes';
import { faultWords, strayed } from './faults';
import { andOf, sentence, textName, whenWords, wireName } from './names';
import { numberWords } from './numbers';

/** One set of faults as a clause; an empty one is a sound panel. */
export function setWords(bench: Bench, faults: readonly Fault[]): string {
	if (faults.length === 0) return 'nothing is wrong that a probe from outside could find';
	return andOf(faults.map((fault) => faultWords(bench, fault)));
}

const counted = (n: number, one: string, many = `${one}s`): string =>
	`${n <= 12 ? numberWords(n) : n.toLocaleString('en-GB')} ${n === 1 ? one : many}`;

/** What else is in the class, where its other sets are not named. */
export const othersWords = ({ members, sets }: Group): string =>
	members > sets.length ? sentence(alikeWords(members - sets.length)) : '';

/** `or one other that no probe can tell from it`. */
export const alikeWords = (others: number): string =>
	`or ${counted(others, 'other')} that no probe can tell from it`;

/** A plug state as somebody beside the panel sees it: an empty panel has nothing in, not "the plugs as they stand". */
export function standWords(bench: Bench, when: When): string {
	if (Object.keys(when).length > 0 || bench.plugs.some((p) => p.socket !== null))
		return whenWords(bench, when);
	return bench.sockets.length === 1
		? 'with nothing in the socket'
		: 'with nothing in any of the sockets';
}

/** A probe as something to do: `With a TS plug in the socket, touch T and pin 2`. */
export const probeWords = (bench: Bench, { when, pair }: { when: When; pair: Pair }): string =>
	sentence(`${standWords(bench, when)}, touch ${bothText(bench, pair)}`);

/** How much a probe tells. One bit is a question that halves what is left. */
export function gainWords(gain: number): string {
	const bits = `${gain < 0.005 ? 'under 0.01' : gain.toFixed(2)} of at most 1 bit`;
	if (gain > 0.9) return `It about halves what is left (${bits}).`;
	if (gain > 0.4) return `It tells a good deal (${bits}).`;
	return `It tells little, and no other probe tells more (${bits}): most likely it confirms the likeliest.`;
}

/** A reading in one clause: `T and pin 2, with nothing in the socket: beep`. */
export const readingLine = (bench: Bench, { when, pair }: Reading): string =>
	`${bothText(bench, pair)}, ${standWords(bench, when)}`;

/** What agrees with the readings: classes, and in brackets the faults in them. `hasSound`: or no fault at all. */
export function agreeWords(
	{ classes, sets, most }: { classes: number; sets: number; most: number },
	hasSound: boolean
): string {
	const none = hasSound ? ', or none' : '';
	const what =
		most === 1
			? counted(sets - (hasSound ? 1 : 0), 'single fault')
			: counted(
					sets - (hasSound ? 1 : 0),
					`set of at most ${numberWords(most)} faults`,
					`sets of at most ${numberWords(most)} faults`
				);
	return `${classesText(classes)} (${what}${none}) ${classes === 1 ? 'agrees' : 'agree'} with the readings. ${CLASS_GLOSS}`;
}

/** What so many readings that contradict cannot be: `cannot both be true`. */
export const cannotWords = (n: number): string =>
	`cannot ${n === 1 ? '' : n === 2 ? 'both ' : 'all '}be true`;

/** A set that is ruled out. Fewer faults than are reckoned with may still stand beside others. */
function goneWords(bench: Bench, faults: readonly Fault[], most: number): string {
	if (faults.length === 0) return 'a sound panel';
	const words = setWords(bench, faults);
	if (faults.length >= most) return words;
	return `${words} (${faults.length === 1 ? 'this alone' : 'these and nothing else'})`;
}

/** What the last reading did, for the eye and the ear. `most`: faults at once that are reckoned with. */
export function ruledOutWords(
	bench: Bench,
	before: number,
	left: number,
	gone: readonly Group[],
	most: number
): string {
	const out = before - left;
	const are = left === 1 ? 'is' : 'are';
	if (out <= 0)
		return `Wasted: that ruled out nothing, and no answer there could have. ${classesText(before)} still ${before === 1 ? 'agrees' : 'agree'}.`;
	const named = gone.slice(0, 2).map(({ sets }) => goneWords(bench, sets[0]!, most));
	const among = named.length > 0 ? ` No longer possible: ${named.join('; ')}.` : '';
	return `That ruled out ${out} of ${classesText(before)}; ${left} ${are} left.${among}`;
}

const bridgeFirst = (bench: Bench, between: Pair): string => {
	const beep = deviceBeepWords(bench, {}, between);
	return beep ? `${beep} ` : '';
};
function swapMend(bench: Bench, contacts: Pair): string {
	const stray = strayed(bench, contacts);
	if (!stray)
		return `Follow the leads of ${bothText(bench, contacts)} by eye, and move each to its own lug.`;
	return `Follow the ${stray.leads === 1 ? 'lead' : 'leads'} on ${textName(bench, stray.on)} by eye, and move ${stray.leads === 1 ? 'it' : 'them'} to ${textName(bench, stray.of)}.`;
}

/** What to do about one fault, once it is the one. */
export function mendWords(bench: Bench, fault: Fault): string {
	switch (fault.kind) {
		case 'open':
		case 'resistive':
			return `Look at both joints of ${wireName(bench, fault.wire)}, pull gently at each end, and solder anew what moves.`;
		case 'bridge':
			return `${bridgeFirst(bench, fault.between)}Look between ${bothText(bench, fault.between)} for a splash of solder or a stray strand, and take it away.`;
		case 'swap':
			return swapMend(bench, fault.contacts);
		case 'break-dirty':
			return `Clean ${textName(bench, fault.contact)} with a contact cleaner that its maker allows, or replace the socket.`;
		case 'break-stuck-open':
			return `Look at ${textName(bench, fault.contact)}: dirt, or a tired spring. Clean it; if it stays open, replace the socket.`;
		case 'break-stuck-closed':
			return `Look for solder or flux that has run into ${textName(bench, fault.contact)}; else the spring is bent. Replace the socket if it does not free.`;
		case 'spring-bent':
			return `A plug of the other family may have bent ${textName(bench, fault.contact)}. Replace the socket; bending it back seldom lasts.`;
	}
}

/** What to do when one class is left. */
export function actWords(bench: Bench, { sets, members }: Group): string[] {
	const bonds = bench.panel.metal ? nodesAtPanel(bench).filter(isChassisLug) : [];
	const faulty = sets.flatMap((set) => [...set]);
	const kinds = faulty.filter((f, i) => faulty.findIndex((x) => mendKey(x) === mendKey(f)) === i);
	const isSound = sets.some((set) => set.length === 0);
	const lead = isSound
		? 'Every reading agrees with a panel that has no fault. What no outside probe can catch is still possible: pull gently at the joints.'
		: members > 1
			? 'No probe from outside can tell these apart. Begin with the first.'
			: 'Mend it, then take the same readings again: they should now be those of a sound panel.';
	if (!isSound) return [lead, ...kinds.slice(0, 4).map((fault) => mendWords(bench, fault))];
	return bonds.length > 0 ? [lead, bondLine(bench, bonds)] : [lead];
}
const isChassisLug = (node: NodeName): boolean => splitNode(node)[1] === 'G';
const bondLine = (bench: Bench, bonds: readonly NodeName[]): string =>
	`A loose chassis lug is not on the list of faults. Touch ${andOf(bonds.map((node) => textName(bench, node)))} and bare metal of the panel away from the socket: it sounds (common practice).`;
const mendKey = (fault: Fault): string => JSON.stringify(fault);

/** A number that is neither a joint nor none: what it may be, and what it most likely counts as. */
export interface Between {
	readonly headline: string;
	readonly points: readonly string[];
	readonly likely: 'joined' | 'apart' | null;
}

/** What a sound panel would show there on the ohms range; null where it is over range or live. */
function soundOhms(bench: Bench, when: When, pair: Pair): Ohms | null {
	return readMeter(inState(bench, when), 'ohms', ...pair).ohms;
}
const isNear = (a: Ohms, b: Ohms): boolean => Math.abs(a - b) <= 0.25 * Math.max(a, b);

/** What is inside real devices of that kind, between the two that carry the signal (common practice). */
const insideWords = (kind: Device['kind']): string =>
	kind === 'mic-input'
		? 'tens of ohms (a transformer), about 13.6 kΩ (two feed resistors, phantom power fitted and off) or nothing steady (capacitors)'
		: 'tens of ohms (a transformer), kilohms, or nothing steady (capacitors)';

/** What to do before a bridge across a device is believed (common practice). */
const LIFT_FIRST =
	'To be sure that it is no bridge, lift the far plug or one core for one reading more, and put it back after it. What stays is on the panel.';

/** A number across a device that is drawn: the device, as a rule. */
const deviceWords = ({ id, kind }: Device, sound: Ohms | null): string[] => [
	`${id} hangs between the two, and no wire joins them: it counts as apart. ${sound === null ? 'This drawing' : `This drawing reckons the inside of a device as one number, and shows ${showOhms(sound)} here; it`} cannot know yours. A real one may show ${insideWords(kind)}.`,
	LIFT_FIRST
];

/** A beep across a device that is drawn, which a sound panel can give too; null where none hangs there. */
export function deviceBeepWords(bench: Bench, when: When, pair: Pair): string | null {
	const device = deviceBetween(bench, when, pair);
	return device
		? `${device.id} hangs between those two, and a transformer in it would beep on a sound panel too (common practice). ${LIFT_FIRST}`
		: null;
}

/** What ohms between the tone's limit and the meter's range may be. `ohms` as the display shows it. */
export function betweenWords(bench: Bench, when: When, pair: Pair, ohms: Ohms): Between {
	const sound = soundOhms(bench, when, pair);
	const joined = isJoined(inState(bench, when), ...pair);
	const headline = `${showOhms(ohms)} is neither a plain joint (under ${BEEPS_UNDER} Ω) nor open.`;
	const device = joined ? null : deviceBetween(bench, when, pair);
	if (device) return { headline, likely: 'apart', points: deviceWords(device, sound) };
	if (sound !== null && !joined && isNear(sound, ohms))
		return {
			headline,
			likely: 'apart',
			points: [
				`On a sound panel the meter shows ${showOhms(sound)} here: that is the inside of a device that hangs on the line. No wire joins the two, so it counts as apart.`
			]
		};
	if (joined)
		return {
			headline,
			likely: sound !== null && isNear(sound, ohms) ? 'joined' : null,
			points: [
				sound !== null && isNear(sound, ohms)
					? `On a sound panel the meter shows ${showOhms(sound)} here: so long a wire has that much. It counts as joined.`
					: `They should be joined, with about ${showOhms(sound ?? LEADS)} on the display. The way is there and is bad: a dirty break contact, a corroded plug or a dry joint. Clean the contact or work the plug in and out a few times, and measure again.`,
				'If it stays like this, it is a fault of its own kind: a contact or joint with too many ohms. Find it by touching along the way, from lug to lug, until the ohms drop.'
			]
		};
	return {
		headline,
		likely: 'apart',
		points: [
			'A coil or a load: a microphone (about 200 Ω), an input (thousands of ohms) or a transformer that hangs on the line and is not on your drawing. Unplug what is not drawn.',
			'Kilohms and more that drift: your fingers on both tips, flux or damp between lugs. Hold one tip only by its handle, clean, and measure again.'
		]
	};
}

/** Why "no beep" proves nothing on so long a wire; null where it does. */
export function longWayWords(bench: Bench, when: When, pair: Pair): Between | null {
	if (!isJoined(inState(bench, when), ...pair)) return null;
	const sound = soundOhms(bench, when, pair);
	if (sound === null || sound < BEEPS_UNDER) return null;
	return {
		headline: `No beep proves nothing here: a sound panel has ${showOhms(sound)} between the two.`,
		likely: null,
		points: [
			`The tone wants less than ${BEEPS_UNDER} Ω, and the wire alone has more. Take the ohms range and type the number.`
		]
	};
}

/** A joint that sounds and has more ohms than wire and contacts account for; null where all is well. */
export function weakWords(bench: Bench, when: When, pair: Pair, ohms: Ohms): string | null {
	const sound = soundOhms(bench, when, pair);
	if (sound === null || ohms < sound + 1.5) return null;
	return `Counted as joined. A sound panel would show about ${showOhms(sound)} there, and yours ${showOhms(ohms)}: clean that contact or joint some day soon.`;
}

/** The table of weights as rows, heaviest first. */
export const SUSPECT_WORDS: Readonly<Record<Suspect, string>> = {
	sound: 'nothing is wrong',
	open: 'one wire or core is open',
	'break-stuck-open': 'one break contact never closes',
	'spring-bent': 'one spring misses the plug',
	swap: 'the leads of one pair of lugs are exchanged',
	'break-stuck-closed': 'one break contact never opens',
	bridge: 'one pair of lugs is bridged'
};

/** Cautions of the page beside the rack. */
export const REAL_CAUTIONS = {
	chassis:
		'With a rack, G, the panel and every shield are joined through rails and other gear as well. Unscrew the panel from the rails, and see that the device at the far end touches no rail, or a beep against G or the panel tells you of the rack and not of your socket.',
	mains:
		'Work on a dead line only: phantom power off, power amplifiers off, every device at the far ends unplugged from the mains. The line stays on its device while you probe, for the list counts on it, unless a reading is asked for without it. Never open a protective earth to get a reading. If a conductor may be fed by the mains, stop: local codes and licensed practice decide.'
} as const;

/** The same two for whoever has read them in full. */
export const REAL_CAUTIONS_BRIEF = {
	chassis:
		'Panel off the rails, the far device touching no rail: else a beep against G or the panel tells of the rack.',
	mains:
		'Dead line only: phantom off, amplifiers off, far ends unplugged from the mains. Never open a protective earth. If mains may feed it, stop: local codes and licensed practice decide.'
} as const;

/** What to do before the first reading (prove the tester, test, prove it again: HSE GS38, HSG85). */
export const REAL_STEPS = [
	'Touch the probes together: the meter beeps. If it does not, stop. Do it again after the last reading.',
	'A plug that you put in carries nothing on its tail. Push it home until its shoulder stands on the face.',
	'Hold the probes by their handles and touch bare metal, not flux or lacquer.'
] as const;
