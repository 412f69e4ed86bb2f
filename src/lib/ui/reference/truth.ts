/** The truth table of a kind: its pairs that are joined in some plug state, and how many never are. */
import {
	matrixOf,
	pairsOf,
	splitNode,
	nodesOf,
	type PlugState,
	type SocketKind
} from '../../engine';
import { SOCKETS } from '../../engine';
import { aloneBench } from '../../diagnosis/tell';

export interface TruthRow {
	/** `['T', 'TN']`: contacts by their marks. */
	readonly pair: readonly [string, string];
	readonly joined: readonly boolean[];
}
export interface Truth {
	readonly states: readonly PlugState[];
	/** Pairs that are joined in one state at least. */
	readonly rows: readonly TruthRow[];
	/** Pairs that are apart in every state. */
	readonly never: number;
}

/** Worked out by the engine on the bare socket, with bare plugs, seated. */
export function truthOf(kind: SocketKind): Truth {
	const matrix = matrixOf(aloneBench(kind), 'A');
	const states = Object.keys(matrix) as PlugState[];
	const joined = states.map((s) => new Set(matrix[s]!.map((p) => p.join(' '))));
	const pairs = pairsOf(nodesOf('A', SOCKETS[kind].contacts));
	const rows = pairs
		.map((pair) => ({
			pair: [splitNode(pair[0])[1], splitNode(pair[1])[1]] as const,
			joined: joined.map((set) => set.has(pair.join(' ')))
		}))
		.filter((row) => row.joined.includes(true));
	return { states, rows, never: pairs.length - rows.length };
}
