/** A hunt beside real hardware: the meter's answers are the engine's on a panel with a hidden fault. */
import type { Page } from '@playwright/test';
import { inState, isJoined, makeBench, withFaults, type Bench } from '../../src/lib/engine';
import {
	diagnose,
	diagnosisIn,
	dictionaryOf,
	nodesAtPanel,
	type Reading
} from '../../src/lib/diagnosis';
import { startBench } from '../../src/lib/session/start';
import { bothText } from '../../src/lib/words/checks';
import {
	REAL_CAUTIONS,
	REAL_CAUTIONS_BRIEF,
	probeWords,
	sentence,
	setWords
} from '../../src/lib/words';
import { expect, open, smallTargets, test } from './support';

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
	await expect(page.getByTestId('told')).toContainText(/cannot (both|all) be true/);
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
	await expect.poll(active).toMatch(/^Set it up$/);
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
	const classes = async () =>
		Number(/^[\d,]+/.exec((await left.textContent())!.trim())?.[0].replace(',', ''));
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
	// A pair on two sockets: both are drawn, each with its own plug.
	await page.locator('[data-lug="B.T"]').click();
	await page.getByRole('combobox', { name: 'Socket', exact: true }).selectOption('A');
	await page.locator('[data-lug="A.T"]').click();
	for (const socket of ['A', 'B'])
		await expect(page.getByTestId(`rear-${socket}`).getByRole('group').first()).toContainText(
			`Plug in ${socket}`
		);
	await page.getByTestId('rear-B').getByRole('radio', { name: 'TS', exact: true }).check();
	await expect(page.getByRole('group', { name: 'What the meter said' })).toContainText(
		'with a TS plug in B'
	);
	await page.getByRole('button', { name: 'Use the bench as it is now' }).click();
	await expect(panel).toContainText(bench.title);
	await expect(page.getByTestId('readings')).toHaveCount(0);
	await page.getByRole('button', { name: 'Bring back rack' }).click();
	await expect(readings(page)).toHaveCount(1);
	// Card and schedule can be of this panel, and the bench is left alone.
	for (const name of ['Test card of this panel', 'Wiring schedule of this panel']) {
		await page.getByRole('link', { name }).click();
		await expect(page.getByTestId('which-panel').getByRole('radio').nth(1)).toBeChecked();
		await expect(page.locator('p.panel')).toHaveText('rack');
		await page.getByRole('radio', { name: /^The bench/ }).check();
		await expect(page.locator('p.panel')).toHaveText(bench.title);
		await page.goBack();
	}
	await page.getByTestId('real-file').setInputFiles({
		name: 'bad.csv',
		mimeType: 'text/csv',
		buffer: Buffer.from('socket,kind,from,to,gauge,length\nA,hybrid-7,,,,\n')
	});
	await expect(page.getByRole('alert')).toContainText('bad.csv was not opened');
	expect(makeBench(bench)).toContain(bench.title);
});

test.describe('in the hand', () => {
	test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

	test('the first screen holds both cautions in full, the next probe and where to press; answers are large', async ({
		page
	}) => {
		await open(page, '/real/');
		const mind = page.getByRole('complementary', { name: 'Mind this' });
		const setUp = page.getByRole('button', { name: 'Set it up' });
		await expect(setUp).toBeVisible();
		expect(await page.evaluate(() => scrollY)).toBe(0);
		for (const caution of Object.values(REAL_CAUTIONS)) await expect(mind).toContainText(caution);
		await expect(mind).toBeInViewport({ ratio: 1 });
		await expect(setUp).toBeInViewport({ ratio: 1 });
		const next = page.getByRole('region', { name: 'Best next probe' });
		await expect(next).toBeInViewport({ ratio: 1 });
		expect((await setUp.boundingBox())!.height).toBeGreaterThanOrEqual(56);

		await setUp.tap();
		for (const name of ['● Beep', '○ No beep']) {
			const button = page.getByRole('button', { name });
			await expect(button).toBeInViewport({ ratio: 1 });
			const { width, height } = (await button.boundingBox())!;
			expect(Math.min(width, height)).toBeGreaterThanOrEqual(56);
		}
		// The lugs that are meant are in sight, and nothing lies over them.
		const bar = (await page.getByRole('group', { name: 'What the meter said' }).boundingBox())!;
		for (const lug of await page.getByRole('button', { name: /probe \d here/ }).all()) {
			const box = (await lug.boundingBox())!;
			expect(box.y).toBeGreaterThanOrEqual(0);
			expect(box.y + box.height).toBeLessThanOrEqual(bar.y + 1);
		}
		const thumb = (await page.getByRole('button', { name: '○ No beep' }).boundingBox())!;
		await page.getByRole('button', { name: '○ No beep' }).tap();
		// What it ruled out stands where the thumb has just been.
		const told = page.getByTestId('told');
		await expect(told).toContainText('ruled out');
		await expect(told).toBeInViewport({ ratio: 1 });
		expect(Math.abs((await told.boundingBox())!.y - thumb.y)).toBeLessThan(220);
		await expect(setUp).toBeInViewport({ ratio: 1 });
		expect(
			await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
		).toBeLessThanOrEqual(0);
		await page.getByRole('button', { name: 'Take it back' }).tap();
		await expect(page.getByTestId('readings')).toHaveCount(0);
	});

	test('cautions that were read stand there in short, are never gone, and come back in full', async ({
		page
	}) => {
		await open(page, '/real/');
		const mind = page.getByRole('complementary', { name: 'Mind this' });
		await mind.getByRole('button', { name: 'I have read both' }).tap();
		for (const again of [false, true]) {
			if (again) await open(page, '/real/');
			for (const caution of Object.values(REAL_CAUTIONS_BRIEF))
				await expect(mind).toContainText(caution);
			for (const name of ['Chassis and signal ground.', 'Mains.'])
				await expect(mind).toContainText(name);
		}
		await mind.getByRole('button', { name: 'In full' }).tap();
		await expect(mind).toContainText(REAL_CAUTIONS.mains);
	});

	test('a phone that drops the page in the midst of a reading brings all of it back', async ({
		page
	}) => {
		await open(page, '/real/');
		await page.getByRole('radio', { name: 'TRS' }).check();
		for (const name of ['T', 'TN']) await page.locator(`[data-lug="A.${name}"]`).tap();
		const meter = page.getByRole('group', { name: 'What the meter said' });
		await expect(meter).toContainText('T and TN, with a TRS plug in the socket');
		await page.reload();
		await expect(meter).toContainText('T and TN, with a TRS plug in the socket');
		await expect(page.getByRole('radio', { name: 'TRS' })).toBeChecked();
		await page.getByRole('button', { name: '○ No beep' }).tap();
		await expect(readings(page)).toContainText(['T and TN, with a TRS plug in the socket']);
	});

	test('every target is at least 44 pixels high', async ({ page }) => {
		await open(page, '/real/');
		await expect(page.getByRole('button', { name: 'Set it up' })).toBeVisible();
		expect(await smallTargets(page)).toEqual([]);
		await page.getByRole('button', { name: 'Set it up' }).tap();
		await page.getByRole('button', { name: '● Beep' }).tap();
		await expect(readings(page)).toHaveCount(1);
		expect(await smallTargets(page)).toEqual([]);
	});
});

test('whoever reaches only the sockets is never sent to a far end, and is told when that is not enough', async ({
	page
}) => {
	await open(page, '/real/');
	await page.getByRole('checkbox', { name: /only reach the sockets/ }).check();
	const near = nodesAtPanel(bench);
	const dictionary = dictionaryOf(bench, 1);
	const taken: Reading[] = [];
	await expect(page.getByLabel('One probe on').locator('optgroup')).toHaveCount(2);
	for (;;) {
		const { next } = diagnosisIn(dictionary, taken, undefined, undefined, near);
		if (!next) break;
		await expect(page.getByRole('region', { name: 'Best next probe' })).toContainText(
			probeWords(bench, next)
		);
		await page.getByRole('button', { name: 'Set it up' }).click();
		const answer = isJoined(inState(bench, next.when), ...next.pair) ? 'joined' : 'apart';
		await page.getByRole('button', { name: answer === 'joined' ? '● Beep' : '○ No beep' }).click();
		taken.push({ when: next.when, pair: next.pair, answer });
		await expect(readings(page)).toHaveCount(taken.length);
	}
	const end = page.getByRole('region', { name: 'The panel alone can tell no more' });
	await expect(end).toBeVisible();
	await page.reload();
	await expect(end).toBeVisible();
	await end.getByRole('button', { name: 'I can reach the far ends' }).click();
	await expect(page.getByRole('region', { name: 'Best next probe' })).toContainText('DESK');
});
