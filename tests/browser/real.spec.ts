/** A hunt beside real hardware: the meter's answers are the engine's on a panel with a hidden fault. */
import type { Page } from '@playwright/test';
import { inState, isJoined, makeBench, withFaults, type Bench } from '../../src/lib/engine';
import { diagnose, type Reading } from '../../src/lib/diagnosis';
import { startBench } from '../../src/lib/session/start';
import { bothText } from '../../src/lib/words/checks';
import { probeWords, sentence, setWords } from '../../src/lib/words';
import { expect, open, test } from './support';

const bench = startBench();
const broken = withFaults(bench, [{ kind: 'break-stuck-open', contact: 'A.TN' }]);
const kept = (page: Page) => page.evaluate(() => localStorage.getItem('solderside-readings-1'));
const readings = (page: Page) => page.getByTestId('readings').getByRole('listitem');

/** What the meter would say of the best next probe, given those before it. */
function nextReading(before: readonly Reading[], truth: Bench): Reading | null {
	const { next } = diagnose(bench, before);
	if (!next) return null;
	const { when, pair } = next;
	return { when, pair, answer: isJoined(inState(truth, when), ...pair) ? 'joined' : 'apart' };
}

test('a hunt by mouse: what is asked is what tells most, and one class is enough to act', async ({
	page
}) => {
	await open(page, '/real/');
	const next = page.getByRole('region', { name: 'Best next probe' });
	const taken: Reading[] = [];
	for (;;) {
		const reading = nextReading(taken, broken);
		if (!reading) break;
		expect(taken.length).toBeLessThan(20);
		await expect(next).toContainText(probeWords(bench, reading));
		await next.getByRole('button', { name: 'Set it up' }).click();
		for (const node of reading.pair) {
			const lug = page.locator(`[data-lug="${node}"]`);
			if ((await lug.count()) > 0) await expect(lug).toHaveAccessibleName(/probe \d here/);
		}
		await page
			.getByRole('button', { name: reading.answer === 'joined' ? '● Beep' : '○ No beep' })
			.click();
		taken.push(reading);
		await expect(readings(page)).toHaveCount(taken.length);
	}
	const act = page.getByRole('region', { name: 'Enough to act' });
	await expect(act).toContainText(setWords(bench, [broken.faults[0]!]).slice(1));
	await expect(page.getByTestId('told')).toContainText('enough to act');

	// It is all there after a reload, and goes only when it is told to.
	await page.reload();
	await expect(act).toBeVisible();
	await expect(readings(page)).toHaveCount(taken.length);
	await page.getByRole('button', { name: 'Clear …' }).click();
	await page.getByRole('button', { name: 'Yes, clear all readings' }).click();
	await expect(page.getByTestId('readings')).toHaveCount(0);
	await page.getByRole('button', { name: 'Undo' }).click();
	await expect(readings(page)).toHaveCount(taken.length);
});

test('readings that contradict are named, struck out and measured again', async ({ page }) => {
	await open(page, '/real/');
	const lug = (name: string) => page.locator(`[data-lug="A.${name}"]`);
	const taken = (
		[
			['R', 'RN', 'joined'],
			['2', 'TN', 'apart'],
			['T', 'TN', 'joined'],
			['T', '2', 'joined']
		] as const
	).map(([a, b, answer]): Reading => ({ when: {}, pair: [`A.${a}`, `A.${b}`], answer }));
	for (const { pair, answer } of taken) {
		for (const node of pair) await page.locator(`[data-lug="${node}"]`).click();
		await page.getByRole('button', { name: answer === 'joined' ? '● Beep' : '○ No beep' }).click();
	}
	const { conflict: clash } = diagnose(bench, taken);
	expect(clash!.length).toBeLessThan(taken.length);
	const conflict = page.getByTestId('conflict');
	await expect(conflict.getByRole('listitem')).toHaveCount(clash!.length);
	for (const { pair } of clash!)
		await expect(conflict).toContainText(sentence(bothText(bench, pair)).slice(0, -1));
	await expect(page.getByTestId('told')).toContainText('cannot all be true');
	await conflict.getByRole('listitem').first().getByRole('button').click();
	await expect(conflict).toHaveCount(0);
	await expect(lug('2')).toHaveAccessibleName(/probe \d here/);
	await expect(page.getByRole('checkbox', { name: /no beep/ })).not.toBeChecked();
	await page.getByRole('button', { name: '● Beep' }).click();
	await expect(readings(page)).toHaveCount(5);
	await expect(page.getByRole('region', { name: 'Best next probe' })).toBeVisible();
});

test('ohms are taken as what they are: a joint, none, or a question', async ({ page }) => {
	await open(page, '/real/');
	const number = page.getByLabel('Number on the ohms range');
	const put = async (a: string, b: string, text: string, unit = 'Ω') => {
		await page.getByLabel('One probe on').selectOption(a);
		await page.getByLabel('The other on').selectOption(b);
		await number.fill(text);
		await page.getByLabel('Unit').selectOption(unit);
		await page.getByRole('button', { name: 'Enter' }).click();
	};
	await put('A.T', 'A.2', '0,3');
	await expect(readings(page).last()).toContainText('0.3 Ω (counts as joined)');
	await put('A.R', 'A.S', 'OL');
	await expect(readings(page).last()).toContainText('over range (counts as apart)');
	await put('A.2', 'A.3', '3.0', 'kΩ');
	const question = page.getByRole('region', { name: /neither a plain joint/ });
	await expect(question).toContainText('the inside of a device');
	await expect(readings(page)).toHaveCount(2);
	await question.getByRole('button', { name: 'Count it as apart' }).click();
	await expect(readings(page)).toHaveCount(3);
	await put('A.R', 'A.RN', '220');
	await expect(question).toContainText('dirty break contact');
	await question.getByRole('button', { name: 'Leave it out' }).click();
	await expect(readings(page)).toHaveCount(3);
	await put('A.R', 'A.RN', 'quiet');
	await expect(page.getByRole('alert')).toContainText('That is no reading');
	await expect(readings(page)).toHaveCount(3);
});

test('by keyboard alone: set up, answer, take back', async ({ page }) => {
	await open(page, '/real/');
	const active = () => page.evaluate(() => document.activeElement?.textContent?.trim() ?? '');
	const tabTo = async (name: RegExp) => {
		for (let i = 0; i < 60 && !name.test(await active()); i++) await page.keyboard.press('Tab');
		expect(await active()).toMatch(name);
	};
	await expect(page.getByRole('button', { name: 'Set it up' })).toBeVisible();
	await tabTo(/^Set it up$/);
	await page.keyboard.press('Enter');
	await tabTo(/^○ No beep$/);
	await page.keyboard.press('Space');
	await expect(readings(page)).toHaveCount(1);
	await expect(page.getByTestId('told')).toContainText('ruled out');
	// The way back into the loop has the focus already.
	await expect.poll(active).toMatch(/^Set up /);
	await page.keyboard.press('Enter');
	await tabTo(/^○ No beep$/);
	await page.keyboard.press('Enter');
	await expect(readings(page)).toHaveCount(2);
	await tabTo(/^Undo$/);
	await page.keyboard.press('Enter');
	await expect(readings(page)).toHaveCount(1);
});

test('two and three at once, a panel from a file, and the bench left alone', async ({ page }) => {
	await open(page, '/real/');
	const left = page.getByTestId('left');
	const classes = async () => Number(/^[\d]+/.exec((await left.textContent())!.trim())?.[0]);
	await expect(left).toContainText('agree');
	const one = await classes();
	await page.getByRole('radio', { name: 'two' }).check();
	await expect.poll(classes, { timeout: 20_000 }).toBeGreaterThan(one);
	await page.getByRole('radio', { name: 'one' }).check();
	await page.getByTestId('real-file').setInputFiles({
		name: 'rack.csv',
		mimeType: 'text/csv',
		buffer: Buffer.from('socket,kind,from,to,gauge,length\nA,hybrid-6,T,2,26,40\nB,jack-trs,,,,\n')
	});
	const panel = page.getByRole('region', { name: 'The panel' });
	await expect(panel).toContainText('rack');
	await page.getByRole('combobox', { name: 'Socket', exact: true }).selectOption('B');
	await expect(page.locator('[data-lug]')).toHaveCount(3);
	await page.locator('[data-lug="B.T"]').click();
	await page.locator('[data-lug="B.S"]').click();
	await page.getByRole('button', { name: '○ No beep' }).click();
	expect(await kept(page)).toContain('rack');
	await page.getByRole('button', { name: 'Use the bench as it is now' }).click();
	await expect(panel).toContainText(bench.title);
	await expect(page.getByTestId('readings')).toHaveCount(0);
	await page.getByTestId('real-file').setInputFiles({
		name: 'bad.csv',
		mimeType: 'text/csv',
		buffer: Buffer.from('socket,kind,from,to,gauge,length\nA,hybrid-7,,,,\n')
	});
	await expect(page.getByRole('alert')).toContainText('bad.csv was not opened');
	expect(makeBench(bench)).toContain(bench.title);
});
