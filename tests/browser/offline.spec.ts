/**
 * After one visit the site works without a network, and a new release neither breaks a page that
 * is open nor waits for ever. The site that is served here is a copy of the build, which a test
 * may replace by a "new release" of itself.
 */
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Page } from '@playwright/test';
import { BUILD } from '../../scripts/build.mjs';
import { serve } from '../../scripts/serve.mjs';
import { expect, open, ready, test as base } from './support';

interface Site {
	url: string;
	folder: string;
}

const test = base.extend<{ site: Site }>({
	site: async ({ problems: _ }, use) => {
		const folder = mkdtempSync(join(tmpdir(), 'solderside-site-'));
		cpSync(BUILD, folder, { recursive: true });
		const { url, close } = await serve(folder, { port: 0 });
		await use({ url, folder });
		close();
		rmSync(folder, { recursive: true });
	}
});
test.use({ serviceWorkers: 'allow' });

/** Opens the site and waits until the worker has taken the page in hand. */
async function visit(page: Page, url: string): Promise<void> {
	await open(page, url);
	await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
}

/** The paths of all pages of a built site. */
function pagesOf(folder: string): string[] {
	return readdirSync(folder, { recursive: true, encoding: 'utf8' })
		.filter((file) => basename(file) === 'index.html')
		.map((file) => file.replaceAll('\\', '/').replace(/index\.html$/, ''));
}

/** What kind of screen a page is: its folder, and for an exercise its kind. */
const screenOf = (path: string): string => path.replace(/^(exercises\/\w+|sockets\/)\S*$/, '$1');

/** A file that the worker does not keep: it can be had from the network only. */
const NOT_KEPT = 'server-headers.example.txt';

test('after one visit every page works without a network', async ({
	page,
	context,
	site,
	problems
}) => {
	test.setTimeout(180_000);
	await visit(page, site.url);
	const reached = (path: string) =>
		page.evaluate(
			(url) =>
				fetch(url).then(
					(answer) => answer.ok,
					() => false
				),
			site.url + path
		);
	expect(await reached(NOT_KEPT), 'the network is there').toBe(true);
	await context.setOffline(true);
	expect(await reached(NOT_KEPT), 'the network is cut').toBe(false);
	expect(await reached('favicon.svg'), 'a kept file is there').toBe(true);

	await page.reload();
	await ready(page);
	const pages = pagesOf(site.folder);
	expect(pages).toContain('');
	expect(pages).toContain('exercises/');
	const ways = ['exercises', 'exercises/index.html', 'exercises/?a=1#b', 'index.html', '?a=1#b'];
	// Every page is there; one of each kind is opened, for all of a kind are the same screen.
	for (const path of pages) expect(await reached(path), path).toBe(true);
	const oneOfEach = pages.filter(
		(path, i) => pages.findIndex((p) => screenOf(p) === screenOf(path)) === i
	);
	for (const path of [...oneOfEach, ...ways]) {
		await open(page, site.url + path);
		await expect(page.getByRole('heading', { level: 1 }), path).toBeVisible();
	}
	const others = problems.filter((problem) => !problem.includes(NOT_KEPT));
	problems.splice(0, problems.length, ...others);
});

test('beside a rack without a network: advice comes, and a reload brings the readings back', async ({
	page,
	context,
	site
}) => {
	await visit(page, site.url);
	await context.setOffline(true);
	await open(page, `${site.url}real/`);
	await page.getByRole('button', { name: 'Set it up' }).click();
	await page.getByRole('button', { name: '○ No beep' }).click();
	await expect(page.getByTestId('told')).toContainText('ruled out');
	const next = page.getByRole('region', { name: 'Best next probe' });
	const asked = await next.textContent();
	await page.reload();
	await ready(page);
	await expect(page.getByTestId('readings').getByRole('listitem')).toHaveCount(1);
	await expect(page.getByRole('button', { name: 'Set it up' })).toBeVisible();
	expect(await next.textContent()).toContain(/touch .*\./.exec(asked!)![0]);

	await open(page, `${site.url}lugs/`);
	await page.getByRole('button', { name: '○ No beep' }).click();
	await page.reload();
	await ready(page);
	await expect(page.getByTestId('lug-readings').getByRole('listitem')).toHaveCount(1);
});

const RELEASE = 'meta[name="release"]';

/** Makes of the served copy a release that differs in its worker, its pages and its modules. */
function publish({ folder }: Site, name: string, moreOfWorker = ''): void {
	const worker = join(folder, 'service-worker.js');
	const version = JSON.parse(readFileSync(join(folder, '_app/version.json'), 'utf8')).version;
	const old = readFileSync(worker, 'utf8');
	const changed = old.replaceAll(String(version), name);
	expect(changed, 'the worker carries its release').not.toBe(old);
	writeFileSync(worker, moreOfWorker + changed);
	const page = join(folder, 'index.html');
	const html = readFileSync(page, 'utf8');
	writeFileSync(
		page,
		html.replace('<meta charset', `<meta name="release" content="${name}" /><meta charset`)
	);
}

/** Asks for the new worker, and waits until it stands ready. */
async function fetchRelease(page: Page): Promise<void> {
	await page.evaluate(async () => {
		const registration = await navigator.serviceWorker.ready;
		await registration.update();
	});
	// Asked from here: what is awaited inside waitForFunction counts as true before it has come.
	await expect
		.poll(() => page.evaluate(async () => (await navigator.serviceWorker.ready).waiting?.state))
		.toBe('installed');
}

/** For a worker: it takes its time to take over, as it may on a busy machine. */
const SLOW = `
const takeOver = self.skipWaiting.bind(self);
self.skipWaiting = () => new Promise((done) => setTimeout(done, 1500)).then(takeOver);
`;

/** The names of the caches that hold a release. */
const releases = (page: Page) => page.evaluate(() => caches.keys());

test('a page that is open keeps its release while another stays open', async ({
	page,
	context,
	site
}) => {
	await visit(page, site.url);
	const before = await releases(page);
	expect(before).toHaveLength(1);
	const second = await context.newPage();
	await visit(second, site.url);

	publish(site, 'second-release');
	await fetchRelease(page);
	for (let times = 0; times < 3; times++) {
		await page.reload();
		await ready(page);
	}
	await expect(page.locator(RELEASE)).toHaveCount(0);
	expect(await releases(second)).toContain(before[0]);

	// A third tab is not a reload either.
	await page.close();
	const third = await context.newPage();
	await open(third, site.url);
	await expect(third.locator(RELEASE)).toHaveCount(0);
	expect(await releases(second)).toContain(before[0]);
});

test('the only page takes over a new release when it is loaded anew', async ({
	page,
	context,
	site
}) => {
	await visit(page, `${site.url}#kept`);
	publish(site, 'second-release', SLOW);
	await fetchRelease(page);
	let loads = 0;
	page.on('request', (request) => {
		if (request.isNavigationRequest()) loads++;
	});
	// The worker in charge learns a moment later than the page that another one is waiting.
	await expect(async () => {
		loads = 0;
		await page.reload();
		await ready(page);
		await expect(page.locator(RELEASE)).toHaveCount(1, { timeout: 1000 });
	}).toPass({ timeout: 20_000 });
	// Asked while the worker in charge is being replaced, a page may never come.
	expect(loads, 'the reload, and one more when the new release is in charge').toBe(2);
	expect(page.url()).toBe(`${site.url}#kept`);
	expect(await releases(page)).toEqual(['solderside-second-release']);

	await context.setOffline(true);
	await page.reload();
	await ready(page);
	await expect(page.locator(RELEASE)).toHaveAttribute('content', 'second-release');
});
