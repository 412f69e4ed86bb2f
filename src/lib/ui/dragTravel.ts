/** A plug that is dragged along its travel by the figure in which it is drawn. */
import { SEATED } from '../engine';
import type { Session } from '../session/session.svelte';
import { restOutOfSight } from './outOfSight';

type Held = PointerEvent & { readonly currentTarget: HTMLElement };

/** Handlers of the figure's box. `sessionNow`: whose plug it is; `perMm`: pixels for a millimetre in that box. */
export function dragTravel(sessionNow: () => Session, perMm: (box: HTMLElement) => number) {
	let wake: (() => void) | null = null;
	let from: { x: number; travel: number } | null = null;

	function down(event: Held) {
		const { plug } = sessionNow();
		if (!plug || event.button !== 0 || !event.isPrimary) return;
		event.currentTarget.setPointerCapture(event.pointerId);
		sessionNow().history.endGroup();
		addEventListener('keydown', takeBack, true);
		from = { x: event.clientX, travel: plug.travel };
		// When the press has moved the focus: what holds it does not rest.
		setTimeout(() => {
			if (from) wake ??= restOutOfSight(document.querySelectorAll<HTMLElement>('.block'));
		});
	}
	function move(event: Held) {
		const session = sessionNow();
		const scale = perMm(event.currentTarget);
		if (!from || !session.plug || !(scale > 0)) return;
		const travel = from.travel + (event.clientX - from.x) / scale;
		const whole = Math.round(Math.min(SEATED, Math.max(0, travel)) * 10) / 10;
		session.setTravel(session.plug.id, whole);
	}
	/** Escape puts the plug back where the hand took it; a drag is one step, so undo is the way back. */
	function takeBack(event: KeyboardEvent) {
		if (event.key !== 'Escape' || !from) return;
		event.preventDefault();
		event.stopPropagation();
		const session = sessionNow();
		if (session.plug && session.plug.travel !== from.travel) session.undo();
		up();
	}
	function up() {
		if (from) {
			const session = sessionNow();
			session.history.endGroup();
			session.count();
		}
		removeEventListener('keydown', takeBack, true);
		from = null;
		wake?.();
		wake = null;
	}
	return { down, move, up };
}
