/**
 * The keyboard's place on the page is never lost. A control that goes away, or that is disabled because
 * nothing is left for it to do, would drop the focus on the page's body, and Tab would begin again at
 * the top. So the place of what has the focus is marked by a range, which stays where the control was,
 * and the nearest stop that is left takes over: in the task that changed the page, so that no key falls
 * in between, however long after the hand that is.
 */
const STOPS = 'a[href], button, select, input, textarea, summary, [tabindex]';

/** What is only hidden, by a rule of style, is looked for so many frames after a key or a click. */
const FRAMES = 8;
/** Of what changes on a page, these take the focus from a control. */
const CHANGES = {
	subtree: true,
	childList: true,
	attributeFilter: ['disabled', 'hidden', 'inert']
};

type Stop = HTMLElement | SVGElement;
interface Place {
	readonly at: Element;
	/** The parts of the page round it, the innermost first. */
	readonly parts: readonly Element[];
}
/** One that watches. */
export interface PlaceKeeper {
	/** Another page comes: its focus begins where a page's begins. */
	forget(): void;
	stop(): void;
}

const canKeep = (stop: Element): boolean =>
	stop.isConnected && !stop.matches(':disabled') && stop.checkVisibility();
const canTake = (stop: Element): stop is Stop => canKeep(stop) && (stop as Stop).tabIndex >= 0;

function placeOf(at: Element): Place {
	const parts: Element[] = [];
	for (let part = at.parentElement; part; part = part.parentElement) parts.push(part);
	return { at, parts };
}

/** The next stop after `mark`, else the one before, in the innermost part of the page that still has one. */
function heirOf({ parts }: Place, mark: Range): Stop | undefined {
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

/** Watches the document from now on. */
export function keepPlace(): PlaceKeeper {
	// A point right before the place, or where it was. One for all: the browser keeps it right at every change.
	const mark = document.createRange();
	let place: Place | undefined;
	let frames = 0;
	/** Who moves by keys must see the heir; under a finger or a mouse the page does not move by itself. */
	let isKeyed = false;

	function note() {
		const at = document.activeElement;
		if (!at || at === document.body) return;
		place = placeOf(at);
		mark.setStartBefore(at);
		mark.collapse(true);
	}
	/** Hands on what is lost: the heir's own place is marked as it takes the focus. */
	function look() {
		const now = document.activeElement;
		if (!place || (now !== null && now !== document.body && now !== place.at)) return;
		// What still has the focus is in sight; to ask would cost every frame of a drag.
		const isKept = now === place.at ? !now.matches(':disabled') : canKeep(place.at);
		if (!isKept) heirOf(place, mark)?.focus({ preventScroll: !isKeyed });
	}
	function lookOn() {
		look();
		frames -= 1;
		if (frames > 0) requestAnimationFrame(lookOn);
	}
	function act() {
		note();
		const isIdle = frames <= 0;
		frames = FRAMES;
		if (isIdle) requestAnimationFrame(lookOn);
	}
	/** A hand that clicks on blank paper gives the focus up; what goes away does not. */
	function leave() {
		queueMicrotask(() => {
			if (document.activeElement === document.body && place && canKeep(place.at)) place = undefined;
		});
	}

	const observer = new MutationObserver(look);
	observer.observe(document.body, CHANGES);
	const hears = {
		pointerdown: () => (isKeyed = false),
		keydown: () => {
			isKeyed = true;
			act();
		},
		click: act,
		focusin: note,
		focusout: leave
	};
	for (const [type, hear] of Object.entries(hears)) document.addEventListener(type, hear, true);
	return {
		forget() {
			place = undefined;
		},
		stop() {
			observer.disconnect();
			for (const [type, hear] of Object.entries(hears))
				document.removeEventListener(type, hear, true);
		}
	};
}
