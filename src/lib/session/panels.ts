/** The panels that the browser keeps: the bench of the first page, and the one at the real bench where it differs. */
import { makeBench, type Bench } from '../engine';
import { loadBench, loadReadings, type TextStore } from '../storage';
import { startBench } from './start';

export interface Panels {
	/** The stored bench; the first bench where there is none, or it cannot be read. */
	readonly bench: Bench;
	/** The panel that readings are taken on; null where it is the same. */
	readonly real: Bench | null;
	/** Why the stored bench is not shown; '' where it is. */
	readonly notice: string;
}

/** What is kept. Never throws. `store`: the browser's own unless said. */
export function keptPanels(store?: TextStore | null): Panels {
	const stored = loadBench(store);
	const bench = stored?.ok ? stored.value : startBench();
	const notice =
		stored && !stored.ok
			? `The bench kept in this browser could not be read, so the first bench is shown. The text is kept. At ${stored.problem.path}: ${stored.problem.message}`
			: '';
	const real = loadReadings(store)?.bench ?? null;
	return { bench, real: real && makeBench(real) !== makeBench(bench) ? real : null, notice };
}
