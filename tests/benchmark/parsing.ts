/** The one gate from text to bench against bare JSON.parse of the same text. */
import { makeBench, parseBench } from '../../src/lib/engine';
import { ratioOf, type Row } from './measure';
import { panel } from './panels';

export function parseRows(hybrids: number): Row[] {
	const text = makeBench(panel(hybrids));
	const ours = { run: () => parseBench(text) };
	const bare = { run: () => JSON.parse(text) as unknown };
	const of = `panel of ${hybrids}`;
	return [
		{ what: `${of}: bytes of its file`, count: text.length },
		{ what: `${of}: parseBench / JSON.parse`, ratio: ratioOf(ours, bare) }
	];
}
