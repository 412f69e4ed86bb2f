/** The wiring schedule of the learner's own bench: from the bench to paper, and a panel as CSV in and out. */
import { readFileSync } from 'node:fs';
import { parsePanelCsv } from '../../src/lib/schedule';
import { expect, open, ready, smallTargets, test } from './support';
import { handsOn } from './hands';

const panel = (text: string, name = 'Rack strip.csv') => ({
	name,
	mimeType: 'text/csv',
	buffer: Buffer.from(text)
});
const GOOD =
	'\uFEFFsocket,kind,from,to,gauge,length\r\nA,patch-jack,T,B.TN,26,90\r\nA,,R,B.RN,26,90\r\nB,patch-jack,,,,\r\n';
const BAD =
	'socket,kind,from,to,gauge,length\nA,hybrid-9,T,4,26,40\nB,hybrid-7,,,,\nA,,R,3,99,40\n';

test('what is soldered on the bench stands on the schedule, from the link on the bench', async ({
	page
}) => {
	await open(page);
	await page.getByRole('link', { name: 'Wiring schedule' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Wiring schedule');
	const table = page.getByRole('region', { name: 'Conductors' });
	const row = table.getByRole('row', { name: /^w1 / });
	await expect(row).toContainText('A.TN');
	await expect(row).toContainText('RD red');
	await expect(row).toContainText('0.1288');
	const order = page.getByRole('region', { name: 'Order of soldering' });
	// The cable's core and the jumper share the cup of pin 2; it is heated once.
	await expect(order.getByRole('listitem').filter({ hasText: /A\.2 / })).toHaveText(
		/w1, then c1\/2; bend both into place, then heat once\. Now done: w1\./
	);
	await expect(order.getByRole('listitem')).toHaveCount(7);
	await expect(page.getByRole('region', { name: 'Labels' }).getByRole('listitem')).toHaveCount(8);
	for (const caution of ['Chassis and signal ground.', 'Mains.'])
		await expect(page.getByRole('complementary', { name: 'Mind this' })).toContainText(caution);
});

test('the cut list follows the allowances that are typed in', async ({ page }) => {
	await open(page, '/schedule/');
	const cuts = page.getByRole('region', { name: 'Cut list' });
	const wire = cuts.getByRole('row', { name: /^Wire, 26 AWG/ });
	await expect(wire).toContainText('55 mm');
	await cuts.getByLabel('Margin on the sum, per cent').fill('50');
	await cuts.getByLabel('Margin on the sum, per cent').press('Enter');
	await expect(wire).toContainText('75 mm');
	await cuts.getByLabel('Margin on the sum, per cent').fill('900');
	await cuts.getByLabel('Margin on the sum, per cent').press('Enter');
	await expect(cuts.getByLabel('Margin on the sum, per cent')).toHaveValue('50');
});

test('a panel comes in as CSV, goes out as the same, and the bench before it comes back', async ({
	page
}) => {
	await open(page);
	const before = await handsOn(page).kept();
	await open(page, '/schedule/');
	await page.getByTestId('panel-file').setInputFiles(panel(GOOD));
	await expect(page.getByRole('status')).toContainText(
		'Opened Rack strip.csv: 2 sockets, 2 wires. The file has no row panel,metal, so the panel is taken as insulating.'
	);
	await expect(page.getByText('Rack strip', { exact: true })).toBeVisible();
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page.getByRole('button', { name: 'Save panel (CSV)' }).click()
	]);
	expect(download.suggestedFilename()).toBe('rack-strip.panel.csv');
	const saved = parsePanelCsv(readFileSync(await download.path(), 'utf8'), 'Rack strip');
	expect(saved).toEqual({ ok: true, bench: await handsOn(page).kept() });

	await page.reload();
	await ready(page);
	await expect(page.getByText('Rack strip', { exact: true })).toBeVisible();
	await page.getByTestId('panel-file').setInputFiles(panel(GOOD, 'Other.csv'));
	await page.getByRole('button', { name: 'Bring the bench from before back' }).click();
	expect((await handsOn(page).kept()).title).toBe('Rack strip');
	expect(before.title).not.toBe('Rack strip');
});

test('what a panel file cannot hold is said before it is saved', async ({ page }) => {
	await open(page, '/schedule/');
	const save = page.getByRole('button', { name: 'Save panel (CSV)' });
	await expect(save).toHaveAccessibleDescription(/no cables, devices or plugs.* c1/);
	await page.getByTestId('panel-file').setInputFiles(panel(GOOD));
	await expect(save).toHaveAccessibleDescription('');
	await page
		.getByTestId('panel-file')
		.setInputFiles(panel(`${GOOD}A,,R,B.RN,26,90\r\npanel,wood,,,,\r\n`));
	await expect(page.getByRole('alert').getByRole('listitem')).toHaveText([
		/^Line 5: the row repeats the one on line 3;/,
		/^Line 6, kind: "wood" is no kind of panel; write panel,metal where/
	]);
});

test('a panel with mistakes in it names every row, and the bench is untouched', async ({
	page
}) => {
	await open(page);
	const before = await handsOn(page).kept();
	await open(page, '/schedule/');
	await page.getByTestId('panel-file').setInputFiles(panel(BAD));
	const alert = page.getByRole('alert');
	await expect(alert).toContainText('was not opened; your bench is untouched');
	await expect(alert.getByRole('listitem')).toHaveText([
		/^Line 2, to: a hybrid-9 has no contact "4"/,
		/^Line 3, kind: there is no kind "hybrid-7"/,
		/^Line 4, gauge: "99" is out of range/
	]);
	expect(await handsOn(page).kept()).toEqual(before);
	await page.getByTestId('panel-file').setInputFiles(panel(GOOD.replaceAll(',', ';')));
	await expect(alert).toContainText('the columns are parted by semicolons');
});

test('it fits a phone, and prints without what is only for the screen', async ({ page }) => {
	await page.setViewportSize({ width: 390, height: 844 });
	await open(page, '/schedule/');
	expect(
		await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
	).toBeLessThanOrEqual(0);
	// What is wider than the phone says so, and the keyboard moves it.
	for (const name of ['Drawing of the rear', 'Table of conductors', 'Table of pieces']) {
		const box = page.getByRole('group', { name });
		await expect(box.locator('..').getByTestId('sideways')).toContainText('→');
		await box.focus();
		await page.keyboard.press('ArrowRight');
		await expect.poll(() => box.evaluate((element) => element.scrollLeft)).toBeGreaterThan(0);
		await expect(box.locator('..').getByTestId('sideways')).toContainText('←');
	}
	await page.emulateMedia({ media: 'print' });
	await expect(page.getByTestId('sideways').first()).toBeHidden();
	await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
	await expect(page.getByRole('navigation', { name: 'Main' })).toBeHidden();
	await expect(page.getByText('Wired by')).toBeVisible();
	await expect(page.getByRole('heading', { name: 'Order of soldering' })).toBeVisible();
});

test.describe('under a finger', () => {
	test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
	for (const path of ['/schedule/', '/card/'])
		test(`every target of ${path} is at least 44 pixels high`, async ({ page }) => {
			await open(page, path);
			if (path === '/card/') await expect(page.getByRole('checkbox').first()).toBeVisible();
			expect(await smallTargets(page)).toEqual([]);
		});
});

test('on a desk nothing is wider than the screen, and nothing says so', async ({ page }) => {
	await open(page, '/schedule/');
	await expect(page.getByRole('group', { name: 'Table of conductors' })).toBeVisible();
	await expect(page.getByTestId('sideways')).toHaveCount(0);
});
