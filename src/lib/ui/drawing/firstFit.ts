/**
 * What the drawing shows before anybody zooms: all of the bench, or, on a narrow page and under a
 * finger, the socket in hand, so that its contacts are large enough to hit. In a browser only.
 */
export const firstFit = (): 'whole' | 'socket' =>
	matchMedia('(max-width: 640px), (pointer: coarse)').matches ? 'socket' : 'whole';
