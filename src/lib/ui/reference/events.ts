/** What a plug does on its way into a socket, by the millimetre: the sentences, and where they hold. */
import { withPlugAt } from '../../diagram';
import { SEATED, type PlugKind, type SocketKind } from '../../engine';
import { aloneBench } from '../../diagnosis/tell';
import { sentence, travelWords } from '../../words';

export interface TravelEvent {
	/** `18.5 mm`. */
	readonly at: string;
	readonly text: string;
}

/** Every event on the way in, in order, and what stands where once the plug is home. */
export function eventsOf(
	kind: SocketKind,
	plug: PlugKind
): { events: TravelEvent[]; home: string } {
	const at = (travel: number) => withPlugAt(aloneBench(kind), 'A', plug, travel);
	const told = travelWords(at(0), at(SEATED), 'A');
	const events = told.slice(0, -1).map((line): TravelEvent => {
		const [, where, text] = /^At (\S+ mm) (.*)$/.exec(line) ?? [];
		return { at: where ?? '', text: sentence(text ?? line) };
	});
	return { events, home: told.at(-1) ?? '' };
}
