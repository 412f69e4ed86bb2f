/**
 * Browser tests run against the built site, served as a plain static host would serve it.
 * `npx playwright test` builds first if a source is newer than the build.
 */
import { defineConfig } from '@playwright/test';
import { BROWSER_ARGS, findChromium } from './scripts/machine.mjs';

const port = process.env.SOLDERSIDE_TEST_PORT ?? '4273';
const address = `http://localhost:${port}/`;

export default defineConfig({
	testDir: 'tests/browser',
	outputDir: 'test-results/browser',
	fullyParallel: true,
	forbidOnly: true,
	workers: 2,
	retries: 0,
	// The longest takes half a minute; a machine that is busy with something else takes twice as long.
	timeout: 120_000,
	expect: { timeout: 10_000 },
	reporter: [['line'], ['json', { outputFile: 'test-results/browser.json' }]],
	use: {
		baseURL: address,
		browserName: 'chromium',
		headless: true,
		viewport: { width: 1440, height: 900 },
		contextOptions: { reducedMotion: 'no-preference' },
		// Only the offline tests need the worker; elsewhere it would fetch the whole site each time.
		serviceWorkers: 'block',
		// A trace is a picture of every page after every step. To see one: npx playwright test --trace on FILE
		trace: 'off',
		launchOptions: { executablePath: findChromium(), args: BROWSER_ARGS }
	},
	webServer: {
		command: 'node scripts/start.mjs',
		env: { PORT: port },
		url: address,
		timeout: 180_000,
		reuseExistingServer: false,
		stdout: 'ignore',
		stderr: 'pipe'
	}
});
