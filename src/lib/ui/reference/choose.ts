/**
 * The chooser's judgement: every kind against what was asked, one socket of it on a bench by itself,
 * by the function that judges a choice in an exercise. Kinds that meet everything come first, those
 * with the fewest contacts to spare before the others; then the rest, the nearest first.
 */
import { SOCKET_KINDS, type SocketKind } from '../../engine';
import { aloneBench, countedContacts } from '../../diagnosis/tell';
import { failuresOf, type Option } from '../../exercises/needs';
import { neededContacts, wantsOf, type Asked, type Want } from '../../words/referenceNeeds';

export interface Verdict {
	readonly kind: SocketKind;
	readonly fits: boolean;
	/** Why not, one clause for each need that is not met. */
	readonly reasons: readonly string[];
	/** Contacts that nothing asked for needs. */
	readonly spare: readonly string[];
}

/** How a wire ends and a latch are no question here: any will do. */
const optionOf = (): Option => ({ id: 'A', sockets: ['A'], termination: 'cup', latch: true });

const meets = (kind: SocketKind, { ways }: Want): boolean =>
	ways.some((needs) => failuresOf(aloneBench(kind), optionOf(), needs).length === 0);

/** One kind against what was asked. */
export function verdictOn(kind: SocketKind, asked: Asked): Verdict {
	const failed = wantsOf(asked).filter((want) => !meets(kind, want));
	const needed = neededContacts(asked);
	return {
		kind,
		fits: failed.length === 0,
		reasons: [...new Set(failed.map((want) => want.missing(kind)))].filter((why) => why !== null),
		spare: countedContacts(kind).filter((c) => !needed.has(c))
	};
}

/** Whether anything was asked. */
export const isAsked = (asked: Asked): boolean => wantsOf(asked).length > 0;

/** Every kind, the best first; in the order of the list where nothing is asked. */
export function verdictsOn(asked: Asked): Verdict[] {
	const verdicts = SOCKET_KINDS.map((kind) => verdictOn(kind, asked));
	if (!isAsked(asked)) return verdicts;
	return verdicts.sort(
		(a, b) =>
			a.reasons.length - b.reasons.length ||
			(a.fits && b.fits ? a.spare.length - b.spare.length : 0)
	);
}
