/** What the signs of a still picture mean: a saved picture goes about without the page it came from. */

/** Short lines for its foot. `inColour`: copper can be told from ink; `isProbed`: it shows a way between probes. */
export const legendLines = (inColour: boolean, isProbed: boolean): string[] => [
	'Wires: h hot, c cold, s shield, x any other.',
	'Beside contacts: a, b, c … for what is joined.',
	`${inColour ? 'Copper' : 'Bold and shaded'}: ${isProbed ? 'the way between the probes' : 'what touches now'}.`
];
