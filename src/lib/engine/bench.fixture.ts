/** For tests: a bench from what a file would say, format and version left out. */
import type { Bench } from './bench';
import { parseBench } from './parse';

/** The checked bench; throws with path and reason if it is refused. */
export function benchOf(file: Record<string, unknown>): Bench {
	const parsed = parseBench(JSON.stringify({ format: 'solderside-bench', version: 1, ...file }));
	if (!parsed.ok) throw new Error(`${parsed.problem.path}: ${parsed.problem.message}`);
	return parsed.value;
}
