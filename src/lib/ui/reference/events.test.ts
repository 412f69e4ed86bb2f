/** The events of a travel: the words and the drawing find the same places, each in its own way. */
import { describe, expect, it } from 'vitest';
import { sectionEvents } from '../../diagram';
import { PLUG_KINDS, SOCKET_KINDS, fits } from '../../engine';
import { eventsOf } from './events';

const WAYS = SOCKET_KINDS.flatMap((kind) =>
	PLUG_KINDS.filter((plug) => fits(plug, kind)).map((plug) => [kind, plug] as const)
);

describe('the travel', () => {
	it.each(WAYS)('into %s of a %s plug is told where the drawing shows it', (kind, plug) => {
		const { events, home } = eventsOf(kind, plug);
		expect(events.map((e) => Number.parseFloat(e.at))).toEqual(sectionEvents(plug, kind));
		for (const { text } of events) expect(text).toMatch(/^[A-Z].*\.$/);
		expect(home).toMatch(/is home in the socket/);
	});
});
