/**
 * The bench as a SPICE netlist: one resistor a conductor, one source a supply. Nodes are numbers,
 * because SPICE folds upper and lower case and ids do not. Node 0 is kept free as the reference:
 * `rshunt` hangs every node on it through 1e12 Ω, so that a floating part is no singular matrix.
 * Signal sources stand at zero volts, phantom supplies are on, as in the engine's voltages.
 */
import type { Bench } from './bench';
import { circuit, type Conductor } from './circuit';
import { PHANTOM } from './parts';

/** Leak from every node to the reference, ohms. */
export const LEAK = 1e12;

function reasonWords({ reason }: Conductor): string {
	const { kind, ...rest } = reason;
	return [kind, ...Object.values(rest).map(String)].join(' ');
}

/** SPICE text; ends in `.end` and a newline. Runs as it is in batch mode (operating point). */
export function netlistOf(bench: Bench): string {
	const { nodes, conductors } = circuit(bench);
	const number = new Map(nodes.map((node, i) => [node, i + 1]));
	let next = nodes.length + 1;
	const comments = nodes.map((node) => `* node ${number.get(node)} = ${node}`);
	const cards: string[] = [];
	const supplies = new Map<string, number>();
	let resistors = 0;
	let sources = 0;
	const inner = (what: string): number => {
		comments.push(`* node ${next} = ${what}`);
		return next++;
	};
	const source = (plus: number, minus: number, volts: number, what: string) => {
		sources += 1;
		cards.push(`* V${sources}: ${what}`, `V${sources} ${plus} ${minus} DC ${volts}`);
	};
	const resistor = (a: number, b: number, c: Conductor) => {
		resistors += 1;
		cards.push(`* R${resistors}: ${reasonWords(c)}`, `R${resistors} ${a} ${b} ${c.ohms}`);
	};
	for (const c of conductors) {
		const a = number.get(c.a)!;
		const b = number.get(c.b)!;
		if (!c.emf) resistor(a, b, c);
		else if (c.emf.supply === 'signal') {
			const joint = inner(`signal source inside ${c.emf.device}, ${c.a} side`);
			source(joint, b, 0, `signal of ${c.emf.device}, at zero volts here`);
			resistor(a, joint, c);
		} else {
			const { device } = c.emf;
			let joint = supplies.get(device);
			if (joint === undefined) {
				joint = inner(`phantom supply inside ${device}`);
				supplies.set(device, joint);
				source(joint, b, PHANTOM, `phantom supply of ${device}`);
			}
			resistor(a, joint, c);
		}
	}
	const title = bench.title.replace(/[^\x20-\x7e]/g, '?');
	return [
		`* Solderside bench: ${title || 'untitled'}`,
		...comments,
		...cards,
		`.options rshunt=${LEAK.toExponential()}`,
		'.op',
		'.end',
		''
	].join('\n');
}
