/**
 * While a plug is dragged, what lies outside the window need not be laid out and painted in every
 * frame. It keeps its height, so nothing on the page moves, and it is back when the hand lets go. What
 * has the focus in it goes on as it was: hidden, it would lose it.
 */

const isAway = ({ top, bottom }: DOMRect): boolean => bottom < 0 || top > innerHeight;

/** Height inside its edges, px: what the box must keep. */
function innerHeightOf(block: HTMLElement): number {
	const style = getComputedStyle(block);
	return block.clientHeight - parseFloat(style.paddingTop) - parseFloat(style.paddingBottom);
}

/** Lets the blocks that are out of sight rest; gives back how to wake them. */
export function restOutOfSight(blocks: Iterable<HTMLElement>): () => void {
	const away = [...blocks].filter(
		(b) => isAway(b.getBoundingClientRect()) && !b.contains(document.activeElement)
	);
	const heights = away.map(innerHeightOf);
	away.forEach((block, i) => {
		block.style.containIntrinsicHeight = `${heights[i]}px`;
		block.style.contentVisibility = 'hidden';
	});
	return () => {
		for (const block of away) {
			block.style.contentVisibility = '';
			block.style.containIntrinsicHeight = '';
		}
	};
}
