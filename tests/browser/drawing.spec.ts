/** The drawing as it moves and as it is printed: what a still figure cannot show. */
import type { Page } from '@playwright/test';
import { makeBench } from '../../src/lib/engine';
import { panelOf } from '../../src/routes/gallery/benches';
import { expect, open, test } from './support';

const BENCH = JSON.stringify({
	format: 'solderside-bench',
	version: 1,
	title: 'Wall plate, stage left',
	panel: { metal: true },
	sockets: [{ id: 'A', kind: 'hybrid-10', label: 'Stage 1' }],
	plugs: [{ id: 'p1', kind: 'trs', socket: 'A', travel: 30.5 }],
	devices: [{ id: 'DESK', kind: 'mic-input' }],
	wires: [
		{ id: 'w1', from: 'A.T', to: 'A.2' },
		{ id: 'w2', from: 'A.R', to: 'A.3' },
		{ id: 'w3', from: 'A.S', to: 'A.1' },
		{ id: 'w4', from: 'A.G', to: 'panel' }
	],
	cables: [
		{
			id: 'c',
			m: 12,
			cores: [
				['A.1', 'DESK.shield'],
				['A.2', 'DESK.hot'],
				['A.3', 'DESK.cold']
			]
		}
	]
});
async function openBench(page: Page, bench = BENCH) {
	await page.addInitScript((text) => localStorage.setItem('solderside-bench-1', text), bench);
	await open(page, '/');
}
const pagesIn = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;

test('a bench prints on one page, rear, front and all that is cut', async ({ page }) => {
	await openBench(page);
	for (const format of ['A4', 'Letter'])
		expect(pagesIn(await page.pdf({ format })), format).toBe(1);
	await page.emulateMedia({ media: 'print' });
	const titles = page.locator('.paper svg');
	await expect(titles).toHaveCount(5);
	const said = await titles.evaluateAll((all) => all.map((svg) => svg.getAttribute('aria-label')));
	expect(said.map((title) => /rear|front|jack|three-pin|symbol/.exec(title!)![0])).toEqual([
		'rear',
		'front',
		'jack',
		'three-pin',
		'symbol'
	]);
	await expect(page.locator('.sheet')).toBeHidden();
	await page.emulateMedia({ media: 'screen' });
	await expect(page.locator('.paper')).toHaveCount(0);
});

test('a panel of 48 prints its names first, then rear and front in parts that can be read', async ({
	page
}) => {
	await openBench(page, makeBench(panelOf(48)));
	for (const format of ['A4', 'Letter'])
		expect(pagesIn(await page.pdf({ format })), format).toBe(7);
	await page.emulateMedia({ media: 'print' });
	const parts = page.locator('.parts figure');
	await expect(parts).toHaveCount(6);
	await expect(parts.first()).toContainText('Rear, part 1 of 3: S1, S2, S3, S4, S13');
	await expect(parts.nth(3)).toContainText('Front, part 1 of 3: S12, S11, S10, S9, S24');
	// The smallest word on paper, points: a pixel of the page is three quarters of one.
	const least = await parts.locator('svg').evaluateAll((all) =>
		Math.min(
			...(all as SVGSVGElement[]).flatMap((svg) => {
				const unit = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
				return [...svg.querySelectorAll('text')].map(
					(word) => 0.75 * unit * parseFloat(getComputedStyle(word).fontSize)
				);
			})
		)
	);
	expect(least).toBeGreaterThan(5.9);
});

/** Millimetre of the ruler over which the nose of the drawn plug stands, by what is on the screen. */
const noseOnRuler = (page: Page): Promise<number> =>
	page.locator('.section').evaluate((section) => {
		const middle = (mark: Element) => {
			const { left, right } = mark.getBoundingClientRect();
			return (left + right) / 2;
		};
		const numbers = [...section.querySelectorAll('.w-dimension')];
		const at = (mm: string) => middle(numbers.find((n) => n.textContent === mm)!);
		const plug = section.querySelectorAll('svg')[1]!;
		const nose = [...plug.querySelectorAll('.pointer')].at(-1)!;
		return (30 * (middle(nose) - at('0'))) / (at('30') - at('0'));
	});

test('the plug stands over the ruler where its number says, whatever becomes of animations', async ({
	page
}) => {
	await openBench(page);
	const slider = page.getByRole('slider', { name: /Travel/ });
	const stands = async (travel: number) =>
		expect
			.poll(async () => Math.abs((await noseOnRuler(page)) - travel), { message: `${travel} mm` })
			.toBeLessThan(0.15);
	for (const travel of [0, 3, 12.5, 26.5, 30.5]) {
		await slider.fill(String(travel));
		await stands(travel);
	}
	await slider.fill('18.5');
	await page.setViewportSize({ width: 900, height: 800 });
	await stands(18.5);
	await page.evaluate(() => document.getAnimations().forEach((animation) => animation.finish()));
	await stands(18.5);
	await page.evaluate(() => document.getAnimations().forEach((animation) => animation.cancel()));
	await stands(18.5);
	await slider.fill('7');
	await stands(7);
	await page.getByRole('button', { name: 'Undo', exact: true }).click();
	await stands(18.5);
	await page.getByRole('button', { name: 'Pull it out' }).first().click();
	await page
		.getByRole('button', { name: /^Put .* in/ })
		.first()
		.click();
	await stands(30.5);
});

test('a three-pin plug is dragged in the half it stands in, and no text is marked', async ({
	page
}) => {
	await openBench(page, BENCH.replace('"kind":"trs"', '"kind":"three-pin"'));
	const half = page.locator('.pair svg').first();
	await half.scrollIntoViewIfNeeded();
	const box = (await half.boundingBox())!;
	const [x, y] = [box.x + box.width / 3, box.y + box.height / 2];
	await page.mouse.move(x, y);
	await page.mouse.down();
	// 6 units of 320 are a millimetre: 22.5 mm out.
	await page.mouse.move(x - (22.5 * 6 * box.width) / 320, y, { steps: 6 });
	await page.mouse.up();
	const slider = page.getByRole('slider', { name: /Travel/ });
	await expect.poll(async () => Math.abs(Number(await slider.inputValue()) - 8)).toBeLessThan(0.4);
	expect(await page.evaluate(() => String(getSelection()))).toBe('');
});

test('Escape takes a drag back: the plug in the section, and the plug from the rack', async ({
	page
}) => {
	await openBench(page);
	const section = page.locator('.section');
	await section.scrollIntoViewIfNeeded();
	const box = (await section.boundingBox())!;
	const [x, y] = [box.x + box.width / 2, box.y + box.height / 3];
	const output = page.locator('output.mm');
	await page.mouse.move(x, y);
	await page.mouse.down();
	await page.mouse.move(x - 80, y, { steps: 4 });
	await expect(output).not.toHaveText('30.5 mm');
	await page.keyboard.press('Escape');
	await expect(output).toHaveText('30.5 mm');
	// The hand goes on, and moves nothing any more.
	await page.mouse.move(x - 120, y, { steps: 4 });
	await page.mouse.up();
	await expect(output).toHaveText('30.5 mm');
	await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();

	const rack = page.getByRole('button', { name: 'TS plug', exact: true });
	await rack.scrollIntoViewIfNeeded();
	await rack.hover();
	await page.mouse.down();
	const onto = (await page.locator('.frame svg').first().boundingBox())!;
	await page.mouse.move(onto.x + 100, onto.y + 100, { steps: 4 });
	await expect(page.locator('.ghost')).toBeVisible();
	await page.keyboard.press('Escape');
	await expect(page.locator('.ghost')).toHaveCount(0);
	await page.mouse.up();
	await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
	await expect(rack).toHaveAttribute('aria-pressed', 'false');
});

test('the slider says the tenth of a millimetre that a drag in the section left', async ({
	page
}) => {
	await openBench(page);
	const section = page.locator('.section');
	await section.scrollIntoViewIfNeeded();
	const box = (await section.boundingBox())!;
	const slider = page.getByRole('slider', { name: /Travel/ });
	const output = page.locator('output.mm');
	// The number is exact when the hand lets go; on its way it follows some frames behind.
	let travel: number;
	let off = 0;
	do {
		off += 7;
		await page.mouse.move(box.x + box.width / 2, box.y + box.height / 3);
		await page.mouse.down();
		await page.mouse.move(box.x + box.width / 2 - off, box.y + box.height / 3);
		await page.mouse.up();
		travel = parseFloat((await output.textContent())!);
	} while (off < 140 && Number.isInteger(2 * travel));
	expect(Number.isInteger(2 * travel)).toBe(false);
	expect(Number(await slider.inputValue())).toBe(travel);
});

test('words rest while the panel stands edgewise, and come back', async ({ page }) => {
	await openBench(page);
	const turn = page.getByRole('button', { name: 'Turn to the front' });
	await turn.scrollIntoViewIfNeeded();
	await page.evaluate(() => {
		const seen: string[] = [];
		Object.assign(window, { seen });
		const look = () => {
			const svg = document.querySelector('.frame svg')!;
			seen.push(svg.classList.contains('turning') ? 'rests' : 'says');
			requestAnimationFrame(look);
		};
		look();
	});
	const seen = () => page.evaluate(() => (window as unknown as { seen: string[] }).seen);
	// A machine with much to do may draw none of the frames in which the panel stands edgewise.
	await expect(async () => {
		await page.getByRole('button', { name: /^Turn to the (front|rear)$/ }).click();
		await expect.poll(seen, { timeout: 2000 }).toContain('rests');
	}).toPass();
	await expect(page.locator('.frame svg')).not.toHaveClass(/turning/);
	const letter = page.locator('.frame .wire-flag').first();
	await expect(letter).toHaveCSS('opacity', '1');
});

test('a phone shows four states of the travel whole, and which of how many', async ({ page }) => {
	await page.setViewportSize({ width: 390, height: 844 });
	await openBench(page);
	const strip = page.getByRole('list', { name: 'States of the travel' });
	await expect(page.getByText(/^State \d+ of \d+$/)).toBeVisible();
	const whole = await strip.evaluate((list) => {
		list.scrollLeft = 0;
		const { left, right } = list.getBoundingClientRect();
		return [...list.children].filter((item) => {
			const box = item.getBoundingClientRect();
			return box.left >= left - 1 && box.right <= right + 1;
		}).length;
	});
	expect(whole).toBeGreaterThanOrEqual(4);
});

test('all that is cut stands in one hand: lines of one weight, words of one size', async ({
	page
}) => {
	await open(page, '/gallery');
	const cuts = page.locator('.moment').first().locator('.cuts svg');
	/** How much larger the largest of the views has it than the smallest, in pixels on screen. */
	const spread = (of: string, what: 'strokeWidth' | 'fontSize') =>
		cuts.evaluateAll(
			(all, [of, what]) => {
				const px = all.map((svg) => {
					const scale =
						svg.getBoundingClientRect().width / (svg as SVGSVGElement).viewBox.baseVal.width;
					return scale * parseFloat(getComputedStyle(svg.querySelector(of)!)[what]);
				});
				return Math.max(...px) / Math.min(...px);
			},
			[of, what] as const
		);
	for (const width of [390, 820, 1440]) {
		await page.setViewportSize({ width, height: 900 });
		await expect(cuts).toHaveCount(3);
		await expect.poll(() => spread('.spring', 'strokeWidth')).toBeLessThan(1.04);
		await expect.poll(() => spread('.w-mark', 'fontSize')).toBeLessThan(1.04);
	}
});
