/**
 * A step of advice on the built site in Chromium: from the press on what the meter said until the new
 * advice is painted, and tasks of over 50 ms on the page meanwhile. The browser slows the page's own
 * thread and not its workers, so the time at full speed is also given four times over: no machine
 * slowed four times takes longer. Times are shown and never decide anything.
 */
import { chromium, type Page } from '@playwright/test';
import { BUILD, ROOT, build, isBuilt } from '../../scripts/build.mjs';
import { BROWSER_ARGS, findChromium } from '../../scripts/machine.mjs';
import { serve } from '../../scripts/serve.mjs';
import { checkBench, inState, isJoined, withFaults, type Bench } from '../../src/lib/engine';
import { bestNext, dictionaryOf, agreeing, type Reading } from '../../src/lib/diagnosis';
import { panelFile } from './panels';
import { median, type Row } from './measure';

/** Steps of one hunt. */
const STEPS = 6;

/** As text: what the TypeScript runner adds to functions is not there in the page. */
const STEP = `(async (name) => {
	const seen = document.querySelector('[data-testid="told"]');
	let long = 0;
	const watch = new PerformanceObserver((list) => {
		for (const { duration } of list.getEntries()) long = Math.max(long, duration);
	});
	watch.observe({ type: 'longtask' });
	const button = [...document.querySelectorAll('button')].find((b) => b.textContent.trim() === name);
	await new Promise(requestAnimationFrame);
	const start = performance.now();
	const told = new Promise((done) => {
		const observer = new MutationObserver(() => { observer.disconnect(); done(); });
		observer.observe(seen, { childList: true, characterData: true, subtree: true });
	});
	button.click();
	await told;
	await new Promise(requestAnimationFrame);
	await new Promise((painted) => setTimeout(painted));
	const ms = performance.now() - start;
	await new Promise((done) => setTimeout(done, 120));
	watch.disconnect();
	return { ms, long };
})`;

function benchOf(sockets: number): Bench {
	const made = checkBench(panelFile(sockets));
	if (!made.ok) throw new Error(made.problem.message);
	return made.value;
}

/** The readings of a hunt for the last fault of the list, each the best one there. */
function huntIn(bench: Bench, most: number): Reading[] {
	const dictionary = dictionaryOf(bench, most);
	const truth = withFaults(bench, [dictionary.faults.at(-1)!]);
	const readings: Reading[] = [];
	while (readings.length < STEPS) {
		const from = readings.at(-1)?.when ?? {};
		const next = bestNext(dictionary, agreeing(dictionary, readings), from);
		if (!next) break;
		const { when, pair } = next;
		const answer = isJoined(inState(truth, when), ...pair) ? 'joined' : 'apart';
		readings.push({ when, pair, answer });
	}
	return readings;
}

async function hunt(page: Page, readings: readonly Reading[]) {
	const steps: { ms: number; long: number }[] = [];
	for (const { answer } of readings) {
		await page.getByRole('button', { name: 'Set it up' }).click();
		const name = JSON.stringify(answer === 'joined' ? '● Beep' : '○ No beep');
		steps.push(await page.evaluate<{ ms: number; long: number }>(`${STEP}(${name})`));
	}
	return steps;
}

/** Rows for panels of these sizes: sockets, and faults at once. */
export async function adviceRows(sizes: readonly (readonly [number, number])[]): Promise<Row[]> {
	if (!isBuilt(ROOT) && !build()) throw new Error('The site could not be built');
	const site = await serve(BUILD, { port: 0 });
	const browser = await chromium.launch({ executablePath: findChromium(), args: BROWSER_ARGS });
	const rows: Row[] = [];
	try {
		for (const [sockets, most] of sizes) {
			const bench = benchOf(sockets);
			const readings = huntIn(bench, most);
			for (const slowed of [1, 4]) {
				const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
				await page.addInitScript(
					(text) => localStorage.setItem('solderside-bench-1', text),
					JSON.stringify(panelFile(sockets))
				);
				await page.goto(`${site.url}real/`);
				await page.locator('html[data-ready="true"]').waitFor();
				const set = page.getByRole('button', { name: 'Set it up' });
				await set.waitFor({ timeout: 120_000 });
				if (most > 1) {
					const name = ['', 'one', 'two', 'three'][most]!;
					await page.getByRole('radio', { name, exact: true }).check();
				}
				await page.locator('[data-settled="true"]').waitFor({ timeout: 120_000 });
				const session = await page.context().newCDPSession(page);
				await session.send('Emulation.setCPUThrottlingRate', { rate: slowed });
				const steps = await hunt(page, readings);
				const times = steps.map(({ ms }) => ms);
				const of = `${sockets} ${sockets > 1 ? 'sockets' : 'socket'}, ${most} at once`;
				const what = `${of}${slowed > 1 ? `, page slowed ${slowed} times` : ''}`;
				rows.push(
					{ what: `${what}: reading to advice, ms`, ratio: median(times) },
					{ what: `${what}: the longest of ${times.length}, ms`, ratio: Math.max(...times) },
					{ what: `${what}: longest task, ms`, ratio: Math.max(...steps.map((s) => s.long)) }
				);
				if (slowed === 1)
					rows.push({
						what: `${what}: reading to advice, times four, ms`,
						ratio: 4 * median(times)
					});
				await page.close();
			}
		}
	} finally {
		await browser.close();
		site.close();
	}
	return rows;
}
