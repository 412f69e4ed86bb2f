/**
 * What every browser test stands on: a page on which any error is a failure, a way to open it that
 * waits until it is alive, and the accessibility check.
 */
import { test as base, expect, type BrowserContext, type Page } from '@playwright/test';
import axeCore from 'axe-core';

export { expect };

/** A message on the console that is an error, or that reports a broken content security policy. */
const POLICY = /content security policy|trusted ?types|trustedhtml|trustedscript/i;
/** The page itself withdrew the request, by going elsewhere or by saving a file. */
const WITHDRAWN = 'net::ERR_ABORTED';

const isHere = (url: string) => {
	const { protocol, hostname } = new URL(url);
	return ['data:', 'blob:', 'about:'].includes(protocol) || hostname === 'localhost';
};

/** Writes down everything that goes wrong in any page or worker of a browser context. */
function watch(context: BrowserContext): string[] {
	const problems: string[] = [];
	context.on('console', (message) => {
		const isError = message.type() === 'error';
		if (isError || (message.type() === 'warning' && POLICY.test(message.text())))
			problems.push(`console ${message.type()}: ${message.text()} (${message.location().url})`);
	});
	context.on('weberror', (web) => problems.push(`page error: ${String(web.error())}`));
	context.on('request', (request) => {
		if (!isHere(request.url())) problems.push(`left this machine: ${request.url()}`);
	});
	context.on('requestfailed', (request) => {
		const reason = request.failure()?.errorText ?? 'unknown';
		if (reason !== WITHDRAWN) problems.push(`request failed: ${request.url()} (${reason})`);
	});
	context.on('response', (response) => {
		if (response.status() >= 400) problems.push(`status ${response.status()}: ${response.url()}`);
	});
	return problems;
}

/**
 * Playwright's test, which also fails on every problem that nobody took out of `problems`.
 * A test that causes one on purpose reads it there and empties the list.
 */
export const test = base.extend<{ problems: string[] }>({
	problems: [
		async ({ context }, use) => {
			const problems = watch(context);
			await use(problems);
			expect(problems, 'problems that the browser reported').toEqual([]);
		},
		{ auto: true }
	]
});

/** Waits until the layout is mounted: before that, buttons are drawn but do nothing. */
export async function ready(page: Page): Promise<void> {
	await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
}

/** Goes to a path of the site and waits until the page is alive. */
export async function open(page: Page, path = '/'): Promise<void> {
	await page.goto(path);
	await ready(page);
}

/** Waits until the page has drawn what was done to it, the loss of a focus included. */
export const drawn = (page: Page): Promise<void> =>
	page.evaluate(async () => {
		const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
		await frame();
		await frame();
	});

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** One broken accessibility rule: its name, and where and how it is broken. */
export interface Violation {
	rule: string;
	help: string;
	places: string[];
}

/** Of these rules, the ones that look at colours: a scheme changes nothing but colours (app.css). */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/**
 * Runs the accessibility rules on the page as it stands; nothing found is an empty list.
 * The source is evaluated by the debugger, which the page's own policy does not bind. What passes
 * is only counted: to spell it out takes longer than to find it.
 */
export async function axe(page: Page, which: 'all' | 'colours' = 'all'): Promise<Violation[]> {
	if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeCore.source);
	const runOnly: axeCore.RunOnly =
		which === 'all' ? { type: 'tag', values: RULES } : { type: 'rule', values: COLOUR_RULES };
	const { applied, broken } = await page.evaluate(async (runOnly) => {
		const result = await window.axe.run(document, { runOnly, resultTypes: ['violations'] });
		const broken = result.violations.map(({ id, help, nodes }) => ({
			rule: id,
			help,
			places: nodes.map((node) => `${node.target.join(' ')}: ${node.failureSummary ?? node.html}`)
		}));
		return { applied: result.passes.length + broken.length, broken };
	}, runOnly);
	expect(applied, 'rules that axe found something to apply to').toBeGreaterThan(0);
	return broken;
}

export const SIZES = {
	desk: { width: 1440, height: 900 },
	hand: { width: 390, height: 844 }
} as const;

/** No broken rule on the page as it stands, in either size and in either scheme. */
export async function expectNoneBroken(
	page: Page,
	what = 'the page',
	sizes: readonly (keyof typeof SIZES)[] = ['desk', 'hand']
): Promise<void> {
	// What is on its way to another colour has neither.
	await page.emulateMedia({ reducedMotion: 'reduce' });
	for (const size of sizes) {
		await page.setViewportSize(SIZES[size]);
		await page.emulateMedia({ colorScheme: 'light' });
		expect(await axe(page), `${what}, ${size}, light`).toEqual([]);
		await page.emulateMedia({ colorScheme: 'dark' });
		expect(await axe(page, 'colours'), `${what}, ${size}, dark`).toEqual([]);
	}
}

/** Buttons, fields and links that stand by themselves and are lower than a finger needs, in pixels. */
export const smallTargets = (page: Page, least = 44): Promise<string[]> =>
	page.locator('main').evaluate(
		(main, least) =>
			[...main.querySelectorAll('button, select, summary, input, a.button')].flatMap((element) => {
				// A box to tick is as large as its label.
				const target = element.matches('[type=checkbox], [type=radio]')
					? (element.closest('label') ?? element)
					: element;
				const { width, height } = target.getBoundingClientRect();
				const isOut = element.closest('.visually-hidden') !== null || width < 1 || height < 1;
				if (isOut || height >= least - 0.5) return [];
				return [`${element.tagName} ${(element.textContent ?? '').trim().slice(0, 30)} ${height}`];
			}),
		least
	);

/** The longest that anything on the page takes to change its looks, seconds. */
export const longestChange = (page: Page): Promise<number> =>
	page.evaluate(() => {
		const seconds = (list: string) => list.split(',').map((time) => parseFloat(time));
		const every = [...document.querySelectorAll('*')].flatMap((element) =>
			['', '::before', '::after'].flatMap((part) => {
				const style = getComputedStyle(element, part);
				return [
					...seconds(style.transitionDuration),
					...seconds(style.transitionDelay),
					...seconds(style.animationDuration)
				];
			})
		);
		return Math.max(...every);
	});

declare global {
	interface Window {
		axe: typeof axeCore;
	}
}
