/** The continuity table says for every pair and plug state what the engine says, and puts the probes there. */
import {
	contactsOf,
	inState,
	matrixOf,
	pairsOf,
	readMeter,
	splitNode,
	statesOf,
	type Pair,
	type PlugState
} from '../../src/lib/engine';
import { kindWords } from '../../src/lib/words';
import { expectProbes, handsOn } from './hands';
import { expect, open, test } from './support';

const bare = (node: string) => splitNode(node)[1];
const stateName = (state: PlugState) => (state === 'none' ? 'No plug' : kindWords(state).name);

test('every pair in every plug state is what the engine answers', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const table = page.getByRole('table');
	const bench = await hands.kept();
	const matrix = matrixOf(bench, 'A');
	const states = statesOf(bench, 'A');
	const isJoined = (state: PlugState, pair: Pair) =>
		matrix[state]!.some(([a, b]) => a === pair[0] && b === pair[1]);
	const pairs = pairsOf(contactsOf(bench, 'A'));
	expect(pairs).toHaveLength(45);
	expect(states).toHaveLength(6);

	await expect(table.getByRole('columnheader')).toHaveText([
		'Pair',
		...states.map((s) => new RegExp(`^${stateName(s)}`))
	]);
	// At first only the pairs that are ever joined.
	const ever = pairs.filter((pair) => states.some((s) => isJoined(s, pair)));
	await expect(table.getByRole('rowheader')).toHaveText(
		ever.map(([a, b]) => `${bare(a)} – ${bare(b)}`)
	);
	await page.getByLabel(/Show every pair/).check();
	await expect(table.getByRole('rowheader')).toHaveText(
		pairs.map(([a, b]) => `${bare(a)} – ${bare(b)}`)
	);

	/** What a cell says to the ear: its name. What it says to the eye: ● or ·, ▲ or ▽. */
	const wanted = pairs.flatMap((pair) =>
		states.map((state, i) => {
			const is = isJoined(state, pair);
			const was = i === 0 ? is : isJoined(states[i - 1]!, pair);
			const change = is === was ? '' : is ? ', now joined' : ', now apart';
			const mark = is === was ? '' : is ? '▲' : '▽';
			const name = `${bare(pair[0])} and ${bare(pair[1])}, ${stateName(state)}: ${is ? 'joined' : 'apart'}`;
			return { name: name + change, mark: (is ? '●' : '·') + mark };
		})
	);
	const cells = table.getByRole('cell').getByRole('button');
	const drawn = await cells.evaluateAll((all) =>
		all.map((cell) => ({ name: cell.getAttribute('aria-label'), mark: cell.textContent.trim() }))
	);
	expect(drawn).toEqual(wanted);
	expect(wanted.filter((cell) => cell.mark.length > 1).length).toBeGreaterThan(10);
	await expect(table.getByRole('columnheader', { name: /as now/ })).toHaveText(/^No plug/);

	// A cell puts the probes on its pair, in the plug state that the bench is in.
	for (const [pair, state] of [
		[['A.R', 'A.S'], 'ts'],
		[['A.2', 'A.T'], 'none'],
		[['A.G', 'A.SN'], 'three-pin']
	] as const) {
		const name = new RegExp(`^${bare(pair[0])} and ${bare(pair[1])}, ${stateName(state)}:`);
		await table.getByRole('button', { name }).click();
		await expectProbes(hands, pair[0], pair[1]);
		await expect(hands.display).toHaveText(
			readMeter(bench, 'continuity', pair[0], pair[1]).display
		);
		await expect(hands.said).toContainText(`Probes on ${bare(pair[0])} and ${bare(pair[1])}`);
	}

	// With a plug in, another column is the present one, and its cells are what the meter finds.
	await hands.button(/^Put p1 /).click();
	await expect(table.getByRole('columnheader', { name: /as now/ })).toHaveText(/^TS plug/);
	const seated = inState(bench, { A: 'ts' });
	for (const pair of [
		['A.R', 'A.S'],
		['A.T', 'A.TN']
	] as const) {
		await table
			.getByRole('button', { name: new RegExp(`^${bare(pair[0])} and ${bare(pair[1])}, TS plug`) })
			.click();
		await expect(hands.display).toHaveText(
			readMeter(seated, 'continuity', pair[0], pair[1]).display
		);
	}
	// It is the table of the socket in hand, and follows what is soldered.
	await hands.button('Take out w1').click();
	await expect(table.getByRole('button', { name: /^2 and T, No plug/ })).toHaveAccessibleName(
		'2 and T, No plug: apart'
	);
	await page.getByTestId('kind').selectOption('three-pin-male');
	await expect(table.getByRole('columnheader')).toHaveText(['Pair', /No plug/, /three-pin plug/]);
	await page.getByLabel(/Show every pair/).uncheck();
	await expect(hands.section(/Continuity table of/).first()).toContainText('No two contacts');
});
