/**
 * Conductors looked at when a plug moves. A quarter as many patch cords as hybrids, plugged and pulled
 * at random from a stated seed; the nets that follow are compared with those of the whole bench. And
 * the worst case for a search: sockets wired in one chain through their break contacts, where each plug
 * cuts a long net in two.
 */
import { LiveNets, checkBench, netsOf, type Bench } from '../../src/lib/engine';
import { randomNumbers } from '../../src/lib/engine/random.fixture';
import type { Row } from './measure';
import { panelFile } from './panels';

const MOVES = 2000;

function benchOf(file: object): Bench {
	const parsed = checkBench(file);
	if (!parsed.ok) throw new Error(`${parsed.problem.path}: ${parsed.problem.message}`);
	return parsed.value;
}

/** The panel with loose patch cords: tip to tip, ring to ring, sleeve to sleeve. */
function patched(hybrids: number): Bench {
	const file = panelFile(hybrids) as { cables: object[] };
	const cords = Math.max(1, Math.floor(hybrids / 4));
	const each = Array.from({ length: cords }, (_, i) => i);
	const parts = ['tip', 'ring', 'sleeve'];
	return benchOf({
		...file,
		plugs: each.flatMap((i) => ['p', 'q'].map((end) => ({ id: `${end}${i}`, kind: 'trs' }))),
		cables: [
			...file.cables,
			...each.map((i) => ({
				id: `x${i}`,
				m: 1,
				cores: parts.map((part) => [`p${i}.${part}`, `q${i}.${part}`])
			}))
		]
	});
}

/** Jacks whose break contact is wired to the next one's tip, and two plugs. */
function chained(jacks: number): Bench {
	const each = Array.from({ length: jacks }, (_, i) => i);
	return benchOf({
		format: 'solderside-bench',
		version: 1,
		sockets: each.map((i) => ({ id: `H${i}`, kind: 'jack-ts-break' })),
		wires: each.slice(1).map((i) => ({ id: `w${i}`, from: `H${i - 1}.TN`, to: `H${i}.T` })),
		plugs: ['p0', 'q0'].map((id) => ({ id, kind: 'ts' }))
	});
}

/** Throws unless the two have the same nets. */
function compare(live: LiveNets, bench: Bench) {
	const { list } = netsOf(bench);
	const numbers = new Set<number>();
	for (const net of list) {
		const found = new Set(net.map((node) => live.netOf(node)));
		if (found.size !== 1) throw new Error(`${net[0]}: its net has come apart`);
		numbers.add([...found][0]!);
	}
	if (numbers.size !== list.length) throw new Error('nets have run together');
}

/** Moves plugs at random, each to a free socket or out. Steps of every move. */
function movesOf(start: Bench): number[] {
	const below = randomNumbers(start.sockets.length);
	const live = new LiveNets(start);
	const homes = new Map<string, string | null>(start.plugs.map((p) => [p.id, null]));
	const taken = new Set<string>();
	const steps = Array.from({ length: MOVES }, () => {
		const plug = start.plugs[below(start.plugs.length)]!.id;
		const wanted = start.sockets[below(start.sockets.length)]!.id;
		const home = taken.has(wanted) ? null : wanted;
		const before = homes.get(plug);
		if (before) taken.delete(before);
		if (home) taken.add(home);
		homes.set(plug, home);
		const had = live.steps;
		live.move(plug, home);
		return live.steps - had;
	});
	const plugs = start.plugs.map((p) => ({ ...p, socket: homes.get(p.id) ?? null }));
	compare(live, { ...start, plugs });
	return steps;
}

const mean = (numbers: readonly number[]) =>
	numbers.reduce((sum, n) => sum + n, 0) / numbers.length;

export function moveRows(sizes: readonly number[]): Row[] {
	const rows = sizes.flatMap((size): Row[] => {
		const steps = movesOf(patched(size));
		return [
			{ what: `panel of ${size}: mean steps a plug move`, ratio: mean(steps), most: 64 },
			{ what: `panel of ${size}: most steps of ${MOVES} moves`, count: Math.max(...steps) }
		];
	});
	const chain = [48, 1000, 10_000].map((size): Row => {
		const what = `worst case, ${size} jacks in one chain: mean steps`;
		return { what, ratio: mean(movesOf(chained(size))), most: 64 };
	});
	return [...rows, ...chain];
}
