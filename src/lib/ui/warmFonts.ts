/**
 * The typefaces' Latin parts, and the Greek one that has Ω, are fetched while nothing else is to be done. A browser fetches a face
 * when its first word is drawn, in the middle of the answer to a hand, and lays that word out twice.
 */
const USED = /U\+0{0,3}(0-|370-)/i;

/** Begins to fetch them; a face that cannot be had is asked for again when it is needed. */
export function warmFonts(): void {
	const soon = window.requestIdleCallback ?? ((run: () => void) => setTimeout(run, 300));
	soon(() => {
		for (const face of document.fonts)
			if (USED.test(face.unicodeRange)) face.load().catch(() => {});
	});
}
