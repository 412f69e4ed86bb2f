/**
 * Writing down textbook networks for the engine's solver. The solver knows sources only behind a
 * resistor, so a battery without one of its own is put in series with a resistor of the book's own
 * network (Thevenin), one copy for each resistor that it feeds: a node held at a known potential may
 * be split. A current source stands across a resistor of the network, as volts behind it (Norton).
 */
import { voltageIn, type Branch } from '../../src/lib/engine/solve';

/** A resistor from `a` to `b`; with `volts`, a source in series with it, + towards `a`. */
export const R = (a: string, b: string, ohms: number, volts?: number): Branch => ({
	a,
	b,
	ohms,
	...(volts !== undefined && { volts })
});
/** A resistor from `a` to `b` with a current source across it that pushes `amps` into `a`. */
export const withCurrent = (a: string, b: string, ohms: number, amps: number): Branch =>
	R(a, b, ohms, ohms * amps);

export const volts = (net: readonly Branch[], a: string, b = '0'): number => {
	const v = voltageIn(net, a, b);
	if (v === null) throw new Error(`nothing ties ${a} to ${b}`);
	return v;
};
/** Current that flows through the branch from its `a` to its `b`, amperes. */
export const amps = (net: readonly Branch[], branch: Branch): number =>
	(volts(net, branch.a, branch.b) - (branch.volts ?? 0)) / branch.ohms;

/** Power turned to heat in all branches, watts. */
export const heat = (net: readonly Branch[]): number =>
	net.reduce((sum, branch) => sum + amps(net, branch) ** 2 * branch.ohms, 0);
/** Power given by all sources, watts; a source that is charged takes some. */
export const supplied = (net: readonly Branch[]): number =>
	net.reduce((sum, branch) => sum - amps(net, branch) * (branch.volts ?? 0), 0);

/** Where a rising or falling function passes zero between two values, by bisection. */
export function balance(low: number, high: number, f: (x: number) => number): number {
	const sign = Math.sign(f(low));
	if (sign === Math.sign(f(high))) throw new Error('no null between the two values');
	for (let i = 0; i < 200; i++) {
		const middle = (low + high) / 2;
		if (Math.sign(f(middle)) === sign) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}
