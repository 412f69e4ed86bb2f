/**
 * The watch that every browser test stands on: each kind of problem is caused on purpose and must
 * be seen, or the other tests' silence would mean nothing.
 */
import { axe, expect, open, test } from './support';

test('an error on the console is seen', async ({ page, problems }) => {
	await open(page);
	await page.evaluate(() => console.error('on purpose'));
	await expect.poll(() => problems.join()).toContain('console error: on purpose');
	problems.length = 0;
});

test('an error that nobody catches is seen', async ({ page, problems }) => {
	await open(page);
	await page.evaluate(() => void setTimeout(() => Promise.reject(new Error('on purpose')), 0));
	await expect.poll(() => problems.join()).toContain('page error: Error: on purpose');
	problems.length = 0;
});

test('the policy stops a script and a string of HTML, and both are seen', async ({
	page,
	problems
}) => {
	await open(page);
	const outcome = await page.evaluate(() => {
		const script = document.createElement('script');
		script.append('window.hasRun = true');
		try {
			document.head.append(script);
			document.body.innerHTML = '<p>text</p>';
			return 'let through';
		} catch (error) {
			return String(error);
		}
	});
	expect(outcome).toContain('TypeError');
	expect(await page.evaluate(() => 'hasRun' in window)).toBe(false);
	await expect.poll(() => problems.join()).toMatch(/TrustedScript/);
	await expect.poll(() => problems.join()).toMatch(/TrustedHTML/);
	problems.length = 0;
});

test('a request to another host is stopped and seen', async ({ page, problems }) => {
	await open(page);
	await page.evaluate(() => fetch('https://elsewhere.example/').catch(() => null));
	await expect.poll(() => problems.join()).toMatch(/Content Security Policy|left this machine/);
	await page.evaluate(() => void (new Image().src = 'https://elsewhere.example/a.png'));
	await expect.poll(() => problems.length).toBeGreaterThan(1);
	problems.length = 0;
});

test('an address that is not there is a real 404, and is seen', async ({ page, problems }) => {
	const response = await page.goto('/no/such/page/');
	expect(response?.status()).toBe(404);
	await expect.poll(() => problems.join()).toContain('status 404');
	problems.length = 0;
});

test('the accessibility check finds a picture without a text', async ({ page }) => {
	await open(page);
	await page.evaluate(() => document.body.append(new Image(40, 40)));
	const rules = (await axe(page)).map(({ rule }) => rule);
	expect(rules).toContain('image-alt');
});

test('the accessibility check finds words that are too pale on the dark sheet alone', async ({
	page
}) => {
	await page.emulateMedia({ reducedMotion: 'reduce', colorScheme: 'light' });
	await open(page);
	await page.evaluate(() => {
		const words = document.createElement('p');
		words.textContent = 'ink on a dark sheet';
		words.style.color = '#333';
		document.querySelector('main')!.append(words);
	});
	expect(await axe(page, 'colours')).toEqual([]);
	await page.emulateMedia({ colorScheme: 'dark' });
	expect((await axe(page, 'colours')).map(({ rule }) => rule)).toEqual(['color-contrast']);
});
