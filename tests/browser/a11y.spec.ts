/** No broken accessibility rule on any screen, light and dark, on a desk and in a hand. */
import type { Page } from '@playwright/test';
import { answerTo, diagnosisIn, dictionaryOf, nodesAtPanel } from '../../src/lib/diagnosis';
import { startBench } from '../../src/lib/session/start';
import { READINGS_KEY, freshAt, saveReadings, type Noted } from '../../src/lib/storage/readings';
import { memoryStore } from '../../src/lib/storage/store';
import { choose, find, name, order, PAGES, pathOf, predict, wire } from './course';
import { handsOn } from './hands';
import { expect, expectNoneBroken, longestChange, open, test } from './support';

/** What the browser keeps after every reading that can be taken at a sound panel without its far ends. */
function nearHunt(): string {
	const bench = startBench();
	const dictionary = dictionaryOf(bench, 1);
	const noted: Noted[] = [];
	for (;;) {
		const { next } = diagnosisIn(dictionary, noted, 1, {}, nodesAtPanel(bench));
		if (!next) break;
		const { when, pair } = next;
		noted.push({ when, pair, answer: answerTo(bench, next), meter: '', struck: false });
	}
	const store = memoryStore();
	saveReadings({ bench, noted, most: 1, near: true, at: freshAt(bench) }, store);
	return store.getItem(READINGS_KEY)!;
}
/** Opens everything that is folded. */
const unfold = (page: Page) =>
	page.locator('details').evaluateAll((all) => {
		for (const details of all) (details as HTMLDetailsElement).open = true;
	});

// Each screen is gone over four times.
test.describe.configure({ timeout: 120_000 });

/** What an ear is told of any page, and that nothing moves for whoever wants it still. */
async function expectOutline(page: Page): Promise<void> {
	await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
	await expect(page.getByRole('main')).toHaveCount(1);
	await expect(page.getByRole('navigation', { name: 'Main' })).toBeVisible();
	await expect(page.getByRole('contentinfo')).toContainText('Protective earth stays connected');
	await expect(page).toHaveTitle(/ · Solderside$/);
	expect(await page.locator('html').getAttribute('lang')).toBe('en');
	expect(await longestChange(page), 'seconds that something takes to change').toBe(0);
}

/** Screens worth looking at: an address, and what to do there first. */
type Screen = [name: string, path: string, steps?: (page: Page) => Promise<void>];
const SCREENS: Screen[] = [
	...PAGES.map((path): Screen => [`${path} as it is first met`, path, expectOutline]),
	[
		'the bench with a plug in, probes on, every pair and a broken file',
		'/',
		async (page) => {
			const hands = handsOn(page);
			await hands.button(/^Put p1 /).click();
			await hands.redSelect.selectOption('A.T');
			await hands.blackSelect.selectOption('A.2');
			await page.getByLabel(/Show every pair/).check();
			await hands.button('Tone off').click();
			await hands.button('TRS plug').click();
			await hands.button('Copy link').click();
			await expect(page.getByLabel('Link to this bench')).toBeVisible();
			const buffer = Buffer.from('{}');
			const file = { name: 'x.json', mimeType: 'application/json', buffer };
			await page.getByTestId('file').setInputFiles(file);
			await expect(page.getByRole('alert')).toContainText('was not opened');
			await unfold(page);
		}
	],
	[
		'the live circuit, from the front',
		'/',
		async (page) => {
			const hands = handsOn(page);
			await page.getByLabel('48 V phantom').check();
			await hands.redSelect.selectOption('A.2');
			await hands.blackSelect.selectOption('A.1');
			await expect(hands.word).toContainText('live circuit');
			await hands.button('Turn to the front').click();
			await page.getByTestId('kind').selectOption('jack-ts-changeover');
			await hands.button('Add socket').click();
		}
	],
	[
		'the real bench, readings that contradict and a number that is a question',
		'/real/',
		async (page) => {
			const lug = (name: string) => page.locator(`[data-lug="A.${name}"]`);
			for (const [a, b, said] of [
				['2', 'TN', '○ No beep'],
				['T', '2', '● Beep']
			] as const) {
				await lug(a).click();
				await lug(b).click();
				await page.getByRole('button', { name: said }).click();
			}
			await expect(page.getByTestId('conflict')).toBeVisible();
			await lug('R').click();
			await lug('RN').click();
			await page.getByLabel('Number on the ohms range').fill('220');
			await page.getByRole('button', { name: 'Enter' }).click();
			await expect(page.getByRole('region', { name: /neither a plain joint/ })).toBeVisible();
			await unfold(page);
		}
	],
	[
		'the real bench, where the panel alone can tell no more, and cautions that were read',
		'/real/',
		async (page) => {
			await page.getByRole('button', { name: 'I have read both' }).click();
			await page.evaluate(([key, text]) => localStorage.setItem(key, text), [
				READINGS_KEY,
				nearHunt()
			] as const);
			await open(page, '/real/');
			await expect(
				page.getByRole('region', { name: 'The panel alone can tell no more' })
			).toBeVisible();
		}
	],
	[
		'an unmarked socket, after two readings',
		'/lugs/',
		async (page) => {
			await page.getByLabel('In front').selectOption('a female three-pin face');
			for (const said of ['● Beep', '● Beep'])
				if (await page.getByRole('button', { name: said }).isVisible())
					await page.getByRole('button', { name: said }).click();
			await expect(page.getByTestId('lug-readings')).toBeVisible();
		}
	],
	[
		'find, judged and replayed',
		pathOf(find),
		async (page) => {
			const hands = handsOn(page);
			await hands.probe('A.2', 'A.T');
			await page.getByRole('button', { name: 'Which' }).click();
			await page.getByLabel('What kind of fault is it?').selectOption({ index: 1 });
			await page.getByLabel('Where?').selectOption({ index: 1 });
			await hands.button('That is it').click();
			await page.getByRole('button', { name: 'Replay step by step' }).click();
		}
	],
	[
		'predict, judged',
		pathOf(predict),
		async (page) => {
			await page.getByRole('checkbox').first().check();
			await handsOn(page).button('Check my prediction').click();
			await page.getByRole('button', { name: 'Show me' }).first().click();
		}
	],
	[
		'wire, judged unsafe',
		pathOf(wire),
		async (page) => {
			const wires = handsOn(page).section('Jumpers and cables');
			await wires.getByLabel('From').selectOption('A.1');
			await wires.getByLabel('To').selectOption('A.G');
			await handsOn(page).button('Solder the jumper').click();
			await handsOn(page).button('Check my wiring').click();
			await expect(page.getByText('Unsafe.').first()).toBeVisible();
		}
	],
	[
		'choose, judged',
		pathOf(choose),
		async (page) => {
			await page.getByRole('checkbox').first().check();
			await handsOn(page).button('Check my choice').click();
		}
	],
	[
		'name, judged',
		pathOf(name),
		async (page) => {
			for (const [letter, contact] of Object.entries(name.wrong[0]!.answer.names))
				await page.getByLabel(`Lug ${letter} is`).selectOption(contact);
			await handsOn(page).button('Those are their names').click();
		}
	],
	[
		'order, judged unsafe',
		pathOf(order),
		async (page) => {
			const hands = handsOn(page);
			for (const id of order.wrong.find((w) => w.unsafe)!.answer.order)
				await hands.button(order.steps.find((s) => s.id === id)!.text).click();
			await hands.button('Check my order').click();
			await expect(page.getByTestId('order-play')).toBeVisible();
		}
	],
	[
		'an exercise with a word explained',
		pathOf(predict),
		async (page) => {
			await page.getByRole('article').getByRole('link', { name: 'normals', exact: true }).click();
			await expect(page.getByTestId('explained')).toBeVisible();
		}
	],
	[
		'find, judged',
		pathOf(find),
		async (page) => {
			const hands = handsOn(page);
			await hands.redSelect.selectOption('A.T');
			await hands.blackSelect.selectOption('A.2');
			await page.getByLabel('What kind of fault is it?').selectOption({ index: 1 });
			await page.getByLabel('Where?').selectOption({ index: 1 });
			await hands.button('That is it').click();
			await unfold(page);
		}
	]
];

for (const [screen, path, steps] of SCREENS)
	test(`nothing is broken on ${screen}`, async ({ page }) => {
		await page.emulateMedia({ reducedMotion: 'reduce' });
		await open(page, path);
		await steps?.(page);
		await expectNoneBroken(page);
	});

test('what is drawn also stands in a list, with the same tools', async ({ page }) => {
	await open(page);
	const hands = handsOn(page);
	const list = hands.section('Contacts, as a list');
	const drawn = await page.locator('svg [data-node]').count();
	await unfold(page);
	await expect(list.getByRole('listitem')).toHaveCount(drawn);
	await list.getByRole('button', { name: 'Red probe on tip spring, T' }).click();
	await list.getByRole('button', { name: 'Black probe on pin 2, hot' }).click();
	await expect(hands.display).toHaveText('0.2 Ω');
	await expect(hands.sentence).toHaveAttribute('aria-live', 'polite');
	await expect(hands.said).toHaveRole('status');
	await list.getByRole('button', { name: 'Jumper at ring spring, R' }).click();
	await list.getByRole('button', { name: 'Solder here at pin 3, cold' }).click();
	await expect(hands.said).toContainText('Jumper soldered from R to 3.');
	await expect(list.getByRole('button', { name: 'Red probe on tip spring, T' })).toHaveAttribute(
		'aria-pressed',
		'true'
	);
});
