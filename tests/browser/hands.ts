/**
 * A learner's hands and eyes on the bench: what can be pointed at, what can be read. Found by what
 * a person finds them by (roles, names) or by the contact they stand for, never by their styling.
 */
import type { Locator, Page } from '@playwright/test';
import { parseBench, type Bench, type NodeName } from '../../src/lib/engine';
import { expect } from './support';

/** Everything on a bench's screen that the tests touch or read. */
export function handsOn(page: Page) {
	const button = (name: string | RegExp) =>
		page.getByRole('button', { name, exact: typeof name === 'string' });
	const node = (name: NodeName) => page.locator(`svg [data-node="${name}"]`);
	return {
		button,
		/** A contact on the drawing. */
		node,
		/** A socket's body on the drawing, without its contacts. */
		socket: (id: string) => page.locator(`svg [data-socket="${id}"]`),
		drawing: page.getByRole('region', { name: 'Drawing' }),
		display: page.getByLabel('Display'),
		word: page.getByTestId('meter-word'),
		sentence: page.getByTestId('meter-sentence'),
		why: page.getByTestId('why'),
		said: page.getByTestId('said'),
		standing: page.getByTestId('standing'),
		heard: page.getByTestId('heard'),
		redSelect: page.getByLabel('Red probe +'),
		blackSelect: page.getByLabel('Black probe −'),
		travel: page.getByRole('region', { name: /from the side/ }),
		section: (name: string | RegExp) => page.getByRole('region', { name }),
		tool: (name: 'Red probe' | 'Black probe' | 'Jumper') => page.getByRole('radio', { name }),
		mode: (name: 'Continuity' | 'Ohms' | 'Volts') => page.getByRole('radio', { name }),
		/** Clicks both contacts, the red probe first. */
		async probe(red: NodeName, black: NodeName) {
			await this.tool('Red probe').check();
			await node(red).click();
			await this.tool('Black probe').check();
			await node(black).click();
		},
		/** The bench as the browser keeps it: what is really there, not what is drawn. */
		async kept(): Promise<Bench> {
			const text = await page.evaluate(() => localStorage.getItem('solderside-bench-1'));
			const parsed = parseBench(text ?? '');
			if (!parsed.ok) throw new Error(`${parsed.problem.path}: ${parsed.problem.message}`);
			return parsed.value;
		}
	};
}
export type Hands = ReturnType<typeof handsOn>;

/** Where a contact stands on the screen: the origin of its own drawing, client pixels. */
export const placeOf = (node: Locator): Promise<{ x: number; y: number }> =>
	node.evaluate((element) => {
		const { e, f } = (element as SVGGraphicsElement).getScreenCTM()!;
		return { x: e, y: f };
	});

/** The probes stand where they are named, on the drawing's lists and in the meter's fields. */
export async function expectProbes(hands: Hands, red: NodeName, black: NodeName): Promise<void> {
	await expect(hands.redSelect).toHaveValue(red);
	await expect(hands.blackSelect).toHaveValue(black);
	await expect(hands.node(red)).toHaveAccessibleName(/red probe here/);
	await expect(hands.node(black)).toHaveAccessibleName(/black probe here/);
}
