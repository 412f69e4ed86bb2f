/** An unmarked socket named by its readings; the engine is the meter. */
import type { Page } from '@playwright/test';
import { viewOf } from '../../src/lib/diagnosis/tell';
import { lugKnowledge, lugToProve, type LugReading } from '../../src/lib/diagnosis/lugs';
import { readingsLeft } from '../../src/lib/diagnosis/lugsLeft';
import { sentence } from '../../src/lib/words';
import { LUGS_CAUTIONS, leftWords } from '../../src/lib/words/lugs';
import { questionWords } from '../../src/lib/words/referenceTell';
import type { SocketKind } from '../../src/lib/engine';
import { expect, open, smallTargets, test } from './support';

const KINDS: SocketKind[] = ['jack-ts-changeover', 'patch-jack'];
/** A patch jack whose lug a is contact 3, lug b contact 0, and so on. */
const ORDER = [3, 0, 4, 1, 2];
const NAMES = ['T', 'R', 'S', 'TN', 'RN'];

function nextReading(readings: readonly LugReading[]): LugReading | null {
	const next = lugKnowledge(KINDS, readings).next ?? lugToProve(KINDS, readings);
	if (!next) return null;
	const { lugs, parts } = viewOf('patch-jack', next.state);
	const net = typeof next.a === 'number' ? lugs[ORDER[next.a]!] : parts.get(next.a);
	return { ...next, sounds: net === lugs[ORDER[next.b]!] };
}

test('two kinds that look alike: readings name the kind and every lug, by mouse', async ({
	page
}) => {
	await open(page, '/lugs/');
	await page.getByLabel('In front').selectOption('a jack alone');
	await page.getByLabel('Lugs at the rear').selectOption('5');
	const taken: LugReading[] = [];
	for (;;) {
		const reading = nextReading(taken);
		if (!reading) break;
		await expect(page.getByText(questionWords(reading), { exact: true })).toBeVisible();
		await page.getByRole('button', { name: reading.sounds ? '● Beep' : '○ No beep' }).click();
		taken.push(reading);
		await expect(page.getByTestId('lug-readings').getByRole('listitem')).toHaveCount(taken.length);
	}
	await expect(page.getByRole('heading', { name: 'Every lug is named' })).toBeFocused();
	await expect(page.getByText('It is a patch jack.', { exact: true })).toBeVisible();
	for (const [i, contact] of ORDER.entries())
		await expect(page.locator(`[data-lug-name="${'abcde'[i]}"] td`)).toHaveText(NAMES[contact]!);
	await page.getByRole('button', { name: 'Undo' }).click();
	await expect(page.getByRole('button', { name: '● Beep' })).toBeVisible();
});

test('without a plug some lugs stay alike, and a false answer is named, by keyboard', async ({
	page
}) => {
	await open(page, '/lugs/');
	const active = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? '');
	const tabTo = async (name: string, key = 'Tab') => {
		for (let i = 0; i < 80 && (await active()) !== name; i++) await page.keyboard.press(key);
		expect(await active()).toBe(name);
	};
	await page.getByLabel('In front').selectOption('a female three-pin face');
	await page.getByLabel('three-pin plug').focus();
	await page.keyboard.press('Space');
	await expect(page.getByRole('heading', { name: 'The meter can tell no more' })).toBeVisible();
	await expect(page.getByText(/can tell lug a, lug b and lug c apart/)).toBeVisible();
	await page.keyboard.press('Space');
	// Pin 1 of the plug sounds on no lug at all: no such socket.
	for (const _ of 'abc') {
		await tabTo('○ No beep');
		await page.keyboard.press('Enter');
		if (await page.getByTestId('lug-conflict').isVisible()) break;
	}
	// Silence alone could be a broken lead or a plug that is not home: one reading must beep.
	await expect(page.getByTestId('lugs-proof')).toContainText('Nothing has beeped');
	await expect(page.getByTestId('lugs-told')).toContainText('none of it is proved');
	await expect(page.getByRole('heading', { name: 'Every lug is named' })).toHaveCount(0);
	const readings = page.getByTestId('lug-readings').getByRole('listitem');
	const taken = await readings.count();
	await tabTo('● Beep');
	await page.keyboard.press('Enter');
	await expect(readings).toHaveCount(taken + 1);
	await expect(page.getByRole('heading', { name: 'Every lug is named' })).toBeFocused();
	await tabTo('Take the last one back');
	await page.keyboard.press('Enter');
	await tabTo('○ No beep');
	await page.keyboard.press('Enter');
	await expect(page.getByTestId('lug-conflict')).toBeVisible();
	await tabTo('Begin anew');
	await page.keyboard.press('Enter');
	await expect(page.getByTestId('lug-readings')).toHaveCount(0);
});

const list = (page: Page) => page.getByTestId('lug-readings').getByRole('listitem');

test('readings and plugs outlast a reload, the last one is taken back, and another socket can be undone', async ({
	page
}) => {
	await open(page, '/lugs/');
	await page.getByLabel('In front').selectOption('a jack alone');
	await page.getByLabel('Lugs at the rear').selectOption('5');
	await page.getByLabel('TRS plug').uncheck();
	const left = page.getByTestId('lugs-left');
	await expect(left).toHaveText(sentence(leftWords(readingsLeft(KINDS, [], ['none', 'ts']))));
	for (const n of [1, 2, 3]) {
		// A double press is one answer.
		await page.getByRole('button', { name: '○ No beep' }).dblclick();
		await expect(list(page)).toHaveCount(n);
	}
	const question = await page.getByTestId('lugs-question').textContent();
	await page.reload();
	await expect(list(page)).toHaveCount(3);
	await expect(page.getByTestId('lugs-question')).toHaveText(question!);
	await expect(page.getByLabel('TRS plug')).not.toBeChecked();
	await expect(page.getByLabel('Lugs at the rear')).toHaveValue('5');
	await page.getByRole('button', { name: 'Take the last one back' }).click();
	await expect(list(page)).toHaveCount(2);
	await page.getByLabel('Lugs at the rear').selectOption('3');
	await expect(page.getByTestId('lugs-told')).toContainText('Another socket');
	await expect(list(page)).toHaveCount(0);
	await page.getByRole('button', { name: 'Undo' }).click();
	await expect(list(page)).toHaveCount(2);
	await expect(page.getByLabel('Lugs at the rear')).toHaveValue('5');
	await page.getByRole('button', { name: 'Begin anew' }).click();
	await page.reload();
	await expect(page.getByText('None yet.')).toBeVisible();
});

test.describe('in the hand', () => {
	test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

	test('both cautions stand there in full, and one answers without looking for the place', async ({
		page
	}) => {
		await open(page, '/lugs/');
		const mind = page.getByRole('complementary', { name: 'Mind this' });
		for (const caution of Object.values(LUGS_CAUTIONS)) await expect(mind).toContainText(caution);
		await expect(mind).toBeInViewport({ ratio: 1 });
		const no = page.getByRole('button', { name: '○ No beep' });
		const names = page.getByRole('heading', { name: 'What each can be' });
		await names.evaluate((heading) => heading.scrollIntoView({ block: 'start' }));
		const place = (await no.boundingBox())!;
		expect(place.height).toBeGreaterThanOrEqual(56);
		for (const n of [1, 2, 3]) {
			await page.touchscreen.tap(place.x + place.width / 2, place.y + place.height / 2);
			await expect(list(page)).toHaveCount(n);
			await expect(page.getByTestId('lugs-told')).toBeInViewport({ ratio: 1 });
			expect(await no.boundingBox()).toEqual(place);
			// Longer than a double tap takes.
			await page.waitForTimeout(600);
		}
		expect(await smallTargets(page)).toEqual([]);
		expect(
			await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
		).toBeLessThanOrEqual(0);
	});
});
