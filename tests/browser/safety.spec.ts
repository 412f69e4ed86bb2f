/**
 * Safe to open: the page's own policy forbids what nobody wrote, nothing leaves this machine, and
 * whoever asked their system for less motion gets none.
 */
import type { Page } from '@playwright/test';
import { PAGES } from './course';
import { handsOn, placeOf } from './hands';
import { expect, longestChange, open, ready, test } from './support';

/** The page's policy as a map from directive to its sources. */
async function policyOf(page: Page): Promise<Map<string, string[]>> {
	const text = await page
		.locator('meta[http-equiv="content-security-policy" i]')
		.getAttribute('content');
	const rules = (text ?? '').split(';').map((rule) => rule.trim().split(/\s+/));
	return new Map(rules.map(([name = '', ...sources]) => [name, sources]));
}

test('every page carries a policy without unsafe scripts, and keeps to it', async ({
	page,
	context,
	problems
}) => {
	const asked = new Set<string>();
	context.on('request', (request) => asked.add(new URL(request.url()).origin));
	for (const path of PAGES) {
		const response = await page.goto(path);
		const headers = response!.headers();
		expect(headers['content-security-policy'], path).toContain('frame-ancestors');
		expect(headers['x-content-type-options'], path).toBe('nosniff');
		await ready(page);

		const policy = await policyOf(page);
		const scripts = policy.get('script-src')!;
		expect(scripts, path).toContain("'self'");
		expect(scripts.filter((s) => /unsafe|\*|^https?:|^data:|^blob:/.test(s))).toEqual([]);
		expect(scripts.some((s) => s.startsWith("'sha256-"))).toBe(true);
		expect(policy.get('default-src')).toEqual(["'self'"]);
		expect(policy.get('style-src')!.filter((s) => s.includes('unsafe'))).toEqual([]);
		expect(policy.get('object-src')).toEqual(["'none'"]);
		expect(policy.get('connect-src')).toEqual(["'self'"]);
		expect(policy.get('require-trusted-types-for')).toEqual(["'script'"]);
		expect(policy.get('trusted-types')).not.toContain("'allow-duplicates'");
		expect(policy.get('trusted-types')).not.toContain('*');
	}
	// Everything that was asked for came from the page's own address.
	expect([...asked]).toEqual([new URL(page.url()).origin]);
	expect(problems).toEqual([]);
});

test('a handler written into the page does not run, and neither does a made-up string', async ({
	page,
	problems
}) => {
	await open(page);
	const outcome = await page.evaluate(async () => {
		// The debugger may evaluate what the page may not; only a task of the page's own is the page.
		await new Promise((resolve) => setTimeout(resolve));
		const button = document.createElement('button');
		let refused = '';
		try {
			button.setAttribute('onclick', 'window.hasRun = "handler"');
		} catch (error) {
			refused = String(error);
		}
		document.body.append(button);
		button.click();
		const anchor = document.createElement('a');
		anchor.href = 'javascript:window.hasRun="address"';
		document.body.append(anchor);
		anchor.click();
		const tried = [
			// eslint-disable-next-line no-new-func
			() => new Function('window.hasRun = "function"')(),
			// eslint-disable-next-line no-implied-eval
			() => setTimeout('window.hasRun = "timer"', 0),
			() => Object.assign(document.createElement('script'), { src: '/x.js' }),
			() => (document.createElement('div').innerHTML = '<img src=x onerror="hasRun=1">'),
			() => document.write('<script>window.hasRun="write"</script>')
		];
		const through = tried.filter((attempt) => {
			try {
				attempt();
				return true;
			} catch {
				return false;
			}
		});
		return { refused, through: through.map(String) };
	});
	expect(outcome.refused).toContain('TypeError');
	expect(outcome.through).toEqual([]);
	await page.waitForTimeout(100);
	expect(await page.evaluate(() => 'hasRun' in window)).toBe(false);
	await expect.poll(() => problems.join()).toMatch(/script-src/);
	problems.length = 0;
});

/** Turns the panel; where contact 1 stands two frames later, x in pixels. */
const turned = (page: Page): Promise<number> =>
	page.evaluate(async () => {
		const buttons = [...document.querySelectorAll('button')];
		buttons.find((b) => b.textContent.includes('Turn to the'))!.click();
		const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
		await frame();
		await frame();
		return document.querySelector<SVGGElement>('[data-node="A.1"]')!.getScreenCTM()!.e;
	});

test('whoever wants no motion gets none: nothing takes time, the panel turns at once', async ({
	page
}) => {
	await page.emulateMedia({ reducedMotion: 'reduce' });
	await open(page);
	const hands = handsOn(page);
	await hands.button(/^Put p1 /).click();
	expect(await longestChange(page)).toBe(0);
	const before = await placeOf(hands.node('A.1'));
	const panel = (await page.locator('svg .panel rect').boundingBox())!;
	const mirrored = 2 * (panel.x + panel.width / 2) - before.x;
	// Two frames after the click it already stands where it belongs.
	expect(Math.abs((await turned(page)) - mirrored)).toBeLessThan(1);
	// The same page takes its time for whoever has not asked for that.
	await page.emulateMedia({ reducedMotion: 'no-preference' });
	expect(Math.abs((await turned(page)) - mirrored)).toBeLessThan(10);
	await page.emulateMedia({ reducedMotion: 'reduce' });
	// That every other page takes no time either is seen where each is gone over: a11y.spec.ts.
});
