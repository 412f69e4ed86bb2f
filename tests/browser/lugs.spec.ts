/** An unmarked socket named by its readings; the engine is the meter. */
import { viewOf } from '../../src/lib/diagnosis/tell';
import { lugKnowledge, type LugReading } from '../../src/lib/diagnosis/lugs';
import { questionWords } from '../../src/lib/words/referenceTell';
import type { SocketKind } from '../../src/lib/engine';
import { expect, open, test } from './support';

const KINDS: SocketKind[] = ['jack-ts-changeover', 'patch-jack'];
/** A patch jack whose lug a is contact 3, lug b contact 0, and so on. */
const ORDER = [3, 0, 4, 1, 2];
const NAMES = ['T', 'R', 'S', 'TN', 'RN'];

function nextReading(readings: readonly LugReading[]): LugReading | null {
	const { next } = lugKnowledge(KINDS, readings);
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
	// Silence alone could be a broken lead: the names are not to be believed yet.
	const done = page.getByRole('heading', { name: 'Prove the meter before you believe this' });
	await expect(done).toBeVisible();
	await tabTo('Begin anew');
	await page.keyboard.press('Enter');
	await expect(page.getByTestId('lug-readings')).toHaveCount(0);
});
