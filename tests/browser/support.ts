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

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** One broken accessibility rule: its name, and where and how it is broken. */
export interface Violation {
	rule: string;
	help: string;
	places: string[];
}

/**
 * Runs the accessibility rules on the page as it stands; nothing found is an empty list.
 * The source is evaluated by the debugger, which the page's own policy does not bind.
 */
export async function axe(page: Page): Promise<Violation[]> {
	await page.evaluate(axeCore.source);
	const { violations, passes } = await page.evaluate(
		(rules) => window.axe.run(document, { runOnly: { type: 'tag', values: rules } }),
		RULES
	);
	expect(passes.length, 'rules that axe found something to apply to').toBeGreaterThan(0);
	return violations.map(({ id, help, nodes }) => ({
		rule: id,
		help,
		places: nodes.map((node) => `${node.target.join(' ')}: ${node.failureSummary ?? node.html}`)
	}));
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

declare global {
	interface Window {
		axe: typeof axeCore;
	}
}
