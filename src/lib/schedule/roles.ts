/**
 * What a conductor carries, and the colour that says so. Both follow from the conductor's own two
 * ends and from nothing else on the bench, so that another wire never recolours this one.
 *
 * Letters: IEC 60757 (as reported). GNYE belongs to protective earth alone, and green or yellow by
 * themselves may be taken for it (IEC 60445, as reported), so neither is given; blue is the mains
 * neutral there, and white is it elsewhere (from memory), so both are left out too. Red, black, brown,
 * orange and grey are live conductors in one country or another (from memory): too few letters are left
 * to do without them, and the page says so. Pink for functional earth: IEC 60445:2021, as reported. Which of the other colours
 * stands for which signal is this project's choice: no standard says.
 */
import { PANEL, splitNode, type Bench, type NodeName } from '../engine';

/** IEC 60757 letters of plain colours. */
export const COLOURS = [
	'BK',
	'BN',
	'RD',
	'OG',
	'YE',
	'GN',
	'BU',
	'VT',
	'GY',
	'WH',
	'PK',
	'TQ'
] as const;
export type Colour = (typeof COLOURS)[number];
/** Green-and-yellow: protective earth, never a conductor of a schedule. */
export const PROTECTIVE_EARTH = 'GNYE';

/** What a contact carries. `switch`: a changeover that touches no signal of its own socket. */
export type Role = 'hot' | 'cold' | 'shield' | 'chassis' | 'switch';

/** What a conductor does: what both ends carry, or the two that it joins. */
export const FUNCTIONS = [
	'hot',
	'cold',
	'shield',
	'chassis',
	'switch',
	'hot-cold',
	'hot-shield',
	'cold-shield',
	'hot-chassis',
	'cold-chassis',
	'shield-chassis'
] as const;
export type RunFunction = (typeof FUNCTIONS)[number];

const ROLES: Readonly<Record<string, Role>> = {
	...{ '2': 'hot', T: 'hot', TN: 'hot', tip: 'hot', hot: 'hot' },
	...{ '3': 'cold', R: 'cold', RN: 'cold', ring: 'cold', cold: 'cold' },
	...{ '1': 'shield', S: 'shield', SN: 'shield', '1N': 'shield' },
	...{ sleeve: 'shield', shield: 'shield' },
	...{ G: 'chassis', chassis: 'chassis' },
	...{ C: 'switch', NC: 'switch', NO: 'switch' }
};

/**
 * What the node carries: pin 1 shield, 2 hot, 3 cold (AES14, as reported); tip hot, ring cold,
 * sleeve shield. The shell of a plug is chassis; the `shell` of a microphone is its shield contact.
 */
export function roleOf(bench: Bench, node: NodeName): Role {
	if (node === PANEL) return 'chassis';
	const [owner, contact] = splitNode(node);
	if (contact !== 'shell') return ROLES[contact] ?? 'switch';
	return bench.plugs.some((p) => p.id === owner) ? 'chassis' : 'shield';
}

const ORDER: readonly Role[] = ['hot', 'cold', 'shield', 'chassis', 'switch'];

/** The function of a conductor with these two ends; a changeover takes on what is switched. */
export function functionOf(bench: Bench, from: NodeName, to: NodeName): RunFunction {
	const [a, b] = [roleOf(bench, from), roleOf(bench, to)].sort(
		(x, y) => ORDER.indexOf(x) - ORDER.indexOf(y)
	) as [Role, Role];
	return a === b || b === 'switch' ? a : (`${a}-${b}` as RunFunction);
}

const COLOUR_OF: Readonly<Record<RunFunction, Colour>> = {
	hot: 'RD',
	cold: 'VT',
	shield: 'BK',
	chassis: 'PK',
	'shield-chassis': 'PK',
	switch: 'GY',
	'hot-cold': 'TQ',
	'hot-shield': 'OG',
	'cold-shield': 'BN',
	'hot-chassis': 'TQ',
	'cold-chassis': 'TQ'
};

/** The colour of a function. A core's own insulation may differ: then it is the colour of its marker. */
export const colourOf = (what: RunFunction): Colour => COLOUR_OF[what];

/** Whether the conductor joins what is usually kept apart: two different parts of a signal, or a signal and the chassis. */
export const isCrossed = (what: RunFunction): boolean =>
	what.includes('-') && what !== 'shield-chassis';
