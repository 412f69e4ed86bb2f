/**
 * The scripts behind `npm start` and `npm test`: what counts as a failure, when packages are
 * installed, when the site is built anew, and how it is served.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import {
	chmodSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readFileSync,
	rmSync,
	symlinkSync,
	utimesSync,
	writeFileSync
} from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isBuilt } from '../scripts/build.mjs';
import { playwrightCount, single, total, vitestCount } from '../scripts/counts.mjs';
import { CHROMIUM_PLACES, nodeProblem, onPath } from '../scripts/machine.mjs';
import { holdsAll, isInstalled, plainEnv } from '../scripts/packages.mjs';
import { serve } from '../scripts/serve.mjs';
import { makeTurns } from '../scripts/turns.mjs';

let folder: string;
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'solderside-scripts-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Writes a file under the test's folder, with its folders. */
function put(path: string, text = ''): string {
	const file = join(folder, path);
	mkdirSync(join(file, '..'), { recursive: true });
	writeFileSync(file, text);
	return file;
}

describe('what counts as a failure', () => {
	const vitest = { numPassedTests: 3, numFailedTests: 0, numPendingTests: 1, testResults: [] };
	const playwright = { stats: { expected: 2, unexpected: 0, flaky: 0, skipped: 1 }, errors: [] };

	it('counts what the runners count', () => {
		expect(vitestCount(vitest, true)).toEqual({ passed: 3, failed: 0, skipped: 1 });
		expect(playwrightCount(playwright, true)).toEqual({ passed: 2, failed: 0, skipped: 1 });
	});

	it('counts a runner that left no report as one failure', () => {
		expect(vitestCount(null, true)).toEqual(single(false));
		expect(playwrightCount(null, true)).toEqual(single(false));
	});

	it('counts a run in which nothing was tested as one failure', () => {
		expect(vitestCount({ testResults: [] }, true).failed).toBe(1);
		expect(playwrightCount({ stats: { skipped: 4 } }, true).failed).toBe(1);
	});

	it('counts a file that could not be loaded as one failure', () => {
		const testResults = [
			{ status: 'failed', assertionResults: [] },
			{ status: 'failed', assertionResults: [{ status: 'failed' }] }
		];
		const report = { numPassedTests: 3, numFailedTests: 1, testResults };
		expect(vitestCount(report, false)).toMatchObject({ passed: 3, failed: 2 });
	});

	it('counts a failure that only the exit status tells', () => {
		expect(vitestCount(vitest, false)).toMatchObject({ passed: 3, failed: 1 });
		expect(playwrightCount(playwright, false)).toMatchObject({ passed: 2, failed: 1 });
	});

	it('counts a test that passed only at a second try as a failure', () => {
		expect(playwrightCount({ stats: { expected: 2, flaky: 1 } }, true).failed).toBe(1);
	});

	it('adds the steps up', () => {
		const steps = [single(true), single(false), { passed: 5, failed: 2, skipped: 1 }];
		expect(total(steps)).toEqual({ passed: 6, failed: 3, skipped: 1 });
	});
});

describe('steps that run side by side', () => {
	let told = '';
	const turns = () => {
		told = '';
		return makeTurns((text) => (told += String(text)));
	};

	it('are told one after the other, in their order, each in full', () => {
		const { say, end } = turns();
		say(2, 'c');
		say(0, 'a');
		say(1, 'b');
		say(0, 'A');
		expect(told).toBe('aA');
		end(1);
		say(2, 'C');
		expect(told).toBe('aA');
		end(0);
		expect(told).toBe('aAbcC');
		say(2, '!');
		expect(told).toBe('aAbcC!');
	});

	it('have the terminal only at their turn', () => {
		const { isTurnOf, end } = turns();
		expect([0, 1, 2].map(isTurnOf)).toEqual([true, false, false]);
		end(1);
		end(0);
		expect([0, 1, 2].map(isTurnOf)).toEqual([false, false, true]);
	});
});

describe('the version of Node', () => {
	it.each(['20.19.0', '20.20.2', '22.12.0', '22.23.3', '23.0.0', '24.0.0', '26.1.0'])(
		'%s will do',
		(version) => expect(nodeProblem(version)).toBeNull()
	);
	it.each(['16.20.2', '18.20.8', '20.18.3', '21.7.3', '22.11.0'])('%s will not', (version) =>
		expect(nodeProblem(version)).toContain(`This is Node ${version}.`)
	);
});

describe('the packages', () => {
	const lock = (packages: object) => JSON.stringify({ packages: { '': {}, ...packages } });
	const wanted = lock({
		'node_modules/site': { version: '1.0.0' },
		'node_modules/tool': { version: '2.0.0', dev: true },
		'node_modules/other-machine': { version: '3.0.0', optional: true }
	});
	const site = { 'node_modules/site': { version: '1.0.0' } };
	const tool = { 'node_modules/tool': { version: '2.0.0', dev: true } };

	it('are complete for the site without the test tools, and not for the tests', () => {
		expect(holdsAll(wanted, lock(site), false)).toBe(true);
		expect(holdsAll(wanted, lock(site), true)).toBe(false);
		expect(holdsAll(wanted, lock({ ...site, ...tool }), true)).toBe(true);
	});

	it('are not complete when a version changed', () => {
		const old = lock({ 'node_modules/site': { version: '0.9.0' } });
		expect(holdsAll(wanted, old, false)).toBe(false);
	});

	it('are missing on a fresh clone, and there after an install by hand', () => {
		put('package-lock.json', wanted);
		expect(isInstalled(folder, false)).toBe(false);
		put('node_modules/.package-lock.json', lock(site));
		expect(isInstalled(folder, false)).toBe(true);
		expect(isInstalled(folder, true)).toBe(false);
	});

	it('are installed by a plain npm, whatever the calling npm was told', () => {
		const handed = {
			NODE_ENV: 'production',
			npm_config_omit: 'dev',
			NPM_CONFIG_PRODUCTION: 'true',
			npm_config_dry_run: 'true'
		};
		const kept = { PATH: '/bin', npm_config_registry: 'https://registry.example/' };
		expect(plainEnv({ ...handed, ...kept })).toEqual(kept);
	});
});

describe('the build', () => {
	/** Dates a file or folder so many seconds after the epoch. */
	const date = (path: string, seconds: number) => utimesSync(join(folder, path), seconds, seconds);

	it('is made when it is missing, and when a source or a source folder is newer', () => {
		put('src/routes/page.svelte');
		for (const path of ['src/routes/page.svelte', 'src/routes', 'src']) date(path, 1000);
		expect(isBuilt(folder)).toBe(false);
		put('build/index.html');
		date('build/index.html', 2000);
		expect(isBuilt(folder)).toBe(true);
		date('src/routes/page.svelte', 3000);
		expect(isBuilt(folder)).toBe(false);
		date('src/routes/page.svelte', 1000);
		date('src/routes', 3000);
		expect(isBuilt(folder)).toBe(false);
	});
});

describe('the server', () => {
	/** Status, headers and text of a path that is sent just as it is written here. */
	function ask(url: string, path: string, method = 'GET') {
		type Answer = { status: number; headers: Record<string, unknown>; text: string };
		return new Promise<Answer>((resolve, reject) => {
			const { hostname, port } = new URL(url);
			const request = get({ hostname, port, path, method }, (response) => {
				let text = '';
				response.setEncoding('utf8');
				response.on('data', (part) => (text += part));
				response.on('end', () =>
					resolve({ status: response.statusCode!, headers: response.headers, text })
				);
			});
			request.on('error', reject);
		});
	}

	async function withSite(check: (url: string) => Promise<void>): Promise<void> {
		put('site/index.html', 'first page');
		put('site/exercises/index.html', 'exercises');
		put('site/_app/immutable/a.js', 'export {}');
		put('site/_app/version.json', '{}');
		put('site/drawing.svg', '<svg/>');
		put('secret.txt', 'secret');
		const site = await serve(join(folder, 'site'), { port: 0 });
		await check(site.url).finally(site.close);
	}

	it('sends each file as what it is', () =>
		withSite(async (url) => {
			const typeOf = async (path: string) => (await ask(url, path)).headers['content-type'];
			expect(await typeOf('/')).toBe('text/html;charset=utf-8');
			expect(await typeOf('/_app/immutable/a.js')).toBe('text/javascript');
			expect(await typeOf('/_app/version.json')).toBe('application/json');
			expect(await typeOf('/drawing.svg')).toBe('image/svg+xml');
		}));

	it('answers an address that is not there with 404, and nothing outside the site', () =>
		withSite(async (url) => {
			for (const path of ['/nowhere', '/nowhere/', '/../secret.txt', '/%2e%2e/secret.txt', '/%'])
				expect(await ask(url, path), path).toMatchObject({ status: 404, text: 'Not found\n' });
		}));

	it('leads a folder without its slash to the folder, and nowhere else', () =>
		withSite(async (url) => {
			const moved = await ask(url, '/exercises?a=1');
			expect(moved.status).toBe(308);
			expect(moved.headers['location']).toBe('/exercises/?a=1');
			expect((await ask(url, '//exercises')).headers['location']).toBeUndefined();
		}));

	it('sends the headers of the sample file', () =>
		withSite(async (url) => {
			const sample = readFileSync('static/server-headers.example.txt', 'utf8');
			const pairs = [...sample.matchAll(/^Header always set (\S+) "(.*)"$/gm)];
			expect(pairs).toHaveLength(5);
			const { headers } = await ask(url, '/');
			for (const [, name, value] of pairs) {
				expect(headers[name!.toLowerCase()], name).toBe(value);
				expect(sample, name).toContain(`add_header ${name} "${value}" always;`);
			}
		}));

	it('lets only what is named by its content be kept for ever', () =>
		withSite(async (url) => {
			const rule = async (path: string) => (await ask(url, path)).headers['cache-control'];
			expect(await rule('/_app/immutable/a.js')).toContain('immutable');
			expect(await rule('/')).toBe('no-cache');
		}));

	it('takes no orders', () =>
		withSite(async (url) => {
			expect((await ask(url, '/', 'POST')).status).toBe(405);
		}));

	it('takes the next port where that is allowed, and refuses where it is not', () =>
		withSite(async (url) => {
			const port = Number(new URL(url).port);
			await expect(serve(folder, { port })).rejects.toThrow('EADDRINUSE');
			const next = await serve(folder, { port, more: 20 });
			expect(Number(new URL(next.url).port)).toBeGreaterThan(port);
			next.close();
		}));
});

/** A machine where a browser stands outside PATH cannot play one that has none. */
const hasOtherBrowser = process.platform === 'win32' || CHROMIUM_PLACES.some(existsSync);

describe.skipIf(hasOtherBrowser)('missing programs', () => {
	/** Puts a program of this name on the test's own PATH. */
	function program(name: string, script: string): void {
		chmodSync(put(`bin/${name}`, `#!/bin/sh\n${script}\n`), 0o755);
	}

	/** Runs setup with nothing on PATH but what the test put there. */
	function setup(env: NodeJS.ProcessEnv = {}) {
		for (const name of ['sh', 'dirname', 'ln', 'cp'])
			symlinkSync(onPath([name])[0]!, join(folder, 'bin', name));
		return spawnSync(process.execPath, ['scripts/setup.mjs', 'test'], {
			encoding: 'utf8',
			env: { HOME: folder, PATH: join(folder, 'bin'), ...env }
		});
	}

	const CHROMIUM = 'echo Chromium 100.0';
	const NGSPICE = 'echo ngspice-40';

	it('are not looked for further when they are there', () => {
		program('chromium', CHROMIUM);
		program('ngspice', NGSPICE);
		program('apt-get', 'exit 9');
		expect(setup()).toMatchObject({ status: 0, stderr: '', stdout: '' });
	});

	it('are asked for by name where nothing can be installed', () => {
		program('ngspice', NGSPICE);
		const { status, stderr } = setup();
		expect(status).toBe(1);
		expect(stderr).toContain('A Chromium is missing.');
		expect(stderr).not.toContain('ngspice is missing');
	});

	it('do not count when they are there but do not run', () => {
		program('chromium', 'echo install me first; exit 1');
		program('ngspice', NGSPICE);
		expect(setup()).toMatchObject({ status: 1 });
	});

	it.runIf(process.getuid?.() === 0)('are installed by root with apt-get, updated first', () => {
		program('ngspice', NGSPICE);
		program('spare', CHROMIUM);
		const log = join(folder, 'log');
		const bin = join(folder, 'bin');
		program(
			'apt-get',
			`echo "$@" >> ${log}; case "$*" in *install*) cp ${bin}/spare ${bin}/chromium;; esac`
		);
		expect(setup()).toMatchObject({ status: 0 });
		const calls = execFileSync('cat', [log], { encoding: 'utf8' }).trim().split('\n');
		expect(calls).toEqual(['-q update', '-q install -y --no-install-recommends chromium']);
	});

	it('are not replaced by others when one is named that does not run', () => {
		program('chromium', CHROMIUM);
		program('ngspice', NGSPICE);
		const { status, stderr } = setup({ SOLDERSIDE_CHROMIUM: '/nowhere/chromium' });
		expect(status).toBe(1);
		expect(stderr).toContain('SOLDERSIDE_CHROMIUM is "/nowhere/chromium"');
	});
});
