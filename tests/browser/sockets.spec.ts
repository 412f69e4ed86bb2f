/** The reference: every socket's page, the chooser, the way to the bench, the glossary. */
import { SOCKET_KINDS, parseBench } from '../../src/lib/engine';
import { GLOSSARY } from '../../src/lib/words/glossary';
import { kindWords } from '../../src/lib/words/kinds';
import { SIZES, expect, expectNoneBroken, open, ready, test } from './support';

const SCREENS = ['/sockets/', '/sockets/hybrid-10/', '/sockets/patch-jack/', '/glossary/'];

for (const path of SCREENS)
	test(`axe finds nothing on ${path}, unfolded`, async ({ page }) => {
		await page.emulateMedia({ reducedMotion: 'reduce' });
		await page.setViewportSize(SIZES.hand);
		await open(page, path);
		for (const one of await page.locator('details').all())
			await one.evaluate((d) => d.toggleAttribute('open', true));
		const choose = page.getByRole('button', { name: 'Choose by need' });
		if (await choose.isVisible()) await choose.click();
		await expectNoneBroken(page, path, ['hand', 'desk']);
	});

test('every socket has a page that fits a phone', async ({ page }) => {
	await page.setViewportSize(SIZES.hand);
	for (const kind of SOCKET_KINDS) {
		await open(page, `/sockets/${kind}/`);
		await expect(page.getByRole('heading', { level: 1 })).toHaveText(kindWords(kind).name);
		const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
		expect(over, kind).toBeLessThanOrEqual(0);
		for (const name of ['Contacts', 'Truth table for every plug', 'Sources'])
			await expect(page.getByRole('heading', { name, exact: true })).toBeVisible();
	}
});

test('the chooser narrows the kinds by keyboard and says why', async ({ page }) => {
	await open(page, '/sockets/');
	const status = page.getByRole('status');
	await page.getByLabel('A phone plug', { exact: true }).focus();
	await page.keyboard.press('Space');
	await page.getByLabel('No matter').focus();
	await page.keyboard.press('ArrowDown');
	await expect(page.getByLabel('Balanced', { exact: true })).toBeChecked();
	await page.getByLabel('Use in a patch field').focus();
	await page.keyboard.press('Space');
	await expect(status).toHaveText('Four of the twelve kinds meet all of this.');
	const first = page.locator('.kinds li').first();
	await expect(first).toContainText('Patch jack');
	await expect(first).toContainText('Nothing to spare');
	await expect(page.locator('.kinds li', { hasText: 'Hybrid of six' })).toContainText(
		'No break contact on T and R for the normal link.'
	);
	await page.getByLabel('A three-pin and a phone plug at once').check();
	await expect(status).toContainText('No single kind meets all of this');
	await page.getByRole('button', { name: 'Ask for nothing' }).click();
	await expect(status).toHaveText('Twelve kinds.');
});

test('a plug moves in all views of a socket at once', async ({ page }) => {
	await open(page, '/sockets/hybrid-9/');
	const drawing = page.getByRole('region', { name: 'Drawing', exact: true });
	await drawing.getByRole('button', { name: 'TRS plug' }).click();
	await expect(drawing).toContainText('TRS plug is home in the socket');
	const travel = drawing.getByRole('slider');
	await travel.fill('22');
	await expect(drawing).toContainText('22 mm deep in the socket');
	await expect(drawing.getByRole('img', { name: /^Section of the jack/ })).toHaveAttribute(
		'aria-label',
		/trs plug 22.0 mm in/
	);
});

test('a plan of touches ends with the name of the kind, by keyboard', async ({ page }) => {
	await open(page, '/sockets/jack-ts-changeover/');
	const walk = page.getByRole('group', { name: 'Work it out' });
	await expect(walk).toContainText('touch the ring of the plug and lug a');
	for (let touch = 0; touch < 5; touch++) {
		await walk.getByRole('button', { name: 'It is silent' }).focus();
		await page.keyboard.press('Enter');
	}
	await expect(walk).toContainText('It is a TS jack with changeover.');
	await walk.getByRole('button', { name: 'Start again' }).click();
	await walk.getByRole('button', { name: 'It sounds' }).click();
	await expect(walk).toContainText('It is a patch jack.');
});

test('a socket goes on the bench, with the jumpers of a claim too, and can be undone', async ({
	page
}) => {
	const stored = () =>
		page.evaluate(() =>
			Object.values(localStorage).find((text) => text.includes('solderside-bench'))
		);
	await open(page, '/sockets/jack-trs-break/');
	await page.getByRole('button', { name: 'Put it on the bench' }).click();
	await expect(page.getByTestId('kind')).toHaveValue('jack-trs-break');
	await expect(page).toHaveURL(/\/$/);
	await page.goBack();
	await ready(page);
	await page.getByRole('button', { name: 'Try these jumpers on the bench' }).first().click();
	await expect(page.getByTestId('kind')).toHaveValue('jack-trs-break');
	await expect
		.poll(async () => {
			const parsed = parseBench((await stored()) ?? '');
			return parsed.ok ? parsed.value.wires.map((w) => [w.from, w.to]) : parsed.problem;
		})
		.toEqual([['A.TN', 'A.RN']]);
	await page.getByRole('button', { name: 'Undo' }).click();
	await expect
		.poll(async () => {
			const parsed = parseBench((await stored()) ?? '');
			return parsed.ok ? parsed.value.wires.length : parsed.problem;
		})
		.toBe(0);
});

test('a word leads to its entry in the glossary, and entries can be found', async ({ page }) => {
	await open(page, '/sockets/hybrid-9/');
	await page.getByRole('link', { name: 'break contact', exact: true }).first().click();
	await expect(page).toHaveURL(/\/glossary\/#break-contact$/);
	await expect(page.locator('#break-contact')).toBeInViewport();
	for (const { id } of GLOSSARY) await expect(page.locator(`[id="${id}"]`)).toHaveCount(1);
	await page.getByLabel('Find a word').fill('normal');
	await expect(page.getByRole('status')).toContainText(`of ${GLOSSARY.length} entries`);
	await expect(page.locator('#half-normal')).toBeVisible();
	await expect(page.locator('#bush')).toHaveCount(0);
});
