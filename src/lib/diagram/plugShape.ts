/**
 * A plug in profile, nose to the left, about its own axis: the same stretches and the same profile as
 * in the section, small. One place for the screen and for saved pictures.
 */
import { PLUGS, SEATED, type PlugKind, type Segment } from '../engine';
import { curvedStops, plugRadius } from './sectionPlug';

export interface PlugPart {
	readonly role: 'metal' | 'collar' | 'body' | 'outline' | 'hidden';
	readonly d: string;
}
/** Half of 6.35 mm. */
const SHANK = 3.175;

const number = (n: number): string => String(Math.round(n * 100) / 100 + 0);
const lines = (places: readonly (readonly [number, number])[]): string =>
	places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${number(x)} ${number(y)}`).join(' ');
const box = (x: number, y: number, w: number, h: number): string =>
	`${lines([
		[x, y],
		[x + w, y],
		[x + w, y + h],
		[x, y + h]
	])} Z`;

/** One stretch of a phone plug along its profile. */
function stretch({ from, to, conductor }: Segment, scale: number): PlugPart {
	const stops = curvedStops(from, to);
	const edge = (way: 1 | -1) =>
		stops.map((s) => [s * scale, -way * plugRadius(s)! * scale] as const);
	const d = `${lines([...edge(1), ...edge(-1).reverse()])} Z`;
	return { role: conductor ? 'metal' : 'collar', d };
}

function threePin(scale: number): PlugPart[] {
	const [half, end] = [SHANK * scale, SEATED * scale];
	const pins = [-0.9, 0, 0.9].map((row) =>
		box(4, row * half - 0.28 * scale, end * 0.35, 0.56 * scale)
	);
	return [
		{ role: 'body', d: box(0, -1.7 * half, end * 0.62, 3.4 * half) },
		...pins.map((d): PlugPart => ({ role: 'metal', d })),
		{ role: 'body', d: box(end * 0.62, -1.4 * half, end * 0.38, 2.8 * half) }
	];
}

function made(kind: PlugKind, scale: number): PlugPart[] {
	if (kind === 'three-pin') return threePin(scale);
	const [half, end] = [SHANK * scale, SEATED * scale];
	const inside: PlugPart = {
		role: 'hidden',
		d: lines([
			[4 * scale, 0],
			[24 * scale, 0]
		])
	};
	return [
		...PLUGS[kind].segments.map((segment) => stretch(segment, scale)),
		...(PLUGS[kind].inside.length > 0 ? [inside] : []),
		{ role: 'body', d: box(end, -1.6 * half, 2.6 * half, 3.2 * half) }
	];
}

const known = new Map<string, readonly PlugPart[]>();
/** The parts of a plug; `scale`: units for one millimetre. */
export function plugParts(kind: PlugKind, scale = 2.4): readonly PlugPart[] {
	const key = `${kind} ${scale}`;
	if (!known.has(key)) known.set(key, made(kind, scale));
	return known.get(key)!;
}
