/** The test card of the learner's own bench: worked out beside the page, ticked, printed on one sheet, saved. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { parseCsv } from '../../src/lib/schedule';
import { expect, open, test } from './support';

const file = (parts: object) =>
	JSON.stringify({ format: 'solderside-bench', version: 1, ...parts });
/** A hybrid of ten with nothing on it: the most probes that one socket needs. */
const BARE = file({ title: 'Bare', sockets: [{ id: 'A', kind: 'hybrid-10', label: 'Stage 1' }] });
/** A hybrid of ten with all that a plate may have: jumpers, two cables, and many faults that stay silent. */
const FULL = file({
	title: 'Wall plate, stage left',
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-10', label: 'Stage 1' }],
	wires: [
		{ id: 'w1', from: 'A.TN', to: 'A.2' },
		{ id: 'w2', from: 'A.RN', to: 'A.3' },
		{ id: 'w3', from: 'A.S', to: 'A.1' },
		{ id: 'w4', from: 'A.1N', to: 'A.SN' },
		{ id: 'w5', from: 'A.1', to: 'A.G' }
	],
	devices: [
		{ id: 'DESK', kind: 'mic-input' },
		{ id: 'LINE', kind: 'line-in' }
	],
	cables: ['DESK', 'LINE'].map((to, i) => ({
		id: `c${i}`,
		m: 12,
		cores: ['shield', 'hot', 'cold'].map((t, k) => [`A.${['123', 'STR'][i]![k]}`, `${to}.${t}`])
	}))
});

/** Four hybrids of ten on metal, each with its jumpers and a line to a desk: as much as one page holds. */
const FOUR = file({
	title: 'Four',
	panel: { metal: true },
	sockets: ['A', 'B', 'C', 'D'].map((id, i) => ({
		id,
		kind: 'hybrid-10',
		label: `Stage ${i + 1}`
	})),
	wires: ['A', 'B', 'C', 'D'].flatMap((id) =>
		[
			['TN', '2'],
			['RN', '3'],
			['SN', '1']
		].map(([a, b]) => ({ id: `${id}${b}`, from: `${id}.${a}`, to: `${id}.${b}` }))
	),
	devices: [1, 2, 3, 4].map((i) => ({ id: `IN${i}`, kind: 'mic-input' })),
	cables: ['A', 'B', 'C', 'D'].map((id, i) => ({
		id: `c${id}`,
		m: 12,
		cores: [
			[`${id}.2`, `IN${i + 1}.hot`],
			[`${id}.3`, `IN${i + 1}.cold`],
			[`${id}.1`, `IN${i + 1}.shield`]
		]
	}))
});

/** Opens the card with that bench kept in the browser, and waits until it is worked out. */
async function openCard(page: Page, bench: string) {
	await page.addInitScript((text) => localStorage.setItem('solderside-bench-1', text), bench);
	await open(page, '/card/');
	await expect(page.getByRole('button', { name: 'Save SVG' })).toBeEnabled();
}
const pagesIn = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;

for (const [name, bench] of [
	['a hybrid of ten with nothing on it', BARE],
	['a hybrid of ten with all that a plate may have', FULL],
	['a panel of four', FOUR]
] as const)
	test(`the card of ${name} prints on one page`, async ({ page }) => {
		await openCard(page, bench);
		for (const format of ['A4', 'Letter'])
			expect(pagesIn(await page.pdf({ format })), format).toBe(1);
		await page.emulateMedia({ media: 'print' });
		for (const line of ['Date', 'Who', 'Meter', 'Panel no.'])
			await expect(page.getByText(line, { exact: true })).toBeVisible();
		for (const caution of ['Chassis and signal ground.', 'Mains.'])
			await expect(page.getByText(caution, { exact: true })).toBeVisible();
		await expect(page.getByRole('button', { name: 'Save SVG' })).toBeHidden();
	});

test('the card is reached from the bench, and its boxes are ticked by keyboard', async ({
	page
}) => {
	const workers: string[] = [];
	page.on('worker', (worker) => workers.push(worker.url()));
	await open(page);
	await page.getByRole('link', { name: 'Test card' }).click();
	const probes = page.getByRole('region', { name: 'Probes' });
	const boxes = probes.getByRole('checkbox');
	await expect(boxes.first()).toBeVisible();
	expect(workers, 'it was worked out in a worker').toHaveLength(1);
	const total = await probes.locator('.n').count();
	const bonds = (await boxes.count()) - total;
	const words = (done: number) =>
		`${done} of ${total} probes${bonds > 0 ? ` and 0 of ${bonds} chassis lug${bonds > 1 ? 's' : ''}` : ''} as they should be`;
	await expect(probes.getByRole('status')).toHaveText(words(0));
	await boxes.first().focus();
	await page.keyboard.press('Space');
	await expect(probes.getByRole('status')).toHaveText(words(1));
	await expect(probes.getByRole('group').first()).toHaveAccessibleName(/^With /);
});

test('ticks stay with their panel, over a reload and another panel, and are cleared and brought back', async ({
	page
}) => {
	await open(page, '/card/');
	const probes = page.getByRole('region', { name: 'Probes' });
	const status = probes.getByRole('status');
	const boxes = probes.getByRole('checkbox');
	await boxes.first().check();
	await boxes.nth(2).check();
	// The bond of the chassis lug is a box of its own, and no probe.
	const bond = page.getByRole('group', { name: /chassis lug/ });
	await expect(bond).toContainText('Common practice.');
	await bond.getByRole('checkbox', { name: /^G – bare metal/ }).check();
	await page.reload();
	await expect(status).toHaveText(/^2 of .* and 1 of 1 chassis lug /);
	await expect(boxes.nth(2)).toBeChecked();
	const own = await page.evaluate(() => localStorage.getItem('solderside-bench-1'));
	await page.evaluate((text) => localStorage.setItem('solderside-bench-1', text), BARE);
	await page.reload();
	await expect(status).toHaveText(/^0 of /);
	await boxes.first().check();
	await page.evaluate((text) => {
		if (text) localStorage.setItem('solderside-bench-1', text);
		else localStorage.removeItem('solderside-bench-1');
	}, own);
	await page.reload();
	await expect(status).toHaveText(/^2 of .* and 1 of 1 chassis lug /);
	await page.getByRole('button', { name: 'Clear ticks' }).click();
	await expect(status).toHaveText(/^0 of /);
	await page.getByRole('button', { name: 'Bring the ticks back' }).click();
	await expect(status).toHaveText(/^2 of .* and 1 of 1 chassis lug /);
	await page.getByRole('button', { name: 'Clear ticks' }).click();
	await page.reload();
	await expect(status).toHaveText(/^0 of /);
});

test('the card is saved as CSV and as SVG with every probe on it', async ({ page }) => {
	await openCard(page, BARE);
	const total = await page.getByRole('checkbox').count();
	const saved = async (name: string) => {
		const [download] = await Promise.all([
			page.waitForEvent('download'),
			page.getByRole('button', { name }).click()
		]);
		return {
			name: download.suggestedFilename(),
			text: readFileSync(await download.path(), 'utf8')
		};
	};
	const csv = await saved('Save CSV');
	expect(csv.name).toBe('bare.card.csv');
	const read = parseCsv(csv.text);
	expect(read.ok && read.rows).toHaveLength(total + 1);
	const svg = await saved('Save SVG');
	expect(svg.name).toBe('bare.card.svg');
	expect(svg.text).toContain('Test card · Bare');
	expect(svg.text).toContain('1 – 1N');
});

/** Patch jacks in one bus of sleeves, so that nothing falls into islands. */
const BUS = file({
	title: 'Rack',
	sockets: Array.from({ length: 60 }, (_, i) => ({ id: `S${i}`, kind: 'patch-jack' })),
	wires: Array.from({ length: 59 }, (_, i) => ({
		id: `w${i}`,
		from: `S${i}.S`,
		to: `S${i + 1}.S`
	}))
});

test('a large panel leaves the page alive while it is worked out, and can be stopped', async ({
	page
}) => {
	await page.addInitScript((text) => localStorage.setItem('solderside-bench-1', text), BUS);
	await open(page, '/card/');
	await expect(page.getByRole('status').first()).toContainText('60 sockets are wired');
	await expect(page.getByText(/ of 121 plug states looked at/)).toBeVisible();
	// Frames come while the work goes on: had the page done it, they would come after its end.
	await page.evaluate(async () => {
		for (let i = 0; i < 20; i++) await new Promise(requestAnimationFrame);
	});
	await expect(page.getByText(/ of 121 plug states looked at/)).toBeVisible({ timeout: 1 });
	await page.getByRole('button', { name: 'Stop' }).click();
	await expect(page.getByRole('status').first()).toHaveText('Stopped. There is no card yet.');
	await expect(page.getByRole('button', { name: 'Work it out' })).toBeVisible();
});

/** A jack wired so that a second plug spares probes. */
const PARTING = file({
	title: 'Return',
	sockets: [{ id: 'A', kind: 'jack-trs-break' }],
	wires: [
		{ id: 'w1', from: 'A.T', to: 'A.R' },
		{ id: 'w2', from: 'A.S', to: 'A.TN' }
	]
});

test('where fewest probes and fewer plug changes part, one may choose, and the chosen card is shown', async ({
	page
}) => {
	await openCard(page, PARTING);
	const counts = () => page.locator('.count').textContent();
	const fewest = page.getByRole('radio', { name: /^Fewest probes/ });
	const least = page.getByRole('radio', { name: /^Fewer plug changes/ });
	await expect(fewest).toBeChecked();
	const before = await counts();
	await least.check();
	const after = await counts();
	const [probes, changes] = before!.match(/\d+/g)!.map(Number);
	const [more, fewer] = after!.match(/\d+/g)!.map(Number);
	expect(more).toBeGreaterThan(probes!);
	expect(fewer).toBeLessThan(changes!);
	expect(await page.locator('.probes fieldset').getByRole('checkbox').count()).toBe(more);
});

test('it fits a phone', async ({ page }) => {
	await page.setViewportSize({ width: 390, height: 844 });
	await openCard(page, FULL);
	expect(
		await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
	).toBeLessThanOrEqual(0);
});
