/**
 * The keyboard's place on the page is never lost. A control that takes itself away, or that is
 * disabled because nothing is left for it to do, would drop the focus on the page's body, and Tab
 * would begin again at the top. So before a key or a click acts, its place in the document is marked
 * by a range, which stays where the control was, and the nearest stop that is left takes over.
 */
const STOPS = 'a[href], button, select, input, textarea, summary, [tabindex]';

/** What stands aside follows a hand some frames later, and may take the control away then. */
const FRAMES = 4;

type Stop = HTMLElement | SVGElement;
interface Place {
	readonly at: Element;
	/** The parts of the page round it, the innermost first. */
	readonly parts: readonly Element[];
	/** A point of the document right before it, or where it was. */
	readonly mark: Range;
}

const canKeep = (stop: Element): boolean =>
	stop.isConnected && !stop.matches(':disabled') && stop.checkVisibility();
const canTake = (stop: Element): stop is Stop => canKeep(stop) && (stop as Stop).tabIndex >= 0;

function placeOf(at: Element): Place {
	const parts: Element[] = [];
	for (let part = at.parentElement; part; part = part.parentElement) parts.push(part);
	const mark = document.createRange();
	mark.setStartBefore(at);
	mark.collapse(true);
	return { at, parts, mark };
}

/** The next stop, else the one before, in the innermost part of the page that still has one. */
function heirOf({ parts, mark }: Place): Stop | undefined {
	const stops = [...document.querySelectorAll<Stop>(STOPS)];
	const after = stops.filter((stop) => mark.comparePoint(stop, 0) > 0);
	const before = stops.slice(0, stops.length - after.length).reverse();
	for (const part of parts.filter((p) => p.isConnected)) {
		const inside = (stop: Stop) => part.contains(stop) && canTake(stop);
		const heir = after.find(inside) ?? before.find(inside);
		if (heir) return heir;
	}
	return undefined;
}

/** Watches the document; what it returns ends that. */
export function keepPlace(): () => void {
	function note() {
		const at = document.activeElement;
		// What cannot take the focus by itself (the page's main part, say) has no place to hand on.
		if (!at || at === document.body || !canTake(at)) return;
		const place = placeOf(at);
		const look = (frames: number) => {
			const now = document.activeElement;
			const isLost = now === null || now === document.body || now === at;
			if (!isLost) return;
			// In a drawing Tab stops at one contact at a time; another one keeps the focus all the same.
			if (!canKeep(at)) heirOf(place)?.focus();
			else if (frames > 0) requestAnimationFrame(() => look(frames - 1));
		};
		requestAnimationFrame(() => look(FRAMES));
	}
	document.addEventListener('click', note, true);
	document.addEventListener('keydown', note, true);
	return () => {
		document.removeEventListener('click', note, true);
		document.removeEventListener('keydown', note, true);
	};
}
