/**
 * Frame times of a plug that is dragged in the section, on the built site in Chromium: a panel of 1
 * and of 48 sockets, at full speed and on a processor slowed four times. Times are shown and never
 * decide anything; the count of long tasks is what a person would feel as a stumble.
 */
import { chromium, type Page } from '@playwright/test';
import { BUILD, ROOT, build, isBuilt } from '../../scripts/build.mjs';
import { BROWSER_ARGS, findChromium } from '../../scripts/machine.mjs';
import { serve } from '../../scripts/serve.mjs';
import { panelFile } from './panels';
import { median, type Row } from './measure';

const MOVES = 90;

interface Frames {
	readonly median: number;
	readonly worst: number;
	/** Tasks of over 50 ms. */
	readonly long: number;
}

/** As text: what the TypeScript runner adds to functions is not there in the page. */
const WATCH = `{
	const store = (window.store = { frames: [], long: 0, on: true });
	let last = performance.now();
	const tick = (now) => {
		store.frames.push(now - last);
		last = now;
		if (store.on) requestAnimationFrame(tick);
	};
	requestAnimationFrame(tick);
	new PerformanceObserver((list) => (store.long += list.getEntries().length)).observe({
		type: 'longtask'
	});
}`;

/** Drags the plug in and out while the page writes down every frame, milliseconds. */
async function drag(page: Page): Promise<Frames> {
	const section = page.locator('.travel .box');
	await section.scrollIntoViewIfNeeded();
	const box = (await section.boundingBox())!;
	await page.evaluate(WATCH);
	const y = box.y + box.height / 2;
	await page.mouse.move(box.x + box.width * 0.4, y);
	await page.mouse.down();
	for (let i = 0; i <= MOVES; i++)
		await page.mouse.move(box.x + box.width * (0.4 - 0.35 * Math.sin((i / MOVES) * Math.PI)), y);
	await page.mouse.up();
	const { frames, long } = await page.evaluate(() => {
		const { store } = window as unknown as {
			store: { frames: number[]; long: number; on: boolean };
		};
		store.on = false;
		return { frames: store.frames.slice(2), long: store.long };
	});
	return { median: median(frames), worst: Math.max(...frames), long };
}

/** Rows for a panel of each size, at full speed and slowed four times. */
export async function frameRows(sizes: readonly number[]): Promise<Row[]> {
	if (!isBuilt(ROOT) && !build()) throw new Error('The site could not be built');
	const site = await serve(BUILD, { port: 0 });
	const browser = await chromium.launch({ executablePath: findChromium(), args: BROWSER_ARGS });
	const rows: Row[] = [];
	try {
		for (const size of sizes)
			for (const slowed of [1, 4]) {
				const page = await browser.newPage({ viewport: { width: 1440, height: 1400 } });
				await page.goto(site.url);
				await page.locator('html[data-ready="true"]').waitFor();
				await page.getByTestId('file').setInputFiles({
					name: 'panel.json',
					mimeType: 'application/json',
					buffer: Buffer.from(JSON.stringify(panelFile(size)))
				});
				await page.getByRole('button', { name: 'TRS plug', exact: true }).click();
				await page.getByRole('button', { name: /^Put it in/ }).click();
				const session = await page.context().newCDPSession(page);
				await session.send('Emulation.setCPUThrottlingRate', { rate: slowed });
				const seen = await drag(page);
				const what = `${size} sockets${slowed > 1 ? `, slowed ${slowed} times` : ''}`;
				rows.push(
					{ what: `${what}: median frame, ms`, ratio: seen.median },
					{ what: `${what}: longest frame, ms`, ratio: seen.worst },
					{ what: `${what}: tasks over 50 ms`, count: seen.long }
				);
				await page.close();
			}
	} finally {
		await browser.close();
		site.close();
	}
	return rows;
}
