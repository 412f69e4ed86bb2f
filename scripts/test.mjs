/**
 * `npm test`: types, lint, unit and outside checks, build, browser tests, in this order, then the
 * course in numbers. A step that fails does not stop the others. The last line is the whole count.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BUILD, ROOT, build } from './build.mjs';
import { playwrightCount, single, total, vitestCount } from './counts.mjs';
import { npmCall, plainEnv } from './packages.mjs';
import { freePort } from './serve.mjs';

/** A step that hangs is ended, so that the count is always printed. */
const LONGEST = 8 * 60_000;
const FIRST_TEST_PORT = 4273;

const TSX = 'node_modules/tsx/dist/cli.mjs';

/** @typedef {import('./counts.mjs').Count} Count */

const reports = mkdtempSync(join(tmpdir(), 'solderside-test-'));

/** @type {import('node:child_process').ChildProcess | null} */
let child = null;

/**
 * Ends the running step with all that it started.
 * @param {NodeJS.Signals} signal
 */
function endChild(signal) {
	if (!child?.pid) return;
	try {
		// A step leads a process group of its own, where the system has such a thing.
		if (process.platform === 'win32') child.kill(signal);
		else process.kill(-child.pid, signal);
	} catch {
		// It has ended already.
	}
}

/**
 * Runs a program to its end; true if it ended well in time.
 * @param {{ file: string, args: string[], shell?: boolean }} call
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {Promise<boolean>}
 */
function run({ file, args, shell = false }, env = {}) {
	return new Promise((resolve) => {
		child = spawn(file, args, {
			cwd: ROOT,
			stdio: ['ignore', 'inherit', 'inherit'],
			env: { ...plainEnv(process.env), ...env },
			shell,
			detached: process.platform !== 'win32'
		});
		const clock = setTimeout(() => {
			console.error(`This step did not end within ${LONGEST / 60_000} minutes and was ended.`);
			endChild('SIGKILL');
		}, LONGEST);
		/** @param {boolean} ok */
		const done = (ok) => {
			clearTimeout(clock);
			child = null;
			resolve(ok);
		};
		child.on('error', () => done(false));
		child.on('exit', (code) => done(code === 0));
	});
}

/**
 * @param {string} name
 * @returns {any} the parsed report, or null
 */
function reportOf(name) {
	const file = join(reports, name);
	return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
}

/** @param {string} script @param {string[]} args */
const node = (script, ...args) => ({ file: process.execPath, args: [script, ...args] });

/** @param {string} name */
const script = (name) => run(npmCall(['run', '--silent', name]));

async function vitest() {
	const file = join(reports, 'vitest.json');
	const ok = await run(
		node(
			'node_modules/vitest/vitest.mjs',
			'run',
			'--reporter=default',
			'--reporter=json',
			`--outputFile.json=${file}`
		)
	);
	return vitestCount(reportOf('vitest.json'), ok);
}

/** @type {boolean} */
let hasBuild = false;

async function buildStep() {
	// A build left over from before must not be taken for this one.
	rmSync(BUILD, { recursive: true, force: true });
	hasBuild = build();
	return single(hasBuild);
}

async function browser() {
	if (!hasBuild) {
		console.log('Not run: there is no build.');
		return single(false);
	}
	const ok = await run(node('node_modules/@playwright/test/cli.js', 'test'), {
		PLAYWRIGHT_JSON_OUTPUT_FILE: join(reports, 'playwright.json'),
		SOLDERSIDE_TEST_PORT: String(await freePort(FIRST_TEST_PORT))
	});
	return playwrightCount(reportOf('playwright.json'), ok);
}

/** @type {[string, () => Promise<Count>][]} */
const STEPS = [
	['types', async () => single(await script('check'))],
	['lint', async () => single(await script('lint'))],
	['unit and outside checks', vitest],
	['build', buildStep],
	['browser tests', browser],
	['the course, counted', async () => single(await run(node(TSX, 'src/cli/course.ts')))]
];

/** @param {Count} count */
function sentence({ passed, failed, skipped }) {
	return `${passed} passed, ${failed} failed` + (skipped > 0 ? `, ${skipped} skipped` : '');
}

/**
 * @param {string} name
 * @param {() => Promise<Count>} step
 */
async function report(name, step) {
	console.log(`\n== ${name} ==`);
	const start = Date.now();
	const count = await step().catch((error) => {
		console.error(error);
		return single(false);
	});
	console.log(`${name}: ${sentence(count)} (${Math.round((Date.now() - start) / 1000)} s)`);
	return count;
}

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM']))
	process.on(signal, () => {
		endChild(signal);
		process.exit(1);
	});

/** @type {Count[]} */
const counts = [];
for (const [name, step] of STEPS) counts.push(await report(name, step));
rmSync(reports, { recursive: true, force: true });

const { passed, failed } = total(counts);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
