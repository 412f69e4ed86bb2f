/** What stands in two places and must agree: the ranks of the order of soldering and the drawing of the rear. */
import { describe, expect, it } from 'vitest';
import { socketDrawing } from '../src/lib/diagram';
import { SOCKET_KINDS } from '../src/lib/engine';
import { reachOf } from '../src/lib/schedule';

describe.each(SOCKET_KINDS)('the rear of a %s', (kind) => {
	const { lugs } = socketDrawing(kind);
	const far = ({ x, y }: { x: number; y: number }) => Math.hypot(x, y);
	it('has no lug nearer to its middle than one that is soldered before it', () => {
		for (const a of lugs)
			for (const b of lugs)
				if (reachOf(a.contact) < reachOf(b.contact))
					expect(far(a), `${a.contact} before ${b.contact}`).toBeLessThan(far(b));
	});
	it('has a rank for every lug', () => {
		for (const { contact } of lugs) expect(reachOf(contact)).toBeLessThan(5);
	});
});
