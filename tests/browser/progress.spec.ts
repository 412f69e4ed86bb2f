/**
 * Progress: what is judged is written down, comes back when it is due, and is never lost without
 * being asked for.
 */
import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { cellsOf, judge, sameCell, soundingCells } from '../../src/lib/exercises';
import { readExercises } from '../../src/lib/exercises/content.node';
import { makeProgress, parseProgress, type Attempt } from '../../src/lib/storage/progress';
import { handsOn } from './hands';
import { SIZES, axe, expect, expectNoneBroken, open, test } from './support';

const exercises = readExercises();
const predict = exercises.find((e) => e.kind === 'predict')!;
const DAY = 86_400_000;
const before = (days: number, change: Partial<Attempt> = {}): Attempt => ({
	exercise: exercises[0]!.id,
	kind: exercises[0]!.kind,
	at: new Date(Date.now() - days * DAY).toISOString(),
	score: 1,
	passed: true,
	unsure: 0,
	probes: null,
	hints: 0,
	beliefs: [],
	...change
});
const ask = (page: Page) => page.getByRole('dialog');
const record = (page: Page) => page.getByRole('region', { name: 'Your record' });
const panel = (page: Page) => page.getByRole('group', { name: /^Panel of all exercises/ });
const place = (page: Page, id: string) => panel(page).locator(`[data-place="${id}"]`);

async function choose(page: Page, text: string): Promise<void> {
	const buffer = Buffer.from(text);
	await page
		.getByTestId('progress-file')
		.setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer });
}
async function takeIn(page: Page, attempts: readonly Attempt[]): Promise<void> {
	await choose(page, makeProgress(attempts));
	await ask(page).getByRole('button', { name: 'Take them in' }).click();
	await expect(record(page).getByRole('status')).toContainText('added');
}
/** The record as it stands, by way of the export. */
async function exported(page: Page): Promise<readonly Attempt[]> {
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page
			.getByRole('button', { name: /^Export (file|it first)$/ })
			.last()
			.click()
	]);
	expect(download.suggestedFilename()).toMatch(/^solderside-progress-\d{4}-\d\d-\d\d\.json$/);
	const parsed = parseProgress(await readFile(await download.path(), 'utf8'));
	if (!parsed.ok) throw new Error(parsed.problem.message);
	return parsed.value;
}

test('a judged answer is written down, hints and all, and outlasts the page', async ({ page }) => {
	await open(page, `/exercises/${predict.id}/`);
	const strip = page.getByTestId('progress-strip');
	await expect(strip).toHaveCount(0);
	const check = handsOn(page).button('Check my prediction');
	await check.click();
	await expect(strip).toContainText('not passed');
	await expect(strip).toContainText('begun');
	await page.getByText('Hints', { exact: true }).click();
	// One at a time.
	const more = page.getByRole('button', { name: 'One more hint' });
	for (let i = 1; i < predict.hints.length; i++) await more.click();
	await expect(more).toHaveCount(0);
	await page.getByRole('checkbox').first().check();
	await check.click();
	await expect(page.getByTestId('judged')).toBeVisible();

	await page.getByRole('navigation').getByRole('link', { name: 'Progress' }).click();
	await expect(place(page, predict.id)).toHaveAccessibleName(/(begun|fresh)/);
	await page.reload();
	await expect(record(page)).toContainText('2 tries at 1 exercise');
	const [first, second] = await exported(page);
	const nothing = judge(predict, { kind: 'predict', ticked: [] });
	expect(first).toMatchObject({
		exercise: predict.id,
		kind: 'predict',
		score: nothing.score,
		passed: false,
		hints: 0
	});
	expect(second!.hints).toBe(predict.hints.length);
});

test('today’s set leads through what is due, and a pass puts it off', async ({ page }) => {
	// Due by the scheduler’s own word: passed once, long ago, the predict exercise first.
	const others = exercises.filter((e) => e.id !== predict.id);
	const old = [predict, ...others].map(({ id, kind }, i) =>
		before(40 - i * 0.01, { exercise: id, kind })
	);
	await open(page, '/progress/');
	await expect(page.getByRole('region', { name: 'Today’s set' })).toContainText('Nothing is due');
	await takeIn(page, old);
	await page.getByRole('link', { name: `Start today’s set (${old.length})` }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(predict.title);
	const strip = page.getByTestId('progress-strip');
	await expect(strip).toContainText(`${old.length - 1} exercise`);

	const boxes = page.getByRole('checkbox');
	const cells = cellsOf(predict);
	await expect(boxes).toHaveCount(cells.length);
	for (const cell of soundingCells(predict))
		await boxes.nth(cells.findIndex((c) => sameCell(c, cell))).check();
	await handsOn(page).button('Check my prediction').click();
	await expect(strip).toContainText('passed');
	await expect(strip).toContainText(/solid, back in \d+ (days|months)/);

	// After a reload the set is what is still due.
	await page.reload();
	for (const { title } of others) {
		await strip.getByRole('link', { name: /^Next in the set/ }).click();
		await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
	}
	await expect(page).toHaveURL(/\?set=1$/);
	await page.getByRole('navigation').getByRole('link', { name: 'Progress' }).click();
	await expect(place(page, predict.id)).toHaveAccessibleName(/: solid, back in/);
	await expect(place(page, others[0]!.id)).toHaveAccessibleName(/: due \d+ days ago/);
});

test('a broken file, and every question put away, leave the record untouched', async ({ page }) => {
	const mine = [before(3), before(2, { passed: false, score: 0.25 })];
	await open(page, '/progress/');
	await takeIn(page, mine);

	await choose(page, makeProgress(mine).replace('"score":0.25', '"score":2.5'));
	const alert = record(page).getByRole('alert');
	await expect(alert).toContainText('your record is untouched');
	await expect(alert).toContainText('$.attempts[1].score');
	await expect(ask(page)).toHaveCount(0);

	await choose(page, makeProgress([]));
	await expect(ask(page)).toContainText('2 tries of yours would be lost');
	await page.keyboard.press('Escape');
	await expect(ask(page)).toHaveCount(0);
	expect(await exported(page)).toEqual(mine);
});

test('merging loses nothing, replacing says what it would lose', async ({ page }) => {
	const [mine, both, theirs] = [before(3), before(2), before(1)];
	await open(page, '/progress/');
	await takeIn(page, [mine, both]);
	await choose(page, makeProgress([both, theirs]));
	await expect(ask(page)).toContainText('of which 1 is not in your record');
	await ask(page).getByRole('button', { name: 'Merge' }).click();
	expect(await exported(page)).toEqual([mine, both, theirs]);
	await choose(page, makeProgress([theirs]));
	await ask(page).getByRole('button', { name: 'Replace, and lose 2' }).click();
	await expect(record(page)).toContainText('1 try at 1 exercise');
	await page.reload();
	expect(await exported(page)).toEqual([theirs]);
});

test('a file chosen while the last question goes away gets a question of its own', async ({
	page
}) => {
	await open(page, '/progress/');
	await choose(page, makeProgress([before(3)]));
	const take = ask(page).getByRole('button', { name: 'Take them in' });
	await expect(take).toBeVisible();
	// Faster than a hand: the file is chosen, and read, in the frame in which the first is answered.
	await page.evaluate(
		(text) => {
			const bytes = new TextEncoder().encode(text).buffer;
			File.prototype.arrayBuffer = () => Promise.resolve(bytes);
			const picker = document.querySelector<HTMLInputElement>('[data-testid="progress-file"]')!;
			const choosing = new MutationObserver(() => {
				if (document.querySelector('dialog')) return;
				choosing.disconnect();
				const files = new DataTransfer();
				files.items.add(new File([text], 'next.json'));
				picker.files = files.files;
				picker.dispatchEvent(new Event('change', { bubbles: true }));
			});
			choosing.observe(document.body, { childList: true, subtree: true });
			[...document.querySelectorAll('button')]
				.find((b) => b.textContent === 'Take them in')!
				.click();
		},
		makeProgress([before(1)])
	);
	await expect(ask(page)).toContainText('of which 1 is not in your record');
	// It stays until it is answered: two frames later the closing of the first was told long ago.
	await page.evaluate(
		() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
	);
	await expect(ask(page)).toContainText('of which 1 is not in your record');
	await page.keyboard.press('Escape');
	await expect(ask(page)).toHaveCount(0);
});

test('clearing asks first, offers the export, and forgets only then', async ({ page }) => {
	const mine = [before(3), before(2)];
	await open(page, '/progress/');
	const clear = page.getByRole('button', { name: 'Clear record' });
	await expect(clear).toBeDisabled();
	await takeIn(page, mine);
	await clear.click();
	await expect(ask(page)).toContainText('You would lose 2 tries at 1 exercise');
	await expect(ask(page).getByRole('button', { name: 'Keep my record' })).toBeFocused();
	expect(await axe(page)).toEqual([]);
	await page.keyboard.press('Enter');
	await expect(clear).toBeFocused();
	await clear.click();
	expect(await exported(page)).toEqual(mine);
	await ask(page).getByRole('button', { name: 'Clear all 2' }).click();
	await expect(record(page)).toContainText('It is empty.');
	await page.reload();
	await expect(record(page)).toContainText('It is empty.');
});

test('the drawing and the list say the same, by keyboard too', async ({ page }) => {
	await open(page, '/progress/');
	await takeIn(page, [before(40), before(2, { exercise: exercises[1]!.id })]);
	await page.getByText('The same as a list').click();
	for (const { id, title } of exercises) {
		const name = (await place(page, id).getAttribute('aria-label'))!;
		const row = page.getByRole('row').filter({ has: page.getByRole('link', { name: title }) });
		const words = name.slice(name.indexOf(title) + title.length + 2);
		await expect(row).toContainText(words.charAt(0).toUpperCase() + words.slice(1));
	}
	const stops = panel(page).locator('a[tabindex="0"]');
	await expect(stops).toHaveCount(1);
	await stops.focus();
	const from = await stops.getAttribute('data-place');
	await page.keyboard.press('ArrowDown');
	await expect(stops).toBeFocused();
	expect(await stops.getAttribute('data-place')).not.toBe(from);
	const to = (await stops.getAttribute('href'))!.replace(/^\.+/, '');
	await page.keyboard.press('Enter');
	await expect(page).toHaveURL(new RegExp(`${to}/?$`));
});

test('without a database the tries last until the page is left, and the page says so', async ({
	page
}) => {
	await page.addInitScript(() => {
		Object.defineProperty(window, 'indexedDB', {
			get() {
				throw new DOMException('denied', 'SecurityError');
			}
		});
	});
	await open(page, '/progress/');
	await expect(page.getByRole('alert')).toContainText('no place to keep things');
	await takeIn(page, [before(40)]);
	await page.getByRole('navigation').getByRole('link', { name: 'Exercises' }).click();
	await page.getByRole('navigation').getByRole('link', { name: 'Progress' }).click();
	await expect(record(page)).toContainText('1 try at 1 exercise');
	await page.reload();
	await expect(record(page)).toContainText('It is empty.');
});

test('no broken rule, and nothing wider than the page, with tries on it and all unfolded', async ({
	page
}) => {
	await page.setViewportSize(SIZES.hand);
	await open(page, '/progress/');
	await takeIn(page, [
		before(40),
		before(1, { exercise: exercises[1]!.id }),
		before(1, { exercise: exercises[2]!.id, passed: false, score: 0 })
	]);
	await page.getByText('The same as a list').click();
	await page.getByText('How it is decided').click();
	for (const size of ['hand', 'desk'] as const) {
		await expectNoneBroken(page, '/progress/', [size]);
		const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
		expect(over, size).toBeLessThanOrEqual(0);
	}
});
