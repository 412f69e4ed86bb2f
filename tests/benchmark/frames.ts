/**
 * Frame times of a plug on the built site in Chromium: dragged in the section, a move in every frame,
 * and put in and pulled out, on a panel of 1 and of 48 sockets, at full speed and on a processor
 * slowed four times. Times are shown and never decide anything; a frame is missed where the next one
 * came more than half a frame late, and a task of over 50 ms is what a person feels as a stumble.
 */
import { chromium, type Page } from '@playwright/test';
import { BUILD, ROOT, build, isBuilt } from '../../scripts/build.mjs';
import { BROWSER_ARGS, findChromium } from '../../scripts/machine.mjs';
import { serve } from '../../scripts/serve.mjs';
import { panelFile } from './panels';
import { median, type Row } from './measure';

/** Frames of the drag: in to the stop and out again, 3 seconds at 60 frames a second. */
const MOVES = 180;
/** Times that a plug is put in and pulled out. */
const PRESSES = 5;

interface Frames {
	readonly median: number;
	readonly worst: number;
	/** Frames that came more than half a frame late, in parts of a hundred. */
	readonly missed: number;
	/** Tasks of over 50 ms. */
	readonly long: number;
}

/**
 * As text: what the TypeScript runner adds to functions is not there in the page. A real button goes
 * down before; the moves are events of the same pointer, one in each frame, as a browser sends them.
 */
const DRAG = `(async ({ x, y, width, moves }) => {
	const box = document.querySelector('.travel .section');
	let long = 0;
	const watch = new PerformanceObserver((list) => (long += list.getEntries().length));
	watch.observe({ type: 'longtask' });
	const frames = [];
	let last = await new Promise(requestAnimationFrame);
	for (let i = 0; i <= moves; i++) {
		const clientX = x - width * Math.sin((i / moves) * Math.PI);
		const at = { pointerId: 1, pointerType: 'mouse', bubbles: true, clientX, clientY: y };
		box.dispatchEvent(new PointerEvent('pointermove', at));
		const now = await new Promise(requestAnimationFrame);
		frames.push(now - last);
		last = now;
	}
	await new Promise((done) => setTimeout(done, 100));
	watch.disconnect();
	return { frames: frames.slice(1), long };
})`;

/** Drags the plug in and out while the page writes down every frame, milliseconds. */
async function drag(page: Page): Promise<Frames> {
	const section = page.locator('.travel .section');
	await section.scrollIntoViewIfNeeded();
	const box = (await section.boundingBox())!;
	const [x, y] = [box.x + box.width * 0.4, box.y + box.height / 2];
	await page.mouse.move(x, y);
	await page.mouse.down();
	const given = JSON.stringify({ x, y, width: box.width * 0.35, moves: MOVES });
	const { frames, long } = await page.evaluate<{ frames: number[]; long: number }>(
		`${DRAG}(${given})`
	);
	await page.mouse.up();
	const missed = (100 * frames.filter((ms) => ms > 25).length) / frames.length;
	return { median: median(frames), worst: Math.max(...frames), missed, long };
}

/**
 * Presses a button as a frame begins; milliseconds until the next frame begins: 16.7 where the answer
 * was ready for the very next one. The median of some presses, a first one aside.
 */
async function answers(page: Page, ways: readonly RegExp[]): Promise<number[]> {
	const seen: number[][] = ways.map(() => []);
	for (let turn = 0; turn <= PRESSES; turn++)
		for (const [i, name] of ways.entries()) {
			const button = page.getByRole('button', { name }).first();
			await button.scrollIntoViewIfNeeded();
			await page.waitForTimeout(400);
			const ms = await button.evaluate(async (element: HTMLElement) => {
				const start = await new Promise(requestAnimationFrame);
				element.click();
				return (await new Promise(requestAnimationFrame)) - start;
			});
			if (turn > 0) seen[i]!.push(ms);
		}
	return seen.map(median);
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
				const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
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
				const [out, , home] = await answers(page, [/^Pull it out/, /^TRS plug$/, /^Put it in/]);
				const what = `${size} sockets${slowed > 1 ? `, slowed ${slowed} times` : ''}`;
				rows.push(
					{ what: `${what}: median frame, ms`, ratio: seen.median },
					{ what: `${what}: longest frame, ms`, ratio: seen.worst },
					{ what: `${what}: frames missed, %`, ratio: seen.missed },
					{ what: `${what}: tasks over 50 ms`, count: seen.long },
					{ what: `${what}: plug out, ms to the next frame`, ratio: out! },
					{ what: `${what}: plug in, ms to the next frame`, ratio: home! }
				);
				await page.close();
			}
	} finally {
		await browser.close();
		site.close();
	}
	return rows;
}
