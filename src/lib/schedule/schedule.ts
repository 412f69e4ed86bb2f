/** The wiring schedule of a bench as data: conductors, nets, order of soldering, cut list, and what to look at twice. */
import { netsOf, type Bench, type NodeName } from '../engine';
import { ALLOWANCE, cutsOf, type Allowance, type Cuts } from './cuts';
import { grouped } from './grouped';
import { MOST_IN_CUP, orderOf, type Step } from './order';
import { isCrossed, type RunFunction } from './roles';
import { atRest, runsOf, type Run } from './runs';

/** A net at rest that at least one conductor belongs to. */
export interface ScheduleNet {
	/** Its first node by name: `net` of its conductors. */
	readonly name: NodeName;
	readonly nodes: readonly NodeName[];
	/** Its conductors. */
	readonly conductors: readonly string[];
}

export type Warning =
	/** More conductors than a cup takes (common practice: two). */
	| { readonly kind: 'crowded'; readonly at: NodeName; readonly conductors: readonly string[] }
	/** It joins what is usually kept apart. Right in some panels, a mistake in most. */
	| { readonly kind: 'crossed'; readonly conductor: string; readonly function: RunFunction }
	/** Several conductors between the same two lugs. */
	| { readonly kind: 'doubled'; readonly conductors: readonly string[] }
	/** The file has faults; the schedule is for the panel without them. */
	| { readonly kind: 'faults'; readonly count: number };

export interface Schedule {
	readonly title: string;
	readonly conductors: readonly Run[];
	readonly nets: readonly ScheduleNet[];
	readonly order: readonly Step[];
	readonly cuts: Cuts;
	readonly warnings: readonly Warning[];
}

function netsOfRuns(bench: Bench, runs: readonly Run[]): ScheduleNet[] {
	const own = grouped(runs, (r) => r.net);
	return netsOf(atRest(bench)).list.flatMap((nodes) => {
		const name = nodes[0]!;
		const here = own.get(name);
		return here ? [{ name, nodes, conductors: here.map((r) => r.name) }] : [];
	});
}

function warningsOf(bench: Bench, runs: readonly Run[], order: readonly Step[]): Warning[] {
	const pairs = grouped(runs, ({ from, to }) => [from, to].sort().join(' '));
	return [
		...order
			.filter((s) => s.ends.length > MOST_IN_CUP)
			.map(({ at, ends }): Warning => {
				return { kind: 'crowded', at, conductors: ends.map((e) => e.name) };
			}),
		...runs
			.filter((r) => isCrossed(r.function))
			.map((r): Warning => ({ kind: 'crossed', conductor: r.name, function: r.function })),
		...[...pairs.values()]
			.filter((same) => same.length > 1)
			.map((same): Warning => ({ kind: 'doubled', conductors: same.map((r) => r.name) })),
		...(bench.faults.length > 0
			? [{ kind: 'faults', count: bench.faults.length } as const satisfies Warning]
			: [])
	];
}

/** The schedule of a bench. Pure; the same bench gives the same schedule. */
export function scheduleOf(bench: Bench, allowance: Allowance = ALLOWANCE): Schedule {
	const conductors = runsOf(bench);
	const order = orderOf(bench, conductors);
	return {
		title: bench.title,
		conductors,
		nets: netsOfRuns(bench, conductors),
		order,
		cuts: cutsOf(bench, allowance, conductors),
		warnings: warningsOf(bench, conductors, order)
	};
}
