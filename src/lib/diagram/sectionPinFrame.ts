/**
 * Paper of the three-pin section. The three pins stand on a circle; here they are laid side by side,
 * as a drawing office develops what does not lie in one plane. Depth runs to the right in the
 * engine's schematic millimetres, pin 1 on top because it makes first.
 */
import { scaleLinear } from 'd3-scale';
import { PINS_MAKE, PIN_1_MAKES, type Millimetres, type PinName } from '../engine';
import type { Place } from './sectionPen';

export const PIN_UNIT = 6;
export const PINS = { width: 320, height: 338 } as const;
/** Depth in mm behind the front face → x. */
export const pinX = scaleLinear([-7, 37], [6, 6 + 44 * PIN_UNIT]);
/** Depths in mm. */
export const PIN_DEPTH = { left: -7, insert: 1.2, clamp: 31.6, rear: 33.4, lug: 36.6 } as const;

/** y of each pin's axis. */
export const ROW: Readonly<Record<PinName, number>> = { '1': 98, '2': 156, '3': 214 };
export const PIN_NAMES: readonly PinName[] = ['1', '2', '3'];
/** Where each pin's contact stands behind the front face, mm. */
export const MAKES: Readonly<Record<PinName, Millimetres>> = {
	'1': PIN_1_MAKES,
	'2': PINS_MAKE,
	'3': PINS_MAKE
};
/** Half a pin's thickness and half a hole's, units. */
export const PIN_HALF = 8;
export const HOLE_HALF = 11;

/** y of edges, top and bottom, of the socket's shell, of the plug's shell, and of the insert. */
export const SHELL = { outer: [28, 262], inner: [34, 256] } as const;
export const PLUG_SHELL = { outer: [48, 248], inner: [54, 242] } as const;
export const INSERT = [60, 236] as const;
/** y of the panel's edges. */
export const PLATE = [20, 270] as const;

export const pinPlace = (depth: Millimetres, y: number): Place => [pinX(depth), y];
