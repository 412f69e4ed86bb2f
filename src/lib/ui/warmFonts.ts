/**
 * The typefaces' Latin parts are fetched while nothing else is to be done. A browser fetches a face
 * when its first word is drawn, in the middle of the answer to a hand, and lays that word out twice.
 */
const LATIN = /U\+0{1,4}-/i;

/** Begins to fetch them; a face that cannot be had is asked for again when it is needed. */
export function warmFonts(): void {
	const soon = window.requestIdleCallback ?? ((run: () => void) => setTimeout(run, 300));
	soon(() => {
		for (const face of document.fonts)
			if (LATIN.test(face.unicodeRange)) face.load().catch(() => {});
	});
}
