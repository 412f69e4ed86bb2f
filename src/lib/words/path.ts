/**
 * Why two nodes are joined, or what keeps them apart, from `pathBetween`. A net is a fact about
 * conductors; where no conductor joins two nodes there may still be the inside of a device between
 * them, and then the words say so, because the meter finds it.
 */
import {
	SOCKETS,
	circuit,
	pathBetween,
	resistance,
	showOhms,
	splitNode,
	type Bench,
	type Conductor,
	type Gap,
	type NodeName,
	type PathAnswer
} from '../engine';
import { andOf, sentence, textName } from './names';
import { closingWords, gapWords, reasonWords } from './reasons';
import { fineOhms } from './units';

export interface PathWords {
	/** One sentence. */
	readonly verdict: string;
	/** The way in order, one line each, with its ohms where it conducts. */
	readonly steps: readonly string[];
}

const NOTHING =
	'Nothing joins them: no wire, spring or plug, and no break contact that could close.';
const TWO_HALVES = 'Nothing inside the socket joins the three-pin half to the jack half.';

const both = (bench: Bench, a: NodeName, b: NodeName): string =>
	`${textName(bench, a)} and ${textName(bench, b)}`;

function joinedWords(
	bench: Bench,
	names: string,
	{ steps, ohms }: Extract<PathAnswer, { kind: 'joined' }>
): PathWords {
	const count = steps.length === 1 ? 'one conductor' : `${steps.length} conductors in a row`;
	return {
		verdict: sentence(`${names} are joined by ${count}, ${fineOhms(ohms)} along the way`),
		steps: steps.map((s) => `${reasonWords(bench, s.through)}: ${fineOhms(s.through.ohms)}`)
	};
}

const isGap = (x: Conductor | Gap): x is Gap => !('ohms' in x);

/** A cut wire and a stuck contact are mended; everything else closes by moving a plug. */
function remedyOf(bench: Bench, gaps: readonly Gap[]): string {
	const verb = gaps.every((g) => closingWords(bench, g) !== null) ? 'closing' : 'mending';
	return gaps.length === 1 ? `${verb} it would join them` : `${verb} them all would join the two`;
}

function openWords(bench: Bench, gap: Gap): string {
	const closing = closingWords(bench, gap);
	return `open here: ${gapWords(bench, gap)}${closing ? `; ${closing}` : ''}`;
}

function partedWords(
	bench: Bench,
	names: string,
	{ gaps, steps }: Extract<PathAnswer, { kind: 'parted' }>
): PathWords {
	const open = andOf(gaps.map((g) => gapWords(bench, g)));
	return {
		verdict: sentence(`${names} are apart: ${open}; ${remedyOf(bench, gaps)}`),
		steps: steps.map(({ through }) =>
			isGap(through)
				? openWords(bench, through)
				: `${reasonWords(bench, through)}: ${fineOhms(through.ohms)}`
		)
	};
}

/** Devices whose insides lie on the way with the fewest conductors from `a` to `b`. */
function devicesBetween(bench: Bench, a: NodeName, b: NodeName): string[] {
	const { conductors } = circuit(bench);
	const cameBy = new Map<NodeName, { from: NodeName; device: string | null }>();
	const waiting = [a];
	for (let node = waiting.shift(); node !== undefined && node !== b; node = waiting.shift())
		for (const c of conductors) {
			const next = c.a === node ? c.b : c.b === node ? c.a : null;
			if (next === null || next === a || cameBy.has(next)) continue;
			const inside = !c.joins && c.reason.kind === 'inside-device';
			cameBy.set(next, { from: node, device: inside ? c.reason.device : null });
			waiting.push(next);
		}
	const devices = new Set<string>();
	for (let at = cameBy.get(b); at; at = cameBy.get(at.from)) if (at.device) devices.add(at.device);
	return [...devices].reverse();
}

/** `3.000 kΩ, through what is inside DESK`; null where nothing at all conducts. */
function insideWords(bench: Bench, a: NodeName, b: NodeName): string | null {
	const ohms = resistance(bench, a, b);
	if (!Number.isFinite(ohms)) return null;
	return `${showOhms(ohms)} between them, through what is inside ${andOf(devicesBetween(bench, a, b))}`;
}

/** Whether one is a pin and the other a jack contact of the same hybrid. */
function isAcrossHybrid(bench: Bench, a: NodeName, b: NodeName): boolean {
	const [[owner, x], [other, y]] = [splitNode(a), splitNode(b)];
	const socket = owner === other && bench.sockets.find((s) => s.id === owner);
	if (!socket || !SOCKETS[socket.kind].threePin || SOCKETS[socket.kind].springs.length === 0)
		return false;
	const half = (contact: string) =>
		contact === 'G' ? 'lug' : /^\d/.test(contact) ? 'pin' : 'jack';
	return half(x) !== 'lug' && half(y) !== 'lug' && half(x) !== half(y);
}

function nothingWords(bench: Bench, a: NodeName, b: NodeName, inside: string | null): PathWords {
	if (inside)
		return { verdict: `No conductor makes them one net, but there are ${inside}.`, steps: [] };
	return isAcrossHybrid(bench, a, b)
		? { verdict: TWO_HALVES, steps: ['here no wire and no plug joins them from outside'] }
		: { verdict: NOTHING, steps: [] };
}

/** The answer under a reading: what joins the two nodes, or what stands open between them. */
export function pathWords(bench: Bench, a: NodeName, b: NodeName): PathWords {
	const answer = pathBetween(bench, a, b);
	if (answer.kind === 'same')
		return { verdict: `Both probes are on ${textName(bench, a)}.`, steps: [] };
	if (answer.kind === 'joined') return joinedWords(bench, both(bench, a, b), answer);
	const inside = insideWords(bench, a, b);
	if (answer.kind === 'nothing') return nothingWords(bench, a, b, inside);
	const words = partedWords(bench, both(bench, a, b), answer);
	return inside ? { ...words, steps: [...words.steps, `as it is, there are ${inside}`] } : words;
}

/** The reason alone, as a sentence or two: what joins the nodes, or what keeps them apart. */
export function whyWords(bench: Bench, a: NodeName, b: NodeName): string {
	const answer = pathBetween(bench, a, b);
	return answer.kind === 'joined'
		? sentence(answer.steps.map((s) => reasonWords(bench, s.through)).join('; '))
		: pathWords(bench, a, b).verdict;
}
