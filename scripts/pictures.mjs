/**
 * `npm run pictures`: takes the README's pictures from the built site. To add one, add a row to
 * SHOTS; to refresh them all, run the script and look at what changed. Names given on the command
 * line take only those.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { BUILD, ROOT, build, isBuilt } from './build.mjs';
import { BROWSER_ARGS, findChromium } from './machine.mjs';
import { serve } from './serve.mjs';

const FOLDER = join(ROOT, 'tests/figures/pictures');

const DESKTOP = { width: 1280, height: 900 };
const PHONE = { width: 390, height: 844 };

/**
 * One picture. `steps` may do anything a learner does before it is taken; `part` is a selector of
 * what is taken, where that is not the whole window.
 * @typedef {{
 *   name: string,
 *   path: string,
 *   viewport: { width: number, height: number },
 *   scheme: 'light' | 'dark',
 *   part?: string,
 *   steps?: (page: import('@playwright/test').Page) => Promise<void>
 * }} Shot
 */

/** @param {import('@playwright/test').Page} page */
async function probes(page) {
	await page.locator('[data-node="A.T"]').click();
	await page.locator('[data-node="A.2"]').click();
	await page.mouse.move(2, 2);
}
/** @param {import('@playwright/test').Page} page */
async function bridging(page) {
	await page.getByRole('button', { name: 'TRS plug', exact: true }).click();
	await page.getByRole('button', { name: 'Put it in Stage 1' }).click();
	await page.locator('[data-node="A.T"]').click();
	await page.locator('[data-node="A.R"]').click();
	for (let i = 0; i < 4; i++) await page.getByRole('button', { name: 'Out 1' }).click();
	await page.mouse.move(2, 2);
}

/** @type {Shot[]} */
const SHOTS = [
	{ name: 'bench', path: '/', viewport: DESKTOP, scheme: 'light', steps: probes },
	{ name: 'bench-phone', path: '/', viewport: PHONE, scheme: 'dark', steps: probes },
	{
		name: 'section',
		path: '/',
		viewport: DESKTOP,
		scheme: 'light',
		part: '.travel',
		steps: bridging
	},
	{
		name: 'exercise',
		path: '/exercises/wire-one-cable-six/',
		viewport: { width: 1280, height: 1100 },
		scheme: 'light'
	}
];

/**
 * @param {import('@playwright/test').Browser} browser
 * @param {string} url
 * @param {Shot} shot
 */
async function take(browser, url, { name, path, viewport, scheme, part, steps }) {
	const context = await browser.newContext({
		baseURL: url,
		viewport,
		colorScheme: scheme,
		reducedMotion: 'reduce',
		serviceWorkers: 'block'
	});
	const page = await context.newPage();
	await page.goto(path);
	await page.locator('html[data-ready="true"]').waitFor();
	await steps?.(page);
	await page.evaluate(() => document.fonts.ready);
	// Symbol, strip and words follow the plug by some frames; a picture shows a moment at rest.
	await page.waitForTimeout(1500);
	const file = join(FOLDER, `${name}.png`);
	const target = part ? page.locator(part) : page;
	await target.screenshot({ path: file, animations: 'disabled', caret: 'hide' });
	await context.close();
	console.log(file);
}

const names = process.argv.slice(2);
const unknown = names.filter((name) => !SHOTS.some((shot) => shot.name === name));
if (unknown.length > 0) {
	console.error(
		`No picture is called ${unknown.join(', ')}. There are: ${SHOTS.map((shot) => shot.name).join(', ')}.`
	);
	process.exit(2);
}

if (!isBuilt(ROOT) && !build()) process.exit(1);
mkdirSync(FOLDER, { recursive: true });
const site = await serve(BUILD, { port: 0 });
const browser = await chromium.launch({ executablePath: findChromium(), args: BROWSER_ARGS });
try {
	for (const shot of SHOTS)
		if (names.length === 0 || names.includes(shot.name)) await take(browser, site.url, shot);
} finally {
	await browser.close();
	site.close();
}
