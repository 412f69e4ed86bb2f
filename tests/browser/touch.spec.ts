/** In a hand: taps reach contacts, the reading is in sight, nothing is cut off, and targets are large. */
import type { Page } from '@playwright/test';
import { judge } from '../../src/lib/exercises';
import { choose, find, name, order, PAGES, pathOf, predict, putRight } from './course';
import { expectProbes, handsOn } from './hands';
import { drawn, expect, open, test } from './support';

/** Controls that can be hit and are smaller than they should be, pixels. */
const small = (page: Page, coarse: boolean): Promise<string[]> =>
	page.evaluate((coarse) => {
		const all = document.querySelectorAll<HTMLElement>(
			'a, button, select, input, summary, [role="button"]'
		);
		/** Past what only sets a word off within its sentence. */
		const sentenceOf = (control: Element): Element => {
			const parent = control.parentElement!;
			return parent.matches('strong, em, code') ? sentenceOf(parent) : parent;
		};
		return [...all].flatMap((control) => {
			// A label is a target of its control; a link inside a sentence may be as small as its words.
			const label = (control as HTMLInputElement).labels?.[0];
			const boxes = [control, label].flatMap((part) => part?.getBoundingClientRect() ?? []);
			const isHidden =
				!control.checkVisibility({ visibilityProperty: true }) ||
				control.matches('.visually-hidden, .skip, [tabindex="-1"][type="file"]') ||
				boxes[0]!.width < 2;
			const isInText =
				getComputedStyle(control).display === 'inline' &&
				sentenceOf(control).textContent.trim() !== control.textContent.trim();
			// Seen as a whole, a large bench is drawn small; its contacts stand in a list as well.
			const isOverview = !coarse && control.matches('[data-node]');
			if (isHidden || isInText || isOverview) return [];
			const fits = boxes.some(
				({ width: w, height: h }) => Math.min(w, h) >= 23.5 && (!coarse || Math.max(w, h) >= 43.5)
			);
			const { width, height } = boxes[0]!;
			const name = control.getAttribute('aria-label') ?? control.textContent.trim().slice(0, 30);
			return fits ? [] : [`${control.tagName} ${name}: ${width.toFixed(0)} x ${height.toFixed(0)}`];
		});
	}, coarse);

const overflow = (page: Page): Promise<number> =>
	page.evaluate(() => document.scrollingElement!.scrollWidth - innerWidth);

const PHONE = { width: 390, height: 844 };
const TABLET = { width: 820, height: 1180 };

test.describe('on a phone', () => {
	test.use({ viewport: PHONE, hasTouch: true, isMobile: true });

	test('taps probe two contacts, and the reading is in sight beside them', async ({ page }) => {
		await open(page);
		const hands = handsOn(page);
		await hands.node('A.T').tap();
		await hands.node('A.2').tap();
		await expectProbes(hands, 'A.T', 'A.2');
		const strip = hands.drawing.getByText('0.2 Ω');
		await expect(strip).toBeInViewport();
		await expect(hands.drawing.getByText(/● sounds/)).toBeInViewport();
		await expect(hands.node('A.T')).toBeInViewport();

		await hands.button(/^Put p1 /).tap();
		await expect(hands.drawing.getByText('over range').first()).toBeVisible();
		await hands.button('Pull it out').tap();
		await expect(strip).toBeVisible();
		await hands.tool('Jumper').tap();
		await hands.node('A.R').tap();
		await hands.node('A.3').tap();
		await expect(hands.said).toContainText('Jumper soldered from R to 3.');
		// A plug by tap and tap.
		await hands.button('TRS plug').tap();
		await hands.button(/^Put it in /).tap();
		await expect(hands.travel).toContainText('30.5 mm');
		expect((await hands.kept()).plugs.map((p) => p.socket)).toEqual([null, 'A']);
	});

	test('a finger moves the plug sideways in the section, and scrolls the page up and down', async ({
		page
	}) => {
		await open(page);
		const hands = handsOn(page);
		await hands.button(/^Put p1 /).tap();
		const section = hands.travel.getByRole('img', { name: /^Section of the jack/ });
		await section.scrollIntoViewIfNeeded();
		// Every word of it can be read: eleven pixels or more.
		const least = await section.evaluate((svg: SVGSVGElement) => {
			const unit = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
			const sizes = [...svg.querySelectorAll('text')].map(
				(word) => getComputedStyle(word).fontSize
			);
			return unit * Math.min(...sizes.map(parseFloat));
		});
		expect(least).toBeGreaterThanOrEqual(11);

		const finger = await page.context().newCDPSession(page);
		async function draw(dx: number, dy: number) {
			const box = (await section.boundingBox())!;
			const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
			const touch = (
				type: 'touchStart' | 'touchMove' | 'touchEnd',
				at: { x: number; y: number }[]
			) => finger.send('Input.dispatchTouchEvent', { type, touchPoints: at });
			await touch('touchStart', [{ x, y }]);
			for (let i = 1; i <= 10; i++) {
				await touch('touchMove', [{ x: x + (dx * i) / 10, y: y + (dy * i) / 10 }]);
				await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));
			}
			await touch('touchEnd', []);
		}
		const scrolled = await page.evaluate(() => scrollY);
		// The plugs are out of sight now; the focus that went to them stays with them.
		const heir = hands.button('three-pin plug');
		await expect(heir).toBeFocused();
		await expect(heir).not.toBeInViewport();
		await draw(-70, 0);
		await expect(heir).toBeFocused();
		await expect(hands.travel.getByRole('status')).not.toHaveText('30.5 mm');
		expect(await page.evaluate(() => scrollY)).toBe(scrolled);
		const travel = (await hands.travel.getByRole('status').textContent())!;
		expect(parseFloat(travel)).toBeGreaterThan(12);
		expect(parseFloat(travel)).toBeLessThan(26);
		await draw(0, -120);
		await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(scrolled + 40);
		await expect(hands.travel.getByRole('status')).toHaveText(travel);
	});

	test('targets are large enough for a finger, on a tablet too', async ({ page }) => {
		for (const path of PAGES) {
			await page.setViewportSize(PHONE);
			await open(page, path);
			expect(await page.evaluate(() => matchMedia('(pointer: coarse)').matches)).toBe(true);
			await page.locator('details').evaluateAll((all) => {
				for (const details of all) (details as HTMLDetailsElement).open = true;
			});
			for (const size of [PHONE, TABLET]) {
				await page.setViewportSize(size);
				await drawn(page);
				const what = `${path} at ${size.width}`;
				expect(await small(page, true), what).toEqual([]);
				expect(await overflow(page), what).toBeLessThanOrEqual(0);
			}
		}
	});

	test('what the judge says is on the screen, as wide as it, with targets for a finger', async ({
		page
	}) => {
		const hands = handsOn(page);
		const judgings: readonly [string, () => Promise<void>][] = [
			[pathOf(predict), () => hands.button('Check my prediction').tap()],
			[pathOf(putRight), () => hands.button('Check my wiring').tap()],
			[
				pathOf(choose),
				async () => {
					for (const id of choose.wrong[0]!.answer.chosen)
						await page.getByRole('checkbox', { name: new RegExp(`Variant ${id}\\b`) }).check();
					await hands.button('Check my choice').tap();
				}
			],
			[
				pathOf(find),
				async () => {
					await page.getByRole('link', { name: 'Name the fault' }).tap();
					await page.getByLabel('What kind of fault is it?').selectOption({ index: 1 });
					await page.getByLabel('Where?').selectOption({ index: 1 });
					await hands.redSelect.selectOption('A.2');
					await hands.blackSelect.selectOption('A.T');
					await hands.button('That is it').tap();
				}
			],
			[
				pathOf(name),
				async () => {
					for (const [letter, contact] of Object.entries(name.wrong[0]!.answer.names))
						await page.getByLabel(`Lug ${letter} is`).selectOption(contact);
					await hands.button('Those are their names').tap();
				}
			],
			[
				pathOf(order),
				async () => {
					const { answer } = order.wrong.find((w) => w.unsafe)!;
					expect(judge(order, answer).unsafe).toBe(true);
					for (const id of answer.order)
						await hands.button(order.steps.find((s) => s.id === id)!.text).tap();
					await hands.button('Check my order').tap();
				}
			]
		];
		for (const [path, answer] of judgings) {
			await open(page, path);
			await answer();
			const card = page.getByTestId('judged');
			await expect(card.getByRole('heading').first(), path).toBeInViewport();
			await expect(card.getByRole('img').first(), path).toBeVisible();
			expect(await small(page, true), path).toEqual([]);
			expect(await overflow(page), path).toBeLessThanOrEqual(0);
		}
	});

	test('a hint and the check stay in reach while the bench scrolls', async ({ page }) => {
		await open(page, pathOf(putRight));
		const hands = handsOn(page);
		await hands.node('A.1').scrollIntoViewIfNeeded();
		for (const button of ['Check my wiring', 'How far am I?'])
			await expect(hands.button(button)).toBeInViewport({ ratio: 1 });
		await hands.button('How far am I?').tap();
		await expect(page.getByText(/changes? do(es)? it, and no fewer/).last()).toBeInViewport();
	});

	test('a word is explained by a tap', async ({ page }) => {
		await open(page, pathOf(predict));
		await page.getByRole('article').getByRole('link', { name: 'normals', exact: true }).tap();
		const card = page.getByTestId('explained');
		await expect(card).toBeInViewport({ ratio: 1 });
		expect(await overflow(page)).toBeLessThanOrEqual(0);
		await card.getByRole('button', { name: 'Close' }).tap();
		await expect(card).toBeHidden();
	});
});

test('no page is wider than its window, and every target can be hit with a mouse', async ({
	page
}) => {
	for (const path of PAGES) {
		await open(page, path);
		for (const width of [320, 390, 820, 1440]) {
			await page.setViewportSize({ width, height: 900 });
			expect(await overflow(page), `${path} at ${width}`).toBeLessThanOrEqual(0);
			expect(await small(page, false), `${path} at ${width}`).toEqual([]);
		}
	}
	// With long names, a plug in and a message on the page as well.
	await open(page);
	const hands = handsOn(page);
	await page
		.getByLabel('Its label')
		.fill('A very long label that somebody gave this socket, with more');
	await hands.button(/^Put p1 /).click();
	await hands.button('Add socket').click();
	await hands.button('Copy link').click();
	await hands.redSelect.selectOption('A.TN');
	await hands.blackSelect.selectOption('A.2');
	await hands.section('Jumpers and cables').getByLabel('From').selectOption('A.TN');
	for (const width of [320, 390, 820, 1440]) {
		await page.setViewportSize({ width, height: 900 });
		expect(await overflow(page), `with much on it, at ${width}`).toBeLessThanOrEqual(0);
	}
});
