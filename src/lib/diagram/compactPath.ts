/**
 * A path in fewer letters: every place from the one before it, in hundredths of a unit. Places are
 * rounded first and then taken from each other, so that nothing drifts along a long line.
 */

/** How many numbers a command takes, and which of a pair each is; the flags of an arc are none. */
const AXES: Readonly<Record<string, string>> = {
	M: 'xy',
	L: 'xy',
	H: 'x',
	V: 'y',
	Q: 'xyxy',
	C: 'xyxyxy',
	A: '.....xy'
};

const inUnits = (hundredths: number): string =>
	String(hundredths / 100 + 0).replace(/^(-?)0\./, '$1.');
const joined = (numbers: readonly string[]): string =>
	numbers.map((n, i) => (i > 0 && !n.startsWith('-') ? ` ${n}` : n)).join('');

/** A path of absolute M, L, H, V, A, Q, C and Z, written from place to place. */
export function compactPath(d: string): string {
	const at = { x: 0, y: 0 };
	let start = { ...at };
	let out = '';
	let last = '';
	for (const [, letter, rest] of d.matchAll(/([MLHVAQCZ])([^MLHVAQCZ]*)/g)) {
		if (letter === 'Z') {
			Object.assign(at, start);
			out += 'z';
			last = 'z';
			continue;
		}
		const axes = AXES[letter!]!;
		const given = (rest!.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number);
		const isFirst = letter === 'M';
		const from = isFirst ? { x: 0, y: 0 } : { ...at };
		const numbers = given.map((n, i) => {
			const axis = axes[i]!;
			const whole = Math.round(n * 100);
			if (axis === '.') return inUnits(whole);
			at[axis as 'x' | 'y'] = whole;
			return inUnits(whole - from[axis as 'x' | 'y']);
		});
		if (isFirst) start = { ...at };
		const [dx, dy] = [at.x - from.x, at.y - from.y];
		const flat = letter === 'L' && (dx === 0 ? 'v' : dy === 0 ? 'h' : '');
		const name = isFirst ? 'M' : flat || letter!.toLowerCase();
		const text = joined(flat ? [inUnits(flat === 'v' ? dy : dx)] : numbers);
		out += name === last && name !== 'M' ? (text.startsWith('-') ? text : ` ${text}`) : name + text;
		last = name;
	}
	return out;
}
